// Uplift on the slab of a basin: seepage with drains, pulses of the jump that pass through its joints, stagnation at a lip, the
// thickness and the anchors that hold it down.
//
// Heads in m above the top of the floor. The panel coefficients are a screening model with separable exponential correlation,
// not a published chart; the range of the pressure fluctuation and its length are inputs that no source could give.
#pragma once

#include "quell/base/method.h"

namespace quell::hydraulics {

struct JumpProfileInput {
  double d1;  ///< depth at the toe, m
  double d2;  ///< depth behind the jump, m
  double Lr;  ///< length of the roller, m, > 0
};
/// Mean depth (m) over a stretch from `from` to `to` (m from the toe) under y = d1 + (d2 - d1) tanh(1.5 x/Lr).
double mean_jump_depth(const JumpProfileInput& input, double from, double to) noexcept;

struct DrainInput {
  double h0;  ///< head without drains
  double hs;  ///< head where the drains discharge
  double E;   ///< efficiency, 0 to 1
};
/// hu = hs + (1 - E)(h0 - hs).
double uplift_head(const DrainInput& input) noexcept;

struct UpliftThicknessInput {
  double hu;       ///< uplift head
  double y;        ///< water over the slab
  double hd;       ///< head of the pulses
  double gamma_c;  ///< unit weight of the concrete, N/m3, above that of water
};
/// s (m) = (hu - y + hd) gamma/(gamma_c - gamma), limit equilibrium without anchors; not below 0.
double uplift_thickness(const UpliftThicknessInput& input) noexcept;

/// h (m) = y + (pa - pv)/gamma: how far the pressure on the floor under y of water can fall before the water boils. Pa.
double suction_cap(double y, double pa, double pv) noexcept;

struct PanelCoefficients {
  double sealed;  ///< Psi: joints sealed, only the top face fluctuates
  double one;     ///< Omega1: one transverse joint open
  double four;    ///< Omega4: open on four sides
};
/// a, b > 0: length and width of the panel over the lengths over which the pulses hang together.
PanelCoefficients panel_coefficients(double a, double b) noexcept;

/// dh (m) = Ku V^2/2g: uplift head at a lip into the flow.
double stagnation_head(double Ku, double V) noexcept;

struct AnchoredInput {
  double hu, y;    ///< m, as above
  double hd;       ///< m
  double DAF;      ///< dynamic factor on hd, 1 to 2
  double gamma_c;  ///< N/m3
  double s;        ///< thickness of the slab, m
};
/// p (Pa) left for the anchors: gamma (hu - y + DAF hd) - (gamma_c - gamma) s; not below 0.
double anchored_pressure(const AnchoredInput& input) noexcept;

struct RockAnchorInput {
  double T;        ///< force on a bar, N
  double spacing;  ///< m, square grid
  double gamma_r;  ///< submerged unit weight of the rock, N/m3
  double FS;       ///< safety
};
/// L (m) = FS T/(gamma_r sp^2) + 0.3826 sp: rock bounded by cones of 90 degrees that overlap.
double rock_anchor_length(const RockAnchorInput& input) noexcept;

/// Bond length (m) = T/(pi D tau).
double bond_length(double T, double D, double tau) noexcept;

namespace record {
extern const Method mean_jump_depth;
extern const Method uplift_head;
extern const Method uplift_thickness;
extern const Method suction_cap;
extern const Method panel_coefficients;
extern const Method stagnation_head;
extern const Method anchored_pressure;
extern const Method rock_anchor_length;
extern const Method bond_length;
}  // namespace record

}  // namespace quell::hydraulics
