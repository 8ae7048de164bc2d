#include "quell/site/chute_air.h"

#include <algorithm>

#include "quell/hydraulics/aerated_flow.h"
#include "quell/hydraulics/cavitation.h"
#include "quell/hydraulics/self_aeration.h"
#include "quell/hydraulics/stepped_chute.h"

namespace quell::site {
namespace {

/// Mean air content at a section, `below` m along the bed from where air enters.
double smooth_air(const ChutePoint& point, double below) {
  const auto content = hydraulics::developing_air({.q = point.velocity * point.depth,
                                                   .theta = point.slope_angle,
                                                   .Ce = hydraulics::equilibrium_air(point.slope_angle),
                                                   .x = below});
  return content ? *content : 0.0;
}

double stepped_air(const Site& site, const ChutePoint& point) {
  const double mixture = hydraulics::stepped_uniform_flow(
                             {.q = point.velocity * point.depth, .s = site.chute.step_height, .phi = point.slope_angle})
                             .mixture;
  return std::clamp(1.0 - point.depth / mixture, 0.0, 0.95);
}

}  // namespace

void add_air_and_cavitation(const Site& site, const ChuteFlow& flow, std::span<ChutePoint> profile) {
  const double inception = flow.critical_point_path();
  for (auto& point : profile) {
    const bool aerated = inception >= 0.0 && point.path > inception;
    if (aerated)
      point.air_content = site.chute.is_stepped ? stepped_air(site, point) : smooth_air(point, point.path - inception);
    point.bulked_depth = hydraulics::bulked_depth({.d = point.depth, .C = point.air_content});
    point.cavitation_index = hydraulics::chute_cavitation_index({.V = point.velocity,
                                                                 .d = point.depth,
                                                                 .theta = point.slope_angle,
                                                                 .z = site.project.altitude,
                                                                 .T = site.project.water_temperature});
  }
}

}  // namespace quell::site
