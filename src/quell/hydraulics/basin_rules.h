// Rules that every jump basin shares: freeboard, the invert curve at the chute's foot, pier force, pressure of the curve.
#pragma once

#include "quell/base/constants.h"
#include "quell/base/method.h"

namespace quell::hydraulics {

struct BasinFreeboardInput {
  double V1;  ///< m/s
  double y2;  ///< m
};
/// FB (m) = 0.1 s * V1 + 0.1 y2, above the higher of tailwater and sequent depth. The same numbers hold in ft and ft/s.
double basin_freeboard(const BasinFreeboardInput& input) noexcept;

struct ChuteFreeboardInput {
  double V;  ///< m/s
  double d;  ///< clear-water depth normal to the floor, m
};
/// FB (m) = 0.61 + 0.0371 V d^(1/3), normal to the floor; includes air and spray.
double chute_freeboard(const ChuteFreeboardInput& input) noexcept;

struct InvertPressureInput {
  double q;  ///< m2/s
  double V;  ///< m/s
  double R;  ///< radius, m, > 0
};
/// p (Pa) = rho q V/R: pressure that the concave curve adds.
double invert_curve_pressure(const InvertPressureInput& input) noexcept;

struct PierForceInput {
  double A;   ///< frontal area, m2
  double y1;  ///< m
  double V1;  ///< m/s
};
/// F (N) = 2 gamma A (y1 + V1^2/2g): design force on a baffle pier.
double baffle_pier_force(const PierForceInput& input) noexcept;

/// F (N) = rho V^2/2 * A: a jet of velocity V (m/s) that meets a plane face of area A (m2) whole.
double stagnation_force(double A, double V) noexcept;

struct FlareInput {
  double F;  ///< Froude number at the start of the flare, > 0
};
/// tan of the largest flare of a wall that the flow follows: 1/(3 F).
double largest_flare(const FlareInput& input) noexcept;

namespace record {
extern const Method basin_freeboard;
extern const Method chute_freeboard;
extern const Method invert_curve_pressure;
extern const Method baffle_pier_force;
extern const Method stagnation_force;
extern const Method largest_flare;
}  // namespace record

}  // namespace quell::hydraulics
