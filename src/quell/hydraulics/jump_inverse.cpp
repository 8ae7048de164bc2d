#include "quell/hydraulics/jump_inverse.h"

#include <cmath>

#include "quell/base/roots.h"
#include "quell/hydraulics/jump_energy.h"

namespace quell::hydraulics {
namespace {

tl::unexpected<NoAnswer> no_jump(double F1) {
  return bad_input("F1", F1, 1.0, no_limit, "flow that is not supercritical makes no jump");
}
}  // namespace

double jump_discharge(const SequentDepths& depths) {
  return std::sqrt(gravity * depths.y1 * depths.y2 * (depths.y1 + depths.y2) / 2.0);
}

Outcome<SequentDepths> jump_depths(const LossAndDischarge& input) {
  if (!(input.q > 0.0) || !(input.dE > 0.0)) return no_answer("the jump needs a discharge and a loss above zero");
  const double yc = std::cbrt(input.q * input.q / gravity);
  // With r = Y - 1: dE/yc = r^3/(2^(5/3) Y^(4/3) (1 + Y)^(1/3)), hence r^3 > 4 dE/yc.
  const double wanted = 4.0 * input.dE / yc;
  const auto excess = [wanted](double r) { return r * r * r - wanted * std::cbrt(std::pow(1.0 + r, 4) * (1.0 + r / 2.0)); };
  const double lower = std::cbrt(wanted);
  double upper = 2.0 * lower;
  while (excess(upper) < 0.0) upper *= 2.0;
  const auto r = find_root(excess, lower, upper, 1e-15 * lower);
  if (!r) return tl::unexpected(r.error());
  const double Y = 1.0 + *r;
  const double y1 = yc * std::cbrt(2.0 / (Y * (1.0 + Y)));
  return SequentDepths{.y1 = y1, .y2 = Y * y1};
}

Outcome<SequentDepths> jump_depths(const LossAndFroude& input) {
  if (!(input.F1 > 1.0)) return no_jump(input.F1);
  const double Y = sequent_ratio(input.F1);
  const double y1 = input.dE / jump_energy_loss({.y1 = 1.0, .y2 = Y});
  return SequentDepths{.y1 = y1, .y2 = Y * y1};
}

Outcome<SequentDepths> jump_depths(const DischargeAndFroude& input) {
  if (!(input.F1 > 1.0)) return no_jump(input.F1);
  const double y1 = std::cbrt(input.q * input.q / (gravity * input.F1 * input.F1));
  return SequentDepths{.y1 = y1, .y2 = sequent_ratio(input.F1) * y1};
}

Outcome<double> initial_depth(const JumpOutflow& outflow) {
  const double F2 = froude_number(outflow.V2, outflow.y2);
  if (!(F2 < 1.0)) return bad_input("F2", F2, above_zero.lowest, 1.0, "the flow after a jump is subcritical");
  return sequent_depth({.y1 = outflow.y2, .V1 = outflow.V2});
}

namespace record {
namespace {
constexpr Symbol q_symbol{"q", "discharge per unit width", dimension::unit_discharge, above_zero};
constexpr Symbol loss_symbol{"dE", "energy loss", dimension::length, above_zero};
constexpr Symbol froude_symbol{"F1", "Froude number before the jump", dimension::none, {1.0, no_limit}};

constexpr Symbol depths[] = {{"y1", "depth before the jump", dimension::length, above_zero},
                             {"y2", "sequent depth", dimension::length, above_zero}};
constexpr Symbol flow_out[] = {q_symbol, froude_symbol};
constexpr Symbol loss_and_discharge_in[] = {q_symbol, loss_symbol};
constexpr Symbol loss_and_froude_in[] = {froude_symbol, loss_symbol};
constexpr Symbol discharge_and_froude_in[] = {q_symbol, froude_symbol};
constexpr Symbol outflow_in[] = {{"y2", "depth after the jump", dimension::length, above_zero},
                                 {"V2", "mean velocity after the jump", dimension::velocity, above_zero}};
constexpr Symbol y1_out[] = {depths[0]};

constexpr Text place = "momentum and energy over the jump, rectangular section, horizontal bed without friction";

Outcome<void> store_depths(const Outcome<SequentDepths>& found, std::span<double> out) {
  if (!found) return tl::unexpected(found.error());
  out[0] = found->y1;
  out[1] = found->y2;
  return {};
}
}  // namespace

const Method jump_discharge_from_depths{
    .id = "jump.discharge.sequent_depths",
    .title = "Discharge per unit width and Froude number of the jump between two depths, rectangular section",
    .equation = "q = sqrt(g*y1*y2*(y1 + y2)/2); F1 = q/(y1*sqrt(g*y1))",
    .inputs = depths,
    .outputs = flow_out,
    .source = "momentum",
    .place = place,
    .provenance = Provenance::derived,
    .accuracy = "exact under its assumptions",
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      if (!(in[1] > in[0])) return bad_input("y2", in[1], in[0], no_limit, "the depth after a jump is the greater one");
      out[0] = jump_discharge({.y1 = in[0], .y2 = in[1]});
      out[1] = hydraulics::froude_number(out[0] / in[0], in[0]);
      return {};
    }};

const Method jump_depths_from_loss_and_discharge{
    .id = "jump.depths.loss_and_discharge",
    .title = "Depths of the jump in which a discharge loses a given head, rectangular section",
    .kind = EquationKind::procedure,
    .equation =
        "Y = y2/y1 from dE/yc = (Y - 1)^3/(2^(5/3) Y^(4/3) (1 + Y)^(1/3)) with yc = (q^2/g)^(1/3), which grows "
        "steadily with Y; y1 = yc (2/(Y (1 + Y)))^(1/3), y2 = Y y1.",
    .inputs = loss_and_discharge_in,
    .outputs = depths,
    .source = "momentum",
    .place = place,
    .provenance = Provenance::derived,
    .accuracy = "solved to 1e-12",
    .evaluate = [](std::span<const double> in, std::span<double> out) {
      return store_depths(jump_depths(LossAndDischarge{in[0], in[1]}), out);
    }};

const Method jump_depths_from_loss_and_froude_number{
    .id = "jump.depths.loss_and_froude_number",
    .title = "Depths of the jump of a given Froude number that loses a given head, rectangular section",
    .equation = "Y = (sqrt(1 + 8*F1^2) - 1)/2; y1 = 4*Y*dE/(Y - 1)^3; y2 = Y*y1",
    .inputs = loss_and_froude_in,
    .outputs = depths,
    .source = "momentum",
    .place = place,
    .provenance = Provenance::derived,
    .accuracy = "exact under its assumptions",
    .evaluate = [](std::span<const double> in, std::span<double> out) {
      return store_depths(jump_depths(LossAndFroude{in[0], in[1]}), out);
    }};

const Method jump_depths_from_discharge_and_froude_number{
    .id = "jump.depths.discharge_and_froude_number",
    .title = "Depths of the jump of a given discharge and Froude number, rectangular section",
    .equation = "y1 = (q^2/(g*F1^2))^(1/3); y2 = y1*(sqrt(1 + 8*F1^2) - 1)/2",
    .inputs = discharge_and_froude_in,
    .outputs = depths,
    .source = "momentum",
    .place = place,
    .provenance = Provenance::derived,
    .accuracy = "exact under its assumptions",
    .evaluate = [](std::span<const double> in, std::span<double> out) {
      return store_depths(jump_depths(DischargeAndFroude{in[0], in[1]}), out);
    }};

const Method initial_depth_rectangular{
    .id = "jump.initial_depth.rectangular",
    .title = "Depth before the jump that ends in a given subcritical flow, rectangular section",
    .equation = "F2 = V2/sqrt(g*y2); y1 = y2/2*(sqrt(1 + 8*F2^2) - 1)",
    .inputs = outflow_in,
    .outputs = y1_out,
    .source = "momentum",
    .place = place,
    .provenance = Provenance::derived,
    .accuracy = "exact under its assumptions",
    .evaluate = [](std::span<const double> in, std::span<double> out) {
      return store(initial_depth({.y2 = in[0], .V2 = in[1]}), out);
    }};

}  // namespace record
}  // namespace quell::hydraulics
