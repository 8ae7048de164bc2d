// Where the numbers come from that the checks put into their methods, as the workings tell it: a key of the site file, or words
// where the number was computed. An earlier step that gives the number is shown instead of the words.
#pragma once

#include "quell/base/step_input.h"
#include "quell/checks/checks.h"

namespace quell::checks {

// Of the flow that enters, at the discharge that decides.
constexpr StepInput entering_depth(const site::ToeFlow& toe) {
  return told(toe.y1, "depth of the entering flow, discharge that decides");
}
constexpr StepInput entering_velocity(const site::ToeFlow& toe) {
  return told(toe.V1, "velocity of the entering flow, discharge that decides");
}
constexpr StepInput entering_unit_discharge(const site::ToeFlow& toe) {
  return told(toe.unit_discharge, "discharge that decides, over the width of the flow");
}
constexpr StepInput sequent_depth(const site::ToeFlow& toe) {
  return told(toe.y2, "sequent depth of the entering flow, discharge that decides");
}

/// Level of the reservoir (m) in a state.
constexpr StepInput reservoir_level(const TailwaterState& state) {
  return told(state.toe->reservoir_level, "level of the reservoir, discharge that decides");
}

/// A level of the tailwater (m): from the table, the law or the section of the river.
StepInput tailwater_level(const BasinView& view, double level, site::TailwaterCase tailwater_case);
StepInput tailwater_level(const BasinView& view, const TailwaterState& state);

/// Width that the flow leaves by, m.
StepInput leaving_width(const BasinView& view);

/// Level of the apron (m): a limit of the site file, or set by trial or by the rule of the type.
StepInput apron_level(const BasinView& view);

/// Level of the river's bed (m), sunk as far as the site file allows for.
StepInput sunken_bed(const BasinView& view);

// Thicknesses and height, m: of the site file where it gives them, of the first measure and the freeboard otherwise.
StepInput slab_thickness(const BasinView& view);
StepInput wall_thickness(const BasinView& view);
StepInput wall_height(const BasinView& view);

}  // namespace quell::checks
