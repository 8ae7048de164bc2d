// Natural frequencies of wall and anchored panels against the pulses of the jump.
#include <algorithm>

#include "quell/base/quantity_text.h"
#include "quell/checks/origins.h"
#include "quell/checks/safety.h"
#include "quell/dissipators/parts.h"
#include "quell/hydraulics/vibration.h"

namespace quell::checks {

using dissipators::limit_finding;

namespace {

constexpr Dimension frequency{0, 0, -6};
constexpr double stiff = 10.0;  ///< s^-1, lower end of what practice aims at
constexpr double apart = 3.0;   ///< natural frequency over that of the pulses
constexpr double steel_modulus = 200.0e9;
constexpr dissipators::Rule practice{"practice", "first natural frequency above 10 to 15 per second and three times the pulses",
                                     Provenance::common_practice};

struct PanelFrequency {
  double value = 0.0;        ///< s^-1
  double free_length = 0.0;  ///< m, over which its bars stretch
};
PanelFrequency lowest_panel_frequency(const BasinView& view, const Safety& safety) {
  const auto& slab = view.site.slab;
  PanelFrequency lowest;
  for (const auto& panel : safety.panels) {
    if (!(panel.bar_length > 0.0)) continue;  // its weight holds it down: nothing stretches
    const double natural = hydraulics::anchored_panel_frequency({.s = view.slab_thickness,
                                                                 .gamma_c = slab.concrete_unit_weight,
                                                                 .spacing = slab.bar_spacing,
                                                                 .D = slab.bar_diameter,
                                                                 .Es = steel_modulus,
                                                                 .Lf = panel.bar_length});
    if (!(lowest.value > 0.0) || natural < lowest.value) lowest = {natural, panel.bar_length};
  }
  return lowest;
}

std::string pulses_text(double pulses) {
  return "The pulses that carry the energy of the jump come with up to " + quantity_token(pulses, frequency) +
         ", by a Strouhal number whose order alone is known ([slab] pulse_strouhal).";
}

}  // namespace

void judge_vibration(const BasinView& view, Safety& safety) {
  auto& vibration = safety.vibration;
  for (const auto& state : view.states)
    vibration.jump =
        std::max(vibration.jump,
                 hydraulics::pulse_frequency({.St = view.site.slab.pulse_strouhal, .V1 = state.toe->V1, .d1 = state.toe->y1}));
  const double least = std::max(stiff, apart * vibration.jump);
  if (view.wall_height > 0.0 && view.wall_thickness > 0.0) {
    vibration.wall = hydraulics::cantilever_frequency({.H = view.wall_height,
                                                       .t = view.wall_thickness,
                                                       .E = view.site.walls.concrete_modulus,
                                                       .gamma_c = view.site.slab.concrete_unit_weight});
    safety.findings.push_back(
        limit_finding("walls.vibration", "First natural frequency of the wall as a cantilever", vibration.wall,
                      LimitSense::at_least, least, frequency, Status::caution,
                      pulses_text(vibration.jump) +
                          " Dry wall of even thickness on a rigid foot: water before it lowers its frequency, fill behind "
                          "it damps it.",
                      "Thicken the wall, give it ribs or a strut, or have its response computed.", practice));
    safety.findings.back().method = {
        &hydraulics::record::cantilever_frequency,
        {wall_height(view), wall_thickness(view), given(view.site.walls.concrete_modulus, "walls.concrete_modulus"),
         given(view.site.slab.concrete_unit_weight, "slab.concrete_unit_weight")}};
    safety.findings.back().key = "walls.thickness";
  }
  const auto panel = lowest_panel_frequency(view, safety);
  vibration.panel = panel.value;
  if (!(vibration.panel > 0.0)) return;
  safety.findings.push_back(limit_finding(
      "slab.vibration", "Natural frequency of a panel that rides on its anchors", vibration.panel, LimitSense::at_least, least,
      frequency, Status::caution,
      pulses_text(vibration.jump) +
          " The bars stretch over their whole length in the rock, and the water that moves along is left "
          "out.",
      "Set the bars closer or thicker, or bond them near the slab, so that it stays pressed to the rock.", practice));
  const auto& slab = view.site.slab;
  safety.findings.back().method = {&hydraulics::record::anchored_panel_frequency,
                                   {slab_thickness(view), given(slab.concrete_unit_weight, "slab.concrete_unit_weight"),
                                    given(slab.bar_spacing, "slab.bar_spacing"), given(slab.bar_diameter, "slab.bar_diameter"),
                                    told(steel_modulus, "Young's modulus of steel"),
                                    told(panel.free_length, "length in the rock of the bars of the softest panel")}};
  safety.findings.back().key = "slab.bar_spacing";
}

}  // namespace quell::checks
