// Stepped chutes: where nappe flow ends and skimming flow begins, and where the air comes in.
//
// Symbols: q discharge per unit width (m2/s), s height of a step (m), phi angle of the line through the step edges to the
// horizontal (rad), tan(phi) = step height over tread; dc = (q^2/g)^(1/3). Lengths run along the line of the edges from the
// crest, depths stand normal to it.
#pragma once

#include "quell/base/constants.h"
#include "quell/base/method.h"

namespace quell::hydraulics {

struct StepInput {
  double s;    ///< height of a step, m, > 0
  double phi;  ///< rad, > 0, below pi/2
};
/// Critical depths (m) between which the flow is neither the one nor the other.
struct SkimmingOnset {
  double nappe;     ///< below it the flow falls from step to step
  double skimming;  ///< above it the flow skims over the edges
};
/// dc/s = 0.89 - 0.4 tan(phi) and 1.2 - 0.325 tan(phi): Chanson (2001), tan(phi) from 0.05 to 1.7.
SkimmingOnset skimming_onset(const StepInput& input) noexcept;

/// Critical depth (m) above which the flow skims: s (0.91 - 0.14 tan(phi)). Boes and Hager (2003), 26 to 55 degrees.
double skimming_onset_boes_hager(const StepInput& input) noexcept;

struct SteppedFlow {
  double q;    ///< m2/s, > 0
  double s;    ///< height of a step, m, > 0
  double phi;  ///< rad, > 0, below pi/2
};
struct SteppedInception {
  double length;  ///< Li, m
  double depth;   ///< at Li, m
};
/// Chanson (2001): Li = 9.719 k (sin phi)^0.0796 F^0.713, d = 0.4034 k (sin phi)^-0.04 F^0.592 with k = s cos(phi) and
/// F = q/sqrt(g sin(phi) k^3). 27 to 53 degrees; to 4 to 1 where F is from 10 to 100.
SteppedInception stepped_inception_chanson(const SteppedFlow& input) noexcept;

/// Boes and Hager (2003): Li = 5.90 dc^1.2/((sin phi)^1.4 s^0.2), mixture depth 0.40 s F^0.60, F = q/sqrt(g sin(phi) s^3).
/// 26 to 55 degrees.
SteppedInception stepped_inception_boes_hager(const SteppedFlow& input) noexcept;

/// Li (m) by Hunt, Kadavy and Hanson (2014): the smaller of 5.19 k F^0.89 and 7.48 k F^0.78, F and k as for Chanson. The
/// authors change over at F = 28, the lines cross at 27.7: a thousandth. 10 to 30 degrees, F from 0.1 to 1e5.
double stepped_inception_hunt_kadavy(const SteppedFlow& input) noexcept;

namespace record {
extern const Method skimming_onset_chanson;
extern const Method skimming_onset_boes_hager;
extern const Method stepped_inception_chanson;
extern const Method stepped_inception_boes_hager;
extern const Method stepped_inception_hunt_kadavy;
}  // namespace record

}  // namespace quell::hydraulics
