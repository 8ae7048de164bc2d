#include "quell/hydraulics/jump_sections.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "quell/base/roots.h"
#include "quell/hydraulics/jump.h"

namespace quell::hydraulics {
namespace {

/// The other depth with the same momentum function, on the far side of critical depth. The function falls to critical depth and
/// rises above it, so a bracket always holds.
template <class Section>
Outcome<double> other_depth(const Section& section, double discharge, double depth, double critical, double upper) {
  const double target = momentum_function(section, discharge, depth);
  const auto excess = [&](double y) { return momentum_function(section, discharge, y) - target; };
  if (depth > critical) {
    double lower = critical;
    while (excess(lower) < 0.0) lower *= 0.5;
    return find_root(excess, lower, critical, critical * 1e-14);
  }
  return find_root(excess, critical, upper, critical * 1e-14);
}

/// Balance of momentum in a trapezoid for Y = y2/y1, after the root Y = 1 is taken out and all is divided by w y1^2, where
/// w = b + m y1:
///   Y (beta + mu Y) [beta (Y + 1)/2 + mu (Y^2 + Y + 1)/3] = kappa (1 + mu Y)
/// with mu = m y1/w, beta = 1 - mu = b/w, kappa = Q^2/(g w^2 y1^3); rectangle mu = 0, triangle mu = 1. It has one positive
/// root, above 1 where the flow is supercritical. Left less right side is convex and below zero at Y = 0, so that Newton's
/// steps from any point beyond the root fall to it one by one.
struct MomentumQuartic {
  double mu;
  double kappa;

  double root() const {
    const double beta = 1.0 - mu;
    const double c = beta / 2.0 + mu / 3.0;
    const double a4 = mu * mu / 3.0;
    const double a3 = mu * c + beta * mu / 3.0;
    const double a1 = beta * c - kappa * mu;
    double Y = beyond_root();
    for (int i = 0; i < most_steps; ++i) {
      const double value = (((a4 * Y + a3) * Y + c) * Y + a1) * Y - kappa;
      const double slope = ((4.0 * a4 * Y + 3.0 * a3) * Y + 2.0 * c) * Y + a1;
      const double step = value / slope;
      Y -= step;
      if (step < 1e-8 * Y) break;  // the error that is left is of the order of its square
    }
    return Y;
  }

 private:
  static constexpr int most_steps = 200;  ///< a thin flow below a deep one of a triangle takes one for each halving

  /// Two bounds above the root of supercritical flow: the rectangle and the wide-open triangle of the same Froude number. The
  /// root of subcritical flow lies below 1.
  double beyond_root() const {
    const double froude_squared = kappa * (1.0 + mu);
    if (froude_squared <= 1.0) return 1.0;
    return std::min((std::sqrt(1.0 + 8.0 * froude_squared) - 1.0) / 2.0, std::cbrt(3.0 * froude_squared / mu));
  }
};
}  // namespace

Outcome<double> sequent_depth(const Trapezoid& section, const SectionJumpInput& input) {
  const auto& [y1, discharge] = input;
  const double width = section.b + section.m * y1;  // mean width of the water before the jump
  if (!(y1 > 0.0) || !(discharge > 0.0) || section.b < 0.0 || section.m < 0.0 || !(width > 0.0))
    return no_answer("the jump needs a depth, a discharge and a section above zero");
  const MomentumQuartic quartic{.mu = section.m * y1 / width,
                                .kappa = discharge * discharge / (gravity * width * width * y1 * y1 * y1)};
  return y1 * quartic.root();
}

Outcome<double> sequent_depth(const Circle& section, const SectionJumpInput& input) {
  if (!(input.y1 > 0.0) || !(input.y1 < section.D))
    return bad_input("y1", input.y1, above_zero.lowest, section.D,
                     "the depth before the jump lies inside the conduit, below its crown");
  const auto critical = critical_depth(section, input.discharge);
  if (!critical) return critical;
  const double full_area = std::numbers::pi * section.D * section.D / 4.0;
  const double momentum = momentum_function(section, input.discharge, input.y1);
  const double full_velocity_part = input.discharge * input.discharge / (gravity * full_area);
  if (input.y1 < *critical && momentum > full_velocity_part + full_area * section.D / 2.0)
    return section.D / 2.0 + (momentum - full_velocity_part) / full_area;
  return other_depth(section, input.discharge, input.y1, *critical, section.D);
}

Outcome<double> sequent_depth_over_step(const StepJumpInput& input) {
  if (!(input.y1 > 0.0) || !(input.V1 > 0.0) || input.s < 0.0) return no_answer("y1 and V1 must be above zero, s not below");
  const double froude_squared = input.V1 * input.V1 / (gravity * input.y1);
  if (!(froude_squared > 1.0))
    return bad_input("F1", std::sqrt(froude_squared), 1.0, no_limit, "flow that is not supercritical makes no jump");
  const double S = input.s / input.y1;
  const auto balance = [&](double Y) {
    return (Y + S) * (Y + S) * Y + 2.0 * froude_squared - (1.0 + 2.0 * froude_squared) * Y;
  };
  const double critical = std::cbrt(froude_squared);
  if (balance(critical) > 0.0) return no_answer("the step is so high that it chokes the flow");
  const double classical = sequent_depth({.y1 = input.y1, .V1 = input.V1}) / input.y1;
  const auto Y = find_root(balance, critical, std::max(classical, critical) * (1.0 + 1e-12), 1e-14);
  if (!Y) return Y;
  return *Y * input.y1;
}

namespace record {
namespace {
constexpr Symbol trapezoid_in[] = {{"b", "bottom width", dimension::length, {0.0, no_limit}},
                                   {"m", "side slope, horizontal to 1 vertical", dimension::none, {0.0, no_limit}},
                                   {"y1", "depth before the jump", dimension::length, above_zero},
                                   {"Q", "discharge", dimension::discharge, above_zero}};
constexpr Symbol circle_in[] = {{"D", "diameter", dimension::length, above_zero},
                                {"y1", "depth before the jump", dimension::length, above_zero},
                                {"Q", "discharge", dimension::discharge, above_zero}};
constexpr Symbol step_in[] = {{"y1", "depth before the jump", dimension::length, above_zero},
                              {"V1", "mean velocity before the jump", dimension::velocity, above_zero},
                              {"s", "height of the step", dimension::length, {0.0, no_limit}}};
constexpr Symbol y2_out[] = {{"y2", "sequent depth", dimension::length, above_zero}};
constexpr Symbol conduit_out[] = {
    {"y2", "sequent depth, or piezometric head above the invert where the conduit fills", dimension::length, above_zero}};
constexpr Symbol step_out[] = {{"y2", "depth above the step", dimension::length, above_zero}};

/// y1 must lie below critical depth: the functions also go backward, the methods do not.
template <class Section>
Outcome<double> forward_only(const Section& section, const SectionJumpInput& input) {
  const auto y2 = sequent_depth(section, input);
  if (!y2 || *y2 > input.y1) return y2;
  const auto critical = critical_depth(section, input.discharge);
  if (!critical) return critical;
  return bad_input("y1", input.y1, above_zero.lowest, *critical, "the flow must be supercritical: below critical depth");
}

/// A complete jump before the step can climb it while its energy exceeds that of critical flow on top.
std::string_view step_condition(std::span<const double> in) {
  const double F1 = hydraulics::froude_number(in[1], in[0]);
  if (!(F1 > 1.0)) return "F1 is not above 1: there is no jump";
  const double Y = hydraulics::sequent_depth({.y1 = in[0], .V1 = in[1]}) / in[0];
  const double highest = Y + F1 * F1 / (2.0 * Y * Y) - 1.5 * std::cbrt(F1 * F1);
  return in[2] <= highest * in[0] ? std::string_view{}
                                  : "the step is higher than a complete jump can climb: the flow chokes over it";
}

std::string_view circle_condition(std::span<const double> in) {
  const auto y2 = sequent_depth(Circle{in[0]}, {.y1 = in[1], .discharge = in[2]});
  if (!y2) return y2.error().reason;
  if (*y2 > in[0]) return "the conduit fills: y2 is a piezometric head, and entrained air is left out";
  if (*y2 > 0.85 * in[0]) return "the conduit is over 85 % full after the jump: free-surface flow is not safe";
  return {};
}
}  // namespace

const Method sequent_depth_trapezoidal{
    .id = "jump.sequent_depth.trapezoidal",
    .title = "Sequent depth in a trapezoidal section",
    .kind = EquationKind::residual,
    .equation = "Q^2/(g*(b + m*y1)*y1) + b*y1^2/2 + m*y1^3/3 = Q^2/(g*(b + m*y2)*y2) + b*y2^2/2 + m*y2^3/3",
    .inputs = trapezoid_in,
    .outputs = y2_out,
    .source = "momentum",
    .place = "momentum function equal before and after, horizontal frictionless bed",
    .provenance = Provenance::derived,
    .accuracy = "solved to 1e-12; side wings make such jumps less steady than rectangular ones",
    .evaluate = [](std::span<const double> in, std::span<double> out) {
      return store(forward_only(Trapezoid{in[0], in[1]}, {.y1 = in[2], .discharge = in[3]}), out);
    }};

const Method sequent_depth_circular{
    .id = "jump.sequent_depth.circular",
    .title = "Sequent depth in a circular conduit",
    .kind = EquationKind::procedure,
    .equation =
        "Momentum function Q^2/(g A) + A ybar equal before and after; where it exceeds that of the full conduit, "
        "y2 = D/2 + (M1 - Q^2/(g Af))/Af.",
    .inputs = circle_in,
    .outputs = conduit_out,
    .source = "momentum",
    .place = "momentum function equal before and after, horizontal frictionless invert, air left out",
    .provenance = Provenance::derived,
    .accuracy = "solved to 1e-12",
    .condition = circle_condition,
    .evaluate = [](std::span<const double> in, std::span<double> out) {
      return store(forward_only(Circle{in[0]}, {.y1 = in[1], .discharge = in[2]}), out);
    }};

const Method sequent_depth_positive_step{
    .id = "jump.sequent_depth.positive_step",
    .title = "Depth above a positive step at which the jump ends",
    .kind = EquationKind::residual,
    .equation = "1 + 2*V1^2/(g*y1) = (y2/y1 + s/y1)^2 + 2*V1^2/(g*y1)/(y2/y1)",
    .inputs = step_in,
    .outputs = step_out,
    .source = "momentum",
    .place =
        "step face pressed by the level behind it; two other closures differ by 0.5 % at s = y1 and 6 % at s = 2 y1 (F1 = 5)",
    .provenance = Provenance::derived,
    .accuracy = "exact under its assumptions",
    .condition = step_condition,
    .evaluate = [](std::span<const double> in, std::span<double> out) {
      return store(sequent_depth_over_step({.y1 = in[0], .V1 = in[1], .s = in[2]}), out);
    }};

}  // namespace record
}  // namespace quell::hydraulics
