// Area, surface width, wetted perimeter and first moment of the sections as methods, and the sections whose width follows a
// power of the depth: rectangle, parabola, triangle.
//
// Depths y are vertical, m. The first moment A ybar is the area times the depth of its centroid below the surface, m3.
#pragma once

#include "quell/hydraulics/section.h"

namespace quell::hydraulics {

/// Section of surface width T = Tr (y/yr)^(a-1): a = 1 rectangle, 1.5 parabola, 2 triangle (a >= 1).
struct PowerSection {
  double a;         ///< exponent, >= 1
  double Tr;        ///< m, > 0: surface width at the depth yr
  double yr = 1.0;  ///< m, > 0
  double area(double y) const { return top_width(y) * y / a; }
  double top_width(double y) const;
  double first_moment(double y) const { return area(y) * y / (a + 1.0); }
};

/// Depth (m) at which Q^2 T = g A^3, in closed form; discharge m3/s, > 0.
Outcome<double> critical_depth(const PowerSection& section, double discharge);

namespace record {
extern const Method section_geometry_trapezoidal;
extern const Method section_geometry_circular;
extern const Method section_geometry_power_law;
extern const Method critical_depth_triangular;
extern const Method critical_depth_power_law;
}  // namespace record

}  // namespace quell::hydraulics
