// Properties of the jump beside the classical one, and of the classical one asked backward.
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <array>
#include <cmath>

#include "property/draws.h"
#include "quell/hydraulics/jump_energy.h"
#include "quell/hydraulics/jump_friction.h"
#include "quell/hydraulics/jump_inverse.h"
#include "quell/hydraulics/jump_power_section.h"
#include "quell/hydraulics/specific_energy.h"

namespace quell::hydraulics {
namespace {

using draws::close;
using draws::drawn;

struct Inflow {
  double y1, V1, q, F1;
  JumpInflow jump() const { return {.y1 = y1, .V1 = V1}; }
};

Inflow supercritical_inflow(double least = 1.02) {
  const double y1 = drawn(0.005, 10.0);
  const double F1 = drawn(least, 25.0);
  const double V1 = F1 * std::sqrt(gravity * y1);
  return {y1, V1, V1 * y1, F1};
}

RC_GTEST_PROP(JumpEnergy, RatiosAreThoseOfTheTwoDepths, ()) {
  const auto in = supercritical_inflow();
  const double y2 = sequent_depth(in.jump());
  const Trapezoid strip{1.0, 0.0};
  const double E1 = specific_energy(strip, in.q, in.y1);
  const double E2 = specific_energy(strip, in.q, y2);
  close(jump_efficiency(in.F1), E2 / E1, 1e-10);
  close(relative_jump_loss(in.F1), jump_energy_loss({.y1 = in.y1, .y2 = y2}) / E1, 1e-9);
  close(relative_jump_height(in.F1), (y2 - in.y1) / E1, 1e-10);
  close(froude_number_after_jump(in.F1), froude_number(in.q / y2, y2), 1e-10);
  close(sequent_ratio(in.F1) * sequent_ratio(froude_number_after_jump(in.F1)), 1.0, 1e-10);
  RC_ASSERT(relative_jump_height(in.F1) < 0.506395);
}

RC_GTEST_PROP(JumpInverse, FindsTheFlowThatWasPutIn, ()) {
  const auto in = supercritical_inflow();
  const double y2 = sequent_depth(in.jump());
  const double dE = jump_energy_loss({.y1 = in.y1, .y2 = y2});
  close(jump_discharge({.y1 = in.y1, .y2 = y2}), in.q, 1e-12);
  close(initial_depth({.y2 = y2, .V2 = in.q / y2}).value(), in.y1, 1e-11);
  for (const auto& found : {jump_depths(LossAndDischarge{in.q, dE}), jump_depths(LossAndFroude{in.F1, dE}),
                            jump_depths(DischargeAndFroude{in.q, in.F1})}) {
    RC_ASSERT(found.has_value());
    close(found->y1, in.y1, 1e-10);
    close(found->y2, y2, 1e-10);
  }
}

RC_GTEST_PROP(PowerSectionJump, BalancesMomentumAndMeetsTheTrapezoid, ()) {
  const PowerSection section{.a = drawn(1.0, 3.0), .Tr = drawn(0.1, 50.0), .yr = drawn(0.1, 10.0)};
  const double discharge = drawn(0.05, 3000.0);
  const double y1 = critical_depth(section, discharge).value() * drawn(0.08, 0.97);
  const auto y2 = sequent_depth(section, {.y1 = y1, .discharge = discharge});
  RC_ASSERT(y2.has_value() && *y2 > y1);
  close(momentum_function(section, discharge, y1), momentum_function(section, discharge, *y2), 1e-10);
  RC_ASSERT(specific_energy(section, discharge, y1) > specific_energy(section, discharge, *y2));

  const double m = drawn(0.2, 5.0);
  const double in_triangle = critical_depth(Trapezoid{0.0, m}, discharge).value() * drawn(0.08, 0.97);
  close(sequent_depth(PowerSection{.a = 2.0, .Tr = 2.0 * m}, {.y1 = in_triangle, .discharge = discharge}).value(),
        sequent_depth(Trapezoid{0.0, m}, {.y1 = in_triangle, .discharge = discharge}).value(), 1e-11);
}

RC_GTEST_PROP(TrapezoidalJump, IsContinuousThroughCriticalFlowAndLiesBetweenTriangleAndRectangle, ()) {
  const Trapezoid section{drawn(0.05, 100.0), drawn(0.01, 5.0)};
  const double discharge = drawn(0.05, 3000.0);
  const double yc = critical_depth(section, discharge).value();
  const double off = drawn(1e-9, 1e-4);
  close(sequent_depth(section, {.y1 = yc * (1.0 - off), .discharge = discharge}).value(), yc, 3.0 * off);
  close(sequent_depth(section, {.y1 = yc * (1.0 + off), .discharge = discharge}).value(), yc, 3.0 * off);

  const double y1 = yc * drawn(0.05, 0.97);
  const double F1 = froude_number(section, discharge, y1);
  const double Y = sequent_depth(section, {.y1 = y1, .discharge = discharge}).value() / y1;
  const double triangular = sequent_depth(Trapezoid{0.0, 1.0}, {.y1 = 1.0, .discharge = F1 * std::sqrt(gravity / 2.0)}).value();
  RC_ASSERT(Y < sequent_ratio(F1) * (1.0 + 1e-12) && Y > triangular * (1.0 - 1e-12));
}

RC_GTEST_PROP(JumpLoss, IsAboveZeroInAnySection, ()) {
  const double discharge = drawn(0.05, 3000.0);
  const Trapezoid channel{drawn(0.05, 100.0), drawn(0.01, 5.0)};
  const double y1 = critical_depth(channel, discharge).value() * drawn(0.08, 0.97);
  const double y2 = sequent_depth(channel, {.y1 = y1, .discharge = discharge}).value();
  RC_ASSERT(jump_energy_loss(channel, {.depths = {.y1 = y1, .y2 = y2}, .discharge = discharge}).value() > 0.0);
  const Circle pipe{drawn(0.3, 12.0)};
  const double in_pipe = drawn(0.02, 1.5) * std::sqrt(gravity * std::pow(pipe.D, 5));
  const double before = critical_depth(pipe, in_pipe).value() * drawn(0.3, 0.95);
  const double after = sequent_depth(pipe, {.y1 = before, .discharge = in_pipe}).value();
  RC_ASSERT(jump_energy_loss(pipe, {.depths = {.y1 = before, .y2 = after}, .discharge = in_pipe}).value() > 0.0);
}

RC_GTEST_PROP(JumpWithFriction, IsTheClassicalOneWithoutAndLowerWith, ()) {
  const auto in = supercritical_inflow();
  const double y2 = sequent_depth(in.jump());
  close(sequent_depth_with_friction(in.jump(), 0.0).value(), y2, 1e-9);
  close(sequent_depth(in.jump(), VelocityCoefficients{}).value(), y2, 1e-9);
  const auto rough = sequent_depth_with_friction(in.jump(), drawn(1e-4, 0.3) * in.F1 * in.F1);
  if (rough) RC_ASSERT(*rough < y2);
  RC_ASSERT(sequent_depth_with_friction(in.jump(), smooth_bed_friction(in.F1)).value() <= y2 * (1.0 + 1e-12));
}

RC_GTEST_PROP(JumpWithFriction, OfTheSquareOfF1Less1IsF1TimesTheDepth, ()) {
  const auto in = supercritical_inflow(2.5);
  close(sequent_depth_with_friction(in.jump(), (in.F1 - 1.0) * (in.F1 - 1.0)).value(), in.F1 * in.y1, 1e-9);
}

RC_GTEST_PROP(ViscousJump, ApproachesTheClassicalOneAtScale, ()) {
  const double F1 = drawn(1.1, 10.0);
  const auto share = [F1](double y1) {
    const JumpInflow inflow{.y1 = y1, .V1 = F1 * std::sqrt(gravity * y1)};
    return sequent_depth_viscous(inflow) / sequent_depth(inflow);
  };
  const double y1 = drawn(0.02, 1.0);
  RC_ASSERT(share(y1) < share(2.0 * y1) && share(2.0 * y1) < 1.0);
  RC_ASSERT(share(100.0) > 0.985);
}

RC_GTEST_PROP(LoadedJump, BalancesAndGrowsWithSlopeAndFallsWithDrag, ()) {
  const auto in = supercritical_inflow(1.5);
  LoadedJumpInput input{.b = drawn(0.3, 100.0), .d1 = in.y1, .V1 = in.V1};
  const double classical = sequent_depth(in.jump());
  close(sequent_depth_loaded(input).value(), classical, 1e-9);

  input.drag = drawn(1e-3, 0.1) * water_density * in.V1 * in.q * input.b;
  const auto braked = sequent_depth_loaded(input);
  RC_ASSERT(!braked || *braked < classical);

  input.theta = drawn(0.01, 0.4);
  input.Lj = drawn(1.0, 6.0) * classical;
  const auto sloping = sequent_depth_loaded(input);
  RC_ASSERT(sloping.has_value());
  RC_ASSERT(!braked || *sloping > *braked);
  const double c = std::cos(input.theta);
  const double before = c * in.y1 * in.y1 / 2.0 + in.q * in.V1 / gravity +
                        input.Lj * std::sin(input.theta) * (in.y1 + *sloping) / 2.0 -
                        input.drag / (water_unit_weight * input.b);
  close(before, c * *sloping * *sloping / 2.0 + in.q * in.q / (gravity * *sloping), 1e-9);
}

TEST(JumpHeight, IsGreatestWhereTheSearchFindsIt) {
  double best = 0.0;
  double where = 0.0;
  for (double F1 = 1.0; F1 < 10.0; F1 += 1e-4)
    if (const double height = relative_jump_height(F1); height > best) {
      best = height;
      where = F1;
    }
  EXPECT_NEAR(where, 2.770240, 1e-4);
  EXPECT_NEAR(best, 0.506395, 1e-6);
}

TEST(JumpMethods, RefuseWhatMakesNoJumpByItsSymbol) {
  const auto refused = [](const Method& method, std::initializer_list<double> values) {
    std::array<double, 4> out{};
    const auto done = method.answer(std::span(values.begin(), values.size()), std::span(out).first(method.outputs.size()));
    return done ? std::string_view("an answer") : done.error().symbol;
  };
  EXPECT_EQ(refused(record::efficiency_rectangular, {0.9}), "F1");
  EXPECT_EQ(refused(record::jump_depths_from_loss_and_froude_number, {0.9, 1.0}), "F1");
  EXPECT_EQ(refused(record::initial_depth_rectangular, {1.0, 5.0}), "F2");
  EXPECT_EQ(refused(record::jump_discharge_from_depths, {1.0, 0.5}), "y2");
  EXPECT_EQ(refused(record::sequent_depth_triangular, {1.5, 1.0, 2.0}), "y1");
  EXPECT_EQ(refused(record::sequent_depth_bed_friction, {1.0, 1.0, 0.0}), "F1");
  EXPECT_EQ(refused(record::power_lost, {-1.0, 1.0}), "Q");
}

}  // namespace
}  // namespace quell::hydraulics
