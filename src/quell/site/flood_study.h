// Floods of the site: the law of the yearly floods, and inflows routed through the reservoir.
#pragma once

#include "quell/site/study.h"

namespace quell::site {

/// Return period (years) up to which a fitted law is drawn.
inline constexpr double longest_drawn_period = 10000.0;

/// The fit with its curve and plotting positions. No answer where the record is too short for the law.
Outcome<FrequencyStudy> study_record(const FloodRecord& record);

/// All inflows through the reservoir, with its crest, gates and outlets. No answer where a peak or the reservoir is missing, or
/// the rule of the gates oscillates.
Outcome<std::vector<RoutedInflow>> route_inflows(const Site& site);

}  // namespace quell::site
