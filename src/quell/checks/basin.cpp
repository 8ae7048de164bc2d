// Checks of the jump, of the river below, and for people.
#include <algorithm>

#include "quell/base/quantity_text.h"
#include "quell/checks/checks.h"
#include "quell/checks/origins.h"
#include "quell/dissipators/parts.h"
#include "quell/hydraulics/definitions.h"
#include "quell/hydraulics/jump.h"

namespace quell::checks {

using dissipators::at_discharge;
using dissipators::common_practice;
using dissipators::limit_finding;

Finding jump_waves(const BasinView& view) {
  const auto& state = *std::min_element(view.states.begin(), view.states.end(),
                                        [](const TailwaterState& a, const TailwaterState& b) { return a.toe->F1 < b.toe->F1; });
  return worked(
      hydraulics::record::froude_number, {entering_velocity(*state.toe), entering_depth(*state.toe)},
      limit_finding("jump.waves", "Inflow Froude number above the range of waves", state.toe->F1, LimitSense::at_least, 4.5,
                    dimension::none, Status::caution, "Smallest of the range, " + at_discharge(state.toe->discharge) + ".",
                    "Between 1.7 and 4.5 waves travel far downstream: protect the banks, or choose a low-Froude basin.",
                    {"peterka_1984", "sec. 1 and 4", Provenance::memory}));
}

Finding toe_velocity(const BasinView& view) {
  const auto& state = *std::max_element(view.states.begin(), view.states.end(),
                                        [](const TailwaterState& a, const TailwaterState& b) { return a.toe->V1 < b.toe->V1; });
  return worked(hydraulics::record::mean_velocity, {entering_unit_discharge(*state.toe), entering_depth(*state.toe)},
                limit_finding("basin.velocity", "Velocity at the toe without a study of cavitation", state.toe->V1,
                              LimitSense::at_most, 30.0, dimension::velocity, Status::caution,
                              "Largest of the range, " + at_discharge(state.toe->discharge) + ".",
                              "Review cavitation on chute, blocks and sill, surface tolerances and the need for aeration.",
                              common_practice));
}

Finding roller_hazard(const BasinView& view) {
  const auto& state =
      *std::max_element(view.states.begin(), view.states.end(), [](const TailwaterState& a, const TailwaterState& b) {
        return a.available_depth / a.toe->y2 < b.available_depth / b.toe->y2;
      });
  const double submergence = state.available_depth / state.toe->y2 - 1.0;
  return worked(
      hydraulics::record::tailwater_ratio, {tailwater_level(view, state), apron_level(view), sequent_depth(*state.toe)},
      limit_finding("safety.roller", "Submergence of the jump, as a danger to people", submergence, LimitSense::at_most, 0.0,
                    dimension::none, Status::caution,
                    "The roller over a submerged jump carries swimmers and boats back to the structure; largest " +
                        at_discharge(state.toe->discharge) + ".",
                    "Keep the public away by booms, fences, signs and warning before releases; give the walls safe ways out.",
                    common_practice));
}

std::string why_model(const BasinView& view) {
  using dissipators::Action;
  if (view.site.crest.shape == site::CrestShape::labyrinth) return "The crest is a labyrinth.";
  if (view.type.action == Action::jet || view.type.action == Action::roller)
    return "This kind of dissipator is never built without one.";
  const bool width_changes = view.type.action != Action::impact && !dissipators::replaces_chute(view.type.action) &&
                             view.width != view.site.chute.end_width;
  if (view.model_asked_by_type || width_changes)
    return "A limit of the tested range is passed, or the flow enters through a change of width.";
  return {};
}

Finding physical_model(const BasinView& view) {
  std::string text = why_model(view);
  const bool needed = !text.empty();
  if (!needed) text = "No rule checked here asks for a model.";
  if (!view.type.model.empty()) text += " For this type a model is needed for: " + std::string(view.type.model) + ".";
  return counted(limit_finding(
      "model.required", "Design within what may be built without a physical model", needed ? 1.0 : 0.0, LimitSense::at_most,
      0.0, dimension::none, Status::caution, std::move(text),
      "Have a physical model made before the design is final, over the whole range of discharges and with unequal gates.",
      {"peterka_1984", "preface and limits of its sections", Provenance::memory}));
}

}  // namespace quell::checks
