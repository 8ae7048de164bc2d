// Flood frequency: quantiles by Gumbel and log-Pearson III from given moments, and the risk of floods over a life.
//
// T is the return period in years, P = 1 - 1/T the probability of not being exceeded in a year. Years are independent. A
// quantile at T above twice the length of the record is an extrapolation, whatever the law.
#pragma once

#include "quell/base/method.h"

namespace quell::hydraulics {

struct GumbelInput {
  double T;   ///< years, > 1
  double yn;  ///< mean of the reduced variate for the length of the record; 0.5772 for an endless one
  double Sn;  ///< its standard deviation, > 0; 1.2825 for an endless one
};
inline constexpr double gumbel_mean = 0.57721566490153286;       ///< Euler's constant
inline constexpr double gumbel_deviation = 1.28254983016186410;  ///< pi/sqrt(6)
/// K = (-ln(-ln(1 - 1/T)) - yn)/Sn: the flood is the mean of the yearly floods plus K standard deviations.
double gumbel_frequency_factor(const GumbelInput& input) noexcept;

/// K of the Pearson III law: the standardised quantile for the probability P of non-exceedance (0 < P < 1) and the skew G, by
/// inversion of the incomplete gamma function. G = 0 is the normal law, and K(-G, P) = -K(G, 1 - P).
double pearson_3_frequency_factor(double G, double P);

/// Probability of at least one flood of return period T (> 1) in n years (>= 0): 1 - (1 - 1/T)^n.
double risk_at_least_once(double T, double n) noexcept;

/// Probability of exactly k such floods in n years (whole numbers, 0 <= k <= n).
double risk_exactly(double T, double n, double k);

namespace record {
extern const Method flood_gumbel;
extern const Method frequency_factor_pearson_3;
extern const Method risk_at_least_once;
extern const Method risk_exactly;
}  // namespace record

}  // namespace quell::hydraulics
