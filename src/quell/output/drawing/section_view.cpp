#include "quell/output/drawing/section_view.h"

#include <algorithm>
#include <cmath>

namespace quell::output {

namespace {

/// The smallest n of 1 : n that scales the larger of the two ratios (metres per page unit) down to 1.
double round_scale(double metres_per_unit) {
  static constexpr double steps[] = {1.0, 1.25, 1.5, 1.75, 2.0, 2.5, 3.0, 3.5, 4.0, 4.5, 5.0, 6.0, 7.0, 7.5, 8.0, 9.0, 10.0};
  const double exact = metres_per_unit * 1000.0 * page_units_per_mm;
  const double power = std::pow(10.0, std::floor(std::log10(exact)));
  for (const double step : steps)
    if (step * power >= exact * (1.0 - 1e-9)) return step * power;
  return 10.0 * power;
}

/// Short slanted strokes under a line: natural ground.
void draw_ground_ticks(Canvas& canvas, const SectionView& view, const Polyline& line) {
  const auto page = view.map(line);
  double carried = 4.0;
  for (std::size_t i = 1; i < page.size(); ++i) {
    const double dx = page[i].x - page[i - 1].x, dy = page[i].y - page[i - 1].y;
    const double length = std::hypot(dx, dy);
    for (double s = carried; s < length; s += 7.0) {
      const Point p{page[i - 1].x + dx * s / length, page[i - 1].y + dy * s / length};
      if (p.x < view.frame.left || p.x > view.frame.right() + 6.0) continue;
      canvas.line(p, {p.x - 4.0, p.y + 4.5}, "f-ground-tick");
    }
    carried = 4.0;
  }
}

void draw_water(Canvas& canvas, const SectionView& view, const LongSection& section) {
  if (section.waters.empty()) return;
  const auto& main = section.waters.front();
  Polyline body = main.surface;
  body.insert(body.end(), main.bed.rbegin(), main.bed.rend());
  canvas.polygon(view.map(body), "f-water-fill");
}

void draw_water_lines(Canvas& canvas, const SectionView& view, const LongSection& section) {
  static constexpr std::string_view surfaces[] = {"f-water-1", "f-water-2"};
  static constexpr std::string_view energies[] = {"f-energy-1", "f-energy-2"};
  for (std::size_t i = section.waters.size(); i-- > 0;) {
    canvas.polyline(view.map(section.waters[i].energy), energies[std::min<std::size_t>(i, 1)]);
    canvas.polyline(view.map(section.waters[i].surface), surfaces[std::min<std::size_t>(i, 1)]);
  }
}

}  // namespace

SectionView fit_view(const ViewWish& wish, const Frame& space) {
  SectionView view;
  const double wide = wish.last_station - wish.first_station, high = wish.top_level - wish.bottom_level;
  const double rooms = wish.room_above + wish.room_below;
  view.scale_number = round_scale(std::max(wide / space.width, high / (space.height - rooms)));
  const double scale = 1000.0 * page_units_per_mm / view.scale_number;
  view.first_station = wish.first_station;
  view.last_station = wish.first_station + space.width / scale;
  view.bottom_level = wish.bottom_level - wish.room_below / scale;
  view.top_level = wish.top_level + wish.room_above / scale;
  view.frame = {space.left, space.top, space.width, (view.top_level - view.bottom_level) * scale};
  view.map = {view.first_station, view.bottom_level, space.left, view.frame.bottom(), scale, scale};
  return view;
}

void draw_section(Canvas& canvas, const SectionView& view, const LongSection& section, const site::Site& site) {
  canvas.open_clip(view.frame);
  draw_water(canvas, view, section);
  canvas.polygon(view.map(section.body), "f-concrete");
  const Polyline approach{{section.first_station, section.approach_floor}, {section.upstream_station, section.approach_floor}};
  canvas.polyline(view.map(approach), "f-ground");
  draw_ground_ticks(canvas, view, approach);
  Polyline upstream{section.face.front(), {section.upstream_station, section.approach_floor}};
  canvas.polyline(view.map(upstream), "f-face");
  if (!section.slab.empty()) {
    canvas.polygon(view.map(section.slab), "f-slab");
  } else {
    canvas.polyline(view.map(section.floor), "f-stone");
    draw_ground_ticks(canvas, view, section.floor);
  }
  canvas.polyline(view.map(section.river_bed), "f-ground");
  draw_ground_ticks(canvas, view, section.river_bed);
  for (const auto& element : section.elements) canvas.polygon(view.map(element.outline), "f-element");
  canvas.polyline(view.map(section.face), "f-face");
  canvas.polyline(view.map(section.wall_top), "f-wall");
  if (site.ground.has_level)
    canvas.line(view.map({section.toe_station, site.ground.ground_level}),
                view.map({section.far_station, site.ground.ground_level}), "f-level");
  if (site.ground.has_foundation)
    canvas.line(view.map({section.first_station, site.ground.foundation_level}),
                view.map({section.far_station, site.ground.foundation_level}), "f-level");
  draw_water_lines(canvas, view, section);
  canvas.close_clip();
}

}  // namespace quell::output
