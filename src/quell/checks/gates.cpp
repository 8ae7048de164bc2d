// Checks of the operation of gates.
#include <algorithm>

#include "quell/base/quantity_text.h"
#include "quell/checks/checks.h"
#include "quell/checks/origins.h"
#include "quell/dissipators/parts.h"
#include "quell/hydraulics/definitions.h"

namespace quell::checks {

using dissipators::common_practice;
using dissipators::limit_finding;

namespace {

std::string named(const PatternState& state) {
  return "'" + std::string(state.name) + "' at a reservoir level of " +
         quantity_token(state.toe->reservoir_level, dimension::length) + " (" +
         quantity_token(state.discharge, dimension::discharge) + ", " +
         quantity_token(state.toe->unit_discharge, dimension::unit_discharge) + " in the bay that counts)";
}

StepInput low_tailwater(const BasinView& view, const PatternState& state) {
  return tailwater_level(view, state.tailwater_level, site::TailwaterCase::low);
}

/// The pattern with the least value of `measure` among those of one kind; null where there is none.
template <class Measure>
const PatternState* least(const BasinView& view, bool is_check, Measure measure) {
  const PatternState* found = nullptr;
  for (const auto& state : view.patterns)
    if (state.is_check == is_check && (found == nullptr || measure(state) < measure(*found))) found = &state;
  return found;
}

}  // namespace

Findings gate_patterns(const BasinView& view) {
  const auto* worst = least(view, false, [](const PatternState& state) { return state.margin; });
  if (worst == nullptr) return {};
  auto finding = limit_finding(
      "gates.patterns", "Tailwater less what the basin requires, with every gate pattern of the operation", worst->margin,
      LimitSense::at_least, -1e-6, dimension::length, Status::fails,
      "The smallest margin stands with " + named(*worst) +
          ". A bay is followed down without spreading; the river has the whole discharge. Ratings of gates "
          "are good to about 10 %.",
      "Open more bays by smaller steps, lower the apron, or take the pattern out of the operation.", common_practice);
  if (view.type.level_rule != dissipators::LevelRule::tailwater) return {finding};
  return {worked(hydraulics::record::tailwater_margin,
                 {low_tailwater(view, *worst), apron_level(view),
                  told(worst->required_depth, "depth by the rule of the type, plus the margin asked for")},
                 std::move(finding))};
}

Findings gate_mishaps(const BasinView& view) {
  const auto* worst = least(view, true, [](const PatternState& state) { return state.sweep_out_reserve; });
  if (worst == nullptr) return {};
  return {worked(
      hydraulics::record::tailwater_margin,
      {low_tailwater(view, *worst), apron_level(view),
       told(worst->sweep_out_depth, "depth at which the jump leaves, by the rule of the type")},
      limit_finding("gates.mishaps", "Jump kept in the basin with gate patterns outside the operation",
                    worst->sweep_out_reserve, LimitSense::at_least, 0.0, dimension::length, Status::caution,
                    "The smallest reserve against sweeping out stands with " + named(*worst) +
                        ". The apron is not set for such patterns.",
                    "Forbid the pattern in the rules of operation except to test a gate at low reservoir level, and inspect "
                    "basin and river after any such release.",
                    common_practice))};
}

Findings gate_unequal(const BasinView& view) {
  const auto* worst = least(view, false, [](const PatternState& state) { return -state.largest_step; });
  if (worst == nullptr) return {};
  auto finding = limit_finding(
      "gates.unequal", "Neighbouring gates open alike in every pattern of the operation", worst->largest_step,
      LimitSense::at_most, 1e-9, dimension::length, Status::caution,
      worst->largest_step > 0.0 ? "Largest difference between neighbours, with " + named(*worst) +
                                      ": eddies beside the open bays carry bed material into the basin, which grinds the "
                                      "concrete, and the jump is not the same across the width."
                                : "Every pattern opens all bays alike.",
      "Open from the middle outwards, keep neighbours within one step of each other, and test unequal patterns in a physical "
      "model.",
      {"novak_2007", "ch. 5, symmetrical operation; common practice for the steps", Provenance::seen});
  return {keyed("gates.patterns", std::move(finding))};
}

Findings gate_lag(const BasinView& view) {
  if (!view.site.gates.given()) return {};
  return {
      keyed("river.lag_allowance",
            limit_finding("gates.tailwater_lag", "Allowance for tailwater that is missing just after the gates open",
                          view.site.river.lag_allowance, LimitSense::at_least, 1e-9, dimension::length, Status::caution,
                          view.site.river.lag_allowance > 0.0
                              ? "The allowance lowers the low tailwater case at every discharge. It is a number given, not "
                                "computed from the river's response."
                              : "The tailwater is that of steady flow; after a fast opening it comes later than the discharge.",
                          "Give an allowance, or limit the rate of opening so that the river can follow.", common_practice))};
}

Findings gate_flood_made(const BasinView& view) {
  if (!view.site.gates.given() || view.study.inflows.empty()) return {};
  const auto ratio = [](const site::RoutedInflow& inflow) { return inflow.peak_outflow / inflow.peak_inflow; };
  const auto& worst = *std::max_element(view.study.inflows.begin(), view.study.inflows.end(),
                                        [&](const auto& a, const auto& b) { return ratio(a) < ratio(b); });
  return {keyed(
      "gates.rules",
      limit_finding("gates.flood_made", "Rule of the gates passes no more than flows in", ratio(worst), LimitSense::at_most,
                    1.0, dimension::none, Status::caution,
                    "Largest ratio of peak outflow to peak inflow, for '" + worst.name + "', with " +
                        std::to_string(worst.gate_moves) + " changes of the gates.",
                    "Take smaller steps, or more of them: the rule makes a flood that the river would not have had, and moves "
                    "the gates to and fro.",
                    common_practice))};
}

Findings gate_unjudged(const BasinView& view) {
  std::string names;
  int count = 0;
  for (const auto& pattern : view.site.gates.patterns) {
    const bool judged = std::any_of(view.patterns.begin(), view.patterns.end(),
                                    [&](const PatternState& state) { return state.name == pattern.name; });
    if (judged || !pattern.is_standard) continue;
    ++count;
    names += (names.empty() ? "'" : ", '") + pattern.name + "'";
  }
  if (count == 0) return {};
  return {keyed("gates.standard_patterns",
                counted(limit_finding(
                    "gates.unjudged", "Every added gate pattern judged", count, LimitSense::at_most, 0.0, dimension::none,
                    Status::caution,
                    names + " could not be judged: the tailwater rating has no row for the discharge, or the chute no flow.",
                    "Extend the tailwater rating down to the discharge of a single gate and up to that of all but one.",
                    common_practice)))};
}

}  // namespace quell::checks
