// Jumps at an abrupt drop or rise of a horizontal bed: momentum with the pressure on the face of the step, or energy over it.
//
// Rectangular section, frictionless, hydrostatic; exact under the closure named. y1, V1 before the jump, F1 > 1, s > 0 the
// height of the step, y2 above the bed behind it. The third closure of the rise, with its face pressed by the level behind,
// stands in jump_sections.h.
#pragma once

#include "quell/hydraulics/jump.h"
#include "quell/hydraulics/jump_sections.h"

namespace quell::hydraulics {

/// y2 (m) below a drop where the jump ends at the step (A): the face is pressed by the level behind it.
Outcome<double> sequent_depth_drop_a(const StepJumpInput& input);

/// y2 (m) below a drop where the toe stands at the step (B): the face is pressed by the depth y1 + s. The lower of the two;
/// between them the jump stays near the step and may swing from one form to the other.
Outcome<double> sequent_depth_drop_b(const StepJumpInput& input);

struct StepDepths {
  double y1;  ///< m, > 0
  double y2;  ///< m, above the bed behind the step, > y1
  double s;   ///< m, >= 0
};
/// F1 whose jump ends at the drop; no answer where y2 - s <= y1.
Outcome<double> froude_number_drop_a(const StepDepths& depths);
/// F1 whose toe stands at the drop; no answer where y2 <= y1 + s.
Outcome<double> froude_number_drop_b(const StepDepths& depths);

/// y2 (m) above a rise behind a complete jump whose sequent depth presses the face.
Outcome<double> sequent_depth_rise_momentum(const StepJumpInput& input);

/// y2 (m) above a rise behind a complete jump, by energy over the step without loss.
Outcome<double> sequent_depth_rise_energy(const StepJumpInput& input);

/// Height (m) of the rise over which a complete jump's energy just carries the flow, at critical depth; a higher one drowns it.
double largest_rise(const JumpInflow& inflow);

namespace record {
extern const Method sequent_depth_drop_a;
extern const Method sequent_depth_drop_b;
extern const Method froude_number_drop_a;
extern const Method froude_number_drop_b;
extern const Method sequent_depth_rise_momentum;
extern const Method sequent_depth_rise_energy;
extern const Method largest_rise;
}  // namespace record

}  // namespace quell::hydraulics
