// An inflow through the reservoir: flows above, level below, over the same time.
#include <fmt/format.h>

#include <algorithm>

#include "quell/output/drawing/axes.h"
#include "quell/output/drawing/site_figures.h"

namespace quell::output {
namespace {

constexpr double left = 46.0;
constexpr double label_column = 122.0;
constexpr double hour = 3600.0;

Polyline over_time(const std::vector<double>& time, const std::vector<double>& value) {
  // A long record is drawn by about two thousand points: the page shows no more.
  const std::size_t stride = std::max<std::size_t>(1, time.size() / 2000);
  Polyline line;
  for (std::size_t i = 0; i < time.size(); i += stride) line.push_back({time[i] / hour, value[i]});
  if (!time.empty()) line.push_back({time.back() / hour, value.back()});
  return line;
}

void draw_level_line(Canvas& canvas, const Frame& frame, const Mapping& map, double level) {
  const double y = map({0.0, level}).y;
  if (y >= frame.top && y <= frame.bottom()) canvas.line({frame.left, y}, {frame.right(), y}, "f-level");
}

void draw_flows(Canvas& canvas, const Frame& frame, const site::RoutedInflow& inflow, const Printer& print, double last_hour) {
  const double top = 1.08 * std::max(inflow.peak_inflow, inflow.peak_outflow);
  const Mapping map{
      inflow.time.front() / hour, 0.0, frame.left, frame.bottom(), frame.width / (last_hour - inflow.time.front() / hour),
      frame.height / top};
  draw_left_axis(canvas, frame, map, {dimension::discharge, print.units()}, 5, true);
  canvas.line({frame.left, frame.bottom()}, {frame.right(), frame.bottom()}, "f-axis");
  canvas.open_clip(frame);
  canvas.polyline(map(over_time(inflow.time, inflow.inflow)), "f-expected");
  canvas.polyline(map(over_time(inflow.time, inflow.outflow)), "f-available");
  canvas.close_clip();
  const auto flow = [&](double value) { return print.with_unit(print.discharge(value), print.discharge_unit()); };
  std::vector<MarginLabel> labels = {
      {map({0.0, inflow.peak_inflow}).y, "inflow, peak " + flow(inflow.peak_inflow), "f-text", false},
      {map({0.0, inflow.peak_outflow}).y, "outflow, " + flow(inflow.peak_outflow), "f-strong", false}};
  if (labels[1].height < labels[0].height) std::swap(labels[0], labels[1]);
  draw_margin_labels(canvas, labels, frame.right(), frame.top - 2.0, frame.bottom());
  canvas.text({frame.left - 34.0, frame.top + 0.5 * frame.height}, fmt::format("flow, {}", print.discharge_unit()), "f-quiet",
              Anchor::middle, -90.0);
}

void draw_level(Canvas& canvas, const Frame& frame, const site::Site& site, const site::RoutedInflow& inflow,
                const Printer& print, double last_hour) {
  const auto [low, high] = std::minmax_element(inflow.level.begin(), inflow.level.end());
  double bottom = std::min(*low, site.gates.given() ? site.gates.held_level : site.crest.crest_level);
  double top = std::max(inflow.peak_level, site.reservoir.has_dam_crest ? site.reservoir.dam_crest_level : inflow.peak_level);
  const double room = 0.08 * std::max(0.5, top - bottom);
  bottom -= room;
  top += room;
  const Mapping map{
      inflow.time.front() / hour,   bottom, frame.left, frame.bottom(), frame.width / (last_hour - inflow.time.front() / hour),
      frame.height / (top - bottom)};
  draw_left_axis(canvas, frame, map, {dimension::length, print.units()}, 5, true);
  draw_bottom_axis(canvas, frame, map, {dimension::none, print.units()}, 8, false);
  std::vector<MarginLabel> labels;
  const auto line = [&](double level, const std::string& words) {
    draw_level_line(canvas, frame, map, level);
    labels.push_back({map({0.0, level}).y, words, "f-quiet", false});
  };
  if (site.reservoir.has_dam_crest) {
    line(site.reservoir.dam_crest_level, "dam crest");
    if (site.reservoir.freeboard > 0.0) line(site.reservoir.dam_crest_level - site.reservoir.freeboard, "freeboard wanted");
  }
  if (site.gates.given())
    line(site.gates.held_level, "level held by the gates");
  else
    line(site.crest.crest_level, "crest");
  canvas.open_clip(frame);
  canvas.polyline(map(over_time(inflow.time, inflow.level)), "f-water-1");
  canvas.close_clip();
  labels.push_back({map({0.0, inflow.peak_level}).y,
                    "highest " + print.with_unit(print.level(inflow.peak_level), print.length_unit()), "f-strong", false});
  std::sort(labels.begin(), labels.end(), [](const MarginLabel& a, const MarginLabel& b) { return a.height < b.height; });
  draw_margin_labels(canvas, labels, frame.right(), frame.top - 2.0, frame.bottom());
  canvas.text({frame.left, frame.bottom() + 27.0}, "time, h", "f-quiet");
  canvas.text({frame.left - 34.0, frame.top + 0.5 * frame.height}, fmt::format("reservoir level, {}", print.length_unit()),
              "f-quiet", Anchor::middle, -90.0);
}

}  // namespace

std::string routing_figure_svg(const site::ResolvedSite& resolved, const site::RoutedInflow& inflow, int number,
                               UnitSystem units) {
  if (inflow.time.size() < 2) return {};
  const Printer print(units);
  const double width = page_width - left - label_column;
  const Frame flows{left, 10.0, width, 150.0};
  const Frame level{left, flows.bottom() + 16.0, width, 105.0};
  const double last_hour = inflow.time.back() / hour;
  Canvas canvas;
  draw_flows(canvas, flows, inflow, print, last_hour);
  draw_level(canvas, level, resolved.site, inflow, print, last_hour);
  return canvas.svg(
      level.bottom() + 32.0, fmt::format("inflow-{}", number), inflow.name + " through the reservoir",
      fmt::format("Peak inflow {} {}, peak outflow {} {}, highest level {} {}.", print.discharge(inflow.peak_inflow),
                  print.discharge_unit(), print.discharge(inflow.peak_outflow), print.discharge_unit(),
                  print.level(inflow.peak_level), print.length_unit()));
}

}  // namespace quell::output
