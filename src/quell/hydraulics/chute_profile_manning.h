// Gradually varied supercritical flow down a straight rectangular chute with Manning's friction; and down one of changing width
// with Darcy's. The design itself uses Darcy's friction throughout (chute_profile.h).
#pragma once

#include "quell/base/constants.h"
#include "quell/base/method.h"
#include "quell/base/outcome.h"

namespace quell::hydraulics {

struct ManningChute {
  double Q;      ///< m3/s, > 0
  double b;      ///< m, > 0
  double theta;  ///< rad
  double n;      ///< s/m^(1/3), > 0
  double d0;     ///< depth normal to the bed at the start, m, supercritical
  double x;      ///< distance along the bed, m, >= 0
};
struct ChutePoint {
  double d;   ///< depth normal to the bed, m
  double V;   ///< m/s
  double dH;  ///< energy head lost since the start, m
};
/// At x: dH/dx = -n^2 V^2/R^(4/3), R = b d/(b + 2 d), d from H - z = d cos(theta) + q^2/(2 g d^2). Runge and Kutta's fourth
/// order, steps halved until H holds to 1e-9 m. No answer where the flow would not stay supercritical.
Outcome<ChutePoint> manning_profile(const ManningChute& input) noexcept;

struct TaperedChute {
  double Q;       ///< m3/s, > 0
  double b0;      ///< width at the start, m, > 0
  double b1;      ///< width at the end, m, > 0
  double theta;   ///< rad
  double ks;      ///< m, > 0
  double d0;      ///< depth normal to the bed at the start, m, supercritical
  double length;  ///< m along the bed, > 0
};
/// At the end of a chute of linearly changing width, with Darcy's friction by Colebrook (chute_profile.h).
Outcome<ChutePoint> tapered_profile(const TaperedChute& input);

namespace record {
extern const Method chute_profile_manning;
extern const Method chute_profile_taper;
}  // namespace record

}  // namespace quell::hydraulics
