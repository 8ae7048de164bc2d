// Jumps on a sloping apron (D: whole jump on the slope) and across the break between a slope and a level apron (B).
//
// d1 is perpendicular to the bed, V1 along it, F1 = V1/sqrt(g d1) without the cosine, > 1; y2 is the vertical depth behind the
// jump; theta the angle of the bed, > 0 falling downstream. The balances of momentum are exact for the shape of jump assumed;
// fits to tests differ among themselves by 2 % at 1:20 and 13 % at 3:10.
#pragma once

#include "quell/base/method.h"

namespace quell::hydraulics {

struct SlopeInflow {
  double d1;     ///< m, > 0
  double V1;     ///< m/s, > 0
  double theta;  ///< rad
};

struct SlopeJumpInput {
  SlopeInflow inflow;
  double Lj;        ///< length of the jump along the bed, m, >= 0
  double Kv = 1.0;  ///< weight of the jump over that under a straight surface from d1 to d2, >= 0
};
/// y2 (m) by momentum along the bed with the weight of the jump; the largest root. On an adverse bed (theta < 0) two or none:
/// no answer where the weight stops the flow, and such a jump is unstable where there is one.
Outcome<double> sequent_depth_sloping(const SlopeJumpInput& input);

struct KindsvaterInput {
  SlopeInflow inflow;
  double K;  ///< shape factor; it falls from about 2.8 at tan(theta) = 0.05 to 1.4 at 0.3
};
/// y2 (m) by Kindsvater's form of the same balance. No answer where 2 K tan(theta) reaches 1.
Outcome<double> sequent_depth_kindsvater(const KindsvaterInput& input);

/// y2 over the classical sequent depth of d1 and V1: 1.0071 exp(3.2386 t), t = tan(theta) 0.02 to 0.30; below 0.02 straight to
/// 1 at 0.
double sloping_ratio(double t) noexcept;

/// y2 (m): the classical sequent depth times `sloping_ratio`. The base of design.
double sequent_depth_subramanya(const SlopeInflow& inflow) noexcept;
/// y2 (m) with G = 10^(0.027 theta in degrees) F1 in the classical formula, to 17 degrees: the upper band.
double sequent_depth_rajaratnam(const SlopeInflow& inflow) noexcept;
/// y2 (m): the classical sequent depth times exp(3.5 t), t to 0.3.
double sequent_depth_chow(const SlopeInflow& inflow) noexcept;

struct SlopeLengthInput {
  double y2s;  ///< classical sequent depth of d1 and V1, m
  double t;    ///< tan(theta)
};
/// Lj (m), horizontal, = y2s (6.1 + 4 t), F1 4.5 to 13.
double jump_length_sloping(const SlopeLengthInput& input) noexcept;

struct SlopeLossInput {
  SlopeInflow inflow;
  double Lh;  ///< horizontal length of the jump, m
  double y2;  ///< m
};
/// dE (m) from the toe to the end of the jump, horizontal outflow, bed at the end for datum.
double energy_loss_sloping(const SlopeLossInput& input) noexcept;

struct BreakJumpInput {
  SlopeInflow inflow;  ///< theta > 0
  double z1;           ///< height of the toe above the level apron, m, 0 to Lj tan(theta)
  double Lj;           ///< horizontal length of the jump, m, > 0
};
/// y2 (m) on the level apron, by momentum along it: the slope under the jump is pressed by a straight surface from toe to y2.
/// About 10 % on beds steeper than 20 degrees, where the bend at the break disturbs the pressure.
Outcome<double> sequent_depth_slope_break(const BreakJumpInput& input);

struct BreakLengthInput {
  double y2s;  ///< classical sequent depth of d1 and V1, m
  double z1;   ///< m, >= 0
};
/// Lj (m), horizontal: y2s (6.1 + 4 t) weighted by the share of the slope under the jump, z1/(t Lj): y2s times 6.1 at the
/// break, 6.1 + 4 t where the jump just ends there.
double jump_length_slope_break(const BreakLengthInput& input) noexcept;

namespace record {
extern const Method sequent_depth_sloping;
extern const Method sequent_depth_kindsvater;
extern const Method sequent_depth_subramanya;
extern const Method sequent_depth_rajaratnam;
extern const Method sequent_depth_chow;
extern const Method jump_length_sloping;
extern const Method energy_loss_sloping;
extern const Method sequent_depth_slope_break;
extern const Method jump_length_slope_break;
}  // namespace record

}  // namespace quell::hydraulics
