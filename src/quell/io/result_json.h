// result.json: the design in SI with stable keys; schema in docs/result.schema.json.
#pragma once

#include <string>

#include "quell/design/result.h"
#include "quell/io/site_file.h"

namespace quell::io {

/// For people and their tools, or for the page: the same content.
enum class JsonLayout { lines, compact };

/// One JSON object, ended by a newline. Non-finite numbers cannot occur: the engine lets none out.
std::string design_json(const SiteFile& file, const design::DesignResult& result, JsonLayout layout = JsonLayout::lines);

}  // namespace quell::io
