#include "quell/site/river.h"

#include <algorithm>

#include "quell/hydraulics/section.h"

namespace quell::site {
namespace {

hydraulics::NormalDepthInput normal_depth_input(const RiverSection& section, double discharge, std::size_t index) {
  return {.section = {section.bottom_width, section.side_slope},
          .bed_slope = section.bed_slope,
          .manning_n = section.manning_n[index],
          .discharge = discharge};
}

}  // namespace

Outcome<double> rated_level(const TailwaterRating& rating, double discharge, TailwaterCase tailwater_case) {
  const auto& x = rating.discharge;
  const auto& y = rating.level[index_of(tailwater_case)];
  if (x.size() < 2 || discharge < x.front() || discharge > x.back())
    return no_answer("the discharge lies outside the tailwater rating");
  const auto upper = static_cast<std::size_t>(std::upper_bound(x.begin() + 1, x.end() - 1, discharge) - x.begin());
  const double share = (discharge - x[upper - 1]) / (x[upper] - x[upper - 1]);
  return y[upper - 1] + share * (y[upper] - y[upper - 1]);
}

Outcome<double> tailwater_level(const River& river, double discharge, TailwaterCase tailwater_case) {
  const std::size_t index = index_of(tailwater_case);
  // A computed table knows the sunken bed already.
  const bool lowered = river.has_rating() && river.rating.is_computed;
  const double lowering =
      tailwater_case == TailwaterCase::low ? river.lag_allowance + (lowered ? 0.0 : river.bed_degradation) : 0.0;
  const auto level = [&]() -> Outcome<double> {
    if (river.has_rating()) return rated_level(river.rating, discharge, tailwater_case);
    const auto depth = hydraulics::normal_depth(normal_depth_input(river.section, discharge, index));
    if (!depth) return depth;
    return river.bed_level + *depth;
  }();
  if (!level) return level;
  return *level - lowering;
}

void trace_tailwater(const River& river, double discharge, TailwaterCase tailwater_case, Working& working) {
  if (river.source != TailwaterSource::section) return;
  const auto input = normal_depth_input(river.section, discharge, index_of(tailwater_case));
  const auto depth = hydraulics::normal_depth(input);
  if (!depth) return;
  working.add(hydraulics::record::normal_depth_trapezoidal,
              {given(input.section.b, "river.section.bottom_width"), given(input.section.m, "river.section.side_slope"),
               given(input.bed_slope, "river.section.bed_slope"), given(input.manning_n, "river.section.manning_n"),
               told(discharge, "in the river")},
              {*depth}, "depth in the river, above its bed");
}

}  // namespace quell::site
