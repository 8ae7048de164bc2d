// Figures of what the site's data gave: yearly floods, a routed inflow, the tailwater rating, the river's surface. SVG text,
// made by us. Each is empty where the study holds nothing to draw.
#pragma once

#include <string>

#include "quell/base/units.h"
#include "quell/site/study.h"

namespace quell::output {

/// Yearly floods at their plotting positions over the return period, with the law and its confidence limits.
std::string frequency_figure_svg(const site::ResolvedSite& resolved, UnitSystem units);

/// Inflow, outflow and reservoir level over time for one inflow; `number` makes its ids unique within a page.
std::string routing_figure_svg(const site::ResolvedSite& resolved, const site::RoutedInflow& inflow, int number,
                               UnitSystem units);

/// Tailwater level over discharge for low, expected and high water, with gaugings where there are any.
std::string rating_figure_svg(const site::ResolvedSite& resolved, UnitSystem units);

/// Bed, water surface, energy line and critical level along the surveyed river.
std::string river_figure_svg(const site::ResolvedSite& resolved, UnitSystem units);

}  // namespace quell::output
