// Jumps in a widening basin: walls on rays, straight diverging walls, a sudden expansion. Rectangular sections, horizontal
// frictionless bed, F1 > 1. Widening lowers the sequent depth of all but weak jumps (rays: F1 > 2.26, sudden: F1 > 1.73).
#pragma once

#include "quell/base/method.h"
#include "quell/hydraulics/jump.h"

namespace quell::hydraulics {

struct RadialJumpInput {
  double y1;  ///< m, > 0
  double V1;  ///< m/s, > 0
  double r;   ///< r2/r1, radii of end and toe, which is also the ratio of the widths, >= 1
};
/// y2 (m) by momentum with a straight water surface pressing the walls between toe and end.
Outcome<double> sequent_depth_radial(const RadialJumpInput& input);

struct DivergingWalls {
  double b1;  ///< width at the toe, m, > 0
  double t;   ///< flare of each wall: lateral per longitudinal, >= 0
  double Lj;  ///< length of the jump, m, >= 0
};
/// r = 1 + 2 t Lj/b1: the walls are taken as rays, and Lj as the distance between the radii.
double radius_ratio(const DivergingWalls& walls) noexcept;

struct ExpansionInput {
  double y1;  ///< m, > 0
  double V1;  ///< m/s, > 0
  double B;   ///< b2/b1, >= 1
};
/// y2 (m) with the toe at a sudden expansion whose side faces are pressed by the depth y1.
Outcome<double> sequent_depth_expansion(const ExpansionInput& input);

/// y2 (m) = classical sequent depth over sqrt(B) (Herbrand 1973).
double sequent_depth_herbrand(const ExpansionInput& input) noexcept;

namespace record {
extern const Method sequent_depth_radial;
extern const Method sequent_depth_diverging;
extern const Method sequent_depth_expansion;
extern const Method sequent_depth_herbrand;
}  // namespace record

}  // namespace quell::hydraulics
