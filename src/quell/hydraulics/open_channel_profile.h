// Gradually varied flow along one prismatic reach: dy/dx = (S0 - Sf)/(1 - F^2), x downstream from the upstream end, 0 to L.
//
// y is the vertical depth, F^2 = Q^2 T/(g A^3), Sf by Manning or by Darcy and Colebrook; bed slopes to about 0.1 either way (no
// cosines). Followed along the arc of the curve (x, y), whose direction (F^2 - 1, Sf - S0) vanishes nowhere but where normal
// and critical depth are one: regular at critical depth, where dy/dx is not, and beside normal depth, where dx/dy is not. With
// these signs supercritical flow is followed downstream and subcritical flow upstream, each from its own control.
#pragma once

#include <vector>

#include "quell/hydraulics/section.h"

namespace quell::hydraulics {

enum class FrictionLaw {
  manning,  ///< Sf = n^2 V^2/R^(4/3); roughness is n, s/m^(1/3)
  darcy     ///< Sf = f V^2/(8 g R), f by Colebrook; roughness is ks, m
};

struct BedFriction {
  FrictionLaw law = FrictionLaw::manning;
  double roughness = 0.0;  ///< n or ks; n = 0 is a bed without friction
  bool walls = true;       ///< true: R = A/P; false: R = A/T, which is y in a rectangle (a wide channel)
};

struct ChannelReach {
  Trapezoid section;
  double discharge = 0.0;  ///< Q, m3/s, > 0
  double bed_slope = 0.0;  ///< S0, falling downstream > 0, adverse < 0
  BedFriction friction;
  double length = 0.0;  ///< L, m, > 0
};

/// F^2 = Q^2 T/(g A^3).
double froude_squared(const ChannelReach& reach, double depth);

/// Sf by the reach's law, > 0.
double friction_slope(const ChannelReach& reach, double depth);

/// End of a step: where it is, how fast x and y change along the arc, and the step to it from the node before.
struct ProfileNode {
  double x;
  double y;
  double x_rate;
  double y_rate;
  double step = 0.0;
  double x_bulge = 0.0;  ///< m, halfway from the node before: the curve less the cubic through values and rates
  double y_bulge = 0.0;
};

/// A water surface from its control (first node) to the other end of the reach, or to where it meets critical depth.
struct FlowProfile {
  std::vector<ProfileNode> nodes;
  bool meets_critical = false;  ///< it ends at critical depth within the reach

  double last_x() const { return nodes.back().x; }
  /// y at x, within 1e-8 m; beyond the ends the end values are held.
  double depth_at(double x) const noexcept;
};

/// Downstream from `upstream_depth` at x = 0, which must not exceed critical depth.
Outcome<FlowProfile> supercritical_profile(const ChannelReach& reach, double upstream_depth);

/// Upstream from `downstream_depth` at x = L. A depth below critical depth leaves the reach through critical depth: the profile
/// starts there on a mild, level or adverse bed, and is that single point on a steep one, which has no subcritical flow then.
Outcome<FlowProfile> subcritical_profile(const ChannelReach& reach, double downstream_depth);

struct DepthPair {
  double start;  ///< m, > 0
  double end;    ///< m, > 0
};
/// Distance x (m, downstream positive) over which the depth changes from start to end: the integral of (1 - F^2)/(S0 - Sf) by
/// Gauss and Kronrod's rule, to 1e-10. No answer where normal depth lies between. The reach's length plays no part.
Outcome<double> distance_between(const ChannelReach& reach, const DepthPair& depths);

/// The same by the direct step method: N equal steps of depth, friction slope averaged over the ends of each.
Outcome<double> direct_step_distance(const ChannelReach& reach, const DepthPair& depths, int steps);

namespace record {
extern const Method channel_profile_depth;
extern const Method channel_profile_distance;
extern const Method channel_profile_direct_step;
}  // namespace record

}  // namespace quell::hydraulics
