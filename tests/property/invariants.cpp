#include "property/invariants.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "property/structure_checks.h"
#include "quell/base/constants.h"
#include "quell/design/discharge_cases.h"

namespace quell::test {
namespace {

using design::CaseResult;
using design::Option;
using site::ToeFlow;

bool close(double a, double b, double relative) {
  return std::abs(a - b) <= relative * std::max(std::abs(a), std::abs(b));
}

bool finite(std::initializer_list<double> values) {
  return std::all_of(values.begin(), values.end(), [](double value) { return std::isfinite(value); });
}

std::string broken_toe(const ToeFlow& toe, double energy_loss) {
  if (!finite({toe.discharge, toe.width, toe.energy_head, toe.y1, toe.V1, toe.F1, toe.y2, energy_loss}))
    return "toe: not finite";
  if (!(toe.y1 > 0.0 && toe.F1 > 1.0 && toe.y2 > toe.y1)) return fmt::format("toe: not supercritical, F1 {}", toe.F1);
  const double q = toe.unit_discharge;
  if (!close(toe.V1 * toe.y1 * toe.width, toe.discharge, 1e-12)) return "toe: mass";
  if (!close(toe.F1 * toe.F1, toe.V1 * toe.V1 / (gravity * toe.y1), 1e-12)) return "toe: Froude number";
  if (!close(toe.energy_head, toe.y1 + toe.V1 * toe.V1 / (2.0 * gravity), 1e-9)) return "toe: energy head";
  const double before = q * q / (gravity * toe.y1) + toe.y1 * toe.y1 / 2.0;
  const double after = q * q / (gravity * toe.y2) + toe.y2 * toe.y2 / 2.0;
  if (!close(before, after, 1e-9)) return fmt::format("jump: momentum {} before, {} after", before, after);
  const double V2 = q / toe.y2;
  const double lost = toe.energy_head - toe.y2 - V2 * V2 / (2.0 * gravity);
  if (!(energy_loss > 0.0) || std::abs(lost - energy_loss) > 1e-8 * toe.energy_head)
    return fmt::format("jump: loss {} by formula, {} by energy", energy_loss, lost);
  if (toe.apron_level + toe.energy_head > toe.reservoir_level + 1e-9) return "toe: energy above the reservoir";
  return {};
}

bool set_by_tailwater(const Option& option) {
  return option.type->record().level_rule == dissipators::LevelRule::tailwater;
}

std::string broken_case(const site::Site& site, const Option& option, const CaseResult& result) {
  const auto action = option.type->record().action;
  const bool jumps = dissipators::makes_jump(action);
  if (jumps)
    if (auto broken = broken_toe(result.toe, result.energy_loss); !broken.empty()) return broken;
  const auto& need = result.need;
  if (!(need.sweep_out <= need.required && need.required <= need.best_highest && need.best_highest <= need.largest))
    return fmt::format("need out of order: {} {} {} {}", need.sweep_out, need.required, need.best_highest, need.largest);
  if (set_by_tailwater(option) != (need.sweep_out > 0.0)) return "need: does not go with what sets the level";
  if (!finite({result.jump_length, result.roller_length, result.available_depth, result.margin})) return "case: not finite";
  if (jumps && (!(result.jump_length > 0.0) || result.roller_length < 0.0)) return "case: length of the jump";
  if (set_by_tailwater(option) && std::abs(result.margin - (result.available_depth - result.required_depth)) > 1e-12)
    return "case: margin";
  if (action == dissipators::Action::level_jump && result.toe.apron_level != option.apron_level) return "case: another level";
  if (result.toe.apron_level < option.apron_level - 1e-9) return "case: enters below the floor";
  if (result.toe.width != option.width) return "case: another width";
  // A type that needs no tailwater cannot be swept out: a jet is thrown clear above a river far below.
  const bool swept = need.sweep_out > 0.0 && result.available_depth < need.sweep_out;
  if (swept != (result.jump == design::JumpPlace::past_sill)) return "case: place of the jump";
  const bool held = site.basin.length > 0.0 && option.structure.required_length > 0.0;
  const double asked = option.type->length(result.toe, design::setting_of(site, option.width));
  if (jumps && asked > (held ? option.structure.required_length : option.length) * (1.0 + 1e-9))
    return "length: a discharge asks for more";
  return {};
}

std::string broken_finding(const Finding& finding) {
  if (!finite({finding.value, finding.limit})) return finding.id + ": not finite";
  if (finding.text.empty() || finding.source.empty()) return finding.id + ": no text or source";
  if (finding.status != Status::ok && finding.advice.empty()) return finding.id + ": no advice";
  if (finding.sense == LimitSense::note) return {};
  const bool good = finding.sense == LimitSense::at_least ? finding.value >= finding.limit : finding.value <= finding.limit;
  if (good != (finding.status == Status::ok))
    return fmt::format("{}: value {}, limit {}, status {}", finding.id, finding.value, finding.limit, name_of(finding.status));
  return {};
}

const Finding* find(const Option& option, std::string_view id) {
  for (const auto& finding : option.findings)
    if (finding.id == id) return &finding;
  return nullptr;
}

/// The governing discharge is the worst of those reported, and the findings say what the margin says.
std::string broken_margin(const site::Site& site, const Option& option) {
  const auto& governing = option.governing;
  double worst = governing.margin;
  for (const auto& result : option.cases) {
    if (result.tailwater_case == site::TailwaterCase::low && result.margin < governing.margin - 1e-9)
      return fmt::format("governing: margin {} at {}, but {} at {}", governing.margin, governing.discharge, result.margin,
                         result.discharge);
    worst = std::min(worst, result.margin);
  }
  const auto* margin = find(option, "tailwater.margin");
  const auto* limits = find(option, "apron.limits");
  if (margin == nullptr || limits == nullptr) return "finding: margin or limits missing";
  if ((worst >= -1e-6) != (margin->status == Status::ok)) return fmt::format("finding: margin {} judged wrongly", worst);
  if (limits->status == Status::ok && margin->status != Status::ok)
    return fmt::format("within limits, but the margin is {}", worst);
  const auto& basin = site.basin;
  if (basin.has_lowest_apron && option.apron_level < basin.lowest_apron_level) return "level: below the lowest allowed";
  if (basin.has_highest_apron && option.apron_level > basin.highest_apron_level + 1e-5 * basin.apron_step)
    return "level: above the highest allowed";
  return {};
}

/// A held length is kept where the end can be moved, and always judged.
std::string broken_length(const site::Site& site, const Option& option) {
  const auto* finding = find(option, "basin.length");
  if (!(site.basin.length > 0.0)) return finding == nullptr ? std::string{} : "length: judged although none is held";
  if (finding == nullptr) return "length: held and not judged";
  const auto& structure = option.structure;
  const bool moves = structure.required_length > 0.0;
  if (moves && option.length != site.basin.length) return "length: not the one held";
  const auto wanted = !moves                                                 ? Status::caution
                      : structure.required_length > 1.000001 * option.length ? Status::fails
                      : structure.required_length < 0.999999 * option.length ? Status::ok
                                                                             : finding->status;
  return finding->status == wanted ? std::string{} : "length: judged wrongly";
}

std::string broken_option(const site::Site& site, const Option& option) {
  if (!option.sized) {
    const bool said = option.statement.size() > 30 && worst_status(option.findings) == Status::fails;
    return said ? std::string{} : "not sized without a reason";
  }
  if (!finite({option.apron_level, option.width, option.length, option.wall_top_level, option.wall_height,
               option.end_sill_level, option.chute_end_station, option.quantities.concrete}))
    return "option: not finite";
  const auto& record = option.type->record();
  if (option.width <= 0.0 || option.length <= 0.0 || option.quantities.built_volume() < 0.0)
    return "option: a dimension is not above zero";
  if (option.structure.is_paved && (option.wall_height <= 0.0 || option.quantities.concrete <= 0.0))
    return "option: no walls or no concrete";
  if (auto broken = broken_length(site, option); !broken.empty()) return broken;
  if (option.cases.empty() || option.cases.size() % 3 != 0) return "option: cases";
  for (const auto& result : option.cases) {
    if (auto broken = broken_case(site, option, result); !broken.empty()) return broken;
    if (record.action != dissipators::Action::level_jump || record.walls_from_tailwater) continue;
    const double water = option.apron_level + std::max(result.available_depth, result.toe.y2);
    if (option.wall_top_level < water + 0.1 * (result.toe.V1 + result.toe.y2) - 1e-9)
      return "walls: less freeboard than the rule";
  }
  if (set_by_tailwater(option))
    if (auto broken = broken_margin(site, option); !broken.empty()) return broken;
  for (const auto& finding : option.findings)
    if (auto broken = broken_finding(finding); !broken.empty()) return broken;
  return broken_elements(option.structure, option.width, site.chute.reaches.back().slope);
}

}  // namespace

std::string rising_energy(const site::ChuteFlow& flow, double apron_level, int points) {
  // Above its start the flow is still the crest's, and the chute says nothing about it.
  const double top = flow.profile(apron_level, 1).front().bed_level;
  double before = flow.start_energy_level() + 1e-9;
  for (int i = 0; i <= points; ++i) {
    const double level = top + (apron_level - top) * i / points;
    const double energy = flow.energy_level_at(level);
    if (!std::isfinite(energy)) return "chute: energy level not finite";
    if (energy > before + 1e-9) return fmt::format("chute: energy rises by {} at bed level {}", energy - before, level);
    before = energy;
  }
  return {};
}

std::string broken_invariant(const site::Site& site, const design::DesignResult& result) {
  if (result.cases.empty()) return "no cases";
  for (std::size_t i = 1; i < result.cases.size(); ++i) {
    if (!(result.cases[i].discharge > result.cases[i - 1].discharge)) return "cases: not in order of discharge";
    const double rise = result.cases[i].reservoir_level - result.cases[i - 1].reservoir_level;
    // Gates hold the level until they are fully open.
    if (!(rise > 0.0) && !(site.gates.given() && rise == 0.0)) return "cases: reservoir does not rise";
  }
  bool any = false;
  for (const auto& option : result.options) {
    if (auto broken = broken_option(site, option); !broken.empty())
      return std::string(option.type->record().id.view()) + ": " + broken;
    any = any || option.sized;
  }
  if (any != (result.chosen >= 0)) return "chosen: none although one is sized, or one although none is";
  if (!any) return result.all_requirements_met ? "nothing sized, but all requirements met" : "";
  const auto& chosen = result.options[static_cast<std::size_t>(result.chosen)];
  if (result.all_requirements_met != (worst_status(chosen.findings) != Status::fails)) return "all_requirements_met is wrong";
  return {};
}

}  // namespace quell::test
