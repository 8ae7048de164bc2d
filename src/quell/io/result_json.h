// result.json: the design in SI with stable keys; schema in docs/result.schema.json.
#pragma once

#include <string>

#include "quell/design/result.h"
#include "quell/io/site_file.h"

namespace quell::io {

/// One JSON object, ended by a newline. Non-finite numbers cannot occur: the engine lets none out.
std::string design_json(const SiteFile& file, const design::DesignResult& result);

}  // namespace quell::io
