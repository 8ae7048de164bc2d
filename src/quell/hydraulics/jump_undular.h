// The undular jump (F1 < 1.7): no roller but standing waves. Its first crest, not y2, sets the walls.
//
// Rectangular section, horizontal bed. The limit of 1.7 is not sharp: it moves with the boundary layer at the toe, the ratio of
// width to depth and the Reynolds number, from 1.3 to above 2.3; shocks from the side walls appear above F1 = 1.2.
#pragma once

#include "quell/base/method.h"
#include "quell/hydraulics/jump.h"

namespace quell::hydraulics {

/// Rise (m) of the first crest above y1: max(y2 - y1, min(2 (y2 - y1), 0.73 y1)). Twice the mean rise to F1 = 1.25 or so, then
/// the waves break at 0.73 y1. A rule fitted to the measured surges of Favre 1935 and Treske 1994 (data/measured); F1 1 to 1.7.
double undular_crest_rise(const RollerInput& input) noexcept;

struct WaveLengthInput {
  double F2;  ///< Froude number behind the front, 0 < F2 < 1
  double y2;  ///< mean depth there, m, > 0
};
/// lambda (m) of the stationary wave by linear theory: F2^2 = tanh(k y2)/(k y2), lambda = 2 pi/k.
Outcome<double> undular_wave_length(const WaveLengthInput& input);

namespace record {
extern const Method undular_first_crest;
extern const Method undular_wave_length;
}  // namespace record

}  // namespace quell::hydraulics
