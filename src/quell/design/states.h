// What the checks are shown of an option: every discharge in every tailwater case, and the gate patterns.
#pragma once

#include <vector>

#include "quell/checks/checks.h"
#include "quell/design/option.h"

namespace quell::design {

/// The governing discharge first and the largest last. They point into the option, which must stay where it is.
std::vector<checks::TailwaterState> states_of(const Option& option, const dissipators::Setting& setting);

/// The gate patterns in the low tailwater case, likewise.
std::vector<checks::PatternState> pattern_states(const PreparedSite& prepared, const Option& option);

}  // namespace quell::design
