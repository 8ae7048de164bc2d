// The tailwater from what is known of the river: gaugings, or surveyed sections with a control below them.
#pragma once

#include "quell/site/study.h"

namespace quell::site {

/// Range of river discharges (m3/s) over which a table is needed.
struct RiverRange {
  double smallest = 0.0;
  double largest = 0.0;
};

/// The table of tailwater of a river known by gaugings or survey, made so close that straight lines keep to 2 mm. The low case
/// holds the degradation of the bed. No answer where the water finds no level.
Outcome<TailwaterRating> tabulate_tailwater(const River& river, const RiverRange& range);

/// Fit, profiles at some discharges, and how far the start of the profiles is felt at the basin.
struct DrawnDischarge {
  std::string label;
  double discharge = 0.0;  ///< m3/s
};
Outcome<RiverStudy> study_river(const River& river, const std::vector<DrawnDischarge>& drawn);

/// How far the bed may sink, from its grains and slope; all zero where the site gives no bed.
DegradationEstimate estimate_degradation(const RiverBed& bed);

}  // namespace quell::site
