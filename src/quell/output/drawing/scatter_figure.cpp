#include "quell/output/drawing/scatter_figure.h"

#include <fmt/format.h>

#include <algorithm>

#include "quell/output/drawing/axes.h"

namespace quell::output {
namespace {

constexpr double axis_room = 44.0;   ///< left of a panel, for numbers and words
constexpr double label_room = 34.0;  ///< right of a panel, for the names of the lines
constexpr double title_room = 20.0;
constexpr double foot_room = 34.0;
constexpr double legend_row = 14.0;
constexpr double panel_pitch = page_width / 2.0;
constexpr double side = panel_pitch - axis_room - label_room;
constexpr std::size_t kinds = 4;  ///< of markers

/// A marker of one of four shapes; the shape tells the sets apart without colour.
void draw_marker(Canvas& canvas, Point at, std::size_t kind, bool open) {
  const std::string style = fmt::format("f-point-{}{}", kind % kinds + 1, open ? " f-point-open" : "");
  constexpr double r = 3.1;
  if (kind % kinds == 0) return canvas.circle(at, r, style);
  if (kind % kinds == 1) return canvas.rectangle({at.x - 0.9 * r, at.y - 0.9 * r, 1.8 * r, 1.8 * r}, style);
  const Point triangle[] = {{at.x, at.y - 1.2 * r}, {at.x + 1.1 * r, at.y + 0.8 * r}, {at.x - 1.1 * r, at.y + 0.8 * r}};
  const Point diamond[] = {{at.x, at.y - 1.3 * r}, {at.x + 1.3 * r, at.y}, {at.x, at.y + 1.3 * r}, {at.x - 1.3 * r, at.y}};
  if (kind % kinds == 2) return canvas.polygon(triangle, style);
  canvas.polygon(diamond, style);
}

double largest_of(const ScatterPanel& panel) {
  double largest = 0.0;
  for (const auto& series : panel.series)
    for (const auto& p : series.points) largest = std::max({largest, p.ours, p.measured});
  return largest > 0.0 ? largest : 1.0;
}

/// A line of constant measured/ours through the origin to the edge of the frame, named where it leaves.
void draw_ratio_line(Canvas& canvas, const Mapping& map, double largest, double ratio, std::string_view words,
                     std::string_view style) {
  const Point end = map({largest * std::min(1.0, 1.0 / ratio), largest * std::min(1.0, ratio)});
  canvas.line(map({0.0, 0.0}), end, style);
  if (ratio > 1.0)
    canvas.text({end.x, end.y - 3.5}, words, "f-quiet", Anchor::middle);
  else
    canvas.text({end.x + 3.5, end.y + 3.1}, words, "f-quiet");
}

std::string legend_text(const ScatterSeries& series) {
  if (series.points.size() < 2) return fmt::format("{}: {} point, {:.3f}", series.name, series.points.size(), series.bias);
  return fmt::format("{}: {} points, {:.3f} ± {:.3f}", series.name, series.points.size(), series.bias, series.spread);
}

void draw_legend(Canvas& canvas, const ScatterPanel& panel, Point at) {
  for (std::size_t i = 0; i < panel.series.size(); ++i) {
    const double y = at.y + legend_row * static_cast<double>(i);
    draw_marker(canvas, {at.x + 4.0, y - 3.1}, i, false);
    canvas.text({at.x + 13.0, y}, legend_text(panel.series[i]), "f-small");
  }
}

void draw_panel(Canvas& canvas, const ScatterPanel& panel, double left, double top) {
  const Frame frame{left + axis_room, top + title_room, side, side};
  const double largest = 1.06 * largest_of(panel);
  const Mapping map{0.0, 0.0, frame.left, frame.bottom(), side / largest, side / largest};
  canvas.text({frame.left, top + 4.0}, panel.title, "f-heading");
  draw_left_axis(canvas, frame, map, {dimension::none}, 6, true);
  draw_bottom_axis(canvas, frame, map, {dimension::none}, 6, true);
  draw_ratio_line(canvas, map, largest, 1.1, "+10 %", "f-ratio");
  draw_ratio_line(canvas, map, largest, 1.0, "1:1", "f-axis");
  draw_ratio_line(canvas, map, largest, 0.9, "−10 %", "f-ratio");
  for (std::size_t i = 0; i < panel.series.size(); ++i)
    for (const auto& p : panel.series[i].points) draw_marker(canvas, map({p.ours, p.measured}), i, p.recalled);
  canvas.text({frame.left + 0.5 * side, frame.bottom() + 25.0}, "computed", "f-quiet", Anchor::middle);
  canvas.text({frame.left - 31.0, frame.top + 0.5 * side}, "measured", "f-quiet", Anchor::middle, -90.0);
  draw_legend(canvas, panel, {frame.left, frame.bottom() + foot_room + 6.0});
}

std::string description(std::span<const ScatterPanel> panels) {
  std::string text = "Measured values over computed ones.";
  for (const auto& panel : panels) {
    text += " " + panel.title + ":";
    for (const auto& series : panel.series) text += " " + legend_text(series) + ";";
    text.back() = '.';
  }
  return text;
}

}  // namespace

std::string scatter_svg(std::span<const ScatterPanel> panels) {
  Canvas canvas;
  std::size_t rows = 0;
  bool recalled = false;
  for (const auto& panel : panels) {
    rows = std::max(rows, panel.series.size());
    for (const auto& series : panel.series)
      for (const auto& p : series.points) recalled = recalled || p.recalled;
  }
  const double height = title_room + side + foot_room + legend_row * static_cast<double>(rows) + 18.0;
  double bottom = 0.0;
  for (std::size_t i = 0; i < panels.size(); ++i) {
    const double top = 8.0 + height * static_cast<double>(i / 2);
    draw_panel(canvas, panels[i], panel_pitch * static_cast<double>(i % 2), top);
    bottom = top + height;
  }
  canvas.text({axis_room, bottom},
              std::string("Numbers: mean of measured over computed ± its standard deviation.") +
                  (recalled ? " Open markers: recalled from the source, not read again." : ""),
              "f-quiet");
  return canvas.svg(bottom + 8.0, "scatter", "Measured against computed", description(panels));
}

}  // namespace quell::output
