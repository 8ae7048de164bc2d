// Inside the jump: its mean surface and the velocities of the jet along the floor.
//
// x (m) counts from the toe, z (m) from the floor. Classical jump on a smooth horizontal bed, rectangular section. The profiles
// are means over time of a surface that heaves; they are good to about 10 % of y2 - y1, and their authors measure the roller
// differently: compare them at equal x, never at equal x/Lr.
#pragma once

#include "quell/base/method.h"

namespace quell::hydraulics {

struct RollerSurfaceInput {
  double x;   ///< m from the toe, any sign
  double y1;  ///< m, > 0
  double y2;  ///< m, > y1
  double Lr;  ///< length of the roller, m, > 0 (`roller_length`)
  double Lj;  ///< length of the jump, m; used between 1.05 Lr and 2 Lr, where the surface stays monotone
};
/// y (m): the surface that drawings use, y1 + (y2 - y1) tanh(1.5 x/Lr) to the end of the roller (Hager 1992), from there with
/// the same slope level into y2 at the end of the jump by a cubic; y1 before the toe, y2 behind the jump. Never falls with x.
double roller_surface(const RollerSurfaceInput& input) noexcept;

struct PowerSurfaceInput {
  double x;   ///< m from the toe
  double y1;  ///< m, > 0
  double y2;  ///< m, > y1
  double Lr;  ///< m, > 0
};
/// y (m) = y1 + (y2 - y1)(x/Lr)^exponent within the roller; y1 before, y2 behind.
double power_surface(const PowerSurfaceInput& input, double exponent) noexcept;

struct ReferenceSurfaceInput {
  double x;   ///< m from the toe, 0 to X
  double F1;  ///< > 1.54
  double y1;  ///< m, > 0
  double y2;  ///< m, > y1
};
/// X (m) = y1 (5.08 F1 - 7.82): where three quarters of the rise are reached (Rajaratnam and Subramanya 1968).
double surface_reference_length(double F1, double y1) noexcept;
/// y (m) by the mean curve over x/X; beyond X, where the curve is not known, 0.75 of the rise is held.
double reference_surface(const ReferenceSurfaceInput& input);

struct WallJetInput {
  double z;       ///< m above the floor, >= 0
  double b_half;  ///< height at which u = um/2, m, > 0
  double um;      ///< largest velocity of the section, m/s, > 0
};
/// u (m/s) = um 1.48 eta^(1/7) (1 - erf(0.68 eta)), eta = z/b_half (Verhoff 1963).
double wall_jet_velocity(const WallJetInput& input) noexcept;

struct WallJetDecayInput {
  double x;   ///< m from the toe, > 0
  double y1;  ///< m, > 0
  double V1;  ///< m/s, > 0
};
/// um (m/s) = 3.5 V1 sqrt(y1/x), x > 12 y1 (Rajaratnam 1976); V1 nearer to the toe.
double wall_jet_largest_velocity(const WallJetDecayInput& input) noexcept;

namespace record {
extern const Method surface_hager_1992;
extern const Method surface_chanson_2011;
extern const Method surface_wang_2015;
extern const Method surface_rajaratnam_1968;
extern const Method wall_jet_profile;
extern const Method wall_jet_decay;
}  // namespace record

}  // namespace quell::hydraulics
