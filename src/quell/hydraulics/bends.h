// Rapid flow in a bend of a rectangular channel: how much higher the outer wall stands.
//
// V mean velocity (m/s), d depth before the bend (m), B width (m), r radius of the centreline (m). Two rules that differ; the
// larger is taken.
#pragma once

#include "quell/base/constants.h"
#include "quell/base/method.h"
#include "quell/base/outcome.h"

namespace quell::hydraulics {

struct BendRiseInput {
  double V;        ///< m/s
  double B;        ///< m
  double r;        ///< m, > 0
  double C = 1.0;  ///< 1 rapid flow in a simple curve, 0.5 with spiral transitions or tranquil flow
};
/// Rise (m) of the outer edge above the level at the centreline: C V^2 B/(g r). Engineer Manual 1110-2-1601.
double bend_rise(const BendRiseInput& input) noexcept;

struct BendFlow {
  double V;  ///< m/s, above sqrt(g d)
  double d;  ///< m, > 0
  double B;  ///< m, > 0
  double r;  ///< m, above B/2
};
struct BendWaves {
  double theta0;  ///< first extreme, and half the length of the wave, measured along the curve from its start, rad
  double outer;   ///< depth at the outer wall there, m
  double inner;   ///< depth at the inner wall there, m
};
/// Knapp (1951): V^2/g sin^2(beta +- theta0/2), sin(beta) = 1/F, theta0 = atan(B/((r + B/2) tan beta)). Returns d for a
/// straight channel. No answer for subcritical flow and for bends so sharp that the formula passes its extremes.
Outcome<BendWaves> bend_waves(const BendFlow& input) noexcept;

/// Depth (m) to which the outer wall is wetted: the larger of d + rise and Knapp's outer depth.
Outcome<double> bend_wall_depth(const BendFlow& input, double C = 1.0) noexcept;

namespace record {
extern const Method bend_rise;
extern const Method bend_waves;
extern const Method bend_wall_depth;
}  // namespace record

}  // namespace quell::hydraulics
