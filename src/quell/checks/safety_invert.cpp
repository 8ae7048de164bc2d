// The curve between chute and apron: what the water presses on its lowest point.
#include "quell/base/constants.h"
#include "quell/base/quantity_text.h"
#include "quell/checks/origins.h"
#include "quell/checks/safety.h"
#include "quell/dissipators/parts.h"
#include "quell/hydraulics/invert_curve.h"

namespace quell::checks {

void judge_invert(const BasinView& view, Safety& safety) {
  auto& curve = safety.invert;
  curve.radius = view.structure.invert_radius;
  if (!(curve.radius > 0.0)) return;
  FindingMethod behind;
  for (const auto& state : view.states) {
    const auto& toe = *state.toe;
    const double pressure =
        water_unit_weight * hydraulics::curved_bed_pressure_head({.d = toe.y1, .V = toe.V1, .R = curve.radius, .phi = 0.0});
    if (!(pressure > curve.pressure)) continue;
    curve.pressure = pressure;
    curve.added = pressure - water_unit_weight * toe.y1;
    curve.discharge = toe.discharge;
    behind = {&hydraulics::record::curved_bed_pressure,
              {entering_depth(toe), entering_velocity(toe),
               told(curve.radius, "basin.choices.invert_curve times the largest depth y1"),
               told(0.0, "the lowest point of the curve lies level")}};
  }
  safety.findings.push_back(
      dissipators::choice_note("invert.pressure", "Pressure on the lowest point of the curve between chute and apron",
                               curve.pressure, dimension::pressure,
                               "Largest " + dissipators::at_discharge(curve.discharge) + ", of which the curve adds " +
                                   quantity_token(curve.added, dimension::pressure) +
                                   " and loses it again at its end: slab and drains meet the step there. Allowances on "
                                   "ordinary chutes are recalled as {{47880.26|-6,6,-12|3}} in "
                                   "all; a larger radius lowers it.",
                               {"momentum", "centripetal force of concentric flow", Provenance::derived}));
  safety.findings.back().method = behind;
}

}  // namespace quell::checks
