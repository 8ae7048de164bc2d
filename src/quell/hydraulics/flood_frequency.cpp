#include "quell/hydraulics/flood_frequency.h"

#include <boost/math/distributions/binomial.hpp>
#include <boost/math/distributions/normal.hpp>
#include <boost/math/special_functions/gamma.hpp>
#include <cmath>

namespace quell::hydraulics {
namespace {

/// Beyond its domain Boost.Math is to return a NaN, which the guarded call refuses, and not to throw.
using Quiet = boost::math::policies::policy<boost::math::policies::domain_error<boost::math::policies::ignore_error>,
                                            boost::math::policies::overflow_error<boost::math::policies::ignore_error>,
                                            boost::math::policies::evaluation_error<boost::math::policies::ignore_error>,
                                            boost::math::policies::pole_error<boost::math::policies::ignore_error>>;

constexpr double nearly_no_skew = 1e-4;
}  // namespace

double gumbel_frequency_factor(const GumbelInput& input) noexcept {
  return (-std::log(-std::log(1.0 - 1.0 / input.T)) - input.yn) / input.Sn;
}

double pearson_3_frequency_factor(double G, double P) {
  if (std::abs(G) < nearly_no_skew) {
    // The next term of the expansion in G is below 1e-8.
    const double z = boost::math::quantile(boost::math::normal_distribution<double, Quiet>(), P);
    return z + (z * z - 1.0) * G / 6.0;
  }
  const double shape = 4.0 / (G * G);
  const double x = G > 0.0 ? boost::math::gamma_p_inv(shape, P, Quiet()) : boost::math::gamma_q_inv(shape, P, Quiet());
  return 0.5 * G * (x - shape);
}

double risk_at_least_once(double T, double n) noexcept {
  return -std::expm1(n * std::log1p(-1.0 / T));
}

double risk_exactly(double T, double n, double k) {
  return boost::math::pdf(boost::math::binomial_distribution<double, Quiet>(n, 1.0 / T), k);
}

namespace record {
namespace {
constexpr Symbol T_symbol{.name = "T",
                          .meaning = "return period in years",
                          .dimension = dimension::none,
                          .range = {1.01, 10000.0},
                          .possible = {1.0, no_limit}};
constexpr Symbol n_symbol{"n", "years", dimension::none, {0.0, 1000.0}};
constexpr Symbol gumbel_in[] = {
    {"xm", "mean of the yearly floods", dimension::discharge, above_zero},
    {"s", "standard deviation of the yearly floods", dimension::discharge, {0.0, no_limit}},
    T_symbol,
    {"yn", "mean of the reduced variate for the length of the record", dimension::none, {0.45, 0.58}, gumbel_mean},
    {"Sn", "standard deviation of the reduced variate", dimension::none, {0.9, 1.29}, gumbel_deviation}};
constexpr Symbol gumbel_out[] = {{"K", "frequency factor", dimension::none, any_value},
                                 {"x", "flood of the return period", dimension::discharge, any_value}};
constexpr Symbol pearson_in[] = {
    {.name = "G", .meaning = "skew", .dimension = dimension::none, .range = {-3.0, 3.0}, .possible = {-20.0, 20.0}},
    {.name = "P",
     .meaning = "probability of not being exceeded",
     .dimension = dimension::none,
     .range = {0.001, 0.9999},
     .possible = {1e-12, 1.0 - 1e-12}}};
constexpr Symbol pearson_out[] = {{"K", "frequency factor", dimension::none, any_value}};
constexpr Symbol risk_in[] = {T_symbol, n_symbol};
constexpr Symbol exactly_in[] = {T_symbol, n_symbol, {"k", "number of floods", dimension::none, {0.0, 1000.0}}};
constexpr Symbol risk_out[] = {{"R", "probability", dimension::none, {0.0, 1.0}}};
}  // namespace

const Method flood_gumbel{.id = "flood.quantile.gumbel",
                          .title = "Flood of a return period by Gumbel's law from mean and standard deviation",
                          .equation = "K = (-ln(-ln(1 - 1/T)) - yn)/Sn; x = xm + K*s",
                          .inputs = gumbel_in,
                          .outputs = gumbel_out,
                          .source = "chow_1988",
                          .place = "ch. 12, extreme value law of type I, frequency factor",
                          .provenance = Provenance::memory,
                          .accuracy = "the sampling error of a 100-year flood from 30 years is 15 to 30 %",
                          .remarks =
                              "Without yn and Sn: the factor for an endless record. With those of the record's length: "
                              "Gumbel's own, which is larger.",
                          .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                            const double K = gumbel_frequency_factor({.T = in[2], .yn = in[3], .Sn = in[4]});
                            out[0] = K;
                            out[1] = in[0] + K * in[1];
                            return {};
                          }};

const Method frequency_factor_pearson_3{
    .id = "flood.frequency_factor.pearson_3",
    .title = "Frequency factor of the Pearson III law",
    .kind = EquationKind::procedure,
    .equation =
        "K = G/2 (x - 4/G^2), with x at which the incomplete gamma function of shape 4/G^2 is P (1 - P where the skew is "
        "negative); the normal quantile where G is zero.",
    .inputs = pearson_in,
    .outputs = pearson_out,
    .source = "bulletin_17c",
    .place = "log-Pearson III: the logarithm of the flood is its mean plus K times its standard deviation",
    .provenance = Provenance::memory,
    .accuracy = "inverted to 1e-10; the skew of a record of 30 years is known to 0.4",
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      out[0] = pearson_3_frequency_factor(in[0], in[1]);
      return {};
    }};

const Method risk_at_least_once{.id = "flood.risk.at_least_once",
                                .title = "Risk that a flood of a return period comes at least once in a number of years",
                                .equation = "R = 1 - (1 - 1/T)^n",
                                .inputs = risk_in,
                                .outputs = risk_out,
                                .source = "momentum",
                                .place = "probability: independent years",
                                .provenance = Provenance::derived,
                                .accuracy = "exact",
                                .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                  out[0] = hydraulics::risk_at_least_once(in[0], in[1]);
                                  return {};
                                }};

const Method risk_exactly{
    .id = "flood.risk.exactly",
    .title = "Probability that a flood of a return period comes exactly a number of times in a number of years",
    .kind = EquationKind::procedure,
    .equation = "R = n!/(k! (n - k)!) (1/T)^k (1 - 1/T)^(n - k), for whole n and k.",
    .inputs = exactly_in,
    .outputs = risk_out,
    .source = "momentum",
    .place = "probability: independent years, binomial law",
    .provenance = Provenance::derived,
    .accuracy = "exact",
    .condition = [](std::span<const double> in) -> std::string_view {
      return in[2] <= in[1] ? std::string_view{} : "there are more floods than years";
    },
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      if (in[2] > in[1]) return bad_input("k", in[2], 0.0, in[1], "there cannot be more floods than years");
      out[0] = hydraulics::risk_exactly(in[0], in[1], in[2]);
      return {};
    }};

}  // namespace record
}  // namespace quell::hydraulics
