#include "quell/hydraulics/jump_slope.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "quell/base/constants.h"
#include "quell/base/roots.h"
#include "quell/hydraulics/jump.h"

namespace quell::hydraulics {
namespace {

Outcome<double> supercritical_square(const SlopeInflow& inflow) {
  if (!(inflow.d1 > 0.0)) return bad_input("d1", inflow.d1, above_zero.lowest, no_limit, "a depth is above zero");
  const double F1 = froude_number(inflow.V1, inflow.d1);
  if (!(F1 > 1.0)) return bad_input("F1", F1, 1.0, no_limit, "flow that is not supercritical makes no jump");
  if (!(std::abs(inflow.theta) < std::numbers::pi / 2.0))
    return bad_input("theta", inflow.theta, -std::numbers::pi / 2.0, std::numbers::pi / 2.0, "a bed is less steep than a wall");
  return F1 * F1;
}

double classical_depth(const SlopeInflow& inflow) {
  return sequent_depth({.y1 = inflow.d1, .V1 = inflow.V1});
}

/// Larger root of a/2 Y^2 - b Y - c + e/Y, a and e > 0: convex, so that it has two beside its lowest point, or none.
struct Balance {
  double a, b, c, e;
  double at(double Y) const { return (a / 2.0 * Y - b) * Y - c + e / Y; }
};

Outcome<double> larger_root(const Balance& balance, std::string_view none) {
  const auto& [a, b, c, e] = balance;
  const auto slope = [&](double Y) { return a * Y - b - e / (Y * Y); };
  // Below zero at the left end, above it at the right one.
  const double least = std::sqrt(e / (a + std::abs(b)));
  const double most = (std::abs(b) + e) / a + 1.0;
  const auto lowest = find_root(slope, 0.5 * std::min(least, 1.0), most, 1e-15);
  if (!lowest) return lowest;
  if (balance.at(*lowest) > 0.0) return no_answer(none);
  double upper = 2.0 * *lowest;
  while (balance.at(upper) < 0.0) upper *= 2.0;
  return find_root([&](double Y) { return balance.at(Y); }, *lowest, upper, 1e-15);
}

}  // namespace

Outcome<double> sequent_depth_sloping(const SlopeJumpInput& input) {
  const auto& [d1, V1, theta] = input.inflow;
  const auto square = supercritical_square(input.inflow);
  if (!square) return square;
  const double weight = input.Kv * input.Lj * std::sin(theta) / d1;
  const double cosine = std::cos(theta);
  const auto ratio = larger_root({.a = cosine, .b = weight / 2.0, .c = cosine / 2.0 + weight / 2.0 + *square, .e = *square},
                                 "the weight on the adverse bed stops the flow: no depth balances it");
  if (!ratio) return ratio;
  return *ratio * d1 / cosine;
}

Outcome<double> sequent_depth_kindsvater(const KindsvaterInput& input) {
  const auto& [d1, V1, theta] = input.inflow;
  const auto square = supercritical_square(input.inflow);
  if (!square) return square;
  const double rest = 1.0 - 2.0 * input.K * std::tan(theta);
  if (!(rest > 0.0))
    return bad_input("K", input.K, 0.0, 0.5 / std::tan(theta), "the weight would exceed the pressure force behind the jump");
  const double cosine = std::cos(theta);
  return d1 / (2.0 * cosine) * (std::sqrt(8.0 * *square * std::pow(cosine, 3) / rest + 1.0) - 1.0);
}

double sloping_ratio(double t) noexcept {
  constexpr double flattest = 0.02;
  const auto fit = [](double tangent) { return 1.0071 * std::exp(3.2386 * tangent); };
  return fit(std::max(t, flattest)) - (fit(flattest) - 1.0) * (1.0 - std::min(t, flattest) / flattest);
}

double sequent_depth_subramanya(const SlopeInflow& inflow) noexcept {
  return classical_depth(inflow) * sloping_ratio(std::tan(inflow.theta));
}

double sequent_depth_rajaratnam(const SlopeInflow& inflow) noexcept {
  const double G = std::pow(10.0, 0.027 * inflow.theta * 180.0 / std::numbers::pi);
  return sequent_depth({.y1 = inflow.d1, .V1 = G * inflow.V1}) / std::cos(inflow.theta);
}

double sequent_depth_chow(const SlopeInflow& inflow) noexcept {
  return classical_depth(inflow) * std::exp(3.5 * std::tan(inflow.theta));
}

double jump_length_sloping(const SlopeLengthInput& input) noexcept {
  return input.y2s * (6.1 + 4.0 * input.t);
}

double energy_loss_sloping(const SlopeLossInput& input) noexcept {
  const auto& [d1, V1, theta] = input.inflow;
  const double V2 = d1 * V1 / input.y2;
  return d1 * std::cos(theta) + V1 * V1 / (2.0 * gravity) + input.Lh * std::tan(theta) - (input.y2 + V2 * V2 / (2.0 * gravity));
}

Outcome<double> sequent_depth_slope_break(const BreakJumpInput& input) {
  const auto& [d1, V1, theta] = input.inflow;
  const auto square = supercritical_square(input.inflow);
  if (!square) return square;
  if (!(theta > 0.0))
    return bad_input("theta", theta, above_zero.lowest, std::numbers::pi / 2.0, "the slope must fall to the apron");
  if (!(input.Lj > 0.0)) return bad_input("Lj", input.Lj, above_zero.lowest, no_limit, "the jump has a length");
  const double highest = input.Lj * std::tan(theta);
  if (!(input.z1 >= 0.0 && input.z1 <= highest))
    return bad_input("z1", input.z1, 0.0, highest, "a jump that crosses the break has its toe within Lj of it");
  // All in d1: the surface is level with toe + share (y2 - toe) at the break.
  const double cosine = std::cos(theta);
  const double z = input.z1 / d1;
  const double toe = z + 1.0 / cosine;
  const double share = input.z1 / highest;
  const double slope_force = z / 2.0 * (1.0 / cosine + toe * (1.0 - share));
  const auto ratio =
      larger_root({.a = 1.0, .b = z / 2.0 * share, .c = cosine * cosine / 2.0 + *square * cosine + slope_force, .e = *square},
                  "no depth on the apron balances the flow");
  if (!ratio) return ratio;
  return *ratio * d1;
}

double jump_length_slope_break(const BreakLengthInput& input) noexcept {
  // Lj = y2s (6.1 + 4 z1/Lj), solved.
  return input.y2s * (3.05 + std::sqrt(3.05 * 3.05 + 4.0 * input.z1 / input.y2s));
}

}  // namespace quell::hydraulics
