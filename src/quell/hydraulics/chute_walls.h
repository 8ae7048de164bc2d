// Height of a chute's walls, normal to the floor, by other rules than the freeboard of clear water. Waves and the rise in bends
// come on top.
#pragma once

#include "quell/hydraulics/aerated_flow.h"

namespace quell::hydraulics {

struct AeratedWallInput {
  double d;             ///< depth of the water alone, m, > 0
  double C;             ///< mean air content, in [0, 1)
  double margin = 1.0;  ///< above the mixture, m, 0.5 to 1.0
};
/// The larger of Y90 + margin and 1.2 Y90, Y90 = d/(1 - C). Common practice on high chutes.
double aerated_wall_height(const AeratedWallInput& input) noexcept;

/// d + 2 ft: rectangular channels with rapid flow.
constexpr double rapid_channel_wall_height(double d) noexcept {
  return d + 2.0 * 0.3048;
}

namespace record {
extern const Method aerated_wall_height;
extern const Method rapid_channel_wall_height;
}  // namespace record

}  // namespace quell::hydraulics
