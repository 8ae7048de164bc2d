// Slab and anchors, panel by panel, over all discharges and the empty basin; flotation of the whole basin.
#include <algorithm>
#include <cmath>
#include <numbers>

#include "quell/base/constants.h"
#include "quell/base/quantity_text.h"
#include "quell/checks/safety.h"
#include "quell/dissipators/parts.h"
#include "quell/hydraulics/basin_stability.h"
#include "quell/hydraulics/slab_uplift.h"

namespace quell::checks {

using dissipators::choice_note;
using dissipators::limit_finding;

namespace {

constexpr double dynamic_factor = 2.0;       ///< bound of an undamped anchor under a pulse
constexpr double steel_share = 0.5;          ///< of the yield stress, design cases with the dynamic factor
constexpr double steel_share_unusual = 0.8;  ///< one joint failed, or the drains
constexpr double rock_safety = 1.5, rock_safety_unusual = 1.1;
constexpr double flotation_needed = 1.2;  ///< unusual case, recalled
constexpr dissipators::Rule balance{"momentum", "balance of a panel; pulses as an envelope", Provenance::derived};

double groundwater_level(const BasinView& view) {
  if (view.site.slab.has_groundwater) return view.site.slab.groundwater_level;
  double highest = view.apron_level;
  for (const auto& state : view.states) highest = std::max(highest, state.tailwater_level);
  return highest;
}

/// Share of the head between the pools that is left under the slab, `x` m from the toe, by weighted creep.
class CreepShare {
 public:
  explicit CreepShare(const BasinView& view)
      : upstream_(view.geometry.crest_outline.empty() ? 0.0 : view.geometry.crest_outline.front().station),
        toe_(view.geometry.station_at_level(view.apron_level)),
        before_(2.0 * view.site.foundation.upstream_cutoff) {
    const double end = toe_ + view.structure.length;
    total_ = before_ + (end - upstream_) / 3.0 + 2.0 * view.site.foundation.downstream_cutoff + view.slab_thickness;
  }
  double at(double x) const { return std::clamp(1.0 - (before_ + (toe_ + x - upstream_) / 3.0) / total_, 0.0, 1.0); }

 private:
  double upstream_, toe_, before_, total_ = 1.0;
};

/// What one state does to one panel.
struct PanelLoad {
  double depth, seepage, working, failed, sealed, open, one;
  double behind, tailwater, pulse;  ///< depth behind the jump, depth where the drains discharge, length of a pulse, m
};

PanelLoad load_of(const BasinView& view, const CreepShare& creep, const TailwaterState& state, double from, double to) {
  const auto& slab = view.site.slab;
  const auto& toe = *state.toe;
  const double behind = std::max(toe.y1, std::min(toe.y2, state.available_depth));
  PanelLoad load{};
  load.depth = hydraulics::mean_jump_depth({.d1 = toe.y1, .d2 = behind, .Lr = 4.3 * toe.y2}, from, to);
  const double tailwater = state.available_depth;
  load.behind = behind;
  load.tailwater = tailwater;
  const double between = std::max(0.0, toe.reservoir_level - state.tailwater_level);
  load.seepage = tailwater + between * creep.at(0.5 * (from + to));
  load.working = hydraulics::uplift_head({.h0 = load.seepage, .hs = tailwater, .E = slab.drain_efficiency});
  load.failed = load.seepage;
  const double head = toe.V1 * toe.V1 / (2.0 * gravity);
  const double pulse = slab.pulse_length * toe.y1;
  load.pulse = pulse;
  const auto share = hydraulics::panel_coefficients(slab.panel_length / pulse, slab.panel_width / pulse);
  load.sealed = share.sealed * slab.suction * head;
  load.open = share.four * slab.pressure_range * head;
  load.one = share.one * slab.pressure_range * head;
  return load;
}

/// Pressures on the anchors (Pa): of the design cases with the dynamic factor, and of the unusual ones without.
struct AnchorLoad {
  double design = 0.0, unusual = 0.0;
  hydraulics::AnchoredInput design_case{}, unusual_case{};  ///< the worst of each
};

/// Puts the worse of a pressure and the one of another load case in its place.
void take_worse(const hydraulics::AnchoredInput& load_case, double& pressure, hydraulics::AnchoredInput& worst) {
  const double here = hydraulics::anchored_pressure(load_case);
  if (here < pressure) return;
  pressure = here;
  worst = load_case;
}
AnchorLoad anchor_load(const BasinView& view, const PanelLoad& load, double groundwater_head, double range_factor) {
  const auto& slab = view.site.slab;
  const double drained = (1.0 - slab.drain_efficiency) * groundwater_head;
  AnchorLoad result;
  const auto design = [&](double hu, double y, double hd, double DAF) {
    take_worse({hu, y, hd, DAF, slab.concrete_unit_weight, view.slab_thickness}, result.design, result.design_case);
  };
  const auto unusual = [&](double hu, double y, double hd) {
    take_worse({hu, y, hd, 1.0, slab.concrete_unit_weight, view.slab_thickness}, result.unusual, result.unusual_case);
  };
  design(load.working, load.depth, range_factor * load.sealed, dynamic_factor);
  design(load.depth, load.depth, range_factor * load.open, dynamic_factor);
  design(drained, 0.0, 0.0, 1.0);
  unusual(load.working, load.depth, range_factor * load.one);
  unusual(load.failed, load.depth, range_factor * load.sealed);
  unusual(groundwater_head, 0.0, 0.0);
  return result;
}

/// The pressure that counts for the steel: unusual cases may stress it more.
double governing(const AnchorLoad& load) {
  return std::max(load.design, load.unusual * steel_share / steel_share_unusual);
}

FindingMethod method_of(const AnchorLoad& load) {
  const auto& in = load.design >= load.unusual * steel_share / steel_share_unusual ? load.design_case : load.unusual_case;
  return {&hydraulics::record::anchored_pressure,
          {in.hu, in.y, in.hd, in.DAF, given(in.gamma_c, "slab.concrete_unit_weight"), given(in.s, "slab.thickness")}};
}

/// What leads to the loads of a panel.
void name_steps(const site::Slab& slab, const TailwaterState& state, const PanelLoad& load, SlabPanel& panel) {
  panel.depth_by = {&hydraulics::record::mean_jump_depth,
                    {state.toe->y1, load.behind, 4.3 * state.toe->y2, panel.from, panel.to}};
  panel.uplift_by = {&hydraulics::record::uplift_head,
                     {load.seepage, load.tailwater, given(slab.drain_efficiency, "slab.drain_efficiency")}};
  panel.pulses_by = {
      &hydraulics::record::panel_coefficients,
      {given(slab.panel_length / load.pulse, "slab.panel_length"), given(slab.panel_width / load.pulse, "slab.panel_width")}};
}

void size_bars(const BasinView& view, const AnchorLoad& load, SlabPanel& panel) {
  const auto& slab = view.site.slab;
  const auto along = std::max(1L, std::lround((panel.to - panel.from) / slab.bar_spacing));
  const auto across = std::max(1L, std::lround(std::min(slab.panel_width, view.width) / slab.bar_spacing));
  panel.bars = static_cast<int>(along * across);
  const double cell = slab.bar_spacing * slab.bar_spacing;
  panel.net_pressure = governing(load);
  panel.bar_force = panel.net_pressure * cell;
  panel.bar_stress = panel.bar_force / (0.25 * std::numbers::pi * slab.bar_diameter * slab.bar_diameter);
  panel.bar_use = panel.bar_stress / (steel_share * slab.bar_yield);
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

SlabPanel judge_panel(const BasinView& view, const CreepShare& creep, double groundwater_head, double from, double to,
                      double& more_force) {
  const double gamma_c = view.site.slab.concrete_unit_weight;
  SlabPanel panel{.from = from, .to = to};
  double thickest = -1.0;
  const auto thickness = [&](double hu, double y, double hd, double so_far, bool counts = true) {
    const double here = hydraulics::uplift_thickness({.hu = hu, .y = y, .hd = hd, .gamma_c = gamma_c});
    if (counts && here > thickest) {
      thickest = here;
      panel.thickness_by = {&hydraulics::record::uplift_thickness, {hu, y, hd, given(gamma_c, "slab.concrete_unit_weight")}};
    }
    return std::max(so_far, here);
  };
  AnchorLoad worst;
  double pressure = -1.0;
  for (const auto& state : view.states) {
    const auto load = load_of(view, creep, state, from, to);
    panel.thickness_working = thickness(load.working, load.depth, load.sealed, panel.thickness_working, false);
    panel.thickness_failed = thickness(load.failed, load.depth, load.sealed, panel.thickness_failed);
    panel.thickness_open = thickness(load.depth, load.depth, load.open, panel.thickness_open);
    const auto anchors = anchor_load(view, load, groundwater_head, 1.0);
    worst.design = std::max(worst.design, anchors.design);
    worst.unusual = std::max(worst.unusual, anchors.unusual);
    if (governing(anchors) <= pressure) continue;
    pressure = governing(anchors);
    more_force =
        std::max(more_force, pressure > 0.0 ? governing(anchor_load(view, load, groundwater_head, 1.1)) / pressure : 1.0);
    panel.pressure_by = method_of(anchors);
    name_steps(view.site.slab, state, load, panel);
    panel.discharge = state.toe->discharge;
    panel.depth = load.depth;
    panel.seepage_head = load.seepage;
    panel.uplift_working = load.working;
    panel.uplift_failed = load.failed;
    panel.dynamic_sealed = load.sealed;
    panel.dynamic_open = load.open;
    panel.dynamic_failed = load.one;
  }
  panel.thickness_empty = thickness((1.0 - view.site.slab.drain_efficiency) * groundwater_head, 0.0, 0.0, 0.0);
  if (view.site.slab.is_anchored) size_bars(view, worst, panel);
  return panel;
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
    flotation.anchors = steel_share * slab.bar_yield * 0.25 * std::numbers::pi * slab.bar_diameter * slab.bar_diameter *
                        view.width / (slab.bar_spacing * slab.bar_spacing);
  const auto factor = [&](double weight) {
    return hydraulics::flotation_factor({.Ws = weight, .Wc = 0.0, .S = 0.0, .U = flotation.uplift, .Wg = 0.0});
  };
  flotation.factor = factor(flotation.weight);
  flotation.factor_anchored = factor(flotation.weight + flotation.anchors);
  safety.findings.push_back(limit_finding(
      "slab.flotation", "Safety of the empty basin against flotation", flotation.factor_anchored, LimitSense::at_least,
      flotation_needed, dimension::none, Status::caution,
      "Ground water at " + quantity_token(level, dimension::length) + "; without anchors the factor is " +
          quantity_token(flotation.factor, dimension::none) + ".",
      "Lower the ground water before the basin is emptied, or give slab, heels or anchors more: a structural engineer decides.",
      {"etl_1110_2_307", "definition; the factor recalled from EM 1110-2-2100", Provenance::seen}));
  safety.findings.back().method = {&hydraulics::record::flotation_factor,
                                   {flotation.weight + flotation.anchors, 0.0, 0.0, flotation.uplift, 0.0}};
  safety.findings.back().key = "slab.groundwater_level";
}

void add_findings(const BasinView& view, Safety& safety) {
  const SlabPanel* thickest = &safety.panels.front();
  const SlabPanel* pulled = &safety.panels.front();
  double velocity = 0.0;
  for (const auto& panel : safety.panels) {
    if (std::max(panel.thickness_failed, panel.thickness_open) > std::max(thickest->thickness_failed, thickest->thickness_open))
      thickest = &panel;
    if (panel.bar_stress > pulled->bar_stress) pulled = &panel;
  }
  for (const auto& state : view.states) velocity = std::max(velocity, state.toe->V1);
  const double mass = std::max({thickest->thickness_failed, thickest->thickness_open, thickest->thickness_empty});
  const bool anchored = view.site.slab.is_anchored;
  safety.findings.push_back(
      limit_finding("slab.thickness",
                    anchored ? "Thickness that the slab would need without anchors" : "Thickness of the slab without anchors",
                    anchored ? mass : view.slab_thickness, anchored ? LimitSense::note : LimitSense::at_least, mass,
                    dimension::length, anchored ? Status::ok : Status::caution,
                    "Worst of drains failed, joints open and the empty basin; with the drains working and the joints sealed " +
                        quantity_token(thickest->thickness_working, dimension::length) + ".",
                    anchored ? "" : "Anchor the slab, thicken it, or lower the uplift by drains.", balance));
  safety.findings.back().method = thickest->thickness_by;
  if (!anchored) safety.findings.back().key = "slab.thickness";
  if (anchored) {
    safety.findings.push_back(limit_finding(
        "slab.anchors", "Stress in the anchor bars over the stress allowed", pulled->bar_use, LimitSense::at_most, 1.0,
        dimension::none, Status::caution,
        "Panel from " + quantity_token(pulled->from, dimension::length) + " to " +
            quantity_token(pulled->to, dimension::length) +
            " of the toe: " + quantity_token(pulled->net_pressure, dimension::pressure) + " on the anchors, " +
            quantity_token(pulled->bar_length, dimension::length) + " of bar in the rock; a grid of " +
            quantity_token(pulled->grid_needed, dimension::length) + " would do.",
        "Set the bars closer or thicker in [slab]; measure the pressure fluctuation in a model, for it decides.", balance));
    safety.findings.back().method = pulled->pressure_by;
    safety.findings.back().key = "slab.bar_spacing";
  }
  safety.findings.push_back(
      limit_finding("slab.fluctuation", "Growth of the anchor force with a tenth more range of the pressure fluctuation",
                    safety.range_share, LimitSense::note, safety.range_share, dimension::none, Status::ok,
                    "No published table of the fluctuation by place could be read: the range of " +
                        quantity_token(view.site.slab.pressure_range, dimension::none) +
                        " velocity heads is an envelope, and the result leans on it this much.",
                    "", {"toso_bowers_1988", "extremes near the velocity head, recalled", Provenance::memory}));
  safety.findings.back().method = pulled->pressure_by;
  safety.findings.back().key = "slab.pressure_range";
  safety.findings.push_back(choice_note(
      "slab.stagnation", "Uplift head at a joint with a lip into the flow, upper bound",
      hydraulics::stagnation_head(1.0, velocity), dimension::length,
      "The whole velocity head under one slab edge: waterstops, keys and dowels at every joint, the downstream edge a few "
      "millimetres low, filtered drains.",
      balance));
  safety.findings.back().method = {&hydraulics::record::stagnation_head, {1.0, velocity}};
}

}  // namespace

void judge_slab(const BasinView& view, Safety& safety) {
  const double length = view.structure.length;
  const double groundwater = groundwater_level(view);
  const double head = std::max(0.0, groundwater - view.apron_level);
  const CreepShare creep(view);
  const int count = std::clamp(static_cast<int>(std::ceil(length / view.site.slab.panel_length - 1e-9)), 1, 40);
  double more_force = 1.0;
  for (int i = 0; i < count; ++i)
    safety.panels.push_back(judge_panel(view, creep, head, length * i / count, length * (i + 1) / count, more_force));
  safety.range_share = more_force - 1.0;
  add_findings(view, safety);
  judge_flotation(view, groundwater, safety);
}

}  // namespace quell::checks
