// The records of flood_shapes.h.
#include "quell/hydraulics/flood_shapes.h"

namespace quell::hydraulics::record {
namespace {
constexpr Range not_negative{0.0, no_limit};
constexpr Symbol Qp_symbol{"Qp", "peak flow", dimension::discharge, above_zero};
constexpr Symbol tp_symbol{"tp", "time to the peak", dimension::time, above_zero};
constexpr Symbol t_symbol{"t", "time after the start of the rise", dimension::time, not_negative};
constexpr Symbol Qb_symbol{"Qb", "base flow", dimension::discharge, not_negative, 0.0};
constexpr Symbol m_symbol{
    .name = "m", .meaning = "exponent", .dimension = dimension::none, .range = {0.2, 15.0}, .possible = {1e-3, 1000.0}};
constexpr Symbol flow_in[] = {Qp_symbol, tp_symbol, m_symbol, t_symbol, Qb_symbol};
constexpr Symbol volume_in[] = {Qp_symbol, tp_symbol, m_symbol, Qb_symbol};
constexpr Symbol factor_in[] = {m_symbol};
constexpr Symbol rate_in[] = {{.name = "PRF",
                               .meaning = "peak-rate factor, ft3/s h per square mile and inch",
                               .dimension = dimension::none,
                               .range = {100.0, 600.0},
                               .possible = {1.0, 5000.0}}};
constexpr Symbol wanted_in[] = {
    Qp_symbol, tp_symbol, {"V", "volume above the base flow", dimension::volume, above_zero}, Qb_symbol};
constexpr Symbol plain_in[] = {Qp_symbol, tp_symbol, t_symbol, Qb_symbol};
constexpr Symbol peak_in[] = {
    {"A", "catchment", dimension::area, above_zero}, {"Qd", "depth of run-off", dimension::length, above_zero}, tp_symbol};
constexpr Symbol flow_out[] = {{"Q", "flow at the time", dimension::discharge, not_negative}};
constexpr Symbol volume_out[] = {{"V", "volume above the base flow", dimension::volume, not_negative}};
constexpr Symbol factor_out[] = {{"share", "peak times time to peak by volume", dimension::none, above_zero},
                                 {"PRF", "peak-rate factor, ft3/s h per square mile and inch", dimension::none, above_zero}};
constexpr Symbol m_out[] = {{"m", "exponent", dimension::none, above_zero}};
constexpr Symbol peak_out[] = {{"Qp", "peak flow above the base flow", dimension::discharge, above_zero},
                               {"Tb", "base of the triangle", dimension::time, above_zero}};

constexpr std::string_view base_above = "the base flow is above the peak";
Outcome<void> refuse_base(double Qb, double Qp) {
  return bad_input("Qb", Qb, 0.0, Qp, base_above);
}
}  // namespace

const Method flood_gamma_flow{.id = "flood.flow.gamma",
                              .title = "Flow of the gamma hydrograph",
                              .equation = "x = t/tp; Q = Qb + (Qp - Qb)*x^m*exp(m*(1 - x))",
                              .inputs = flow_in,
                              .outputs = flow_out,
                              .source = "neh_630_16",
                              .place = "equation of the unit hydrograph by the gamma function",
                              .provenance = Provenance::memory,
                              .accuracy = "exact for the shape; the exponent of a catchment is known to 20 to 30 %",
                              .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                if (in[4] > in[0]) return refuse_base(in[4], in[0]);
                                out[0] = in[4] + (in[0] - in[4]) * gamma_shape(in[3] / in[1], in[2]);
                                return {};
                              }};

const Method flood_gamma_volume{.id = "flood.volume.gamma",
                                .title = "Volume of the gamma hydrograph above its base flow",
                                .kind = EquationKind::procedure,
                                .equation = "V = (Qp - Qb) tp e^m Gamma(m + 1)/m^(m + 1), with the gamma function of m + 1.",
                                .inputs = volume_in,
                                .outputs = volume_out,
                                .source = "momentum",
                                .place = "integral of (t/tp)^m exp(m (1 - t/tp)) over all times",
                                .provenance = Provenance::derived,
                                .accuracy = "exact",
                                .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                  if (in[3] > in[0]) return refuse_base(in[3], in[0]);
                                  out[0] = (in[0] - in[3]) * in[1] / gamma_peak_share(in[2]);
                                  return {};
                                }};

const Method flood_gamma_rate_factor{
    .id = "flood.peak_rate_factor.gamma",
    .title = "Peak-rate factor of the gamma hydrograph",
    .kind = EquationKind::procedure,
    .equation = "share = m^(m + 1) e^(-m)/Gamma(m + 1); PRF = 645.333 share, the unit hydrograph in US units.",
    .inputs = factor_in,
    .outputs = factor_out,
    .source = "momentum",
    .place = "integral of (t/tp)^m exp(m (1 - t/tp)) over all times",
    .provenance = Provenance::derived,
    .accuracy = "exact",
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      out[0] = gamma_peak_share(in[0]);
      out[1] = peak_rate_unit * out[0];
      return {};
    }};

const Method flood_gamma_exponent_rate{.id = "flood.exponent.peak_rate_factor",
                                       .title = "Exponent of the gamma hydrograph of a peak-rate factor",
                                       .kind = EquationKind::procedure,
                                       .equation = "The m with 645.333 m^(m + 1) e^(-m)/Gamma(m + 1) = PRF.",
                                       .inputs = rate_in,
                                       .outputs = m_out,
                                       .source = "momentum",
                                       .place = "the peak-rate factor of the gamma hydrograph turned round",
                                       .provenance = Provenance::derived,
                                       .accuracy = "solved to 1e-12",
                                       .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                         return store(gamma_exponent(in[0] / peak_rate_unit), out);
                                       }};

const Method flood_gamma_exponent_volume{
    .id = "flood.exponent.volume",
    .title = "Exponent of the gamma hydrograph of a peak, a time to peak and a volume",
    .kind = EquationKind::procedure,
    .equation = "The m with (Qp - Qb) tp e^m Gamma(m + 1)/m^(m + 1) = V.",
    .inputs = wanted_in,
    .outputs = m_out,
    .source = "momentum",
    .place = "the volume of the gamma hydrograph turned round",
    .provenance = Provenance::derived,
    .accuracy = "solved to 1e-12",
    .remarks = "An exponent below 0.2 or above 15 is no flood: the peak, its time and the volume do not belong together.",
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      if (!(in[3] < in[0])) return refuse_base(in[3], in[0]);
      return store(gamma_exponent_of_volume({.peak = in[0], .time_to_peak = in[1], .base_flow = in[3], .volume = in[2]}), out);
    }};

const Method flood_dimensionless_flow{
    .id = "flood.flow.dimensionless_unit",
    .title = "Flow of the dimensionless unit hydrograph",
    .equation = "Q = Qb + (Qp - Qb)*dimensionless_unit_flood(t/tp)",
    .inputs = plain_in,
    .outputs = flow_out,
    .source = "neh_630_16",
    .place = "table 16-1, ratios for the dimensionless unit hydrograph",
    .provenance = Provenance::memory,
    .accuracy = "half a unit of the third digit of the table; flat coasts and steep mountains have other shapes",
    .remarks = "The table has a peak-rate factor of 483; a series made from it is scaled to its volume where that is given.",
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      if (in[3] > in[0]) return refuse_base(in[3], in[0]);
      out[0] = in[3] + (in[0] - in[3]) * dimensionless_shape(in[2] / in[1]);
      return {};
    }};

const Method flood_triangular_flow{.id = "flood.flow.triangular",
                                   .title = "Flow of the triangular hydrograph",
                                   .equation = "x = t/tp; Q = Qb + (Qp - Qb)*max(0, min(x, (2.67 - x)/1.67))",
                                   .inputs = plain_in,
                                   .outputs = flow_out,
                                   .source = "neh_630_16",
                                   .place = "triangular unit hydrograph, base of 2.67 times to peak",
                                   .provenance = Provenance::memory,
                                   .accuracy = "a stand-in for the curved shape: 5 % of the peak",
                                   .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                     if (in[3] > in[0]) return refuse_base(in[3], in[0]);
                                     out[0] = in[3] + (in[0] - in[3]) * triangular_shape(in[2] / in[1]);
                                     return {};
                                   }};

const Method flood_triangular_peak{.id = "flood.peak.triangular",
                                   .title = "Peak of the triangular hydrograph of a catchment",
                                   .equation = "Tb = 2.67*tp; Qp = 2*A*Qd/Tb",
                                   .inputs = peak_in,
                                   .outputs = peak_out,
                                   .source = "neh_630_16",
                                   .place = "triangular unit hydrograph: 0.208 A Qd/tp with A in km2, Qd in mm, tp in h",
                                   .provenance = Provenance::memory,
                                   .accuracy = "20 % and more, the time to peak being an estimate",
                                   .remarks = "The print rounds 2/(2.67 3.6) = 0.2081 to 0.208.",
                                   .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                     out[1] = triangle_base * in[2];
                                     out[0] = 2.0 * in[0] * in[1] / out[1];
                                     return {};
                                   }};

}  // namespace quell::hydraulics::record
