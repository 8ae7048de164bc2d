// Checks of tailwater and of the apron's level.
#include <algorithm>
#include <cmath>

#include "quell/base/quantity_text.h"
#include "quell/checks/checks.h"
#include "quell/checks/origins.h"
#include "quell/dissipators/parts.h"
#include "quell/hydraulics/definitions.h"
#include "quell/hydraulics/section.h"

namespace quell::checks {

using dissipators::at_discharge;
using dissipators::common_practice;
using dissipators::limit_finding;

namespace {

/// The state with the smallest value of `measure`.
template <class Measure>
const TailwaterState& least(const BasinView& view, Measure measure) {
  return *std::min_element(view.states.begin(), view.states.end(),
                           [&](const TailwaterState& a, const TailwaterState& b) { return measure(a) < measure(b); });
}

std::string in_case(const TailwaterState& state) {
  return at_discharge(state.toe->discharge) + " in the " + std::string(site::name_of(state.tailwater_case)) + " tailwater case";
}

StepInput required_depth(const TailwaterState& state) {
  return told(state.required_depth, "depth by the rule of the type, plus the margin asked for");
}

/// Discharges at which `holds`, as "from … to …", over all tailwater cases.
template <class Holds>
std::string span_of_discharges(const BasinView& view, Holds holds) {
  double lowest = 1e300;
  double highest = 0.0;
  for (const auto& state : view.states)
    if (holds(state)) {
      lowest = std::min(lowest, state.toe->discharge);
      highest = std::max(highest, state.toe->discharge);
    }
  return "from " + quantity_token(lowest, dimension::discharge) + " to " + quantity_token(highest, dimension::discharge);
}

}  // namespace

Finding tailwater_margin(const BasinView& view) {
  const auto margin = [](const TailwaterState& state) { return state.available_depth - state.required_depth; };
  const auto& worst = least(view, margin);
  const auto lacks = [&](const TailwaterState& state) { return margin(state) < 0.0; };
  const bool short_somewhere = lacks(worst);
  // A hair below zero is rounding: the level itself is rounded down.
  return worked(hydraulics::record::tailwater_margin, {tailwater_level(view, worst), apron_level(view), required_depth(worst)},
                limit_finding("tailwater.margin", "Tailwater less what the basin requires, at every discharge", margin(worst),
                              LimitSense::at_least, -1e-6, dimension::length, Status::fails,
                              "The smallest margin stands " + in_case(worst) +
                                  (short_somewhere ? "; tailwater is short " + span_of_discharges(view, lacks) + "." : "."),
                              "Lower the apron, widen the basin, or raise the tailwater by a sill downstream.",
                              {"peterka_1984", "jump-height curve against tailwater curve", Provenance::memory}));
}

Finding sweep_out(const BasinView& view) {
  const auto margin = [](const TailwaterState& state) { return state.available_depth - state.need.sweep_out; };
  const auto& worst = least(view, margin);
  return worked(
      hydraulics::record::tailwater_margin,
      {tailwater_level(view, worst), apron_level(view),
       told(worst.need.sweep_out, "depth at which the jump leaves, by the rule of the type")},
      limit_finding(
          "tailwater.sweep_out", "Tailwater above the depth at which the jump leaves the basin", margin(worst),
          LimitSense::at_least, 0.0, dimension::length, Status::fails, "The smallest reserve stands " + in_case(worst) + ".",
          "The jump is swept out into the river: the bed below the basin is attacked at full velocity. Lower the apron.",
          {"peterka_1984", "sweep-out depths, a warning level", Provenance::memory}));
}

Finding sequent_depth_met(const BasinView& view) {
  const auto ratio = [](const TailwaterState& state) { return state.available_depth / state.toe->y2; };
  const auto& worst = least(view, ratio);
  return worked(
      hydraulics::record::tailwater_ratio, {tailwater_level(view, worst), apron_level(view), sequent_depth(*worst.toe)},
      limit_finding("tailwater.sequent_depth.practice", "Tailwater never below the sequent depth", ratio(worst),
                    LimitSense::at_least, 1.0, dimension::none, Status::fails,
                    "Smallest ratio of tailwater to sequent depth, " + in_case(worst) +
                        ". Tailwater is that of the natural channel below the basin.",
                    "Lower the apron until tailwater reaches the sequent depth at every discharge.", common_practice));
}

Finding drowned(const BasinView& view) {
  const auto room = [](const TailwaterState& state) { return state.need.largest - state.available_depth; };
  const auto& worst = least(view, room);
  const auto is_drowned = [&](const TailwaterState& state) { return room(state) < 0.0; };
  const bool any = is_drowned(worst);
  return worked(
      hydraulics::record::tailwater_ratio, {tailwater_level(view, worst), apron_level(view), sequent_depth(*worst.toe)},
      limit_finding(
          "tailwater.drowned", "Tailwater below the depth that drowns the jump", worst.available_depth / worst.toe->y2,
          LimitSense::at_most, worst.need.largest / worst.toe->y2, dimension::none, Status::caution,
          any ? "The jump is drowned " + span_of_discharges(view, is_drowned) + ", by up to " +
                    quantity_token(-room(worst), dimension::length) + " (" + in_case(worst) + ")."
              : "Largest ratio of tailwater to sequent depth, " + in_case(worst) + ".",
          "A drowned jet dives and runs along the floor past the sill: protect the bed, or compare a sloping apron or a roller "
          "bucket if these discharges are frequent.",
          common_practice));
}

Finding tailwater_spread(const BasinView& view) {
  const bool given = view.site.river.has_spread;
  const auto source = view.site.river.source;
  const std::string_view key = source == site::TailwaterSource::section  ? "river.section.manning_n"
                               : source == site::TailwaterSource::rating ? "river.rating.low"
                               : source == site::TailwaterSource::survey ? "river.survey.low_n_factor"
                                                                         : std::string_view();
  return keyed(key, counted(limit_finding(
                        "tailwater.spread", "Low and high tailwater given beside the expected", given ? 1.0 : 0.0,
                        LimitSense::at_least, 1.0, dimension::none, Status::caution,
                        given ? "The apron is set for the low case." : "The site file gives one tailwater curve only.",
                        "Give low and high curves: roughness 20 % lower and higher is usual, with the water that is sure to "
                        "flow for the low one.",
                        common_practice)));
}

Finding bed_degradation(const BasinView& view) {
  return keyed(
      "river.bed_degradation",
      limit_finding("tailwater.bed_degradation", "Allowance for degradation of the river bed", view.site.river.bed_degradation,
                    LimitSense::at_least, 1e-9, dimension::length, Status::caution,
                    "The allowance lowers the low tailwater case at every discharge.",
                    "Rivers below dams cut down: estimate the lowering of the bed over the life of the work and enter it.",
                    common_practice));
}

Finding apron_limits(const BasinView& view) {
  if (!view.level_exists) {
    const auto& worst = least(view, [](const TailwaterState& state) { return state.available_depth - state.required_depth; });
    return worked(
        hydraulics::record::tailwater_margin, {tailwater_level(view, worst), apron_level(view), required_depth(worst)},
        limit_finding("apron.limits", "Apron level that gives every discharge its tailwater exists",
                      worst.required_depth - worst.available_depth, LimitSense::at_most, 0.0, dimension::length, Status::fails,
                      "Tailwater missing with the lowest apron searched, at " +
                          quantity_token(view.apron_level, dimension::length) + ", " + in_case(worst) + ".",
                      "The river gives too little water for a jump basin: raise it by a sill downstream, widen the basin, or "
                      "choose another kind of dissipator.",
                      common_practice));
  }
  return keyed(
      "basin.lowest_apron",
      worked(hydraulics::record::level_difference,
             {apron_level(view), told(view.level_wanted, "level that the tailwater asks for, without the limits")},
             limit_finding(
                 "apron.limits", "Apron level that tailwater asks for lies within the limits given",
                 view.apron_level - view.level_wanted, LimitSense::at_most, 1e-9, dimension::length, Status::fails,
                 view.level_wanted >= view.apron_level ? "The level is set by tailwater or lies below it."
                                                       : "To meet every discharge the apron would have to lie at " +
                                                             quantity_token(view.level_wanted, dimension::length) + ".",
                 "Allow a lower apron, widen the basin, or choose a dissipator that needs less tailwater.", common_practice)));
}

Finding apron_against_bed(const BasinView& view) {
  const double above = view.apron_level - view.site.river.bed_level;
  return worked(
      hydraulics::record::level_difference, {apron_level(view), given(view.site.river.bed_level, "river.bed_level")},
      limit_finding("apron.river_bed", "Apron not above the river bed", above, LimitSense::at_most, 0.0, dimension::length,
                    Status::caution, "Apron level less river bed level.",
                    "The water falls from the basin to the bed: protect the step, or take the excess of tailwater as a "
                    "reason for a sloping apron.",
                    common_practice));
}

Finding founding(const BasinView& view) {
  const double underside = view.apron_level - view.slab_thickness;
  const bool given_level = view.site.ground.has_foundation;
  const double above = given_level ? underside - view.site.ground.foundation_level : 0.0;
  auto finding =
      limit_finding("apron.foundation", "Underside of the slab on sound foundation", above, LimitSense::at_most, 0.0,
                    dimension::length, Status::caution,
                    given_level ? "Underside of the slab less foundation level." : "The site file gives no foundation level.",
                    "Found the slab on fill concrete down to the sound foundation, or lower the apron.", common_practice);
  finding.key = "ground.foundation_level";
  return given_level ? worked(hydraulics::record::level_difference,
                              {told(underside, "level of the apron less the thickness of the slab"),
                               given(view.site.ground.foundation_level, "ground.foundation_level")},
                              std::move(finding))
                     : finding;
}

Finding sill_control(const BasinView& view) {
  const auto drop = [&](const TailwaterState& state) {
    return state.available_depth - view.structure.end_sill_height - 1.5 * hydraulics::critical_depth(state.toe->unit_discharge);
  };
  const auto& worst = least(view, drop);
  const double asked = view.structure.end_sill_height + 1.5 * hydraulics::critical_depth(worst.toe->unit_discharge);
  return worked(
      hydraulics::record::tailwater_margin,
      {tailwater_level(view, worst), apron_level(view), told(asked, "height of the end sill plus 1.5 critical depths")},
      limit_finding("basin.sill_control", "End sill drowned by the river at every discharge", drop(worst), LimitSense::at_least,
                    0.0, dimension::length, Status::caution,
                    "Tailwater less the energy level of critical flow over the sill; smallest " + in_case(worst) + ".",
                    "The sill acts as a weir and water falls from it: lower it or protect the bed as below a fall.",
                    common_practice));
}

}  // namespace quell::checks
