// Uplift below the floor on soil: Khosla's key points beside the creep of Lane and Bligh, and the slab at the toe without flow.
#include <algorithm>

#include "quell/base/quantity_text.h"
#include "quell/checks/safety.h"
#include "quell/dissipators/parts.h"
#include "quell/hydraulics/slab_uplift.h"

namespace quell::checks {

using dissipators::limit_finding;

namespace {

/// The floor from the upstream face to the end of the basin, with its cutoffs.
struct Floor {
  double length, toe, slab;               ///< m; the toe from the upstream face
  std::array<double, 3> distance, depth;  ///< upstream, middle, downstream; depth below the underside
  double slope, slope_length;
};

Floor floor_of(const BasinView& view, const Seepage& seepage) {
  const auto& foundation = view.site.foundation;
  const double length = seepage.horizontal;
  const double given = foundation.middle_cutoff_distance;
  const double middle = given > 0.0 && given < length ? given : 0.5 * length;
  return {.length = length,
          .toe = length - view.structure.length,
          .slab = view.slab_thickness,
          .distance = {0.0, middle, length},
          .depth = {foundation.upstream_cutoff, foundation.middle_cutoff, foundation.downstream_cutoff},
          .slope = foundation.underside_slope,
          .slope_length = foundation.underside_slope_length};
}

/// The crest's embedment is not known and does not count: only below the basin has the floor a thickness.
hydraulics::FloorCutoffs khosla_input(const Floor& floor) {
  hydraulics::FloorCutoffs input{.b = floor.length,
                                 .d = {},
                                 .t = {},
                                 .middle = floor.distance[1],
                                 .slope = floor.slope,
                                 .slope_length = floor.slope_length};
  for (std::size_t i = 0; i < 3; ++i) {
    if (!(floor.depth[i] > 0.0)) continue;
    input.t[i] = floor.distance[i] > floor.toe ? floor.slab : 0.0;
    input.d[i] = floor.depth[i] + input.t[i];
  }
  return input;
}

/// Share left by creep after `vertical` m along cutoffs and `x` m of floor, which count `weight` each.
double creep_share(const Floor& floor, double vertical, double x, double weight) {
  const double total = 2.0 * (floor.depth[0] + floor.depth[1] + floor.depth[2]) + weight * floor.length + floor.slab;
  return std::clamp(1.0 - (vertical + weight * x) / total, 0.0, 1.0);
}

void set_creep(const Floor& floor, double vertical, UpliftPoint& point) {
  point.lane = creep_share(floor, vertical, point.distance, 1.0 / 3.0);
  point.bligh = creep_share(floor, vertical, point.distance, 1.0);
}

/// Vertical creep before the floor `x` m from the upstream face.
double vertical_before(const Floor& floor, double x) {
  double vertical = 0.0;
  for (std::size_t i = 0; i < 3; ++i)
    if (floor.distance[i] < x || i == 0) vertical += 2.0 * floor.depth[i];
  return vertical;
}

void add_cutoff(const Floor& floor, const hydraulics::CutoffPressures& cutoff, std::size_t index,
                std::vector<UpliftPoint>& points) {
  static constexpr std::string_view names[] = {"upstream", "middle", "downstream"};
  double vertical = 0.0;
  for (std::size_t i = 0; i < index; ++i) vertical += 2.0 * floor.depth[i];
  const auto add = [&](char name, double hydraulics::KeyPressures::* at, double more) {
    UpliftPoint point{.cutoff = names[index], .point = name, .distance = cutoff.distance};
    point.alone = cutoff.alone.*at;
    point.thickness = cutoff.thickness.*at;
    point.interference = cutoff.interference.*at;
    point.slope = cutoff.slope.*at;
    point.khosla = cutoff.final.*at;
    set_creep(floor, vertical + more, point);
    points.push_back(point);
  };
  add('E', &hydraulics::KeyPressures::E, 0.0);
  add('D', &hydraulics::KeyPressures::D, floor.depth[index]);
  // Behind the last cutoff stands the river, past the end face of the slab.
  add('C', &hydraulics::KeyPressures::C, 2.0 * floor.depth[index] + (index == 2 ? floor.slab : 0.0));
}

UpliftPoint toe_point(const Floor& floor, const Seepage& seepage) {
  UpliftPoint toe{.cutoff = "toe", .distance = floor.toe};
  toe.khosla = khosla_share_at(seepage, floor.toe);
  set_creep(floor, vertical_before(floor, floor.toe), toe);
  return toe;
}

Finding uplift_finding(const BasinView& view, const Seepage& seepage, const UpliftPoint& toe) {
  const auto head = [&](double share) { return quantity_token(seepage.no_flow_head * share, dimension::length); };
  return limit_finding("foundation.uplift", "Thickness of the slab at the toe on soil, no flow", view.slab_thickness,
                       LimitSense::at_least, seepage.toe_thickness, dimension::length, Status::caution,
                       "Reservoir full and no flow, " + head(1.0) + " between the pools, drains failed: below the toe " +
                           head(toe.khosla) + " are left by Khosla, " + head(toe.lane) + " by Lane's creep and " +
                           head(toe.bligh) + " by Bligh's; the largest counts. With the drains working " +
                           quantity_token(seepage.toe_thickness_drained, dimension::length) +
                           " would do. Anchors are not credited in soil.",
                       "Thicken the slab, deepen the upstream cutoff, or drain below the floor.",
                       {"khosla_1936", "independent variables, beside creep; corrections recalled", Provenance::memory});
}

}  // namespace

double khosla_share_at(const Seepage& seepage, double distance) {
  return seepage.on_soil ? hydraulics::khosla_share(seepage.cutoffs, seepage.horizontal, distance) : 0.0;
}

double head_share_at(const BasinView& view, const Seepage& seepage, double distance) {
  const auto floor = floor_of(view, seepage);
  UpliftPoint point{.distance = distance};
  set_creep(floor, vertical_before(floor, distance), point);
  // On rock the seepage is not that of a porous ground: one rule stands for it.
  if (!seepage.on_soil) return point.lane;
  point.khosla = khosla_share_at(seepage, distance);
  return point.largest();
}

void judge_uplift(const BasinView& view, Safety& safety) {
  auto& seepage = safety.seepage;
  const auto floor = floor_of(view, seepage);
  seepage.cutoffs = hydraulics::khosla_floor(khosla_input(floor));
  const auto toe = toe_point(floor, seepage);
  bool placed = false;
  for (std::size_t i = 0; i < 3; ++i) {
    if (!placed && floor.distance[i] > floor.toe) {
      seepage.points.push_back(toe);
      placed = true;
    }
    if (seepage.cutoffs[i].exists) add_cutoff(floor, seepage.cutoffs[i], i, seepage.points);
  }
  seepage.toe_head = seepage.no_flow_head * toe.largest();
  const auto thickness = [&](double head) {
    return hydraulics::uplift_thickness({.hu = head, .y = 0.0, .hd = 0.0, .gamma_c = view.site.slab.concrete_unit_weight});
  };
  seepage.toe_thickness = thickness(seepage.toe_head);
  seepage.toe_thickness_drained = thickness((1.0 - view.site.slab.drain_efficiency) * seepage.toe_head);
  safety.findings.push_back(worked(hydraulics::record::uplift_thickness,
                                   {told(seepage.toe_head, "largest share left of the three, times the head, no flow"),
                                    told(0.0, "no flow: no water on the slab"), told(0.0, "no flow: no pulses"),
                                    given(view.site.slab.concrete_unit_weight, "slab.concrete_unit_weight")},
                                   uplift_finding(view, seepage, toe)));
  safety.findings.back().key = "foundation.upstream_cutoff";
}

}  // namespace quell::checks
