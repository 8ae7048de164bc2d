// Jumps that another force holds: blocks, a sill, the friction of the bed. A force f per width against the flow lowers the
// sequent depth: Y^3 - (1 + 2 F1^2 - Phi) Y + 2 F1^2 = 0, Phi = f/(rho g y1^2/2), largest root.
//
// Rectangular section, horizontal bed. The balance is exact; what it is worth hangs on the force. F1 > 1.
#pragma once

#include "quell/base/method.h"
#include "quell/hydraulics/jump.h"

namespace quell::hydraulics {

struct ForcedJumpInput {
  double y1;   ///< m, > 0
  double V1;   ///< m/s, > 0
  double Phi;  ///< f/(rho g y1^2/2), f in N/m against the flow; below zero for a force along it
};
/// y2 (m). No answer where the force is larger than any jump can take up.
Outcome<double> sequent_depth_forced(const ForcedJumpInput& input);

struct BlockInput {
  double V1;  ///< m/s, at the blocks
  double CD;  ///< drag coefficient on V1
  double Nb;  ///< number of blocks
  double Ab;  ///< area of one facing the flow, m2
};
/// FB (N) = CD Nb Ab rho V1^2/2, the drag of a row of blocks over the whole width.
double block_drag(const BlockInput& input) noexcept;

/// Phi of a smooth bed, (0.4 F1 - 1)^2 above F1 = 2.5 and nothing below (Rajaratnam 1965).
double shear_index_smooth(double F1) noexcept;

/// Phi of corrugated sheets across the flow, (F1 - 1)^2 (Ead and Rajaratnam 2002), F1 4 to 10. With it y2 = F1 y1.
double shear_index_corrugated(double F1) noexcept;

struct GravelBedInput {
  double y1;  ///< m, > 0
  double V1;  ///< m/s, > 0
  double ks;  ///< height of the roughness, m, >= 0
};
/// y2 (m) on gravel glued to the bed (Carollo, Ferro and Pampalone 2007).
double sequent_depth_gravel(const GravelBedInput& input) noexcept;

namespace record {
extern const Method sequent_depth_baffles;
extern const Method sequent_depth_end_sill;
extern const Method sequent_depth_smooth_shear;
extern const Method sequent_depth_corrugated;
extern const Method sequent_depth_gravel;
}  // namespace record

}  // namespace quell::hydraulics
