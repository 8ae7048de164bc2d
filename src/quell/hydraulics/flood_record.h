// Floods of a return period from a record of annual maxima: plotting positions, moments, fit of Gumbel or log-Pearson III,
// limits of confidence and outliers.
//
// Flows are in m3/s and their logarithms to base 10. The years are independent and alike; a quantile at more than twice the
// length of the record is an extrapolation, whatever the law.
#pragma once

#include <cstddef>
#include <limits>
#include <optional>
#include <span>

#include "quell/base/method.h"
#include "quell/hydraulics/flood_frequency.h"

namespace quell::hydraulics {

/// Probability of being exceeded in a year of the flood with that rank (the largest is 1) of N: (rank - a)/(N + 1 - 2 a).
/// a = 0 Weibull, 0.375 Blom, 0.40 Cunnane, 0.44 Gringorten, 0.5 Hazen.
double plotting_position(double rank, double N, double a) noexcept;
inline constexpr double cunnane_position = 0.40;

struct Moments {
  double mean;
  double deviation;  ///< with N - 1
  double skew;       ///< N sum(x - mean)^3/((N - 1)(N - 2) deviation^3); zero where the deviation is
};
/// Three values at least.
Moments moments_of(std::span<const double> values) noexcept;

/// Mean square error of the skew G of a record of N years.
double skew_error(double G, double N) noexcept;

struct SkewWeighting {
  double G;               ///< of the record
  double N;               ///< years
  double regional;        ///< skew of the region
  double regional_error;  ///< its mean square error, > 0
};
/// Both weighted by the inverse of their mean square errors.
double weighted_skew(const SkewWeighting& weighting) noexcept;

/// Deviations from the mean of the logarithms beyond which the lowest or highest of N is an outlier at 10 %.
double outlier_factor(double N) noexcept;

struct FactorLimits {
  double lower, upper;
};
/// Frequency factors of the limits of confidence about K, with z the normal quantile of the confidence (1.645 for 90 % between
/// both). No answer where the record of N years is too short for that z.
Outcome<FactorLimits> confidence_factors(double K, double N, double z);

/// Standard error of a quantile of the normal law of logarithms, in their unit: s/sqrt(N) sqrt(1 + K^2/2).
double lognormal_quantile_error(double s, double N, double K) noexcept;

/// Standard error (m3/s) of a Gumbel quantile from the moments: s/sqrt(N) sqrt(1 + 1.1396 K + 1.1000 K^2).
double gumbel_quantile_error(double s, double N, double K) noexcept;

enum class FloodLaw { gumbel, log_pearson_3 };

struct RecordOptions {
  FloodLaw law = FloodLaw::log_pearson_3;
  std::optional<double> regional_skew = std::nullopt;  ///< of the logarithms; without it the skew of the record stands alone
  double regional_error = 0.302;                       ///< mean square error of the regional skew
};

struct RecordFit {
  FloodLaw law;
  std::size_t N;                                                  ///< years
  double mean;                                                    ///< of the flows (Gumbel, m3/s) or of their logarithms
  double deviation;                                               ///< likewise
  double station_skew;                                            ///< likewise
  double weighted_skew;                                           ///< that of the record without a regional one
  double low_outlier = 0.0;                                       ///< m3/s; zero where the record holds a flow of zero
  double high_outlier = std::numeric_limits<double>::infinity();  ///< m3/s; endless there

  /// Flood of the return period T (years, > 1), m3/s.
  double quantile(double T) const;
  /// Frequency factor of T.
  double factor(double T) const;
  struct Limits {
    double lower, upper;  ///< m3/s
  };
  Outcome<Limits> confidence_limits(double T, double z) const;
};

inline constexpr std::size_t shortest_record = 10;
/// No answer with fewer than ten years, with a value that is not finite or below zero, without spread, or with a flow of zero
/// for log-Pearson III.
Outcome<RecordFit> fit_record(std::span<const double> maxima, const RecordOptions& options = {});

struct LognormalParameters {
  double sigma;  ///< deviation of the natural logarithm
  double mu;     ///< its mean
};
/// Of a quantity of mean (> 0) and coefficient of variation (>= 0).
LognormalParameters lognormal_parameters(double mean, double variation) noexcept;

namespace record {
extern const Method flood_plotting_position;
extern const Method flood_record_moments;
extern const Method flood_record_log_moments;
extern const Method flood_skew_weighted;
extern const Method flood_outlier_factor;
extern const Method flood_confidence_factors;
extern const Method flood_error_lognormal;
extern const Method flood_error_gumbel;
extern const Method flood_quantile_log_pearson_3;
extern const Method lognormal_parameters;
}  // namespace record

}  // namespace quell::hydraulics
