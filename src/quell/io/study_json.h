// What the site's data gave, as JSON: the law of the yearly floods, routed inflows, river, declared uncertainties. SI.
#pragma once

#include "quell/io/json_writer.h"
#include "quell/site/study.h"

namespace quell::io {

void study_json(JsonPlace at, const site::ResolvedSite& resolved);

}  // namespace quell::io
