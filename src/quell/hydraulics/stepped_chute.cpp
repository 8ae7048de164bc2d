#include "quell/hydraulics/stepped_chute.h"

#include <algorithm>
#include <cmath>

#include "quell/hydraulics/chute_symbols.h"
#include "quell/hydraulics/energy.h"
#include "quell/hydraulics/section.h"

namespace quell::hydraulics {
namespace {

constexpr double change_over = 26.0 * degree;

SteppedRegime regime_of(double dc, const SkimmingOnset& onset) noexcept {
  if (dc > onset.skimming) return SteppedRegime::skimming;
  return dc < onset.nappe ? SteppedRegime::nappe : SteppedRegime::transition;
}

std::string_view objection_to(const SteppedChuteInput& input, const SteppedToe& toe) noexcept {
  if (toe.regime != SteppedRegime::skimming) return "the flow does not skim over the steps";
  switch (toe.basis) {
    case SteppedBasis::boes_hager: {
      if (input.phi < 19 * degree || input.phi > 55 * degree) return "the angle is not from 19 to 55 degrees";
      const double hw = stepped_uniform_flow({.q = input.q, .s = input.step_height, .phi = input.phi}).clear_water;
      const double roughness = input.step_height * std::cos(input.phi) / (4.0 * hw);
      return roughness > 0.1 && roughness < 1.0 ? std::string_view{} : "s cos(phi)/(4 hw) is not from 0.1 to 1";
    }
    case SteppedBasis::hunt_kadavy:
      if (input.phi < 10 * degree || input.phi > 30 * degree) return "the angle is not from 10 to 30 degrees";
      return toe.length <= 6.0 * toe.inception_length ? std::string_view{} : "longer than six times the length to inception";
    case SteppedBasis::chanson:
      return input.Hdam >= stepped_uniform_flow({.q = input.q, .s = input.step_height, .phi = input.phi}).drop
                 ? std::string_view{}
                 : "the chute is too short for uniform flow";
  }
  return {};
}

/// Supercritical depth for an energy coefficient alpha: that of sqrt(alpha) q.
Outcome<double> depth_of(const SteppedChuteInput& input, double head, double alpha) noexcept {
  return supercritical_depth({.q = input.q * std::sqrt(alpha), .E = head, .cosine = std::cos(input.phi)});
}

}  // namespace

std::string_view name_of(SteppedRegime regime) {
  switch (regime) {
    case SteppedRegime::nappe: return "nappe flow";
    case SteppedRegime::transition: return "transition";
    case SteppedRegime::skimming: return "skimming flow";
  }
  return "";
}

Outcome<SteppedToe> stepped_chute_toe(const SteppedChuteInput& input) noexcept {
  if (!(input.q > 0.0)) return bad_input("q", input.q, above_zero.lowest, no_limit, "there must be a flow");
  if (!(input.step_height > 0.0)) return bad_input("s", input.step_height, above_zero.lowest, no_limit, "steps have a height");
  if (!(input.phi > 0.0) || input.phi > steepest_angle)
    return bad_input("phi", input.phi, above_zero.lowest, steepest_angle, "the steps must descend on a slope");
  if (!(input.Hdam >= 0.0)) return bad_input("Hdam", input.Hdam, 0.0, no_limit, "the toe cannot lie above the crest");

  const SteppedFlow flow{.q = input.q, .s = input.step_height, .phi = input.phi};
  const SteppedDrop drop{.q = input.q, .s = input.step_height, .phi = input.phi, .Hdam = input.Hdam};
  SteppedToe toe{};
  toe.regime = regime_of(critical_depth(input.q), skimming_onset({.s = input.step_height, .phi = input.phi}));
  toe.basis = input.basis.value_or(input.phi > change_over ? SteppedBasis::boes_hager : SteppedBasis::hunt_kadavy);
  toe.length = input.Hdam / std::sin(input.phi);
  toe.mixture_depth = stepped_uniform_flow(flow).mixture;
  double alpha = 1.0;
  double least_depth = 0.0;
  switch (toe.basis) {
    case SteppedBasis::boes_hager:
      toe.residual_head = stepped_residual_head_boes_hager(drop);
      toe.inception_length = stepped_inception_boes_hager(flow).length;
      alpha = 1.1;
      break;
    case SteppedBasis::hunt_kadavy:
      toe.residual_head = stepped_residual_head_hunt_kadavy(drop);
      toe.inception_length = stepped_inception_hunt_kadavy(flow);
      least_depth = stepped_depth_hunt_kadavy(flow);
      break;
    case SteppedBasis::chanson:
      toe.residual_head = stepped_residual_head_chanson({.q = input.q, .phi = input.phi, .f = 0.2});
      toe.inception_length = stepped_inception_chanson(flow).length;
      break;
  }
  const auto depth = depth_of(input, toe.residual_head, alpha);
  if (!depth) return tl::unexpected(depth.error());
  toe.depth = std::max(*depth, least_depth);
  toe.objection = objection_to(input, toe);
  return toe;
}

namespace record {
namespace {
constexpr Symbol toe_in[] = {{"q", "discharge per unit width", dimension::unit_discharge, above_zero},
                             {"s", "height of a step", dimension::length, {0.1, 3.0}},
                             bed_angle("phi", 10 * degree, 55 * degree),
                             {"Hdam", "drop from the crest to the toe", dimension::length, {0.0, no_limit}}};
constexpr Symbol toe_out[] = {{"Hres", "energy head over the toe that is left", dimension::length, above_zero},
                              {"hw", "clear-water depth normal to the step edges", dimension::length, above_zero},
                              {"Li", "length along the step edges to the inception of air", dimension::length, above_zero}};

SteppedChuteInput input_of(std::span<const double> in) {
  return {.q = in[0], .step_height = in[1], .phi = in[2], .Hdam = in[3]};
}
}  // namespace

const Method stepped_toe{
    .id = "stepped.toe_flow.default",
    .title = "Flow at the toe of a stepped chute",
    .kind = EquationKind::procedure,
    .equation =
        "Above 26 degrees the head that is left and the length to inception by Boes and Hager, the depth from "
        "Hres = hw cos(phi) + 1.1 q^2/(2 g hw^2); below by Hunt and Kadavy, the depth from the same with 1 for 1.1 but "
        "not below their measured depth.",
    .inputs = toe_in,
    .outputs = toe_out,
    .source = "boes_hager_2003",
    .place = "with Hunt and Kadavy (2014) up to 26 degrees",
    .provenance = Provenance::memory,
    .accuracy = "about 10 to 20 % of the head that is left",
    .condition = [](std::span<const double> in) -> std::string_view {
      const auto toe = stepped_chute_toe(input_of(in));
      return toe ? toe->objection : toe.error().reason;
    },
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      const auto toe = stepped_chute_toe(input_of(in));
      if (!toe) return tl::unexpected(toe.error());
      out[0] = toe->residual_head;
      out[1] = toe->depth;
      out[2] = toe->inception_length;
      return {};
    }};

}  // namespace record
}  // namespace quell::hydraulics
