// Bracketed root finding: TOMS 748 of Boost.Math behind an Outcome, so that a missing bracket is a reason and
// never a NaN.
#pragma once

#include <algorithm>
#include <boost/math/tools/toms748_solve.hpp>
#include <cmath>
#include <cstdint>

#include "quell/base/outcome.h"

namespace quell {

/// Root of a continuous `f` in [lower, upper], whose values there must differ in sign (a zero at an end is that end).
/// The answer is within `tolerance` (absolute, in the unit of the argument) of the root.
template <class Function>
Outcome<double> find_root(Function&& f, double lower, double upper, double tolerance) {
  const double at_lower = f(lower);
  const double at_upper = f(upper);
  if (!std::isfinite(at_lower) || !std::isfinite(at_upper))
    return no_answer("the function is not finite at the ends of the bracket");
  if (at_lower == 0.0) return lower;
  if (at_upper == 0.0) return upper;
  if ((at_lower < 0.0) == (at_upper < 0.0)) return no_answer("no root lies between the bounds");
  std::uintmax_t iterations = 100;
  const auto close = [tolerance](double a, double b) {
    return std::abs(b - a) <= std::max(tolerance, 4e-16 * std::max(std::abs(a), std::abs(b)));
  };
  const auto bracket = boost::math::tools::toms748_solve(f, lower, upper, at_lower, at_upper, close, iterations);
  if (!close(bracket.first, bracket.second)) return no_answer("root finding did not converge");
  return 0.5 * (bracket.first + bracket.second);
}

}  // namespace quell
