// Where the jump stands on a reach: the toe at which the momentum of the supercritical flow from the upstream control balances
// that of the subcritical flow held back by the tailwater.
//
// Excess G(x) = M(ys(x)) + W - D - M(yt(x + Lj)), m3, M = Q^2/(g A) + A ybar: ys follows from the upstream control, yt back
// from the tailwater depth at x = L (held beyond L), W = S0 Lj (A1 + A2)/2 is the weight of the water in the jump along the
// bed, D the drag of blocks over rho g. The jump stands where G falls through zero going downstream; bed friction within Lj is
// left out, which puts the toe a little too far downstream.
//   G < 0 at x = 0          the jump drowns the upstream control
//   G > 0 to the end        the jump is swept out of the reach
// Exact under these assumptions, to 1e-7 m; in basins the roughness and the length of the jump govern what it is worth.
#pragma once

#include "quell/hydraulics/open_channel_profile.h"

namespace quell::hydraulics {

enum class ToeState { on_reach, drowned_at_upstream_control, swept_out };

/// Lj = factor law(F1, y1, y2), m, with F1 = V1/sqrt(g A1/T1) and y2 the sequent depth of y1 in the reach's section. Without a
/// law the jump is taken without length; `factor` shortens it, for blocks or a rough bed.
struct JumpLength {
  double (*law)(double F1, double y1, double y2) = nullptr;
  double factor = 1.0;
};

/// A row of blocks in the jump. Its force counts for every toe at or upstream of it.
struct BlockDrag {
  double position = 0.0;  ///< x of the row, m
  double force = 0.0;     ///< on the flow, against it, over the whole width, N, >= 0
};

struct JumpReach {
  ChannelReach channel;
  double upstream_depth = 0.0;  ///< at x = 0, m, supercritical
  JumpLength length = {};
  BlockDrag drag = {};
};

struct JumpToe {
  ToeState state;
  double x;       ///< m: of the toe; 0 where drowned, L where swept out
  double y1;      ///< m: supercritical depth there
  double F1;      ///< there
  double y2;      ///< m: depth that balances y1 (drag and weight counted); beyond the reach's tailwater unless on the reach
  double length;  ///< Lj, m
  double end() const { return x + length; }
};

/// `tailwater_depth` (m) stands at x = L. Below critical depth it lets the flow leave through critical depth. The most upstream
/// stable position is answered.
Outcome<JumpToe> locate_toe(const JumpReach& reach, double tailwater_depth);

/// Tailwater depth (m) at x = L below which the jump is swept out of the reach. No answer where it stays at any tailwater.
Outcome<double> sweep_out_tailwater(const JumpReach& reach);

/// Tailwater depth (m) at x = L above which the jump drowns the upstream control. No answer where it does so at any tailwater.
Outcome<double> drowning_tailwater(const JumpReach& reach);

struct WideApron {
  double q;          ///< m2/s, > 0
  double manning_n;  ///< s/m^(1/3), > 0
};
/// x (m) at which the depth of a wide, level channel has changed from start to end; negative where it lies upstream. Exact.
double horizontal_profile_distance(const WideApron& apron, const DepthPair& depths);

namespace record {
extern const Method jump_profile_horizontal;
extern const Method jump_location_horizontal_apron;
extern const Method jump_location_channel;
extern const Method jump_sweep_out_depth_friction;
extern const Method jump_drowning_depth_friction;
}  // namespace record

}  // namespace quell::hydraulics
