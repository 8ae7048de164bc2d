// result.json: the design in SI with stable keys; schema in docs/result.schema.json.
#pragma once

#include <functional>
#include <string>
#include <string_view>

#include "quell/design/result.h"
#include "quell/io/site_file.h"

namespace quell::io {

/// For people and their tools: one JSON object, ended by a newline, with every digit of a double. A number that is not finite
/// would be null; the engine lets none out.
std::string design_json(const SiteFile& file, const design::DesignResult& result);

/// Prints a sentence of the engine with its quantities.
using Sentences = std::function<std::string(std::string_view)>;

/// For the page, which asks often: the same in one line, with numbers to nine significant digits (it shows six at most) and
/// sentences as `sentences` prints them. An option's "cases" are {"names", "rows"}: a row of values for each case. Left out are
/// the option's "safety" and the "keys" of "input", which the page does not read. More than the other has are the levels of the
/// site ("levels") and, in options with moving water, that water ("water").
///
/// "levels": crest, approach_floor, river_bed, ground (or null); "design_flood" and "check_flood" beside them.
/// "water": crest, the outline up to the start of the chute, and discharges, one for each of the range: chute, rows of bed
/// station, bed level, station and level of the surface, energy level, from the start of the chute to the toe; and jump, by
/// tailwater case, depths above the apron at equal steps from the front to the end of the jump. Stations from the crest, m.
std::string page_json(const SiteFile& file, const design::DesignResult& result, const Sentences& sentences);

}  // namespace quell::io
