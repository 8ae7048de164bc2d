// Properties of lengths, surface and state of the jump that hold whatever the numbers.
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <cmath>

#include "quell/hydraulics/jump_inside.h"
#include "quell/hydraulics/jump_lengths.h"
#include "quell/hydraulics/jump_submerged.h"
#include "quell/hydraulics/jump_turbulence.h"
#include "quell/hydraulics/jump_undular.h"
#include "quell/hydraulics/model_rules.h"

namespace quell::hydraulics {
namespace {

/// A number between two positive ones, even in its logarithm, in a million steps.
double drawn(double low, double high) {
  const int step = *rc::gen::resize(rc::kNominalSize, rc::gen::inRange(0, 1000001));
  return low * std::pow(high / low, step * 1e-6);
}

JumpShape shape(double F1, double y1) {
  return {F1, y1, sequent_depth({.y1 = y1, .V1 = F1 * std::sqrt(gravity * y1)})};
}

/// What evaluate names when it refuses.
std::string_view refused(const Method& method, std::initializer_list<double> inputs) {
  std::vector<double> out(method.outputs.size());
  const auto done = method.answer(std::vector<double>(inputs), out);
  return done ? std::string_view("answered") : done.error().symbol;
}

RC_GTEST_PROP(JumpLengths, FroudeNumberOfTheDepthsIsTheOneTheyCameFrom, ()) {
  const double F1 = drawn(1.001, 30.0);
  const auto jump = shape(F1, drawn(0.01, 10.0));
  RC_ASSERT(std::abs(froude_number_of({.y1 = jump.y1, .y2 = jump.y2}) - F1) < 1e-11 * F1);
}

RC_GTEST_PROP(JumpLengths, BandEnclosesEveryLengthInItsRangeAndTouchesTwo, ()) {
  const auto jump = shape(drawn(1.7, 20.0), drawn(0.01, 10.0));
  const auto band = jump_length_band(jump);
  RC_ASSERT(band.has_value());
  int inside = 0, touched = 0;
  for (const auto& one : jump_length_fits()) {
    if (!one.F1.contains(jump.F1)) continue;
    const double length = one.length(jump);
    RC_ASSERT(length >= band->lowest && length <= band->highest);
    ++inside;
    touched += length == band->lowest || length == band->highest ? 1 : 0;
  }
  RC_ASSERT(inside == band->count && touched >= 2 && band->lowest > 0.0);
}

RC_GTEST_PROP(JumpLengths, ScaleWithTheJump, ()) {
  const auto jump = shape(drawn(1.7, 20.0), drawn(0.01, 10.0));
  const double scale = drawn(0.1, 10.0);
  const JumpShape larger{jump.F1, scale * jump.y1, scale * jump.y2};
  for (const auto& one : jump_length_fits())
    RC_ASSERT(std::abs(one.length(larger) - scale * one.length(jump)) <= 1e-12 * scale * one.length(jump));
}

TEST(JumpLengths, BandIsRefusedWithoutARoller) {
  const auto none = jump_length_band(shape(1.5, 1.0));
  ASSERT_FALSE(none.has_value());
  EXPECT_EQ(none.error().symbol, "F1");
  EXPECT_EQ(refused(record::jump_length_smetana_1934, {2.0, 1.0}), "y2");
  EXPECT_EQ(refused(record::jump_length_silvester_1964, {0.9, 1.0}), "F1");
  EXPECT_EQ(refused(record::jump_length_trapezoidal, {-0.5, 1.0, 2.0}), "m");
}

RC_GTEST_PROP(RollerSurface, NeverFallsAndGoesFromY1ToY2, ()) {
  const auto jump = shape(drawn(1.7, 20.0), drawn(0.01, 10.0));
  const double Lr = drawn(0.5, 60.0), Lj = Lr * drawn(0.3, 5.0);
  const auto at = [&](double x) { return roller_surface({.x = x, .y1 = jump.y1, .y2 = jump.y2, .Lr = Lr, .Lj = Lj}); };
  RC_ASSERT(at(0.0) == jump.y1 && at(-1.0) == jump.y1);
  RC_ASSERT(std::abs(at(2.0 * Lr) - jump.y2) < 1e-12 * jump.y2);
  double before = jump.y1;
  for (int i = 1; i <= 200; ++i) {
    const double y = at(2.2 * Lr * i / 200.0);
    RC_ASSERT(y >= before - 1e-12 * jump.y2);
    before = y;
  }
}

RC_GTEST_PROP(RollerSurface, HasNoStepAndNoKinkAtItsJoints, ()) {
  const double Lr = drawn(0.5, 60.0), Lj = Lr * drawn(1.1, 1.9), h = 1e-6 * Lr;
  const auto at = [&](double x) { return roller_surface({.x = x, .y1 = 1.0, .y2 = 2.0, .Lr = Lr, .Lj = Lj}); };
  for (const double joint : {Lr, Lj}) {
    const double left = (at(joint) - at(joint - h)) / h * Lr, right = (at(joint + h) - at(joint)) / h * Lr;
    RC_ASSERT(std::abs(left - right) < 1e-3);
  }
}

RC_GTEST_PROP(WallJet, IsLargestNearAFifthOfItsHalfHeightAndFallsFromThere, ()) {
  const double b = drawn(0.05, 3.0), um = drawn(0.5, 30.0);
  const auto at = [&](double eta) { return wall_jet_velocity({.z = eta * b, .b_half = b, .um = um}); };
  RC_ASSERT(at(0.0) == 0.0);
  const double eta = drawn(0.2, 4.0);
  RC_ASSERT(at(eta) <= 1.001 * um && at(eta * 1.01) < at(eta));
}

RC_GTEST_PROP(Air, BandEnclosesTheFourAndGrowsWithTheFroudeNumber, ()) {
  const double F1 = drawn(1.01, 20.0);
  const auto band = air_ratio_band(F1), more = air_ratio_band(1.05 * F1);
  for (const double ratio : {air_ratio_kalinske(F1), air_ratio_rajaratnam(F1), air_ratio_wisner(F1), air_ratio_rabben(F1)})
    RC_ASSERT(ratio >= band.lowest && ratio <= band.highest);
  RC_ASSERT(more.lowest > band.lowest && more.highest > band.highest);
}

RC_GTEST_PROP(Undular, CrestIsAboveTheMeanLevelAndContinuous, ()) {
  const double F1 = drawn(1.0001, 1.7), y1 = drawn(0.05, 10.0);
  const double a = undular_crest_rise({.F1 = F1, .y1 = y1});
  const auto jump = shape(F1, y1);
  RC_ASSERT(a >= jump.y2 - jump.y1 && a <= 2.0 * (jump.y2 - jump.y1) * (1.0 + 1e-12));
  RC_ASSERT(std::abs(undular_crest_rise({.F1 = F1 + 1e-7, .y1 = y1}) - a) < 1e-6 * y1);
}

RC_GTEST_PROP(Undular, WaveRunsWithTheFlowAndLongerNearCritical, ()) {
  const double F2 = drawn(0.2, 0.999), y2 = drawn(0.05, 10.0);
  const auto wave = undular_wave_length({.F2 = F2, .y2 = y2});
  const auto longer = undular_wave_length({.F2 = F2 + 0.5 * (1.0 - F2), .y2 = y2});
  RC_ASSERT(wave.has_value() && longer.has_value() && *longer > *wave);
  const double k = 2.0 * 3.14159265358979323846 / *wave;
  const double celerity = std::sqrt(gravity / k * std::tanh(k * y2));
  RC_ASSERT(std::abs(celerity - F2 * std::sqrt(gravity * y2)) < 1e-9 * celerity);
}

TEST(Undular, RefusesFlowThatIsNotSubcriticalBehindTheFront) {
  EXPECT_EQ(refused(record::undular_wave_length, {1.0, 1.0}), "F2");
  EXPECT_EQ(refused(record::undular_wave_length, {0.0, 1.0}), "F2");
  EXPECT_EQ(refused(record::undular_first_crest, {0.99, 1.0}), "F1");
}

RC_GTEST_PROP(Submerged, BalancesMomentumAndIsTheFreeJumpWithoutSubmergence, ()) {
  const double F1 = drawn(1.05, 15.0), y1 = drawn(0.02, 3.0), V1 = F1 * std::sqrt(gravity * y1), q = V1 * y1;
  const auto free = shape(F1, y1);
  const auto limit = submerged_jump({.y1 = y1, .V1 = V1, .yt = free.y2});
  RC_ASSERT(limit.has_value());
  // y3 is the root of a difference of large squares: relative 1e-9 at F1 = 15.
  RC_ASSERT(std::abs(limit->y3 - y1) < 1e-9 * free.y2);
  RC_ASSERT(std::abs(limit->dE - jump_energy_loss({.y1 = y1, .y2 = free.y2})) < 1e-8 * (y1 + V1 * V1));
  const double yt = free.y2 * (1.0 + drawn(0.001, 2.0));
  const auto jump = submerged_jump({.y1 = y1, .V1 = V1, .yt = yt});
  RC_ASSERT(jump.has_value() && jump->y3 > y1 && jump->y3 < yt && jump->dE > 0.0);
  const double before = jump->y3 * jump->y3 / 2.0 + q * V1 / gravity;
  const double after = yt * yt / 2.0 + q * q / (gravity * yt);
  RC_ASSERT(std::abs(before - after) < 1e-10 * after);
}

TEST(Submerged, RefusesAFreeJumpByItsTailwater) {
  EXPECT_EQ(refused(record::submerged_jump, {0.5, 8.0, 2.0}), "yt");
  EXPECT_EQ(refused(record::submerged_jump, {0.5, 1.0, 2.0}), "F1");
  EXPECT_EQ(refused(record::submerged_jump_length, {1.0, -0.1}), "Sub");
}

RC_GTEST_PROP(Turbulence, LargestPressureStandsBelowTheRollerAndIsASmallShareOfTheVelocityHead, ()) {
  const double F1 = drawn(4.5, 10.0), y1 = drawn(0.05, 5.0);
  const auto largest = pressure_fluctuation({.F1 = F1, .y1 = y1});
  RC_ASSERT(largest.Cp_prime > 0.03 && largest.Cp_prime < 0.09);
  RC_ASSERT(largest.station > 0.0 && largest.station < roller_length({.F1 = F1, .y1 = y1}));
}

TEST(Turbulence, SlabLighterThanWaterIsRefused) {
  EXPECT_EQ(refused(record::slab_thickness, {1.0, 0.1, 20.0, 9000.0}), "gamma_c");
}

RC_GTEST_PROP(ModelRules, AModelAtTheLargestScaleMeetsBothLimits, ()) {
  const double q = drawn(0.5, 200.0), y1 = drawn(0.05, 5.0);
  const double scale = largest_model_scale({.q = q, .y1 = y1});
  const double model_depth = y1 / scale, model_reynolds = q / std::pow(scale, 1.5) / water_viscosity;
  RC_ASSERT(model_depth > 0.03 * (1.0 - 1e-12) && model_reynolds > 1e5 * (1.0 - 1e-12));
  RC_ASSERT(model_depth < 0.03 * (1.0 + 1e-9) || model_reynolds < 1e5 * (1.0 + 1e-9));
}

RC_GTEST_PROP(JumpClasses, NeverFallWithTheFroudeNumber, ()) {
  const double F1 = drawn(0.5, 20.0);
  RC_ASSERT(classify_jump(F1 * 1.01) >= classify_jump(F1));
  RC_ASSERT(!meaning_of(classify_jump(F1)).empty());
}

}  // namespace
}  // namespace quell::hydraulics
