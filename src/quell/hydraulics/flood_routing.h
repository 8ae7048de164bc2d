// From rain to flow: rain in excess of the losses, the flow that blocks of it make through a unit hydrograph and back, and the
// passage of a flood through a reach by Muskingum.
//
// The unit hydrograph U(t) is the direct flow of one unit depth of excess rain in one block, m3/s per m (m2/s); blocks add
// (linear, the same at all times). Ordinates stand one block apart.
#pragma once

#include <cstddef>
#include <span>

#include "quell/base/method.h"

namespace quell::hydraulics {

struct RainBlock {
  double P;   ///< depth of rain in the block, m
  double dt;  ///< its length, s
};
/// Rain in excess (m): P less an initial loss (m) and a constant loss rate phi (m/s), not below zero.
double excess_rain(const RainBlock& block, double initial_loss, double phi) noexcept;

/// Direct flow at ordinate i (m3/s): the sum of excess[k] U[i - k]. Ordinates before the first and after the last are zero.
double direct_flow(std::span<const double> excess, std::span<const double> unit_ordinates, std::size_t i) noexcept;

struct MuskingumReach {
  double K;   ///< storage time, s, > 0
  double x;   ///< weight of the inflow, 0 to 0.5
  double dt;  ///< step, s, > 0
};
struct MuskingumFlows {
  double I1;  ///< inflow at the start of the step
  double I2;  ///< inflow at its end
  double O1;  ///< outflow at its start
};
struct MuskingumWeights {
  double C0, C1, C2;  ///< of I2, I1 and O1; their sum is 1
};
MuskingumWeights muskingum_weights(const MuskingumReach& reach) noexcept;
/// O2: outflow at the end of the step.
double muskingum_step(const MuskingumReach& reach, const MuskingumFlows& flows) noexcept;

namespace record {
extern const Method excess_rain;
extern const Method direct_flow;
extern const Method unit_ordinate;
extern const Method muskingum_step;
}  // namespace record

}  // namespace quell::hydraulics
