#include "quell/hydraulics/drag.h"

#include <cmath>

#include "quell/base/roots.h"
#include "quell/hydraulics/jump.h"
#include "quell/hydraulics/section.h"

namespace quell::hydraulics {

double drag_force(const DragInput& input) noexcept {
  return input.CD * input.A * water_density * input.V * input.V / 2.0;
}

Outcome<double> sequent_depth_with_drag(const DragJumpInput& input) {
  const double q = input.y1 * input.V1;
  const auto momentum = [q](double y) { return q * q / (gravity * y) + y * y / 2.0; };
  const double left = momentum(input.y1) - input.f / water_unit_weight;
  const double yc = critical_depth(q);
  if (left < momentum(yc)) return no_answer("the blocks take more momentum than the flow can give up");
  const double free = sequent_depth({.y1 = input.y1, .V1 = input.V1});
  return find_root([&](double y) { return momentum(y) - left; }, yc, free * (1.0 + 1e-12), free * 1e-15);
}

Outcome<double> depth_above_piers(const PierInput& input) {
  const double inertia = input.y2 * input.y2 * input.V2 * input.V2 / gravity;  // q^2/g
  const double reduced = inertia * (1.0 - input.CD * input.a / (2.0 * input.s));
  const double below = input.y2 * input.y2 / 2.0 + inertia / input.y2;
  const auto excess = [&](double y) { return y * y / 2.0 + reduced / y - below; };
  double upper = 2.0 * input.y2;
  while (excess(upper) < 0.0) upper *= 2.0;
  return find_root(excess, input.y2, upper, upper * 1e-15);
}

namespace record {
namespace {
constexpr Dimension force_per_width{0, 6, -12};
constexpr Symbol drag_in[] = {{"CD", "drag coefficient", dimension::none, {0.0, 3.0}},
                              {"A", "area facing the flow", dimension::area, {0.0, no_limit}},
                              {"V", "approach velocity", dimension::velocity, {0.0, no_limit}}};
constexpr Symbol jump_in[] = {{"y1", "depth before the jump", dimension::length, above_zero},
                              {"V1", "mean velocity before the jump", dimension::velocity, above_zero},
                              {"f", "force of the blocks per unit width", force_per_width, {0.0, no_limit}}};
constexpr Symbol pier_in[] = {{"y2", "depth below the piers", dimension::length, above_zero},
                              {"V2", "mean velocity below the piers", dimension::velocity, above_zero},
                              {"a", "thickness of a pier", dimension::length, {0.0, no_limit}},
                              {"s", "spacing of the piers, axis to axis", dimension::length, above_zero},
                              {"CD", "drag coefficient of a pier on the approach velocity", dimension::none, {0.0, 3.0}}};
constexpr Symbol force_out[] = {{"F", "drag", dimension::force, {0.0, no_limit}}};
constexpr Symbol y2_out[] = {{"y2", "depth after the jump", dimension::length, above_zero}};
constexpr Symbol y1_out[] = {{"y1", "depth above the piers", dimension::length, above_zero}};
}  // namespace

const Method drag_force{.id = "drag.force",
                        .title = "Drag on a body in the flow",
                        .equation = "F = CD*A*rho*V^2/2",
                        .inputs = drag_in,
                        .outputs = force_out,
                        .source = "momentum",
                        .place = "definition of the drag coefficient",
                        .provenance = Provenance::derived,
                        .accuracy = "as good as the coefficient: 20 to 30 %",
                        .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                          out[0] = hydraulics::drag_force({.CD = in[0], .A = in[1], .V = in[2]});
                          return {};
                        }};

const Method sequent_depth_with_drag{
    .id = "jump.sequent_depth.drag",
    .title = "Depth after a jump on blocks that take a given force, rectangular section",
    .kind = EquationKind::residual,
    .equation = "(V1*y1)^2/(g*y1) + y1^2/2 = (V1*y1)^2/(g*y2) + y2^2/2 + f/gamma_w",
    .inputs = jump_in,
    .outputs = y2_out,
    .source = "momentum",
    .place = "momentum over the jump with the force of the blocks, no bed friction",
    .provenance = Provenance::derived,
    .accuracy = "exact under its assumptions; as good as the force",
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      const double F1 = hydraulics::froude_number(in[1], in[0]);
      if (!(F1 > 1.0)) return bad_input("F1", F1, 1.0, no_limit, "flow that is not supercritical makes no jump");
      return store(hydraulics::sequent_depth_with_drag({.y1 = in[0], .V1 = in[1], .f = in[2]}), out);
    }};

const Method depth_above_piers{
    .id = "pier.depth_above.momentum",
    .title = "Depth above bridge piers by momentum with their drag, rectangular strip",
    .kind = EquationKind::residual,
    .equation = "y1^2/2 + (V2*y2)^2/(g*y1) = y2^2/2 + (V2*y2)^2/(g*y2) + CD*a*(V2*y2)^2/(2*g*s*y1)",
    .inputs = pier_in,
    .outputs = y1_out,
    .source = "momentum",
    .place = "momentum from above to below the piers, drag CD a y1 rho V1^2/2 on each, no bed friction",
    .provenance = Provenance::derived,
    .accuracy = "exact under its assumptions; the backwater is as good as the coefficient",
    .condition = [](std::span<const double> in) -> std::string_view {
      return in[2] < 0.5 * in[3] ? std::string_view{} : "the piers take half the width or more: the flow may choke";
    },
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      const double F2 = hydraulics::froude_number(in[1], in[0]);
      if (!(F2 < 1.0)) return bad_input("F2", F2, 0.0, 1.0, "the flow below the piers must be subcritical");
      if (!(in[2] < in[3])) return bad_input("a", in[2], 0.0, in[3], "a pier is thinner than the spacing");
      return store(hydraulics::depth_above_piers({.y2 = in[0], .V2 = in[1], .a = in[2], .s = in[3], .CD = in[4]}), out);
    }};

}  // namespace record
}  // namespace quell::hydraulics
