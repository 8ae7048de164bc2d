#include "quell/hydraulics/open_channel_profile.h"

#include <algorithm>
#include <boost/math/quadrature/gauss_kronrod.hpp>
#include <cmath>
#include <optional>

#include "quell/base/roots.h"
#include "quell/hydraulics/dormand_prince.h"
#include "quell/hydraulics/friction.h"

namespace quell::hydraulics {
namespace {

using Point = std::array<double, 2>;  ///< x and y in units of the frame
using Step = DormandPrinceStep<2>;

/// Units that make the curve smooth in its arc: critical depth, and the distance in which friction at critical depth eats it.
struct Frame {
  const ChannelReach& reach;
  double critical;
  double distance;
};

Outcome<Frame> frame_of(const ChannelReach& reach) {
  if (!(reach.length > 0.0)) return no_answer("the reach must have a length above zero");
  const bool darcy = reach.friction.law == FrictionLaw::darcy;
  if (!(darcy ? reach.friction.roughness > 0.0 : reach.friction.roughness >= 0.0))
    return no_answer("the roughness of the reach must not be below zero, and ks must be above zero");
  const auto critical = critical_depth(reach.section, reach.discharge);
  if (!critical) return tl::unexpected(critical.error());
  const double steepest = std::max({friction_slope(reach, *critical), std::abs(reach.bed_slope), 1e-5});
  return Frame{reach, *critical, *critical / steepest};
}

Outcome<Point> direction(const Frame& frame, double relative_depth) {
  if (!(relative_depth > 1e-9)) return no_answer("the flow would become thinner than any");
  const double depth = relative_depth * frame.critical;
  const double along = froude_squared(frame.reach, depth) - 1.0;
  const double across = (friction_slope(frame.reach, depth) - frame.reach.bed_slope) * frame.distance / frame.critical;
  const double size = std::hypot(along, across);
  if (!(size > 1e-12)) return no_answer("normal depth is critical depth: the profile is undetermined there");
  return Point{along / size, across / size};
}

/// A step that ends where `measure(value)` vanishes, which has different signs at the ends of the step given.
template <class Rates, class Measure>
Outcome<Step> land(const Point& start, const Point& slope, double& h, const Rates& rates, const Measure& measure) {
  const auto excess = [&](double part) {
    if (part == 0.0) return measure(start);
    const auto step = dormand_prince<2>(start, slope, part, rates);
    return step ? measure(step->value) : std::nan("");
  };
  const auto part = find_root(excess, 0.0, h, h * 1e-15);
  if (!part) return tl::unexpected(part.error());
  h = *part;
  return dormand_prince<2>(start, slope, h, rates);
}

ProfileNode node_at(const Frame& frame, const Point& value, const Point& slope) {
  return {.x = value[0] * frame.distance,
          .y = value[1] * frame.critical,
          .x_rate = slope[0] * frame.distance,
          .y_rate = slope[1] * frame.critical};
}

ProfileNode node_after(const Frame& frame, const Point& start, const Point& slope, const Step& step, double h) {
  const auto bulge = [&](std::size_t i) {
    return step.middle[i] - 0.5 * (start[i] + step.value[i]) - h * (slope[i] - step.slope[i]) / 8.0;
  };
  ProfileNode node = node_at(frame, step.value, step.slope);
  node.step = h;
  node.x_bulge = bulge(0) * frame.distance;
  node.y_bulge = bulge(1) * frame.critical;
  return node;
}

/// Normal depth (relative) where the curve has come within 1e-10 of it, else nothing: from there on the flow is uniform, and
/// steps would be held short by their stability alone.
std::optional<double> uniform_depth(const Frame& frame, const Point& at, const Point& slope) {
  if (std::abs(slope[1]) > 1e-6) return std::nullopt;
  const double nudge = 1e-6 * at[1];
  const auto beside = direction(frame, at[1] + nudge);
  if (!beside) return std::nullopt;
  const double decay = ((*beside)[1] - slope[1]) / nudge;
  const double offset = -slope[1] / decay;
  if (!(decay < 0.0 && std::abs(offset) < 1e-10)) return std::nullopt;
  return at[1] + offset;
}

/// From (x, y) along the curve to `target` or to critical depth.
Outcome<FlowProfile> follow(const Frame& frame, double x, double y, double target) {
  constexpr double tolerance = 1e-11;
  constexpr int most_steps = 20000;
  const double goal = target / frame.distance;
  Point at{x / frame.distance, y / frame.critical};
  // One sign along the whole profile: supercritical flow goes downstream, subcritical upstream.
  const double side = target > x ? 1.0 : -1.0;
  const auto rates = [&](const Point& point) { return direction(frame, point[1]); };
  auto slope = rates(at);
  if (!slope) return tl::unexpected(slope.error());
  FlowProfile profile;
  profile.nodes.reserve(64);
  profile.nodes.push_back(node_at(frame, at, *slope));
  double h = 0.01;
  for (int attempts = 0; side * (goal - at[0]) > 0.0; ++attempts) {
    if (attempts > most_steps) return no_answer("the water surface profile did not converge");
    if (const auto uniform = uniform_depth(frame, at, *slope)) {
      ProfileNode end = node_at(frame, {goal, *uniform}, *slope);
      end.x = target;
      end.step = std::abs(goal - at[0]);
      profile.nodes.push_back(end);
      break;
    }
    auto step = dormand_prince<2>(at, *slope, h, rates);
    if (!step) {
      if (h < 1e-9) return tl::unexpected(step.error());
      h *= 0.25;
      continue;
    }
    const double scale = step->error > 0.0 ? std::clamp(0.9 * std::pow(tolerance / step->error, 0.2), 0.2, 4.0) : 4.0;
    if (step->error > tolerance) {
      h *= scale;
      continue;
    }
    double taken = h;
    const bool crosses_critical = side * (1.0 - step->value[1]) < 0.0;
    if (crosses_critical) step = land(at, *slope, taken, rates, [](const Point& p) { return p[1] - 1.0; });
    const bool arrives = step && side * (goal - step->value[0]) <= 0.0;
    if (arrives) step = land(at, *slope, taken, rates, [&](const Point& p) { return p[0] - goal; });
    if (!step) return tl::unexpected(step.error());
    profile.nodes.push_back(node_after(frame, at, *slope, *step, taken));
    if (arrives) {
      profile.nodes.back().x = target;
      break;
    }
    if (crosses_critical) {
      profile.meets_critical = true;
      break;
    }
    at = step->value;
    *slope = step->slope;
    h *= scale;
  }
  return profile;
}

/// Quartic of one coordinate over a step, its share t from 0 to 1; the rates are per step.
struct Quartic {
  double left, left_rate, right, right_rate, bulge;
  double at(double t) const {
    const double s = 1.0 - t;
    return s * s * (1.0 + 2.0 * t) * left + t * t * (1.0 + 2.0 * s) * right + s * t * (s * left_rate - t * right_rate) +
           16.0 * s * s * t * t * bulge;
  }
  double slope(double t) const {
    const double s = 1.0 - t;
    return 6.0 * s * t * (right - left) + s * (s - 2.0 * t) * left_rate + t * (t - 2.0 * s) * right_rate +
           32.0 * s * t * (s - t) * bulge;
  }
};

/// t at which a monotone quartic is `value`: Newton's method, halving where it leaves the bracket.
double share_of_step(const Quartic& quartic, double value) {
  const double sign = quartic.right > quartic.left ? 1.0 : -1.0;
  double low = 0.0;
  double high = 1.0;
  double t = quartic.right != quartic.left ? (value - quartic.left) / (quartic.right - quartic.left) : 0.0;
  for (int i = 0; i < 60; ++i) {
    const double excess = sign * (quartic.at(t) - value);
    (excess > 0.0 ? high : low) = t;
    double next = t - excess / (sign * quartic.slope(t));
    if (!(next >= low && next <= high)) next = 0.5 * (low + high);
    if (std::abs(next - t) < 1e-14) return next;
    t = next;
  }
  return t;
}

}  // namespace

double froude_squared(const ChannelReach& reach, double depth) {
  const double area = reach.section.area(depth);
  return reach.discharge * reach.discharge * reach.section.top_width(depth) / (gravity * area * area * area);
}

double friction_slope(const ChannelReach& reach, double depth) {
  const auto& friction = reach.friction;
  const double area = reach.section.area(depth);
  const double V = reach.discharge / area;
  const double R = area / (friction.walls ? reach.section.perimeter(depth) : reach.section.top_width(depth));
  if (friction.law == FrictionLaw::manning) return friction.roughness * friction.roughness * V * V / (R * std::cbrt(R));
  return friction_slope({.f = friction_factor({.ks = friction.roughness, .R = R, .V = V}), .V = V, .R = R});
}

double FlowProfile::depth_at(double x) const noexcept {
  const double side = nodes.size() > 1 && last_x() < nodes.front().x ? -1.0 : 1.0;
  if (side * (x - nodes.front().x) <= 0.0) return nodes.front().y;
  if (side * (x - last_x()) >= 0.0) return nodes.back().y;
  const auto upper = std::upper_bound(nodes.begin(), nodes.end(), x,
                                      [side](double at, const ProfileNode& node) { return side * (at - node.x) < 0.0; });
  const ProfileNode& right = *upper;
  const ProfileNode& left = *(upper - 1);
  const double h = right.step;
  const Quartic along{left.x, h * left.x_rate, right.x, h * right.x_rate, right.x_bulge};
  const Quartic depth{left.y, h * left.y_rate, right.y, h * right.y_rate, right.y_bulge};
  return depth.at(share_of_step(along, x));
}

Outcome<FlowProfile> supercritical_profile(const ChannelReach& reach, double upstream_depth) {
  const auto frame = frame_of(reach);
  if (!frame) return tl::unexpected(frame.error());
  const double critical = frame->critical;
  if (!(upstream_depth > 0.0 && upstream_depth <= critical))
    return bad_input("y0", upstream_depth, above_zero.lowest, critical, "flow from an upstream control is supercritical");
  if (upstream_depth >= critical * (1.0 - 1e-13) && friction_slope(reach, critical) >= reach.bed_slope)
    return no_answer("the bed is too flat for supercritical flow to start from critical depth");
  return follow(*frame, 0.0, upstream_depth, reach.length);
}

Outcome<FlowProfile> subcritical_profile(const ChannelReach& reach, double downstream_depth) {
  const auto frame = frame_of(reach);
  if (!frame) return tl::unexpected(frame.error());
  const double critical = frame->critical;
  const double start = std::max(downstream_depth, critical);
  if (!(std::isfinite(start) && start > 0.0)) return no_answer("the depth at the downstream end must be a number");
  if (start <= critical * (1.0 + 1e-13) && friction_slope(reach, critical) <= reach.bed_slope) {
    FlowProfile profile;
    profile.nodes.push_back({.x = reach.length, .y = critical, .x_rate = 0.0, .y_rate = 0.0});
    profile.meets_critical = true;
    return profile;
  }
  return follow(*frame, reach.length, start, 0.0);
}

Outcome<double> distance_between(const ChannelReach& reach, const DepthPair& depths) {
  if (!(depths.start > 0.0 && depths.end > 0.0)) return no_answer("both depths must be above zero");
  const auto gain = [&](double y) { return reach.bed_slope - friction_slope(reach, y); };
  // S0 - Sf grows with the depth: of one sign at both ends it is of one sign between.
  if (!(gain(depths.start) * gain(depths.end) > 0.0))
    return no_answer("normal depth lies between the two depths: the water surface never passes it");
  const auto distance_per_depth = [&](double y) { return (1.0 - froude_squared(reach, y)) / gain(y); };
  if (depths.start == depths.end) return 0.0;
  // In the logarithm of the depth, which spans decades.
  const auto in_logarithm = [&](double z) { return std::exp(z) * distance_per_depth(std::exp(z)); };
  using Rule = boost::math::quadrature::gauss_kronrod<double, 31>;
  return Rule::integrate(in_logarithm, std::log(depths.start), std::log(depths.end), 10, 1e-10);
}

Outcome<double> direct_step_distance(const ChannelReach& reach, const DepthPair& depths, int steps) {
  if (!(depths.start > 0.0 && depths.end > 0.0)) return no_answer("both depths must be above zero");
  if (steps < 1) return no_answer("there must be at least one step");
  const auto energy = [&](double y) {
    const double V = reach.discharge / reach.section.area(y);
    return y + V * V / (2.0 * gravity);
  };
  double x = 0.0;
  for (int i = 0; i < steps; ++i) {
    const double y = depths.start + (depths.end - depths.start) * i / steps;
    const double next = depths.start + (depths.end - depths.start) * (i + 1) / steps;
    const double gain = reach.bed_slope - 0.5 * (friction_slope(reach, y) + friction_slope(reach, next));
    if (gain == 0.0) return no_answer("bed and friction slope are equal within a step: the distance has no bound");
    x += (energy(next) - energy(y)) / gain;
  }
  return x;
}

}  // namespace quell::hydraulics
