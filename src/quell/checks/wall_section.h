// The L-shaped section of a wall with the ground around it, and what one load case does to it. Per metre of wall.
#pragma once

#include <string_view>

#include "quell/checks/safety.h"
#include "quell/hydraulics/basin_stability.h"

namespace quell::checks {

/// A load case and what it asks for. Usual, unusual and extreme cases differ in sliding alone.
struct CaseKind {
  std::string_view id, name;
  double sliding_needed;
};

/// Water and motion. Water levels over the apron, m; below it they still lift the base.
struct WallState {
  double outside, inside;
  double pulse = 0.0;  ///< Pa, acts the way the wall is driven
  double kh = 0.0;     ///< horizontal acceleration over g
  double dK = 0.0;     ///< what the earthquake adds to the coefficient of the fill
  double discharge = 0.0;
};

/// The section and its ground, the same in all load cases.
class WallSection {
 public:
  WallSection(const BasinView& view, double base);
  double fill() const { return fill_; }
  double base() const { return base_; }
  WallLoadCase under(const CaseKind& kind, const WallState& state, bool inward) const;

 private:
  /// Force and moment on the stem, the way asked for.
  hydraulics::WaterForce stem_load(double outside, double inside, const WallState& state, bool inward) const;
  /// Earth and water on the edges of the base, between floor and underside; the moment is about the floor, and below it.
  hydraulics::WaterForce edge_load(const WallState& state, bool inward) const;
  double on_heel(double outside, bool inward) const;
  /// Height of the fill that counts, m: where the ground is not given, fill drives the wall but does not hold it.
  double fill_for(bool inward) const { return inward || ground_known_ ? fill_ : 0.0; }

  const site::Walls& walls_;
  bool ground_known_;
  double height_, thickness_, base_, slab_, fill_, stem_, footing_;
};

}  // namespace quell::checks
