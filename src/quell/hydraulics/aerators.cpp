#include "quell/hydraulics/aerators.h"

#include "quell/hydraulics/chute_symbols.h"

namespace quell::hydraulics::record {
namespace {
constexpr Symbol jet_in[] = {{"K", "coefficient of the ramp", dimension::none, {0.01, 0.03}},
                             {"V", "mean velocity at the ramp", dimension::velocity, above_zero},
                             {"Lj", "length of the jet", dimension::length, above_zero}};
constexpr Symbol content_in[] = {{"q", "discharge of water per unit width", dimension::unit_discharge, above_zero},
                                 {"C", "mean air content", dimension::none, {0.0, 0.75}, must_be_given, {0.0, 0.999}}};
constexpr Symbol air_out[] = {{"qa", "flow of air per unit width", dimension::unit_discharge, {0.0, no_limit}}};
}  // namespace

const Method aerator_air_flow{.id = "aerator.air_flow.pinto",
                              .title = "Air that the jet over a ramp draws in",
                              .equation = "qa = K*V*Lj",
                              .inputs = jet_in,
                              .outputs = air_out,
                              .source = "pinto_1982",
                              .place = "prototype and model, K from 0.01 to 0.03",
                              .provenance = Provenance::memory,
                              .accuracy = "a factor 2, by K",
                              .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                out[0] = hydraulics::aerator_air_flow({.K = in[0], .V = in[1], .Lj = in[2]});
                                return {};
                              }};

const Method air_flow_for_content{
    .id = "aerator.air_needed.continuity",
    .title = "Air that a mean content needs",
    .equation = "qa = q*C/(1 - C)",
    .inputs = content_in,
    .outputs = air_out,
    .source = "momentum",
    .place = "air and water at one velocity",
    .provenance = Provenance::derived,
    .accuracy = "exact for the content given",
    .remarks = "Against damage 5 to 8 % is needed at the bed itself (Peterka 1953), which takes far more in the mean.",
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      out[0] = hydraulics::air_flow_for_content({.q = in[0], .C = in[1]});
      return {};
    }};

}  // namespace quell::hydraulics::record
