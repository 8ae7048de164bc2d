#include "quell/dissipators/bucket_shape.h"

#include <cmath>

namespace quell::dissipators {

BucketArc bucket_arc(double radius, double chute_slope, double lip_angle) {
  constexpr int points = 24;
  const double chute_angle = std::atan(chute_slope);
  BucketArc arc{};
  arc.invert_x = radius * std::tan(chute_angle / 2.0);
  arc.lip_x = arc.invert_x + radius * std::sin(lip_angle);
  arc.lip_z = radius * (1.0 - std::cos(lip_angle));
  for (int i = 0; i <= points; ++i) {
    const double angle = -chute_angle + (chute_angle + lip_angle) * i / points;
    arc.floor.push_back({arc.invert_x + radius * std::sin(angle), radius * (1.0 - std::cos(angle))});
  }
  return arc;
}

void set_bucket(Structure& structure, const BucketArc& arc, double radius, double width) {
  structure.length = arc.lip_x;
  structure.floor = arc.floor;
  structure.invert_radius = radius;
  structure.end_sill_height = arc.lip_z;
  structure.end_width = width;
  Element lip = element_of({1, width, 0.0, 0.0}, width, arc.lip_z);
  lip.kind = "bucket_lip";
  lip.name = "Bucket and lip";
  lip.length = arc.lip_x - arc.invert_x;
  lip.station = arc.invert_x;
  // The body between the arc and its chord's foot: as many points of the arc as an outline holds.
  const std::size_t first = arc.floor.size() / 2;
  const std::size_t step = 2;
  lip.profile.push_back({arc.invert_x, 0.0});
  for (std::size_t i = first; i + 1 < arc.floor.size() && lip.profile.size() < 13; i += step)
    if (arc.floor[i].x > arc.invert_x + 1e-9) lip.profile.push_back(arc.floor[i]);
  lip.profile.push_back({arc.lip_x, arc.lip_z});
  lip.profile.push_back({arc.lip_x, 0.0});
  lip.remark = "circular arc, tangent to the chute; level lip edge";
  structure.elements.push_back(lip);
}

}  // namespace quell::dissipators
