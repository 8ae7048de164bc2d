#include "quell/hydraulics/wall_loads.h"

#include <algorithm>
#include <cmath>

#include "quell/base/constants.h"

namespace quell::hydraulics {
namespace {
constexpr double most_overturning = 1000.0;  // nothing turns the wall
}

double wall_pulse(const WallPulseInput& input) noexcept {
  return input.k * input.Cp * 0.5 * water_density * input.V * input.V;
}

WaterForce even_pressure_on_wall(double p, double y) noexcept {
  return {.force = p * y, .moment = 0.5 * p * y * y};
}

Outcome<double> earth_coefficient_in_earthquake(const EarthCoefficientInput& input) {
  const auto& [phi, delta, kh, kv] = input;
  const double psi = std::atan(kh / (1.0 - kv));
  if (!(psi <= phi)) return no_answer("the fill itself slides at this acceleration");
  const double wedge = 1.0 + std::sqrt(std::sin(phi + delta) * std::sin(phi - psi) / std::cos(delta + psi));
  const double cosine = std::cos(phi - psi);
  return cosine * cosine / (std::cos(psi) * std::cos(delta + psi) * wedge * wedge);
}

WaterForce earthquake_in_fill(const EarthquakeFillInput& input) noexcept {
  const double above = input.h - input.hw;
  const double saturated = input.gamma_below + water_unit_weight;
  const double force =
      0.5 * input.dK * (input.gamma * above * above + 2.0 * input.gamma * above * input.hw + saturated * input.hw * input.hw);
  return {.force = force, .moment = 0.6 * input.h * force};
}

WaterForce earthquake_in_water(double kh, double h) noexcept {
  const double head = kh * water_unit_weight * h * h;
  return {.force = 7.0 / 12.0 * head, .moment = 7.0 / 30.0 * head * h};
}

Outcome<WallStability> wall_stability(const WallStabilityInput& in) {
  const double normal = in.W1 + in.W2 + in.W3 - 0.5 * (in.u1 + in.u2) * in.B;
  const double resisting = in.W1 * in.a1 + 0.5 * in.W2 * in.B + in.W3 * in.a3;
  const double driving = in.M + in.F * in.s + in.B * in.B * (in.u1 / 6.0 + in.u2 / 3.0);
  if (!(in.F > 0.0)) return no_answer("nothing drives the wall this way");
  if (!(normal > 0.0)) return no_answer("the uplift carries the wall");
  return WallStability{.overturning = resisting / std::max(driving, resisting / most_overturning),
                       .sliding = normal * std::tan(in.phi) / in.F,
                       .eccentricity = 0.5 * in.B - (resisting - driving) / normal,
                       .normal = normal};
}

}  // namespace quell::hydraulics
