// The cubic to which momentum over a jump in a strip comes: Y^3 - p Y + q = 0, Y = y2/y1, with p = 1 + 2 F1^2 and q = 2 F1^2 in
// the classical jump.
#pragma once

#include <cmath>

#include "quell/base/outcome.h"

namespace quell::hydraulics {

struct JumpCubic {
  double p;
  double q;  ///< > 0
};

/// Its largest root in closed form; no answer where it has no positive root, because no tailwater balances the flow.
inline Outcome<double> largest_root(const JumpCubic& cubic) {
  const auto& [p, q] = cubic;
  const double cosine = p > 0.0 ? -q / 2.0 * std::pow(3.0 / p, 1.5) : -2.0;
  if (!(cosine >= -1.0)) return no_answer("the force is larger than any jump can take up");
  return 2.0 * std::sqrt(p / 3.0) * std::cos(std::acos(cosine) / 3.0);
}

}  // namespace quell::hydraulics
