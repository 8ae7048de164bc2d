// Roll waves: whether uniform flow on a steep slope is unstable. Whether the waves grow high is a matter of length.
#pragma once

#include "quell/base/constants.h"
#include "quell/base/method.h"

namespace quell::hydraulics {

struct RollWaveInput {
  double V;      ///< m/s, > 0
  double d;      ///< depth normal to the bed, m, > 0
  double b;      ///< width of the rectangular channel, m, > 0
  double theta;  ///< rad
};
/// Vedernikov number with Manning's friction: 2/3 gamma F, gamma = b/(b + 2 d), F = V/sqrt(g d cos theta). Waves grow above 1.
double vedernikov_manning(const RollWaveInput& input) noexcept;

/// The same with a constant factor of Darcy or Chezy: gamma F/2.
double vedernikov_chezy(const RollWaveInput& input) noexcept;

namespace record {
extern const Method vedernikov_manning;
extern const Method vedernikov_chezy;
}  // namespace record

}  // namespace quell::hydraulics
