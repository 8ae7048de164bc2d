// The state of a flow at one section: Froude number, depth for a Froude number, specific energy.
//
// Energy coefficient 1, hydrostatic pressure, depths y vertical. Exact under these assumptions.
#pragma once

#include "quell/hydraulics/section.h"

namespace quell::hydraulics {

struct SectionFlow {
  double Q;  ///< discharge, m3/s, > 0
  double A;  ///< area, m2, > 0
  double T;  ///< surface width, m, > 0
};
/// F = V/sqrt(g A/T): with the hydraulic depth A/T, so that F = 1 at critical depth in any section.
double froude_number(const SectionFlow& flow) noexcept;

struct UnitFlow {
  double q;  ///< discharge per unit width, m2/s, > 0
  double F;  ///< Froude number, > 0
};
/// y (m) = (q^2/(g F^2))^(1/3): the depth at which q flows with F in a rectangle.
double depth_at_froude_number(const UnitFlow& flow) noexcept;

struct UniformSlope {
  double S;   ///< bed slope, > 0
  double Sc;  ///< slope at which the same discharge flows at critical depth, > 0
};
/// F = sqrt(S/Sc) of uniform flow in a wide channel with a constant Chezy coefficient. With Manning's n it is an approximation.
double froude_number_on_slope(const UniformSlope& slope) noexcept;

struct StateOfFlow {
  double y;  ///< depth, m, > 0
  double V;  ///< mean velocity, m/s
};
/// E (m) = y + V^2/(2 g), above the bed.
double specific_energy(const StateOfFlow& flow) noexcept;

namespace record {
extern const Method froude_number_section;
extern const Method depth_from_froude_number;
extern const Method froude_number_from_slopes;
extern const Method specific_energy;
}  // namespace record

}  // namespace quell::hydraulics
