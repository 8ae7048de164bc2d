// Gradually varied supercritical flow with friction down a straight steep bed of linearly changing width.
//
// Integrated for the energy level H: dH/dx = -Sf, x along the bed, with the depth d at every step from
// H - z = d cos(theta) + q^2/(2 g d^2), q = Q/b(x), and Sf by Darcy-Weisbach with Colebrook's factor, R = b d/(b + 2 d).
// In this form energy cannot grow, and width changes need no extra term. Dormand and Prince's pair 5(4) with
// error control; between the steps a quartic through values, slopes and the pair's own middle.
#pragma once

#include <vector>

#include "quell/base/method.h"
#include "quell/base/outcome.h"

namespace quell::hydraulics {

/// A straight piece of chute, followed from x = 0 to `length` along the bed.
struct ChuteStretch {
  double discharge = 0.0;     ///< Q, m3/s
  double start_width = 0.0;   ///< b at x = 0, m
  double width_change = 0.0;  ///< db/dx, m per m
  double start_level = 0.0;   ///< bed level at x = 0, m
  double sine = 0.0;          ///< sin(theta)
  double cosine = 0.0;        ///< cos(theta)
  double ks = 0.0;            ///< m
  double length = 0.0;        ///< m
  /// Error of a step in the energy level, m; the depth is (F^2 - 1) cos(theta) times closer. The default keeps searches over
  /// discharge smooth; 1e-6 gives the depth to 1e-7 m and better on a chute, in a third of the time.
  double tolerance = 1e-9;
};

/// One accepted step: position, energy level, -Sf there.
struct EnergyNode {
  double x;
  double energy_level;
  double gradient;
  double bulge = 0.0;  ///< m, halfway from the node before: energy level less that of the cubic through values and slopes
};

/// -Sf at x for an energy level; no answer where the flow would no longer be supercritical (d above 0.98 d_c).
Outcome<double> energy_gradient(const ChuteStretch& stretch, double x, double energy_level) noexcept;

/// Appends the nodes from x = 0 (with `energy_level` there) to x = length. Error per step below the stretch's tolerance.
Outcome<void> integrate_energy(const ChuteStretch& stretch, double energy_level, std::vector<EnergyNode>& nodes);

/// Energy level at x between the nodes, of fourth order (within 1e-8 m at the default tolerance); the end values are held
/// outside.
double energy_between(const std::vector<EnergyNode>& nodes, double x) noexcept;

namespace record {
extern const Method chute_profile_darcy;
}  // namespace record

}  // namespace quell::hydraulics
