#include "quell/hydraulics/energy.h"

#include <cmath>
#include <numbers>

#include "quell/hydraulics/chute_symbols.h"

namespace quell::hydraulics {

double critical_depth_on_slope(double q, double cosine) noexcept {
  return std::cbrt(q * q / (gravity * cosine));
}

double least_energy(double q, double cosine) noexcept {
  return 1.5 * cosine * critical_depth_on_slope(q, cosine);
}

Outcome<double> supercritical_depth(const EnergyInput& input) noexcept {
  const auto& [q, E, cosine] = input;
  if (!(q > 0.0) || !(E > 0.0)) return no_answer("the energy head above the bed is not above zero");
  // With D = d cos(theta) the equation is that of a horizontal bed for q cos(theta): a cubic with a closed form.
  const double scaled = q * cosine;
  const double argument = 27.0 * scaled * scaled / (4.0 * gravity * E * E * E);
  if (argument > 2.0) return no_answer("the energy head is below the least that carries this discharge");
  double share = 0.0;  // D/E
  if (argument < 0.4) {
    // Thin flow, D below a fifth of E: Newton for t = t0/sqrt(1 - t) is faster than the closed form and keeps the digits that
    // its cosine loses. The start is right to t0^3; two or three steps reach the last digit.
    const double t0 = std::sqrt(argument / 13.5);
    share = t0 * (1.0 + t0 * (0.5 + 0.625 * t0));
    const int steps = t0 < 0.05 ? 2 : 3;
    for (int i = 0; i < steps; ++i) {
      const double fixed_point = t0 / std::sqrt(1.0 - share);
      share -= (share - fixed_point) / (1.0 - 0.5 * fixed_point / (1.0 - share));
    }
  } else {
    const double psi = std::acos(1.0 - argument);
    share = (1.0 + 2.0 * std::cos(psi / 3.0 - 2.0 * std::numbers::pi / 3.0)) / 3.0;
  }
  return E * share / cosine;
}

namespace record {
namespace {
constexpr Symbol flat_in[] = {{"q", "discharge per unit width", dimension::unit_discharge, above_zero},
                              {"E1", "energy head above the apron", dimension::length, above_zero}};
constexpr Symbol flat_out[] = {{"y1", "supercritical depth", dimension::length, above_zero}};
constexpr Symbol slope_in[] = {{"q", "discharge per unit width", dimension::unit_discharge, above_zero},
                               {"E", "energy head above the bed", dimension::length, above_zero},
                               bed_angle("theta", 0.0, 1.5)};
constexpr Symbol critical_in[] = {{"q", "discharge per unit width", dimension::unit_discharge, above_zero},
                                  bed_angle("theta", 0.0, 1.4)};
constexpr Symbol critical_out[] = {{"dc", "critical depth normal to the bed", dimension::length, above_zero}};
constexpr Symbol slope_out[] = {{"dp", "supercritical depth normal to the bed", dimension::length, above_zero}};
}  // namespace

const Method depth_from_energy{.id = "toe.depth.energy",
                               .title = "Supercritical depth on a horizontal apron from the energy head",
                               .kind = EquationKind::residual,
                               .equation = "E1 = y1 + q^2/(2*g*y1^2)",
                               .inputs = flat_in,
                               .outputs = flat_out,
                               .source = "momentum",
                               .place = "specific energy, supercritical root, energy coefficient 1",
                               .provenance = Provenance::derived,
                               .accuracy = "exact",
                               .evaluate = [](std::span<const double> in, std::span<double> out) {
                                 return store(supercritical_depth({.q = in[0], .E = in[1]}), out);
                               }};

const Method depth_from_energy_on_slope{
    .id = "chute.depth.energy",
    .title = "Supercritical depth normal to a steep bed from the energy head",
    .kind = EquationKind::residual,
    .equation = "E = dp*cos(theta) + q^2/(2*g*dp^2)",
    .inputs = slope_in,
    .outputs = slope_out,
    .source = "momentum",
    .place = "energy on a steep slope: the pressure head on the bed is the depth times the cosine",
    .provenance = Provenance::derived,
    .accuracy = "exact",
    .evaluate = [](std::span<const double> in, std::span<double> out) {
      return store(supercritical_depth({.q = in[0], .E = in[1], .cosine = std::cos(in[2])}), out);
    }};

const Method critical_depth_steep{.id = "chute.critical_depth.slope",
                                  .title = "Critical depth on a steep slope",
                                  .equation = "dc = (q^2/(g*cos(theta)))^(1/3)",
                                  .inputs = critical_in,
                                  .outputs = critical_out,
                                  .source = "momentum",
                                  .place = "least energy head above a steep bed, energy coefficient 1",
                                  .provenance = Provenance::derived,
                                  .accuracy = "exact",
                                  .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                    out[0] = hydraulics::critical_depth_on_slope(in[0], std::cos(in[1]));
                                    return {};
                                  }};

}  // namespace record
}  // namespace quell::hydraulics
