// Checks of the flow on the chute: air, cavitation, steps, waves; and the velocity at the toe against a second estimate.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "quell/base/quantity_text.h"
#include "quell/checks/checks.h"
#include "quell/checks/origins.h"
#include "quell/dissipators/parts.h"
#include "quell/hydraulics/aerated_flow.h"
#include "quell/hydraulics/boundary_layer.h"
#include "quell/hydraulics/cavitation.h"
#include "quell/hydraulics/stepped_chute.h"
#include "quell/hydraulics/toe_velocity.h"
#include "quell/site/chute_air.h"
#include "quell/site/crest_foot.h"

namespace quell::checks {

using dissipators::at_discharge;
using dissipators::limit_finding;
using dissipators::Rule;

namespace {

const site::ToeFlow& largest_flow(const BasinView& view) {
  return *view.states.back().toe;
}

std::string at_level(double level) {
  return "bed level " + quantity_token(level, dimension::length);
}

std::string percent(double share) {
  return fmt::format("{:.0f} %", 100.0 * share);
}

}  // namespace

Finding chute_cavitation(const BasinView& view) {
  const Rule falvey{"falvey_1990", "design chapter: index and action", Provenance::memory};
  const site::ChutePoint* worst = nullptr;
  for (const auto& point : view.wettest)
    if (point.air_content < site::protecting_air && (worst == nullptr || point.cavitation_index < worst->cavitation_index))
      worst = &point;
  if (worst == nullptr)
    return limit_finding("chute.cavitation", "Cavitation index along the chute", 0.0, LimitSense::note, 0.0, dimension::none,
                         Status::ok, "The flow carries air over its whole length, which protects the floor.", "", falvey);
  const double sigma = worst->cavitation_index;
  const auto& row = hydraulics::cavitation_row(sigma);
  const auto& tolerance = hydraulics::surface_tolerance(sigma, false);
  constexpr double no_curve = 0.0;
  constexpr std::string_view at_worst = "where the index is least, at the check flood";
  std::string text = "Least index where the flow carries less than " + percent(site::protecting_air) + " of air, at " +
                     at_level(worst->bed_level) + ", " + quantity_token(worst->velocity, dimension::velocity) +
                     ", at the check flood: " + std::string(row.action) + ".";
  if (tolerance.offset > 0.0)
    text += fmt::format(" Surface tolerance T{}: abrupt offsets up to {}, gradual ones up to 1 in {:.0f}.", tolerance.number,
                        quantity_token(tolerance.offset, dimension::length), 1.0 / tolerance.slope);
  const auto first = std::find_if(view.wettest.begin(), view.wettest.end(), [](const site::ChutePoint& point) {
    return point.cavitation_index < 0.20 && point.air_content < site::protecting_air;
  });
  if (first != view.wettest.end()) text += " The index first falls to 0.20 near " + at_level(first->bed_level) + ".";
  if (!view.site.project.has_altitude) text += " The altitude is not given: sea level is taken, which is on the unsafe side.";
  const bool beyond = sigma < 0.12;
  return worked(
      hydraulics::record::chute_cavitation_index,
      {told(worst->velocity, at_worst), told(worst->depth, at_worst), told(worst->slope_angle, at_worst),
       given(view.site.project.altitude, "project.altitude"),
       given(view.site.project.water_temperature, "project.water_temperature"), told(no_curve, "the chute is straight there")},
      limit_finding("chute.cavitation", "Cavitation index along the chute", sigma, LimitSense::at_least, beyond ? 0.12 : 0.20,
                    dimension::none, beyond ? Status::fails : Status::caution, text,
                    beyond ? "No surface withstands this: change the layout, or step or aerate the chute by a model study."
                           : "Aerate: a ramp or groove where the index first falls to 0.20, the next {{30|6,0,0|3}} to "
                             "{{100|6,0,0|3}} below it, sized by "
                             "a model study; or finer tolerances proven in service.",
                    falvey));
}

Finding chute_air(const BasinView& view) {
  const Rule wood{"wood_1983", "self-aerated flow; balance of air with a rise velocity of 0.4 m/s", Provenance::memory};
  const auto first = std::find_if(view.wettest.begin(), view.wettest.end(),
                                  [](const site::ChutePoint& point) { return point.air_content > 0.0; });
  const bool any = first != view.wettest.end();
  const double content = any ? view.wettest.back().air_content : 0.0;
  auto finding = limit_finding(
      "chute.air", "Air in the flow at the chute's foot", content, LimitSense::note, content, dimension::none, Status::ok,
      any ? "At the check flood air enters near " + at_level(first->bed_level) + "; at the foot the mixture stands " +
                quantity_token(view.wettest.back().bulked_depth, dimension::length) + " deep for " +
                quantity_token(view.wettest.back().depth, dimension::length) +
                " of water. Smaller discharges take in air earlier. The jump is computed with the water alone."
          : "At the check flood the boundary layer does not reach the surface: the flow arrives without air of its own. "
            "Smaller "
            "discharges may carry air.",
      "", wood);
  // Air enters where the boundary layer reaches the surface.
  return view.geometry.step_height > 0.0 ? finding : worked(hydraulics::record::boundary_layer_em1603, std::move(finding));
}

Finding chute_walls_air(const BasinView& view) {
  double needed = 0.0;
  constexpr std::string_view at_highest = "where the mixture stands highest, at the check flood";
  FindingMethod behind;
  if (!(view.geometry.step_height > 0.0)) behind.method = &hydraulics::record::boundary_layer_em1603;
  for (const auto& point : view.wettest) {
    const double here = std::max(1.2 * point.bulked_depth, point.bulked_depth + 0.5);
    if (!(point.air_content > 0.0) || here <= needed) continue;
    needed = here;
    behind = {&hydraulics::record::bulked_depth, {told(point.depth, at_highest), told(point.air_content, at_highest)}};
  }
  const double given = view.site.chute.wall_height;
  const bool judged = given > 0.0 && needed > 0.0;
  auto finding = keyed(
      "chute.wall_height",
      limit_finding("chute.wall_height_air", "Chute walls above the mixture of water and air", judged ? given : needed,
                    judged ? LimitSense::at_least : LimitSense::note, needed, dimension::length,
                    judged ? Status::caution : Status::ok,
                    needed > 0.0 ? "The larger of 1.2 times the depth of the mixture and {{0.5|6,0,0|3}} above it, at the "
                                   "check flood, normal to the floor."
                                 : "No air of its own in the flow at the check flood.",
                    judged ? "Raise the walls to the limit: spray and bulked flow would overtop them." : "",
                    dissipators::common_practice));
  finding.method = behind;
  return finding;
}

Finding chute_steps(const BasinView& view) {
  const Rule rule{"chanson_2001", "regimes of stepped flow", Provenance::memory};
  const double height = view.geometry.step_height;
  if (!(height > 0.0))
    return keyed("chute.step_height", limit_finding("chute.steps", "Regime on the steps", 0.0, LimitSense::note, 0.0,
                                                    dimension::none, Status::ok, "The chute is smooth.", "", rule));
  const auto& flow = largest_flow(view);
  const double width = view.site.chute.end_width;
  const double angle = view.geometry.pieces.front().angle;
  const double drop = view.geometry.crest_level - view.apron_level;
  double least_skimming = 0.0;
  for (const auto& state : view.states) {
    const auto toe =
        hydraulics::stepped_chute_toe({.q = state.toe->discharge / width, .step_height = height, .phi = angle, .Hdam = drop});
    if (toe && toe->regime == hydraulics::SteppedRegime::skimming)
      least_skimming = least_skimming > 0.0 ? std::min(least_skimming, state.toe->discharge) : state.toe->discharge;
  }
  const auto largest =
      hydraulics::stepped_chute_toe({.q = flow.discharge / width, .step_height = height, .phi = angle, .Hdam = drop});
  std::string text =
      least_skimming > 0.0
          ? "The flow skims over the steps from about " + quantity_token(least_skimming, dimension::discharge) +
                " on; below it falls from step to step or flickers, and leaves less energy than is reckoned here."
          : "The flow does not skim over the steps at any discharge of the range.";
  if (largest && !largest->inside_range()) text += " At the check flood: " + std::string(largest->objection) + ".";
  const double share = largest ? largest->residual_head / (drop + flow.reservoir_level - view.geometry.crest_level) : 1.0;
  text += " The steps leave " + percent(share) + " of the head at the check flood.";
  const bool inside = largest && largest->inside_range();
  return counted(worked(
      hydraulics::record::stepped_toe,
      {told(flow.discharge / width, "largest discharge over the width of the chute's end"), given(height, "chute.step_height"),
       given(angle, "chute.slope"), told(drop, "level of the crest less that of the apron")},
      limit_finding("chute.steps", "Steps within what was measured, at the largest discharge", inside ? 1.0 : 0.0,
                    LimitSense::at_least, 1.0, dimension::none, Status::caution, text,
                    "Choose another step height or slope, or have the energy at the toe measured in a model.", rule)));
}

Finding toe_velocity_second(const BasinView& view) {
  const auto& flow = largest_flow(view);
  // Below a fall the formulas start on the floor, with what energy is left there.
  const double top = view.site.crest.has_fall() ? view.site.crest.floor_level : view.site.crest.crest_level;
  const double head = site::start_energy_level(view.site, flow.discharge, flow.reservoir_level) - top;
  const double fall = top - view.apron_level;
  const bool novak = fall / head < 30.0 && !(view.geometry.step_height > 0.0);
  const double all = fall + head;
  double second = hydraulics::toe_velocity_jsce(all);
  if (novak) {
    const auto velocity = hydraulics::toe_velocity(
        {.q = flow.unit_discharge, .E = all, .phi = hydraulics::velocity_share_novak({.S = fall, .H = head})});
    if (velocity) second = *velocity;
  }
  const Rule rule = novak ? Rule{"novak_2007", "energy dissipation: velocity coefficient 1 - 0.0155 S/H", Provenance::memory}
                          : Rule{"jsce_1985", "0.9 of the velocity of free fall", Provenance::seen};
  const double ratio = flow.V1 / second;
  const std::string_view from_fall =
      view.site.crest.has_fall() ? "crest.floor_level less the level of the apron" : "crest.level less the level of the apron";
  const auto behind = [&](Finding finding) {
    return novak ? worked(hydraulics::record::toe_velocity_novak,
                          {entering_unit_discharge(flow), told(fall, from_fall),
                           told(head, "energy level less the level where the fall begins")},
                          std::move(finding))
                 : worked(hydraulics::record::toe_velocity_jsce,
                          {told(all, "energy level where the fall begins, above the apron")}, std::move(finding));
  };
  std::string text = "Velocity from boundary layer and friction, " + quantity_token(flow.V1, dimension::velocity) + ", over " +
                     quantity_token(second, dimension::velocity) + " by a short formula, " + at_discharge(flow.discharge) + ".";
  if (view.geometry.step_height > 0.0) {
    text += " The formula is for smooth faces: the steps take the rest.";
    return behind(limit_finding("toe.velocity_second", "Velocity at the toe against a second estimate", ratio, LimitSense::note,
                                ratio, dimension::none, Status::ok, text, "", rule));
  }
  // Judged by the farther side: the two may differ by 15 % either way.
  const bool above = ratio >= 1.0;
  return behind(limit_finding(
      "toe.velocity_second", "Velocity at the toe against a second estimate", ratio,
      above ? LimitSense::at_most : LimitSense::at_least, above ? 1.15 : 0.85, dimension::none, Status::caution, text,
      above ? "The computed velocity asks for the deeper apron and is kept; check the roughness of the chute."
            : "Long thin flows lose more than the short formula knows, but air lowers their friction: try a smoother "
              "chute and take the deeper apron.",
      rule));
}

}  // namespace quell::checks
