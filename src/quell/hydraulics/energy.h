// Depth from energy, in closed form: the supercritical root on a horizontal or a steep bed.
//
// On a bed at angle theta the pressure head on the bed is d cos(theta), with d the depth normal to the bed, so that the energy
// head above the bed is E = d cos(theta) + q^2/(2 g d^2) (energy coefficient 1).
#pragma once

#include "quell/base/constants.h"
#include "quell/base/method.h"

namespace quell::hydraulics {

struct EnergyInput {
  double q;             ///< m2/s, > 0
  double E;             ///< energy head above the bed, m
  double cosine = 1.0;  ///< cos(theta), in (0, 1]
};
/// Supercritical depth d (m, normal to the bed). No answer below the least energy for q. Allocates nothing.
Outcome<double> supercritical_depth(const EnergyInput& input) noexcept;

/// Least energy head (m) that carries q on a bed of cos(theta): 1.5 d_c cos(theta).
double least_energy(double q, double cosine = 1.0) noexcept;

/// d_c (m) = (q^2/(g cos(theta)))^(1/3), normal to the bed.
double critical_depth_on_slope(double q, double cosine) noexcept;

namespace record {
extern const Method depth_from_energy;
extern const Method depth_from_energy_on_slope;
extern const Method critical_depth_steep;
}  // namespace record

}  // namespace quell::hydraulics
