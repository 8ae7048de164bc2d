// What several safety checks ask of one state of the jump.
#include <algorithm>

#include "quell/checks/safety.h"
#include "quell/hydraulics/slab_uplift.h"

namespace quell::checks {

double roller_length(const TailwaterState& state) {
  return 4.3 * state.toe->y2;
}

double jump_depth_over(const TailwaterState& state, double from, double to) {
  const auto& toe = *state.toe;
  const double behind = std::max(toe.y1, std::min(toe.y2, state.available_depth));
  return hydraulics::mean_jump_depth({.d1 = toe.y1, .d2 = behind, .Lr = roller_length(state)}, from, to);
}

}  // namespace quell::checks
