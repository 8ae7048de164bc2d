#include "quell/hydraulics/flood_record.h"

#include <algorithm>
#include <cmath>
#include <vector>

namespace quell::hydraulics {

double plotting_position(double rank, double N, double a) noexcept {
  return (rank - a) / (N + 1.0 - 2.0 * a);
}

Moments moments_of(std::span<const double> values) noexcept {
  const auto N = static_cast<double>(values.size());
  double sum = 0.0;
  for (const double x : values) sum += x;
  const double mean = sum / N;
  double squares = 0.0;
  double cubes = 0.0;
  for (const double x : values) {
    const double off = x - mean;
    squares += off * off;
    cubes += off * off * off;
  }
  const double deviation = std::sqrt(squares / (N - 1.0));
  // Equal values leave rounding only.
  const bool flat = !(deviation > 1e-14 * std::abs(mean));
  return {.mean = mean,
          .deviation = flat ? 0.0 : deviation,
          .skew = flat ? 0.0 : N * cubes / ((N - 1.0) * (N - 2.0) * deviation * deviation * deviation)};
}

double skew_error(double G, double N) noexcept {
  const double size = std::abs(G);
  const double A = size <= 0.9 ? -0.33 + 0.08 * size : -0.52 + 0.30 * size;
  const double B = size <= 1.5 ? 0.94 - 0.26 * size : 0.55;
  return std::pow(10.0, A - B * std::log10(N / 10.0));
}

double weighted_skew(const SkewWeighting& weighting) noexcept {
  const double error = skew_error(weighting.G, weighting.N);
  return (weighting.regional_error * weighting.G + error * weighting.regional) / (weighting.regional_error + error);
}

double outlier_factor(double N) noexcept {
  const double digits = std::log10(N);
  return -0.9043 + 3.345 * std::sqrt(digits) - 0.4046 * digits;
}

Outcome<FactorLimits> confidence_factors(double K, double N, double z) {
  const double a = 1.0 - z * z / (2.0 * (N - 1.0));
  if (!(a > 0.0)) return no_answer("the record is too short for limits of this confidence");
  const double b = K * K - z * z / N;
  // K^2 - a b is above zero for every K where a is between 0 and 1.
  const double root = std::sqrt(std::max(0.0, K * K - a * b));
  return FactorLimits{.lower = (K - root) / a, .upper = (K + root) / a};
}

double lognormal_quantile_error(double s, double N, double K) noexcept {
  return s / std::sqrt(N) * std::sqrt(1.0 + 0.5 * K * K);
}

double gumbel_quantile_error(double s, double N, double K) noexcept {
  return s / std::sqrt(N) * std::sqrt(1.0 + 1.1396 * K + 1.1 * K * K);
}

double RecordFit::factor(double T) const {
  return law == FloodLaw::gumbel ? gumbel_frequency_factor({.T = T, .yn = gumbel_mean, .Sn = gumbel_deviation})
                                 : pearson_3_frequency_factor(weighted_skew, 1.0 - 1.0 / T);
}

double RecordFit::quantile(double T) const {
  const double x = mean + factor(T) * deviation;
  return law == FloodLaw::gumbel ? x : std::pow(10.0, x);
}

Outcome<RecordFit::Limits> RecordFit::confidence_limits(double T, double z) const {
  if (law == FloodLaw::gumbel) {
    const double error = z * gumbel_quantile_error(deviation, static_cast<double>(N), factor(T));
    const double x = quantile(T);
    return Limits{.lower = x - error, .upper = x + error};
  }
  const auto factors = confidence_factors(factor(T), static_cast<double>(N), z);
  if (!factors) return tl::unexpected(factors.error());
  return Limits{.lower = std::pow(10.0, mean + factors->lower * deviation),
                .upper = std::pow(10.0, mean + factors->upper * deviation)};
}

Outcome<RecordFit> fit_record(std::span<const double> maxima, const RecordOptions& options) {
  if (maxima.size() < shortest_record)
    return no_answer("a record of fewer than ten annual floods supports no law of frequency");
  bool has_zero = false;
  for (const double flow : maxima) {
    if (!(flow >= 0.0) || !std::isfinite(flow))
      return bad_input("Q", flow, 0.0, no_limit, "an annual flood is a number not below zero");
    has_zero = has_zero || flow == 0.0;
  }
  const bool logarithmic = options.law == FloodLaw::log_pearson_3;
  if (logarithmic && has_zero)
    return bad_input("Q", 0.0, above_zero.lowest, no_limit,
                     "log-Pearson III takes the logarithm of every flood, and a year without flow has none");
  if (logarithmic && options.regional_skew && !(options.regional_error > 0.0))
    return bad_input("regional_error", options.regional_error, above_zero.lowest, no_limit,
                     "the mean square error of the regional skew is above zero");
  std::vector<double> logarithms;
  Moments of_logarithms{};
  if (!has_zero) {
    logarithms.reserve(maxima.size());
    for (const double flow : maxima) logarithms.push_back(std::log10(flow));
    of_logarithms = moments_of(logarithms);
  }
  const Moments moments = logarithmic ? of_logarithms : moments_of(maxima);
  if (!(moments.deviation > 0.0)) return no_answer("all floods of the record are alike: there is no law of frequency in them");
  const auto N = static_cast<double>(maxima.size());
  RecordFit fit{.law = options.law,
                .N = maxima.size(),
                .mean = moments.mean,
                .deviation = moments.deviation,
                .station_skew = moments.skew,
                .weighted_skew = moments.skew};
  if (logarithmic && options.regional_skew)
    fit.weighted_skew = weighted_skew(
        {.G = moments.skew, .N = N, .regional = *options.regional_skew, .regional_error = options.regional_error});
  if (!has_zero) {
    const double reach = outlier_factor(N) * of_logarithms.deviation;
    fit.low_outlier = std::pow(10.0, of_logarithms.mean - reach);
    fit.high_outlier = std::pow(10.0, of_logarithms.mean + reach);
  }
  return fit;
}

LognormalParameters lognormal_parameters(double mean, double variation) noexcept {
  const double variance = std::log1p(variation * variation);
  return {.sigma = std::sqrt(variance), .mu = std::log(mean) - 0.5 * variance};
}

}  // namespace quell::hydraulics
