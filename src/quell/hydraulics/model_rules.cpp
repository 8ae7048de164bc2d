#include "quell/hydraulics/model_rules.h"

#include <algorithm>
#include <cmath>

#include "quell/base/constants.h"

namespace quell::hydraulics {
namespace {
constexpr double least_reynolds = 1e5;
constexpr double least_depth = 0.03;
}  // namespace

double jump_reynolds_number(double q, double viscosity) noexcept {
  return q / viscosity;
}

double largest_model_scale(const ModelScaleInput& input) noexcept {
  const double by_reynolds = std::cbrt(std::pow(input.q / (least_reynolds * water_viscosity), 2.0));
  return std::min(by_reynolds, input.y1 / least_depth);
}

namespace record {
namespace {
constexpr Symbol reynolds_in[] = {
    {"q", "unit discharge", dimension::unit_discharge, above_zero},
    {"nu", "kinematic viscosity, water of 0 to 45 degC", dimension::kinematic_viscosity, {0.6e-6, 1.8e-6}, water_viscosity}};
constexpr Symbol reynolds_out[] = {{"Re1", "Reynolds number V1 y1/nu", dimension::none, above_zero}};
constexpr Symbol scale_in[] = {{"q", "unit discharge of the prototype", dimension::unit_discharge, above_zero},
                               {"y1", "depth before the jump in the prototype", dimension::length, above_zero}};
constexpr Symbol scale_out[] = {{"Lr", "largest length scale, prototype over model", dimension::none, above_zero}};

std::string_view large_enough(std::span<const double> in) {
  return in[0] / in[1] >= least_reynolds
             ? std::string_view{}
             : "Re1 is below 100 000: friction lowers y2 by more than 5 %, the jump is shorter and carries less air";
}

std::string_view no_model(std::span<const double> in) {
  return hydraulics::largest_model_scale({.q = in[0], .y1 = in[1]}) >= 1.0
             ? std::string_view{}
             : "the flow is itself below the limits: only a model larger than the prototype would keep them";
}
}  // namespace

const Method jump_reynolds_number{
    .id = "model.reynolds.jump",
    .title = "Reynolds number of a jump, and whether a model of it may be believed",
    .equation = "Re1 = q/nu",
    .inputs = reynolds_in,
    .outputs = reynolds_out,
    .source = "hager_bremen_1989",
    .place = "limit of 100 000 for the sequent depth, with y1/b below 0.1",
    .provenance = Provenance::memory,
    .accuracy = "the limit keeps the effect of friction on y2 below about 5 %",
    .remarks =
        "Air is too little in any model below it, and bubbles keep their size up to five times as "
        "much: raise walls by judgement.",
    .condition = large_enough,
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      out[0] = hydraulics::jump_reynolds_number(in[0], in[1]);
      return {};
    }};

const Method largest_model_scale{.id = "model.largest_scale.jump",
                                 .title = "Largest length scale of a Froude model of a jump",
                                 .equation = "Lr = min((q/(1e5*nu))^(2/3), y1/0.03)",
                                 .inputs = scale_in,
                                 .outputs = scale_out,
                                 .source = "practice",
                                 .place = "Re1 of at least 100 000 and y1 of at least 30 mm in the model, water at 20 degC",
                                 .provenance = Provenance::common_practice,
                                 .accuracy = "limits of belief, not of physics; 20 mm is also used",
                                 .remarks =
                                     "Width at least ten depths. Basins are commonly built at 1:20 to 1:60; a larger number "
                                     "here asks for no more.",
                                 .condition = no_model,
                                 .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                   out[0] = hydraulics::largest_model_scale({.q = in[0], .y1 = in[1]});
                                   return {};
                                 }};

}  // namespace record
}  // namespace quell::hydraulics
