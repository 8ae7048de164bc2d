#include "quell/output/drawing/axes.h"

#include <fmt/format.h>

#include <cmath>

namespace quell::output {

namespace {

std::string tick_text(double printed, int decimals) {
  std::string text = fmt::format("{:.{}f}", printed, decimals);
  if (text.front() == '-' && text.find_first_not_of("-0.") != std::string::npos) return "−" + text.substr(1);
  return text.front() == '-' ? text.substr(1) : text;
}

}  // namespace

void draw_bottom_axis(Canvas& canvas, const Frame& frame, const Mapping& map, const AxisScale& scale, int count, bool grid) {
  const double low = map.world_x + (frame.left - map.page_x) / map.scale_x;
  const double high = low + frame.width / map.scale_x;
  const auto ticks =
      round_ticks(to_unit(low, scale.dimension, scale.units), to_unit(high, scale.dimension, scale.units), count);
  canvas.line({frame.left, frame.bottom()}, {frame.right(), frame.bottom()}, "f-axis");
  for (const double value : ticks.values) {
    const double x = map({from_unit(value, scale.dimension, scale.units), map.world_y}).x;
    if (grid) canvas.line({x, frame.top}, {x, frame.bottom()}, "f-grid");
    canvas.line({x, frame.bottom()}, {x, frame.bottom() + 3.5}, "f-tick");
    canvas.text({x, frame.bottom() + 12.5}, tick_text(value, ticks.decimals), "f-small", Anchor::middle);
  }
}

void draw_left_axis(Canvas& canvas, const Frame& frame, const Mapping& map, const AxisScale& scale, int count, bool grid) {
  const double low = map.world_y + (map.page_y - frame.bottom()) / map.scale_y;
  const double high = low + frame.height / map.scale_y;
  const auto ticks =
      round_ticks(to_unit(low, scale.dimension, scale.units), to_unit(high, scale.dimension, scale.units), count);
  canvas.line({frame.left, frame.top}, {frame.left, frame.bottom()}, "f-axis");
  for (const double value : ticks.values) {
    const double y = map({map.world_x, from_unit(value, scale.dimension, scale.units)}).y;
    if (grid) canvas.line({frame.left, y}, {frame.right(), y}, "f-grid");
    canvas.line({frame.left - 3.5, y}, {frame.left, y}, "f-tick");
    canvas.text({frame.left - 5.5, y + 3.1}, tick_text(value, ticks.decimals), "f-small", Anchor::end);
  }
}

void draw_scale_bar(Canvas& canvas, Point left, double units_per_metre, double about_width, UnitSystem units) {
  const double wanted = to_unit(about_width / units_per_metre, dimension::length, units);
  const double power = std::pow(10.0, std::floor(std::log10(wanted)));
  const double share = wanted / power;
  const double length = power * (share >= 5.0 ? 5.0 : share >= 2.0 ? 2.0 : 1.0);
  const double width = from_unit(length, dimension::length, units) * units_per_metre;
  for (int i = 0; i < 4; ++i)
    canvas.rectangle({left.x + 0.25 * width * i, left.y - 3.0, 0.25 * width, 3.0}, i % 2 == 0 ? "f-bar-dark" : "f-bar-light");
  canvas.text({left.x + width + 5.0, left.y + 0.4}, fmt::format("{:g} {}", length, unit_label(dimension::length, units)),
              "f-small");
}

void draw_margin_labels(Canvas& canvas, std::span<const MarginLabel> labels, double x, double top, double bottom) {
  std::vector<double> wanted;
  for (const auto& label : labels) wanted.push_back(label.height);
  const auto placed = spread(wanted, 11.5, top + 4.0, bottom - 4.0);
  double aside = 6.0;
  for (std::size_t i = 0; i < labels.size(); ++i) {
    const Point leader[] = {{x, labels[i].height}, {x + 4.0, labels[i].height}, {x + 12.0, placed[i]}, {x + 15.0, placed[i]}};
    canvas.polyline(leader, "f-leader");
    if (labels[i].mark) {
      canvas.level_mark({x - aside, labels[i].height}, labels[i].style == "f-strong" ? "f-mark-1" : "f-mark-2");
      aside += 10.0;  // two levels that nearly agree keep two marks
    }
    canvas.text({x + 17.0, placed[i] + 3.2}, labels[i].words, labels[i].style);
  }
}

}  // namespace quell::output
