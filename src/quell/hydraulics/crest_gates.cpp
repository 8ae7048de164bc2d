#include "quell/hydraulics/crest_gates.h"

#include <algorithm>
#include <cmath>

#include "quell/base/constants.h"

namespace quell::hydraulics {

double radial_gate_discharge(const RadialGateInput& input) noexcept {
  return input.C * input.G0 * input.b * std::sqrt(2.0 * gravity * input.H);
}

double gate_discharge_by_heads(const HeadDifferenceInput& input) noexcept {
  return 2.0 / 3.0 * std::sqrt(2.0 * gravity) * input.Cd * input.b * (std::pow(input.H, 1.5) - std::pow(input.H1, 1.5));
}

double gate_or_free_discharge(const GateBlendInput& input) noexcept {
  const double free_share = std::clamp((input.G0 / input.He - 0.6) / 0.15, 0.0, 1.0);
  return std::min(input.free, input.orifice + free_share * (input.free - input.orifice));
}

namespace record {
namespace {
constexpr Symbol radial_in[] = {
    {"C", "discharge coefficient of this gate and seat, from its own chart or a model", dimension::none, {0.55, 0.77}},
    {"G0", "least distance from the gate lip to the crest", dimension::length, above_zero},
    {"b", "width of the opening", dimension::length, above_zero},
    {"H", "energy level above the centre of the opening", dimension::length, {0.0, no_limit}}};
constexpr Symbol heads_in[] = {{"b", "width of the opening", dimension::length, above_zero},
                               {"H", "head above the crest", dimension::length, {0.0, no_limit}},
                               {"H1", "head above the gate lip", dimension::length, {0.0, no_limit}},
                               {"Cd", "discharge coefficient", dimension::none, {0.6, 0.65}, 0.6, above_zero}};
constexpr Symbol blend_in[] = {{"Qo", "discharge under the gate", dimension::discharge, {0.0, no_limit}},
                               {"Qf", "discharge of the free crest at the same level", dimension::discharge, {0.0, no_limit}},
                               {"G0", "least distance from the gate lip to the crest", dimension::length, {0.0, no_limit}},
                               {"He", "total head above the crest", dimension::length, above_zero}};
constexpr Symbol discharge_out[] = {{"Q", "discharge", dimension::discharge, {0.0, no_limit}}};

std::string_view radial_condition(std::span<const double> in) {
  return in[3] >= in[1] / 2.0 ? std::string_view{}
                              : "the opening reaches above the energy level: the gate does not touch the flow";
}
}  // namespace

const Method gate_radial{
    .id = "gate.discharge.radial",
    .title = "Discharge under a radial gate on a crest",
    .equation = "Q = C*G0*b*sqrt(2*g*H)",
    .inputs = radial_in,
    .outputs = discharge_out,
    .source = "novak_2007",
    .place = "eq. 4.21b, coefficient 0.55 to 0.70; newer charts go from 0.66 to 0.77 with the angle at the lip",
    .provenance = Provenance::seen,
    .accuracy = "10 % with a coefficient from a chart",
    .remarks = "The coefficient depends on the angle between gate and crest at the lip and must be given.",
    .condition = radial_condition,
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      out[0] = radial_gate_discharge({.C = in[0], .G0 = in[1], .b = in[2], .H = in[3]});
      return {};
    }};

const Method gate_by_heads{
    .id = "gate.discharge.head_difference",
    .title = "Discharge under a gate on a crest by the heads above crest and lip, radial or vertical gate",
    .equation = "Q = 2/3*sqrt(2*g)*Cd*b*(H^1.5 - H1^1.5)",
    .inputs = heads_in,
    .outputs = discharge_out,
    .source = "novak_2007",
    .place = "eq. 4.21a, coefficient 0.6; 0.6 to 0.65 for vertical gates is common practice",
    .provenance = Provenance::seen,
    .accuracy = "10 %; at large openings newer charts give 10 to 30 % more",
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      if (in[2] > in[1]) return bad_input("H1", in[2], 0.0, in[1], "the lip of the gate would lie below the crest");
      out[0] = gate_discharge_by_heads({.b = in[0], .H = in[1], .H1 = in[2], .Cd = in[3]});
      return {};
    }};

const Method gate_blend{.id = "gate.discharge.blend",
                        .title = "Discharge of a gated crest between flow under the gate and free flow",
                        .equation = "w = min(max((G0/He - 0.6)/0.15, 0), 1); Q = min(Qf, Qo + w*(Qf - Qo))",
                        .inputs = blend_in,
                        .outputs = discharge_out,
                        .source = "practice",
                        .place = "gate out of the flow from G0/He of 0.75, in it up to 0.6; never above the free crest",
                        .provenance = Provenance::common_practice,
                        .accuracy = "as the two discharges; within the passage 10 %",
                        .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                          out[0] = gate_or_free_discharge({.orifice = in[0], .free = in[1], .G0 = in[2], .He = in[3]});
                          return {};
                        }};

}  // namespace record
}  // namespace quell::hydraulics
