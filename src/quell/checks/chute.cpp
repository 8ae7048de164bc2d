// Checks of the chute.
#include <algorithm>
#include <cmath>

#include "quell/base/quantity_text.h"
#include "quell/checks/checks.h"
#include "quell/checks/origins.h"
#include "quell/dissipators/parts.h"
#include "quell/hydraulics/basin_rules.h"
#include "quell/hydraulics/definitions.h"
#include "quell/hydraulics/jump.h"

namespace quell::checks {

using dissipators::limit_finding;
using dissipators::Rule;

namespace {

constexpr Rule small_dams{"dsd_1987", "ch. 9", Provenance::memory};

const site::ToeFlow& largest_flow(const BasinView& view) {
  return *view.states.back().toe;
}

}  // namespace

Finding chute_walls(const BasinView& view) {
  double needed = 0.0;
  double level = 0.0;
  const site::ChutePoint* at = nullptr;
  for (const auto& point : view.wettest) {
    const double height = point.depth + hydraulics::chute_freeboard({.V = point.velocity, .d = point.depth});
    if (height > needed) {
      needed = height;
      level = point.bed_level;
      at = &point;
    }
  }
  const double given_height = view.site.chute.wall_height;
  const std::string where = " The largest need stands at bed level " + quantity_token(level, dimension::length) + ".";
  const auto behind = [&](Finding finding) {
    finding.key = "chute.wall_height";
    return at == nullptr ? finding
                         : worked(hydraulics::record::chute_freeboard,
                                  {told(at->velocity, "where the walls must be highest, at the check flood"),
                                   told(at->depth, "where the walls must be highest, at the check flood")},
                                  std::move(finding));
  };
  if (!(given_height > 0.0)) {
    return behind(limit_finding("chute.wall_height", "Height of the chute's walls, normal to the floor", needed,
                                LimitSense::note, needed, dimension::length, Status::ok,
                                "Depth and freeboard at the check flood; no height is given in the site file." + where, "",
                                small_dams));
  }
  return behind(limit_finding("chute.wall_height", "Height of the chute's walls, normal to the floor", given_height,
                              LimitSense::at_least, needed, dimension::length, Status::caution,
                              "Against depth and freeboard at the check flood." + where,
                              "Raise the walls to the limit, or accept overtopping only where it harms nothing.", small_dams));
}

Finding chute_width_change(const BasinView& view) {
  const auto& chute = view.site.chute;
  double tangent = 0.0;
  for (const auto& piece : view.geometry.pieces) tangent = std::max(tangent, std::abs(piece.width_change) / 2.0);
  // The flow is slowest, and so follows best, at the start; the rule takes the Froude number there.
  const double froude =
      view.wettest.empty() ? 1.0 : hydraulics::froude_number(view.wettest.front().velocity, view.wettest.front().depth);
  return worked(
      hydraulics::record::largest_flare, {told(froude, "Froude number at the head of the chute, check flood")},
      limit_finding(
          "chute.flare", "Flare or contraction of the chute's walls, each side", tangent, LimitSense::at_most,
          hydraulics::largest_flare({.F = froude}), dimension::none, Status::caution,
          chute.width == chute.end_width ? "The walls are parallel." : "Tangent of the angle of each wall to the axis.",
          "Lengthen the change of width: the flow leaves wider walls, and steeper contractions send cross waves.",
          {"hec14_2006", "ch. 4, errata", Provenance::seen}));
}

Finding basin_width_change(const BasinView& view) {
  const double change = std::abs(view.width - view.site.chute.end_width);
  const auto& flow = largest_flow(view);
  const double needed = change / 2.0 / hydraulics::largest_flare({.F = flow.F1});
  const auto& last = view.geometry.pieces.back();
  const double available = (view.geometry.last_reach_level - view.apron_level) / last.sine;
  return keyed(
      "basin.width",
      worked(
          hydraulics::record::largest_flare, {told(flow.F1, "Froude number of the entering flow, largest discharge")},
          limit_finding(
              "basin.width_change", "Length of chute over which its walls reach the basin's width", needed, LimitSense::at_most,
              available, dimension::length, Status::fails,
              change > 1e-9
                  ? "The walls must change width on the last reach of the chute, by 1 in 3 F1; abrupt changes are not allowed."
                  : "Chute and basin have the same width.",
              "Choose a basin width nearer to the chute's, or change the width of the chute itself.",
              {"hec14_2006", "ch. 4, errata", Provenance::seen})));
}

Finding invert_curve(const BasinView& view) {
  const auto& flow = largest_flow(view);
  const double radius = view.structure.invert_radius;
  if (!(radius > 0.0)) {
    return limit_finding(
        "invert.radius", "Curve between chute and apron", 0.0, LimitSense::note, 0.0, dimension::length, Status::ok,
        "The chute is flatter than 45 degrees and may meet the apron at an angle; a curve of ten depths is good practice.", "",
        {"peterka_1984", "sec. 2 and 3", Provenance::memory});
  }
  const double pressure = hydraulics::invert_curve_pressure({.q = flow.unit_discharge, .V = flow.V1, .R = radius});
  return keyed("basin.choices.invert_curve",
               worked(hydraulics::record::invert_curve_pressure,
                      {entering_unit_discharge(flow), entering_velocity(flow),
                       told(radius, "basin.choices.invert_curve times the largest depth y1")},
                      limit_finding(
                          "invert.radius", "Radius of the curve between chute and apron", radius, LimitSense::at_least,
                          4.0 * flow.y1, dimension::length, Status::fails,
                          "Chosen as a multiple of the depth at the toe; the least published is four. The curve adds " +
                              quantity_token(pressure, dimension::pressure) + " to the floor, to be carried by the structure.",
                          "Enlarge the radius.",
                          {"peterka_1984", "sec. 2: at least 4 y1 for chutes of 45 degrees and steeper", Provenance::memory})));
}

}  // namespace quell::checks
