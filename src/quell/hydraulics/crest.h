// The standard ogee crest: free discharge, effective length, least pressure. Its shape stands in crest_shape.h.
//
// Hd is the design head (total head) that fixes the shape, He the total head above the crest, P the height of the crest above
// the approach floor, m.
#pragma once

#include "quell/base/constants.h"
#include "quell/base/method.h"
#include "quell/hydraulics/crest_shape.h"
#include "quell/hydraulics/crest_upstream.h"

namespace quell::hydraulics {

struct CrestDischargeInput {
  double He;  ///< m, >= 0
  double Hd;  ///< m, > 0
  double P;   ///< m, >= 0
  double L;   ///< effective length, m, > 0
  FaceSlope face = FaceSlope::vertical;
};
/// C (m^0.5/s) = Co(P/Hd) k_face(P/Hd) k_H(He/Hd).
double crest_coefficient(const CrestDischargeInput& input) noexcept;
/// Q (m3/s) = C L He^1.5, free flow.
double crest_discharge(const CrestDischargeInput& input) noexcept;

struct EffectiveLengthInput {
  double net_length;  ///< L', m
  double piers;       ///< number
  double Kp;          ///< each pier
  double Ka;          ///< each abutment
  double He;          ///< m
};
/// Le (m) = L' - 2 (N Kp + Ka) He.
double effective_crest_length(const EffectiveLengthInput& input) noexcept;

struct CrestPressureInput {
  double He;  ///< m
  double Hd;  ///< m
};
/// Least pressure head on the crest (m of water, negative below atmosphere): chi (1 - chi) Hd with chi = He/Hd. For chi <= 1 it
/// is not below zero.
double crest_least_pressure_head(const CrestPressureInput& input) noexcept;

namespace record {
extern const Method crest_discharge_ogee;
extern const Method crest_discharge_ogee_3_to_1;
extern const Method crest_discharge_ogee_3_to_2;
extern const Method crest_discharge_ogee_3_to_3;
/// The one of the four for a face.
const Method& ogee_discharge(FaceSlope face);
extern const Method effective_length;
extern const Method crest_least_pressure;
}  // namespace record

}  // namespace quell::hydraulics
