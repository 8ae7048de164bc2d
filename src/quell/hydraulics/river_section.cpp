#include "quell/hydraulics/river_section.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "quell/base/roots.h"

namespace quell::hydraulics {
namespace {
constexpr double level_tolerance = 1e-10;  // m
constexpr double scan_step = 0.02;         // of the depth
}  // namespace

std::size_t RiverSection::layer_of(double level) const {
  const auto above = std::ranges::lower_bound(levels_, level);
  return above == levels_.begin() ? 0 : static_cast<std::size_t>(above - levels_.begin()) - 1;
}

std::span<const RiverSection::Strip> RiverSection::strips_of(std::size_t layer) const {
  return std::span(strips_).subspan(layer * part_.size(), part_.size());
}

RiverSection::Kinetic RiverSection::kinetic(std::size_t layer, double level) const {
  const double h = level - levels_[layer];
  Kinetic sum;
  for (const Strip& strip : strips_of(layer)) {
    const double a = strip.area + (strip.width + 0.5 * strip.spread * h) * h;
    if (!(a > 0.0)) continue;
    const double friction = strip.friction + strip.friction_rate * h;
    const double narrowing = (strip.width + strip.spread * h) / a;
    const double drag = strip.friction_rate / friction;
    const double ratio = std::cbrt(a / friction);
    const double k = a * ratio * ratio;
    const double energy = k * (k / a) * (k / a);
    sum.K += k;
    sum.K_rate += k * (5.0 * narrowing - 2.0 * drag) / 3.0;
    sum.S += energy;
    sum.S_rate += energy * (3.0 * narrowing - 2.0 * drag);
  }
  return sum;
}

SectionConveyance RiverSection::at_level(double level) const {
  SectionConveyance sum;
  if (!(level > levels_.front())) return sum;
  const std::size_t layer = layer_of(level);
  const double h = level - levels_[layer];
  double energy = 0.0;
  double momentum = 0.0;
  const auto strips = strips_of(layer);
  for (std::size_t i = 0; i < strips.size(); ++i) {
    const Strip& strip = strips[i];
    const double a = strip.area + (strip.width + 0.5 * strip.spread * h) * h;
    if (!(a > 0.0)) continue;
    const double ratio = std::cbrt(a / (strip.friction + strip.friction_rate * h));
    const double k = a * ratio * ratio;
    sum.area += a;
    sum.top_width += strip.width + strip.spread * h;
    sum.perimeter += strip.perimeter + strip.perimeter_rate * h;
    sum.first_moment += strip.moment + (strip.area + (strip.width / 2.0 + strip.spread * h / 6.0) * h) * h;
    sum.conveyance += k;
    sum.part_area[part_[i]] += a;
    sum.part_conveyance[part_[i]] += k;
    momentum += k * (k / a);
    energy += k * (k / a) * (k / a);
  }
  const double mean = sum.conveyance / sum.area;
  sum.alpha = alpha_part_ * energy / (sum.conveyance * mean * mean);
  sum.beta = beta_part_ * momentum / (sum.conveyance * mean);
  sum.above_bank = level > bank_level_;
  return sum;
}

double RiverSection::velocity_head(double level, double Q) const {
  const Kinetic flow = kinetic(layer_of(level), level);
  const double v = Q / flow.K;
  return alpha_part_ * v * v * flow.S / (2.0 * gravity * flow.K);
}

double RiverSection::energy_level(double level, double Q) const {
  return level + velocity_head(level, Q);
}

double RiverSection::specific_force(double level, double Q) const {
  const SectionConveyance water = at_level(level);
  return water.beta * Q * Q / (gravity * water.area) + water.first_moment;
}

double RiverSection::froude_squared_in(std::size_t layer, double level, double Q) const {
  const Kinetic flow = kinetic(layer, level);
  const double v = Q / flow.K;
  return alpha_part_ * v * v * (3.0 * flow.S * flow.K_rate / flow.K - flow.S_rate) / (2.0 * gravity * flow.K);
}

double RiverSection::froude_squared(double level, double Q) const {
  return froude_squared_in(layer_of(level), level, Q);
}

Outcome<double> RiverSection::normal_level(double Q, double slope) const {
  if (!(Q > 0.0)) return bad_input("Q", Q, 0.0, no_limit, "uniform flow needs a discharge above zero");
  if (!(slope > 0.0)) return bad_input("S", slope, 0.0, no_limit, "uniform flow needs a bed that falls downstream");
  const double needed = Q / std::sqrt(slope);
  const auto enough = std::ranges::find_if(conveyance_, [&](double K) { return K >= needed; });
  const auto layer = static_cast<std::size_t>(enough - conveyance_.begin());
  const auto lacking = [&](double level) { return kinetic(layer, level).K - needed; };
  double top = enough != conveyance_.end() ? levels_[layer + 1] : levels_[layer] + 1.0;
  while (enough == conveyance_.end() && lacking(top) < 0.0 && std::isfinite(top)) top += top - levels_[layer];
  return find_root(lacking, levels_[layer], top, level_tolerance);
}

CriticalLevels RiverSection::scan(double Q, bool all) const {
  CriticalLevels found{.level = levels_.front(), .count = 0};
  double least = std::numeric_limits<double>::infinity();
  const auto note = [&](double level) {
    const double energy = energy_level(level, Q);
    if (energy < least) found.level = level;
    least = std::min(least, energy);
    ++found.count;
  };
  bool was_shooting = true;  // F^2 > 1 just below: at the very bottom it has no limit
  for (std::size_t layer = 0; layer < levels_.size() && (all || levels_[layer] < least); ++layer) {
    const double bottom = levels_[layer];
    const auto excess = [&](double level) { return froude_squared_in(layer, level, Q) - 1.0; };
    double top = layer + 1 < levels_.size() ? levels_[layer + 1] : bottom + 1.0;
    while (layer + 1 == levels_.size() && excess(top) > 0.0) top += top - bottom;
    const int steps = std::clamp(static_cast<int>(std::ceil((top - bottom) / (scan_step * (top - levels_.front())))), 1, 50);
    double from = bottom;
    if (layer == 0)
      for (from = bottom + 1e-6 * (top - bottom); excess(from) < 0.0 && from - bottom > 1e-9;)
        from = bottom + 0.1 * (from - bottom);
    bool shooting = excess(from) > 0.0;
    if (was_shooting && !shooting) note(from);
    for (int step = 1; step <= steps; ++step) {
      const double to = step == steps ? top : bottom + (top - bottom) * step / steps;
      const bool shoots = excess(to) > 0.0;
      if (shooting && !shoots)
        if (const auto level = find_root(excess, from, to, level_tolerance)) note(*level);
      shooting = shoots;
      from = to;
    }
    was_shooting = shooting;
  }
  return found;
}

RiverSection RiverSection::raised(double rise) const {
  RiverSection other = *this;
  for (double& z : other.z_) z += rise;
  for (double& level : other.levels_) level += rise;
  other.bank_level_ += rise;
  return other;
}

Outcome<CriticalLevels> RiverSection::critical_levels(double Q) const {
  if (!(Q > 0.0)) return bad_input("Q", Q, 0.0, no_limit, "critical flow needs a discharge above zero");
  return scan(Q, true);
}

Outcome<double> RiverSection::critical_level(double Q) const {
  if (!(Q > 0.0)) return bad_input("Q", Q, 0.0, no_limit, "critical flow needs a discharge above zero");
  return scan(Q, false).level;
}

}  // namespace quell::hydraulics
