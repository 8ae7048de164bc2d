// The drowned (submerged) jump: tailwater above y2 covers the jet where it leaves a gate or the foot of a chute.
//
// y1 (m) is the jet, V1 (m/s) its velocity, F1 = V1/sqrt(g y1) > 1; y3 stands above the jet at the toe, yt is the tailwater
// depth, y2 the sequent depth of the free jump; Sub = (yt - y2)/y2 >= 0. Rectangular section, horizontal frictionless bed,
// hydrostatic pressure at both ends: momentum gives y3 exactly (Govinda Rao and Rajaratnam 1963).
#pragma once

#include "quell/base/method.h"
#include "quell/hydraulics/jump.h"

namespace quell::hydraulics {

struct SubmergedInput {
  double y1;  ///< m, > 0
  double V1;  ///< m/s
  double yt;  ///< m, >= y2
};

struct SubmergedJump {
  double y2;   ///< sequent depth of the free jump, m
  double Sub;  ///< (yt - y2)/y2
  double y3;   ///< depth above the jet at the toe, m; y1 where Sub = 0
  double dE;   ///< y3 + V1^2/2g - yt - Vt^2/2g, m
};
/// No answer where yt is below y2: the jump is free or swept out.
Outcome<SubmergedJump> submerged_jump(const SubmergedInput& input);

/// L (m) = y2 (6.1 + 4.9 Sub) (Govinda Rao and Rajaratnam 1963).
double submerged_jump_length(double y2, double submergence) noexcept;

/// What a tailwater depth means for the jump on a smooth horizontal apron (read for F1 = 10).
enum class FrontPosition { on_apron = 0, moving = 1, swept_out = 2 };
/// At yt < 0.98 y2 the front begins to move, at 0.96 y2 the jump may leave the basin.
FrontPosition front_position(double yt, double y2) noexcept;

namespace record {
extern const Method submerged_jump;
extern const Method submerged_jump_length;
extern const Method front_position;
}  // namespace record

}  // namespace quell::hydraulics
