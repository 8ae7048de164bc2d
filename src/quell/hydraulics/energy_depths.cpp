#include "quell/hydraulics/energy_depths.h"

#include <cmath>

#include "quell/hydraulics/jump.h"
#include "quell/hydraulics/section.h"

namespace quell::hydraulics {

Outcome<double> subcritical_depth(double q, double E) noexcept {
  if (!(q > 0.0) || !(E > 0.0)) return no_answer("the energy head above the bed is not above zero");
  const double argument = 27.0 * q * q / (4.0 * gravity * E * E * E);
  if (argument > 2.0) return no_answer("the energy head is below the least that carries this discharge");
  const double psi = std::acos(1.0 - argument);
  return E * (1.0 + 2.0 * std::cos(psi / 3.0)) / 3.0;
}

double alternate_depth(double q, double y) noexcept {
  const double h = q * q / (2.0 * gravity * y * y);
  return h / 2.0 * (1.0 + std::sqrt(1.0 + 4.0 * y / h));
}

Outcome<double> depth_over_hump(const HumpInput& input) noexcept {
  const auto& [y1, V1, dz] = input;
  const double highest = highest_hump(y1, V1);
  if (dz > highest)
    return bad_input("dz", dz, 0.0, highest, "a higher hump chokes the flow: the level before it must rise first");
  const double q = V1 * y1;
  const double energy = y1 + V1 * V1 / (2.0 * gravity) - dz;
  return froude_number(V1, y1) < 1.0 ? subcritical_depth(q, energy) : supercritical_depth({.q = q, .E = energy});
}

double highest_hump(double y1, double V1) noexcept {
  const double q = V1 * y1;
  return y1 + V1 * V1 / (2.0 * gravity) - 1.5 * std::pow(q * q / gravity, 1.0 / 3.0);
}

double least_width(double Q, double E) noexcept {
  return Q / (std::sqrt(gravity) * std::pow(2.0 * E / 3.0, 1.5));
}

namespace record {
namespace {
constexpr Symbol energy_in[] = {{"q", "discharge per unit width", dimension::unit_discharge, above_zero},
                                {"E", "energy head above the bed", dimension::length, above_zero}};
constexpr Symbol alternate_in[] = {{"q", "discharge per unit width", dimension::unit_discharge, above_zero},
                                   {"y", "depth", dimension::length, above_zero}};
constexpr Symbol hump_in[] = {{"y1", "depth before the hump", dimension::length, above_zero},
                              {"V1", "mean velocity before the hump", dimension::velocity, above_zero},
                              {"dz", "height of the hump", dimension::length, {0.0, no_limit}}};
constexpr Symbol approach_in[] = {{"y1", "depth before the hump", dimension::length, above_zero},
                                  {"V1", "mean velocity before the hump", dimension::velocity, above_zero}};
constexpr Symbol width_in[] = {{"Q", "discharge", dimension::discharge, above_zero},
                               {"E", "energy head above the bed", dimension::length, above_zero}};
constexpr Symbol subcritical_out[] = {{"y", "subcritical depth", dimension::length, above_zero}};
constexpr Symbol alternate_out[] = {{"ya", "alternate depth", dimension::length, above_zero}};
constexpr Symbol hump_out[] = {{"y2", "depth on the hump", dimension::length, above_zero}};
constexpr Symbol highest_out[] = {{"dz", "height of the highest hump that passes the flow", dimension::length, any_value}};
constexpr Symbol width_out[] = {{"b", "least width", dimension::length, above_zero}};
}  // namespace

const Method depth_from_energy_subcritical{
    .id = "flow.depth.energy_subcritical",
    .title = "Subcritical depth from the energy head, rectangular section",
    .kind = EquationKind::residual,
    .equation = "E = y + q^2/(2*g*y^2)",
    .inputs = energy_in,
    .outputs = subcritical_out,
    .source = "momentum",
    .place = "specific energy, subcritical root, energy coefficient 1",
    .provenance = Provenance::derived,
    .accuracy = "exact",
    .evaluate = [](std::span<const double> in, std::span<double> out) { return store(subcritical_depth(in[0], in[1]), out); }};

const Method alternate_depth{.id = "flow.alternate_depth.rectangular",
                             .title = "Alternate depth: the other depth with the same specific energy, rectangular section",
                             .equation = "h = q^2/(2*g*y^2); ya = h/2*(1 + sqrt(1 + 4*y/h))",
                             .inputs = alternate_in,
                             .outputs = alternate_out,
                             .source = "momentum",
                             .place = "specific energy equal at both depths, energy coefficient 1",
                             .provenance = Provenance::derived,
                             .accuracy = "exact",
                             .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                               out[0] = hydraulics::alternate_depth(in[0], in[1]);
                               return {};
                             }};

const Method depth_over_hump{.id = "transition.depth.hump",
                             .title = "Depth over a hump in the bed, rectangular section, without loss",
                             .kind = EquationKind::residual,
                             .equation = "y1 + V1^2/(2*g) = dz + y2 + (V1*y1)^2/(2*g*y2^2)",
                             .inputs = hump_in,
                             .outputs = hump_out,
                             .source = "momentum",
                             .place = "energy equal before and on the hump; the flow stays on its side of critical depth",
                             .provenance = Provenance::derived,
                             .accuracy = "exact without loss",
                             .remarks = "A hump that chokes the flow is refused with the highest that does not.",
                             .evaluate = [](std::span<const double> in, std::span<double> out) {
                               return store(hydraulics::depth_over_hump({.y1 = in[0], .V1 = in[1], .dz = in[2]}), out);
                             }};

const Method highest_hump{.id = "transition.highest_hump.rectangular",
                          .title = "Highest hump that passes the flow without choking it, rectangular section",
                          .equation = "dz = y1 + V1^2/(2*g) - 1.5*((V1*y1)^2/g)^(1/3)",
                          .inputs = approach_in,
                          .outputs = highest_out,
                          .source = "momentum",
                          .place = "critical flow on the hump, without loss",
                          .provenance = Provenance::derived,
                          .accuracy = "exact without loss",
                          .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                            out[0] = hydraulics::highest_hump(in[0], in[1]);
                            return {};
                          }};

const Method least_width{.id = "transition.least_width.rectangular",
                         .title = "Least width of a narrowing that passes the flow without choking it, rectangular section",
                         .equation = "b = Q/(sqrt(g)*(2*E/3)^1.5)",
                         .inputs = width_in,
                         .outputs = width_out,
                         .source = "momentum",
                         .place = "critical flow in the narrowing, level bed, without loss",
                         .provenance = Provenance::derived,
                         .accuracy = "exact without loss",
                         .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                           out[0] = hydraulics::least_width(in[0], in[1]);
                           return {};
                         }};

}  // namespace record
}  // namespace quell::hydraulics
