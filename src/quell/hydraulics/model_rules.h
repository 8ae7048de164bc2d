// When a small model of a jump may be believed: Reynolds number and depth.
//
// A Froude model keeps depths, lengths and Cp', but not air, bubbles, spray or frequencies: below Re1 = 1e5 friction lowers y2
// and shortens the jump, and surface tension matters below some 20 to 30 mm.
#pragma once

#include "quell/base/method.h"

namespace quell::hydraulics {

/// Re1 = q/nu of unit discharge q (m2/s).
double jump_reynolds_number(double q, double viscosity) noexcept;

struct ModelScaleInput {
  double q;   ///< of the prototype, m2/s, > 0
  double y1;  ///< of the prototype, m, > 0
};
/// Largest length scale (prototype over model) at which the model keeps Re1 >= 1e5 and y1 >= 0.03 m, same fluid:
/// min((q/(1e5 nu))^(2/3), y1/0.03).
double largest_model_scale(const ModelScaleInput& input) noexcept;

namespace record {
extern const Method jump_reynolds_number;
extern const Method largest_model_scale;
}  // namespace record

}  // namespace quell::hydraulics
