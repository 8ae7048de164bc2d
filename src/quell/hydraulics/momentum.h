// The momentum function as methods: force and momentum of the flow over the unit weight of water, M = Q^2/(g A) + A ybar, m3.
// Momentum coefficient 1, horizontal bed. It is least at critical depth, and equal before and after a jump.
#pragma once

#include "quell/hydraulics/section.h"

namespace quell::hydraulics::record {

extern const Method momentum_function_rectangular;
extern const Method momentum_function_trapezoidal;
extern const Method momentum_function_circular;

}  // namespace quell::hydraulics::record
