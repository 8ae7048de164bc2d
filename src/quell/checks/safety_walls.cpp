// The walls: earth and water on the empty basin, pulses on the full one, and a first look at whether an L-shaped wall stands.
#include <algorithm>
#include <cmath>

#include "quell/base/constants.h"
#include "quell/base/quantity_text.h"
#include "quell/checks/safety.h"
#include "quell/dissipators/parts.h"
#include "quell/hydraulics/basin_stability.h"

namespace quell::checks {

using dissipators::choice_note;
using dissipators::limit_finding;

namespace {

constexpr double rest_pressure = 0.5;
constexpr double moist_weight = 19.0e3, submerged_weight = 11.0e3;  ///< N/m3, usual fill
constexpr double friction = 0.577;                                  ///< tan 30 degrees
constexpr double base_share = 0.65;       ///< width of the base over the height of the wall: a first section
constexpr double wall_peak = 4.0 * 0.07;  ///< peak of the pressure on the wall over V1^2/2g, three to five times its rms
constexpr dissipators::Rule first_check{"practice", "usual fill, earth at rest, friction of 30 degrees: a first check",
                                        Provenance::common_practice};

/// Fill and ground water behind the wall, m above the apron.
struct Behind {
  double fill, water;
};
Behind behind_wall(const BasinView& view, const Safety& safety) {
  const double fill = view.site.ground.has_level ? std::min(view.wall_height, view.site.ground.ground_level - view.apron_level)
                                                 : view.wall_height;
  const double water = std::clamp(safety.flotation.groundwater_level - view.apron_level, 0.0, std::max(fill, 0.0));
  return {std::max(fill, 0.0), water};
}

}  // namespace

void judge_walls(const BasinView& view, Safety& safety) {
  auto& wall = safety.wall;
  wall.height = view.wall_height;
  wall.thickness = view.wall_thickness;
  double velocity = 0.0;
  for (const auto& state : view.states) velocity = std::max(velocity, state.toe->V1);
  wall.fluctuation = wall_peak * 0.5 * water_density * velocity * velocity;
  const auto [fill, water] = behind_wall(view, safety);
  if (!(fill > 0.0) || !(wall.height > 0.0)) return;
  const auto load = hydraulics::backfill_on_wall(
      {.h = fill, .hw = water, .K0 = rest_pressure, .gamma = moist_weight, .gamma_below = submerged_weight});
  const FindingMethod earth{&hydraulics::record::backfill_on_wall,
                            {fill, water, rest_pressure, moist_weight, submerged_weight}};
  wall.force = load.force;
  wall.moment = load.moment;
  wall.base = base_share * wall.height;
  const double gamma_c = view.site.slab.concrete_unit_weight;
  const double heel = std::max(0.0, wall.base - wall.thickness);
  const double stem = gamma_c * wall.thickness * wall.height;
  const double footing = gamma_c * wall.base * view.slab_thickness;
  const double soil = heel * (moist_weight * (fill - water) + (submerged_weight + water_unit_weight) * water);
  const double uplift = 0.5 * water_unit_weight * water * wall.base;
  const double normal = stem + footing + soil - uplift;
  // About the inner edge of the base; the uplift falls from the fill's side to nothing at the basin.
  const double resisting = stem * 0.5 * wall.thickness + footing * 0.5 * wall.base + soil * (wall.thickness + 0.5 * heel);
  const double driving = wall.moment + wall.force * view.slab_thickness + uplift * 2.0 / 3.0 * wall.base;
  wall.overturning = resisting / driving;
  wall.sliding = std::max(0.0, normal) * friction / wall.force;
  const double arm = normal > 0.0 ? (resisting - driving) / normal : 0.0;
  if (const auto bearing =
          hydraulics::bearing_pressure({.N = std::max(normal, 1.0), .e = 0.5 * wall.base - arm, .B = wall.base})) {
    wall.largest_bearing = bearing->largest;
    wall.smallest_bearing = bearing->smallest;
  }
  safety.findings.push_back(limit_finding(
      "walls.overturning", "Safety of the wall against overturning, free-standing, empty basin", wall.overturning,
      LimitSense::at_least, 1.5, dimension::none, Status::caution,
      "An L-shaped wall " + quantity_token(wall.base, dimension::length) + " wide at its base under " +
          quantity_token(wall.force, dimension::force) + " per metre; bearing up to " +
          quantity_token(wall.largest_bearing, dimension::pressure) + ".",
      "Preliminary: a structural engineer must design the walls. Widen the base, drain the fill, or tie wall and slab.",
      first_check));
  safety.findings.back().method = earth;
  safety.findings.push_back(limit_finding("walls.sliding", "Safety of the wall against sliding, without the slab as a strut",
                                          wall.sliding, LimitSense::at_least, 1.3, dimension::none, Status::caution,
                                          "The slab between the walls usually carries what friction does not.",
                                          "Preliminary: let the slab act as a strut, or key the base.", first_check));
  safety.findings.back().method = earth;
  safety.findings.push_back(
      choice_note("walls.fluctuation", "Peak pressure of the jump on a wall, local", wall.fluctuation, dimension::pressure,
                  "Four times an rms of 0.07 velocity heads: uncertain, over the wetted height of the roller.",
                  {"practice", "three to five times the rms", Provenance::common_practice}));
}

}  // namespace quell::checks
