// The classical jump asked backward: the flow from the depths, the depths from the loss, from the Froude number, from the flow
// after the jump. Rectangular section, smooth horizontal bed; exact under the assumptions of jump.h.
#pragma once

#include "quell/hydraulics/jump.h"

namespace quell::hydraulics {

/// q (m2/s) of the jump between two depths: sqrt(g y1 y2 (y1 + y2)/2).
double jump_discharge(const SequentDepths& depths);

struct LossAndDischarge {
  double q;   ///< m2/s, > 0
  double dE;  ///< head to be lost, m, > 0
};
/// The depths (m) of the jump in which q loses dE. The loss grows steadily with y2/y1, so that there is one answer.
Outcome<SequentDepths> jump_depths(const LossAndDischarge& input);

struct LossAndFroude {
  double F1;  ///< > 1
  double dE;  ///< m, > 0
};
Outcome<SequentDepths> jump_depths(const LossAndFroude& input);

struct DischargeAndFroude {
  double q;   ///< m2/s, > 0
  double F1;  ///< > 1
};
Outcome<SequentDepths> jump_depths(const DischargeAndFroude& input);

struct JumpOutflow {
  double y2;  ///< m, > 0
  double V2;  ///< m/s, > 0, subcritical
};
/// y1 (m) before the jump that ends in that flow: y2/2 (sqrt(1 + 8 F2^2) - 1). No answer where F2 is not below 1.
Outcome<double> initial_depth(const JumpOutflow& outflow);

namespace record {
extern const Method jump_discharge_from_depths;
extern const Method jump_depths_from_loss_and_discharge;
extern const Method jump_depths_from_loss_and_froude_number;
extern const Method jump_depths_from_discharge_and_froude_number;
extern const Method initial_depth_rectangular;
}  // namespace record

}  // namespace quell::hydraulics
