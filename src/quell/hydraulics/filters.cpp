#include "quell/hydraulics/filters.h"

#include <algorithm>
#include <cmath>

namespace quell::hydraulics {
namespace {

constexpr double least_step = 5.0;                      ///< D15 over d15, permeability
constexpr double most_step = 40.0;                      ///< of D15 and of D50, uniformity
constexpr double retention = 5.0;                       ///< D15 over d85
constexpr double shapes[] = {3.0, 4.0, 5.0, 6.0, 8.0};  ///< D85 over D15 of a layer; beyond 8 retention binds no more
constexpr double drain_shape = 4.0;
constexpr double widest_band = 1.5;      ///< a wider one serves nobody
constexpr double narrowest_band = 1.25;  ///< that a quarry likes to keep; narrower only where nothing else closes
constexpr double gravel = 0.005;         ///< m

LayerBand layer_around(double D15, double shape, double band) {
  const auto limits = [&](double size) { return SizeBand{size / band, size * band}; };
  return {.D15 = limits(D15), .D50 = limits(std::sqrt(shape) * D15), .D85 = limits(shape * D15)};
}

/// Largest step of D15 between layers of one shape.
double largest_step(double shape) {
  return std::min(retention * shape, most_step);
}

/// D15 of a first layer on the bed, and of a last one under the stone.
SizeBand first_limits(const BaseInput& base, double shape) {
  const auto limits = filter_on_base(base);
  return {limits.D15_least, std::min(limits.D15_most, limits.D50_most / std::sqrt(shape))};
}
SizeBand last_limits(const LayerBand& cover, double shape) {
  return {std::max(cover.D15.most / largest_step(shape), cover.D50.most / (most_step * std::sqrt(shape))),
          cover.D15.least / least_step};
}

/// Half-width left at a first or last layer's middle, and between two layers whose middles stand `step` apart.
double room(double D15, const SizeBand& limits) {
  return std::min(D15 / limits.least, limits.most / D15);
}
double room_between(double step, double shape) {
  return std::sqrt(std::min(step / least_step, largest_step(shape) / step));
}

/// `count` layers of one shape at equal shares of the steps that the rules allow.
FilterChain chain_of(const FilterChainInput& input, int count, double shape) {
  FilterChain chain{.shape = shape};
  const auto first = first_limits(input.base, shape);
  const auto last = last_limits(input.cover, shape);
  double middle = 0.0, step = 1.0;
  if (count == 1) {
    const SizeBand both{std::max(first.least, last.least), std::min(first.most, last.most)};
    middle = std::sqrt(both.least * both.most);
    chain.band = room(middle, both);
  } else {
    const double between = count - 1;
    const double least = std::log(last.most / first.least);
    const double free = std::log(first.most / first.least) + std::log(last.most / last.least);
    const double growth = largest_step(shape) / least_step;
    const double share = (least - between * std::log(least_step)) / (free + between * std::log(growth));
    middle = first.least * std::pow(first.most / first.least, share);
    step = least_step * std::pow(growth, share);
    chain.band = std::min({room(middle, first), room_between(step, shape), room(middle * std::pow(step, between), last)});
  }
  chain.closes = chain.band >= 1.0 - 1e-9;
  chain.band = std::clamp(chain.band, 1.0, widest_band);
  if (chain.closes)
    for (int i = 0; i < count; ++i, middle *= step) chain.layers.push_back(layer_around(middle, shape, chain.band));
  return chain;
}

}  // namespace

Gradation riprap_gradation(const GradationInput& input) noexcept {
  const double g = std::pow(input.k, 1.4);
  const double D50 = std::max(input.Di, input.De * std::pow(g, 1.0 / 7.0));
  return {.D15 = D50 / std::sqrt(g),
          .D50 = D50,
          .D85 = D50 * std::sqrt(g),
          .D100 = input.k * D50,
          .band = std::cbrt(5.0) / input.k};
}

FilterOnBase filter_on_base(const BaseInput& base) noexcept {
  return {.D15_least = least_step * base.d15,
          .D15_most = std::min(most_step * base.d15, retention * base.d85),
          .D50_most = most_step * base.d50};
}

FilterUnderCover filter_under_cover(const CoverInput& cover) noexcept {
  return {.D15_least = cover.D15 / most_step,
          .D15_most = cover.D15 / least_step,
          .D50_least = cover.D50 / most_step,
          .D85_least = cover.D15 / retention};
}

bool holds_between(const LayerBand& lower, const LayerBand& upper, double tolerance) noexcept {
  const double more = 1.0 + tolerance;
  return upper.D15.most <= more * retention * lower.D85.least && upper.D15.most <= more * most_step * lower.D15.least &&
         upper.D15.least * more >= least_step * lower.D15.most && upper.D50.most <= more * most_step * lower.D50.least;
}

FilterChain filter_chain(const FilterChainInput& input) noexcept {
  // Stone that holds the bed by itself needs no layer, however little coarser it is: permeability asks nothing more of stone.
  const auto& base = input.base;
  const auto& cover = input.cover;
  if (cover.D15.most <= retention * base.d85 && cover.D15.most <= most_step * base.d15 &&
      cover.D50.most <= most_step * base.d50)
    return {.closes = true};
  FilterChain best;
  for (int count = 1; count <= 5; ++count)
    for (const double shape : shapes) {
      const auto chain = chain_of(input, count, shape);
      if (chain.closes && (!best.closes || chain.band > best.band)) best = chain;
      if (best.band >= narrowest_band) return best;
    }
  return best;
}

FilterChain drain_layers(const BaseInput& soil) noexcept {
  FilterChain chain{.closes = true, .shape = drain_shape};
  const auto limits = first_limits(soil, drain_shape);
  const double step = std::sqrt(least_step * largest_step(drain_shape));
  double middle = std::sqrt(limits.least * limits.most);
  chain.band = std::min(std::sqrt(limits.most / limits.least), room_between(step, drain_shape));
  chain.layers.push_back(layer_around(middle, drain_shape, chain.band));
  while (std::sqrt(drain_shape) * middle < gravel && chain.layers.size() < chain.layers.capacity()) {
    middle *= step;
    chain.layers.push_back(layer_around(middle, drain_shape, chain.band));
  }
  return chain;
}

double launch_volume(const LaunchVolumeInput& input) noexcept {
  return input.f * std::sqrt(5.0) * input.T * input.D;
}

}  // namespace quell::hydraulics
