// Discharge over a crest from the water level in its approach channel: the velocity head of the approach counts.
//
// h is the water level of the approach channel above the crest, He = h + V0^2/2g the total head, P the height of the crest
// above the approach floor, m. Energy between approach section and crest, no loss; the approach must be subcritical. In a still
// reservoir h is He, and none of this is needed.
#pragma once

#include "quell/hydraulics/crest.h"

namespace quell::hydraulics {

struct ApproachFlow {
  double He;         ///< total head above the crest, m
  double discharge;  ///< m3/s
  double velocity;   ///< V0 in the approach channel, m/s
};

struct WeirApproachInput {
  double h;  ///< m, > 0
  double C;  ///< discharge coefficient, m^0.5/s, > 0
  double L;  ///< effective crest length, m, > 0
  double P;  ///< m, >= 0
  double B;  ///< width of the approach channel, m, > 0
};
/// Q = C L He^1.5 with a constant coefficient. No answer where the crest could pass more than the approach brings.
Outcome<ApproachFlow> discharge_with_approach(const WeirApproachInput& input) noexcept;

struct CrestApproachInput {
  double h;            ///< m, > 0
  double Hd;           ///< m, > 0
  double P;            ///< m, >= 0
  double net_length;   ///< clear of piers, m, > 0
  double contraction;  ///< N Kp + Ka, >= 0
  double B;            ///< width of the approach channel, m, > 0
  FaceSlope face = FaceSlope::vertical;
};
/// The same over the ogee crest, whose coefficient and effective length change with He.
Outcome<ApproachFlow> crest_discharge_with_approach(const CrestApproachInput& input) noexcept;

namespace record {
extern const Method discharge_approach;
extern const Method crest_discharge_approach;
}  // namespace record

}  // namespace quell::hydraulics
