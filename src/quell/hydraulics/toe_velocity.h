// Velocity at the toe by short formulas, to hold against the boundary layer and friction of the chute.
//
// S height of the crest above the apron, H energy head on the crest, Z = S + H drop from the reservoir's energy level to the
// apron (all m). They know neither roughness nor the length of the face.
#pragma once

#include "quell/base/constants.h"
#include "quell/base/method.h"

namespace quell::hydraulics {

struct CrestFall {
  double S;  ///< m, > 0
  double H;  ///< m, > 0
};
/// Velocity over ideal velocity: 1 - 0.0155 S/H, S/H < 30. Novak and Cabelka (1981).
constexpr double velocity_share_novak(const CrestFall& input) noexcept {
  return 1.0 - 0.0155 * input.S / input.H;
}

struct ToeVelocityInput {
  double q;    ///< m2/s, > 0
  double E;    ///< reservoir's energy level above the apron, m
  double phi;  ///< velocity over ideal velocity, in (0, 1]
};
/// V1 (m/s) = phi sqrt(2 g (E - q/V1)). No answer where E does not carry q.
Outcome<double> toe_velocity(const ToeVelocityInput& input) noexcept;

/// 0.9 sqrt(2 g Z), m/s.
double toe_velocity_jsce(double Z) noexcept;

struct FallInput {
  double Z;  ///< m
  double H;  ///< m
};
/// Ideal velocity of Engineering Monograph 25 (m/s): sqrt(2 g (Z - H/2)). Where the depth at the toe is less than H/2 the exact
/// ideal velocity is higher, so that a ratio to this one may pass 1.
double toe_velocity_em25(const FallInput& input) noexcept;

struct IdealVelocityInput {
  double q;       ///< m2/s, > 0
  double HT;      ///< drop from the reservoir's energy level to the bed, m, > 0
  double cosine;  ///< of the bed's angle
};
/// u (m/s) of frictionless flow: HT = (q/u) cos(theta) + u^2/2g, the supercritical root.
Outcome<double> ideal_velocity(const IdealVelocityInput& input) noexcept;

namespace record {
extern const Method toe_velocity_novak;
extern const Method toe_velocity_jsce;
extern const Method toe_velocity_em25;
extern const Method ideal_velocity;
}  // namespace record

}  // namespace quell::hydraulics
