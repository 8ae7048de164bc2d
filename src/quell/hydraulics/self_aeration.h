// Where a smooth chute takes in air by itself, how much it holds in the end, and how the content grows down to there.
//
// C is the mean air content of a section up to the depth Y90 of 90 % air; theta the angle of the bed (rad).
#pragma once

#include "quell/base/constants.h"
#include "quell/base/method.h"
#include "quell/base/outcome.h"

namespace quell::hydraulics {

struct SmoothInceptionInput {
  double q;      ///< m2/s, > 0
  double theta;  ///< rad, > 0
  double ks;     ///< m, > 0
};
struct SmoothInception {
  double length;  ///< Li along the bed, m
  double depth;   ///< dI normal to the bed, m
};
/// Wood, Ackers and Loveless (1983): Li = 13.6 ks (sin theta)^0.0796 F^0.713, dI = 0.223 ks (sin theta)^-0.04 F^0.643 with
/// F = q/sqrt(g sin(theta) ks^3). 5 to 70 degrees, F from 1e3 to 1e7.
SmoothInception smooth_inception(const SmoothInceptionInput& input) noexcept;

/// Ce, mean air content of uniform flow, from the curve of data; theta (rad), 7.5 to 75 degrees. The end values are held
/// outside.
double equilibrium_air(double theta) noexcept;

/// fe/f, friction of aerated over clear flow: 0.5 (1 + tanh(0.628 (0.514 - C)/(C (1 - C)))), 1 without air. C in [0, 1).
double air_drag_reduction(double C) noexcept;

struct DevelopingAirInput {
  double q;         ///< m2/s, > 0
  double theta;     ///< rad
  double Ce;        ///< air content of uniform flow, in (0, 1)
  double ur = 0.4;  ///< rise velocity of the bubbles, m/s, > 0
  double x;         ///< m along the bed below inception, >= 0
};
/// C at x of dC/dx = (1 - C)^2 (Ce - C) ur cos(theta)/q with C = 0 at inception, by its closed form, to 1e-14.
Outcome<double> developing_air(const DevelopingAirInput& input) noexcept;

namespace record {
extern const Method smooth_inception;
extern const Method equilibrium_air;
extern const Method air_drag_reduction;
extern const Method developing_air;
}  // namespace record

}  // namespace quell::hydraulics
