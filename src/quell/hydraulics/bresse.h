// Gradually varied flow in a wide channel in closed form: Bresse's function.
//
// Wide rectangle with a constant Chezy coefficient, so that dy/dx = S0 (1 - (yn/y)^3)/(1 - (yc/y)^3), x downstream. Exact under
// these assumptions; with Manning's formula in place of Chezy's the distances differ by some 5 %.
#pragma once

#include "quell/base/method.h"

namespace quell::hydraulics {

/// Phi(u) = ln((u^2 + u + 1)/(u - 1)^2)/6 - atan(sqrt(3)/(2 u + 1))/sqrt(3): minus the integral of du/(u^3 - 1); u > 0, not 1.
double bresse_function(double u) noexcept;

struct BresseInput {
  double bed_slope;  ///< S0, > 0
  double yn;         ///< normal depth, m, > 0
  double yc;         ///< critical depth, m, > 0
  double y1;         ///< depth at the start, m, > 0
  double y2;         ///< depth at the end, m, > 0, on the same side of yn
};
/// Distance (m, downstream positive) over which the depth changes from y1 to y2.
Outcome<double> bresse_distance(const BresseInput& input);

namespace record {
extern const Method channel_profile_bresse;
}  // namespace record

}  // namespace quell::hydraulics
