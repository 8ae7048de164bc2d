#include "quell/hydraulics/flood_shapes.h"

#include <algorithm>
#include <cmath>

#include "quell/base/curve.h"
#include "quell/base/roots.h"

namespace quell::hydraulics {

double gamma_flow(const GammaFlow& flow) noexcept {
  if (!(flow.t > 0.0)) return 0.0;
  const double share = flow.t / flow.tp;
  return flow.qp * std::exp(flow.m * (std::log(share) + 1.0 - share));
}

double gamma_volume(double qp, double tp, double m) noexcept {
  return qp * tp * std::exp(m + std::lgamma(m + 1.0) - (m + 1.0) * std::log(m));
}

Outcome<double> gamma_exponent(double qp, double tp, double V) {
  return find_root([&](double m) { return std::log(gamma_volume(qp, tp, m) / V); }, 0.01, 200.0, 1e-12);
}

double dimensionless_ordinate(double t_over_tp) noexcept {
  static const Curve& table = curve("dimensionless_unit_hydrograph");
  if (!(t_over_tp > 0.0) || t_over_tp >= table.x.back()) return 0.0;
  return table.at(t_over_tp);
}

double triangular_peak(const TriangularPeak& input) noexcept {
  return 0.208 * (input.A / 1e6) * (input.Q * 1000.0) / (input.tp / 3600.0);
}

FloodSeries flood_series(const FloodSeriesInput& input) {
  constexpr int parts = 50;        // of the time to peak
  constexpr double least = 0.001;  // of the peak
  FloodSeries series;
  const double rise = input.peak - input.base_flow;
  for (int i = 0; i <= 100 * parts; ++i) {
    const double share = static_cast<double>(i) / parts;
    const double ordinate =
        input.shape == FloodShape::gamma ? gamma_flow({share, 1.0, 1.0, input.m}) : dimensionless_ordinate(share);
    series.time.push_back(share * input.time_to_peak);
    series.flow.push_back(input.base_flow + rise * ordinate);
    if (share > 1.0 && ordinate < least) break;
  }
  return series;
}

namespace record {
namespace {
constexpr Symbol gamma_in[] = {{"t", "time from the start of the rise", dimension::time, {0.0, no_limit}},
                               {"qp", "peak", dimension::discharge, above_zero},
                               {"tp", "time to peak", dimension::time, above_zero},
                               {"m", "exponent", dimension::none, {0.1, 20.0}, 3.7}};
constexpr Symbol flow_out[] = {{"q", "flow", dimension::discharge, {0.0, no_limit}}};
constexpr Symbol volume_in[] = {{"qp", "peak", dimension::discharge, above_zero},
                                {"tp", "time to peak", dimension::time, above_zero},
                                {"m", "exponent", dimension::none, {0.1, 20.0}, 3.7, {1e-3, 1e4}}};
constexpr Symbol volume_out[] = {{"V", "volume", dimension::volume, above_zero}};
constexpr Symbol exponent_in[] = {{"qp", "peak", dimension::discharge, above_zero},
                                  {"tp", "time to peak", dimension::time, above_zero},
                                  {"V", "volume", dimension::volume, above_zero}};
constexpr Symbol exponent_out[] = {{"m", "exponent", dimension::none, above_zero}};
constexpr Symbol ordinate_in[] = {{"x", "time over time to peak", dimension::none, {0.0, 5.0}}};
constexpr Symbol ordinate_out[] = {{"r", "flow over peak", dimension::none, {0.0, 1.0}}};
constexpr Symbol triangle_in[] = {{"A", "area of the catchment", dimension::area, above_zero},
                                  {"Q", "depth of runoff", dimension::length, above_zero},
                                  {"tp", "time to peak", dimension::time, above_zero}};
constexpr Symbol peak_out[] = {{"qp", "peak", dimension::discharge, above_zero}};
}  // namespace

const Method flood_gamma_flow{.id = "flood.flow.gamma",
                              .title = "Flow of a flood of gamma form",
                              .equation = "q = qp*(t/tp)^m*exp(m*(1 - t/tp))",
                              .inputs = gamma_in,
                              .outputs = flow_out,
                              .source = "momentum",
                              .place = "gamma form through its peak",
                              .provenance = Provenance::derived,
                              .accuracy = "a shape: as good as its exponent fits the catchment",
                              .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                out[0] = gamma_flow({in[0], in[1], in[2], in[3]});
                                return {};
                              }};

const Method flood_gamma_volume{.id = "flood.volume.gamma",
                                .title = "Volume of a flood of gamma form",
                                .kind = EquationKind::procedure,
                                .equation = "V = qp*tp*exp(m)*Gamma(m + 1)/m^(m + 1), with the gamma function.",
                                .inputs = volume_in,
                                .outputs = volume_out,
                                .source = "momentum",
                                .place = "integral of the gamma form",
                                .provenance = Provenance::derived,
                                .accuracy = "exact for the form",
                                .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                  out[0] = gamma_volume(in[0], in[1], in[2]);
                                  return {};
                                }};

const Method flood_gamma_exponent{.id = "flood.exponent.gamma",
                                  .title = "Exponent of the gamma form that has a given volume",
                                  .kind = EquationKind::procedure,
                                  .equation = "Root of V = qp*tp*exp(m)*Gamma(m + 1)/m^(m + 1), with the gamma function.",
                                  .inputs = exponent_in,
                                  .outputs = exponent_out,
                                  .source = "momentum",
                                  .place = "integral of the gamma form",
                                  .provenance = Provenance::derived,
                                  .accuracy = "solved to 1e-12",
                                  .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                    const auto m = gamma_exponent(in[0], in[1], in[2]);
                                    if (!m) return no_answer("no exponent from 0.01 to 200 has this volume");
                                    out[0] = *m;
                                    return {};
                                  }};

const Method flood_dimensionless{.id = "flood.ordinate.dimensionless",
                                 .title = "Ordinate of the standard dimensionless unit hydrograph",
                                 .equation = "r = dimensionless_unit_hydrograph(x)",
                                 .inputs = ordinate_in,
                                 .outputs = ordinate_out,
                                 .source = "neh_630",
                                 .place = "ch. 16, table 16-1",
                                 .provenance = Provenance::memory,
                                 .accuracy = "three decimals in the table; the area under it is 1.33595 times to peak",
                                 .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                   out[0] = curve("dimensionless_unit_hydrograph").at(in[0]);
                                   return {};
                                 }};

const Method flood_triangular_peak{.id = "flood.peak.triangular",
                                   .title = "Peak of the triangular unit hydrograph",
                                   .equation = "qp = 0.208*(A/1000000)*(Q*1000)/(tp/3600)",
                                   .inputs = triangle_in,
                                   .outputs = peak_out,
                                   .source = "neh_630",
                                   .place = "ch. 16; base 2.67 times to peak",
                                   .provenance = Provenance::memory,
                                   .accuracy = "0.1 % in the rounded constant; the base time is that of an average catchment",
                                   .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                     out[0] = triangular_peak({in[0], in[1], in[2]});
                                     return {};
                                   }};
}  // namespace record

}  // namespace quell::hydraulics
