// Where the jump of every case stands in a sized basin, and how far it is from being swept out: in depth of tailwater and in
// discharge.
#pragma once

#include "quell/design/option.h"

namespace quell::design {

/// Fills position and submergence of one case; the option's length and structure must be set.
void place_jump(const PreparedSite& prepared, const PreparedCase& entry, const Option& option, CaseResult& result,
                Working* working = nullptr);

/// The same for every case of the option, with the distance to sweep-out.
void place_jumps(const PreparedSite& prepared, Option& option);

}  // namespace quell::design
