#include "quell/output/drawing/canvas.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numeric>

#include "quell/output/drawing/figure_style.h"
#include "quell/output/format.h"

namespace quell::output {

namespace {

/// Page coordinates with two decimals and no trailing zeros: short files, and the same bytes everywhere.
std::string coordinate(double value) {
  std::string text = fmt::format("{:.2f}", value);
  while (text.back() == '0') text.pop_back();
  if (text.back() == '.') text.pop_back();
  return text == "-0" ? "0" : text;
}

std::string point_list(std::span<const Point> points) {
  std::string text;
  for (const auto& p : points) {
    if (!std::isfinite(p.x) || !std::isfinite(p.y)) continue;
    if (!text.empty()) text += ' ';
    text += coordinate(p.x) + ',' + coordinate(p.y);
  }
  return text;
}

}  // namespace

Polyline Mapping::operator()(std::span<const Point> points) const {
  Polyline mapped;
  mapped.reserve(points.size());
  for (const auto& p : points) mapped.push_back((*this)(p));
  return mapped;
}

void Canvas::line(Point a, Point b, std::string_view style) {
  const Point ends[] = {a, b};
  polyline(ends, style);
}

void Canvas::polyline(std::span<const Point> points, std::string_view style) {
  if (points.size() >= 2) body_ += fmt::format("<polyline class=\"{}\" points=\"{}\"/>\n", style, point_list(points));
}

void Canvas::polygon(std::span<const Point> points, std::string_view style) {
  if (points.size() >= 3) body_ += fmt::format("<polygon class=\"{}\" points=\"{}\"/>\n", style, point_list(points));
}

void Canvas::rectangle(const Frame& frame, std::string_view style) {
  body_ += fmt::format("<rect class=\"{}\" x=\"{}\" y=\"{}\" width=\"{}\" height=\"{}\"/>\n", style, coordinate(frame.left),
                       coordinate(frame.top), coordinate(frame.width), coordinate(frame.height));
}

void Canvas::circle(Point centre, double radius, std::string_view style) {
  body_ += fmt::format("<circle class=\"{}\" cx=\"{}\" cy=\"{}\" r=\"{}\"/>\n", style, coordinate(centre.x),
                       coordinate(centre.y), coordinate(radius));
}

void Canvas::text(Point at, std::string_view words, std::string_view style, Anchor anchor, double turn) {
  static constexpr std::string_view anchors[] = {"start", "middle", "end"};
  const std::string x = coordinate(at.x), y = coordinate(at.y);
  const std::string rotation = turn == 0.0 ? "" : fmt::format(" transform=\"rotate({} {} {})\"", coordinate(turn), x, y);
  body_ += fmt::format("<text class=\"{}\" x=\"{}\" y=\"{}\" text-anchor=\"{}\"{}>{}</text>\n", style, x, y,
                       anchors[static_cast<std::size_t>(anchor)], rotation, escape_xml(words));
}

// A nested svg cuts without an id, which would have to be unique on the page.
void Canvas::open_clip(const Frame& frame) {
  const std::string x = coordinate(frame.left), y = coordinate(frame.top);
  const std::string w = coordinate(frame.width), h = coordinate(frame.height);
  body_ += fmt::format("<svg x=\"{0}\" y=\"{1}\" width=\"{2}\" height=\"{3}\" viewBox=\"{0} {1} {2} {3}\">\n", x, y, w, h);
}

void Canvas::close_clip() {
  body_ += "</svg>\n";
}

void Canvas::dimension_line(Point a, Point b, std::string_view words, Anchor side) {
  line(a, b, "f-dim");
  const double length = std::hypot(b.x - a.x, b.y - a.y);
  if (length <= 0.0) return;
  const double dx = (b.x - a.x) / length, dy = (b.y - a.y) / length;
  for (const Point end : {a, b}) {  // oblique end strokes, the drawing-office way
    const Point u{2.6 * (dx - dy), 2.6 * (dy + dx)};
    line({end.x - u.x, end.y - u.y}, {end.x + u.x, end.y + u.y}, "f-dim-end");
  }
  const Point middle{0.5 * (a.x + b.x), 0.5 * (a.y + b.y)};
  if (std::abs(dx) >= std::abs(dy))
    text({middle.x, middle.y - 3.0}, words, "f-text f-halo", Anchor::middle);
  else
    text({middle.x + (side == Anchor::end ? -4.0 : 4.0), middle.y + 3.2}, words, "f-text f-halo", side);
}

void Canvas::level_mark(Point at, std::string_view style) {
  const Point corners[] = {at, {at.x - 3.4, at.y - 5.8}, {at.x + 3.4, at.y - 5.8}};
  polygon(corners, style);
}

std::string Canvas::svg(double height, std::string_view id, std::string_view title, std::string_view description) const {
  return fmt::format(
      "<svg xmlns=\"http://www.w3.org/2000/svg\" class=\"quell-figure\" role=\"img\" width=\"{:.1f}mm\" height=\"{:.1f}mm\" "
      "viewBox=\"0 0 {} {}\" aria-labelledby=\"{}-title {}-desc\">\n<title id=\"{}-title\">{}</title>\n<desc "
      "id=\"{}-desc\">{}</desc>\n<style>{}</style>\n{}</svg>\n",
      text_width_mm, height / page_units_per_mm, coordinate(page_width), coordinate(height), id, id, id, escape_xml(title), id,
      escape_xml(description), figure_style(), body_);
}

double text_width(std::string_view words, double font_size) {
  return 0.56 * font_size * static_cast<double>(display_width(words));
}

std::vector<double> spread(std::span<const double> wanted, double gap, double lowest, double highest) {
  std::vector<std::size_t> order(wanted.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::sort(order.begin(), order.end(),
            [&](std::size_t a, std::size_t b) { return wanted[a] != wanted[b] ? wanted[a] < wanted[b] : a < b; });
  std::vector<double> placed(wanted.begin(), wanted.end());
  for (auto& p : placed) p = std::clamp(p, lowest, std::max(lowest, highest));
  for (int round = 0; round < 200; ++round) {
    bool moved = false;
    for (std::size_t i = 1; i < order.size(); ++i) {
      double& below = placed[order[i - 1]];
      double& above = placed[order[i]];
      const double missing = gap - (above - below);
      if (missing <= 1e-6) continue;
      below -= 0.5 * missing;
      above += 0.5 * missing;
      moved = true;
    }
    if (!order.empty()) {
      placed[order.front()] = std::max(placed[order.front()], lowest);
      placed[order.back()] = std::min(placed[order.back()], std::max(lowest, highest));
    }
    if (!moved) break;
  }
  return placed;
}

Ticks round_ticks(double low, double high, int count) {
  Ticks ticks;
  const double span = high - low;
  if (!(span > 0.0) || !std::isfinite(span)) return ticks;
  const double rough = span / count;
  const double power = std::pow(10.0, std::floor(std::log10(rough)));
  const double share = rough / power;
  const double step = power * (share <= 1.0 ? 1.0 : share <= 2.0 ? 2.0 : share <= 5.0 ? 5.0 : 10.0);
  ticks.decimals = std::max(0, -static_cast<int>(std::floor(std::log10(step) + 1e-9)));
  const auto first = static_cast<long>(std::ceil(low / step - 1e-9));
  const auto last = static_cast<long>(std::floor(high / step + 1e-9));
  for (long i = first; i <= last; ++i) ticks.values.push_back(static_cast<double>(i) * step);
  return ticks;
}

}  // namespace quell::output
