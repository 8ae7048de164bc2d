// The river below a basin: stone beside the published rules, scour of a bed left bare and how fast it grows, aprons of stone
// that settle into it, the cutoff that an exit gradient asks for.
//
// Depths of scour are measured below the tailwater's surface unless said otherwise. The formulas scatter by a factor of two and
// more on field cases: report them side by side.
#pragma once

#include "quell/base/method.h"

namespace quell::hydraulics {

/// Relative density of quarried stone where none is given: common practice.
inline constexpr double stone_gravity = 2.65;

struct TurbulentStoneInput {
  double ub;  ///< velocity near the bed, at a tenth of the depth, m/s, >= 0
  double r;   ///< relative turbulence, rms over mean, >= 0.05
  double s;   ///< specific gravity of the stone, > 1
};
/// D50 (m) = (12.3 r - 0.20) ub^2/(2 g (s - 1))/0.84, from the nominal size (Escarameia and May).
double riprap_escarameia_may(const TurbulentStoneInput& input) noexcept;

struct ChannelStoneInput {
  double V;   ///< depth-averaged local velocity, m/s
  double d;   ///< local depth, m, > 0
  double s;   ///< specific gravity, > 1
  double Cv;  ///< 1 straight, 1.25 below concrete channels
  double K1;  ///< side slope: 1 on the bed, 0.88 at 2H:1V
  double Sf;  ///< safety factor, at least 1.1
};
/// D30 (m) of channels (Maynord). Not meant for the reach just below a basin, where it is far too small.
double riprap_maynord(const ChannelStoneInput& input) noexcept;

/// Mass (kg) of the sphere of diameter D (m) and specific gravity s.
double stone_mass(double D, double s) noexcept;

struct BedScourInput {
  double q;    ///< m2/s, > 0
  double H;    ///< drop of the head, m, > 0
  double h;    ///< tailwater above the bed, m, > 0
  double d90;  ///< of the bed, m, > 0
};
/// D (m) = 4.75 H^0.2 q^0.57/d90^0.32, d90 in mm (Schoklitsch).
double scour_schoklitsch(const BedScourInput& input) noexcept;
/// D (m) = 0.6 H^0.25 q^0.5 (h/d90)^(1/3) (Jaeger).
double scour_jaeger(const BedScourInput& input) noexcept;
/// Below the bed (m): 0.55 (Jaeger - h), behind a working jump basin (Novak); not below 0.
double scour_novak(const BedScourInput& input) noexcept;

struct ScourGrowthInput {
  double h0;   ///< depth of the flow over the bed, m, > 0
  double U;    ///< mean velocity over the end of the protection, m/s
  double d50;  ///< of the bed, m, > 0
  double r0;   ///< relative turbulence there
  double s;    ///< specific gravity of the grains, > 1
  double t;    ///< s, > 0
};
struct ScourGrowth {
  double critical_velocity;  ///< Uc, m/s
  double time_scale;         ///< t1, s, at which the scour is as deep as the flow; 0 where the bed does not move
  double depth;              ///< ym, m below the bed after t; 0 where the bed does not move
};
/// ym/h0 = (t/t1)^0.40 (Breusers; Hoffmans and Verheij). Meant for ym up to about h0.
ScourGrowth scour_growth(const ScourGrowthInput& input) noexcept;

struct LaunchInput {
  double T;  ///< thickness of the stone once settled, m
  double D;  ///< scour below the apron, m
};
struct LaunchingApron {
  double length;     ///< m, 1.5 D
  double thickness;  ///< m in place, before it settles
  double volume;     ///< m3 per m of width
};
/// Stone that settles on a slope of 1V:2H with a quarter to spare: T' = 1.25 sqrt(5) T/1.5.
LaunchingApron launching_apron(const LaunchInput& input) noexcept;

struct CutoffDepthInput {
  double b;   ///< length of the floor, m, > 0
  double H;   ///< head difference, m, > 0
  double GE;  ///< exit gradient allowed, > 0
};
/// Depth (m) of the cutoff at the end of the floor at which the exit gradient is GE; Khosla's formula, solved for it.
double cutoff_depth(const CutoffDepthInput& input) noexcept;

namespace record {
extern const Method riprap_escarameia_may;
extern const Method riprap_maynord;
extern const Method stone_mass;
extern const Method scour_schoklitsch;
extern const Method scour_jaeger;
extern const Method scour_novak;
extern const Method scour_growth;
extern const Method launching_apron;
extern const Method cutoff_depth;
}  // namespace record

}  // namespace quell::hydraulics
