// Gates on a crest, partly open: discharge under radial and vertical gates, and the passage to free flow.
//
// H is the head from the energy level of the reservoir, m; G0 the least distance from the lip of the gate to the crest, m;
// b the width of the opening, m. Ratings of gates are good to about 10 %.
#pragma once

#include "quell/base/method.h"

namespace quell::hydraulics {

struct RadialGateInput {
  double C;   ///< discharge coefficient of this gate and seat, about 0.55 to 0.77: from its own chart or a model
  double G0;  ///< m, > 0
  double b;   ///< m, > 0
  double H;   ///< energy level above the centre of the opening, m, >= 0
};
/// Q (m3/s) = C G0 b sqrt(2 g H).
double radial_gate_discharge(const RadialGateInput& input) noexcept;

struct HeadDifferenceInput {
  double b;   ///< m, > 0
  double H;   ///< head above the crest (or gate seat), m
  double H1;  ///< head above the lip of the gate, m, 0 to H
  double Cd;  ///< 0.6; for vertical gates 0.6 to 0.65
};
/// Q (m3/s) = (2/3) sqrt(2g) Cd b (H^1.5 - H1^1.5).
double gate_discharge_by_heads(const HeadDifferenceInput& input) noexcept;

struct GateBlendInput {
  double orifice;  ///< discharge under the gate, m3/s
  double free;     ///< discharge of the free crest at the same level, m3/s
  double G0;       ///< m, >= 0
  double He;       ///< total head above the crest, m, > 0
};
/// Q (m3/s): under the gate for G0/He below 0.6, over the free crest above 0.75, straight between; never above the free crest.
double gate_or_free_discharge(const GateBlendInput& input) noexcept;

namespace record {
extern const Method gate_radial;
extern const Method gate_by_heads;
extern const Method gate_blend;
}  // namespace record

}  // namespace quell::hydraulics
