// Uniform flow: discharge, slope and roughness by Manning, discharge and normal depth by Chezy, critical and limit slope; and
// the slope of the surface in gradually varied flow in a wide channel.
//
// V = R^(2/3) sqrt(S)/n (Manning, SI) or V = C sqrt(R S) (Chezy). n is rarely known better than 15 %.
#pragma once

#include "quell/hydraulics/section.h"

namespace quell::hydraulics {

struct ManningFlow {
  Trapezoid section;
  double y;          ///< depth, m, > 0
  double bed_slope;  ///< S, > 0
  double manning_n;  ///< s/m^(1/3), > 0
};
/// Q (m3/s) = A R^(2/3) sqrt(S)/n.
double manning_discharge(const ManningFlow& flow) noexcept;

struct ManningSlopeInput {
  Trapezoid section;
  double y;          ///< depth, m, > 0
  double manning_n;  ///< s/m^(1/3), > 0
  double Q;          ///< m3/s
};
/// S = (Q n/(A R^(2/3)))^2: bed slope of uniform flow, friction slope of any other.
double manning_slope(const ManningSlopeInput& input) noexcept;

struct ManningRoughnessInput {
  Trapezoid section;
  double y;          ///< depth, m, > 0
  double bed_slope;  ///< S, > 0
  double Q;          ///< m3/s, > 0
};
/// n (s/m^(1/3)) = A R^(2/3) sqrt(S)/Q from a measured uniform flow.
double manning_roughness(const ManningRoughnessInput& input) noexcept;

struct ChezyFlow {
  Trapezoid section;
  double y;          ///< depth, m, > 0
  double bed_slope;  ///< S, > 0
  double C;          ///< Chezy's coefficient, m^0.5/s, > 0
};
/// Q (m3/s) = C A sqrt(R S).
double chezy_discharge(const ChezyFlow& flow) noexcept;

struct ChezyDepthInput {
  Trapezoid section;
  double bed_slope;  ///< S, > 0
  double C;          ///< m^0.5/s, > 0
  double Q;          ///< m3/s, > 0
};
/// Depth of uniform flow by Chezy's formula, m, to 1e-12 relative.
Outcome<double> normal_depth_chezy(const ChezyDepthInput& input);

struct CriticalSlopeInput {
  Trapezoid section;
  double yc;         ///< critical depth, m, > 0
  double manning_n;  ///< s/m^(1/3), > 0
};
/// Sc = n^2 g A/(T R^(4/3)) at critical depth: the slope on which uniform flow is critical.
double critical_slope(const CriticalSlopeInput& input) noexcept;

struct LimitSlopeInput {
  double b;          ///< width of the rectangle, m, > 0
  double manning_n;  ///< s/m^(1/3), > 0
  double F;          ///< Froude number not to be exceeded, > 0
};
/// Steepest slope on which uniform flow in a rectangle keeps below F at every discharge: F^2 g n^2 (4/3)^(4/3) (6/b)^(1/3),
/// reached at the depth b/6.
double limit_slope(const LimitSlopeInput& input) noexcept;

struct WideSurfaceInput {
  double bed_slope;  ///< S
  double yn;         ///< normal depth, m, > 0
  double yc;         ///< critical depth, m, > 0
  double y;          ///< depth, m, > 0, not yc
};
/// dy/dx = S (1 - (yn/y)^3)/(1 - (yc/y)^3) in a wide channel with a constant Chezy coefficient; x downstream.
double surface_slope_chezy_wide(const WideSurfaceInput& input) noexcept;

namespace record {
extern const Method discharge_manning;
extern const Method slope_manning;
extern const Method roughness_manning;
extern const Method discharge_chezy;
extern const Method unit_discharge_chezy_wide;
extern const Method normal_depth_chezy;
extern const Method critical_slope_manning;
extern const Method limit_slope_manning;
extern const Method surface_slope_chezy_wide;
}  // namespace record

}  // namespace quell::hydraulics
