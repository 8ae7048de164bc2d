// Side-channel trough: spatially varied flow of increasing discharge, and where its control lies.
//
// x runs along the trough from its upstream end, m; the discharge grows evenly from 0 to Q at x = L. The falling water brings
// no momentum along the trough, so that its fall energy is lost: below the trough start from its own critical depth. Depths are
// vertical, m; the flow in the trough is subcritical.
#pragma once

#include "quell/hydraulics/section.h"

namespace quell::hydraulics {

struct TroughGradientInput {
  double discharge;   ///< at the section, m3/s
  double lateral;     ///< inflow per length of trough, m2/s
  double area;        ///< m2, > 0
  double top_width;   ///< m, > 0
  double bed_slope;   ///< S0
  double loss_slope;  ///< Sf
};
/// dy/dx of spatially varied flow; no answer in critical flow.
Outcome<double> trough_depth_gradient(const TroughGradientInput& input) noexcept;

struct LevelTroughInput {
  double x;          ///< m, 0 to L
  double L;          ///< m, > 0
  double discharge;  ///< at x = L, m3/s, > 0
  double b;          ///< width, m, > 0
};
/// y (m) in a level frictionless rectangular trough with critical depth at x = L: 1.732 yc at the upstream end.
Outcome<double> level_trough_depth(const LevelTroughInput& input) noexcept;

struct TroughStepInput {
  double Q1, V1;      ///< upstream section: m3/s >= 0, m/s
  double Q2, V2;      ///< downstream section
  double loss_slope;  ///< mean Sf
  double dx;          ///< m
};
/// Fall (m) of the water surface from section 1 to 2.
double trough_surface_fall(const TroughStepInput& input) noexcept;

struct TroughInput {
  Trapezoid section;
  double L;          ///< m, > 0
  double discharge;  ///< at x = L, m3/s, > 0
  double bed_slope;  ///< S0, >= 0
  double manning_n;  ///< s/m^(1/3), >= 0; 0 leaves friction out
};
/// Depths (m) at the ends of `out.size() - 1` even steps, out.front() at x = 0, out.back() critical at x = L: marched upstream
/// from there. No answer where the trough is so steep that critical depth lies inside it. `out` holds two values and more.
Outcome<void> trough_profile(const TroughInput& input, std::span<double> out);

struct TroughControlInput {
  double bed_slope;   ///< S0
  double lateral;     ///< inflow per length, m2/s, > 0
  double top_width;   ///< B, m, > 0
  double loss_slope;  ///< friction slope of critical flow, g Pw/(C^2 B) with Chezy's C, >= 0
};
/// Distance (m) from the upstream end at which the flow is critical; no answer where S0 is below the friction slope.
Outcome<double> trough_control_distance(const TroughControlInput& input) noexcept;

namespace record {
extern const Method side_channel_gradient;
extern const Method side_channel_level_depth;
extern const Method side_channel_fall;
extern const Method side_channel_profile;
extern const Method side_channel_control;
}  // namespace record

}  // namespace quell::hydraulics
