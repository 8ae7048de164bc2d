// Shapes of a flood by peak and time to peak: gamma form, standard dimensionless unit hydrograph, triangle.
#pragma once

#include <vector>

#include "quell/base/method.h"

namespace quell::hydraulics {

struct GammaFlow {
  double t;   ///< s from the start of the rise, >= 0
  double qp;  ///< peak, m3/s
  double tp;  ///< time to peak, s, > 0
  double m;   ///< exponent, > 0
};
/// q (m3/s) = qp (t/tp)^m exp(m (1 - t/tp)).
double gamma_flow(const GammaFlow& flow) noexcept;

/// Volume (m3) under the whole curve: qp tp e^m Gamma(m + 1)/m^(m+1).
double gamma_volume(double qp, double tp, double m) noexcept;

/// Exponent m whose volume is V (m3). No answer outside m of 0.01 to 200.
Outcome<double> gamma_exponent(double qp, double tp, double V);

/// Ordinate over the peak of the standard dimensionless unit hydrograph at t over the time to peak; 0 beyond 5.
double dimensionless_ordinate(double t_over_tp) noexcept;

/// Peak (m3/s) of the triangular unit hydrograph: 0.208 A Q/tp with A in km2, Q in mm, tp in hours.
struct TriangularPeak {
  double A;   ///< catchment, m2
  double Q;   ///< depth of runoff, m
  double tp;  ///< time to peak, s
};
double triangular_peak(const TriangularPeak& input) noexcept;

enum class FloodShape { gamma, dimensionless };

struct FloodSeriesInput {
  FloodShape shape = FloodShape::gamma;
  double peak = 0.0;          ///< m3/s, with the base flow, > base
  double time_to_peak = 0.0;  ///< s
  double base_flow = 0.0;     ///< m3/s
  double m = 3.7;
};
struct FloodSeries {
  std::vector<double> time, flow;  ///< s, m3/s
};
/// Ordinates a fiftieth of the time to peak apart, down to a thousandth of the peak above the base flow.
FloodSeries flood_series(const FloodSeriesInput& input);

namespace record {
extern const Method flood_gamma_flow;
extern const Method flood_gamma_volume;
extern const Method flood_gamma_exponent;
extern const Method flood_dimensionless;
extern const Method flood_triangular_peak;
}  // namespace record

}  // namespace quell::hydraulics
