// A small vector canvas: shapes in page units (4 to the millimetre of paper), written as SVG. A Mapping takes world
// coordinates (station and level, discharge and depth) to the page. What is drawn lives in the models (section_model.h), so
// that other writers can share them; the canvas only knows ink.
#pragma once

#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace quell::output {

inline constexpr double page_units_per_mm = 4.0;
inline constexpr double text_width_mm = 174.0;  ///< between the margins of the report on A4
inline constexpr double page_width = text_width_mm * page_units_per_mm;

struct Point {
  double x = 0.0;
  double y = 0.0;
};

using Polyline = std::vector<Point>;

/// World to page: x to the right, y up in the world and down on the page.
struct Mapping {
  double world_x = 0.0, world_y = 0.0;  ///< the world point that lands on (page_x, page_y)
  double page_x = 0.0, page_y = 0.0;
  double scale_x = 1.0, scale_y = 1.0;  ///< page units per world unit
  Point operator()(Point p) const { return {page_x + (p.x - world_x) * scale_x, page_y - (p.y - world_y) * scale_y}; }
  Polyline operator()(std::span<const Point> points) const;
};

/// A rectangle of the page.
struct Frame {
  double left = 0.0, top = 0.0, width = 0.0, height = 0.0;
  double right() const { return left + width; }
  double bottom() const { return top + height; }
};

enum class Anchor { start, middle, end };

class Canvas {
 public:
  void line(Point a, Point b, std::string_view style);
  void polyline(std::span<const Point> points, std::string_view style);
  void polygon(std::span<const Point> points, std::string_view style);
  void rectangle(const Frame& frame, std::string_view style);
  void circle(Point centre, double radius, std::string_view style);
  void text(Point at, std::string_view words, std::string_view style, Anchor anchor = Anchor::start, double turn = 0.0);

  /// Everything between these two is cut at the frame.
  void open_clip(const Frame& frame);
  void close_clip();

  /// A dimension line with end strokes and its text on a white ground: above a level line, right (start) or left (end) of an
  /// upright.
  void dimension_line(Point a, Point b, std::string_view words, Anchor side = Anchor::start);
  /// The mark of a water level: a small triangle that stands on the level.
  void level_mark(Point at, std::string_view style);

  /// The SVG element, `height` page units high. `id` makes the ids of title and description unique within a page.
  std::string svg(double height, std::string_view id, std::string_view title, std::string_view description) const;

 private:
  std::string body_;
};

/// Rough width of a text in page units, for placing labels: there are no font metrics here, so it errs to the wide side.
double text_width(std::string_view words, double font_size = 9.6);

/// Moves wanted positions apart until neighbours keep `gap`, inside [lowest, highest], keeping their order and staying close to
/// what was wanted. Returns the positions in the order given.
std::vector<double> spread(std::span<const double> wanted, double gap, double lowest, double highest);

/// Round values for ticks covering [low, high], about `count` of them, all inside.
struct Ticks {
  std::vector<double> values;
  int decimals = 0;
};
Ticks round_ticks(double low, double high, int count);

}  // namespace quell::output
