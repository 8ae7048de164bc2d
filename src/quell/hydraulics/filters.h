// Stone in layers: the gradation of riprap, and the filter that keeps the bed below it.
//
// Sizes are those than which 15, 50 and 85 per cent by weight are finer, in m. A filter must hold the finer layer below
// (retention), let its water out (permeability) and be even enough (uniformity). Every layer is judged against both neighbours.
#pragma once

#include <boost/container/static_vector.hpp>

#include "quell/base/method.h"

namespace quell::hydraulics {

struct GradationInput {
  double De;  ///< size that three fifths of the mix must at least have (curve of Engineering Monograph 25), m
  double Di;  ///< size that its lightest half must end at (Isbash), m
  double k;   ///< largest over median size, 1.26 to 1.71
};
/// Lower limit of a gradation that is a straight line over the logarithm of the size.
struct Gradation {
  double D15, D50, D85, D100;  ///< m
  double band;                 ///< upper limit over lower, so that the heaviest stone weighs five times the lower median
};
Gradation riprap_gradation(const GradationInput& input) noexcept;

/// Limits of a layer on a finer one, m.
struct FilterOnBase {
  double D15_least, D15_most, D50_most;
};
struct BaseInput {
  double d15, d50, d85;  ///< of the finer layer, m
};
/// 5 d15 <= D15 <= min(40 d15, 5 d85), D50 <= 40 d50.
FilterOnBase filter_on_base(const BaseInput& base) noexcept;

/// Limits of a layer under a coarser one, m.
struct FilterUnderCover {
  double D15_least, D15_most, D50_least, D85_least;
};
struct CoverInput {
  double D15, D50;  ///< of the coarser layer, m
};
/// The same rules read from above: D15/40 <= d15 <= D15/5, d50 >= D50/40, d85 >= D15/5.
FilterUnderCover filter_under_cover(const CoverInput& cover) noexcept;

/// Two curves between which a layer must lie. Lower and upper limit of each size, m.
struct SizeBand {
  double least = 0.0, most = 0.0;
};
struct LayerBand {
  SizeBand D15, D50, D85;
};

struct FilterChainInput {
  BaseInput base;   ///< of the bed, m
  LayerBand cover;  ///< of the stone, m
};
struct FilterChain {
  bool closes = false;  ///< the rules hold between every two neighbours; no layers: the stone may lie on the bed
  double shape = 1.0;   ///< D85 over D15 of the layers
  double band = 1.0;    ///< half-width of each layer's band: limits over and under its middle
  boost::container::static_vector<LayerBand, 5> layers{};  ///< from the bed upward
};
/// The fewest granular layers between bed and stone. All have one shape, the least of D85/D15 = 3, 4, 5, 6, 8 that does, and
/// lie on a straight line over the logarithm of the size; they stand at equal shares of the steps allowed, with the widest band
/// (up to 1.5) that the rules leave between the worst edges of neighbours. At least 1.25 is wanted; where no number of layers
/// gives that, the widest there is. Does not close where the bed is so even that a layer that drains it cannot hold it.
FilterChain filter_chain(const FilterChainInput& input) noexcept;

/// Layers of a drain on a soil, each upon the finer one before it, until the median is gravel of 5 mm; the same rules, D85/D15
/// = 4.
FilterChain drain_layers(const BaseInput& soil) noexcept;

/// Whether `upper` may lie on `lower`, every edge of the one against every edge of the other, to `tolerance`.
bool holds_between(const LayerBand& lower, const LayerBand& upper, double tolerance = 1e-9) noexcept;

struct LaunchVolumeInput {
  double T;  ///< thickness of the stone on the settled slope, m
  double D;  ///< scour below the stone, m
  double f;  ///< 1.25 placed in the dry, 1.5 deeper or under water, 1.75 deeper than 4.6 m under water
};
/// V (m3 per m) = f sqrt(5) T D on a settled slope of 1V:2H.
double launch_volume(const LaunchVolumeInput& input) noexcept;

namespace record {
extern const Method riprap_gradation;
extern const Method filter_on_base;
extern const Method filter_under_cover;
extern const Method filter_chain;
extern const Method launch_volume;
}  // namespace record

}  // namespace quell::hydraulics
