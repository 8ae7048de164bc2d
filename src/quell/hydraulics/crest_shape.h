// Shape of the standard ogee crest downstream of its axis: profile and tangent point for four upstream faces.
//
// Origin at the highest point of the crest, x downstream, y downward, m. Hd is the design head (total head) that fixes the
// shape: x^n = K Hd^(n-1) y. The shapes are those of a deep approach, P/Hd of 1.33 and more. Source: Chow 1959, sec. 14-5;
// the inclined faces after Hydraulic Design Criteria sheets 111-7 to 111-9.
#pragma once

#include "quell/base/method.h"

namespace quell::hydraulics {

/// Upstream face: vertical or inclined, by its slope, vertical to horizontal.
enum class FaceSlope { vertical, slope_3_to_1, slope_3_to_2, slope_3_to_3 };

/// Constants of x^n = K Hd^(n-1) y.
struct ProfileConstants {
  double K;
  double n;
};
ProfileConstants profile_constants(FaceSlope face) noexcept;

struct CrestProfileInput {
  double x;   ///< m, >= 0
  double Hd;  ///< m, > 0
  FaceSlope face = FaceSlope::vertical;
};
/// y (m) of the downstream quadrant: x^1.85 = 2 Hd^0.85 y for the vertical face.
double crest_profile(const CrestProfileInput& input) noexcept;

struct TangentPoint {
  double x;           ///< m from the crest axis
  double y;           ///< m below the crest
  double arc_length;  ///< m along the profile from the crest axis
};
/// Where the profile runs into a chute of `slope` = tan(theta) > 0. The arc length is by quadrature, to 1e-10.
TangentPoint crest_tangent_point(double Hd, double slope, FaceSlope face = FaceSlope::vertical);

namespace record {
extern const Method crest_profile_ogee;
extern const Method crest_profile_ogee_3_to_1;
extern const Method crest_profile_ogee_3_to_2;
extern const Method crest_profile_ogee_3_to_3;
extern const Method crest_tangent_x;
extern const Method crest_tangent_x_3_to_1;
extern const Method crest_tangent_x_3_to_2;
extern const Method crest_tangent_x_3_to_3;
extern const Method crest_arc_length;
/// The one of the four for a face.
const Method& ogee_profile(FaceSlope face);
const Method& ogee_tangent_point(FaceSlope face);
}  // namespace record

}  // namespace quell::hydraulics
