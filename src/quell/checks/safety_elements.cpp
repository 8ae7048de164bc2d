// Blocks and sills: peak of the force on each, cavitation index where they stand, and whether stones will grind the basin.
#include <algorithm>
#include <cmath>

#include "quell/base/quantity_text.h"
#include "quell/checks/origins.h"
#include "quell/checks/safety.h"
#include "quell/dissipators/parts.h"
#include "quell/hydraulics/basin_rules.h"
#include "quell/hydraulics/cavitation.h"
#include "quell/hydraulics/definitions.h"

namespace quell::checks {

using dissipators::at_discharge;
using dissipators::choice_note;
using dissipators::limit_finding;

namespace {

constexpr double grinding_velocity = 10.0;  ///< m/s; below it the risk is low
constexpr double drowned_ratio = 1.2;

/// First element behind the toe that stands in the jet: a pier or the sill.
const dissipators::Element* first_in_jet(const dissipators::Structure& structure) {
  const dissipators::Element* first = nullptr;
  for (const auto& element : structure.elements)
    if (element.station > 0.0 && (first == nullptr || element.station < first->station)) first = &element;
  return first;
}

Finding cavitation(const BasinView& view, const dissipators::Element& element) {
  double least = no_limit;
  double at = 0.0;
  FindingMethod behind;
  for (const auto& state : view.states) {
    const double depth = jump_depth_over(state, element.station, element.station + element.length);
    const double index = hydraulics::chute_cavitation_index({.V = state.toe->V1,
                                                             .d = std::max(0.0, depth),
                                                             .theta = 0.0,
                                                             .z = view.site.project.altitude,
                                                             .T = view.site.project.water_temperature});
    if (index < least) {
      least = index;
      at = state.toe->discharge;
      behind = {&hydraulics::record::chute_cavitation_index,
                {entering_velocity(*state.toe), told(std::max(0.0, depth), "mean depth of the jump over the element"),
                 told(0.0, "the floor is level"), given(view.site.project.altitude, "project.altitude"),
                 given(view.site.project.water_temperature, "project.water_temperature"), told(0.0, "the floor is straight")}};
    }
  }
  auto finding = choice_note(
      "elements.cavitation", "Cavitation index at the first row of blocks or at the sill", least, dimension::none,
      "Smallest " + at_discharge(at) + ", with the velocity of the toe and the mean depth over '" + std::string(element.name) +
          "'. Sharp-edged blocks are said to begin at 1 to 2; no published limit could be read, and the limits on "
          "velocity stand for it.",
      {"falvey_1990", "definition; mean depth over the element", Provenance::memory});
  finding.method = behind;
  return finding;
}

Finding abrasion(const BasinView& view) {
  double velocity = 0.0;
  double drowned = 0.0;
  FindingMethod behind;
  for (const auto& state : view.states) {
    if (state.toe->V1 > velocity)
      behind = {&hydraulics::record::mean_velocity, {entering_unit_discharge(*state.toe), entering_depth(*state.toe)}};
    velocity = std::max(velocity, state.toe->V1);
    if (state.need.required > 0.0) drowned = std::max(drowned, state.available_depth / state.need.required);
  }
  const bool uneven = std::any_of(view.patterns.begin(), view.patterns.end(),
                                  [](const PatternState& pattern) { return pattern.largest_step > 0.0; });
  const bool draws_stones = uneven || drowned > drowned_ratio;
  std::string text = "Stones are drawn in by uneven flow and by deep tailwater: ";
  text += uneven ? "some openings of the gates are unequal; " : "no opening judged is unequal; ";
  text += "tailwater up to " + quantity_token(drowned, dimension::none) + " of what is required.";
  auto finding = limit_finding("elements.abrasion", "Velocity at which stones grind the basin, where something draws them in",
                               draws_stones ? velocity : 0.0, LimitSense::at_most, grinding_velocity, dimension::velocity,
                               Status::caution, std::move(text),
                               "Open the gates evenly, keep loose stone from the sill or grout it for {{3|6,0,0|3}} to "
                               "{{5|6,0,0|3}}, clean the basin before first "
                               "use, give the floor a wear layer.",
                               {"novak_2007", "ch. 5: low risk below about 10 m/s", Provenance::seen});
  finding.method = behind;
  return finding;
}

/// Chute blocks carry no load of their own type: the rule of the piers on their faces is an upper bound, for they lie along the
/// floor of the chute.
double chute_block_force(const BasinView& view, const dissipators::Element& element) {
  double force = 0.0;
  for (const auto& state : view.states)
    force = std::max(
        force, hydraulics::baffle_pier_force({.A = element.width * element.height, .y1 = state.toe->y1, .V1 = state.toe->V1}));
  return force;
}

}  // namespace

void judge_forces(const BasinView& view, Safety& safety) {
  const double factor = view.site.elements.peak_factor;
  for (const auto& load : view.structure.loads)
    if (load.dimension == dimension::force) safety.elements.push_back({load.kind, load.name, load.value, factor * load.value});
  for (const auto& element : view.structure.elements)
    if (element.kind == "chute_block") {
      const double force = chute_block_force(view, element);
      safety.elements.push_back({element.kind, "Force on one chute block, upper bound", force, factor * force});
    }
  if (safety.elements.empty()) return;
  const auto largest = std::max_element(safety.elements.begin(), safety.elements.end(),
                                        [](const ElementForce& a, const ElementForce& b) { return a.peak < b.peak; });
  safety.findings.push_back(
      choice_note("elements.peak_force", "Largest peak of the force on a block or sill", largest->peak, dimension::force,
                  std::string(largest->name) + ": " + quantity_token(factor, dimension::none) + " times the mean of " +
                      quantity_token(largest->mean, dimension::force) +
                      ". No source gives the factor: it is the input peak_factor of [elements], an envelope that a model must "
                      "confirm. Act at "
                      "mid-height; overturning, dowels, punching and debris are for the structural engineer.",
                  dissipators::common_practice));
  safety.findings.back().key = "elements.peak_factor";
}

void judge_elements(const BasinView& view, Safety& safety) {
  if (const auto* element = first_in_jet(view.structure)) safety.findings.push_back(cavitation(view, *element));
  safety.findings.push_back(abrasion(view));
}

}  // namespace quell::checks
