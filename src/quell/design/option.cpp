#include "quell/design/option.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "quell/base/quantity_text.h"
#include "quell/checks/checks.h"
#include "quell/design/placing.h"
#include "quell/design/quantities.h"
#include "quell/design/states.h"
#include "quell/design/workings.h"
#include "quell/site/chute_air.h"
#include "quell/site/jump.h"

namespace quell::design {
namespace {

using dissipators::TailwaterNeed;

JumpPlace place_of(double available, const TailwaterNeed& need) {
  if (available < need.sweep_out) return JumpPlace::past_sill;
  if (available > need.largest) return JumpPlace::drowned;
  // The level is rounded and bisected: a hair above the best depth is still the apron.
  return available > need.best_highest + 0.02 ? JumpPlace::on_chute : JumpPlace::on_apron;
}

CaseResult judge_case(const PreparedSite& prepared, const dissipators::Dissipator& type, const DischargeCase& data,
                      const site::ToeFlow& toe, const site::FreeJump& jump, site::TailwaterCase tailwater_case) {
  CaseResult result{.discharge = data.discharge,
                    .tailwater_case = tailwater_case,
                    .toe = toe,
                    .energy_loss = jump.energy_loss,
                    .jump_length = jump.jump_length,
                    .shortest_length = jump.shortest_length,
                    .longest_length = jump.longest_length,
                    .roller_length = jump.roller_length,
                    .crest_depth = jump.crest_depth,
                    .need = type.tailwater_need(toe)};
  result.required_depth = result.need.required + prepared.site.basin.tailwater_margin;
  result.available_depth = data.tailwater_level[site::index_of(tailwater_case)] - toe.apron_level;
  result.margin = result.available_depth - result.required_depth;
  result.jump = place_of(result.available_depth, result.need);
  return result;
}

/// Toe flows of the reported discharges; fills the option's cases.
Outcome<std::vector<site::ToeFlow>> run_cases(const PreparedSite& prepared, Option& option) {
  std::vector<site::ToeFlow> flows;
  for (const auto& entry : prepared.cases) {
    if (!entry.reported) continue;
    const auto toe = toe_at(entry, option.width, option.apron_level);
    if (!toe) return tl::unexpected(toe.error());
    const auto jump = site::free_jump(*toe);
    flows.push_back(*toe);
    for (const auto tailwater_case : site::tailwater_cases)
      option.cases.push_back(judge_case(prepared, *option.type, entry.data, *toe, jump, tailwater_case));
  }
  // The patterns that the basin is made for size it too; the largest discharge stays last.
  for (const auto& entry : prepared.patterns) {
    const auto toe = toe_at(entry, option.width, option.apron_level);
    if (!toe) return tl::unexpected(toe.error());
    const auto jump = site::free_jump(*toe);
    if (!entry.data.is_check) flows.insert(flows.end() - 1, *toe);
    for (const auto tailwater_case : site::tailwater_cases)
      option.pattern_cases.push_back(judge_case(prepared, *option.type, entry.data, *toe, jump, tailwater_case));
  }
  return flows;
}

Outcome<void> set_governing(const PreparedSite& prepared, const ApronLevel& apron, Option& option) {
  const auto entry = governing_case(prepared, apron);
  if (!entry) return tl::unexpected(entry.error());
  const auto toe = toe_at(*entry, option.width, option.apron_level);
  if (!toe) return tl::unexpected(toe.error());
  const auto result = judge_case(prepared, *option.type, entry->data, *toe, site::free_jump(*toe), site::TailwaterCase::low);
  option.governing = {.discharge = entry->data.discharge,
                      .tailwater_case = site::TailwaterCase::low,
                      .margin = result.margin,
                      .tailwater_level = entry->data.tailwater_level[0],
                      .toe = *toe,
                      .required_depth = result.required_depth,
                      .available_depth = result.available_depth,
                      .gate_pattern = entry->data.gate_pattern};
  return {};
}

void set_walls_and_levels(const PreparedSite& prepared, Option& option) {
  double water = -std::numeric_limits<double>::max();
  for (const auto& entry : prepared.cases)
    water = std::max(water, entry.data.tailwater_level[site::index_of(site::TailwaterCase::high)]);
  for (const auto& result : option.cases) water = std::max(water, option.apron_level + result.crest_depth);
  for (std::size_t i = 0; i < option.pattern_cases.size(); ++i)
    if (!prepared.patterns[i / site::tailwater_cases.size()].data.is_check)
      water = std::max(water, option.apron_level + option.pattern_cases[i].crest_depth);
  option.wall_top_level = water + option.structure.freeboard;
  option.wall_height = option.wall_top_level - option.apron_level;
  option.end_sill_level = option.apron_level + option.structure.end_sill_height;
  option.chute_end_station = prepared.geometry.station_at_level(option.apron_level);
}

/// The type's own limits and what sizing said, then the checks of every basin.
void judge(const PreparedSite& prepared, const dissipators::SizingInput& sizing, const ApronLevel& apron, Option& option) {
  option.findings = option.type->limits(sizing);
  option.applicable = worst_status(option.findings) != Status::fails;
  const bool model_asked = std::any_of(option.findings.begin(), option.findings.end(),
                                       [](const Finding& finding) { return finding.asks_for_model; });
  option.findings.insert(option.findings.end(), option.structure.findings.begin(), option.structure.findings.end());
  const auto states = states_of(option);
  const auto patterns = pattern_states(prepared, option);
  auto wettest = prepared.cases.back().chute.profile(option.apron_level, 24);
  site::add_air_and_cavitation(prepared.site, prepared.cases.back().chute, wettest);
  const checks::BasinView view{.site = prepared.site,
                               .geometry = prepared.geometry,
                               .states = states,
                               .wettest = wettest,
                               .structure = option.structure,
                               .apron_level = option.apron_level,
                               .width = option.width,
                               .largest_crest_head = prepared.cases.back().data.crest_head,
                               .slab_thickness = option.quantities.slab_thickness,
                               .level_exists = apron.found,
                               .level_wanted = apron.within_limits ? option.apron_level : apron.wanted,
                               .model_asked_by_type = model_asked,
                               .study = prepared.study,
                               .patterns = patterns};
  for (auto& finding : checks::judge_basin(view)) option.findings.push_back(std::move(finding));
}

std::string lower_first(std::string text) {
  if (!text.empty() && text.front() >= 'A' && text.front() <= 'Z') text.front() = static_cast<char>(text.front() - 'A' + 'a');
  return text;
}

std::string statement_of(const PreparedSite& prepared, const ApronLevel& apron, const Option& option) {
  const auto& governing = option.governing;
  const double share = 100.0 * governing.discharge / prepared.site.discharges.check_flood;
  std::string text = "The apron lies at " + quantity_token(option.apron_level, dimension::length) + ". " +
                     quantity_token(governing.discharge, dimension::discharge) + " governs" +
                     (governing.gate_pattern.empty() ? std::string() : " with the gates at '" + governing.gate_pattern + "'") +
                     ", " + std::to_string(std::lround(share)) + " % of the check flood";
  if (!apron.found) {
    text += "; no level searched gives every discharge its tailwater: " + quantity_token(-governing.margin, dimension::length) +
            " are missing there.";
  } else if (!apron.within_limits) {
    text +=
        "; the limit on the apron leaves it " + quantity_token(-governing.margin, dimension::length) + " short of tailwater.";
  } else {
    text += ", with a margin of " + quantity_token(governing.margin, dimension::length) + " in the low tailwater case.";
  }
  if (!option.applicable) {
    text += " Outside the type's limits of use:";
    for (const auto& finding : option.findings)
      if (finding.status == Status::fails && finding.id.rfind(option.type->record().id.view(), 0) == 0)
        text += " " + lower_first(finding.title) + " is " + quantity_token(finding.value, finding.dimension) + ", limit " +
                quantity_token(finding.limit, finding.dimension) + ";";
    text.back() = '.';
  }
  return text;
}

/// The surface inside the jump, from the front to where it is level.
void draw_surface(WaterProfile& profile) {
  constexpr int points = 40;
  const auto& result = profile.result;
  if (!(result.toe.y2 > 0.0)) return;
  const auto jump = site::free_jump(result.toe);
  const double start = result.position.z1 + result.position.d1;
  for (int i = 0; i <= points; ++i) {
    const double x = jump.jump_length * i / points;
    profile.jump_surface.push_back({x, site::surface_depth(jump, start, result.available_depth, x)});
  }
}

WaterProfile water_profile(const PreparedSite& prepared, const PreparedCase& entry, const Option& option, std::string label) {
  WaterProfile profile{.discharge = entry.data.discharge,
                       .label = std::move(label),
                       .reservoir_level = entry.data.reservoir_level,
                       .tailwater_level = entry.data.tailwater_level[0],
                       .chute = entry.chute.profile(option.apron_level, 60)};
  site::add_air_and_cavitation(prepared.site, entry.chute, profile.chute);
  if (const auto toe = toe_at(entry, option.width, option.apron_level))
    profile.result = judge_case(prepared, *option.type, entry.data, *toe, site::free_jump(*toe), site::TailwaterCase::low);
  place_jump(prepared, entry, option, profile.result);
  draw_surface(profile);
  return profile;
}

void add_profiles(const PreparedSite& prepared, const ApronLevel& apron, Option& option) {
  option.crest_outline = prepared.geometry.crest_outline;
  if (const auto entry = governing_case(prepared, apron))
    option.profiles.push_back(water_profile(prepared, *entry, option, "governing discharge"));
  for (const auto& entry : prepared.cases) {
    if (entry.data.discharge == prepared.site.discharges.design_flood)
      option.profiles.push_back(water_profile(prepared, entry, option, "design flood"));
    if (entry.data.discharge == prepared.site.discharges.check_flood)
      option.profiles.push_back(water_profile(prepared, entry, option, "check flood"));
  }
  option.profiles.push_back(water_profile(prepared, prepared.cases.front(), option, "smallest discharge"));
}

/// Needs the jumps in their places.
void add_moving_water(const PreparedSite& prepared, Option& option) {
  constexpr int chute_points = 16, jump_points = 16;
  option.crest_outline = prepared.geometry.crest_outline;
  auto result = option.cases.begin();
  for (const auto& entry : prepared.cases) {
    if (!entry.reported) continue;
    MovingWater water{.discharge = entry.data.discharge, .chute = entry.chute.profile(option.apron_level, chute_points)};
    const auto jump = site::free_jump(result->toe);
    for (auto& surface : water.jump) {
      const double start = result->position.z1 + result->position.d1;
      for (int i = 0; i <= jump_points; ++i)
        surface.push_back(site::surface_depth(jump, start, result->available_depth, jump.jump_length * i / jump_points));
      ++result;
    }
    option.moving_water.push_back(std::move(water));
  }
}

Option cannot_size(const dissipators::Dissipator& type, double width, std::string_view reason) {
  Option option{.type = &type, .width = width};
  option.statement = "Cannot be sized here: " + std::string(reason) + ".";
  option.findings = {{.id = std::string(type.record().id.view()) + ".sized",
                      .status = Status::fails,
                      .title = "The type can be sized on this site",
                      .text = option.statement,
                      .advice = "Change the site or choose another type.",
                      .source = "momentum",
                      .place = "energy and momentum at the toe",
                      .provenance = Provenance::derived}};
  return option;
}

}  // namespace

Outcome<PreparedCase> governing_case(const PreparedSite& prepared, const ApronLevel& apron) {
  if (apron.governing_pattern >= 0) return prepared.patterns[static_cast<std::size_t>(apron.governing_pattern)];
  return prepare_case(prepared.site, prepared.geometry, apron.governing_discharge);
}

Option size_option(const PreparedSite& prepared, const dissipators::Dissipator& type, double width,
                   const DesignOptions& options) {
  const ApronSearch search{prepared.site, prepared.geometry, type, width, prepared.lowest_level, prepared.highest_level};
  const auto apron = set_apron(search, prepared.cases, prepared.patterns);
  if (!apron) return cannot_size(type, width, apron.error().reason);
  Option option{.type = &type, .width = width};
  option.apron_level = apron->level;
  const auto flows = run_cases(prepared, option);
  if (!flows) return cannot_size(type, width, flows.error().reason);
  if (auto done = set_governing(prepared, *apron, option); !done) return cannot_size(type, width, done.error().reason);
  const dissipators::SizingInput sizing{.flows = *flows,
                                        .width = width,
                                        .chute_slope = prepared.site.chute.reaches.back().slope,
                                        .fall = prepared.site.crest.crest_level - option.apron_level,
                                        .upstream_head = prepared.cases.back().data.reservoir_level - option.apron_level};
  option.structure = type.size(sizing, nullptr);
  option.length = option.structure.length;
  set_walls_and_levels(prepared, option);
  option.quantities = concrete(quantity_input(option, *flows), option.structure.elements, nullptr);
  if (options.with_positions) place_jumps(prepared, option);
  judge(prepared, sizing, *apron, option);
  option.sized = true;
  option.statement = statement_of(prepared, *apron, option);
  if (options.with_profiles) add_profiles(prepared, *apron, option);
  if (options.with_moving_water) add_moving_water(prepared, option);
  if (options.with_workings) record_workings(prepared, *apron, sizing, option);
  return option;
}

namespace {

/// Widest basin that the walls of the last reach can reach, by the flare of the largest discharge at the chute's own width.
double widest(const PreparedSite& prepared, const Option& narrow) {
  const auto& site = prepared.site;
  const auto& last = prepared.geometry.pieces.back();
  const double run = (prepared.geometry.last_reach_level - narrow.apron_level) / last.sine;
  const double flare = 1.0 / (3.0 * narrow.cases.back().toe.F1);
  const double reach = site.chute.end_width + 2.0 * run * flare;
  return site.basin.largest_width > 0.0 ? std::min(reach, site.basin.largest_width) : reach;
}

bool better(const Option& a, const Option& b) {
  const auto fails = [](const Option& option) { return worst_status(option.findings) == Status::fails; };
  if (a.sized != b.sized) return a.sized;
  if (fails(a) != fails(b)) return !fails(a);
  return a.quantities.concrete < b.quantities.concrete;
}

}  // namespace

Option best_option(const PreparedSite& prepared, const dissipators::Dissipator& type, const DesignOptions& options) {
  const auto& site = prepared.site;
  if (!site.basin.width_is_free) return size_option(prepared, type, site.basin.width, options);
  constexpr int widths_tried = 9;
  const DesignOptions bare{.types = options.types, .with_positions = false};
  Option best = size_option(prepared, type, site.chute.end_width, bare);
  const double limit = best.sized ? widest(prepared, best) : site.chute.end_width;
  for (int i = 1; i < widths_tried; ++i) {
    const double wished = site.chute.end_width + (limit - site.chute.end_width) * i / (widths_tried - 1);
    const double width = std::floor(wished * 10.0) / 10.0;
    if (width <= best.width) continue;
    if (Option wider = size_option(prepared, type, width, bare); better(wider, best)) best = std::move(wider);
  }
  return size_option(prepared, type, best.width, options);
}

}  // namespace quell::design
