#include <cmath>

#include "quell/hydraulics/flood_record.h"

namespace quell::hydraulics::record {
namespace {
constexpr Symbol N_symbol{
    "N", "years of the record", dimension::none, {10.0, 1000.0}, std::numeric_limits<double>::quiet_NaN(), {2.5, no_limit}};
constexpr Symbol plotting_in[] = {
    {"r", "rank, 1 for the largest", dimension::none, {1.0, 1000.0}},
    {"N", "years of the record", dimension::none, {1.0, 1000.0}},
    {"a", "0 Weibull, 0.375 Blom, 0.4 Cunnane, 0.44 Gringorten, 0.5 Hazen", dimension::none, {0.0, 0.5}, 0.4, {0.0, 0.5}}};
constexpr Symbol plotting_out[] = {{"P", "probability of being exceeded in a year", dimension::none, {0.0, 1.0}},
                                   {"T", "return period in years", dimension::none, above_zero}};
constexpr Symbol x_list{"x", "yearly floods", dimension::discharge, above_zero, std::numeric_limits<double>::quiet_NaN(), {},
                        true};
constexpr Symbol moments_in[] = {x_list};
constexpr Symbol moments_out[] = {{"M", "mean of the logarithms to base 10 of the floods in m3/s", dimension::none, any_value},
                                  {"s", "their standard deviation", dimension::none, {0.0, no_limit}},
                                  {"G", "their skew", dimension::none, any_value}};
constexpr Symbol error_in[] = {{"G", "skew of the record", dimension::none, {-3.0, 3.0}}, N_symbol};
constexpr Symbol error_out[] = {{"MSE", "mean square error of the skew", dimension::none, above_zero}};
constexpr Symbol weighted_in[] = {{"G", "skew of the record", dimension::none, {-3.0, 3.0}},
                                  N_symbol,
                                  {"Gr", "regional skew", dimension::none, {-2.0, 2.0}},
                                  {"E", "mean square error of the regional skew", dimension::none, {0.01, 2.0}, 0.302}};
constexpr Symbol weighted_out[] = {{"Gw", "weighted skew", dimension::none, any_value}};
constexpr Symbol confidence_in[] = {{"K", "frequency factor", dimension::none, any_value},
                                    N_symbol,
                                    {"z", "normal deviate of the one-sided probability", dimension::none, {0.0, 3.0}, 1.645}};
constexpr Symbol confidence_out[] = {{"KL", "factor of the lower limit", dimension::none, any_value},
                                     {"KU", "factor of the upper limit", dimension::none, any_value}};
constexpr Symbol outlier_in[] = {N_symbol};
constexpr Symbol outlier_out[] = {{"KN", "factor of the limit for outliers", dimension::none, any_value}};
constexpr Symbol standard_in[] = {{"s", "standard deviation", dimension::discharge, {0.0, no_limit}},
                                  N_symbol,
                                  {"K", "frequency factor", dimension::none, {-1.0, 10.0}}};
constexpr Symbol standard_out[] = {{"SE", "standard error of the flood", dimension::discharge, {0.0, no_limit}}};
constexpr Symbol log_in[] = {{"s", "standard deviation of the logarithms to base 10", dimension::none, {0.0, no_limit}},
                             N_symbol,
                             {"K", "frequency factor", dimension::none, any_value}};
constexpr Symbol log_out[] = {{"SE", "standard error of the logarithm of the flood", dimension::none, {0.0, no_limit}}};
constexpr Symbol quantile_in[] = {{"T",
                                   "return period in years",
                                   dimension::none,
                                   {1.01, 10000.0},
                                   std::numeric_limits<double>::quiet_NaN(),
                                   {1.0 + 1e-9, no_limit}},
                                  {"Gr", "regional skew; 99 where there is none", dimension::none, {-2.0, 99.0}, 99.0},
                                  x_list};
constexpr Symbol quantile_out[] = {{"Q", "flood of the return period", dimension::discharge, {0.0, no_limit}},
                                   {"QL", "lower limit, 90 % two-sided", dimension::discharge, {0.0, no_limit}},
                                   {"QU", "upper limit", dimension::discharge, {0.0, no_limit}}};

std::string_view few_years(std::span<const double> in) {
  return in[0] > 2.0 * static_cast<double>(in.size() - 2) ? "the return period is above twice the length of the record" : "";
}
}  // namespace

const Method flood_plotting{.id = "flood.plotting_position.rank",
                            .title = "Where a flood of the record is plotted",
                            .equation = "P = (r - a)/(N + 1 - 2*a); T = 1/P",
                            .inputs = plotting_in,
                            .outputs = plotting_out,
                            .source = "chow_1988",
                            .place = "sec. 12.4",
                            .provenance = Provenance::memory,
                            .accuracy = "the formulas differ most for the largest flood, by a factor of two",
                            .condition = [](std::span<const double> in) -> std::string_view {
                              return in[0] > in[1] ? "the rank is above the number of years" : "";
                            },
                            .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                              if (in[0] > in[1])
                                return bad_input("r", in[0], 1.0, in[1], "the rank is above the number of years");
                              out[0] = plotting_probability({in[0], in[1], in[2]});
                              out[1] = 1.0 / out[0];
                              return {};
                            }};

const Method flood_moments{
    .id = "flood.moments.logarithms",
    .title = "Mean, standard deviation and skew of the logarithms of yearly floods",
    .kind = EquationKind::procedure,
    .equation = "y = log10(x/(1 m3/s)); M = sum(y)/N; s with N - 1; G = N*sum((y - M)^3)/((N - 1)*(N - 2)*s^3).",
    .inputs = moments_in,
    .outputs = moments_out,
    .source = "bulletin_17b",
    .place = "eqs. 2 to 4",
    .provenance = Provenance::memory,
    .accuracy = "the skew of N years has a standard error of about sqrt(6/N)",
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      if (in.size() < 3) return no_answer("a skew needs three floods or more");
      std::vector<double> logs;
      for (const double x : in) logs.push_back(std::log10(x));
      const auto m = moments_of(logs);
      out[0] = m.mean;
      out[1] = m.deviation;
      out[2] = m.skew;
      return {};
    }};

const Method flood_skew_error{
    .id = "flood.skew_error.bulletin_17b",
    .title = "Mean square error of the skew of a record",
    .kind = EquationKind::procedure,
    .equation =
        "MSE = 10^(A - B*log10(N/10)); A = -0.33 + 0.08*abs(G) up to 0.9, -0.52 + 0.30*abs(G) above; B = 0.94 - 0.26*abs(G) up "
        "to 1.5, 0.55 above.",
    .inputs = error_in,
    .outputs = error_out,
    .source = "bulletin_17b",
    .place = "eq. 6",
    .provenance = Provenance::memory,
    .accuracy = "an approximation of published simulations",
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      out[0] = skew_error(in[0], in[1]);
      return {};
    }};

const Method flood_weighted_skew{.id = "flood.skew.weighted",
                                 .title = "Skew of the record weighted with that of the region",
                                 .kind = EquationKind::procedure,
                                 .equation = "Gw = (E*G + MSE*Gr)/(E + MSE), MSE the mean square error of the record's skew.",
                                 .inputs = weighted_in,
                                 .outputs = weighted_out,
                                 .source = "bulletin_17b",
                                 .place = "eq. 5",
                                 .provenance = Provenance::memory,
                                 .accuracy = "as the regional skew",
                                 .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                   out[0] = weighted_skew({in[0], in[1], in[2], in[3]});
                                   return {};
                                 }};

const Method flood_confidence_factors{
    .id = "flood.confidence.bulletin_17b",
    .title = "Frequency factors of the confidence limits of a flood",
    .equation = "a = 1 - z^2/(2*(N - 1)); b = K^2 - z^2/N; KL = (K - sqrt(K^2 - a*b))/a; KU = (K + sqrt(K^2 - a*b))/a",
    .inputs = confidence_in,
    .outputs = confidence_out,
    .source = "bulletin_17b",
    .place = "app. 9",
    .provenance = Provenance::memory,
    .accuracy = "of the normal law of the logarithms; the error of the skew is left out",
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      const auto factors = confidence_factors({in[0], in[1], in[2]});
      if (!factors) return tl::unexpected(factors.error());
      out[0] = factors->lower;
      out[1] = factors->upper;
      return {};
    }};

const Method flood_outlier_factor{.id = "flood.outlier_factor.bulletin_17b",
                                  .title = "Factor of the limits beyond which a flood of the record is an outlier",
                                  .equation = "KN = -0.9043 + 3.345*sqrt(log10(N)) - 0.4046*log10(N)",
                                  .inputs = outlier_in,
                                  .outputs = outlier_out,
                                  .source = "bulletin_17b",
                                  .place = "app. 4, one-sided at 10 %",
                                  .provenance = Provenance::memory,
                                  .accuracy = "0.5 % of the table it stands for",
                                  .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                    out[0] = outlier_factor(in[0]);
                                    return {};
                                  }};

const Method flood_gumbel_error{.id = "flood.standard_error.gumbel",
                                .title = "Standard error of a flood by Gumbel's law and moments",
                                .equation = "SE = s/sqrt(N)*sqrt(1 + 1.1396*K + 1.1*K^2)",
                                .inputs = standard_in,
                                .outputs = standard_out,
                                .source = "chow_1988",
                                .place = "sec. 12.6",
                                .provenance = Provenance::memory,
                                .accuracy = "for long records; a short one is less certain",
                                .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                  out[0] = gumbel_standard_error({in[0], in[1], in[2]});
                                  return {};
                                }};

const Method flood_lognormal_error{.id = "flood.standard_error.lognormal",
                                   .title = "Standard error of the logarithm of a flood by the lognormal law",
                                   .equation = "SE = s/sqrt(N)*sqrt(1 + K^2/2)",
                                   .inputs = log_in,
                                   .outputs = log_out,
                                   .source = "momentum",
                                   .place = "moments of a normal sample",
                                   .provenance = Provenance::derived,
                                   .accuracy = "for long records",
                                   .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                     out[0] = lognormal_standard_error({in[0], in[1], in[2]});
                                     return {};
                                   }};

const Method flood_quantile_record{.id = "flood.quantile.log_pearson_3",
                                   .title = "Flood of a return period from yearly floods, with its limits",
                                   .kind = EquationKind::procedure,
                                   .equation =
                                       "Moments of the logarithms, skew weighted with the regional one where it is given, "
                                       "Pearson III factor by inversion of the "
                                       "incomplete gamma function: log10(Q) = M + K*s; limits at 90 % two-sided.",
                                   .inputs = quantile_in,
                                   .outputs = quantile_out,
                                   .source = "bulletin_17b",
                                   .place = "eq. 1, app. 9",
                                   .provenance = Provenance::memory,
                                   .accuracy = "as the limits say; 1e-9 in the computation",
                                   .remarks =
                                       "Floods that the test marks as outliers are kept. Newer practice in the United States "
                                       "is the expected-moments algorithm.",
                                   .condition = few_years,
                                   .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                     const auto fit =
                                         fit_record(in.subspan(2), {.has_regional_skew = in[1] < 98.0, .regional_skew = in[1]});
                                     if (!fit) return tl::unexpected(fit.error());
                                     const auto limits = fit->limits(in[0], 1.6448536269514722);
                                     out[0] = fit->quantile(in[0]);
                                     out[1] = limits.lower;
                                     out[2] = limits.upper;
                                     return {};
                                   }};

}  // namespace quell::hydraulics::record
