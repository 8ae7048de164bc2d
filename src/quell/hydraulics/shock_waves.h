// Standing waves of supercritical flow: an abrupt turn of the wall, and the lines that pier ends shed.
//
// F Froude number V/sqrt(g d), theta turn of the wall into the flow (rad), beta angle of the shock front to the flow before it
// (rad), r = y2/y1. Hydrostatic pressure, no friction: to be trusted while r stays below about 2.
#pragma once

#include "quell/base/constants.h"
#include "quell/base/method.h"
#include "quell/base/outcome.h"

namespace quell::hydraulics {

struct ShockInput {
  double F1;     ///< > 1
  double theta;  ///< rad, > 0
};
struct ObliqueShock {
  double beta;  ///< rad
  double r;     ///< y2/y1
  double F2;    ///< after the front
};
/// The weak solution of tan(beta)/tan(beta - theta) = (sqrt(1 + 8 F1^2 sin^2 beta) - 1)/2 = r, to 1e-14, and
/// F2 = sqrt((1 + 1/r)/(2 r))/sin(beta - theta). No answer where the front cannot turn the flow so far: it detaches.
Outcome<ObliqueShock> oblique_shock(const ShockInput& input) noexcept;

/// Largest turn (rad) that an attached front makes at F1 > 1.
double largest_turn(double F1) noexcept;

/// beta = theta + 3/(2 sqrt2 F1) and r = sqrt2 F1 sin(beta) - 1/2, without iteration.
struct ApproximateShock {
  double beta;
  double r;
};
ApproximateShock approximate_shock(const ShockInput& input) noexcept;

/// r = 1 + sqrt2 F1 theta: 7 to 10 % above the exact ratio, on the safe side.
double shock_ratio_small_turn(const ShockInput& input) noexcept;

struct ContractionInput {
  double b1;     ///< width before, m
  double b3;     ///< width after, m, below b1
  double theta;  ///< turn of each wall, rad, > 0
};
/// Length (m) of a straight contraction by both walls: (b1 - b3)/(2 tan theta).
double contraction_length(const ContractionInput& input) noexcept;

struct PierLineInput {
  double b;  ///< clear width of the bay, m, > 0
  double F;  ///< > 1
};
/// Distance (m) below the pier ends at which the lines of one bay cross at its middle, b/2 sqrt(F^2 - 1); each reaches the next
/// pier's line or the wall at twice that.
double pier_line_distance(const PierLineInput& input) noexcept;

namespace record {
extern const Method shock_angle;
extern const Method shock_depth_ratio;
extern const Method shock_approximate;
extern const Method shock_small_turn;
extern const Method contraction_length;
extern const Method pier_line_distance;
}  // namespace record

}  // namespace quell::hydraulics
