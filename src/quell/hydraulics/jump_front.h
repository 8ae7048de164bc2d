// The front of a jump that has climbed the chute: how high, for a given depth of tailwater.
//
// Horizontal momentum from the front, z1 above the apron on a face of slope theta, to the end of the jump on the apron. The
// curve at the foot of the face turns the jet, so that its whole momentum enters; the face carries the pressure of the water
// between front and foot, with a straight surface from the front to the end of the jump. At z1 = 0 it is Belanger's equation.
#pragma once

#include "quell/base/method.h"

namespace quell::hydraulics {

struct JumpFrontInput {
  double q;      ///< unit discharge, m2/s, > 0
  double d1;     ///< depth normal to the face at the front, m, > 0
  double theta;  ///< angle of the face, rad, 0 < theta < pi/2
  double z1;     ///< height of the front above the apron, m, >= 0
  double Lj;     ///< length of the jump, horizontal, m, > 0
  double T;      ///< depth of tailwater above the apron, m, > 0
};
/// Momentum that arrives, and pressure of the face, less pressure and momentum at the end of the jump, over the unit weight of
/// water and per unit width (m2): zero where the front stands at z1, negative where the tailwater pushes it higher.
double jump_front_excess(const JumpFrontInput& input) noexcept;

/// T (m) that holds the front at z1; `input.T` is not used. No answer where the flow is not supercritical.
Outcome<double> tailwater_for_front(JumpFrontInput input);

namespace record {
extern const Method jump_front_on_chute;
}  // namespace record

}  // namespace quell::hydraulics
