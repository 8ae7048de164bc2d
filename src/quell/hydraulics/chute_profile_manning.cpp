#include "quell/hydraulics/chute_profile_manning.h"

#include <cmath>
#include <vector>

#include "quell/hydraulics/chute_profile.h"
#include "quell/hydraulics/chute_symbols.h"
#include "quell/hydraulics/energy.h"

namespace quell::hydraulics {
namespace {

constexpr std::string_view too_flat = "the chute is too flat for this discharge: friction would slow the flow to critical";

/// Manning's flow down one chute, with the head counted from the bed at the start.
struct Descent {
  double q, b, sine, cosine, n;

  Outcome<double> depth(double x, double head) const noexcept {
    return supercritical_depth({.q = q, .E = head + x * sine, .cosine = cosine});
  }
  Outcome<double> slope(double x, double head) const noexcept {
    const auto d = depth(x, head);
    if (!d || *d > 0.98 * critical_depth_on_slope(q, cosine)) return no_answer(too_flat);
    const double V = q / *d;
    const double R = b * *d / (b + 2.0 * *d);
    return -n * n * V * V / (R * std::cbrt(R));
  }
  Outcome<double> march(double head, double length, int steps) const noexcept {
    const double h = length / steps;
    for (int i = 0; i < steps; ++i) {
      const double x = i * h;
      const auto k1 = slope(x, head);
      if (!k1) return k1;
      const auto k2 = slope(x + h / 2.0, head + h / 2.0 * *k1);
      if (!k2) return k2;
      const auto k3 = slope(x + h / 2.0, head + h / 2.0 * *k2);
      if (!k3) return k3;
      const auto k4 = slope(x + h, head + h * *k3);
      if (!k4) return k4;
      head += h / 6.0 * (*k1 + 2.0 * *k2 + 2.0 * *k3 + *k4);
    }
    return head;
  }
};

double head_at_start(double q, double d0, double cosine) noexcept {
  return d0 * cosine + q * q / (2.0 * gravity * d0 * d0);
}

}  // namespace

Outcome<ChutePoint> manning_profile(const ManningChute& input) noexcept {
  const Descent chute{
      .q = input.Q / input.b, .b = input.b, .sine = std::sin(input.theta), .cosine = std::cos(input.theta), .n = input.n};
  const double start = head_at_start(chute.q, input.d0, chute.cosine);
  if (const auto first = chute.slope(0.0, start); !first) return tl::unexpected(first.error());
  constexpr double tolerance = 1e-9;
  constexpr int most_steps = 1 << 18;
  Outcome<double> coarse = chute.march(start, input.x, 16);
  for (int steps = 32; steps <= most_steps; steps *= 2) {
    const auto fine = chute.march(start, input.x, steps);
    // A long step may overshoot into the subcritical range where a short one does not.
    if (coarse && fine && std::abs(*fine - *coarse) < tolerance) {
      const auto d = chute.depth(input.x, *fine);
      if (!d) return tl::unexpected(d.error());
      return ChutePoint{*d, chute.q / *d, start - *fine};
    }
    if (!coarse && !fine && steps > 1024) return tl::unexpected(fine.error());
    coarse = fine;
  }
  return no_answer("the friction profile did not converge");
}

Outcome<ChutePoint> tapered_profile(const TaperedChute& input) {
  const double cosine = std::cos(input.theta);
  const ChuteStretch stretch{.discharge = input.Q,
                             .start_width = input.b0,
                             .width_change = (input.b1 - input.b0) / input.length,
                             .start_level = 0.0,
                             .sine = std::sin(input.theta),
                             .cosine = cosine,
                             .ks = input.ks,
                             .length = input.length};
  const double start = head_at_start(input.Q / input.b0, input.d0, cosine);
  std::vector<EnergyNode> nodes;
  if (const auto done = integrate_energy(stretch, start, nodes); !done) return tl::unexpected(done.error());
  const double q = input.Q / input.b1;
  const double level = nodes.back().energy_level;
  const auto d = supercritical_depth({.q = q, .E = level + input.length * stretch.sine, .cosine = cosine});
  if (!d) return tl::unexpected(d.error());
  return ChutePoint{*d, q / *d, start - level};
}

namespace record {
namespace {
constexpr Symbol discharge{"Q", "discharge", dimension::discharge, above_zero};
constexpr Symbol start_depth{"d0", "depth normal to the bed at the start", dimension::length, above_zero};
constexpr Symbol manning_in[] = {discharge,
                                 {"b", "width of the chute", dimension::length, above_zero},
                                 bed_angle("theta", 0.05, 1.4),
                                 {"n", "Manning's roughness", dimension::manning, {0.008, 0.03}},
                                 start_depth,
                                 {"x", "distance along the bed", dimension::length, {0.0, 1000.0}}};
constexpr Symbol taper_in[] = {discharge,
                               {"b0", "width at the start", dimension::length, above_zero},
                               {"b1", "width at the end", dimension::length, above_zero},
                               bed_angle("theta", 0.05, 1.4),
                               {"ks", "equivalent sand roughness", dimension::length, {1e-5, 0.05}},
                               start_depth,
                               {"L", "length along the bed", dimension::length, {0.1, 1000.0}}};
constexpr Symbol point_out[] = {{"d", "depth normal to the bed", dimension::length, above_zero},
                                {"V", "mean velocity", dimension::velocity, above_zero},
                                {"dH", "energy head lost since the start", dimension::length, {0.0, no_limit}}};

std::string_view start_objection(double q, double theta, double d0) {
  return d0 < critical_depth_on_slope(q, std::cos(theta)) ? std::string_view{} : "the depth at the start is not supercritical";
}

Outcome<void> put(const Outcome<ChutePoint>& point, std::span<double> out) {
  if (!point) return tl::unexpected(point.error());
  out[0] = point->d;
  out[1] = point->V;
  out[2] = point->dH;
  return {};
}
}  // namespace

const Method chute_profile_manning{
    .id = "chute.profile.manning",
    .title = "Water surface down a straight chute with Manning's friction",
    .kind = EquationKind::procedure,
    .equation =
        "Energy level H falls by dH/dx = -n^2 V^2/R^(4/3) along the bed, R = b d/(b + 2 d); the depth follows from "
        "H - z = d cos(theta) + q^2/(2 g d^2); Runge and Kutta's fourth order, steps halved to 1e-9 m.",
    .inputs = manning_in,
    .outputs = point_out,
    .source = "momentum",
    .place = "energy balance on a steep slope, energy coefficient 1",
    .provenance = Provenance::derived,
    .accuracy = "integration 1e-8 m; n itself about 10 %",
    .condition = [](std::span<const double> in) { return start_objection(in[0] / in[1], in[2], in[4]); },
    .evaluate =
        [](std::span<const double> in, std::span<double> out) {
          return put(manning_profile({.Q = in[0], .b = in[1], .theta = in[2], .n = in[3], .d0 = in[4], .x = in[5]}), out);
        }};

const Method chute_profile_taper{
    .id = "chute.profile.taper",
    .title = "Flow at the end of a chute of linearly changing width",
    .kind = EquationKind::procedure,
    .equation = "As chute.profile.darcy with q = Q/b(x), b from b0 to b1 over the length L.",
    .inputs = taper_in,
    .outputs = point_out,
    .source = "momentum",
    .place = "energy balance on a steep slope, energy coefficient 1, walls without shock waves",
    .provenance = Provenance::derived,
    .accuracy = "integration 1e-8 m; friction itself about 5 %",
    .remarks = "Walls that turn more sharply than 1 to 3 F from the axis throw waves that this does not see.",
    .condition = [](std::span<const double> in) { return start_objection(in[0] / in[1], in[3], in[5]); },
    .evaluate =
        [](std::span<const double> in, std::span<double> out) {
          return put(tapered_profile(
                         {.Q = in[0], .b0 = in[1], .b1 = in[2], .theta = in[3], .ks = in[4], .d0 = in[5], .length = in[6]}),
                     out);
        }};

}  // namespace record
}  // namespace quell::hydraulics
