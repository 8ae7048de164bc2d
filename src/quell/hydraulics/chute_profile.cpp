#include "quell/hydraulics/chute_profile.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "quell/hydraulics/chute_symbols.h"
#include "quell/hydraulics/energy.h"
#include "quell/hydraulics/friction.h"

namespace quell::hydraulics {
namespace {

constexpr std::string_view too_flat = "the chute is too flat for this discharge: friction would slow the flow to critical";

/// One step of Dormand and Prince (1980). `slopes[6]` is the slope at the new point, so that it serves the next step.
struct Step {
  double value;
  double middle;  ///< halfway, after Shampine (1986)
  double error;
  double slope;
};

Outcome<Step> dormand_prince(const ChuteStretch& stretch, double x, double H, double slope, double h) noexcept {
  static constexpr double c[] = {0.2, 0.3, 0.8, 8.0 / 9.0, 1.0};
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
  std::array<double, 7> k{slope};
  for (std::size_t stage = 0; stage < 5; ++stage) {
    double sum = 0.0;
    for (std::size_t i = 0; i <= stage; ++i) sum += a[stage][i] * k[i];
    const auto next = energy_gradient(stretch, x + c[stage] * h, H + h * sum);
    if (!next) return tl::unexpected(next.error());
    k[stage + 1] = *next;
  }
  double sum = 0.0;
  for (std::size_t i = 0; i < 6; ++i) sum += b[i] * k[i];
  const double value = H + h * sum;
  const auto last = energy_gradient(stretch, x + h, value);
  if (!last) return tl::unexpected(last.error());
  k[6] = *last;
  double error = 0.0;
  double middle = 0.0;
  for (std::size_t i = 0; i < 7; ++i) {
    error += e[i] * k[i];
    middle += half[i] * k[i];
  }
  return Step{value, H + 0.5 * h * middle, std::abs(h * error), *last};
}

}  // namespace

Outcome<double> energy_gradient(const ChuteStretch& stretch, double x, double energy_level) noexcept {
  const double width = stretch.start_width + stretch.width_change * x;
  if (!(width > 0.0)) return no_answer("the chute's width vanishes");
  const double q = stretch.discharge / width;
  const double cosine = stretch.cosine;
  const double bed_level = stretch.start_level - x * stretch.sine;
  const auto depth = supercritical_depth({.q = q, .E = energy_level - bed_level, .cosine = cosine});
  // d above 0.98 d_c, compared by cubes to save the root.
  constexpr double share = 0.98 * 0.98 * 0.98;
  if (!depth || *depth * *depth * *depth * gravity * cosine > share * q * q) return no_answer(too_flat);
  const double velocity = q / *depth;
  const double radius = width * *depth / (width + 2.0 * *depth);
  const double f = friction_factor({.ks = stretch.ks, .R = radius, .V = velocity});
  return -friction_slope({.f = f, .V = velocity, .R = radius});
}

Outcome<void> integrate_energy(const ChuteStretch& stretch, double energy_level, std::vector<EnergyNode>& nodes) {
  const double tolerance = stretch.tolerance;
  auto slope = energy_gradient(stretch, 0.0, energy_level);
  if (!slope) return tl::unexpected(slope.error());
  nodes.push_back({0.0, energy_level, *slope});
  double x = 0.0;
  double h = std::min(stretch.length, 1.0);
  for (int attempts = 0; x < stretch.length; ++attempts) {
    if (attempts > 100000) return no_answer("the friction profile did not converge");
    h = std::min(h, stretch.length - x);
    const auto step = dormand_prince(stretch, x, energy_level, *slope, h);
    if (!step) {
      // A long step may overshoot into the subcritical range where a short one does not.
      if (h < 1e-6) return tl::unexpected(step.error());
      h *= 0.25;
      continue;
    }
    const double scale = step->error > 0.0 ? 0.9 * std::pow(tolerance / step->error, 0.2) : 4.0;
    if (step->error <= tolerance) {
      x = h >= stretch.length - x ? stretch.length : x + h;
      const double cubic = 0.5 * (energy_level + step->value) + h * (*slope - step->slope) / 8.0;
      energy_level = step->value;
      *slope = step->slope;
      nodes.push_back({x, energy_level, *slope, step->middle - cubic});
    }
    h *= std::clamp(scale, 0.2, 4.0);
  }
  return {};
}

double energy_between(const std::vector<EnergyNode>& nodes, double x) noexcept {
  if (x <= nodes.front().x) return nodes.front().energy_level;
  if (x >= nodes.back().x) return nodes.back().energy_level;
  const auto upper =
      std::upper_bound(nodes.begin(), nodes.end(), x, [](double at, const EnergyNode& node) { return at < node.x; });
  const auto& right = *upper;
  const auto& left = *(upper - 1);
  const double h = right.x - left.x;
  const double t = (x - left.x) / h;
  const double s = 1.0 - t;
  return s * s * (1.0 + 2.0 * t) * left.energy_level + t * t * (1.0 + 2.0 * s) * right.energy_level +
         h * s * t * (s * left.gradient - t * right.gradient) + 16.0 * s * s * t * t * right.bulge;
}

namespace record {
namespace {
constexpr Symbol profile_in[] = {{"Q", "discharge", dimension::discharge, above_zero},
                                 {"b", "width of the chute", dimension::length, above_zero},
                                 bed_angle("theta", 0.05, 1.4),
                                 {"ks", "equivalent sand roughness", dimension::length, {1e-5, 0.05}},
                                 {"d0", "depth normal to the bed at the start", dimension::length, above_zero},
                                 {"x", "distance along the bed", dimension::length, {0.0, no_limit}}};
constexpr Symbol profile_out[] = {{"d", "depth normal to the bed at x", dimension::length, above_zero},
                                  {"V", "mean velocity at x", dimension::velocity, above_zero},
                                  {"dH", "energy head lost to x", dimension::length, {0.0, no_limit}}};

Outcome<void> evaluate(std::span<const double> in, std::span<double> out) {
  const double q = in[0] / in[1];
  const double cosine = std::cos(in[2]);
  if (!(q > 0.0 && in[3] > 0.0 && in[4] > 0.0 && in[5] >= 0.0))
    return no_answer("Q, b, ks and d0 must be above zero, x not below");
  const ChuteStretch stretch{.discharge = in[0],
                             .start_width = in[1],
                             .width_change = 0.0,
                             .start_level = 0.0,
                             .sine = std::sin(in[2]),
                             .cosine = cosine,
                             .ks = in[3],
                             .length = in[5]};
  const double start = in[4] * cosine + q * q / (2.0 * gravity * in[4] * in[4]);
  std::vector<EnergyNode> nodes;
  if (auto done = integrate_energy(stretch, start, nodes); !done) return done;
  const double level = nodes.back().energy_level;
  const auto depth = supercritical_depth({.q = q, .E = level + in[5] * std::sin(in[2]), .cosine = cosine});
  if (!depth) return tl::unexpected(depth.error());
  out[0] = *depth;
  out[1] = q / *depth;
  out[2] = start - level;
  return {};
}
}  // namespace

const Method chute_profile_darcy{
    .id = "chute.profile.darcy",
    .title = "Water surface down a straight chute with friction",
    .kind = EquationKind::procedure,
    .equation =
        "Energy level H falls by dH/dx = -Sf along the bed; the depth follows from H - z = d cos(theta) + q^2/(2 g d^2); "
        "Sf by Darcy and Colebrook with R = b d/(b + 2 d); Dormand and Prince's pair, error per step below 1e-9 m.",
    .inputs = profile_in,
    .outputs = profile_out,
    .source = "momentum",
    .place = "energy balance on a steep slope, energy coefficient 1",
    .provenance = Provenance::derived,
    .accuracy = "integration 1e-8 m; friction itself about 5 %",
    .condition = [](std::span<const double> in) -> std::string_view {
      const double q = in[0] / in[1];
      return in[4] < critical_depth_on_slope(q, std::cos(in[2])) ? std::string_view{}
                                                                 : "the depth at the start is not supercritical";
    },
    .evaluate = evaluate};

}  // namespace record
}  // namespace quell::hydraulics
