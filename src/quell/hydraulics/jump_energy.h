// What the jump does to the energy: efficiency and relative height of the classical jump by the Froude number alone, losses in
// other sections, the power that is turned into heat. Horizontal bed, energy coefficient 1, F1 > 1.
#pragma once

#include "quell/hydraulics/jump.h"
#include "quell/hydraulics/section.h"

namespace quell::hydraulics {

/// Y = y2/y1 = (sqrt(1 + 8 F1^2) - 1)/2, F1 > 1. Exact.
double sequent_ratio(double F1);

/// E2/E1 of the classical jump, F1 > 1: 1 at F1 = 1, falling with F1. Exact.
double jump_efficiency(double F1);

/// (E1 - E2)/E1, the rest; without the cancellation of 1 - E2/E1 near F1 = 1.
double relative_jump_loss(double F1);

/// (y2 - y1)/E1 of the classical jump, F1 > 1; 0.506395 at most, at F1 = 2.770240. Exact.
double relative_jump_height(double F1);

/// F2 = F1 Y^(-3/2), F1 > 1. Exact.
double froude_number_after_jump(double F1);

struct SectionLossInput {
  SequentDepths depths;  ///< m, > 0, y2 > y1; in a conduit that fills, y2 is the piezometric head
  double discharge;      ///< m3/s, > 0
};
/// E1 - E2 (m) between two depths of one discharge. No answer where it would be below zero.
Outcome<double> jump_energy_loss(const Trapezoid& section, const SectionLossInput& input);
Outcome<double> jump_energy_loss(const Circle& section, const SectionLossInput& input);

/// P (W) = rho g Q dE; Q m3/s, dE m.
double power_lost(double discharge, double loss);

namespace record {
extern const Method efficiency_rectangular;
extern const Method relative_height_rectangular;
extern const Method froude_number_after_jump;
extern const Method depths_over_critical;
extern const Method sequent_depth_sensitivity;
extern const Method energy_loss_trapezoidal;
extern const Method energy_loss_triangular;
extern const Method energy_loss_circular;
extern const Method power_lost;
}  // namespace record

}  // namespace quell::hydraulics
