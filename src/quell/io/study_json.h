// What the site's data gave, as JSON: the law of the yearly floods, routed inflows, river, declared uncertainties. SI.
#pragma once

#include <nlohmann/json.hpp>

#include "quell/site/study.h"

namespace quell::io {

nlohmann::ordered_json study_json(const site::ResolvedSite& resolved);

}  // namespace quell::io
