// Axes and small furniture that both figures share.
#pragma once

#include <span>
#include <string>
#include <string_view>

#include "quell/output/drawing/canvas.h"
#include "quell/output/format.h"

namespace quell::output {

/// What an axis measures: world values are SI, ticks are round in the printed unit.
struct AxisScale {
  Dimension dimension;
  UnitSystem units = UnitSystem::si;
};

/// Ticks and numbers below the frame; `grid` draws lines through it.
void draw_bottom_axis(Canvas& canvas, const Frame& frame, const Mapping& map, const AxisScale& scale, int count, bool grid);
void draw_left_axis(Canvas& canvas, const Frame& frame, const Mapping& map, const AxisScale& scale, int count, bool grid);

/// Alternating black and white bar of a round length with its numbers. `units_per_metre` is the page scale.
void draw_scale_bar(Canvas& canvas, Point left, double units_per_metre, double about_width, UnitSystem units);

/// A label that may be moved, with the page height it points at.
struct MarginLabel {
  double height = 0.0;  ///< page y
  std::string words;
  std::string style = "f-text";
  bool mark = false;  ///< a water level's triangle at the frame
};

/// Labels in a column right of `x`, moved apart where they would touch, each with a leader to its own height.
void draw_margin_labels(Canvas& canvas, std::span<const MarginLabel> labels, double x, double top, double bottom);

}  // namespace quell::output
