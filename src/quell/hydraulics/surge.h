// Surges: the step in depth that a change of discharge sends along a rectangular channel, from mass and momentum on both sides
// of the moving front. Frictionless horizontal bed; exact under these assumptions while the front is steep (y2/y1 above 1.3;
// smaller ones are trains of waves about the same mean).
#pragma once

#include "quell/base/constants.h"
#include "quell/base/method.h"

namespace quell::hydraulics {

struct SurgeInput {
  double y1;  ///< depth before the change, m, > 0
  double V1;  ///< mean velocity before the change, m/s, downstream positive, >= 0
  double q2;  ///< discharge per unit width after the change, m2/s
};
struct Surge {
  double y2;  ///< depth behind the front, m
  double c;   ///< speed of the front over the bed, m/s, positive the way it runs
};
/// The surge that runs upstream from a gate that is closed to q2 (0 <= q2 < q1, 0: wholly).
Outcome<Surge> surge_from_closure(const SurgeInput& input);
/// The surge that runs downstream from a gate that is opened to q2 (> q1).
Outcome<Surge> surge_from_opening(const SurgeInput& input);

namespace record {
extern const Method surge_closure;
extern const Method surge_opening;
}  // namespace record

}  // namespace quell::hydraulics
