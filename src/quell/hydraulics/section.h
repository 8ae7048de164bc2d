// Cross-sections: area, surface width, wetted perimeter, first moment; critical and normal depth.
//
// Depths y are vertical, m. First moment A*ybar is the area times the depth of its centroid, m3.
#pragma once

#include "quell/base/constants.h"
#include "quell/base/method.h"

namespace quell::hydraulics {

/// Trapezoid of bottom width b (m, >= 0) and side slopes m horizontal to 1 vertical (>= 0); b and m not both zero.
/// m = 0 is a rectangle, b = 0 a triangle.
struct Trapezoid {
  double b;
  double m;
  double area(double y) const { return (b + m * y) * y; }
  double top_width(double y) const { return b + 2.0 * m * y; }
  double perimeter(double y) const;
  double first_moment(double y) const { return b * y * y / 2.0 + m * y * y * y / 3.0; }
};

/// Circle of diameter D, for 0 < y < D.
struct Circle {
  double D;
  double area(double y) const;
  double top_width(double y) const;
  double perimeter(double y) const;
  double first_moment(double y) const;
};

/// Q^2/(g A) + A ybar, m3: force and momentum over the unit weight of water. Coefficients 1, horizontal bed.
template <class Section>
double momentum_function(const Section& section, double discharge, double depth) {
  const double area = section.area(depth);
  return discharge * discharge / (gravity * area) + section.first_moment(depth);
}

/// yc = (q^2/g)^(1/3), m; q m2/s >= 0. Exact.
double critical_depth(double unit_discharge);

/// Depth at which Q^2 T = g A^3; Q > 0. To 1e-12 relative.
Outcome<double> critical_depth(const Trapezoid& section, double discharge);
Outcome<double> critical_depth(const Circle& section, double discharge);

struct NormalDepthInput {
  Trapezoid section;
  double bed_slope;  ///< S, > 0
  double manning_n;  ///< s/m^(1/3), > 0
  double discharge;  ///< m3/s, > 0
};
/// Depth of uniform flow by Manning's formula, to 1e-12 relative.
Outcome<double> normal_depth(const NormalDepthInput& input);

namespace record {
extern const Method critical_depth_rectangular;
extern const Method critical_depth_trapezoidal;
extern const Method critical_depth_circular;
extern const Method normal_depth_trapezoidal;
}  // namespace record

}  // namespace quell::hydraulics
