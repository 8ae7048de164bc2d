// Free overfall and straight drop: depth at the brink, shape and depth of the jet at its foot.
//
// q is the discharge per width, m2/s; yc = (q^2/g)^(1/3); h the height of the drop, m. Nappe aerated, jet onto a level apron.
#pragma once

#include "quell/base/method.h"

namespace quell::hydraulics {

/// Depth at the brink (m) of a level channel with subcritical approach, 0.715 yc, after Rouse; q > 0.
double brink_depth(double unit_discharge) noexcept;

struct SupercriticalBrinkInput {
  double y0;  ///< depth of approach, m, > 0
  double F0;  ///< Froude number of approach, >= 1
};
/// Depth at the brink (m) below supercritical approach, after Hager.
double brink_depth(const SupercriticalBrinkInput& input) noexcept;

struct DropInput {
  double q;  ///< m2/s, > 0
  double h;  ///< m, > 0
};
struct DropGeometry {
  double D;   ///< drop number q^2/(g h^3)
  double Ld;  ///< length of the drop, brink to the foot of the nappe, m
  double yp;  ///< depth of the pool behind the nappe, m
  double y1;  ///< depth at the foot, m
  double y2;  ///< sequent depth, m
};
/// Rand's fits.
DropGeometry straight_drop(const DropInput& input) noexcept;
/// Depth (m) at the foot by White's balance of momentum: about 13 % above Rand's at a drop number of 0.015.
double drop_depth_white(const DropInput& input) noexcept;

namespace record {
extern const Method brink_depth_subcritical;
extern const Method brink_depth_supercritical;
extern const Method drop_geometry_rand;
extern const Method drop_foot_depth_white;
}  // namespace record

}  // namespace quell::hydraulics
