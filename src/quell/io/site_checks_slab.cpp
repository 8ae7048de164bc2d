// Checks of [slab].
#include <fmt/format.h>

#include "quell/io/draft_view.h"
#include "quell/io/site_checks.h"

namespace quell::io {

void check_slab(const Draft& draft, ProblemList& problems) {
  const DraftView view(draft);
  const site::Slab& slab = draft.site.slab;
  if (view.have({"slab.suction", "slab.pressure_range"}) && slab.suction > slab.pressure_range)
    problems.problem(view.at_typed({"slab.suction", "slab.pressure_range"}),
                     fmt::format("a suction of {} is more than the whole range of {}", slab.suction, slab.pressure_range));
  for (std::size_t i = 0; i < slab.pressure.size(); ++i) {
    const std::string item = fmt::format("slab.pressure[{}]", i + 1);
    if (!view.have({item + ".froude", item + ".place", item + ".range", item + ".suction"})) continue;
    const site::PressurePoint& point = slab.pressure[i];
    if (point.suction > point.range)
      problems.problem(view.at(item + ".suction"),
                       fmt::format("a suction of {} is more than the whole range of {}", point.suction, point.range));
    if (i == 0) continue;
    const site::PressurePoint& before = slab.pressure[i - 1];
    if (point.froude < before.froude || (point.froude == before.froude && !(point.place > before.place)))
      problems.problem(
          view.at(item + ".place"),
          fmt::format("the points stand in order of the Froude number, then of the place: {} at {} does not follow "
                      "{} at {}",
                      point.froude, point.place, before.froude, before.place));
  }
}

}  // namespace quell::io
