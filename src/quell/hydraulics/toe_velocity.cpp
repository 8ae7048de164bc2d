#include "quell/hydraulics/toe_velocity.h"

#include <cmath>

#include "quell/hydraulics/chute_symbols.h"
#include "quell/hydraulics/energy.h"

namespace quell::hydraulics {

Outcome<double> toe_velocity(const ToeVelocityInput& input) noexcept {
  if (!(input.phi > 0.0)) return bad_input("phi", input.phi, above_zero.lowest, 1.0, "no velocity would be left");
  // E = d + (V/phi)^2/2g with V = q/d: the depth of q/phi.
  const auto depth = supercritical_depth({.q = input.q / input.phi, .E = input.E});
  if (!depth) return depth;
  return input.q / *depth;
}

double toe_velocity_jsce(double Z) noexcept {
  return 0.9 * std::sqrt(2.0 * gravity * Z);
}

double toe_velocity_em25(const FallInput& input) noexcept {
  return std::sqrt(2.0 * gravity * (input.Z - input.H / 2.0));
}

Outcome<double> ideal_velocity(const IdealVelocityInput& input) noexcept {
  const auto depth = supercritical_depth({.q = input.q, .E = input.HT, .cosine = input.cosine});
  if (!depth) return depth;
  return input.q / *depth;
}

namespace record {
namespace {
constexpr Symbol unit_discharge{"q", "discharge per unit width", dimension::unit_discharge, above_zero};
constexpr Symbol novak_in[] = {unit_discharge,
                               {"S", "height of the crest above the apron", dimension::length, above_zero},
                               {"H", "energy head on the crest", dimension::length, above_zero}};
constexpr Symbol velocity_out[] = {{"V1", "velocity at the toe", dimension::velocity, above_zero}};
constexpr Symbol drop{"Z", "drop from the reservoir's energy level to the apron", dimension::length, above_zero};
constexpr Symbol drop_in[] = {drop};
constexpr Symbol em25_in[] = {drop, {"H", "energy head on the crest", dimension::length, above_zero}};
constexpr Symbol em25_out[] = {{"VT", "ideal velocity at the toe", dimension::velocity, above_zero}};
constexpr Symbol ideal_in[] = {unit_discharge,
                               {"HT", "drop from the reservoir's energy level to the bed", dimension::length, above_zero},
                               bed_angle("theta", 0.0, 1.5)};
constexpr Symbol ideal_out[] = {{"u", "velocity without friction", dimension::velocity, above_zero}};
}  // namespace

const Method toe_velocity_novak{.id = "toe.velocity.novak",
                                .title = "Velocity at the toe with the losses of an overfall spillway",
                                .kind = EquationKind::residual,
                                .equation = "V1 = (1 - 0.0155*S/H)*sqrt(2*g*(S + H - q/V1))",
                                .inputs = novak_in,
                                .outputs = velocity_out,
                                .source = "novak_2007",
                                .place = "ch. on energy dissipation, after Novak and Cabelka",
                                .provenance = Provenance::memory,
                                .accuracy = "a few per cent; roughness and slope do not enter",
                                .condition = [](std::span<const double> in) -> std::string_view {
                                  return in[1] < 30.0 * in[2] ? std::string_view{} : "S/H is 30 or more";
                                },
                                .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                  const double phi = velocity_share_novak({.S = in[1], .H = in[2]});
                                  if (!(phi > 0.0)) return no_answer("S/H is above 64: the formula would leave no velocity");
                                  return store(toe_velocity({.q = in[0], .E = in[1] + in[2], .phi = phi}), out);
                                }};

const Method toe_velocity_jsce{.id = "toe.velocity.jsce",
                               .title = "Velocity at the toe as nine tenths of free fall",
                               .equation = "V1 = 0.9*sqrt(2*g*Z)",
                               .inputs = drop_in,
                               .outputs = velocity_out,
                               .source = "jsce_1985",
                               .place = "dam spillways, as quoted in a worked note",
                               .provenance = Provenance::seen,
                               .accuracy = "about 10 %",
                               .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                 out[0] = hydraulics::toe_velocity_jsce(in[0]);
                                 return {};
                               }};

const Method toe_velocity_em25{.id = "toe.velocity.em25",
                               .title = "Ideal velocity at the toe from drop and head on the crest",
                               .equation = "VT = sqrt(2*g*(Z - H/2))",
                               .inputs = em25_in,
                               .outputs = em25_out,
                               .source = "peterka_1984",
                               .place = "sec. 2, figure of actual over theoretical velocity",
                               .provenance = Provenance::memory,
                               .accuracy = "below the exact ideal velocity where the depth is less than H/2",
                               .condition = [](std::span<const double> in) -> std::string_view {
                                 return in[1] < in[0] ? std::string_view{} : "the crest would not lie above the apron";
                               },
                               .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                 if (!(in[1] < 2.0 * in[0]))
                                   return bad_input("H", in[1], above_zero.lowest, 2.0 * in[0], "no fall is left");
                                 out[0] = hydraulics::toe_velocity_em25({.Z = in[0], .H = in[1]});
                                 return {};
                               }};

const Method ideal_velocity{.id = "chute.velocity.ideal",
                            .title = "Velocity without friction on a face",
                            .kind = EquationKind::residual,
                            .equation = "HT = q/u*cos(theta) + u^2/(2*g)",
                            .inputs = ideal_in,
                            .outputs = ideal_out,
                            .source = "momentum",
                            .place = "energy on a steep slope, supercritical root",
                            .provenance = Provenance::derived,
                            .accuracy = "exact",
                            .evaluate = [](std::span<const double> in, std::span<double> out) {
                              return store(hydraulics::ideal_velocity({.q = in[0], .HT = in[1], .cosine = std::cos(in[2])}),
                                           out);
                            }};

}  // namespace record
}  // namespace quell::hydraulics
