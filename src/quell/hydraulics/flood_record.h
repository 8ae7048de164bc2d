// A law fitted to the largest flow of each year by the method of moments: Gumbel, or log-Pearson III.
//
// T is the return period in years. Yearly floods are taken as independent and of one kind (no mixture of rain and snow floods,
// no dam built in between); a record of under about 25 years makes the skew a guess. Beyond T of twice the length of the record
// any law is an extrapolation.
#pragma once

#include <span>
#include <vector>

#include "quell/base/method.h"

namespace quell::hydraulics {

/// Probability of being exceeded in a year of the flood of that rank (1 is the largest of N): (rank - a)/(N + 1 - 2a).
struct PlottingInput {
  double rank;  ///< 1 to N
  double N;     ///< years
  double a;     ///< 0 Weibull, 0.375 Blom, 0.40 Cunnane, 0.44 Gringorten, 0.5 Hazen
};
double plotting_probability(const PlottingInput& input) noexcept;

/// Skew (unbiased, N/((N-1)(N-2)) sum((x - mean)^3)/s^3) of the values.
struct Moments {
  double N = 0.0;
  double mean = 0.0;
  double deviation = 0.0;  ///< with N - 1
  double skew = 0.0;
};
Moments moments_of(std::span<const double> values) noexcept;

struct SkewWeights {
  double G;              ///< skew of the record
  double N;              ///< years
  double G_general;      ///< regional skew
  double error_general;  ///< its mean square error
};
/// Mean square error of a skew from N years (Bulletin 17B).
double skew_error(double G, double N) noexcept;
double weighted_skew(const SkewWeights& input) noexcept;

/// Lower and upper factor K of the confidence limits for a quantile with factor K from N years; z is the normal deviate of the
/// one-sided probability (1.645 for 90 % two-sided).
struct ConfidenceInput {
  double K, N, z;
};
struct ConfidenceFactors {
  double lower, upper;
};
Outcome<ConfidenceFactors> confidence_factors(const ConfidenceInput& input) noexcept;

/// Factor K_N of the one-sided test for outliers at 10 %, for N years.
double outlier_factor(double N) noexcept;

/// Standard error of a Gumbel quantile by moments: s/sqrt(N) sqrt(1 + 1.1396 K + 1.1 K^2).
struct GumbelErrorInput {
  double s, N, K;
};
double gumbel_standard_error(const GumbelErrorInput& input) noexcept;

/// Standard error of log10 of a quantile of the lognormal law: s/sqrt(N) sqrt(1 + K^2/2).
double lognormal_standard_error(const GumbelErrorInput& input) noexcept;

enum class RecordLaw { gumbel, log_pearson_3 };

struct RecordOptions {
  RecordLaw law = RecordLaw::log_pearson_3;
  bool has_regional_skew = false;
  double regional_skew = 0.0;
  double regional_skew_error = 0.302;
};

class RecordFit {
 public:
  double quantile(double T) const;  ///< m3/s
  struct Limits {
    double lower, upper;
  };
  /// Confidence limits (m3/s) with the normal deviate z. The lower one is not below zero.
  Limits limits(double T, double z) const;

  RecordLaw law = RecordLaw::log_pearson_3;
  Moments moments;           ///< of the floods, or of their logarithms to base 10
  double skew_used = 0.0;    ///< weighted where a regional skew was given
  double low_outlier = 0.0;  ///< m3/s: floods below or above are beyond the test for outliers; 0: Gumbel, no test
  double high_outlier = 0.0;

 private:
  double factor(double T) const;
};

/// No answer with fewer than 10 years, with a flood that is not above zero for the logarithms, or where all floods are alike.
Outcome<RecordFit> fit_record(std::span<const double> yearly_floods, const RecordOptions& options);

namespace record {
extern const Method flood_plotting;
extern const Method flood_moments;
extern const Method flood_skew_error;
extern const Method flood_weighted_skew;
extern const Method flood_confidence_factors;
extern const Method flood_outlier_factor;
extern const Method flood_gumbel_error;
extern const Method flood_lognormal_error;
extern const Method flood_quantile_record;
}  // namespace record

}  // namespace quell::hydraulics
