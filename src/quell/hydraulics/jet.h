// Jets thrown by flip buckets: where they land, what they press on the bucket, and how deep they scour.
//
// Depths of scour are measured below the tailwater's surface. The formulas for it differ widely on field cases: use several.
#pragma once

#include "quell/base/method.h"

namespace quell::hydraulics {

struct JetThrowInput {
  double V;      ///< velocity at the lip, m/s, > 0
  double theta;  ///< lip angle above the horizontal, rad, 0 to 1.2
  double Y;      ///< lip above the surface that the jet hits, m, >= 0
};
/// X (m): horizontal throw without the resistance of air, hv sin 2theta + 2 cos theta sqrt(hv (hv sin^2 theta + Y)).
double jet_throw(const JetThrowInput& input) noexcept;

struct JetThrowDepthInput {
  double V, theta, Y;  ///< as above
  double d;            ///< depth at the lip, m, > 0
  double K;            ///< 1 in theory, 0.9 for prototype jets
};
/// X (m) from y = x tan theta - x^2/(4 K (d + hv) cos^2 theta).
double jet_throw_depth(const JetThrowDepthInput& input) noexcept;

struct BucketPressureInput {
  double V;   ///< m/s
  double R;   ///< m, > 0
  double d1;  ///< m
};
/// Pressure head (m) on the invert: (V^2/(g R) + 1) d1.
double bucket_pressure_head(const BucketPressureInput& input) noexcept;

struct ScourInput {
  double q;    ///< m2/s, > 0
  double H;    ///< fall from reservoir to tailwater, m, > 0
  double h;    ///< tailwater above the bed, m, > 0
  double d_m;  ///< grain or block size of the bed, m, > 0
};
/// Ds (m) = 1.90 H^0.225 q^0.54 (Veronese).
double scour_veronese(const ScourInput& input) noexcept;
/// Ds (m) = K q^x H^y h^0.15/(g^0.30 d_m^0.10), K = 6.42 - 3.10 H^0.10, x = 0.60 - H/300, y = 0.15 + H/200.
double scour_mason_arumugam(const ScourInput& input) noexcept;
/// Ds (m) = 3.27 q^0.60 H^0.05 h^0.15/(g^0.30 d_m^0.10).
double scour_mason_arumugam_constant(const ScourInput& input) noexcept;

namespace record {
extern const Method jet_throw;
extern const Method jet_throw_depth;
extern const Method bucket_pressure_head;
extern const Method scour_veronese;
extern const Method scour_mason_arumugam;
extern const Method scour_mason_arumugam_constant;
extern const Method scour_head_factor;
}  // namespace record

}  // namespace quell::hydraulics
