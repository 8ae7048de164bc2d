// The classical jump asked the other way round: depths from the loss, discharge from the depths, the depth before from the one
// after. Rectangular section, horizontal frictionless bed, hydrostatic pressure; exact under these assumptions.
#pragma once

#include "quell/hydraulics/jump.h"

namespace quell::hydraulics {

/// q (m2/s) = sqrt(g y1 y2 (y1 + y2)/2) at which y1 and y2 are sequent.
double jump_unit_discharge(const SequentDepths& depths) noexcept;

struct FroudeLoss {
  double F1;  ///< Froude number before the jump, > 1
  double dE;  ///< energy loss, m, > 0
};
/// y1 = 4 Y dE/(Y - 1)^3, y2 = Y y1.
SequentDepths jump_depths(const FroudeLoss& input) noexcept;

struct DischargeLoss {
  double q;   ///< m2/s, > 0
  double dE;  ///< m, > 0
};
/// The sequent depths at which q loses dE, to 1e-12 relative: there is one pair.
Outcome<SequentDepths> jump_depths(const DischargeLoss& input);

struct JumpOutflow {
  double y2;  ///< depth after the jump, m, > 0
  double V2;  ///< mean velocity after the jump, m/s, > 0, subcritical
};
/// y1 (m) = y2/2 (sqrt(1 + 8 F2^2) - 1).
double depth_before_jump(const JumpOutflow& outflow);

namespace record {
extern const Method jump_unit_discharge;
extern const Method jump_depths_froude_loss;
extern const Method jump_depths_discharge_loss;
extern const Method depth_before_jump;
}  // namespace record

}  // namespace quell::hydraulics
