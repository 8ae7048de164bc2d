#include "quell/hydraulics/jump_power_section.h"

#include <algorithm>
#include <cmath>

namespace quell::hydraulics {

Outcome<double> sequent_depth(const PowerSection& section, const SectionJumpInput& input) {
  const auto& [y1, discharge] = input;
  const auto critical = critical_depth(section, discharge);
  if (!critical) return critical;
  if (!(y1 > 0.0) || !(y1 < *critical))
    return bad_input("y1", y1, above_zero.lowest, *critical, "the flow must be supercritical: below critical depth");
  // (Y^(a+1) - 1)/(a + 1) = F1^2/a (1 - Y^(-a)). Left less right is convex with roots at 1 and at Y: from a bound above, where
  // the part in brackets is taken as 1, Newton's steps fall to Y one by one. Powers of Y come as exp(a ln Y) - 1, which keeps
  // the digits where the jump is low.
  const double a = section.a;
  const double flow = std::pow(*critical / y1, 2.0 * a + 1.0) / a;  // F1^2/a
  double u = std::log1p(flow * (a + 1.0)) / (a + 1.0);              // ln Y
  for (int i = 0; i < 100; ++i) {
    const double value = std::expm1((a + 1.0) * u) / (a + 1.0) + flow * std::expm1(-a * u);
    const double slope = std::exp((a + 1.0) * u) - flow * a * std::exp(-a * u);
    const double step = value / slope;
    u -= step;
    if (std::abs(step) <= 1e-9 * u) break;
  }
  return y1 * std::exp(u);
}

namespace record {
namespace {
constexpr Symbol triangle_in[] = {{"m", "side slope, horizontal to 1 vertical", dimension::none, above_zero},
                                  {"y1", "depth before the jump", dimension::length, above_zero},
                                  {"Q", "discharge", dimension::discharge, above_zero}};
constexpr Symbol power_in[] = {{"a", "exponent: 1 rectangle, 1.5 parabola, 2 triangle", dimension::none, {1.0, 3.0}, 1.5},
                               {"Tr", "surface width at the depth yr", dimension::length, above_zero},
                               {"yr", "depth at which the width is Tr", dimension::length, above_zero, 1.0},
                               {"y1", "depth before the jump", dimension::length, above_zero},
                               {"Q", "discharge", dimension::discharge, above_zero}};
constexpr Symbol y2_out[] = {{"y2", "sequent depth", dimension::length, above_zero}};
constexpr Text place = "momentum function equal before and after, horizontal frictionless bed";
}  // namespace

const Method sequent_depth_triangular{
    .id = "jump.sequent_depth.triangular",
    .title = "Sequent depth in a triangular section",
    .kind = EquationKind::residual,
    .equation = "Q^2/(g*m*y1^2) + m*y1^3/3 = Q^2/(g*m*y2^2) + m*y2^3/3",
    .inputs = triangle_in,
    .outputs = y2_out,
    .source = "momentum",
    .place = place,
    .provenance = Provenance::derived,
    .accuracy = "solved to 1e-12; return flow along the banks makes such jumps less steady than rectangular ones",
    .evaluate = [](std::span<const double> in, std::span<double> out) {
      return store(sequent_depth(PowerSection{.a = 2.0, .Tr = 2.0 * in[0]}, {.y1 = in[1], .discharge = in[2]}), out);
    }};

const Method sequent_depth_power_law{
    .id = "jump.sequent_depth.power_law",
    .title = "Sequent depth in a section whose width follows a power of the depth",
    .kind = EquationKind::residual,
    .equation =
        "a*Q^2/(g*Tr*yr*(y1/yr)^a) + Tr*yr^2*(y1/yr)^(a + 1)/(a*(a + 1)) = "
        "a*Q^2/(g*Tr*yr*(y2/yr)^a) + Tr*yr^2*(y2/yr)^(a + 1)/(a*(a + 1))",
    .inputs = power_in,
    .outputs = y2_out,
    .source = "momentum",
    .place = place,
    .provenance = Provenance::derived,
    .accuracy = "solved to 1e-12",
    .remarks = "A parabola (a = 1.5) has T = Tr*sqrt(y/yr).",
    .evaluate = [](std::span<const double> in, std::span<double> out) {
      return store(sequent_depth(PowerSection{.a = in[0], .Tr = in[1], .yr = in[2]}, {.y1 = in[3], .discharge = in[4]}), out);
    }};

}  // namespace record
}  // namespace quell::hydraulics
