// Differences, quotients and ratios that the checks judge by: definitions and no more, recorded so that a finding leads to the
// numbers it is made of. SI; levels in m of the project's datum.
#pragma once

#include "quell/base/method.h"

namespace quell::hydraulics::record {
extern const Method tailwater_margin;  ///< m = zw - za - T: depth of tailwater above the apron less the depth asked for
extern const Method tailwater_ratio;   ///< r = (zw - za)/y2, and S = r - 1, the submergence
extern const Method level_difference;  ///< h = za - zb
extern const Method energy_head_left;  ///< E = z0 - hL - za: energy level at the start, less what is lost, above the apron
extern const Method unit_discharge;    ///< q = Q/W
extern const Method mean_velocity;     ///< V = q/y
extern const Method crest_head_ratio;  ///< r = H/L: head on a crest over the length that its rating goes by
}  // namespace quell::hydraulics::record
