// The safety checks of an option as JSON.
#pragma once

#include <nlohmann/json_fwd.hpp>

#include "quell/checks/safety.h"

namespace quell::io {

/// Numbers in SI, null where a check does not apply.
nlohmann::ordered_json safety_json(const checks::Safety& safety);

}  // namespace quell::io
