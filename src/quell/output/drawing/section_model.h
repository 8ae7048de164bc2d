// The long section as geometry in world coordinates: station (m, from the crest) and level (m). The SVG figure is one
// reader of it; a drawing file is another.
//
// The water in the chute and the outline of the crest are the engine's. Indicative, and said so in the figure: the drawdown
// over the crest and the nappe below it, the surface inside the jump (the default profile of the roller, from the design), the
// energy line across the jump, the body of the dam.
#pragma once

#include <string>
#include <vector>

#include "quell/design/result.h"
#include "quell/output/drawing/canvas.h"

namespace quell::output {

struct NamedOutline {
  std::string name;
  Polyline outline;  ///< closed, no repeated end point
};

/// The water of one discharge.
struct SectionWater {
  std::string label;  ///< "governing discharge"
  const design::WaterProfile* profile = nullptr;
  Polyline surface;  ///< reservoir to river
  Polyline bed;      ///< under the surface, same direction
  Polyline energy;
  double front_station = 0.0;  ///< where the jump begins
};

struct LongSection {
  double toe_station = 0.0, basin_end = 0.0;       ///< m
  double first_station = 0.0, last_station = 0.0;  ///< m, what a view should show
  double far_station = 0.0;                        ///< m, lines to the river's side are drawn to here
  double apron_level = 0.0, slab_thickness = 0.0;  ///< m
  double approach_floor = 0.0;                     ///< m
  double upstream_station = 0.0;                   ///< m, foot of the crest's upstream face
  Polyline body;                                   ///< indicative body under crest and chute, closed
  Polyline face;                                   ///< crest and chute face, down to the toe
  Polyline floor;                                  ///< surface of the basin's floor, toe to end
  Polyline slab;                                   ///< closed; empty where the bed is lined with stone
  Polyline river_bed;
  Polyline wall_top;
  std::vector<NamedOutline> elements;
  std::vector<SectionWater> waters;  ///< at most two: the governing discharge and the largest other one
};

/// Needs a sized option with at least one profile; without one only the structure is drawn.
LongSection long_section(const site::Site& site, const design::Option& option);

}  // namespace quell::output
