// One step of Dormand and Prince's pair 5(4) for a system y' = rates(y) of N equations that does not name its argument.
//
// The last slope serves the next step. `middle` is the value halfway, of fourth order (Shampine 1986): with both ends and their
// slopes it makes a quartic between the steps.
#pragma once

#include <algorithm>
#include <array>
#include <cmath>

#include "quell/base/outcome.h"

namespace quell::hydraulics {

template <std::size_t N>
struct DormandPrinceStep {
  std::array<double, N> value;
  std::array<double, N> middle;
  std::array<double, N> slope;  ///< at the new point
  double error = 0.0;           ///< largest of the N differences between fifth and fourth order
};

/// From `start`, where the slope is `slope`, by h. Fails where `rates` (giving Outcome<std::array<double, N>>) fails.
template <std::size_t N, class Rates>
Outcome<DormandPrinceStep<N>> dormand_prince(const std::array<double, N>& start, const std::array<double, N>& slope, double h,
                                             const Rates& rates) {
  static constexpr double a[5][5] = {{0.2, 0, 0, 0, 0},
                                     {3.0 / 40, 9.0 / 40, 0, 0, 0},
                                     {44.0 / 45, -56.0 / 15, 32.0 / 9, 0, 0},
                                     {19372.0 / 6561, -25360.0 / 2187, 64448.0 / 6561, -212.0 / 729, 0},
                                     {9017.0 / 3168, -355.0 / 33, 46732.0 / 5247, 49.0 / 176, -5103.0 / 18656}};
  static constexpr double b[] = {35.0 / 384, 0, 500.0 / 1113, 125.0 / 192, -2187.0 / 6784, 11.0 / 84};
  static constexpr double half[] = {6025192743.0 / 30085553152,     0,
                                    51252292925.0 / 65400821598,    -2691868925.0 / 45128329728,
                                    187940372067.0 / 1594534317056, -1776094331.0 / 19743644256,
                                    11237099.0 / 235043384};
  static constexpr double e[] = {71.0 / 57600, 0, -71.0 / 16695, 71.0 / 1920, -17253.0 / 339200, 22.0 / 525, -1.0 / 40};
  std::array<std::array<double, N>, 7> k{slope};
  const auto moved = [&](const double* weights, std::size_t count) {
    std::array<double, N> point = start;
    for (std::size_t i = 0; i < count; ++i)
      for (std::size_t n = 0; n < N; ++n) point[n] += h * weights[i] * k[i][n];
    return point;
  };
  for (std::size_t stage = 0; stage < 5; ++stage) {
    const auto next = rates(moved(a[stage], stage + 1));
    if (!next) return tl::unexpected(next.error());
    k[stage + 1] = *next;
  }
  DormandPrinceStep<N> step{.value = moved(b, 6), .middle = {}, .slope = {}};
  const auto last = rates(step.value);
  if (!last) return tl::unexpected(last.error());
  k[6] = *last;
  step.slope = *last;
  for (std::size_t n = 0; n < N; ++n) {
    double error = 0.0;
    double middle = 0.0;
    for (std::size_t i = 0; i < 7; ++i) {
      error += e[i] * k[i][n];
      middle += half[i] * k[i][n];
    }
    step.middle[n] = start[n] + 0.5 * h * middle;
    step.error = std::max(step.error, std::abs(h * error));
  }
  return step;
}

}  // namespace quell::hydraulics
