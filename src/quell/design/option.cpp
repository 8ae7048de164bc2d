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

JumpPlace place_of(dissipators::Action action, double available, const TailwaterNeed& need) {
  // A type that needs no tailwater cannot lose it: a jet is thrown clear above a river far below.
  if (need.sweep_out > 0.0 && available < need.sweep_out) return JumpPlace::past_sill;
  if (available > need.largest) return JumpPlace::drowned;
  // The level is rounded and bisected: a hair above the best depth is still the apron.
  const bool climbs = dissipators::makes_jump(action) && available > need.best_highest + 0.02;
  return climbs ? JumpPlace::on_chute : JumpPlace::on_apron;
}

/// Tailwater less what is required; for a type that requires none the room below the depth that drowns it, where there is one.
double margin_of(const dissipators::TypeRecord& record, const CaseResult& result) {
  if (record.level_rule == dissipators::LevelRule::tailwater) return result.available_depth - result.required_depth;
  return result.need.largest < no_limit ? result.need.largest - result.available_depth : 0.0;
}

CaseResult judge_case(const PreparedSite& prepared, const Option& option, const DischargeCase& data, const site::ToeFlow& toe,
                      const site::FreeJump& jump, site::TailwaterCase tailwater_case) {
  const auto& record = option.type->record();
  CaseResult result{.discharge = data.discharge,
                    .tailwater_case = tailwater_case,
                    .toe = toe,
                    .energy_loss = jump.energy_loss,
                    .jump_length = jump.jump_length,
                    .shortest_length = jump.shortest_length,
                    .longest_length = jump.longest_length,
                    .roller_length = jump.roller_length,
                    .crest_depth = jump.crest_depth,
                    .need = option.type->tailwater_need(toe, setting_of(prepared.site, option.width))};
  if (record.action == dissipators::Action::sloping_jump) result.crest_depth = result.need.required;
  if (record.walls_from_tailwater) result.crest_depth = 0.0;
  if (record.level_rule == dissipators::LevelRule::tailwater)
    result.required_depth = result.need.required + prepared.site.basin.tailwater_margin;
  result.available_depth = data.tailwater_level[site::index_of(tailwater_case)] - option.apron_level;
  result.margin = margin_of(record, result);
  result.jump = place_of(record.action, result.available_depth, result.need);
  return result;
}

/// The free jump of the flow; nothing for a type that works without one.
site::FreeJump jump_of(const dissipators::Dissipator& type, const site::ToeFlow& toe) {
  return dissipators::makes_jump(type.record().action) ? site::free_jump(toe) : site::FreeJump{};
}

/// Flows that enter the basin, with their tailwater levels: what sizing starts from.
struct Flows {
  std::vector<site::ToeFlow> flows;
  std::vector<std::array<double, 3>> tailwater_levels;

  /// The largest discharge stays last.
  void insert_before_last(const site::ToeFlow& flow, const std::array<double, 3>& levels) {
    flows.insert(flows.end() - 1, flow);
    tailwater_levels.insert(tailwater_levels.end() - 1, levels);
  }
};

/// Flows of the reported discharges; fills the option's cases.
Outcome<Flows> run_cases(const PreparedSite& prepared, Option& option) {
  Flows flows;
  const auto setting = setting_of(prepared.site, option.width);
  option.cases.reserve(3 * prepared.cases.size());
  for (const auto& entry : prepared.cases) {
    if (!entry.reported) continue;
    const auto toe = entering_flow(*option.type, setting, entry, option.apron_level);
    if (!toe) return tl::unexpected(toe.error());
    const auto jump = jump_of(*option.type, *toe);
    flows.flows.push_back(*toe);
    flows.tailwater_levels.push_back(entry.data.tailwater_level);
    for (const auto tailwater_case : site::tailwater_cases)
      option.cases.push_back(judge_case(prepared, option, entry.data, *toe, jump, tailwater_case));
  }
  // The patterns that the basin is made for size it too.
  for (const auto& entry : prepared.patterns) {
    const auto toe = entering_flow(*option.type, setting, entry, option.apron_level);
    if (!toe) return tl::unexpected(toe.error());
    const auto jump = jump_of(*option.type, *toe);
    if (!entry.data.is_check) flows.insert_before_last(*toe, entry.data.tailwater_level);
    for (const auto tailwater_case : site::tailwater_cases)
      option.pattern_cases.push_back(judge_case(prepared, option, entry.data, *toe, jump, tailwater_case));
  }
  return flows;
}

Outcome<void> set_governing(const PreparedSite& prepared, const ApronLevel& apron, Option& option) {
  const auto entry = governing_case(prepared, apron);
  if (!entry) return tl::unexpected(entry.error());
  const auto toe = entering_flow(*option.type, setting_of(prepared.site, option.width), *entry, option.apron_level);
  if (!toe) return tl::unexpected(toe.error());
  const auto result =
      judge_case(prepared, option, entry->data, *toe, jump_of(*option.type, *toe), apron.governing_tailwater_case);
  option.governing = {.discharge = entry->data.discharge,
                      .tailwater_case = apron.governing_tailwater_case,
                      .margin = result.margin,
                      .tailwater_level = entry->data.tailwater_level[site::index_of(apron.governing_tailwater_case)],
                      .toe = *toe,
                      .required_depth = result.required_depth,
                      .available_depth = result.available_depth,
                      .gate_pattern = entry->data.gate_pattern};
  return {};
}

double highest_water(const PreparedSite& prepared, const Option& option) {
  double water = -std::numeric_limits<double>::max();
  for (const auto& entry : prepared.cases)
    water = std::max(water, entry.data.tailwater_level[site::index_of(site::TailwaterCase::high)]);
  for (const auto& result : option.cases) water = std::max(water, option.apron_level + result.crest_depth);
  for (std::size_t i = 0; i < option.pattern_cases.size(); ++i)
    if (!prepared.patterns[i / site::tailwater_cases.size()].data.is_check)
      water = std::max(water, option.apron_level + option.pattern_cases[i].crest_depth);
  return water;
}

void set_walls_and_levels(const PreparedSite& prepared, Option& option) {
  const auto& structure = option.structure;
  if (!structure.is_paved)
    option.wall_height = 0.0;
  else if (structure.least_wall_height > 0.0)
    option.wall_height = structure.least_wall_height;
  else
    option.wall_height = highest_water(prepared, option) + structure.freeboard - option.apron_level;
  option.wall_top_level = option.apron_level + option.wall_height;
  option.end_sill_level = option.apron_level + structure.end_sill_height;
  // x = 0 of the structure: where the chute meets its floor, or for a bucket the level of its invert.
  const auto& start = structure.floor.front();
  const double toe_level = option.apron_level + (start.x < 0.0 ? 0.0 : start.z);
  option.chute_end_station =
      dissipators::replaces_chute(option.type->record().action) ? 0.0 : prepared.geometry.station_at_level(toe_level);
}

/// The type's own limits and what sizing said, then the checks of every basin.
void judge(const PreparedSite& prepared, const dissipators::SizingInput& sizing, const ApronLevel& apron, bool with_safety,
           Option& option) {
  option.findings = dissipators::judge_limits(option.type->record(), sizing);
  const bool model_asked = std::any_of(option.findings.begin(), option.findings.end(),
                                       [](const Finding& finding) { return finding.asks_for_model; });
  for (auto& finding : option.type->findings(sizing, option.structure)) option.findings.push_back(std::move(finding));
  option.applicable = worst_status(option.findings) != Status::fails;
  for (auto& finding : dissipators::judge_length(*option.type, sizing, option.structure))
    option.findings.push_back(std::move(finding));
  const auto states = states_of(option, sizing.setting);
  const auto patterns = pattern_states(prepared, option);
  auto wettest = prepared.cases.back().chute.profile(option.apron_level, 24);
  site::add_air_and_cavitation(prepared.site, prepared.cases.back().chute, wettest);
  const checks::BasinView view{
      .site = prepared.site,
      .type = option.type->record(),
      .geometry = prepared.geometry,
      .states = states,
      .wettest = wettest,
      .structure = option.structure,
      .apron_level = option.apron_level,
      .width = option.width,
      .largest_crest_head = prepared.cases.back().data.crest_head,
      .slab_thickness = prepared.site.slab.thickness > 0.0 ? prepared.site.slab.thickness : option.quantities.slab_thickness,
      .wall_height = option.wall_height,
      .wall_thickness = prepared.site.walls.thickness > 0.0 ? prepared.site.walls.thickness : option.quantities.wall_thickness,
      .level_exists = apron.found,
      .level_wanted = apron.within_limits ? option.apron_level : apron.wanted,
      .model_asked_by_type = model_asked,
      .study = prepared.study,
      .patterns = patterns};
  for (auto& finding : checks::judge_basin(view)) option.findings.push_back(std::move(finding));
  if (!with_safety) return;
  option.safety = checks::judge_safety(view);
  option.findings.insert(option.findings.end(), option.safety.findings.begin(), option.safety.findings.end());
}

/// What the site file accepts is told beside the finding; no status changes.
void mark_accepted(const site::Site& site, Findings& findings) {
  for (const auto& acceptance : site.accepted)
    for (auto& finding : findings)
      if (finding.id == acceptance.finding) {
        finding.accepted_by = acceptance.by;
        finding.accepted_because = acceptance.reason;
      }
}

std::string lower_first(std::string text) {
  if (text.rfind("Froude", 0) == 0) return text;  // a name
  if (!text.empty() && text.front() >= 'A' && text.front() <= 'Z') text.front() = static_cast<char>(text.front() - 'A' + 'a');
  return text;
}

/// Which of the type's own limits exclude it, and by how much.
std::string exclusions_of(const Option& option) {
  const auto& record = option.type->record();
  std::string text;
  for (const auto& finding : option.findings) {
    const bool own = finding.id.rfind(std::string(record.id.view()) + ".", 0) == 0;
    if (!own || finding.status != Status::fails || finding.id == std::string(record.id.view()) + ".sized") continue;
    text += (text.empty() ? " Excluded: " : "; ") + lower_first(finding.title) + " is " +
            quantity_token(finding.value, finding.dimension) + ", limit " + quantity_token(finding.limit, finding.dimension);
    const double beyond = std::abs(finding.value - finding.limit);
    if (finding.limit != 0.0)
      text += ", " + std::to_string(std::lround(100.0 * beyond / std::abs(finding.limit))) + " % beyond it";
  }
  if (!text.empty()) text += ".";
  if (!record.withheld.empty()) text += " Screened, not sized: " + std::string(record.withheld);
  return text;
}

/// Where the level comes from that tailwater does not set.
std::string level_by_rule_words(const Option& option) {
  const auto& record = option.type->record();
  const std::string level = quantity_token(option.apron_level, dimension::length);
  if (record.level_rule == dissipators::LevelRule::river_bed)
    return (record.action == dissipators::Action::blocks ? "The lower end lies at " : "The floor lies at ") + level +
           ", set by the river bed.";
  return "The invert lies at " + level + ", clear of the highest tailwater.";
}

std::string statement_of(const PreparedSite& prepared, const ApronLevel& apron, const Option& option) {
  if (option.type->record().level_rule != dissipators::LevelRule::tailwater)
    return level_by_rule_words(option) + exclusions_of(option);
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
  return text + exclusions_of(option);
}

/// The surface inside the jump, from the front to where it is level.
void draw_surface(WaterProfile& profile) {
  constexpr int points = 40;
  const auto& result = profile.result;
  if (!(result.jump_length > 0.0)) return;
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
  if (const auto toe = entering_flow(*option.type, setting_of(prepared.site, option.width), entry, option.apron_level))
    profile.result = judge_case(prepared, option, entry.data, *toe, jump_of(*option.type, *toe), site::TailwaterCase::low);
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

namespace {

/// Length by which a held length is too short for the elements, m; 0 where they fit.
double held_overlap(const dissipators::Structure& structure, const dissipators::Setting& setting) {
  const bool held = setting.length > 0.0 && structure.required_length > 0.0;
  return held && setting.length < structure.required_length ? dissipators::overlap_of(structure) : 0.0;
}

/// A level that does not follow from the tailwater's depth: from the river bed or the highest tailwater, with the width that
/// the type fixes itself.
Outcome<ApronLevel> level_by_rule(const PreparedSite& prepared, const dissipators::Dissipator& type, double& width) {
  const auto& site = prepared.site;
  const auto& largest = prepared.cases.back();
  const bool from_bed = type.record().level_rule == dissipators::LevelRule::river_bed;
  double reference = site.river.bed_level - site.river.bed_degradation;
  if (!from_bed) {
    reference = prepared.lowest_level;
    for (const auto& list : {prepared.cases, prepared.patterns})
      for (const auto& entry : list)
        reference = std::max(reference, entry.data.tailwater_level[site::index_of(site::TailwaterCase::high)]);
  }
  ApronLevel apron{.level = reference, .governing_tailwater_case = site::TailwaterCase::high};
  // Level, width and velocity depend weakly on each other: each pass gains about a digit.
  for (int pass = 0; pass < 12; ++pass) {
    if (apron.level > prepared.highest_level) return no_answer("it would have to lie above the end of the chute");
    const auto flow = entering_flow(type, setting_of(site, width), largest, apron.level);
    if (!flow) return tl::unexpected(flow.error());
    if (const double own = type.own_width(*flow, setting_of(site, width)); own > 0.0) width = own;
    apron.level = reference + type.level_offset(*flow, setting_of(site, width));
  }
  apron.wanted = apron.level;
  const double step = site.basin.apron_step;
  apron.level = (from_bed ? std::floor(apron.level / step + 1e-6) : std::ceil(apron.level / step - 1e-6)) * step;
  if (site.basin.has_lowest_apron && apron.level < site.basin.lowest_apron_level) {
    apron.level = site.basin.lowest_apron_level;
    apron.within_limits = false;
  }
  apron.level = std::max(apron.level, prepared.lowest_level);
  apron.governing_discharge = largest.data.discharge;
  return apron;
}

}  // namespace

Option size_option(const PreparedSite& prepared, const dissipators::Dissipator& type, double wished_width,
                   const DesignOptions& options) {
  double width = wished_width;
  const bool by_tailwater = type.record().level_rule == dissipators::LevelRule::tailwater;
  const ApronSearch search{prepared.site,         prepared.geometry,     type, setting_of(prepared.site, width),
                           prepared.lowest_level, prepared.highest_level};
  const auto apron = by_tailwater ? set_apron(search, prepared.cases, prepared.patterns) : level_by_rule(prepared, type, width);
  if (!apron) return cannot_size(type, width, apron.error().reason);
  Option option{.type = &type, .width = width};
  option.apron_level = apron->level;
  const auto flows = run_cases(prepared, option);
  if (!flows) return cannot_size(type, width, flows.error().reason);
  if (auto done = set_governing(prepared, *apron, option); !done) return cannot_size(type, width, done.error().reason);
  const auto setting = setting_of(prepared.site, width);
  const dissipators::SizingInput sizing{.setting = setting,
                                        .flows = flows->flows,
                                        .tailwater_levels = flows->tailwater_levels,
                                        .apron_level = option.apron_level};
  option.structure = type.size(sizing, nullptr);
  option.length = option.structure.length;
  if (const double overlap = held_overlap(option.structure, setting); overlap > 0.0)
    return cannot_size(type, width,
                       "in a length of " + quantity_token(option.length, dimension::length) +
                           " its blocks and sill run into each other by " + quantity_token(overlap, dimension::length));
  set_walls_and_levels(prepared, option);
  option.quantities = concrete(quantity_input(option, flows->flows), option.structure, nullptr);
  if (options.with_positions) place_jumps(prepared, option);
  judge(prepared, sizing, *apron, options.with_safety, option);
  mark_accepted(prepared.site, option.findings);
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
  return a.quantities.built_volume() < b.quantities.built_volume();
}

}  // namespace

Option best_option(const PreparedSite& prepared, const dissipators::Dissipator& type, const DesignOptions& options) {
  const auto& site = prepared.site;
  if (!site.basin.width_is_free) return size_option(prepared, type, site.basin.width, options);
  constexpr int widths_tried = 9;
  const DesignOptions bare{.types = options.types, .with_positions = false, .with_safety = false};
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
