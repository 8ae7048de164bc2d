// Stepped chutes in skimming flow: depth, friction and the energy head that is left at the toe.
//
// Symbols as in stepped_inception.h; Hdam is the drop from the crest to the toe (m), dc = (q^2/g)^(1/3), Hmax = Hdam + 1.5 dc
// the energy head over the toe at the crest, Hres the part of it that is left. The authors differ: at 51 degrees and
// Hdam = 46 dc Boes and Hager leave 0.19 of Hmax, Chanson's f = 0.2 leaves 0.11.
#pragma once

#include "quell/hydraulics/stepped_inception.h"

namespace quell::hydraulics {

struct UniformSteppedFlow {
  double clear_water;  ///< hw, depth of the water alone, normal to the step edges, m
  double mixture;      ///< h90, depth to an air content of 90 %, m
  double drop;         ///< Hdam needed to reach it, m
};
/// Boes and Hager (2003), 19 to 55 degrees: hw = 0.215 dc (sin phi)^(-1/3), h90 = 0.50 s F^(0.1 tan phi + 0.5), drop
/// 24 dc (sin phi)^(2/3); F = q/sqrt(g sin(phi) s^3).
UniformSteppedFlow stepped_uniform_flow(const SteppedFlow& input) noexcept;

struct StepFrictionInput {
  double hw;   ///< clear-water depth, m, > 0
  double s;    ///< height of a step, m, > 0
  double phi;  ///< rad
};
/// Darcy's factor of the bed, fb: 1/sqrt fb = (1 - 0.25 log10(K/Dh))/sqrt(0.5 - 0.42 sin 2phi), K = s cos(phi), Dh = 4 hw.
/// 19 to 55 degrees, K/Dh from 0.1 to 1.
double stepped_friction_factor(const StepFrictionInput& input) noexcept;

struct SteppedDrop {
  double q;     ///< m2/s, > 0
  double s;     ///< height of a step, m, > 0
  double phi;   ///< rad
  double Hdam;  ///< m, >= 0
};
/// Hres (m) by Boes and Hager (2003): the larger of Hmax exp(-0.045 (K/Dh)^0.1 (sin phi)^-0.8 Hdam/dc), made for the developing
/// flow, and Hmax Fu/(Hdam/dc + Fu), made for uniform flow, Fu = a cos(phi) + 0.55/a^2, a = (fb/(8 sin phi))^(1/3). The authors
/// change over at Hdam/dc from 15 to 20; the two lines cross between 16 and 31, so that the larger is free of a step, the same
/// as theirs up to 15 and from the crossing on, and on the safe side between.
double stepped_residual_head_boes_hager(const SteppedDrop& input) noexcept;

/// Hres (m) by Hunt and Kadavy: Hmax times 1 - max(0.30 min(L/Li, 1), 1 - (L/Li + 0.51)^-0.87), L = Hdam/sin(phi), Li by Hunt,
/// Kadavy and Hanson. 10 to 30 degrees.
double stepped_residual_head_hunt_kadavy(const SteppedDrop& input) noexcept;

/// Clear-water depth (m) below inception: 0.34 dc (s cos(phi)/dc)^0.063 (sin phi)^-0.18. 10 to 30 degrees.
double stepped_depth_hunt_kadavy(const SteppedFlow& input) noexcept;

struct ConstantFrictionFlow {
  double q;    ///< m2/s, > 0
  double phi;  ///< rad
  double f;    ///< Darcy's factor; 0.2 for design
};
/// Uniform clear-water depth (m) for a constant factor: (f q^2/(8 g sin phi))^(1/3).
double stepped_depth_chanson(const ConstantFrictionFlow& input) noexcept;
/// Energy head (m) of that uniform flow, energy coefficient 1.
double stepped_residual_head_chanson(const ConstantFrictionFlow& input) noexcept;

struct SteppedWallInput {
  double h90;  ///< m
  double eta;  ///< 1.2 beside concrete, 1.5 beside an erodible toe
};
/// Wall height (m) normal to the step edges: eta h90.
constexpr double stepped_wall_height(const SteppedWallInput& input) noexcept {
  return input.eta * input.h90;
}

namespace record {
extern const Method stepped_uniform_boes_hager;
extern const Method stepped_friction_factor_boes_hager;
extern const Method stepped_residual_boes_hager;
extern const Method stepped_residual_hunt_kadavy;
extern const Method stepped_depth_hunt_kadavy;
extern const Method stepped_uniform_chanson;
extern const Method stepped_wall_height_boes_hager;
}  // namespace record

}  // namespace quell::hydraulics
