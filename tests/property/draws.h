// What the property tests of single formulas share: numbers drawn by RapidCheck, and comparison relative to the larger.
#pragma once

#include <rapidcheck.h>

#include <algorithm>
#include <cmath>

namespace quell::draws {

/// A number between two positive ones, even in its logarithm, in a million steps: whole numbers shrink well.
inline double drawn(double low, double high) {
  const int step = *rc::gen::resize(rc::kNominalSize, rc::gen::inRange(0, 1000001));
  return low * std::pow(high / low, step * 1e-6);
}

inline void close(double a, double b, double relative) {
  RC_ASSERT(std::isfinite(a) && std::isfinite(b));
  RC_ASSERT(std::abs(a - b) <= relative * std::max(std::abs(a), std::abs(b)));
}

}  // namespace quell::draws
