// The concave curve between chute and apron: least radius by several rules, and the pressure on its bed.
//
// The pressure that a curve may add is given by the user: published allowances run from 100 to 1000 lb/ft2 (4.8 to 48 kPa).
#pragma once

#include "quell/base/constants.h"
#include "quell/base/method.h"
#include "quell/base/outcome.h"

namespace quell::hydraulics {

struct CurvePressureInput {
  double q;  ///< m2/s, > 0
  double V;  ///< m/s, > 0
  double p;  ///< pressure that the curve may add, Pa, > 0
};
/// R (m) = rho q V/p.
double invert_radius_by_pressure(const CurvePressureInput& input) noexcept;

struct TotalPressureInput {
  double d;   ///< m, > 0
  double V;   ///< m/s, > 0
  double PT;  ///< pressure allowed on the bed, Pa, above gamma_w d
};
/// R (m) = rho d V^2/(PT - gamma_w d). No answer where the depth alone presses more than PT.
Outcome<double> invert_radius_by_total_pressure(const TotalPressureInput& input) noexcept;

struct CurveDepthInput {
  double d;      ///< depth at the toe, m, > 0
  double theta;  ///< angle of the face above the curve, rad
  bool ogee;     ///< the face is that of an ogee crest, without a chute between
};
/// R (m): 5 d at the toe of an ogee and of chutes of 45 degrees and steeper, 10 d on flatter chutes.
double invert_radius_by_depth(const CurveDepthInput& input) noexcept;

struct CurvedBedInput {
  double d;    ///< m
  double V;    ///< m/s
  double R;    ///< m, > 0
  double phi;  ///< angle of the bed at the point, rad; 0 at the lowest point
};
/// Pressure head on the bed (m): d cos(phi) + d V^2/(g R).
double curved_bed_pressure_head(const CurvedBedInput& input) noexcept;

namespace record {
extern const Method invert_radius_pressure;
extern const Method invert_radius_total_pressure;
extern const Method invert_radius_depth;
extern const Method curved_bed_pressure;
}  // namespace record

}  // namespace quell::hydraulics
