#include "quell/output/drawing/section_water.h"

#include <algorithm>
#include <cmath>

#include "quell/base/constants.h"

namespace quell::output {

namespace {

constexpr int curve_points = 24;
constexpr int jump_points = 40;

/// The surface point above a bed point: the depth stands normal to the bed.
Point surface_point(const site::ChutePoint& p) {
  return {p.station + p.depth * std::sin(p.slope_angle), p.bed_level + p.depth * std::cos(p.slope_angle)};
}

double level_at(const Polyline& line, double x) {
  for (std::size_t i = 1; i < line.size(); ++i)
    if (x <= line[i].x) {
      const double share = (x - line[i - 1].x) / std::max(line[i].x - line[i - 1].x, 1e-9);
      return line[i - 1].y + std::clamp(share, 0.0, 1.0) * (line[i].y - line[i - 1].y);
    }
  return line.back().y;
}

/// A cubic from one point to another with the slopes (fall per length) that it leaves and arrives with.
void add_cubic(Polyline& surface, Point from, double start_slope, Point to, double end_slope) {
  const double span = to.x - from.x;
  for (int i = 0; i <= curve_points; ++i) {
    const double t = static_cast<double>(i) / curve_points;
    const double h0 = (1.0 + 2.0 * t) * (1.0 - t) * (1.0 - t), h1 = t * t * (3.0 - 2.0 * t);
    const double g0 = t * (1.0 - t) * (1.0 - t), g1 = t * t * (t - 1.0);
    surface.push_back({from.x + span * t, h0 * from.y + h1 * to.y - (g0 * start_slope + g1 * end_slope) * span});
  }
}

/// From the level reservoir to the first computed section: flat at first, parallel to the chute at last. Below a fall the nappe
/// leaves the crest with about two thirds of the head.
void add_drawdown(Polyline& surface, const site::Crest& crest, const design::WaterProfile& profile, Point first, double slope) {
  const double head = std::max(profile.reservoir_level - crest.crest_level, 0.0);
  const Point start{-std::min(1.6 * head, -0.9 * surface.front().x), profile.reservoir_level};
  if (!crest.has_fall()) return add_cubic(surface, start, 0.0, first, slope);
  const Point over{0.0, crest.crest_level + 0.67 * head};
  const double dip = 0.5;  // indicative: the nappe's upper side dips as it leaves the crest
  add_cubic(surface, start, 0.0, over, dip);
  if (first.x > over.x) add_cubic(surface, over, dip, first, slope);
}

void add_chute(Polyline& surface, const LongSection& section, const design::WaterProfile& profile, double front) {
  for (const auto& p : profile.chute) {
    const Point top = surface_point(p);
    if (top.x < std::min(front, section.floor.front().x) && top.x > surface.back().x) surface.push_back(top);
  }
  if (front >= section.toe_station) {
    const double supercritical = level_at(section.floor, front) + profile.result.toe.y1;
    const double at_toe = section.floor.front().y + profile.result.toe.y1;
    surface.push_back({section.toe_station, std::min(surface.back().y, at_toe)});
    if (front > section.toe_station) surface.push_back({front, supercritical});
  }
}

/// The computed surface of a jump on a level apron. On a slope it rises to the level tailwater over its length: indicative.
void add_jump(Polyline& surface, const LongSection& section, const design::WaterProfile& profile, double front) {
  if (section.floor.front().y > section.apron_level + 1e-9) {
    add_cubic(surface, surface.back(), -0.3, {front + 0.7 * profile.result.jump_length, profile.tailwater_level}, 0.0);
    return surface.push_back({section.far_station, profile.tailwater_level});
  }
  for (const auto& point : profile.jump_surface)
    if (const double x = front + point.x; x > surface.back().x && x < section.far_station)
      surface.push_back({x, section.apron_level + point.z});
  surface.push_back({section.far_station, profile.tailwater_level});
}

/// Chute flow down to the tailwater's surface or the end of the chute.
void add_chute_to_tailwater(Polyline& surface, const LongSection& section, const design::WaterProfile& profile) {
  for (const auto& p : profile.chute) {
    const Point top = surface_point(p);
    if (top.x > surface.back().x && top.x < section.floor.front().x && top.y > profile.tailwater_level) surface.push_back(top);
  }
}

/// The thrown jet, a parabola from the lip with the velocity of the flow there.
void add_jet(Polyline& surface, const LongSection& section, const site::Site& site, const design::WaterProfile& profile) {
  const auto& toe = profile.result.toe;
  const Point lip = section.floor.back();
  const double angle = site.basin.choices.flip_lip_angle;
  for (const auto& p : section.floor) surface.push_back({p.x, p.y + toe.y1});
  const double across = toe.V1 * std::cos(angle);
  for (int i = 1; i <= 4 * curve_points; ++i) {
    const double time = 0.05 * i * toe.V1 / 10.0;
    const double y = lip.y + toe.y1 + toe.V1 * std::sin(angle) * time - 0.5 * gravity * time * time;
    if (y < profile.tailwater_level) break;
    surface.push_back({lip.x + across * time, y});
  }
  surface.push_back({surface.back().x + 1e-6, profile.tailwater_level});
}

/// The nappe from the crest with the velocity of critical flow.
void add_nappe(Polyline& surface, const LongSection& section, const site::Site& site, const design::WaterProfile& profile) {
  const double critical = std::cbrt(profile.result.toe.unit_discharge * profile.result.toe.unit_discharge / gravity);
  const double velocity = std::sqrt(gravity * critical);
  const double top = site.crest.crest_level + 0.715 * critical;
  surface.push_back({-4.0 * critical, profile.reservoir_level});
  add_cubic(surface, surface.back(), 0.0, {0.0, top}, 0.2);
  const double bottom = std::max(profile.tailwater_level, section.apron_level + profile.result.toe.y1);
  for (int i = 1; i <= 4 * curve_points; ++i) {
    const double time = 0.02 * i * std::sqrt(critical);
    const double y = top - 0.2 * velocity * time - 0.5 * gravity * time * time;
    if (y < bottom) break;
    surface.push_back({velocity * time, y});
  }
  surface.push_back({surface.back().x + 1e-6, bottom});
}

/// Water that makes no jump: indicative, down to the tailwater.
void add_other(Polyline& surface, const LongSection& section, const site::Site& site, const design::Option& option,
               const design::WaterProfile& profile) {
  switch (option.type->record().action) {
    case dissipators::Action::jet:
      add_chute_to_tailwater(surface, section, profile);
      add_jet(surface, section, site, profile);
      break;
    case dissipators::Action::fall: add_nappe(surface, section, site, profile); break;
    case dissipators::Action::blocks: {
      const double depth = profile.result.toe.y1;
      surface.push_back({-4.0 * depth, profile.reservoir_level});
      add_cubic(surface, surface.back(), 0.0, {0.0, site.crest.crest_level + depth}, 0.3);
      for (const auto& p : section.floor)
        if (p.x > surface.back().x) surface.push_back({p.x, std::max(p.y + depth, profile.tailwater_level)});
      break;
    }
    default: add_chute_to_tailwater(surface, section, profile); break;
  }
  const double last = surface.back().x;
  surface.push_back({last + 1e-6, profile.tailwater_level});
  surface.push_back({std::max(section.far_station, last + 1.0), profile.tailwater_level});
}

Polyline energy_line(const LongSection& section, const design::WaterProfile& profile, double front) {
  const auto& result = profile.result;
  Polyline energy{{section.first_station, profile.reservoir_level}, {std::min(0.0, front), profile.reservoir_level}};
  for (const auto& p : profile.chute)
    if (p.station < std::min(front, section.toe_station)) energy.push_back({p.station, p.energy_level});
  const double floor = level_at(section.floor, front);
  const double before = front < section.toe_station ? energy.back().y : floor + result.toe.energy_head;
  const double after = std::max(section.apron_level + result.toe.energy_head - result.energy_loss, profile.tailwater_level);
  const double reach = std::max(result.roller_length, 1e-6);
  for (int i = 0; i <= jump_points / 2; ++i) {
    const double x = 2.0 * i / jump_points;
    const double drop = std::tanh(2.2 * x) / std::tanh(2.2);
    energy.push_back({front + x * reach, before - (before - after) * drop});
  }
  energy.push_back({section.far_station, after});
  return energy;
}

}  // namespace

SectionWater water_of(const LongSection& section, const site::Site& site, const design::Option& option,
                      const design::WaterProfile& profile) {
  SectionWater water;
  water.label = profile.label;
  water.profile = &profile;
  water.front_station = section.toe_station + profile.result.position.front;
  water.surface.push_back({section.first_station, profile.reservoir_level});
  const auto action = option.type->record().action;
  const auto& first = profile.chute.front();
  if (!dissipators::replaces_chute(action))
    add_drawdown(water.surface, site.crest, profile, surface_point(first), std::tan(first.slope_angle));
  if (dissipators::makes_jump(action)) {
    add_chute(water.surface, section, profile, water.front_station);
    add_jump(water.surface, section, profile, water.front_station);
    water.energy = energy_line(section, profile, water.front_station);
  } else {
    add_other(water.surface, section, site, option, profile);
    water.energy = {{section.first_station, profile.reservoir_level}, {0.0, profile.reservoir_level}};
    if (!dissipators::replaces_chute(action))
      for (const auto& p : profile.chute) water.energy.push_back({p.station, p.energy_level});
  }
  water.bed = {{section.first_station, section.approach_floor}, {section.upstream_station, section.approach_floor}};
  for (const auto& line : {section.face, section.floor}) water.bed.insert(water.bed.end(), line.begin(), line.end());
  // Air stands below a thrown jet until it meets the river.
  if (action == dissipators::Action::jet)
    for (const auto& p : water.surface)
      if (p.x > section.floor.back().x && p.y > profile.tailwater_level + 1e-6)
        water.bed.push_back({p.x, std::max(p.y - profile.result.toe.y1, profile.tailwater_level)});
  for (const auto& p : section.river_bed)
    if (p.x >= water.bed.back().x) water.bed.push_back({p.x, p.y});
  for (auto& p : water.bed) p.y = std::min(p.y, level_at(water.surface, p.x));
  return water;
}

}  // namespace quell::output
