#include "quell/hydraulics/khosla.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace quell::hydraulics {

using std::numbers::pi;

namespace {
double root(double alpha) {
  return std::sqrt(1.0 + alpha * alpha);
}
}  // namespace

KeyPressures khosla_downstream(const EndCutoffInput& input) noexcept {
  const double lambda = (1.0 + root(input.b / input.d)) / 2.0;
  return {.E = std::acos((lambda - 2.0) / lambda) / pi, .D = std::acos((lambda - 1.0) / lambda) / pi, .C = 0.0};
}

KeyPressures khosla_upstream(const EndCutoffInput& input) noexcept {
  const auto mirror = khosla_downstream(input);
  return {.E = 1.0, .D = 1.0 - mirror.D, .C = 1.0 - mirror.E};
}

KeyPressures khosla_middle(const MiddleCutoffInput& input) noexcept {
  const double before = root(input.b1 / input.d);
  const double after = root(input.b2 / input.d);
  const double lambda = (before + after) / 2.0, shift = (before - after) / 2.0;
  // Rounding may carry the ratio past one where the cutoff is deep beside its floor.
  const auto share = [lambda](double x) { return std::acos(std::clamp(x / lambda, -1.0, 1.0)) / pi; };
  return {.E = share(shift - 1.0), .D = share(shift), .C = share(shift + 1.0)};
}

double khosla_interference(const InterferenceInput& input) noexcept {
  return 0.19 * std::sqrt(input.D / input.spacing) * (input.d + input.D) / input.b;
}

double khosla_thickness(const ThicknessInput& input) noexcept {
  return (input.at_tip - input.at_floor) * input.t / input.d;
}

double khosla_slope(const SlopeInput& input) noexcept {
  static constexpr double per_cent[] = {11.2, 6.5, 4.5, 3.3, 2.8, 2.5, 2.3, 2.0};
  const double place = std::clamp(input.m, 1.0, 8.0) - 1.0;
  const auto i = std::min(static_cast<std::size_t>(place), std::size_t{6});
  const double share = place - static_cast<double>(i);
  return 0.01 * (per_cent[i] + share * (per_cent[i + 1] - per_cent[i])) * input.length / input.spacing;
}

double creep_ratio_bligh(const BlighCreepInput& input) noexcept {
  return (input.Lv + input.Lh) / input.dH;
}

namespace {

/// What the neighbour adds at the floor beside a cutoff; nothing where the rule does not hold.
double from_neighbour(const FloorCutoffs& floor, const std::array<CutoffPressures, 3>& cutoffs, std::size_t at,
                      std::size_t neighbour) {
  if (!cutoffs[neighbour].exists) return 0.0;
  const double spacing = std::abs(cutoffs[at].distance - cutoffs[neighbour].distance);
  const double D = floor.d[neighbour] - floor.t[neighbour], d = floor.d[at] - floor.t[at];
  // A shorter cutoff in the middle lies in the shadow of an outer one nearer than twice its depth.
  if (at == 1 && d <= D && spacing < 2.0 * D) return 0.0;
  return khosla_interference({.D = D, .d = d, .spacing = spacing, .b = floor.b});
}

std::size_t next_to(const std::array<CutoffPressures, 3>& cutoffs, std::size_t at, bool downstream) {
  if (at == 1) return downstream ? 2 : 0;
  return cutoffs[1].exists ? 1 : 2 - at;
}

void correct(const FloorCutoffs& floor, std::array<CutoffPressures, 3>& cutoffs, std::size_t at) {
  auto& cutoff = cutoffs[at];
  const auto& alone = cutoff.alone;
  const auto thickness = [&](double at_floor) {
    return khosla_thickness({.at_floor = at_floor, .at_tip = alone.D, .d = floor.d[at], .t = floor.t[at]});
  };
  if (at > 0) {
    cutoff.thickness.E = thickness(alone.E);
    cutoff.interference.E = -from_neighbour(floor, cutoffs, at, next_to(cutoffs, at, false));
  }
  if (at < 2) {
    cutoff.thickness.C = thickness(alone.C);
    cutoff.interference.C = from_neighbour(floor, cutoffs, at, next_to(cutoffs, at, true));
  }
  if (at == 0 && floor.slope > 0.0) {
    const double spacing = cutoffs[1].exists ? floor.middle : floor.b;
    cutoff.slope.C = khosla_slope({.m = floor.slope, .length = std::min(floor.slope_length, spacing), .spacing = spacing});
  }
  const auto sum = [&](double KeyPressures::* point) {
    return std::clamp(cutoff.alone.*point + cutoff.thickness.*point + cutoff.interference.*point + cutoff.slope.*point, 0.0,
                      1.0);
  };
  cutoff.final = {sum(&KeyPressures::E), sum(&KeyPressures::D), sum(&KeyPressures::C)};
}

}  // namespace

std::array<CutoffPressures, 3> khosla_floor(const FloorCutoffs& floor) noexcept {
  std::array<CutoffPressures, 3> cutoffs{};
  const double distances[] = {0.0, floor.middle, floor.b};
  for (std::size_t i = 0; i < 3; ++i) {
    cutoffs[i].exists = floor.d[i] > 0.0;
    cutoffs[i].distance = distances[i];
  }
  cutoffs[1].exists = cutoffs[1].exists && floor.middle > 0.0 && floor.middle < floor.b;
  if (cutoffs[0].exists) cutoffs[0].alone = khosla_upstream({.b = floor.b, .d = floor.d[0]});
  if (cutoffs[1].exists) cutoffs[1].alone = khosla_middle({.b1 = floor.middle, .b2 = floor.b - floor.middle, .d = floor.d[1]});
  if (cutoffs[2].exists) cutoffs[2].alone = khosla_downstream({.b = floor.b, .d = floor.d[2]});
  for (std::size_t i = 0; i < 3; ++i)
    if (cutoffs[i].exists) correct(floor, cutoffs, i);
  // Heads fall downstream, whatever the corrections say: from the last point upward the larger is kept.
  double after = 0.0;
  for (std::size_t i = 3; i-- > 0;) {
    if (!cutoffs[i].exists) continue;
    auto& final = cutoffs[i].final;
    after = final.C = std::max(final.C, after);
    after = final.D = std::max(final.D, after);
    after = final.E = std::max(final.E, after);
  }
  return cutoffs;
}

double khosla_share(const std::array<CutoffPressures, 3>& cutoffs, double b, double x) noexcept {
  double from = 0.0, share = 1.0;
  for (const auto& cutoff : cutoffs) {
    if (!cutoff.exists) continue;
    if (x < cutoff.distance) return share + (cutoff.final.E - share) * (x - from) / (cutoff.distance - from);
    from = cutoff.distance;
    share = cutoff.final.C;
  }
  // A flat floor without cutoffs.
  if (from == 0.0 && share == 1.0) return x < b ? std::acos(std::clamp(2.0 * x / b - 1.0, -1.0, 1.0)) / pi : 0.0;
  // Beyond the last cutoff the head falls to that of the tailwater at the end of the floor.
  return x < b ? share * (b - x) / (b - from) : 0.0;
}

}  // namespace quell::hydraulics
