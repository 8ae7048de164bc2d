// Required against available tailwater depth over discharge.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "quell/output/drawing/axes.h"
#include "quell/output/drawing/figures.h"

namespace quell::output {

namespace {

using site::TailwaterCase;

constexpr double label_column = 128.0;
constexpr double row_height = 11.0;
constexpr double plot_height = 236.0;

/// Where the curves are drawn.
struct Plot {
  Frame frame;
  Mapping map;
};

struct Series {
  Polyline low, expected, high, required, sweep_out, largest;  ///< discharge, depth
};

Series series_of(const design::Option& option) {
  Series series;
  for (const auto& result : option.cases) {
    const Point available{result.discharge, result.available_depth};
    if (result.tailwater_case == TailwaterCase::expected) series.expected.push_back(available);
    if (result.tailwater_case == TailwaterCase::high) series.high.push_back(available);
    if (result.tailwater_case != TailwaterCase::low) continue;
    series.low.push_back(available);
    series.required.push_back({result.discharge, result.required_depth});
    series.sweep_out.push_back({result.discharge, result.need.sweep_out});
    series.largest.push_back({result.discharge, result.need.largest});
  }
  return series;
}

bool same(const Polyline& a, const Polyline& b) {
  if (a.size() != b.size()) return false;
  for (std::size_t i = 0; i < a.size(); ++i)
    if (std::abs(a[i].y - b[i].y) > 1e-6) return false;
  return true;
}

double top_of(const Polyline& line) {
  double top = 0.0;
  for (const auto& p : line) top = std::max(top, p.y);
  return top;
}

/// Between required and available, in pieces that change kind where the two lines cross.
void shade_margin(Canvas& canvas, const Mapping& map, const Series& series) {
  for (std::size_t i = 1; i < series.low.size(); ++i) {
    const Point a0 = series.low[i - 1], a1 = series.low[i], r0 = series.required[i - 1], r1 = series.required[i];
    const double m0 = a0.y - r0.y, m1 = a1.y - r1.y;
    const auto piece = [&](std::initializer_list<Point> corners, double sign) {
      canvas.polygon(map(Polyline(corners)), sign >= 0.0 ? "f-margin" : "f-shortfall");
    };
    if (m0 * m1 >= 0.0) {
      piece({a0, a1, r1, r0}, m0 + m1);
      continue;
    }
    const double share = m0 / (m0 - m1);
    const Point cross{a0.x + share * (a1.x - a0.x), a0.y + share * (a1.y - a0.y)};
    piece({a0, cross, r0}, m0);
    piece({cross, a1, r1}, m1);
  }
}

void draw_end_labels(Canvas& canvas, const Plot& plot, const Series& series, bool spread_given) {
  struct Row {
    const Polyline& line;
    std::string_view words, style;
  };
  const Row rows[] = {{series.largest, "drowned above", "f-quiet"},
                      {series.high, "available, high", "f-text"},
                      {series.expected, "available, expected", "f-text"},
                      {series.low, spread_given ? "available, low" : "available", "f-strong"},
                      {series.required, "required", "f-strong"},
                      {series.sweep_out, "swept out below", "f-quiet"}};
  std::vector<MarginLabel> labels;
  for (const auto& row : rows) {
    const bool extra = &row.line == &series.high || &row.line == &series.expected;
    if (row.line.empty() || (extra && !spread_given)) continue;
    const double y = plot.map(row.line.back()).y;
    const bool above = y < plot.frame.top;
    labels.push_back({std::max(y, plot.frame.top + 2.0), std::string(row.words) + (above ? " (above the figure)" : ""),
                      std::string(row.style), false});
  }
  draw_margin_labels(canvas, labels, plot.frame.right(), plot.frame.top - 2.0, plot.frame.bottom());
}

struct FloodMark {
  double discharge;
  std::string name;
};

std::vector<FloodMark> flood_marks(const site::Site& site) {
  std::vector<FloodMark> marks;
  marks.reserve(site.discharges.floods.size() + 2);
  for (const auto& flood : site.discharges.floods) marks.push_back({flood.discharge, flood.name});
  if (site.discharges.design_flood > 0.0) marks.push_back({site.discharges.design_flood, "design flood"});
  if (site.discharges.check_flood > 0.0) marks.push_back({site.discharges.check_flood, "check flood"});
  std::sort(marks.begin(), marks.end(), [](const auto& a, const auto& b) {
    return a.discharge != b.discharge ? a.discharge < b.discharge : a.name < b.name;
  });
  std::vector<FloodMark> merged;
  for (auto& mark : marks) {
    if (!merged.empty() && mark.discharge - merged.back().discharge < 1e-9) {
      if (mark.name != merged.back().name) merged.back().name += ", " + mark.name;
    } else
      merged.push_back(std::move(mark));
  }
  return merged;
}

struct PlacedFlood {
  double x, centre;
  std::size_t row;
  std::string name;
};

/// Each name in the lowest of three rows where it does not touch its neighbour.
std::vector<PlacedFlood> place_floods(const site::Site& site, double left, double units_per_discharge) {
  double taken[] = {-1e9, -1e9, -1e9};
  std::vector<PlacedFlood> placed;
  for (auto& mark : flood_marks(site)) {
    const double x = left + mark.discharge * units_per_discharge;
    const double half = 0.5 * text_width(mark.name, 8.6);
    const double centre = std::min(x, page_width - half);
    std::size_t row = 0;
    while (row < 2 && centre - half < taken[row] + 6.0) ++row;
    taken[row] = centre + half;
    placed.push_back({x, centre, row, std::move(mark.name)});
  }
  return placed;
}

void draw_floods(Canvas& canvas, const Plot& plot, std::span<const PlacedFlood> floods) {
  for (const auto& flood : floods) {
    if (flood.x < plot.frame.left - 0.5 || flood.x > plot.frame.right() + 0.5) continue;
    const double y = plot.frame.top - 6.0 - row_height * static_cast<double>(flood.row);
    canvas.line({flood.x, y + 2.0}, {flood.x, plot.frame.bottom()}, "f-level");
    canvas.text({flood.centre, y}, flood.name, "f-small f-halo", Anchor::middle);
  }
}

void draw_governing(Canvas& canvas, const Plot& plot, const design::Option& option, const Printer& print) {
  const auto& governing = option.governing;
  const Point available = plot.map({governing.discharge, governing.available_depth});
  const Point required = plot.map({governing.discharge, governing.required_depth});
  const Point lower = available.y > required.y ? available : required;
  canvas.line({lower.x, lower.y}, {lower.x, plot.frame.bottom()}, "f-drop");
  canvas.line(available, required, "f-governing");
  canvas.circle(available, 3.2, "f-governing-end");
  canvas.circle(required, 3.2, "f-governing-end");
  const bool right_half = lower.x > plot.frame.left + 0.5 * plot.frame.width;
  const double x = lower.x + (right_half ? -6.0 : 6.0);
  const Anchor anchor = right_half ? Anchor::end : Anchor::start;
  canvas.text({x, plot.frame.bottom() - 20.0},
              fmt::format("governing: {}", print.with_unit(print.discharge(governing.discharge), print.discharge_unit())),
              "f-strong f-halo", anchor);
  canvas.text({x, plot.frame.bottom() - 8.0},
              fmt::format("margin {}, {} tailwater", print.with_unit(print.depth(governing.margin), print.length_unit()),
                          site::name_of(governing.tailwater_case)),
              "f-strong f-halo", anchor);
}

void draw_curves(Canvas& canvas, const Mapping& map, const Series& series, bool spread_given) {
  canvas.polyline(map(series.largest), "f-bound");
  canvas.polyline(map(series.sweep_out), "f-bound");
  if (spread_given) {
    canvas.polyline(map(series.high), "f-high");
    canvas.polyline(map(series.expected), "f-expected");
  }
  canvas.polyline(map(series.required), "f-required");
  canvas.polyline(map(series.low), "f-available");
}

void draw_plot(Canvas& canvas, const Plot& plot, const Series& series, bool spread_given, std::span<const PlacedFlood> floods,
               const Printer& print) {
  const Frame& frame = plot.frame;
  const Frame inside{frame.left, frame.top, frame.width + 1.0, frame.height};
  draw_left_axis(canvas, frame, plot.map, {dimension::length, print.units()}, 6, true);
  draw_bottom_axis(canvas, frame, plot.map, {dimension::discharge, print.units()}, 8, false);
  canvas.open_clip(inside);
  shade_margin(canvas, plot.map, series);
  canvas.close_clip();
  draw_floods(canvas, plot, floods);
  canvas.open_clip(inside);
  draw_curves(canvas, plot.map, series, spread_given);
  canvas.close_clip();
  canvas.text({frame.left, frame.bottom() + 27.0}, fmt::format("discharge, {}", print.discharge_unit()), "f-quiet");
  canvas.text({frame.left - 30.0, frame.top + 0.5 * frame.height},
              fmt::format("depth above the apron, {}", print.length_unit()), "f-quiet", Anchor::middle, -90.0);
  canvas.text({frame.right(), frame.bottom() + 27.0}, "shaded: margin between required and available (low)", "f-quiet",
              Anchor::end);
}

/// Gate patterns with unequal bays: what the most loaded bay requires (square, filled where the apron is set for the pattern)
/// against the tailwater of the whole discharge (ring).
void draw_patterns(Canvas& canvas, const Plot& plot, const design::DesignResult& result, const design::Option& option) {
  constexpr double half = 2.6;
  double lowest_free = plot.frame.bottom() - 34.0;  // names go up from the foot, so that they do not touch
  for (std::size_t i = 0; i < result.pattern_cases.size(); ++i) {
    const auto& data = result.pattern_cases[i];
    const std::size_t at = i * site::tailwater_cases.size();
    if (!(data.bay_discharge > 0.0) || at >= option.pattern_cases.size()) continue;
    const auto& low = option.pattern_cases[at];
    const Point required = plot.map({low.discharge, low.required_depth});
    const Point available = plot.map({low.discharge, low.available_depth});
    if (required.y < plot.frame.top || required.x > plot.frame.right()) continue;
    canvas.line(required, available, low.margin < 0.0 ? "f-governing" : "f-drop");
    canvas.rectangle({required.x - half, required.y - half, 2.0 * half, 2.0 * half},
                     data.is_check ? "f-point-2 f-point-open" : "f-point-2");
    canvas.circle(available, half, "f-point-1 f-point-open");
    const double foot = std::max(required.y, available.y);
    canvas.line({required.x, foot}, {required.x, lowest_free}, "f-leader");
    canvas.text({required.x + 3.0, lowest_free}, data.gate_pattern, "f-small f-halo");
    lowest_free -= row_height;
  }
}

std::string description(const design::Option& option, const Printer& print) {
  const auto& governing = option.governing;
  return fmt::format(
      "Tailwater depth above the apron over discharge. The smallest margin is {} {} at {} {}: available {} {}, required {} {}.",
      print.depth(governing.margin), print.length_unit(), print.discharge(governing.discharge), print.discharge_unit(),
      print.depth(governing.available_depth), print.length_unit(), print.depth(governing.required_depth), print.length_unit());
}

}  // namespace

std::string tailwater_figure_svg(const site::Site& site, const design::DesignResult& result, const design::Option& option,
                                 UnitSystem units) {
  const Printer print(units);
  const Series series = series_of(option);
  Canvas canvas;
  if (option.type->record().level_rule != dissipators::LevelRule::tailwater) {
    canvas.text({0.0, 20.0}, "This type asks for no depth of tailwater; its level follows from the river.", "f-text");
    return canvas.svg(36.0, "tailwater", "No tailwater required", "The type asks for no depth of tailwater.");
  }
  if (series.low.size() < 2)
    return canvas.svg(40.0, "tailwater", "No tailwater curve", "Fewer than two discharges were computed.");
  const bool spread_given = !same(series.low, series.expected) || !same(series.low, series.high);
  const double deepest = std::max({top_of(series.low), top_of(series.high), top_of(series.required)});
  const double last = std::max({series.low.back().x, site.discharges.check_flood, option.governing.discharge});
  constexpr double left = 42.0, width = page_width - left - label_column;
  const auto floods = place_floods(site, left, width / last);
  std::size_t rows = 0;
  for (const auto& flood : floods) rows = std::max(rows, flood.row + 1);
  const Frame frame{left, 8.0 + row_height * static_cast<double>(rows), width, plot_height};
  const Plot plot{frame, {0.0, 0.0, left, frame.bottom(), width / last, plot_height / (1.12 * deepest)}};
  draw_plot(canvas, plot, series, spread_given, floods, print);
  draw_patterns(canvas, plot, result, option);
  draw_governing(canvas, plot, option, print);
  draw_end_labels(canvas, plot, series, spread_given);
  return canvas.svg(frame.bottom() + 32.0, "tailwater", "Required and available tailwater depth over discharge",
                    description(option, print));
}

}  // namespace quell::output
