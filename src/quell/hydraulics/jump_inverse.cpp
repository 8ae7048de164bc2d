#include "quell/hydraulics/jump_inverse.h"

#include <cmath>

#include "quell/base/roots.h"
#include "quell/hydraulics/section.h"

namespace quell::hydraulics {

double jump_unit_discharge(const SequentDepths& depths) noexcept {
  return std::sqrt(gravity * depths.y1 * depths.y2 * (depths.y1 + depths.y2) / 2.0);
}

SequentDepths jump_depths(const FroudeLoss& input) noexcept {
  const double Y = (std::sqrt(1.0 + 8.0 * input.F1 * input.F1) - 1.0) / 2.0;
  const double y1 = 4.0 * Y * input.dE / std::pow(Y - 1.0, 3);
  return {.y1 = y1, .y2 = Y * y1};
}

Outcome<SequentDepths> jump_depths(const DischargeLoss& input) {
  if (!(input.q > 0.0) || !(input.dE > 0.0)) return no_answer("discharge and loss must be above zero");
  const double yc = critical_depth(input.q);
  const auto y1_over_yc = [](double t) { return std::cbrt(2.0 / ((1.0 + t) * (2.0 + t))); };
  // t = y2/y1 - 1; the loss over yc grows with it from nothing without bound.
  const auto excess = [&](double t) { return y1_over_yc(t) * t * t * t / (4.0 * (1.0 + t)) - input.dE / yc; };
  double upper = 1.0;
  while (excess(upper) < 0.0) upper *= 2.0;
  const auto t = find_root(excess, 0.0, upper, upper * 1e-16);
  if (!t) return tl::unexpected(t.error());
  const double y1 = yc * y1_over_yc(*t);
  return SequentDepths{.y1 = y1, .y2 = y1 * (1.0 + *t)};
}

double depth_before_jump(const JumpOutflow& outflow) {
  return sequent_depth({.y1 = outflow.y2, .V1 = outflow.V2});
}

namespace record {
namespace {
constexpr Symbol y1_symbol{"y1", "depth before the jump", dimension::length, above_zero};
constexpr Symbol y2_symbol{"y2", "sequent depth", dimension::length, above_zero};
constexpr Symbol loss_symbol{"dE", "energy loss", dimension::length, above_zero};
constexpr Symbol depths[] = {y1_symbol, y2_symbol};
constexpr Symbol q_out[] = {{"q", "discharge per unit width", dimension::unit_discharge, above_zero}};
constexpr Symbol froude_loss_in[] = {{.name = "F1",
                                      .meaning = "Froude number before the jump",
                                      .dimension = dimension::none,
                                      .range = {1.1, 20.0},
                                      .possible = {1.0, no_limit}},
                                     loss_symbol};
constexpr Symbol discharge_loss_in[] = {{"q", "discharge per unit width", dimension::unit_discharge, above_zero}, loss_symbol};
constexpr Symbol outflow_in[] = {{"y2", "depth after the jump", dimension::length, above_zero},
                                 {"V2", "mean velocity after the jump", dimension::velocity, above_zero}};
constexpr Symbol y1_out[] = {y1_symbol};
constexpr auto momentum_place =
    "momentum over the jump, hydrostatic pressure and uniform velocity at both ends, no bed friction";
}  // namespace

const Method jump_unit_discharge{.id = "jump.unit_discharge.sequent_depths",
                                 .title = "Discharge per unit width of a jump from its two depths, rectangular section",
                                 .equation = "q = sqrt(g*y1*y2*(y1 + y2)/2)",
                                 .inputs = depths,
                                 .outputs = q_out,
                                 .source = "momentum",
                                 .place = momentum_place,
                                 .provenance = Provenance::derived,
                                 .accuracy = "exact under its assumptions",
                                 .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                   if (in[1] <= in[0])
                                     return bad_input("y2", in[1], in[0], no_limit, "the flow is deeper after a jump");
                                   out[0] = hydraulics::jump_unit_discharge({.y1 = in[0], .y2 = in[1]});
                                   return {};
                                 }};

const Method jump_depths_froude_loss{.id = "jump.depths.froude_and_loss",
                                     .title = "Both depths of a jump from Froude number and energy loss, rectangular section",
                                     .equation = "Y = (sqrt(1 + 8*F1^2) - 1)/2; y1 = 4*Y*dE/(Y - 1)^3; y2 = Y*y1",
                                     .inputs = froude_loss_in,
                                     .outputs = depths,
                                     .source = "momentum",
                                     .place = momentum_place,
                                     .provenance = Provenance::derived,
                                     .accuracy = "exact under its assumptions",
                                     .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                       if (!(in[0] > 1.0))
                                         return bad_input("F1", in[0], 1.0, no_limit,
                                                          "flow that is not supercritical makes no jump");
                                       const auto both = jump_depths(FroudeLoss{.F1 = in[0], .dE = in[1]});
                                       out[0] = both.y1;
                                       out[1] = both.y2;
                                       return {};
                                     }};

const Method jump_depths_discharge_loss{.id = "jump.depths.discharge_and_loss",
                                        .title = "Both depths of a jump from discharge and energy loss, rectangular section",
                                        .kind = EquationKind::residual,
                                        .equation = "dE = (y2 - y1)^3/(4*y1*y2); q = sqrt(g*y1*y2*(y1 + y2)/2)",
                                        .inputs = discharge_loss_in,
                                        .outputs = depths,
                                        .source = "momentum",
                                        .place = momentum_place,
                                        .provenance = Provenance::derived,
                                        .accuracy = "solved to 1e-12; exact under its assumptions",
                                        .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                          const auto both = jump_depths(DischargeLoss{.q = in[0], .dE = in[1]});
                                          if (!both) return tl::unexpected(both.error());
                                          out[0] = both->y1;
                                          out[1] = both->y2;
                                          return {};
                                        }};

const Method depth_before_jump{
    .id = "jump.depth_before.rectangular",
    .title = "Depth before a jump from the flow after it, rectangular section",
    .equation = "F2 = V2/sqrt(g*y2); y1 = y2/2*(8*F2^2/(sqrt(1 + 8*F2^2) + 1))",
    .inputs = outflow_in,
    .outputs = y1_out,
    .source = "momentum",
    .place = "y1 = y2/2 (sqrt(1 + 8 F2^2) - 1), written without the difference of nearly equal numbers",
    .provenance = Provenance::derived,
    .accuracy = "exact under its assumptions",
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      const double F2 = hydraulics::froude_number(in[1], in[0]);
      if (!(F2 < 1.0)) return bad_input("F2", F2, 0.0, 1.0, "the flow after a jump is subcritical");
      out[0] = hydraulics::depth_before_jump({.y2 = in[0], .V2 = in[1]});
      return {};
    }};

}  // namespace record
}  // namespace quell::hydraulics
