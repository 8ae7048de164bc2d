// Short rules around the basin: riprap, creep under the structure, cavitation index, scales of a Froude model.
#pragma once

#include "quell/base/constants.h"
#include "quell/base/method.h"

namespace quell::hydraulics {

struct IsbashInput {
  double V;  ///< m/s, >= 0
  double s;  ///< specific gravity of the stone, > 1
  double C;  ///< 0.86 for high turbulence (below basins), 1.20 for low
};
/// D50 (m) = V^2/(2 g C^2 (s - 1)).
double riprap_isbash(const IsbashInput& input) noexcept;

/// D (m) by the curve of Engineering Monograph 25: bottom velocity 2.6 sqrt(D), ft/s and inches.
double riprap_em25(double bottom_velocity) noexcept;

struct CreepInput {
  double Lv;  ///< vertical (steeper than 45 degrees) creep length, m
  double Lh;  ///< horizontal creep length, m
  double dH;  ///< head difference, m, > 0
};
/// C = (Lv + Lh/3)/dH, Lane's weighted creep ratio.
double creep_ratio_lane(const CreepInput& input) noexcept;

struct CavitationInput {
  double p0;  ///< absolute pressure, Pa
  double pv;  ///< vapour pressure, Pa
  double V;   ///< m/s, > 0
};
/// sigma = (p0 - pv)/(rho V^2/2).
double cavitation_index(const CavitationInput& input) noexcept;

struct FroudeScales {
  double velocity, discharge, time;
};
/// Prototype over model for velocity, discharge and time, from the length scale (prototype over model, > 0).
FroudeScales froude_scales(double length_scale) noexcept;

namespace record {
extern const Method riprap_isbash;
extern const Method riprap_em25;
extern const Method creep_ratio_lane;
extern const Method cavitation_index;
extern const Method model_scale_froude;
}  // namespace record

}  // namespace quell::hydraulics
