// Shape of the ogee crest upstream of its axis, in three published forms, and its outline for drawings.
//
// Origin at the highest point of the crest, y downward, m; xu is the distance upstream of the axis, m, >= 0. Hd is the design
// head, m, > 0. All three are shapes of a deep approach; on low crests the quadrant is shorter.
#pragma once

#include "quell/base/method.h"
#include "quell/hydraulics/crest_shape.h"

namespace quell::hydraulics {

struct QuadrantInput {
  double xu;  ///< m upstream of the axis, >= 0
  double Hd;  ///< m, > 0
};
/// y (m): arcs of 0.5 Hd, 0.2 Hd and 0.04 Hd, the last ending upright at 0.2818 Hd, vertical face. No answer beyond that.
Outcome<double> upstream_arcs(const QuadrantInput& input) noexcept;
/// y (m): ellipse with half axes 0.28 Hd and 0.165 Hd. No answer beyond 0.28 Hd.
Outcome<double> upstream_ellipse(const QuadrantInput& input) noexcept;
/// y (m): one equation, vertical face. No answer beyond 0.27 Hd.
Outcome<double> upstream_single_equation(const QuadrantInput& input) noexcept;

/// Inclination of the upstream face above the horizontal, rad: pi/2 where it is vertical.
double face_inclination(FaceSlope face) noexcept;

struct FaceTangent {
  double xu;          ///< m upstream of the axis
  double y;           ///< m below the crest
  double arc_length;  ///< m along the ellipse to the crest axis, to 1e-10
};
/// Where a face inclined by `inclination` (rad above the horizontal, 0 to pi/2) runs into the ellipse.
FaceTangent upstream_face_tangent(double Hd, double inclination);

/// Length of the upstream quadrant over Hd (three arcs), where the boundary layer starts.
inline constexpr double upstream_quadrant_length = 0.3342;

struct CrestPoint {
  double x;  ///< m from the axis, negative upstream
  double y;  ///< m below the crest
};
/// Fills `out` (two points and more) with the elliptical quadrant from the upstream face to the axis, for drawings.
void crest_upstream_outline(double Hd, FaceSlope face, std::span<CrestPoint> out) noexcept;
/// The same with the three arcs, vertical face.
void crest_upstream_arcs_outline(double Hd, std::span<CrestPoint> out) noexcept;

namespace record {
extern const Method upstream_arcs_radii;
extern const Method upstream_quadrant_arcs;
extern const Method upstream_quadrant_ellipse;
extern const Method upstream_quadrant_equation;
extern const Method upstream_tangent_ellipse;
extern const Method upstream_length_arcs;
extern const Method upstream_length_ellipse;
}  // namespace record

}  // namespace quell::hydraulics
