// Labyrinth weirs: free discharge by sidewall angle, from two published sets of coefficients.
//
// Q = (2/3) Cd L sqrt(2g) HT^1.5 with HT the total head above the crest and P the height of the weir, m. Between the angles
// that were measured Cd is interpolated. A model study is normally made before such a weir is built. The flow leaves a
// labyrinth with less energy than the reservoir: restart below it from critical depth.
#pragma once

#include "quell/base/method.h"

namespace quell::hydraulics {

struct LabyrinthInput {
  double HT;     ///< m, > 0
  double P;      ///< m, > 0
  double alpha;  ///< sidewall angle to the flow, rad
  double L;      ///< m, > 0: along the centre line of the crest (half-round), effective (quarter-round)
};
struct LabyrinthFlow {
  double Cd;  ///< without unit
  double Q;   ///< m3/s
};
/// Half-round crest, Crookston and Tullis 2013: angle 6 to 35 degrees, HT/P 0.05 to 0.9. No answer outside these angles.
Outcome<LabyrinthFlow> labyrinth_half_round(const LabyrinthInput& input) noexcept;
/// Quarter-round crest, Tullis, Amanian and Waldron 1995: angle 6 to 35 degrees and 90 (a straight weir), HT/P up to 0.9.
/// No answer outside 6 to 90 degrees.
Outcome<LabyrinthFlow> labyrinth_quarter_round(const LabyrinthInput& input) noexcept;

namespace record {
extern const Method labyrinth_discharge_half_round;
extern const Method labyrinth_discharge_quarter_round;
}  // namespace record

}  // namespace quell::hydraulics
