// One view of the long section: the same geometry at some scale, cut to some window.
#pragma once

#include "quell/output/drawing/canvas.h"
#include "quell/output/drawing/section_model.h"

namespace quell::output {

/// A window of the world, m, and where it lies on the page.
struct SectionView {
  double first_station = 0.0, last_station = 0.0, bottom_level = 0.0, top_level = 0.0;  ///< m
  double scale_number = 100.0;                                                          ///< n of 1 : n on paper
  Frame frame;
  Mapping map;
};

/// What a view must show, m, and the room (page units) to keep above and below for words.
struct ViewWish {
  double first_station = 0.0, last_station = 0.0, bottom_level = 0.0, top_level = 0.0;
  double room_above = 0.0, room_below = 0.0;
};

/// The window at the largest round scale that fits inside `space`. It fills the width of `space` by showing more of the river.
SectionView fit_view(const ViewWish& wish, const Frame& space);

/// Ground, body, structure and water, cut to the view.
void draw_section(Canvas& canvas, const SectionView& view, const LongSection& section, const site::Site& site);

}  // namespace quell::output
