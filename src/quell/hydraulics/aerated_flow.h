// Flow that carries air: the profile of the content over the depth, uniform flow with less friction, and the bulked depth.
//
// Y90 is the depth to 90 % air, y the distance from the bed, both normal to it; C the mean air content up to Y90, so that the
// depth of the water alone is d = (1 - C) Y90.
#pragma once

#include "quell/base/constants.h"
#include "quell/base/method.h"
#include "quell/base/outcome.h"

namespace quell::hydraulics {

/// D' of the profile whose mean is C, in (0, 0.9): C = 2 D' (tanh(K* + 1/(2 D')) - sqrt 0.1), tanh K* = sqrt 0.1. To 1e-13.
Outcome<double> air_diffusivity(double C) noexcept;

/// K' = K* + 1/(2 D').
double air_profile_constant(double D) noexcept;

struct LocalAirInput {
  double Y;  ///< y/Y90, 0 to 1
  double D;  ///< D', > 0
};
/// Air content at y: 1 - tanh^2(K' - Y/(2 D')); 0.90 at Y = 1.
double local_air(const LocalAirInput& input) noexcept;

struct AeratedUniformInput {
  double q;      ///< m2/s, > 0
  double theta;  ///< rad, > 0
  double f;      ///< Darcy's factor of the clear flow, > 0
  double C;      ///< mean air content, in [0, 1)
};
struct AeratedUniformFlow {
  double depth;     ///< of the water alone, m
  double velocity;  ///< q over that depth, m/s
  double Y90;       ///< m
};
/// Wide chute: d = (fe q^2/(8 g sin theta))^(1/3), fe by the drag reduction of the air.
AeratedUniformFlow aerated_uniform_flow(const AeratedUniformInput& input) noexcept;

struct BulkedDepthInput {
  double d;  ///< of the water alone, m, >= 0
  double C;  ///< mean air content, in [0, 1)
};
/// Y90 (m) = d/(1 - C).
constexpr double bulked_depth(const BulkedDepthInput& input) noexcept {
  return input.d / (1.0 - input.C);
}

namespace record {
extern const Method air_diffusivity;
extern const Method local_air;
extern const Method aerated_uniform_flow;
extern const Method bulked_depth;
}  // namespace record

}  // namespace quell::hydraulics
