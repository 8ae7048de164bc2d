#include "quell/hydraulics/flow_state.h"

#include <cmath>

namespace quell::hydraulics {

double froude_number(const SectionFlow& flow) noexcept {
  return flow.Q / flow.A / std::sqrt(gravity * flow.A / flow.T);
}

double depth_at_froude_number(const UnitFlow& flow) noexcept {
  return std::cbrt(flow.q * flow.q / (gravity * flow.F * flow.F));
}

double froude_number_on_slope(const UniformSlope& slope) noexcept {
  return std::sqrt(slope.S / slope.Sc);
}

double specific_energy(const StateOfFlow& flow) noexcept {
  return flow.y + flow.V * flow.V / (2.0 * gravity);
}

namespace record {
namespace {
constexpr Symbol section_in[] = {{"Q", "discharge", dimension::discharge, above_zero},
                                 {"A", "area of flow", dimension::area, above_zero},
                                 {"T", "width of the surface", dimension::length, above_zero}};
constexpr Symbol unit_in[] = {{"q", "discharge per unit width", dimension::unit_discharge, above_zero},
                              {"F", "Froude number", dimension::none, above_zero}};
constexpr Symbol slopes_in[] = {{"S", "bed slope", dimension::none, {1e-6, 0.1}},
                                {"Sc", "critical slope for the same discharge", dimension::none, {1e-6, 0.1}}};
constexpr Symbol state_in[] = {{"y", "depth", dimension::length, above_zero},
                               {"V", "mean velocity", dimension::velocity, {0.0, no_limit}}};
constexpr Symbol froude_out[] = {{"F", "Froude number", dimension::none, above_zero}};
constexpr Symbol depth_out[] = {{"y", "depth", dimension::length, above_zero}};
constexpr Symbol energy_out[] = {{"E", "specific energy above the bed", dimension::length, above_zero}};
}  // namespace

const Method froude_number_section{.id = "flow.froude_number.section",
                                   .title = "Froude number of flow in any section",
                                   .equation = "F = Q/A/sqrt(g*A/T)",
                                   .inputs = section_in,
                                   .outputs = froude_out,
                                   .source = "momentum",
                                   .place = "definition with the hydraulic depth A/T: 1 at least specific energy",
                                   .provenance = Provenance::derived,
                                   .accuracy = "exact",
                                   .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                     out[0] = hydraulics::froude_number({.Q = in[0], .A = in[1], .T = in[2]});
                                     return {};
                                   }};

const Method depth_from_froude_number{
    .id = "flow.depth.froude_number",
    .title = "Depth at which a discharge flows with a given Froude number, rectangular section",
    .equation = "y = (q^2/(g*F^2))^(1/3)",
    .inputs = unit_in,
    .outputs = depth_out,
    .source = "momentum",
    .place = "definition of the Froude number, solved for the depth",
    .provenance = Provenance::derived,
    .accuracy = "exact",
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      out[0] = depth_at_froude_number({.q = in[0], .F = in[1]});
      return {};
    }};

const Method froude_number_from_slopes{
    .id = "flow.froude_number.slopes",
    .title = "Froude number of uniform flow in a wide channel from bed slope and critical slope",
    .equation = "F = sqrt(S/Sc)",
    .inputs = slopes_in,
    .outputs = froude_out,
    .source = "momentum",
    .place = "Chezy's formula with a constant coefficient at normal and at critical depth",
    .provenance = Provenance::derived,
    .accuracy = "exact for a constant Chezy coefficient; too high by the factor F^(1/9) where Manning's n is constant",
    .remarks = "Wide channel: the hydraulic radius is the depth.",
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      out[0] = froude_number_on_slope({.S = in[0], .Sc = in[1]});
      return {};
    }};

const Method specific_energy{.id = "flow.specific_energy",
                             .title = "Specific energy of flow above the bed",
                             .equation = "E = y + V^2/(2*g)",
                             .inputs = state_in,
                             .outputs = energy_out,
                             .source = "momentum",
                             .place = "energy head above the bed, energy coefficient 1, flat bed",
                             .provenance = Provenance::derived,
                             .accuracy = "exact",
                             .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                               out[0] = hydraulics::specific_energy({.y = in[0], .V = in[1]});
                               return {};
                             }};

}  // namespace record
}  // namespace quell::hydraulics
