// The circular bucket at the foot of a chute: its arc from the chute to the lip, as floor and as outline of the lip.
#pragma once

#include "quell/dissipators/parts.h"

namespace quell::dissipators {

/// Arc of radius R that leaves the chute as its tangent and ends at the lip angle. x = 0 where the line of the chute meets the
/// level of the invert, z = 0 at the invert.
struct BucketArc {
  FloorLine floor;      ///< from the end of the chute over the invert to the lip
  double invert_x;      ///< m
  double lip_x, lip_z;  ///< m
};
BucketArc bucket_arc(double radius, double chute_slope, double lip_angle);

/// Sets floor and length of the structure and adds the lip as an element.
void set_bucket(Structure& structure, const BucketArc& arc, double radius, double width);

}  // namespace quell::dissipators
