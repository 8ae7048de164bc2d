// result.json: the design in SI with stable keys; schema in docs/result.schema.json.
#pragma once

#include <string>

#include "quell/design/result.h"
#include "quell/io/site_file.h"

namespace quell::io {

/// For people and their tools, with every digit of a double; or for the page: the same content in one line, with numbers to
/// nine significant digits (it shows six at most; all would take a seventh more text and a third more time), sentences in the
/// units of the site, the levels of the site ("levels") and, in options with moving water, that water ("water").
///
/// "levels": crest, approach_floor, river_bed, ground (or null); "design_flood" and "check_flood" beside them.
/// "water": crest, the outline up to the start of the chute, and discharges, one for each of the range: chute, rows of bed
/// station, bed level, station and level of the surface, energy level, from the start of the chute to the toe; and jump, by
/// tailwater case, depths above the apron at equal steps from the front to the end of the jump. Stations from the crest, m.
enum class JsonLayout { lines, page };

/// One JSON object, ended by a newline. A number that is not finite would be null; the engine lets none out.
std::string design_json(const SiteFile& file, const design::DesignResult& result, JsonLayout layout = JsonLayout::lines);

}  // namespace quell::io
