// The records of flood_record.h: plotting positions, skew, outliers, errors and limits.
#include "quell/hydraulics/flood_record.h"

namespace quell::hydraulics::record {
namespace {
constexpr Range not_negative{0.0, no_limit};
constexpr Symbol N_symbol{.name = "N",
                          .meaning = "years of the record",
                          .dimension = dimension::none,
                          .range = {10.0, 500.0},
                          .possible = {3.0, 1e6}};
constexpr Symbol K_symbol{.name = "K", .meaning = "frequency factor", .dimension = dimension::none, .range = {-5.0, 10.0}};
constexpr Symbol z_symbol{.name = "z",
                          .meaning = "normal quantile of the confidence, 1.645 for 90 % between both limits",
                          .dimension = dimension::none,
                          .range = {0.0, 2.6},
                          .possible = {0.0, 10.0}};
constexpr Symbol G_symbol{.name = "G",
                          .meaning = "skew of the record",
                          .dimension = dimension::none,
                          .range = {-3.0, 3.0},
                          .possible = {-20.0, 20.0}};
constexpr Symbol position_in[] = {{"i", "rank, the largest flood being 1", dimension::none, {1.0, 1e6}},
                                  N_symbol,
                                  {.name = "a",
                                   .meaning = "plotting constant",
                                   .dimension = dimension::none,
                                   .range = {0.0, 0.5},
                                   .optional_value = 0.4,
                                   .possible = {0.0, 0.99}}};
constexpr Symbol position_out[] = {{"P", "probability of being exceeded in a year", dimension::none, any_value},
                                   {"T", "return period in years", dimension::none, any_value}};
constexpr Symbol skew_in[] = {G_symbol,
                              N_symbol,
                              {.name = "Gr",
                               .meaning = "skew of the region",
                               .dimension = dimension::none,
                               .range = {-3.0, 3.0},
                               .possible = {-20.0, 20.0}},
                              {.name = "Er",
                               .meaning = "mean square error of the regional skew",
                               .dimension = dimension::none,
                               .range = above_zero,
                               .optional_value = 0.302}};
constexpr Symbol skew_out[] = {{"E", "mean square error of the skew of the record", dimension::none, above_zero},
                               {"Gw", "weighted skew", dimension::none, any_value}};
constexpr Symbol N_in[] = {N_symbol};
constexpr Symbol outlier_out[] = {{"KN", "deviations from the mean of the logarithms", dimension::none, any_value}};
constexpr Symbol limits_in[] = {K_symbol, N_symbol, z_symbol};
constexpr Symbol limits_out[] = {{"KL", "factor of the lower limit", dimension::none, any_value},
                                 {"KU", "factor of the upper limit", dimension::none, any_value}};
constexpr Symbol error_in[] = {
    {"s", "standard deviation of the logarithms", dimension::none, not_negative}, N_symbol, K_symbol};
constexpr Symbol error_out[] = {{"SE", "standard error of the logarithm", dimension::none, not_negative}};
constexpr Symbol gumbel_error_in[] = {
    {"s", "standard deviation of the floods", dimension::discharge, not_negative}, N_symbol, K_symbol};
constexpr Symbol gumbel_error_out[] = {{"SE", "standard error", dimension::discharge, not_negative}};
constexpr Symbol lognormal_in[] = {{"mean", "mean of the quantity", dimension::none, above_zero},
                                   {"CV", "its coefficient of variation", dimension::none, {0.0, 2.0}}};
constexpr Symbol lognormal_out[] = {{"sigma", "standard deviation of its natural logarithm", dimension::none, not_negative},
                                    {"mu", "mean of its natural logarithm", dimension::none, any_value}};
}  // namespace

const Method flood_plotting_position{
    .id = "flood.plotting_position.general",
    .title = "Plotting position of a flood in a record of annual floods",
    .equation = "P = (i - a)/(N + 1 - 2*a); T = 1/P",
    .inputs = position_in,
    .outputs = position_out,
    .source = "cunnane_1978",
    .place = "general formula; a = 0 Weibull, 0.375 Blom, 0.40 Cunnane, 0.44 Gringorten, 0.5 Hazen",
    .provenance = Provenance::memory,
    .accuracy = "the position of the largest flood is known to a factor of two at best",
    .condition = [](std::span<const double> in) -> std::string_view {
      return in[0] <= in[1] ? std::string_view{} : "the rank is above the number of floods";
    },
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      if (in[0] < 1.0) return bad_input("i", in[0], 1.0, in[1], "the largest flood has the rank 1");
      if (in[0] > in[1]) return bad_input("i", in[0], 1.0, in[1], "there are not so many floods");
      out[0] = plotting_position(in[0], in[1], in[2]);
      out[1] = 1.0 / out[0];
      return {};
    }};

const Method flood_skew_weighted{
    .id = "flood.skew.weighted",
    .title = "Skew of a record weighted with that of its region",
    .kind = EquationKind::procedure,
    .equation =
        "E = 10^(A - B log10(N/10)) with A = -0.33 + 0.08 |G| up to |G| = 0.9, then -0.52 + 0.30 |G|, and "
        "B = 0.94 - 0.26 |G| up to |G| = 1.5, then 0.55; Gw = (Er G + E Gr)/(Er + E).",
    .inputs = skew_in,
    .outputs = skew_out,
    .source = "bulletin_17b",
    .place = "weighted skew",
    .provenance = Provenance::memory,
    .accuracy = "a fit to simulated records; the fit leaps by 2 % at |G| = 0.9",
    .remarks = "Superseded in the United States by the expected moments of Bulletin 17C.",
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      out[0] = skew_error(in[0], in[1]);
      out[1] = weighted_skew({.G = in[0], .N = in[1], .regional = in[2], .regional_error = in[3]});
      return {};
    }};

const Method flood_outlier_factor{.id = "flood.outlier_factor.ten_percent",
                                  .title = "Deviations beyond which the extreme of a record is an outlier at 10 %",
                                  .equation = "KN = -0.9043 + 3.345*sqrt(log10(N)) - 0.4046*log10(N)",
                                  .inputs = N_in,
                                  .outputs = outlier_out,
                                  .source = "bulletin_17b",
                                  .place = "outlier test, approximation of the table of one-sided 10 % values",
                                  .provenance = Provenance::memory,
                                  .accuracy = "0.007 of the exact test of the normal law up to 100 years",
                                  .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                    out[0] = outlier_factor(in[0]);
                                    return {};
                                  }};

const Method flood_confidence_factors{
    .id = "flood.confidence_factors.pearson_3",
    .title = "Frequency factors of the limits of confidence of a log-Pearson III quantile",
    .equation = "a = 1 - z^2/(2*(N - 1)); b = K^2 - z^2/N; KL = (K - sqrt(K^2 - a*b))/a; KU = (K + sqrt(K^2 - a*b))/a",
    .inputs = limits_in,
    .outputs = limits_out,
    .source = "bulletin_17b",
    .place = "confidence limits, non-central t approximated",
    .provenance = Provenance::memory,
    .accuracy = "too narrow for a skewed law: the error of the skew is left out",
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      const auto factors = confidence_factors(in[0], in[1], in[2]);
      if (!factors) return tl::unexpected(factors.error());
      out[0] = factors->lower;
      out[1] = factors->upper;
      return {};
    }};

const Method flood_error_lognormal{.id = "flood.standard_error.lognormal",
                                   .title = "Standard error of the logarithm of a lognormal flood",
                                   .equation = "SE = s/sqrt(N)*sqrt(1 + K^2/2)",
                                   .inputs = error_in,
                                   .outputs = error_out,
                                   .source = "bulletin_17b",
                                   .place = "asymptotic error of a quantile of the normal law",
                                   .provenance = Provenance::memory,
                                   .accuracy = "for long records; 5 % at 20 years",
                                   .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                     out[0] = lognormal_quantile_error(in[0], in[1], in[2]);
                                     return {};
                                   }};

const Method flood_error_gumbel{.id = "flood.standard_error.gumbel",
                                .title = "Standard error of a Gumbel flood from the moments of the record",
                                .equation = "SE = s/sqrt(N)*sqrt(1 + 1.1396*K + 1.1*K^2)",
                                .inputs = gumbel_error_in,
                                .outputs = gumbel_error_out,
                                .source = "chow_1988",
                                .place = "ch. 12, standard error of the frequency factor of the extreme value law of type I",
                                .provenance = Provenance::memory,
                                .accuracy = "for long records; 10 % at 20 years",
                                .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                  out[0] = gumbel_quantile_error(in[0], in[1], in[2]);
                                  return {};
                                }};

const Method lognormal_parameters{.id = "uncertainty.lognormal.moments",
                                  .title = "Parameters of the lognormal law of a mean and a coefficient of variation",
                                  .equation = "sigma = sqrt(ln(1 + CV^2)); mu = ln(mean) - sigma^2/2",
                                  .inputs = lognormal_in,
                                  .outputs = lognormal_out,
                                  .source = "momentum",
                                  .place = "probability: moments of the lognormal law",
                                  .provenance = Provenance::derived,
                                  .accuracy = "exact",
                                  .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                    const auto parameters = hydraulics::lognormal_parameters(in[0], in[1]);
                                    out[0] = parameters.sigma;
                                    out[1] = parameters.mu;
                                    return {};
                                  }};

}  // namespace quell::hydraulics::record
