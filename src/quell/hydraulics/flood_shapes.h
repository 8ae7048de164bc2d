// Shapes of floods: the gamma hydrograph, the dimensionless unit hydrograph and the triangle, with a base flow below them.
//
// Times t count from the start of the rise, s; the peak is at tp. The base flow runs on unchanged, and the volume of a shape is
// that above it.
#pragma once

#include <vector>

#include "quell/base/method.h"

namespace quell::hydraulics {

/// Peak-rate factor in US units (ft3/s h per square mile and inch) of a flood whose peak times its time to peak is its volume;
/// the customary 484 is a share of 0.75 of it.
inline constexpr double peak_rate_unit = 27878400.0 / (12.0 * 3600.0);

struct FloodSeries {
  std::vector<double> time;  ///< s, from zero, one step apart; the last one at the duration
  std::vector<double> flow;  ///< m3/s
};

struct FloodShape {
  double peak;             ///< m3/s, at least the base flow
  double time_to_peak;     ///< s, > 0
  double base_flow = 0.0;  ///< m3/s
  double exponent = 3.7;   ///< of the gamma hydrograph, > 0; not used by the others
  double duration;         ///< s, > 0
  double step;             ///< s, > 0
};
FloodSeries gamma_flood(const FloodShape& shape);
FloodSeries dimensionless_flood(const FloodShape& shape);
/// Falls to the base flow at 2.67 times the time to peak.
FloodSeries triangular_flood(const FloodShape& shape);

/// Share of the peak at x = t/tp for the exponent m: x^m exp(m (1 - x)); zero before the start.
double gamma_shape(double x, double m) noexcept;
/// Share of the peak at x = t/tp of the dimensionless unit hydrograph; zero before the start and after five times the rise.
double dimensionless_shape(double x);
/// Share of the peak at x = t/tp of the triangle.
double triangular_shape(double x) noexcept;

/// Base of the triangle in times to peak.
inline constexpr double triangle_base = 2.67;

/// Peak times time to peak as a share of the volume: m^(m + 1) exp(-m)/Gamma(m + 1); grows with m > 0.
double gamma_peak_share(double m);
/// Its inverse. The share is above zero; no answer where m would be outside 1e-4 to 1e6.
Outcome<double> gamma_exponent(double share);

struct VolumeWanted {
  double peak;          ///< m3/s
  double time_to_peak;  ///< s
  double base_flow;     ///< m3/s, below the peak
  double volume;        ///< m3 above the base flow
};
/// Exponent of the gamma hydrograph of that volume.
Outcome<double> gamma_exponent_of_volume(const VolumeWanted& wanted);

namespace record {
extern const Method flood_gamma_flow;
extern const Method flood_gamma_volume;
extern const Method flood_gamma_rate_factor;
extern const Method flood_gamma_exponent_rate;
extern const Method flood_gamma_exponent_volume;
extern const Method flood_dimensionless_flow;
extern const Method flood_triangular_flow;
extern const Method flood_triangular_peak;
}  // namespace record

}  // namespace quell::hydraulics
