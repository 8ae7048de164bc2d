// Depths from specific energy in a rectangular channel, and what a hump or a narrowing does to the flow without loss.
//
// E = y + q^2/(2 g y^2) above the bed, energy coefficient 1. A flow with energy E can pass a hump only while E less the hump is
// not below 1.5 yc; beyond that the hump chokes it and the level upstream rises. Exact under these assumptions; real
// transitions lose 0.1 to 0.5 of the change of the velocity head.
#pragma once

#include "quell/hydraulics/energy.h"

namespace quell::hydraulics {

/// Subcritical depth y (m) of q (m2/s) with energy head E (m), on a horizontal bed. No answer below the least energy.
Outcome<double> subcritical_depth(double q, double E) noexcept;

/// The other depth (m) at which q has the energy it has at y: y'^2 = h (y + y'), h the velocity head at y. Its own inverse.
double alternate_depth(double q, double y) noexcept;

struct HumpInput {
  double y1;  ///< depth before the hump, m, > 0
  double V1;  ///< mean velocity before the hump, m/s, > 0
  double dz;  ///< height of the hump, m, >= 0
};
/// y2 (m) on the hump, on the side of critical depth on which the flow comes. A hump that chokes the flow is refused.
Outcome<double> depth_over_hump(const HumpInput& input) noexcept;

/// Highest hump (m) that passes the flow: y1 + V1^2/(2 g) - 1.5 yc.
double highest_hump(double y1, double V1) noexcept;

/// Least width (m) of a narrowing on a level bed that passes Q (m3/s) with energy head E (m): Q/(sqrt(g) (2 E/3)^1.5).
double least_width(double Q, double E) noexcept;

namespace record {
extern const Method depth_from_energy_subcritical;
extern const Method alternate_depth;
extern const Method depth_over_hump;
extern const Method highest_hump;
extern const Method least_width;
}  // namespace record

}  // namespace quell::hydraulics
