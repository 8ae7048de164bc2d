#include "quell/checks/floor_pulses.h"

#include <algorithm>
#include <cmath>
#include <span>

namespace quell::checks {
namespace {

using Points = std::span<const site::PressurePoint>;

FloorPulse between(const FloorPulse& a, const FloorPulse& b, double share) noexcept {
  return {std::lerp(a.range, b.range, share), std::lerp(a.suction, b.suction, share)};
}

/// The first points of one Froude number.
Points series_at(Points points) noexcept {
  const auto end = std::find_if(points.begin(), points.end(),
                                [&](const site::PressurePoint& point) { return point.froude != points.front().froude; });
  return points.first(static_cast<std::size_t>(end - points.begin()));
}

FloorPulse along(Points series, double place) noexcept {
  const auto next =
      std::find_if(series.begin(), series.end(), [&](const site::PressurePoint& point) { return point.place >= place; });
  if (next == series.begin()) return {next->range, next->suction};
  const auto& before = *(next - 1);
  if (next == series.end()) return {before.range, before.suction};
  const double share = (place - before.place) / (next->place - before.place);
  return between({before.range, before.suction}, {next->range, next->suction}, share);
}

}  // namespace

FloorPulse floor_pulse(const site::Slab& slab, double F1, double place) noexcept {
  Points rest = slab.pressure;
  if (rest.empty()) return {slab.pressure_range, slab.suction};
  Points below;
  while (!rest.empty()) {
    const Points series = series_at(rest);
    const FloorPulse here = along(series, place);
    const double froude = series.front().froude;
    if (froude >= F1) {
      if (below.empty()) return here;
      const double share = (F1 - below.front().froude) / (froude - below.front().froude);
      return between(along(below, place), here, share);
    }
    below = series;
    rest = rest.subspan(series.size());
  }
  return along(below, place);
}

}  // namespace quell::checks
