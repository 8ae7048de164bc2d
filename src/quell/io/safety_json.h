// The safety checks of an option as JSON.
#pragma once

#include "quell/checks/safety.h"
#include "quell/io/json_writer.h"

namespace quell::io {

/// Numbers in SI, null where a check does not apply.
void safety_json(JsonPlace at, const checks::Safety& safety);

}  // namespace quell::io
