// Bodies in the flow by momentum: the force on a body, the jump that blocks shorten, the backwater of bridge piers.
//
// Drag is CD A rho V^2/2 on the approach velocity. Horizontal frictionless bed, rectangular section, hydrostatic pressure;
// exact under these assumptions, as good as the drag coefficient.
#pragma once

#include "quell/base/constants.h"
#include "quell/base/method.h"

namespace quell::hydraulics {

struct DragInput {
  double CD;  ///< drag coefficient, >= 0
  double A;   ///< area facing the flow, m2, >= 0
  double V;   ///< approach velocity, m/s, >= 0
};
/// F (N) = CD A rho V^2/2.
double drag_force(const DragInput& input) noexcept;

struct DragJumpInput {
  double y1;  ///< depth before the jump, m, > 0, supercritical
  double V1;  ///< mean velocity before the jump, m/s, > 0
  double f;   ///< force of the blocks on the flow per unit width, N/m, >= 0
};
/// y2 (m) with the momentum that the blocks leave: lower than the free sequent depth. No answer where they take so much that no
/// subcritical flow remains.
Outcome<double> sequent_depth_with_drag(const DragJumpInput& input);

struct PierInput {
  double y2;  ///< depth below the piers, m, > 0
  double V2;  ///< mean velocity below the piers, m/s, > 0, subcritical
  double a;   ///< thickness of a pier, m, >= 0
  double s;   ///< spacing of the piers, axis to axis, m, > a
  double CD;  ///< drag coefficient of a pier on the approach velocity, >= 0
};
/// y1 (m) above the piers, whose drag per strip is CD a y1 rho V1^2/2.
Outcome<double> depth_above_piers(const PierInput& input);

namespace record {
extern const Method drag_force;
extern const Method sequent_depth_with_drag;
extern const Method depth_above_piers;
}  // namespace record

}  // namespace quell::hydraulics
