#include "quell/hydraulics/regime.h"

#include <cmath>

namespace quell::hydraulics {

double silt_factor(double d) noexcept {
  return 1.76 * std::sqrt(d / 0.001);
}

RegimeChannel regime_channel(double Q, double f) noexcept {
  const double V = std::pow(Q * f * f / 140.0, 1.0 / 6.0);
  return {.V = V, .A = Q / V, .P = 4.75 * std::sqrt(Q), .S = std::pow(f, 5.0 / 3.0) / (3340.0 * std::pow(Q, 1.0 / 6.0))};
}

double regime_scour_depth(double q, double f) noexcept {
  return 1.35 * std::cbrt(q * q / f);
}

namespace record {
namespace {
constexpr Symbol f_symbol{"f", "silt factor", dimension::none, {0.4, 2.5}};
constexpr Symbol size_in[] = {{"d", "mean size of the bed", dimension::length, {5e-5, 2e-3}}};
constexpr Symbol channel_in[] = {{"Q", "discharge", dimension::discharge, {1.0, 30000.0}}, f_symbol};
constexpr Symbol scour_in[] = {{"q", "discharge per unit width", dimension::unit_discharge, above_zero}, f_symbol};
constexpr Symbol f_out[] = {{"f", "silt factor", dimension::none, above_zero}};
constexpr Symbol channel_out[] = {{"V", "mean velocity", dimension::velocity, above_zero},
                                  {"A", "area of flow", dimension::area, above_zero},
                                  {"P", "wetted perimeter", dimension::length, above_zero},
                                  {"S", "bed slope", dimension::none, above_zero}};
constexpr Symbol scour_out[] = {{"R", "depth of scour below the water surface", dimension::length, above_zero}};
}  // namespace

const Method silt_factor_lacey{.id = "regime.silt_factor.lacey",
                               .title = "Lacey's silt factor from the size of the bed",
                               .equation = "f = 1.76*sqrt(d/0.001)",
                               .inputs = size_in,
                               .outputs = f_out,
                               .source = "lacey_1930",
                               .place = "silt factor, in SI; read in worked scour calculations",
                               .provenance = Provenance::seen,
                               .accuracy = "empirical, sand and silt only",
                               .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                 out[0] = silt_factor(in[0]);
                                 return {};
                               }};

const Method regime_channel_lacey{.id = "regime.channel.lacey",
                                  .title = "Regime channel in alluvium by Lacey",
                                  .equation = "V = (Q*f^2/140)^(1/6); A = Q/V; P = 4.75*sqrt(Q); S = f^(5/3)/(3340*Q^(1/6))",
                                  .inputs = channel_in,
                                  .outputs = channel_out,
                                  .source = "lacey_1930",
                                  .place = "regime equations, in SI; read in a published recomputation of a textbook example",
                                  .provenance = Provenance::seen,
                                  .accuracy = "empirical; rivers differ from canals by 20 to 30 %",
                                  .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                    const auto channel = regime_channel(in[0], in[1]);
                                    out[0] = channel.V;
                                    out[1] = channel.A;
                                    out[2] = channel.P;
                                    out[3] = channel.S;
                                    return {};
                                  }};

const Method scour_depth_lacey{.id = "scour.depth.lacey",
                               .title = "Regime depth of scour by Lacey from the discharge per unit width",
                               .equation = "R = 1.35*(q^2/f)^(1/3)",
                               .inputs = scour_in,
                               .outputs = scour_out,
                               .source = "lacey_1930",
                               .place = "regime depth, in SI; read in worked scour calculations",
                               .provenance = Provenance::seen,
                               .accuracy = "empirical; sand beds only",
                               .remarks =
                                   "Below the water surface. Common factors: 1.25 straight reach, 1.5 moderate bend, 1.75 "
                                   "severe bend, 2 right-angled bend; cut-offs 1.25 to 1.5 downstream, 1 to 1.25 upstream.",
                               .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                 out[0] = regime_scour_depth(in[0], in[1]);
                                 return {};
                               }};

}  // namespace record
}  // namespace quell::hydraulics
