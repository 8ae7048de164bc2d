// The pressure fluctuation on the floor below a jump: as a model measured it, or as the envelope that stands in for a table
// that no source could give.
#pragma once

#include "quell/site/safety_data.h"
#include "quell/site/toe.h"

namespace quell::checks {

/// Shares of the velocity head at the toe.
struct FloorPulse {
  double range;    ///< Cp+ + Cp-
  double suction;  ///< Cp-
};
/// At `place` sequent depths from the toe, for the Froude number F1. Straight between the measured points, the outermost held.
FloorPulse floor_pulse(const site::Slab& slab, double F1, double place) noexcept;

}  // namespace quell::checks
