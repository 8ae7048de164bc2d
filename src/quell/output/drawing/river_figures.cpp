// The tailwater rating, and the water surface along the surveyed river.
#include <fmt/format.h>

#include <algorithm>

#include "quell/output/drawing/axes.h"
#include "quell/output/drawing/site_figures.h"

namespace quell::output {
namespace {

constexpr double left = 46.0;
constexpr double label_column = 128.0;

struct Extent {
  double low = 1e300, high = -1e300;
  void take(double value) {
    low = std::min(low, value);
    high = std::max(high, value);
  }
};

Polyline rating_line(const site::TailwaterRating& rating, std::size_t tailwater_case) {
  Polyline line;
  for (std::size_t i = 0; i < rating.discharge.size(); ++i)
    line.push_back({rating.discharge[i], rating.level[tailwater_case][i]});
  return line;
}

void draw_upright(Canvas& canvas, const Frame& frame, const Mapping& map, double discharge, std::string_view words) {
  const double x = map({discharge, 0.0}).x;
  if (x < frame.left || x > frame.right() + 0.5) return;
  canvas.line({x, frame.top - 2.0}, {x, frame.bottom()}, "f-level");
  canvas.text({std::min(x, frame.right() + 20.0), frame.top - 5.0}, words, "f-small f-halo", Anchor::middle);
}

/// How one discharge of the river is drawn.
struct WaterStyle {
  std::string_view surface, energy, label;
};
WaterStyle style_of(std::size_t index) {
  return index == 0 ? WaterStyle{"f-water-1", "f-energy-1", "f-strong"} : WaterStyle{"f-water-2", "f-energy-2", "f-text"};
}

std::string name_of_water(const site::RiverWater& water, const Printer& print) {
  return fmt::format("{}, {}", print.with_unit(print.discharge(water.discharge), print.discharge_unit()),
                     site::name_of(water.tailwater_case));
}

}  // namespace

std::string rating_figure_svg(const site::ResolvedSite& resolved, UnitSystem units) {
  const auto& site = resolved.site;
  const auto& rating = site.river.rating;
  if (!site.river.has_rating() || rating.discharge.size() < 2) return {};
  const Printer print(units);
  Extent level;
  for (const auto& one : rating.level)
    for (const double value : one) level.take(value);
  for (const double value : site.river.gauging.level) level.take(value);
  const double last = rating.discharge.back();
  const double room = 0.05 * (level.high - level.low);
  const Frame frame{left, 22.0, page_width - left - label_column, 210.0};
  const Mapping map{0.0,
                    level.low - room,
                    frame.left,
                    frame.bottom(),
                    frame.width / last,
                    frame.height / (level.high - level.low + 2.0 * room)};
  Canvas canvas;
  draw_left_axis(canvas, frame, map, {dimension::length, units}, 6, true);
  draw_bottom_axis(canvas, frame, map, {dimension::discharge, units}, 8, true);
  draw_upright(canvas, frame, map, site.discharges.design_flood, "design flood");
  draw_upright(canvas, frame, map, site.discharges.check_flood, "check flood");
  const double gauged = resolved.study.river.fit.highest_gauged;
  if (gauged > 0.0) draw_upright(canvas, frame, map, gauged, "highest gauged");
  canvas.open_clip(frame);
  canvas.polyline(map(rating_line(rating, 2)), "f-high");
  canvas.polyline(map(rating_line(rating, 1)), "f-expected");
  canvas.polyline(map(rating_line(rating, 0)), "f-available");
  for (std::size_t i = 0; i < site.river.gauging.level.size(); ++i)
    canvas.circle(map({site.river.gauging.discharge[i], site.river.gauging.level[i]}), 2.6, "f-point-4 f-point-open");
  canvas.close_clip();
  const MarginLabel labels[] = {{map({0.0, rating.level[2].back()}).y, "high", "f-text", false},
                                {map({0.0, rating.level[1].back()}).y, "expected", "f-text", false},
                                {map({0.0, rating.level[0].back()}).y, "low", "f-strong", false}};
  draw_margin_labels(canvas, labels, frame.right(), frame.top - 2.0, frame.bottom());
  canvas.text({frame.left, frame.bottom() + 27.0}, fmt::format("discharge in the river, {}", print.discharge_unit()),
              "f-quiet");
  if (!site.river.gauging.level.empty())
    canvas.text({frame.right(), frame.bottom() + 27.0}, "circles: gaugings", "f-quiet", Anchor::end);
  canvas.text({frame.left - 34.0, frame.top + 0.5 * frame.height}, fmt::format("tailwater level, {}", print.length_unit()),
              "f-quiet", Anchor::middle, -90.0);
  return canvas.svg(frame.bottom() + 32.0, "rating", "Tailwater level over discharge",
                    "Low, expected and high tailwater over the discharge in the river.");
}

std::string river_figure_svg(const site::ResolvedSite& resolved, UnitSystem units) {
  const auto& waters = resolved.study.river.water;
  if (waters.empty() || waters.front().points.size() < 2) return {};
  const Printer print(units);
  Extent level;
  for (const auto& water : waters)
    for (const auto& p : water.points) {
      level.take(p.bed_level);
      level.take(p.energy_level);
    }
  const double length = waters.front().points.back().distance;
  const double room = 0.06 * (level.high - level.low);
  const Frame frame{left, 12.0, page_width - left - label_column, 220.0};
  const Mapping map{0.0,
                    level.low - room,
                    frame.left,
                    frame.bottom(),
                    frame.width / length,
                    frame.height / (level.high - level.low + 2.0 * room)};
  Canvas canvas;
  draw_left_axis(canvas, frame, map, {dimension::length, units}, 6, true);
  draw_bottom_axis(canvas, frame, map, {dimension::length, units}, 8, false);
  const auto line = [&](const site::RiverWater& water, double site::RiverProfilePoint::* value) {
    Polyline points;
    for (const auto& p : water.points) points.push_back({p.distance, p.*value});
    return map(points);
  };
  // The bed of the expected case: the low one is sunken.
  const auto& expected = *std::find_if(waters.begin(), waters.end(), [](const site::RiverWater& water) {
    return water.tailwater_case == site::TailwaterCase::expected;
  });
  canvas.open_clip(frame);
  canvas.polyline(line(expected, &site::RiverProfilePoint::bed_level), "f-ground");
  std::vector<MarginLabel> labels;
  bool held = false;
  std::size_t drawn = 0;
  for (const auto& water : waters) {
    const bool is_expected = water.tailwater_case == site::TailwaterCase::expected;
    const auto style = is_expected ? style_of(drawn) : WaterStyle{"f-high", "", "f-quiet"};
    if (is_expected) {
      canvas.polyline(line(water, &site::RiverProfilePoint::energy_level), style.energy);
      ++drawn;
    }
    canvas.polyline(line(water, &site::RiverProfilePoint::level), style.surface);
    for (const auto& p : water.points)
      if (p.held_at_critical) {
        held = true;
        canvas.circle(map({p.distance, p.level}), 3.0, "f-governing-end");
      }
    labels.push_back({map({0.0, water.points.back().level}).y, name_of_water(water, print), std::string(style.label), false});
  }
  canvas.polyline(line(expected, &site::RiverProfilePoint::critical_level), "f-bound");
  canvas.close_clip();
  for (const auto& p : expected.points) {
    const double x = map({p.distance, 0.0}).x;
    canvas.line({x, map({0.0, p.bed_level}).y}, {x, map({0.0, p.bed_level}).y + 5.0}, "f-ground-tick");
  }
  labels.push_back({map({0.0, expected.points.back().bed_level}).y, "bed", "f-quiet", false});
  labels.push_back({map({0.0, expected.points.back().critical_level}).y,
                    fmt::format("critical, {}", print.with_unit(print.discharge(expected.discharge), print.discharge_unit())),
                    "f-quiet", false});
  std::sort(labels.begin(), labels.end(), [](const MarginLabel& a, const MarginLabel& b) { return a.height < b.height; });
  draw_margin_labels(canvas, labels, frame.right(), frame.top - 2.0, frame.bottom());
  canvas.text(
      {frame.left, frame.bottom() + 27.0},
      fmt::format("distance below the basin, {}; heights drawn {:.0f} times", print.length_unit(), map.scale_y / map.scale_x),
      "f-quiet");
  canvas.text({frame.right(), frame.bottom() + 27.0},
              held ? "circles: held at critical depth; dash-dot: energy" : "dash-dot: energy line", "f-quiet", Anchor::end);
  canvas.text({frame.left - 34.0, frame.top + 0.5 * frame.height}, fmt::format("level, {}", print.length_unit()), "f-quiet",
              Anchor::middle, -90.0);
  return canvas.svg(frame.bottom() + 32.0, "river", "Water surface along the river below the basin",
                    "Bed, water surface, energy line and critical level over the distance below the basin.");
}

}  // namespace quell::output
