// Most efficient sections: the shape of a given area with the least wetted perimeter, the fillings of a circle with the
// greatest velocity and discharge, and the size of a trapezoid from its area and perimeter.
//
// Geometry: exact, independent of the law of friction except for the circle's greatest discharge.
#pragma once

#include "quell/hydraulics/section.h"

namespace quell::hydraulics {

struct BestSection {
  double y;  ///< depth, m
  double b;  ///< bottom width, m; zero for a triangle
  double P;  ///< wetted perimeter, m
};
/// Rectangle of area A (m2, > 0): twice as wide as deep.
BestSection best_rectangle(double A) noexcept;
/// Trapezoid of area A with the given side slope m (>= 0): the half circle on the surface touches bed and sides.
BestSection best_trapezoid(double A, double m) noexcept;
/// Triangle of area A: sides at 45 degrees.
BestSection best_triangle(double A) noexcept;

/// Depth (m) at which a circle of diameter D (m, > 0) has the greatest hydraulic radius, and so the greatest velocity: 0.8128
/// D.
double fullest_velocity_depth(double D);

/// Depth (m) at which a circle carries most when V ~ R^p: p = 1/2 (Chezy) 0.950 D, p = 2/3 (Manning) 0.938 D. 0 < p <= 2.
Outcome<double> fullest_discharge_depth(double D, double p);

struct SectionSize {
  double A;  ///< area, m2, > 0
  double P;  ///< wetted perimeter, m, > 0
  double m;  ///< side slope, horizontal to 1 vertical, >= 0
};
/// Bottom width and depth of the trapezoid with this area, perimeter and side slope: the wider and shallower of the two. No
/// answer where the perimeter is below the least that holds the area.
Outcome<BestSection> trapezoid_of(const SectionSize& size) noexcept;

namespace record {
extern const Method best_rectangle;
extern const Method best_triangle;
extern const Method best_trapezoid;
extern const Method best_semicircle;
extern const Method fullest_velocity;
extern const Method fullest_discharge;
extern const Method trapezoid_size;
}  // namespace record

}  // namespace quell::hydraulics
