// Sequent depth of the rectangular jump with what the classical one leaves out: uneven velocity, friction on the bed, viscosity
// in models, and the weight and the drag inside the control volume.
//
// Forces are positive against the flow. All give the classical depth where their addition is nothing.
#pragma once

#include "quell/hydraulics/jump.h"

namespace quell::hydraulics {

struct VelocityCoefficients {
  double beta1 = 1.0;  ///< momentum coefficient before the jump, >= 1
  double beta2 = 1.0;  ///< after it, >= 1
};
/// y2 (m): largest root of Y^3 - (1 + 2 beta1 F1^2) Y + 2 beta2 F1^2 = 0. No answer without a root.
Outcome<double> sequent_depth(const JumpInflow& inflow, const VelocityCoefficients& coefficients);

/// Friction of a smooth bed under the jump over rho g y1^2/2 (per unit width): (0.4 F1 - 1)^2, none below F1 = 2.5
/// (Rajaratnam 1965). F1 1 to 10.
double smooth_bed_friction(double F1);

/// y2 (m): largest root of Y^3 - (1 + 2 F1^2 - eps) Y + 2 F1^2 = 0, eps >= 0 being the friction over rho g y1^2/2. No answer
/// where the friction leaves no jump.
Outcome<double> sequent_depth_with_friction(const JumpInflow& inflow, double eps);

/// y2 (m) = y2* (1 - 0.70 (log10 Re1)^(-5/2) exp(F1/8)), Re1 = V1 y1/nu (Hager and Bremen 1989), wide channel. F1 1 to 12.
/// Above zero for Re1 > 1000.
double sequent_depth_viscous(const JumpInflow& inflow);

struct LoadedJumpInput {
  double b;                                ///< width, m, > 0
  double d1;                               ///< depth normal to the bed, m, > 0
  double V1;                               ///< m/s, > 0, supercritical
  double theta = 0.0;                      ///< bed angle, rad, positive downhill
  double Lj = 0.0;                         ///< length of the jump along the bed, m, >= 0
  double Kv = 1.0;                         ///< volume over that under a straight surface
  double friction = 0.0;                   ///< on bed and walls, N, against the flow
  double drag = 0.0;                       ///< of blocks, sill or step, N, against the flow
  VelocityCoefficients coefficients = {};  ///< momentum coefficients
};
/// d2 (m), normal to the bed: the largest depth at which pressure, momentum, weight along the bed, friction and drag balance.
Outcome<double> sequent_depth_loaded(const LoadedJumpInput& input);

namespace record {
extern const Method sequent_depth_momentum_coefficients;
extern const Method smooth_bed_friction;
extern const Method sequent_depth_bed_friction;
extern const Method sequent_depth_viscous;
extern const Method sequent_depth_weight_and_drag;
}  // namespace record

}  // namespace quell::hydraulics
