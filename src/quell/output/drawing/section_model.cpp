#include "quell/output/drawing/section_model.h"

#include <algorithm>
#include <cmath>

#include "quell/output/drawing/section_water.h"

namespace quell::output {

namespace {

constexpr double river_rise = 4.0;  // horizontal to 1 vertical, common practice, no published source

Polyline chute_face(const site::Site& site, const design::Option& option) {
  const auto& start = option.structure.floor.front();
  const Point toe{option.chute_end_station + start.x, option.apron_level + start.z};
  if (dissipators::replaces_chute(option.type->record().action)) return {{0.0, site.crest.crest_level}, toe};
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

/// The slab under the floor; under a bucket it is level, as deep as below its invert.
Polyline slab_below(const LongSection& section, const design::Option& option) {
  Polyline slab = section.floor;
  const bool bucket = section.floor.size() > 4;
  for (auto p = section.floor.rbegin(); p != section.floor.rend(); ++p)
    slab.push_back({p->x, (bucket ? option.apron_level : p->y) - section.slab_thickness});
  return slab;
}

Polyline river_bed_line(const LongSection& section, double bed_level, bool ends_in_a_lip) {
  const Point end = section.floor.back();
  if (ends_in_a_lip) return {end, {end.x + 1e-6, bed_level}, {section.far_station, bed_level}};
  const double run = river_rise * std::abs(bed_level - end.y);
  return {{end.x, end.y}, {section.basin_end + run, bed_level}, {section.far_station, bed_level}};
}

/// Level, or parallel to the floor where the walls follow it; none where there are no walls.
Polyline wall_line(const LongSection& section, const design::Option& option) {
  if (!(option.wall_height > 0.0)) return {};
  if (option.type->record().action != dissipators::Action::blocks)
    return {{section.floor.front().x, option.wall_top_level}, {section.basin_end, option.wall_top_level}};
  Polyline line = section.floor;
  for (auto& p : line) p.y += option.wall_height;
  return line;
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
  section.waters.push_back(water_of(section, site, option, *first));
  if (second != nullptr) section.waters.push_back(water_of(section, site, option, *second));
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
  for (const auto& p : option.structure.floor) section.floor.push_back({section.toe_station + p.x, option.apron_level + p.z});
  if (option.structure.is_paved) section.slab = slab_below(section, option);
  section.river_bed = river_bed_line(section, site.river.bed_level, option.type->record().action == dissipators::Action::jet);
  section.wall_top = wall_line(section, option);
  for (const auto& element : option.structure.elements) {
    for (int row = 0; row < element.rows; ++row) {
      NamedOutline named{row == 0 ? std::string(element.name) : std::string(), {}};
      for (const auto& p : element.profile)
        named.outline.push_back(
            {section.toe_station + p.x + row * element.row_step, option.apron_level + p.z - row * element.row_drop});
      section.elements.push_back(std::move(named));
    }
  }
  add_waters(section, site, option);
  return section;
}

}  // namespace quell::output
