// The records of flood_record.h: moments of a record, quantiles from them.
#include <cmath>
#include <vector>

#include "quell/hydraulics/flood_record.h"

namespace quell::hydraulics::record {
namespace {
constexpr Range not_negative{0.0, no_limit};
constexpr double must_be_given = std::numeric_limits<double>::quiet_NaN();
constexpr Symbol T_symbol{.name = "T",
                          .meaning = "return period in years",
                          .dimension = dimension::none,
                          .range = {1.01, 10000.0},
                          .possible = {1.0 + 1e-9, 1e9}};
constexpr Symbol Q_symbol{"Q", "annual floods", dimension::discharge, not_negative, must_be_given, {}, true};

constexpr Symbol list_in[] = {Q_symbol};
constexpr Symbol moments_out[] = {{"xm", "mean", dimension::discharge, any_value},
                                  {"s", "standard deviation", dimension::discharge, not_negative},
                                  {"G", "skew", dimension::none, any_value}};
constexpr Symbol log_moments_out[] = {{"ym", "mean of the logarithms of the flows in m3/s", dimension::none, any_value},
                                      {"s", "their standard deviation", dimension::none, not_negative},
                                      {"G", "their skew", dimension::none, any_value}};
constexpr Symbol quantile_in[] = {{"ym", "mean of the logarithms of the floods in m3/s", dimension::none, any_value},
                                  {"s", "their standard deviation", dimension::none, not_negative},
                                  {"G", "their skew", dimension::none, {-3.0, 3.0}, must_be_given, {-20.0, 20.0}},
                                  T_symbol};
constexpr Symbol quantile_out[] = {{"K", "frequency factor", dimension::none, any_value},
                                   {"x", "flood of the return period", dimension::discharge, not_negative}};
Outcome<void> put_moments(std::span<const double> values, std::span<double> out) {
  if (values.size() < 3) return no_answer("a skew needs three values or more");
  const auto moments = moments_of(values);
  out[0] = moments.mean;
  out[1] = moments.deviation;
  out[2] = moments.skew;
  return {};
}
}  // namespace

const Method flood_record_moments{
    .id = "flood.moments.flows",
    .title = "Mean, standard deviation and skew of the annual floods",
    .kind = EquationKind::procedure,
    .equation = "xm = sum(Q)/N; s = sqrt(sum((Q - xm)^2)/(N - 1)); G = N sum((Q - xm)^3)/((N - 1)(N - 2) s^3).",
    .inputs = list_in,
    .outputs = moments_out,
    .source = "bulletin_17b",
    .place = "moments of a record",
    .provenance = Provenance::memory,
    .accuracy = "exact for the record",
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> { return put_moments(in, out); }};

const Method flood_record_log_moments{.id = "flood.moments.logarithms",
                                      .title = "Mean, standard deviation and skew of the logarithms of the annual floods",
                                      .kind = EquationKind::procedure,
                                      .equation =
                                          "With y = log10 Q, Q in m3/s: ym = sum(y)/N; s = sqrt(sum((y - ym)^2)/(N - 1)); G = "
                                          "N sum((y - ym)^3)/((N - 1)(N - 2) s^3).",
                                      .inputs = list_in,
                                      .outputs = log_moments_out,
                                      .source = "bulletin_17b",
                                      .place = "log-Pearson III, moments of the logarithms",
                                      .provenance = Provenance::memory,
                                      .accuracy = "exact for the record",
                                      .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                        std::vector<double> logarithms;
                                        for (const double flow : in) {
                                          if (!(flow > 0.0))
                                            return bad_input("Q", flow, above_zero.lowest, no_limit,
                                                             "a year without flow has no logarithm");
                                          logarithms.push_back(std::log10(flow));
                                        }
                                        return put_moments(logarithms, out);
                                      }};

const Method flood_quantile_log_pearson_3{
    .id = "flood.quantile.log_pearson_3",
    .title = "Flood of a return period by log-Pearson III from the moments of the logarithms",
    .kind = EquationKind::procedure,
    .equation =
        "log10 x = ym + K s with the factor K of the Pearson III law for the skew G and the probability 1 - 1/T, x in m3/s.",
    .inputs = quantile_in,
    .outputs = quantile_out,
    .source = "bulletin_17b",
    .place = "log-Pearson III",
    .provenance = Provenance::memory,
    .accuracy = "the factor to 1e-10; the sampling error of a 100-year flood from 30 years is 20 to 40 %",
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      out[0] = pearson_3_frequency_factor(in[2], 1.0 - 1.0 / in[3]);
      out[1] = std::pow(10.0, in[0] + out[0] * in[1]);
      return {};
    }};

}  // namespace quell::hydraulics::record
