// Properties of jumps on slopes, at steps, under forces and in widening basins: they become the classical jump where slope,
// step, force or widening vanishes, balance momentum, and move the sequent depth the way mechanics says.
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <cmath>

#include "quell/hydraulics/jump_expanding.h"
#include "quell/hydraulics/jump_forced.h"
#include "quell/hydraulics/jump_slope.h"
#include "quell/hydraulics/jump_steps.h"

namespace quell::hydraulics {
namespace {

/// A number between two positive ones, even in its logarithm, in a million steps.
double drawn(double low, double high) {
  const int step = *rc::gen::resize(rc::kNominalSize, rc::gen::inRange(0, 1000001));
  return low * std::pow(high / low, step * 1e-6);
}

void close(double a, double b, double relative) {
  RC_ASSERT(std::isfinite(a) && std::isfinite(b));
  RC_ASSERT(std::abs(a - b) <= relative * std::max(std::abs(a), std::abs(b)));
}

double answered(const Outcome<double>& outcome) {
  RC_ASSERT(outcome.has_value());
  return *outcome;
}

JumpInflow inflow_drawn(double least_F1 = 1.1) {
  const double y1 = drawn(0.01, 5.0);
  return {y1, drawn(least_F1, 20.0) * std::sqrt(gravity * y1)};
}

/// Force of pressure and momentum over the unit weight of water, m2, on a strip.
double thrust(double q, double y) {
  return y * y / 2.0 + q * q / (gravity * y);
}

RC_GTEST_PROP(AbruptDrop, BalancesMomentumAndRaisesTheDepth, ()) {
  const auto [y1, V1] = inflow_drawn();
  const double q = y1 * V1;
  const double classical = sequent_depth({.y1 = y1, .V1 = V1});
  const double s = drawn(1e-3, 5.0) * y1;
  const StepJumpInput input{.y1 = y1, .V1 = V1, .s = s};
  const double a = answered(sequent_depth_drop_a(input));
  const double b = answered(sequent_depth_drop_b(input));
  close(thrust(q, y1), (a - s) * (a - s) / 2.0 + q * q / (gravity * a), 1e-9);
  close((y1 + s) * (y1 + s) / 2.0 + q * q / (gravity * y1), thrust(q, b), 1e-9);
  RC_ASSERT(b > classical);
  RC_ASSERT(a > b);
  const StepJumpInput deeper{.y1 = y1, .V1 = V1, .s = 1.01 * s};
  RC_ASSERT(answered(sequent_depth_drop_a(deeper)) > a);
  RC_ASSERT(answered(sequent_depth_drop_b(deeper)) > b);
  const double F1 = froude_number(V1, y1);
  // The difference that the inverse forms for (A) loses digits as the drop outgrows the jump.
  close(answered(froude_number_drop_b({.y1 = y1, .y2 = b, .s = s})), F1, 1e-7);
  close(answered(froude_number_drop_a({.y1 = y1, .y2 = a, .s = s})), F1, 1e-6);
}

RC_GTEST_PROP(Steps, WithoutOneTheyAreTheClassicalJump, ()) {
  const auto [y1, V1] = inflow_drawn();
  const double classical = sequent_depth({.y1 = y1, .V1 = V1});
  const StepJumpInput flat{.y1 = y1, .V1 = V1, .s = 0.0};
  close(answered(sequent_depth_drop_a(flat)), classical, 1e-9);
  close(answered(sequent_depth_drop_b(flat)), classical, 1e-9);
  close(answered(sequent_depth_rise_momentum(flat)), classical, 1e-9);
  close(answered(sequent_depth_rise_energy(flat)), classical, 1e-9);
}

RC_GTEST_PROP(AbruptRise, LowersTheDepthUntilItChokes, ()) {
  const auto [y1, V1] = inflow_drawn(1.5);
  const double q = y1 * V1;
  const double classical = sequent_depth({.y1 = y1, .V1 = V1});
  const double highest = largest_rise({.y1 = y1, .V1 = V1});
  // The balance of momentum chokes a little sooner than that of energy.
  const double s = highest * drawn(1e-3, 0.8);
  const double by_momentum = answered(sequent_depth_rise_momentum({.y1 = y1, .V1 = V1, .s = s}));
  const double by_energy = answered(sequent_depth_rise_energy({.y1 = y1, .V1 = V1, .s = s}));
  RC_ASSERT(by_momentum < classical);
  RC_ASSERT(by_energy < classical);
  close(thrust(q, classical) - s * (2.0 * classical - s) / 2.0, thrust(q, by_momentum), 1e-9);
  close(classical + q * q / (2.0 * gravity * classical * classical),
        s + by_energy + q * q / (2.0 * gravity * by_energy * by_energy), 1e-10);
  RC_ASSERT(!sequent_depth_rise_energy({.y1 = y1, .V1 = V1, .s = highest + 0.01 * classical}));
}

RC_GTEST_PROP(ForcedJump, BalancesMomentumAndFallsWithTheForce, ()) {
  const auto [y1, V1] = inflow_drawn();
  const double q = y1 * V1;
  const double classical = sequent_depth({.y1 = y1, .V1 = V1});
  close(answered(sequent_depth_forced({.y1 = y1, .V1 = V1, .Phi = 0.0})), classical, 1e-9);
  const double yc = std::cbrt(q * q / gravity);
  const double most = (thrust(q, y1) - thrust(q, yc)) / (y1 * y1 / 2.0);
  const double Phi = most * drawn(1e-3, 0.99);
  const double y2 = answered(sequent_depth_forced({.y1 = y1, .V1 = V1, .Phi = Phi}));
  close(thrust(q, y1) - Phi * y1 * y1 / 2.0, thrust(q, y2), 1e-9);
  RC_ASSERT(y2 > yc);
  RC_ASSERT(y2 < classical);
  RC_ASSERT(!sequent_depth_forced({.y1 = y1, .V1 = V1, .Phi = 1.01 * most}));
}

RC_GTEST_PROP(RoughBed, LowersTheDepthAndVanishesWithTheRoughness, ()) {
  const auto [y1, V1] = inflow_drawn();
  const double F1 = froude_number(V1, y1);
  const double classical = sequent_depth({.y1 = y1, .V1 = V1});
  close(answered(sequent_depth_forced({.y1 = y1, .V1 = V1, .Phi = shear_index_corrugated(F1)})), F1 * y1, 1e-9);
  RC_ASSERT(answered(sequent_depth_forced({.y1 = y1, .V1 = V1, .Phi = shear_index_smooth(F1)})) <= classical * (1.0 + 1e-12));
  close(sequent_depth_gravel({.y1 = y1, .V1 = V1, .ks = 0.0}), classical, 1e-12);
  const double ks = y1 * drawn(0.001, 1.0);
  const double rough = sequent_depth_gravel({.y1 = y1, .V1 = V1, .ks = ks});
  RC_ASSERT(rough < classical);
  RC_ASSERT(sequent_depth_gravel({.y1 = y1, .V1 = V1, .ks = 1.01 * ks}) < rough);
}

// At small r - 1 the balance between rays says that widening lowers y2 where Y > 1 + sqrt(3) (F1 > 2.26), and that of the
// sudden expansion where Y > 2 (F1 > 1.73): a weaker jump rises as its walls part.
RC_GTEST_PROP(WideningBasin, BalancesMomentumAndLowersTheDepth, ()) {
  const auto [y1, V1] = inflow_drawn(2.3);
  const double q = y1 * V1;
  const double classical = sequent_depth({.y1 = y1, .V1 = V1});
  close(answered(sequent_depth_radial({.y1 = y1, .V1 = V1, .r = 1.0})), classical, 1e-9);
  close(answered(sequent_depth_expansion({.y1 = y1, .V1 = V1, .B = 1.0})), classical, 1e-9);
  close(sequent_depth_herbrand({.y1 = y1, .V1 = V1, .B = 1.0}), classical, 1e-12);
  const double r = 1.0 + drawn(1e-4, 1.0);
  const double y2 = answered(sequent_depth_radial({.y1 = y1, .V1 = V1, .r = r}));
  RC_ASSERT(y2 < classical);
  RC_ASSERT(answered(sequent_depth_radial({.y1 = y1, .V1 = V1, .r = 1.01 * r})) < y2);
  const double walls = (r - 1.0) * (y1 * y1 + y1 * y2 + y2 * y2) / 6.0;
  close(thrust(q, y1) + walls, r * thrust(q / r, y2), 1e-9);
  const double wide = answered(sequent_depth_expansion({.y1 = y1, .V1 = V1, .B = r}));
  RC_ASSERT(wide < classical);
  close(thrust(q, y1) + (r - 1.0) * y1 * y1 / 2.0, r * thrust(q / r, wide), 1e-9);
}

RC_GTEST_PROP(SlopingApron, BecomesTheLevelOneAndRisesWithTheSlope, ()) {
  const auto [d1, V1] = inflow_drawn();
  const double classical = sequent_depth({.y1 = d1, .V1 = V1});
  const double Lj = classical * drawn(0.1, 8.0);
  close(answered(sequent_depth_sloping({{d1, V1, 0.0}, Lj})), classical, 1e-9);
  close(answered(sequent_depth_kindsvater({{d1, V1, 0.0}, 2.0})), classical, 1e-9);
  for (const auto fit : {sequent_depth_subramanya, sequent_depth_rajaratnam, sequent_depth_chow})
    close(fit({d1, V1, 0.0}), classical, 1e-12);
  const double theta = drawn(1e-3, 0.29);
  const double y2 = answered(sequent_depth_sloping({{d1, V1, theta}, Lj}));
  const double d2 = y2 * std::cos(theta);
  const double weight = Lj * std::sin(theta) * (d1 + d2) / 2.0;
  const double before = std::cos(theta) * d1 * d1 / 2.0 + d1 * V1 * V1 / gravity;
  const double after = std::cos(theta) * d2 * d2 / 2.0 + d1 * d1 * V1 * V1 / (gravity * d2);
  close(before + weight, after, 1e-9);
  RC_ASSERT(y2 > classical);
  RC_ASSERT(answered(sequent_depth_sloping({{d1, V1, 1.01 * theta}, Lj})) > y2);
  RC_ASSERT(answered(sequent_depth_sloping({{d1, V1, theta}, 1.01 * Lj})) > y2);
  for (const auto fit : {sequent_depth_subramanya, sequent_depth_rajaratnam, sequent_depth_chow}) {
    RC_ASSERT(fit({d1, V1, theta}) > classical);
    RC_ASSERT(fit({d1, V1, 1.01 * theta}) > fit({d1, V1, theta}));
  }
}

RC_GTEST_PROP(SlopingApron, AdverseBedLowersTheDepthOrStopsTheFlow, ()) {
  const auto [d1, V1] = inflow_drawn();
  const double classical = sequent_depth({.y1 = d1, .V1 = V1});
  const auto y2 = sequent_depth_sloping({{d1, V1, -drawn(1e-3, 0.3)}, 6.0 * classical});
  if (!y2) RC_DISCARD("the weight stops the flow");
  RC_ASSERT(*y2 < classical);
}

TEST(SlopingApron, FitIsContinuousWhereTheBridgeMeetsIt) {
  EXPECT_NEAR(sloping_ratio(0.02), 1.0071 * std::exp(3.2386 * 0.02), 1e-14);
  EXPECT_NEAR(sloping_ratio(0.02 - 1e-9), sloping_ratio(0.02 + 1e-9), 1e-8);
  EXPECT_DOUBLE_EQ(sloping_ratio(0.0), 1.0);
}

// The bend of the jet at the break costs momentum, which a jump little above critical flow does not have.
RC_GTEST_PROP(SlopeBreak, BalancesMomentumBetweenTheLevelApronAndTheSlope, ()) {
  const auto [d1, V1] = inflow_drawn(1.5);
  const double classical = sequent_depth({.y1 = d1, .V1 = V1});
  close(answered(sequent_depth_slope_break({{d1, V1, 1e-7}, 0.0, 6.0 * classical})), classical, 1e-9);
  const double theta = drawn(0.01, 0.35);
  const double Lj = classical * drawn(4.0, 8.0);
  const double share = drawn(1e-3, 1.0);
  const double z1 = share * Lj * std::tan(theta) * (1.0 - 1e-12);
  const double y2 = answered(sequent_depth_slope_break({{d1, V1, theta}, z1, Lj}));
  const double q = d1 * V1;
  const double toe = d1 / std::cos(theta);
  const double at_break = z1 + toe + (y2 - z1 - toe) * share;
  const double before = d1 * d1 * std::pow(std::cos(theta), 2) / 2.0 + q * V1 / gravity * std::cos(theta);
  close(before + z1 / 2.0 * (toe + at_break), thrust(q, y2), 1e-9);
  RC_ASSERT(answered(sequent_depth_slope_break({{d1, V1, theta}, 0.999 * z1, Lj})) < y2);
  RC_ASSERT(!sequent_depth_slope_break({{d1, V1, theta}, 1.01 * Lj * std::tan(theta), Lj}));
}

RC_GTEST_PROP(SlopeBreak, LengthRunsFromTheLevelOneToTheSlopingOne, ()) {
  const double y2s = drawn(0.1, 30.0);
  const double t = drawn(0.01, 0.3);
  close(jump_length_slope_break({.y2s = y2s, .z1 = 0.0}), 6.1 * y2s, 1e-12);
  const double sloping = jump_length_sloping({.y2s = y2s, .t = t});
  close(jump_length_slope_break({.y2s = y2s, .z1 = t * sloping}), sloping, 1e-12);
}

RC_GTEST_PROP(SlopingApron, LossIsThatOfTheLevelJumpWithoutASlope, ()) {
  const auto [d1, V1] = inflow_drawn();
  const double y2 = sequent_depth({.y1 = d1, .V1 = V1});
  const double loss = energy_loss_sloping({{d1, V1, 0.0}, 6.0 * y2, y2});
  RC_ASSERT(std::abs(loss - jump_energy_loss({.y1 = d1, .y2 = y2})) < 1e-12 * (d1 + V1 * V1 / (2.0 * gravity)));
}

TEST(StructuresOfJumps, RefuseBySymbol) {
  const auto symbol = [](const auto& outcome) { return outcome ? std::string_view("answered") : outcome.error().symbol; };
  const JumpInflow slow{.y1 = 1.0, .V1 = 2.0};
  EXPECT_EQ(symbol(sequent_depth_drop_a({.y1 = slow.y1, .V1 = slow.V1, .s = 1.0})), "F1");
  EXPECT_EQ(symbol(sequent_depth_forced({.y1 = slow.y1, .V1 = slow.V1, .Phi = 0.0})), "F1");
  EXPECT_EQ(symbol(sequent_depth_radial({.y1 = slow.y1, .V1 = slow.V1, .r = 1.5})), "F1");
  EXPECT_EQ(symbol(sequent_depth_sloping({{slow.y1, slow.V1, 0.1}, 6.0})), "F1");
  EXPECT_EQ(symbol(sequent_depth_expansion({.y1 = 1.0, .V1 = 15.0, .B = 0.9})), "B");
  EXPECT_EQ(symbol(sequent_depth_radial({.y1 = 1.0, .V1 = 15.0, .r = 0.9})), "r");
  EXPECT_EQ(symbol(sequent_depth_kindsvater({{1.0, 15.0, 0.2}, 3.0})), "K");
  EXPECT_EQ(symbol(sequent_depth_slope_break({{1.0, 15.0, 0.2}, 9.0, 40.0})), "z1");
  EXPECT_EQ(symbol(froude_number_drop_b({.y1 = 1.0, .y2 = 1.5, .s = 1.0})), "y2");
}

}  // namespace
}  // namespace quell::hydraulics
