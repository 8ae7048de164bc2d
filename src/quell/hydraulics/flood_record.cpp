#include "quell/hydraulics/flood_record.h"

#include <algorithm>
#include <cmath>

#include "quell/hydraulics/flood_frequency.h"

namespace quell::hydraulics {

double plotting_probability(const PlottingInput& input) noexcept {
  return (input.rank - input.a) / (input.N + 1.0 - 2.0 * input.a);
}

Moments moments_of(std::span<const double> values) noexcept {
  Moments m{.N = static_cast<double>(values.size())};
  for (const double value : values) m.mean += value / m.N;
  double second = 0.0;
  double third = 0.0;
  for (const double value : values) {
    const double d = value - m.mean;
    second += d * d;
    third += d * d * d;
  }
  m.deviation = std::sqrt(second / (m.N - 1.0));
  if (m.deviation > 0.0) m.skew = m.N * third / ((m.N - 1.0) * (m.N - 2.0) * std::pow(m.deviation, 3));
  return m;
}

double skew_error(double G, double N) noexcept {
  const double size = std::abs(G);
  const double A = size <= 0.9 ? -0.33 + 0.08 * size : -0.52 + 0.30 * size;
  const double B = size <= 1.5 ? 0.94 - 0.26 * size : 0.55;
  return std::pow(10.0, A - B * std::log10(N / 10.0));
}

double weighted_skew(const SkewWeights& input) noexcept {
  const double own = skew_error(input.G, input.N);
  return (input.error_general * input.G + own * input.G_general) / (input.error_general + own);
}

Outcome<ConfidenceFactors> confidence_factors(const ConfidenceInput& input) noexcept {
  const double a = 1.0 - input.z * input.z / (2.0 * (input.N - 1.0));
  const double b = input.K * input.K - input.z * input.z / input.N;
  const double root = input.K * input.K - a * b;
  if (!(a > 0.0) || !(root >= 0.0)) return no_answer("the record is too short for these confidence limits");
  return ConfidenceFactors{(input.K - std::sqrt(root)) / a, (input.K + std::sqrt(root)) / a};
}

double outlier_factor(double N) noexcept {
  const double log = std::log10(N);
  return -0.9043 + 3.345 * std::sqrt(log) - 0.4046 * log;
}

double gumbel_standard_error(const GumbelErrorInput& input) noexcept {
  return input.s / std::sqrt(input.N) * std::sqrt(1.0 + 1.1396 * input.K + 1.1 * input.K * input.K);
}

double lognormal_standard_error(const GumbelErrorInput& input) noexcept {
  return input.s / std::sqrt(input.N) * std::sqrt(1.0 + input.K * input.K / 2.0);
}

double RecordFit::factor(double T) const {
  if (law == RecordLaw::gumbel) return gumbel_frequency_factor({.T = T, .yn = gumbel_mean, .Sn = gumbel_deviation});
  return pearson_3_frequency_factor(skew_used, 1.0 - 1.0 / T);
}

double RecordFit::quantile(double T) const {
  const double x = moments.mean + factor(T) * moments.deviation;
  return law == RecordLaw::gumbel ? std::max(0.0, x) : std::pow(10.0, x);
}

RecordFit::Limits RecordFit::limits(double T, double z) const {
  const double K = factor(T);
  if (law == RecordLaw::gumbel) {
    const double half = z * gumbel_standard_error({.s = moments.deviation, .N = moments.N, .K = K});
    const double x = moments.mean + K * moments.deviation;
    return {std::max(0.0, x - half), std::max(0.0, x + half)};
  }
  const auto factors = confidence_factors({.K = K, .N = moments.N, .z = z});
  if (!factors) return {quantile(T), quantile(T)};
  return {std::pow(10.0, moments.mean + factors->lower * moments.deviation),
          std::pow(10.0, moments.mean + factors->upper * moments.deviation)};
}

Outcome<RecordFit> fit_record(std::span<const double> yearly_floods, const RecordOptions& options) {
  if (yearly_floods.size() < 10) return no_answer("a law needs the floods of ten years at least");
  std::vector<double> values(yearly_floods.begin(), yearly_floods.end());
  RecordFit fit;
  fit.law = options.law;
  if (options.law == RecordLaw::log_pearson_3)
    for (double& value : values) {
      if (!(value > 0.0)) return no_answer("a year without any flow has no logarithm: leave it out and treat it apart");
      value = std::log10(value);
    }
  fit.moments = moments_of(values);
  if (!(fit.moments.deviation > 1e-12)) return no_answer("all floods of the record are alike");
  if (options.law == RecordLaw::gumbel) return fit;
  fit.skew_used = fit.moments.skew;
  if (options.has_regional_skew)
    fit.skew_used = weighted_skew({fit.moments.skew, fit.moments.N, options.regional_skew, options.regional_skew_error});
  const double reach = outlier_factor(fit.moments.N) * fit.moments.deviation;
  fit.low_outlier = std::pow(10.0, fit.moments.mean - reach);
  fit.high_outlier = std::pow(10.0, fit.moments.mean + reach);
  return fit;
}

}  // namespace quell::hydraulics
