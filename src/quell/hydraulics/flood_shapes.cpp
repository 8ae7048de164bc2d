#include "quell/hydraulics/flood_shapes.h"

#include <algorithm>
#include <boost/math/special_functions/gamma.hpp>
#include <cmath>

#include "quell/base/curve.h"
#include "quell/base/roots.h"

namespace quell::hydraulics {
namespace {

constexpr double most_rows = 1e6;

template <class Shape>
FloodSeries filled(const FloodShape& flood, const Shape& shape) {
  FloodSeries series;
  const double steps = std::min(most_rows, std::ceil(flood.duration / flood.step * (1.0 - 1e-12)));
  if (!(steps >= 1.0)) return series;
  series.time.reserve(static_cast<std::size_t>(steps) + 1);
  series.flow.reserve(static_cast<std::size_t>(steps) + 1);
  for (double k = 0.0; k <= steps; ++k) {
    const double time = std::min(k * flood.step, flood.duration);
    series.time.push_back(time);
    series.flow.push_back(flood.base_flow + (flood.peak - flood.base_flow) * shape(time / flood.time_to_peak));
  }
  return series;
}

double ln_peak_share(double m) {
  return (m + 1.0) * std::log(m) - m - boost::math::lgamma(m + 1.0);
}
}  // namespace

double gamma_shape(double x, double m) noexcept {
  return x > 0.0 ? std::exp(m * (std::log(x) + 1.0 - x)) : 0.0;
}

double dimensionless_shape(double x) {
  static const Curve& shape = curve("dimensionless_unit_flood");
  return x > 0.0 ? shape.at(x) : 0.0;
}

double triangular_shape(double x) noexcept {
  return std::max(0.0, std::min(x, (triangle_base - x) / (triangle_base - 1.0)));
}

FloodSeries gamma_flood(const FloodShape& shape) {
  return filled(shape, [&](double x) { return gamma_shape(x, shape.exponent); });
}

FloodSeries dimensionless_flood(const FloodShape& shape) {
  return filled(shape, dimensionless_shape);
}

FloodSeries triangular_flood(const FloodShape& shape) {
  return filled(shape, triangular_shape);
}

double gamma_peak_share(double m) {
  return std::exp(ln_peak_share(m));
}

Outcome<double> gamma_exponent(double share) {
  if (!(share > 0.0)) return bad_input("share", share, above_zero.lowest, no_limit, "a flood without a peak has no shape");
  const double wanted = std::log(share);
  const auto root =
      find_root([&](double ln_m) { return ln_peak_share(std::exp(ln_m)) - wanted; }, std::log(1e-4), std::log(1e6), 1e-13);
  if (!root) return no_answer("no gamma hydrograph has this share of its volume about the peak");
  return std::exp(*root);
}

Outcome<double> gamma_exponent_of_volume(const VolumeWanted& wanted) {
  if (!(wanted.peak > wanted.base_flow))
    return bad_input("base_flow", wanted.base_flow, 0.0, wanted.peak, "the base flow must be below the peak");
  return gamma_exponent((wanted.peak - wanted.base_flow) * wanted.time_to_peak / wanted.volume);
}

}  // namespace quell::hydraulics
