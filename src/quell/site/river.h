// Tailwater level from the river, for the low, expected and high case.
#pragma once

#include <array>

#include "quell/base/outcome.h"
#include "quell/base/working.h"
#include "quell/site/site.h"

namespace quell::site {

/// Level (m) at `discharge` (m3/s). The allowances for degradation of the bed and for lag lower
/// the low case. A rating is read
/// by straight lines; no answer outside its table, and for a section with no normal depth.
Outcome<double> tailwater_level(const River& river, double discharge, TailwaterCase tailwater_case);

/// Level (m) of a table at a discharge, straight between its rows; no answer outside it.
Outcome<double> rated_level(const TailwaterRating& rating, double discharge, TailwaterCase tailwater_case);

/// Adds the step behind the level where it is computed (normal depth); a rating is data and has none.
void trace_tailwater(const River& river, double discharge, TailwaterCase tailwater_case, Working& working);

}  // namespace quell::site
