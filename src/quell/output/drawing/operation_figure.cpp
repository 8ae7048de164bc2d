// The operator's chart: the tailwater level that each discharge needs, and each opening of the gates with what it needs and
// what the river gives in the low case.
#include <fmt/format.h>

#include <algorithm>

#include "quell/output/drawing/axes.h"
#include "quell/output/drawing/figures.h"

namespace quell::output {

namespace {

constexpr double left = 42.0, right_column = 150.0, plot_height = 250.0;

struct Levels {
  Polyline needed, low;
  double bottom = 1e300, top = -1e300, last = 0.0;
  void take(double level) {
    bottom = std::min(bottom, level);
    top = std::max(top, level);
  }
};

Levels levels_of(const design::Option& option) {
  Levels levels;
  for (const auto& result : option.cases) {
    if (result.tailwater_case != site::TailwaterCase::low) continue;
    const Point needed{result.discharge, option.apron_level + result.required_depth};
    const Point low{result.discharge, option.apron_level + result.available_depth};
    levels.needed.push_back(needed);
    levels.low.push_back(low);
    levels.take(needed.y);
    levels.take(low.y);
    levels.last = std::max(levels.last, result.discharge);
  }
  for (const auto& row : option.safety.operation) {
    levels.take(row.tailwater_needed);
    levels.take(row.tailwater_low);
    levels.last = std::max(levels.last, row.discharge);
  }
  return levels;
}

void draw_openings(Canvas& canvas, const Mapping& map, const Frame& frame, const design::Option& option) {
  std::vector<MarginLabel> labels;
  for (const auto& row : option.safety.operation) {
    const Point needed = map({row.discharge, row.tailwater_needed}), low = map({row.discharge, row.tailwater_low});
    canvas.line(needed, low, row.allowed ? "f-leader" : "f-required");
    canvas.rectangle({needed.x - 3.0, needed.y - 3.0, 6.0, 6.0}, "f-point-2");
    canvas.circle(low, 3.2, "f-governing-end");
    labels.push_back({needed.y, (row.allowed ? "" : "no: ") + row.pattern, row.allowed ? "f-text" : "f-strong", false});
  }
  draw_margin_labels(canvas, labels, frame.right(), frame.top, frame.bottom());
}

double draw_key(Canvas& canvas, double y) {
  canvas.line({left, y - 3.0}, {left + 26.0, y - 3.0}, "f-required");
  canvas.text({left + 31.0, y}, "tailwater needed, all bays alike", "f-small");
  canvas.line({left + 180.0, y - 3.0}, {left + 206.0, y - 3.0}, "f-available");
  canvas.text({left + 211.0, y}, "tailwater of the river, low case", "f-small");
  canvas.rectangle({left + 360.0, y - 6.0, 6.0, 6.0}, "f-point-2");
  canvas.text({left + 371.0, y}, "an opening needs", "f-small");
  canvas.circle({left + 458.0, y - 3.0}, 3.2, "f-governing-end");
  canvas.text({left + 466.0, y}, "and has", "f-small");
  return y + 8.0;
}

}  // namespace

std::string operation_figure_svg(const design::Option& option, UnitSystem units) {
  const Levels levels = levels_of(option);
  if (option.safety.operation.empty() || levels.needed.size() < 2) return {};
  const Printer print(units);
  Canvas canvas;
  const Frame frame{left, 10.0, page_width - left - right_column, plot_height};
  const double room = 0.06 * std::max(0.5, levels.top - levels.bottom);
  const Mapping map{0.0,
                    levels.bottom - room,
                    frame.left,
                    frame.bottom(),
                    frame.width / (1.03 * levels.last),
                    frame.height / (levels.top - levels.bottom + 2.0 * room)};
  draw_left_axis(canvas, frame, map, {dimension::length, units}, 6, true);
  draw_bottom_axis(canvas, frame, map, {dimension::discharge, units}, 8, true);
  canvas.text({frame.left + 4.0, frame.top + 9.0}, "tailwater level, " + print.length_unit(), "f-quiet f-halo");
  canvas.text({frame.right(), frame.bottom() + 25.0}, "discharge, " + print.discharge_unit(), "f-quiet", Anchor::end);
  canvas.polyline(map(levels.low), "f-available");
  canvas.polyline(map(levels.needed), "f-required");
  draw_openings(canvas, map, frame, option);
  const auto forbidden = std::count_if(option.safety.operation.begin(), option.safety.operation.end(),
                                       [](const checks::OperationRow& row) { return !row.allowed; });
  return canvas.svg(draw_key(canvas, frame.bottom() + 42.0), "operation",
                    "Openings of the gates and the tailwater that each needs",
                    fmt::format("{} openings, {} of them without their tailwater in the low case.",
                                option.safety.operation.size(), forbidden));
}

}  // namespace quell::output
