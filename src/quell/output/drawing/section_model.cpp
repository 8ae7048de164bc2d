#include "quell/output/drawing/section_model.h"

#include <algorithm>
#include <cmath>

namespace quell::output {

namespace {

constexpr int curve_points = 24;
constexpr int jump_points = 40;
constexpr double river_rise = 4.0;  // horizontal to 1 vertical, common practice, no published source

/// The surface point above a bed point: the depth stands normal to the bed.
Point surface_point(const site::ChutePoint& p) {
  return {p.station + p.depth * std::sin(p.slope_angle), p.bed_level + p.depth * std::cos(p.slope_angle)};
}

Polyline chute_face(const site::Site& site, const design::Option& option) {
  const Point toe{option.chute_end_station, option.apron_level};
  if (option.profiles.empty() || option.profiles.front().chute.empty() || option.crest_outline.empty())
    return {{0.0, site.crest.crest_level}, toe};
  Polyline face;
  for (const auto& p : option.crest_outline) face.push_back({p.station, p.level});
  for (const auto& p : option.profiles.front().chute)
    if (p.station > face.back().x + 1e-9 && p.station < toe.x) face.push_back({p.station, p.bed_level});
  face.push_back(toe);
  return face;
}

/// Largest head of the profiles over the crest, m: the scale of what lies about the crest.
double largest_head(const site::Site& site, const design::Option& option) {
  double level = site.crest.crest_level + site.crest.design_head;
  for (const auto& profile : option.profiles) level = std::max(level, profile.reservoir_level);
  return level - site.crest.crest_level;
}

/// Below the face: straight from the foot of the upstream face to the toe, but never less than the slab below the face.
Polyline body_below(const LongSection& section) {
  const Point foot{section.upstream_station, section.approach_floor - section.slab_thickness};
  const Point end{section.toe_station, section.apron_level - section.slab_thickness};
  Polyline body = section.face;
  for (auto p = section.face.rbegin(); p != section.face.rend(); ++p) {
    const double share = (p->x - foot.x) / std::max(end.x - foot.x, 1e-9);
    body.push_back({p->x, std::min(foot.y + share * (end.y - foot.y), p->y - 1.3 * section.slab_thickness)});
  }
  body.back().y = std::min(body.back().y, foot.y);
  return body;
}

Polyline river_bed_line(const LongSection& section, double bed_level) {
  const double run = river_rise * std::abs(bed_level - section.apron_level);
  return {{section.basin_end, section.apron_level}, {section.basin_end + run, bed_level}, {section.far_station, bed_level}};
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
    if (top.x < front && top.x > surface.back().x) surface.push_back(top);
  }
  if (front >= section.toe_station) {
    const double supercritical = section.apron_level + profile.result.toe.y1;
    surface.push_back({section.toe_station, std::min(surface.back().y, supercritical)});
    if (front > section.toe_station) surface.push_back({front, supercritical});
  }
}

void add_jump(Polyline& surface, const LongSection& section, const design::WaterProfile& profile, double front) {
  for (const auto& point : profile.jump_surface)
    if (const double x = front + point.x; x > surface.back().x && x < section.far_station)
      surface.push_back({x, section.apron_level + point.z});
  surface.push_back({section.far_station, profile.tailwater_level});
}

Polyline energy_line(const LongSection& section, const design::WaterProfile& profile, double front) {
  const auto& result = profile.result;
  Polyline energy{{section.first_station, profile.reservoir_level}, {std::min(0.0, front), profile.reservoir_level}};
  for (const auto& p : profile.chute)
    if (p.station < std::min(front, section.toe_station)) energy.push_back({p.station, p.energy_level});
  const double before = front < section.toe_station ? energy.back().y : section.apron_level + result.toe.energy_head;
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

SectionWater water_of(const LongSection& section, const site::Site& site, const design::WaterProfile& profile) {
  SectionWater water;
  water.label = profile.label;
  water.profile = &profile;
  water.front_station = section.toe_station + profile.result.position.front;
  water.surface.push_back({section.first_station, profile.reservoir_level});
  const auto& first = profile.chute.front();
  add_drawdown(water.surface, site.crest, profile, surface_point(first), std::tan(first.slope_angle));
  add_chute(water.surface, section, profile, water.front_station);
  add_jump(water.surface, section, profile, water.front_station);
  water.energy = energy_line(section, profile, water.front_station);
  water.bed = {{section.first_station, section.approach_floor}, {section.upstream_station, section.approach_floor}};
  for (const auto& line : {section.face, section.river_bed}) water.bed.insert(water.bed.end(), line.begin(), line.end());
  for (auto& p : water.bed) p.y = std::min(p.y, level_at(water.surface, p.x));
  return water;
}

void add_waters(LongSection& section, const site::Site& site, const design::Option& option) {
  const design::WaterProfile* first = nullptr;
  const design::WaterProfile* second = nullptr;
  for (const auto& profile : option.profiles)
    if (profile.chute.size() >= 2 && (first == nullptr || profile.label.rfind("governing", 0) == 0)) first = &profile;
  if (first == nullptr) return;
  for (const auto& profile : option.profiles) {
    if (profile.chute.size() < 2 || std::abs(profile.discharge - first->discharge) < 0.005 * first->discharge) continue;
    if (second == nullptr || profile.discharge > second->discharge) second = &profile;
  }
  section.waters.push_back(water_of(section, site, *first));
  if (second != nullptr) section.waters.push_back(water_of(section, site, *second));
}

}  // namespace

LongSection long_section(const site::Site& site, const design::Option& option) {
  LongSection section;
  section.toe_station = option.chute_end_station;
  section.basin_end = option.chute_end_station + option.length;
  section.apron_level = option.apron_level;
  section.slab_thickness = std::max(option.quantities.slab_thickness, 0.01 * option.length);
  section.upstream_station = option.crest_outline.empty() ? 0.0 : option.crest_outline.front().station;
  section.approach_floor = site.crest.crest_level - site.crest.approach_depth;
  const double rise = river_rise * std::abs(site.river.bed_level - option.apron_level);
  section.last_station = section.basin_end + rise + 0.3 * option.length;
  section.first_station = section.upstream_station - std::max(3.0 * largest_head(site, option), 0.14 * section.last_station);
  section.far_station = section.last_station + 1.2 * (section.last_station - section.first_station);

  section.face = chute_face(site, option);
  section.body = body_below(section);
  const double bottom = option.apron_level - section.slab_thickness;
  section.slab = {{section.toe_station, option.apron_level},
                  {section.basin_end, option.apron_level},
                  {section.basin_end, bottom},
                  {section.toe_station, bottom}};
  section.river_bed = river_bed_line(section, site.river.bed_level);
  section.wall_top = {{section.toe_station, option.wall_top_level}, {section.basin_end, option.wall_top_level}};
  for (const auto& element : option.structure.elements) {
    NamedOutline named{element.name, {}};
    for (const auto& p : element.profile) named.outline.push_back({section.toe_station + p.x, option.apron_level + p.z});
    section.elements.push_back(std::move(named));
  }
  add_waters(section, site, option);
  return section;
}

}  // namespace quell::output
