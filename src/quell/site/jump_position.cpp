#include "quell/site/jump_position.h"

#include <algorithm>
#include <cmath>
#include <vector>

#include "quell/base/roots.h"
#include "quell/hydraulics/energy.h"
#include "quell/hydraulics/jump.h"
#include "quell/hydraulics/jump_front.h"

namespace quell::site {
namespace {

/// Energy level along the apron, from the toe to `length`: friction alone lowers it.
std::vector<hydraulics::EnergyNode> apron_energy(const ToeFlow& toe, double roughness_height, double length) {
  std::vector<hydraulics::EnergyNode> nodes;
  const hydraulics::ChuteStretch stretch{.discharge = toe.discharge,
                                         .start_width = toe.width,
                                         .start_level = 0.0,
                                         .sine = 0.0,
                                         .cosine = 1.0,
                                         .ks = roughness_height,
                                         .length = length};
  // Where the flow would become critical by friction alone there is no more: the nodes end before it.
  if (!hydraulics::integrate_energy(stretch, toe.energy_head, nodes)) nodes.clear();
  return nodes;
}

double depth_of(const ToeFlow& toe, double energy_head) {
  const auto depth = hydraulics::supercritical_depth({.q = toe.unit_discharge, .E = energy_head});
  return depth ? *depth : toe.y1;
}

double sequent_of(const ToeFlow& toe, double depth) {
  return hydraulics::sequent_depth({.y1 = depth, .V1 = toe.unit_discharge / depth});
}

JumpPosition on_chute(const JumpPositionInput& input, Working* working) {
  const auto& toe = input.toe;
  const double theta = input.geometry.pieces.back().angle;
  const auto front_at = [&](double z1) {
    const auto section = input.chute.section_at(toe.apron_level + z1);
    return hydraulics::JumpFrontInput{.q = toe.unit_discharge,
                                      .d1 = toe.unit_discharge / section.velocity,
                                      .theta = theta,
                                      .z1 = z1,
                                      .Lj = input.jump_length,
                                      .T = input.tailwater_depth};
  };
  const auto excess = [&](double z1) { return hydraulics::jump_front_excess(front_at(z1)); };
  const double highest = std::min(input.tailwater_depth, input.geometry.last_reach_level - toe.apron_level);
  JumpPosition position{.d1 = toe.y1};
  if (excess(0.0) >= 0.0) return position;
  const auto z1 = excess(highest) > 0.0 ? find_root(excess, 0.0, highest, 1e-6) : Outcome<double>(highest);
  if (!z1) return position;
  const auto front = front_at(*z1);
  position.z1 = *z1;
  position.d1 = front.d1;
  position.front = -*z1 / std::tan(theta);
  trace(working, hydraulics::record::jump_front_on_chute, {front.q, front.d1, front.theta, front.z1, front.Lj},
        {input.tailwater_depth}, "front of the jump on the chute: the height at which this is the tailwater");
  return position;
}

JumpPosition on_apron(const JumpPositionInput& input) {
  const auto& toe = input.toe;
  JumpPosition position{.front = input.basin_length, .d1 = toe.y1};
  position.swept_out = input.tailwater_depth < input.sweep_out_depth;
  const auto nodes = apron_energy(toe, input.geometry.roughness_height, input.basin_length);
  if (nodes.empty()) return position;
  const auto lacking = [&](double x) {
    return sequent_of(toe, depth_of(toe, hydraulics::energy_between(nodes, x))) - input.tailwater_depth;
  };
  if (lacking(input.basin_length) < 0.0)
    if (const auto front = find_root(lacking, 0.0, input.basin_length, 1e-6)) position.front = *front;
  if (!position.swept_out && input.hold_station > 0.0 && position.front + input.jump_length > input.basin_length) {
    // Tests give the depth at which the jump leaves the blocks; between it and the sequent depth the front moves from the toe
    // to them, here in proportion to the tailwater.
    const double share = (toe.y2 - input.tailwater_depth) / std::max(toe.y2 - input.sweep_out_depth, 1e-12);
    const double reach = std::clamp(share, 0.0, 1.0) * input.hold_station;
    position.held = reach < position.front;
    position.front = std::min(position.front, reach);
  }
  position.d1 = depth_of(toe, hydraulics::energy_between(nodes, position.front));
  if (position.swept_out) position.front = input.basin_length;
  return position;
}

}  // namespace

JumpPosition jump_position(const JumpPositionInput& input, Working* working) {
  return input.tailwater_depth >= input.toe.y2 ? on_chute(input, working) : on_apron(input);
}

}  // namespace quell::site
