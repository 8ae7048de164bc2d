// Slab and anchors, panel by panel, over all discharges and the empty basin; flotation of the whole basin.
#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

#include "quell/base/constants.h"
#include "quell/base/quantity_text.h"
#include "quell/checks/origins.h"
#include "quell/checks/slab_cases.h"
#include "quell/dissipators/parts.h"
#include "quell/hydraulics/basin_stability.h"
#include "quell/hydraulics/slab_uplift.h"

namespace quell::checks {

using dissipators::choice_note;
using dissipators::limit_finding;
using site::JointState;

namespace {

constexpr double rock_safety = 1.5, rock_safety_unusual = 1.1;
constexpr double flotation_needed = 1.2;  ///< unusual case, recalled
constexpr dissipators::Rule balance{"momentum", "balance of a panel; pulses as an envelope", Provenance::derived};

double groundwater_level(const BasinView& view) {
  if (view.site.slab.has_groundwater) return view.site.slab.groundwater_level;
  double highest = view.apron_level;
  for (const auto& state : view.states) highest = std::max(highest, state.tailwater_level);
  return highest;
}

double bar_area(const site::Slab& slab) {
  return 0.25 * std::numbers::pi * slab.bar_diameter * slab.bar_diameter;
}

/// Stress over the stress allowed.
double bar_use(const site::Slab& slab, const AnchorLoad& load) {
  return load.governing() * slab.bar_spacing * slab.bar_spacing / (bar_area(slab) * steel_share * slab.bar_yield);
}

FindingMethod method_of(const BasinView& view, const AnchorLoad& load) {
  const auto& [in, words] = load.governing_case();
  return {&hydraulics::record::anchored_pressure,
          {told(in.hu, words->uplift), told(in.y, words->depth), told(in.hd, words->pulses), told(in.DAF, words->factor),
           given(in.gamma_c, "slab.concrete_unit_weight"), slab_thickness(view)}};
}

/// What leads to the loads of a panel.
void name_steps(const site::Slab& slab, const TailwaterState& state, const PanelLoad& load, SlabPanel& panel) {
  panel.depth_by = {&hydraulics::record::mean_jump_depth,
                    {entering_depth(*state.toe), told(load.behind, "tailwater, the sequent depth at most"),
                     told(roller_length(state), "4.3 sequent depths: length of the roller"),
                     told(panel.from, "start of the panel, from the toe"), told(panel.to, "end of the panel, from the toe")}};
  panel.uplift_by = {
      &hydraulics::record::uplift_head,
      {told(load.seepage, "tailwater plus the share left of the head between pools"),
       told(load.tailwater, "tailwater above the apron"), given(slab.drain_efficiency, "slab.drain_efficiency")}};
  panel.pulses_by = {&hydraulics::record::panel_coefficients,
                     {told(slab.panel_length / load.pulse, "slab.panel_length over slab.pulse_length times y1"),
                      told(slab.panel_width / load.pulse, "slab.panel_width over slab.pulse_length times y1")}};
}

void size_bars(const BasinView& view, const AnchorLoad& load, SlabPanel& panel) {
  const auto& slab = view.site.slab;
  const auto along = std::max(1L, std::lround((panel.to - panel.from) / slab.bar_spacing));
  const auto across = std::max(1L, std::lround(std::min(slab.panel_width, view.width) / slab.bar_spacing));
  panel.bars = static_cast<int>(along * across);
  const double cell = slab.bar_spacing * slab.bar_spacing;
  panel.net_pressure = hydraulics::anchored_pressure(load.governing_case().input);
  panel.bar_force = panel.net_pressure * cell;
  panel.bar_stress = panel.bar_force / bar_area(slab);
  panel.bar_use = bar_use(slab, load);
  if (!(panel.bar_force > 0.0)) return;
  panel.grid_needed = slab.bar_spacing / std::sqrt(panel.bar_use);
  const auto rock = [&](double pressure, double safety) {
    return hydraulics::rock_anchor_length(
        {.T = pressure * cell, .spacing = slab.bar_spacing, .gamma_r = slab.rock_unit_weight, .FS = safety});
  };
  const double worst = std::max(load.design, load.unusual) * cell;
  panel.bar_length = std::max({rock(load.design, rock_safety), rock(load.unusual, rock_safety_unusual),
                               hydraulics::bond_length(worst, slab.hole_diameter, slab.rock_bond),
                               hydraulics::bond_length(worst, slab.bar_diameter, slab.bar_bond)});
}

/// The largest load on the anchors of a panel over all states, by the worst state of the joints that counts.
using AnchorLoads = std::array<AnchorLoad, 3>;

void note_governing(const PanelLoad& load, double discharge, SlabPanel& panel) {
  panel.discharge = discharge;
  panel.depth = load.depth;
  panel.pressure_range = load.range;
  panel.suction_is_bound = load.boils;
  panel.seepage_head = load.seepage;
  panel.uplift_working = load.working;
  panel.uplift_failed = load.failed;
  panel.dynamic_sealed = load.sealed;
  panel.dynamic_open = load.open;
  panel.dynamic_failed = load.one;
}

SlabPanel judge_panel(const BasinView& view, const SlabLoads& loads, double groundwater_head, double from, double to) {
  const auto& slab = view.site.slab;
  SlabPanel panel{.from = from, .to = to};
  double thickest = -1.0;
  const auto thickness = [&](const CaseWords& words, double hu, double y, double hd, double so_far, bool counts = true) {
    const double here = hydraulics::uplift_thickness({.hu = hu, .y = y, .hd = hd, .gamma_c = slab.concrete_unit_weight});
    if (counts && here > thickest) {
      thickest = here;
      panel.thickness_by = {&hydraulics::record::uplift_thickness,
                            {told(hu, words.uplift), told(y, words.depth), told(hd, words.pulses),
                             given(slab.concrete_unit_weight, "slab.concrete_unit_weight")}};
    }
    return std::max(so_far, here);
  };
  const double empty_head = loads.empty_head(groundwater_head, from, to);
  AnchorLoads worst;
  double pressure = -1.0;
  const bool open_counts = slab.joints >= JointState::open, one_counts = slab.joints >= JointState::one_failed;
  for (const auto& state : view.states) {
    const auto load = loads.on_panel(state, from, to);
    panel.thickness_working =
        thickness(case_words::drained, load.working, load.depth, load.sealed, panel.thickness_working, false);
    panel.thickness_failed = thickness(case_words::undrained, load.failed, load.depth, load.sealed, panel.thickness_failed);
    panel.thickness_open =
        thickness(case_words::open_joints, load.depth, load.depth, load.open, panel.thickness_open, open_counts);
    panel.thickness_one =
        thickness(case_words::failed_joint, load.working, load.depth, load.one, panel.thickness_one, one_counts);
    for (const auto joints : {JointState::sealed, JointState::open, JointState::one_failed})
      worst[static_cast<std::size_t>(joints)].raise(anchor_load(view, load, empty_head, joints));
    const auto here = anchor_load(view, load, empty_head, slab.joints);
    if (here.governing() <= pressure) continue;
    pressure = here.governing();
    const auto more = anchor_load(view, loads.on_panel(state, from, to, 1.1), empty_head, slab.joints);
    panel.range_growth = pressure > 0.0 ? more.governing() / pressure - 1.0 : 0.0;
    panel.pressure_by = method_of(view, here);
    name_steps(slab, state, load, panel);
    note_governing(load, state.toe->discharge, panel);
  }
  panel.thickness_empty = thickness(case_words::empty_drained, (1.0 - slab.drain_efficiency) * empty_head, 0.0, 0.0, 0.0);
  if (!slab.is_anchored) return panel;
  size_bars(view, worst[static_cast<std::size_t>(slab.joints)], panel);
  panel.use_sealed = bar_use(slab, worst[0]);
  panel.use_open = bar_use(slab, worst[1]);
  panel.use_failed = bar_use(slab, worst[2]);
  return panel;
}

FindingMethod flotation_by(const Flotation& flotation, bool is_anchored) {
  return {
      &hydraulics::record::flotation_factor,
      {told(flotation.weight + flotation.anchors,
            is_anchored ? "concrete as drawn; anchors at half their yield stress" : "concrete of slab and walls as drawn"),
       told(0.0, case_words::empty), told(0.0, "none counted"),
       told(flotation.uplift, "ground water above the underside, over the whole base"), told(0.0, "none: the basin is empty")}};
}

void judge_flotation(const BasinView& view, double level, Safety& safety) {
  auto& flotation = safety.flotation;
  const double gamma_c = view.site.slab.concrete_unit_weight;
  const double base = view.width + 2.0 * view.wall_thickness;
  flotation.groundwater_level = level;
  flotation.weight = gamma_c * (base * view.slab_thickness + 2.0 * view.wall_height * view.wall_thickness);
  flotation.uplift = water_unit_weight * base * std::max(0.0, level - view.apron_level + view.slab_thickness);
  if (!(flotation.uplift > 0.0)) return;
  const auto& slab = view.site.slab;
  if (slab.is_anchored)
    flotation.anchors = steel_share * slab.bar_yield * bar_area(slab) * view.width / (slab.bar_spacing * slab.bar_spacing);
  const auto factor = [&](double weight) {
    return hydraulics::flotation_factor({.Ws = weight, .Wc = 0.0, .S = 0.0, .U = flotation.uplift, .Wg = 0.0});
  };
  flotation.factor = factor(flotation.weight);
  flotation.factor_anchored = factor(flotation.weight + flotation.anchors);
  safety.findings.push_back(limit_finding(
      "slab.flotation", "Safety of the empty basin against flotation", flotation.factor_anchored, LimitSense::at_least,
      flotation_needed, dimension::none, Status::caution,
      "Ground water at " + quantity_token(level, dimension::length) + "; without anchors the factor is " +
          quantity_token(flotation.factor, dimension::none) +
          "; with them it is that of the steel, if the rock holds the bars.",
      "Lower the ground water before the basin is emptied, or give slab, heels or anchors more: a structural engineer decides.",
      {"etl_1110_2_307", "definition, seen; the factor recalled from EM 1110-2-2100", Provenance::memory}));
  safety.findings.back().method = flotation_by(flotation, slab.is_anchored);
  safety.findings.back().key = "slab.groundwater_level";
}

const SlabPanel& largest_panel(const Safety& safety, double (*measure)(const SlabPanel&)) {
  return *std::max_element(safety.panels.begin(), safety.panels.end(),
                           [&](const SlabPanel& a, const SlabPanel& b) { return measure(a) < measure(b); });
}

/// Without anchors, in the states that count.
double needed_thickness(const SlabPanel& panel, JointState joints) {
  return std::max({panel.thickness_failed, panel.thickness_empty, joints >= JointState::open ? panel.thickness_open : 0.0,
                   joints >= JointState::one_failed ? panel.thickness_one : 0.0});
}

const SlabPanel& most_pulled(const Safety& safety) {
  return largest_panel(safety, [](const SlabPanel& p) { return p.bar_use; });
}

const SlabPanel& thickest_panel(const BasinView& view, const Safety& safety) {
  const auto joints = view.site.slab.joints;
  const auto needed = [joints](const SlabPanel& panel) { return needed_thickness(panel, joints); };
  return *std::max_element(safety.panels.begin(), safety.panels.end(),
                           [&](const SlabPanel& a, const SlabPanel& b) { return needed(a) < needed(b); });
}

Finding thickness_finding(const BasinView& view, const Safety& safety) {
  const auto joints = view.site.slab.joints;
  const auto& panel = thickest_panel(view, safety);
  const double needed = needed_thickness(panel, joints);
  const bool anchored = view.site.slab.is_anchored;
  return limit_finding(
      "slab.thickness",
      anchored ? "Thickness that the slab would need without anchors" : "Thickness of the slab without anchors",
      anchored ? needed : view.slab_thickness, anchored ? LimitSense::note : LimitSense::at_least, needed, dimension::length,
      anchored ? Status::ok : Status::caution,
      std::string("Worst of drains failed, ") + (joints >= JointState::open ? "joints open, " : "") +
          (joints >= JointState::one_failed ? "one joint failed, " : "") +
          "and the empty basin below a full reservoir; with the drains working and the joints sealed " +
          quantity_token(panel.thickness_working, dimension::length) + ".",
      anchored ? "" : "Anchor the slab, thicken it, or lower the uplift by drains.", balance);
}

Finding anchor_finding(const BasinView& view, const SlabPanel& panel) {
  auto finding = limit_finding(
      "slab.anchors", "Stress in the anchor bars over the stress allowed", panel.bar_use, LimitSense::at_most, 1.0,
      dimension::none, Status::caution,
      "Panel from " + quantity_token(panel.from, dimension::length) + " to " + quantity_token(panel.to, dimension::length) +
          " of the toe: " + quantity_token(panel.net_pressure, dimension::pressure) + " on the anchors, " +
          quantity_token(panel.bar_length, dimension::length) + " of bar in the rock; a grid of " +
          quantity_token(panel.grid_needed, dimension::length) + " would do.",
      "Set the bars closer or thicker in [slab]; measure the pressure fluctuation in a model, for it decides.", balance);
  if (view.site.foundation.soil == site::Soil::rock) return finding;
  finding.sense = LimitSense::note;
  finding.status = Status::caution;
  finding.text += " The bars are computed for rock, and the site stands on soil.";
  finding.advice = "Anchors of this kind do not hold in soil: thicken the slab, or let a specialist design piles.";
  return finding;
}

/// What the states of the joints do that the anchors are not made for; where all count, a statement of the three.
Finding joint_finding(const BasinView& view, const Safety& safety) {
  const auto use = [](double value) { return quantity_token(value, dimension::none); };
  const auto& panel = largest_panel(safety, [](const SlabPanel& p) { return p.use_failed; });
  const std::string each = "Stress over the stress allowed: " + use(panel.use_sealed) + " with the joints sealed, " +
                           use(panel.use_open) + " with all open, " + use(panel.use_failed) + " with one failed.";
  if (view.site.slab.joints == JointState::one_failed)
    return choice_note("slab.joints", "Stress in the bars with one failed joint over that with sealed joints",
                       panel.use_failed / std::max(panel.use_sealed, 1e-9), dimension::none, each, balance);
  return limit_finding("slab.joints", "Stress in the bars over the stress allowed, in the states of the joints left out",
                       panel.use_failed, LimitSense::at_most, 1.0, dimension::none, Status::caution,
                       each + " The site file leaves some of these states out.",
                       "Show that waterstops, keys and dowels keep every joint as assumed for the life of the basin, and "
                       "inspect them after floods.",
                       balance);
}

/// Whether a discharge of the range has a Froude number that was not measured.
bool beyond_measured(const BasinView& view) {
  const auto& points = view.site.slab.pressure;
  return !points.empty() && std::any_of(view.states.begin(), view.states.end(), [&](const TailwaterState& state) {
    return state.toe->F1 < 0.95 * points.front().froude || state.toe->F1 > 1.05 * points.back().froude;
  });
}

Finding fluctuation_finding(const BasinView& view, const Safety& safety) {
  const auto& slab = view.site.slab;
  const bool measured = !slab.pressure.empty();
  std::string text = measured ? "The fluctuation is that of the points in [[slab.pressure]]; the result leans on it this much."
                              : "No published table of the fluctuation by place could be read: the range of " +
                                    quantity_token(slab.pressure_range, dimension::none) +
                                    " velocity heads is an envelope, and the result leans on it this much.";
  if (std::any_of(safety.panels.begin(), safety.panels.end(), [](const SlabPanel& panel) { return panel.suction_is_bound; }))
    text += " Its suction is bounded where the water would boil.";
  const dissipators::Rule rule{"toso_bowers_1988", "extremes near the velocity head, recalled", Provenance::memory};
  auto finding =
      slab.is_anchored
          ? choice_note("slab.fluctuation", "Growth of the anchor force with a tenth more range of the pressure fluctuation",
                        safety.range_share, dimension::none, std::move(text), rule)
          : choice_note("slab.fluctuation", "Range of the pressure fluctuation on the first panel, over the velocity head",
                        safety.panels.front().pressure_range, dimension::none, std::move(text), rule);
  if (!beyond_measured(view)) return finding;
  finding.status = Status::caution;
  finding.text += " Some discharges have Froude numbers that were not measured: the outermost points stand for them.";
  finding.advice = "Measure over the Froude numbers of the whole range of discharges.";
  return finding;
}

void add_findings(const BasinView& view, Safety& safety) {
  const auto add = [&safety](Finding finding, const FindingMethod& method, std::string_view key) {
    finding.method = method;
    finding.key = key;
    safety.findings.push_back(std::move(finding));
  };
  const auto& pulled = most_pulled(safety);
  const bool anchored = view.site.slab.is_anchored;
  add(thickness_finding(view, safety), thickest_panel(view, safety).thickness_by, anchored ? "" : "slab.thickness");
  if (anchored) {
    add(anchor_finding(view, pulled), pulled.pressure_by, "slab.bar_spacing");
    add(joint_finding(view, safety), pulled.pressure_by, "slab.joints");
  }
  add(fluctuation_finding(view, safety), anchored ? pulled.pressure_by : FindingMethod{},
      view.site.slab.pressure.empty() ? "slab.pressure_range" : "slab.pressure");
  double velocity = 0.0;
  for (const auto& state : view.states) velocity = std::max(velocity, state.toe->V1);
  safety.findings.push_back(choice_note(
      "slab.stagnation", "Uplift head at a joint with a lip into the flow, upper bound",
      hydraulics::stagnation_head(1.0, velocity), dimension::length,
      "The whole velocity head under one slab edge: waterstops, keys and dowels at every joint, the downstream edge a few "
      "millimetres low, filtered drains.",
      balance));
  safety.findings.back().method = {
      &hydraulics::record::stagnation_head,
      {told(1.0, "the whole velocity head: an upper bound"), told(velocity, "largest velocity of the entering flow")}};
}

}  // namespace

void judge_slab(const BasinView& view, Safety& safety) {
  const double length = view.structure.length;
  const double groundwater = groundwater_level(view);
  const double head = std::max(0.0, groundwater - view.apron_level);
  const SlabLoads loads(view, safety.seepage);
  const int count = std::clamp(static_cast<int>(std::ceil(length / view.site.slab.panel_length - 1e-9)), 1, 40);
  for (int i = 0; i < count; ++i)
    safety.panels.push_back(judge_panel(view, loads, head, length * i / count, length * (i + 1) / count));
  safety.range_share = most_pulled(safety).range_growth;
  add_findings(view, safety);
  judge_flotation(view, groundwater, safety);
}

}  // namespace quell::checks
