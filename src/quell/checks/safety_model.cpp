// The physical model: whether one is required, and the scale at which a laboratory can build one that may be believed.
#include <algorithm>
#include <cmath>

#include "quell/base/constants.h"
#include "quell/base/quantity_text.h"
#include "quell/checks/safety.h"
#include "quell/dissipators/parts.h"
#include "quell/hydraulics/model_rules.h"
#include "quell/hydraulics/protection.h"

namespace quell::checks {

using dissipators::common_practice;
using dissipators::limit_finding;

namespace {

constexpr double section_flume = 0.6;  ///< m, width of a usual flume

const site::ToeFlow& largest(const BasinView& view) {
  const site::ToeFlow* flow = view.states.front().toe;
  for (const auto& state : view.states)
    if (state.toe->discharge > flow->discharge) flow = state.toe;
  return *flow;
}

/// The next round scale at or above: steps of 5 to 50, then of 10.
double round_scale(double scale) {
  const double step = scale <= 50.0 ? (scale <= 20.0 ? 1.0 : 5.0) : 10.0;
  return std::ceil(scale / step - 1e-9) * step;
}

void describe(const site::ToeFlow& flow, ModelAdvice& model) {
  const auto scales = hydraulics::froude_scales(model.scale);
  model.discharge =
      (model.is_section ? flow.unit_discharge * model.section_width * model.scale : flow.discharge) / scales.discharge;
  model.depth = flow.y1 / model.scale;
  model.velocity = flow.V1 / scales.velocity;
  model.reynolds = hydraulics::jump_reynolds_number(flow.unit_discharge, water_viscosity) / std::pow(model.scale, 1.5);
  model.weber_root = std::sqrt(water_density * model.velocity * model.velocity * model.depth / surface_tension);
  model.time_scale = scales.time;
}

/// What asks for a model, and what only speaks for one.
void state_rule(const BasinView& view, ModelAdvice& model) {
  const std::string why = why_model(view);
  model.required = !why.empty();
  model.rule = model.required ? "Required: " + why : "No limit that is checked requires a model.";
  double fastest = 0.0, least = no_limit, most = 0.0;
  for (const auto& state : view.states) {
    fastest = std::max(fastest, state.toe->V1);
    least = std::min(least, state.toe->F1);
    most = std::max(most, state.toe->F1);
  }
  std::string reasons;
  const auto add = [&](bool met, const std::string& words) {
    if (!met) return;
    ++model.reasons;
    reasons += (reasons.empty() ? "" : "; ") + words;
  };
  add(fastest > 18.0,
      quantity_token(fastest, dimension::velocity) + " at the toe, above " + quantity_token(18.0, dimension::velocity));
  add(least < 4.5 || most > 10.0, "Froude numbers from " + quantity_token(least, dimension::none) + " to " +
                                      quantity_token(most, dimension::none) + ", outside 4.5 to 10");
  add(std::any_of(view.patterns.begin(), view.patterns.end(),
                  [](const PatternState& state) { return !state.is_check && state.largest_step > 0.0; }),
      "gates that open unevenly in operation");
  add(!view.site.river.has_spread, "a tailwater whose spread is not known");
  model.rule += reasons.empty() ? " Nor does common practice advise one here; the consequence of a failure may."
                                : " Common practice advises one for: " + reasons + ".";
}

}  // namespace

void judge_model(const BasinView& view, Safety& safety) {
  auto& model = safety.model;
  const auto& flow = largest(view);
  const auto& laboratory = view.site.laboratory;
  const double upstream = view.geometry.crest_outline.empty() ? 0.0 : view.geometry.crest_outline.front().station;
  const double basin_end = view.geometry.station_at_level(view.apron_level) + view.structure.length;
  // Some reservoir, the structure, and the river over ten sequent depths.
  model.length = basin_end - upstream + 5.0 * view.largest_crest_head + 10.0 * flow.y2;
  state_rule(view, model);
  model.largest_scale = hydraulics::largest_model_scale({.q = flow.unit_discharge, .y1 = flow.y1});
  const double head = flow.reservoir_level - view.apron_level;
  model.least_scale = std::max({std::pow(flow.discharge / laboratory.discharge, 0.4), model.length / laboratory.length,
                                2.0 * view.width / laboratory.width, head / laboratory.head, 1.0});
  const double wanted = round_scale(model.least_scale);
  if (wanted <= model.largest_scale) {
    model.scale = wanted;
  } else {
    // A slice of the basin in a flume needs less water and floor across.
    model.is_section = true;
    model.section_width = section_flume;
    const double by_discharge = std::pow(flow.unit_discharge * section_flume / laboratory.discharge, 2.0 / 3.0);
    const double least = round_scale(std::max({by_discharge, head / laboratory.head, model.length / laboratory.length, 1.0}));
    model.scale = least <= model.largest_scale ? least : 0.0;
  }
  if (model.scale > 0.0) describe(flow, model);
  if (model.scale > 0.0) plan_model_runs(view, model);
  const bool fits = model.scale > 0.0 && !model.is_section;
  std::string text =
      "Discharge, floor and head of the laboratory ask for 1:" + std::to_string(std::lround(std::ceil(model.least_scale))) +
      " or smaller; {{0.03|6,0,0|3}} of depth and a Reynolds number of 1e5 for 1:" +
      std::to_string(static_cast<long>(std::floor(model.largest_scale))) + " or larger.";
  if (fits) text += " 1:" + std::to_string(std::lround(model.scale)) + " serves.";
  if (model.is_section)
    text += model.scale > 0.0 ? " A section model at 1:" + std::to_string(std::lround(model.scale)) +
                                    " serves, without what is uneven across."
                              : " Not even a section model fits: seek a larger laboratory.";
  safety.findings.push_back(
      limit_finding("model.scale", "Scales that laboratory and similarity leave, largest over the least round one",
                    model.largest_scale / wanted, LimitSense::at_least, 1.0, dimension::none, Status::caution, std::move(text),
                    "Give the laboratory in [laboratory], or plan a section model or a larger hall.", common_practice));
  safety.findings.back().method = {&hydraulics::record::largest_model_scale,
                                   {told(flow.unit_discharge, "largest discharge over the width of the flow"),
                                    told(flow.y1, "depth of the entering flow at the largest discharge")}};
  safety.findings.back().key = "laboratory.discharge";
  safety.findings.push_back(counted(dissipators::choice_note("model.advised", "Circumstances that speak for a physical model",
                                                             model.reasons, dimension::none, model.rule, common_practice)));
}

}  // namespace quell::checks
