#include "quell/checks/wall_section.h"

#include <algorithm>
#include <limits>

#include "quell/base/constants.h"
#include "quell/hydraulics/wall_loads.h"

namespace quell::checks {
namespace {

constexpr double overturning_needed = 1.5;
constexpr double never = std::numeric_limits<double>::infinity();

}  // namespace

WallSection::WallSection(const BasinView& view, double base)
    : walls_(view.site.walls),
      ground_known_(view.site.ground.has_level),
      height_(view.wall_height),
      thickness_(view.wall_thickness),
      base_(std::max(base, view.wall_thickness)),
      slab_(view.slab_thickness),
      fill_(std::clamp(view.site.ground.has_level ? view.site.ground.ground_level - view.apron_level : height_, 0.0, height_)),
      stem_(view.site.slab.concrete_unit_weight * thickness_ * height_),
      footing_(view.site.slab.concrete_unit_weight * base_ * slab_) {}

hydraulics::WaterForce WallSection::stem_load(double outside, double inside, const WallState& state, bool inward) const {
  const double height = fill_for(inward);
  const double table = std::min(outside, height);
  const auto fill = hydraulics::backfill_on_wall({.h = height,
                                                  .hw = table,
                                                  .K0 = walls_.earth_pressure,
                                                  .gamma = walls_.moist_weight,
                                                  .gamma_below = walls_.submerged_weight});
  // A pulse below the mean takes no more from the wall than the water that stands there.
  const double wet = inward ? std::max(0.0, inside - state.pulse / water_unit_weight) : inside;
  const auto free_water = hydraulics::water_on_wall(outside, table);
  const auto water = hydraulics::water_on_wall(wet, 0.0);
  const double way = inward ? 1.0 : -1.0;
  hydraulics::WaterForce load{.force = way * (fill.force + free_water.force - water.force),
                              .moment = way * (fill.moment + free_water.moment - water.moment)};
  const auto add = [&load](const hydraulics::WaterForce& more) {
    load.force += more.force;
    load.moment += more.moment;
  };
  if (!inward) add(hydraulics::even_pressure_on_wall(state.pulse, inside));
  if (!(state.kh > 0.0)) return load;
  if (inward)
    add(hydraulics::earthquake_in_fill(
        {.dK = state.dK, .h = fill_, .hw = table, .gamma = walls_.moist_weight, .gamma_below = walls_.submerged_weight}));
  add(hydraulics::earthquake_in_water(state.kh, inside));
  add({.force = state.kh * stem_, .moment = 0.5 * state.kh * stem_ * height_});
  return load;
}

hydraulics::WaterForce WallSection::edge_load(const WallState& state, bool inward) const {
  const double outside = std::clamp(state.outside, 0.0, height_);
  const double fill = fill_for(inward);
  const double table = std::min(outside, fill);
  const double below = outside > 0.0 ? walls_.submerged_weight : walls_.moist_weight;
  const auto water = [this](double level) { return water_unit_weight * std::clamp(level, 0.0, height_ + slab_); };
  const double earth = walls_.moist_weight * (fill - table) + walls_.submerged_weight * table;
  const double earth_below = fill > 0.0 ? earth + below * slab_ : 0.0;
  const double top = walls_.earth_pressure * earth + water(state.outside) - water(state.inside);
  const double bottom = walls_.earth_pressure * earth_below + water(state.outside + slab_) - water(state.inside + slab_);
  const double way = inward ? 1.0 : -1.0;
  // What holds the edge is not counted on: trenches and voids beside it are usual.
  if (way * (top + bottom) <= 0.0) return {};
  // A trapezoid: about the underside s^2/6 (2 top + bottom), less the force times s about the floor.
  const double force = 0.5 * slab_ * (top + bottom);
  const double about_underside = slab_ * slab_ / 6.0 * (2.0 * top + bottom);
  return {.force = way * force, .moment = way * (about_underside - slab_ * force)};
}

/// Weight of earth and water on the heel, N: uplift is counted below the base.
double WallSection::on_heel(double outside, bool inward) const {
  const double fill = fill_for(inward);
  const double table = std::min(outside, fill);
  return (base_ - thickness_) * (walls_.moist_weight * (fill - table) + (walls_.submerged_weight + water_unit_weight) * table +
                                 water_unit_weight * (outside - table));
}

WallLoadCase WallSection::under(const CaseKind& kind, const WallState& state, bool inward) const {
  const double outside = std::clamp(state.outside, 0.0, height_);
  const double inside = std::clamp(state.inside, 0.0, height_);
  const auto load = stem_load(outside, inside, state, inward);
  WallLoadCase result{.id = kind.id,
                      .name = kind.name,
                      .is_inward = inward,
                      .discharge = state.discharge,
                      .outside = outside,
                      .inside = inside,
                      .pulse = state.pulse,
                      .force = load.force,
                      .moment = load.moment,
                      .overturning = never,
                      .sliding = never,
                      .overturning_needed = overturning_needed,
                      .sliding_needed = kind.sliding_needed};
  if (!(load.force > 0.0)) return result;
  const double heel = base_ - thickness_;
  const double soil = on_heel(outside, inward);
  const auto edge = edge_load(state, inward);
  // Base and soil move with the ground too; the stem's own inertia is in its load.
  const double moved = state.kh * (footing_ + soil);
  const double turned = state.kh * (0.5 * soil * fill_for(inward) - 0.5 * footing_ * slab_);
  const double lift_outside = water_unit_weight * std::clamp(state.outside + slab_, 0.0, height_ + slab_);
  const double lift_inside = water_unit_weight * std::clamp(state.inside + slab_, 0.0, height_ + slab_);
  result.balance = {.F = load.force + edge.force + moved,
                    .M = load.moment + edge.moment + turned,
                    .s = slab_,
                    .W1 = stem_,
                    .a1 = inward ? 0.5 * thickness_ : base_ - 0.5 * thickness_,
                    .W3 = soil,
                    .a3 = inward ? thickness_ + 0.5 * heel : 0.5 * heel,
                    .W2 = footing_,
                    .B = base_,
                    .u1 = inward ? lift_inside : lift_outside,
                    .u2 = inward ? lift_outside : lift_inside,
                    .phi = walls_.base_friction};
  const auto stability = hydraulics::wall_stability(result.balance);
  result.leaves_base = true;
  result.overturning = stability ? stability->overturning : 0.0;
  result.sliding = stability ? stability->sliding : 0.0;
  if (!stability) return result;
  result.normal = stability->normal;
  result.eccentricity = stability->eccentricity;
  if (const auto bearing = hydraulics::bearing_pressure({.N = stability->normal, .e = stability->eccentricity, .B = base_})) {
    result.leaves_base = false;
    result.largest_bearing = bearing->largest;
    result.smallest_bearing = bearing->smallest;
  }
  return result;
}

}  // namespace quell::checks
