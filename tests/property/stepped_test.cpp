// Properties of stepped chutes and of the velocity at the toe that hold whatever the numbers.
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <cmath>

#include "quell/hydraulics/chute_symbols.h"
#include "quell/hydraulics/energy.h"
#include "quell/hydraulics/section.h"
#include "quell/hydraulics/stepped_chute.h"
#include "quell/hydraulics/toe_velocity.h"

namespace quell::hydraulics {
namespace {

double drawn(double low, double high) {
  const int step = *rc::gen::resize(rc::kNominalSize, rc::gen::inRange(0, 1000001));
  return low * std::pow(high / low, step * 1e-6);
}

/// Skimming flow over steps on a slope between the bounds (degrees).
SteppedChuteInput skimming_chute(double flattest, double steepest) {
  SteppedChuteInput chute{};
  chute.phi = drawn(flattest, steepest) * degree;
  chute.step_height = drawn(0.15, 2.5);
  const double onset = skimming_onset({.s = chute.step_height, .phi = chute.phi}).skimming;
  chute.q = std::sqrt(gravity * std::pow(onset * drawn(1.001, 8.0), 3));
  chute.Hdam = critical_depth(chute.q) * drawn(0.5, 80.0);
  return chute;
}

RC_GTEST_PROP(SteppedToe, KeepsLessThanTheHeadAtTheCrestAndMoreThanCriticalFlow, ()) {
  const auto chute = skimming_chute(10.0, 55.0);
  const auto toe = stepped_chute_toe(chute);
  RC_ASSERT(toe.has_value());
  const double dc = critical_depth(chute.q);
  RC_ASSERT(toe->residual_head < chute.Hdam + 1.5 * dc);
  RC_ASSERT(toe->residual_head > least_energy(chute.q, std::cos(chute.phi)));
  RC_ASSERT(toe->depth < 1.04 * critical_depth_on_slope(chute.q, std::cos(chute.phi)));
  RC_ASSERT(toe->regime == SteppedRegime::skimming);
  RC_ASSERT(toe->basis == (chute.phi > 26 * degree ? SteppedBasis::boes_hager : SteppedBasis::hunt_kadavy));
}

RC_GTEST_PROP(SteppedToe, HeadIsContinuousInDischargeAndDrop, ()) {
  auto chute = skimming_chute(10.0, 55.0);
  const auto here = stepped_chute_toe(chute);
  chute.q *= 1.0 + 1e-7;
  const auto more = stepped_chute_toe(chute);
  chute.Hdam *= 1.0 + 1e-7;
  const auto higher = stepped_chute_toe(chute);
  RC_ASSERT(here.has_value() && more.has_value() && higher.has_value());
  // A step of a branch would be a thousandth and more; the slopes are of the order of 1.
  RC_ASSERT(std::abs(more->residual_head / here->residual_head - 1.0) < 3e-6);
  RC_ASSERT(std::abs(higher->residual_head / more->residual_head - 1.0) < 3e-6);
  RC_ASSERT(std::abs(more->depth / here->depth - 1.0) < 3e-6);
}

RC_GTEST_PROP(SteppedToe, LosesAGreaterShareOverAGreaterDrop, ()) {
  auto chute = skimming_chute(10.0, 55.0);
  const double dc = critical_depth(chute.q);
  const auto here = stepped_chute_toe(chute);
  const double share = here->residual_head / (chute.Hdam + 1.5 * dc);
  chute.Hdam *= drawn(1.001, 2.0);
  const auto there = stepped_chute_toe(chute);
  RC_ASSERT(there->residual_head / (chute.Hdam + 1.5 * dc) < share);
}

RC_GTEST_PROP(SteppedToe, HeadTendsToThatOfUniformFlowByTheSameFriction, ()) {
  auto chute = skimming_chute(19.0, 55.0);
  chute.basis = SteppedBasis::boes_hager;
  const double dc = critical_depth(chute.q);
  chute.Hdam = 1e7 * dc;
  const auto toe = stepped_chute_toe(chute);
  RC_ASSERT(toe.has_value());
  const SteppedFlow flow{.q = chute.q, .s = chute.step_height, .phi = chute.phi};
  const double hw = stepped_uniform_flow(flow).clear_water;
  const double fb = stepped_friction_factor({.hw = hw, .s = chute.step_height, .phi = chute.phi});
  // Uniform flow: the slope of friction is the sine, so that the depth is that of a constant factor.
  const double depth = stepped_depth_chanson({.q = chute.q, .phi = chute.phi, .f = fb});
  RC_ASSERT(std::abs(toe->depth / depth - 1.0) < 1e-4);
}

RC_GTEST_PROP(SteppedToe, SaysWhatIsOutsideAndRefusesWhatIsImpossible, ()) {
  auto chute = skimming_chute(30.0, 50.0);
  auto flat = chute;
  flat.phi = drawn(2.0, 9.9) * degree;
  const auto outside = stepped_chute_toe(flat);
  RC_ASSERT(!outside.has_value() || !outside->inside_range());
  auto thin = chute;
  thin.q = std::sqrt(gravity * std::pow(skimming_onset({.s = chute.step_height, .phi = chute.phi}).nappe * 0.99, 3));
  const auto nappe = stepped_chute_toe(thin);
  RC_ASSERT(nappe.has_value() && nappe->regime == SteppedRegime::nappe && !nappe->inside_range());
  auto dry = chute;
  dry.q = 0.0;
  RC_ASSERT(stepped_chute_toe(dry).error().symbol == "q");
  auto level = chute;
  level.phi = -0.1;
  RC_ASSERT(stepped_chute_toe(level).error().symbol == "phi");
  auto above = chute;
  above.Hdam = -1.0;
  RC_ASSERT(stepped_chute_toe(above).error().symbol == "Hdam");
}

RC_GTEST_PROP(SteppedInception, MovesDownWithDischargeAndTheAuthorsAgreeRoughly, ()) {
  const SteppedFlow flow{.q = drawn(1.0, 30.0), .s = drawn(0.3, 1.5), .phi = drawn(27.0, 30.0) * degree};
  const SteppedFlow more{.q = flow.q * drawn(1.001, 2.0), .s = flow.s, .phi = flow.phi};
  RC_ASSERT(stepped_inception_chanson(more).length > stepped_inception_chanson(flow).length);
  RC_ASSERT(stepped_inception_boes_hager(more).length > stepped_inception_boes_hager(flow).length);
  RC_ASSERT(stepped_inception_hunt_kadavy(more) > stepped_inception_hunt_kadavy(flow));
}

RC_GTEST_PROP(ToeVelocity, IsThatOfFreeFallWithoutLossesAndFallsWithTheShare, ()) {
  const double q = drawn(0.1, 150.0);
  const double E = least_energy(q) * drawn(1.05, 50.0);
  const auto ideal = ideal_velocity({.q = q, .HT = E, .cosine = 1.0});
  const auto whole = toe_velocity({.q = q, .E = E, .phi = 1.0});
  RC_ASSERT(ideal.has_value() && whole.has_value());
  RC_ASSERT(std::abs(*ideal / *whole - 1.0) < 1e-12);
  const auto part = toe_velocity({.q = q, .E = E, .phi = drawn(0.97, 0.9999)});
  if (!part) RC_DISCARD("the losses leave too little head");
  RC_ASSERT(*part < *whole);
}

RC_GTEST_PROP(ToeVelocity, OfTheMonographLiesBelowTheIdealOnlyWhereTheFlowIsThin, ()) {
  const double q = drawn(0.1, 150.0);
  const double H = drawn(0.5, 20.0);
  const double Z = H + drawn(1.0, 200.0);
  const auto ideal = ideal_velocity({.q = q, .HT = Z, .cosine = 1.0});
  if (!ideal) RC_DISCARD("too little head");
  RC_ASSERT((toe_velocity_em25({.Z = Z, .H = H}) < *ideal) == (q / *ideal < H / 2.0));
}

}  // namespace
}  // namespace quell::hydraulics
