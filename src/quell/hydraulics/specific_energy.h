// Specific energy over the bed, Froude numbers of sections that are no rectangle, and the two depths of one energy.
//
// E (m) = y + Q^2/(2 g A^2) with y vertical, energy coefficient 1, bed slope below about 0.1. F is formed with the hydraulic
// depth A/T, so that F = 1 at critical depth in every section.
#pragma once

#include <cmath>

#include "quell/hydraulics/section.h"

namespace quell::hydraulics {

/// E (m) of a discharge (m3/s, > 0) at a depth (m, > 0) in any section.
template <class Section>
double specific_energy(const Section& section, double discharge, double depth) {
  const double velocity = discharge / section.area(depth);
  return depth + velocity * velocity / (2.0 * gravity);
}

/// F = V/sqrt(g A/T) of a discharge (m3/s, > 0) at a depth (m, > 0) in any section.
template <class Section>
double froude_number(const Section& section, double discharge, double depth) {
  const double area = section.area(depth);
  return discharge / area / std::sqrt(gravity * area / section.top_width(depth));
}

struct AlternateDepths {
  double subcritical;    ///< m
  double supercritical;  ///< m
};
/// The depths at which q (m2/s, > 0) flows with the energy head E (m, > 0) in a rectangular section; equal at E = 1.5 yc, no
/// answer below. Exact.
Outcome<AlternateDepths> alternate_depths(double q, double E);

namespace record {
extern const Method specific_energy_rectangular;
extern const Method specific_energy_trapezoidal;
extern const Method specific_energy_circular;
extern const Method froude_number_trapezoidal;
extern const Method froude_number_circular;
extern const Method alternate_depths_rectangular;
}  // namespace record

}  // namespace quell::hydraulics
