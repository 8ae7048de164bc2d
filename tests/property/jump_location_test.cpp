// Properties of gradually varied flow and of where the jump stands, over channels drawn at random.
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <cmath>

#include "quell/hydraulics/jump.h"
#include "quell/hydraulics/jump_location.h"

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

struct Apron {
  JumpReach reach;
  double q, n, y0, sequent;
};

/// A wide level apron of at most half the length at which its flow would turn critical.
Apron apron_drawn() {
  const double q = drawn(0.1, 100.0);
  const double n = drawn(0.01, 0.03);
  const double critical = critical_depth(q);
  const double y0 = critical * drawn(0.12, 0.8);
  const double until_critical = horizontal_profile_distance({.q = q, .manning_n = n}, {.start = y0, .end = critical});
  const ChannelReach channel{.section = {1.0, 0.0},
                             .discharge = q,
                             .bed_slope = 0.0,
                             .friction = {.law = FrictionLaw::manning, .roughness = n, .walls = false},
                             .length = until_critical * drawn(0.02, 0.5)};
  return {{.channel = channel, .upstream_depth = y0}, q, n, y0, sequent_depth({.y1 = y0, .V1 = q / y0})};
}

/// A channel of any shape with friction, level, mild, steep or adverse.
ChannelReach channel_drawn() {
  const double kind = drawn(1.0, 3.0);
  const double slope = drawn(1e-5, 0.03);
  const bool darcy = drawn(1.0, 2.0) > 1.5;
  return {.section = {drawn(0.5, 50.0), kind > 2.0 ? drawn(0.1, 3.0) : 0.0},
          .discharge = drawn(0.5, 1000.0),
          .bed_slope = kind < 1.3 ? -slope : slope,
          .friction = {.law = darcy ? FrictionLaw::darcy : FrictionLaw::manning,
                       .roughness = darcy ? drawn(1e-4, 0.01) : drawn(0.009, 0.04),
                       .walls = drawn(1.0, 2.0) > 1.2},
          .length = drawn(5.0, 500.0)};
}

RC_GTEST_PROP(Profile, IsTheClosedFormOnAWideLevelApron, ()) {
  const auto apron = apron_drawn();
  const auto profile = supercritical_profile(apron.reach.channel, apron.y0);
  RC_ASSERT(profile.has_value());
  RC_ASSERT(!profile->meets_critical);
  const double L = apron.reach.channel.length;
  for (const double share : {0.1, 0.37, 0.5, 0.82, 1.0}) {
    const double x = share * L;
    const double y = profile->depth_at(x);
    const double distance = horizontal_profile_distance({apron.q, apron.n}, {apron.y0, y});
    // Compared as depths: dy/dx = Sf/(F^2 - 1).
    const double off = (distance - x) * friction_slope(apron.reach.channel, y) / (froude_squared(apron.reach.channel, y) - 1.0);
    RC_ASSERT(std::abs(off) < 1e-8 * std::max(1.0, y));
  }
}

RC_GTEST_PROP(Profile, TakesTheDistanceThatTheIntegralGives, ()) {
  const auto channel = channel_drawn();
  const auto critical = critical_depth(channel.section, channel.discharge);
  RC_ASSERT(critical.has_value());
  const bool supercritical = drawn(1.0, 2.0) > 1.4;
  const double start = *critical * (supercritical ? drawn(0.2, 0.95) : drawn(1.05, 4.0));
  const auto profile = supercritical ? supercritical_profile(channel, start) : subcritical_profile(channel, start);
  RC_ASSERT(profile.has_value());
  const double from = supercritical ? 0.0 : channel.length;
  const double x = from + (profile->last_x() - from) * drawn(0.1, 1.0);
  const double y = profile->depth_at(x);
  // Beside normal depth the distance between two depths is no longer determined by the depths.
  const auto gain = [&](double depth) { return channel.bed_slope - friction_slope(channel, depth); };
  if (std::abs(gain(y)) < 1e-3 * std::max(std::abs(channel.bed_slope), 1e-6)) RC_DISCARD("close to normal depth");
  const auto distance = distance_between(channel, {.start = start, .end = y});
  RC_ASSERT(distance.has_value());
  const double slope = gain(y) / (1.0 - froude_squared(channel, y));
  RC_ASSERT(std::abs(*distance - (x - from)) < 1e-6 || std::abs((*distance - (x - from)) * slope) < 1e-8 * y);
}

RC_GTEST_PROP(Profile, StaysOnItsSideOfCriticalAndRunsOneWay, ()) {
  const auto channel = channel_drawn();
  const auto critical = critical_depth(channel.section, channel.discharge);
  RC_ASSERT(critical.has_value());
  const auto fast = supercritical_profile(channel, *critical * drawn(0.1, 0.99));
  const auto slow = subcritical_profile(channel, *critical * drawn(0.5, 5.0));
  RC_ASSERT(fast.has_value() && slow.has_value());
  for (std::size_t i = 1; i < fast->nodes.size(); ++i) RC_ASSERT(fast->nodes[i].x >= fast->nodes[i - 1].x);
  for (std::size_t i = 1; i < slow->nodes.size(); ++i) RC_ASSERT(slow->nodes[i].x <= slow->nodes[i - 1].x);
  for (const auto& node : fast->nodes) RC_ASSERT(node.y <= *critical * (1.0 + 1e-9));
  for (const auto& node : slow->nodes) RC_ASSERT(node.y >= *critical * (1.0 - 1e-9));
  RC_ASSERT(fast->meets_critical == (fast->last_x() < channel.length));
}

RC_GTEST_PROP(Profile, GoesToNormalDepthOnASteepBed, ()) {
  const double b = drawn(2.0, 50.0);
  const double n = drawn(0.01, 0.02);
  const double discharge = b * drawn(0.2, 20.0);
  const ChannelReach channel{.section = {b, 0.0},
                             .discharge = discharge,
                             .bed_slope = 0.06,
                             .friction = {.law = FrictionLaw::manning, .roughness = n, .walls = true},
                             .length = 20000.0};
  const auto normal = normal_depth({channel.section, channel.bed_slope, n, discharge});
  const auto critical = critical_depth(channel.section, discharge);
  RC_ASSERT(normal.has_value() && critical.has_value());
  RC_ASSERT(*normal < *critical);
  const auto profile = supercritical_profile(channel, *critical);
  RC_ASSERT(profile.has_value());
  close(profile->nodes.back().y, *normal, 1e-8);
}

RC_GTEST_PROP(DirectStep, ConvergesToTheIntegral, ()) {
  const auto apron = apron_drawn();
  const double end = apron.y0 * 1.1;
  const double exact = horizontal_profile_distance({apron.q, apron.n}, {apron.y0, end});
  const auto integral = distance_between(apron.reach.channel, {apron.y0, end});
  RC_ASSERT(integral.has_value());
  close(*integral, exact, 1e-9);
  const auto coarse = direct_step_distance(apron.reach.channel, {apron.y0, end}, 10);
  const auto fine = direct_step_distance(apron.reach.channel, {apron.y0, end}, 20);
  RC_ASSERT(coarse.has_value() && fine.has_value());
  // Of second order: half the step, a quarter of the error.
  close((*coarse - exact) / (*fine - exact), 4.0, 0.05);
}

RC_GTEST_PROP(Toe, LiesBetweenSweepingOutAndDrowning, ()) {
  const auto apron = apron_drawn();
  const auto sweeping = sweep_out_tailwater(apron.reach);
  const auto drowning = drowning_tailwater(apron.reach);
  RC_ASSERT(sweeping.has_value() && drowning.has_value());
  RC_ASSERT(*sweeping < *drowning);
  const auto state = [&](double tailwater) {
    const auto toe = locate_toe(apron.reach, tailwater);
    RC_ASSERT(toe.has_value());
    return toe->state;
  };
  RC_ASSERT(state(*sweeping * (1.0 - 1e-6)) == ToeState::swept_out);
  RC_ASSERT(state(*drowning * (1.0 + 1e-6)) == ToeState::drowned_at_upstream_control);
  const double tailwater = *sweeping + (*drowning - *sweeping) * drawn(0.01, 0.98);
  const auto toe = locate_toe(apron.reach, tailwater);
  RC_ASSERT(toe.has_value());
  RC_ASSERT(toe->state == ToeState::on_reach);
  RC_ASSERT(toe->x > 0.0 && toe->x < apron.reach.channel.length);
  // Momentum, and the closed form of the distance on either side.
  close(sequent_depth({.y1 = toe->y1, .V1 = apron.q / toe->y1}), toe->y2, 1e-9);
  const auto& channel = apron.reach.channel;
  const double fast = horizontal_profile_distance({apron.q, apron.n}, {apron.y0, toe->y1});
  RC_ASSERT(std::abs(fast - toe->x) < 1e-6 * channel.length);
  const double slow = horizontal_profile_distance({apron.q, apron.n}, {toe->y2, tailwater});
  const double slope = friction_slope(channel, tailwater);
  RC_ASSERT(std::abs(slow - (channel.length - toe->x)) * slope < 1e-8 * tailwater);
}

RC_GTEST_PROP(Toe, MovesUpstreamWithMoreTailwaterAndWithBlocks, ()) {
  auto apron = apron_drawn();
  const double sweeping = sweep_out_tailwater(apron.reach).value_or(0.0);
  const double drowning = drowning_tailwater(apron.reach).value_or(0.0);
  RC_ASSERT(drowning > sweeping);
  const double low = sweeping + 0.3 * (drowning - sweeping);
  const double high = sweeping + 0.5 * (drowning - sweeping);
  const auto far = locate_toe(apron.reach, low);
  const auto near = locate_toe(apron.reach, high);
  RC_ASSERT(far.has_value() && near.has_value());
  RC_ASSERT(near->x < far->x);
  // Blocks at the end of the apron: the force counts wherever the toe stands.
  apron.reach.drag = {.position = apron.reach.channel.length,
                      .force = 1e-3 * water_unit_weight * apron.sequent * apron.sequent};
  const auto held = locate_toe(apron.reach, low);
  RC_ASSERT(held.has_value());
  RC_ASSERT(held->x < far->x);
  const auto needed = sweep_out_tailwater(apron.reach);
  RC_ASSERT(needed.has_value());
  RC_ASSERT(*needed < sweeping);
  // Blocks too far upstream to stand in the jump change nothing.
  apron.reach.drag.position = 0.5 * far->x;
  const auto passed = locate_toe(apron.reach, low);
  RC_ASSERT(passed.has_value());
  if (passed->x > apron.reach.drag.position) close(passed->x, far->x, 1e-9);
}

RC_GTEST_PROP(Toe, OfAJumpWithLengthMatchesTheTailwaterAtItsEnd, ()) {
  auto apron = apron_drawn();
  const double sweeping = sweep_out_tailwater(apron.reach).value_or(0.0);
  const double drowning = drowning_tailwater(apron.reach).value_or(0.0);
  const double tailwater = 0.5 * (sweeping + drowning);
  apron.reach.length = {.law = [](double, double, double y2) { return y2; }, .factor = 6.0};
  const auto toe = locate_toe(apron.reach, tailwater);
  RC_ASSERT(toe.has_value());
  if (toe->state != ToeState::on_reach) RC_DISCARD("the length moves the toe out of the apron");
  const auto slow = subcritical_profile(apron.reach.channel, tailwater);
  RC_ASSERT(slow.has_value());
  close(toe->length, 6.0 * toe->y2, 1e-8);
  close(slow->depth_at(toe->end()), toe->y2, 1e-8);
}

RC_GTEST_PROP(Toe, BalancesMomentumInAnyChannelThatHoldsIt, ()) {
  const auto channel = channel_drawn();
  const auto critical = critical_depth(channel.section, channel.discharge);
  RC_ASSERT(critical.has_value());
  const JumpReach reach{.channel = channel, .upstream_depth = *critical * drawn(0.2, 0.9)};
  const double tailwater = *critical * drawn(0.8, 4.0);
  const auto toe = locate_toe(reach, tailwater);
  RC_ASSERT(toe.has_value());
  RC_CLASSIFY(toe->state == ToeState::on_reach);
  if (toe->state != ToeState::on_reach) return;
  const auto fast = supercritical_profile(channel, reach.upstream_depth);
  const auto slow = subcritical_profile(channel, tailwater);
  RC_ASSERT(fast.has_value() && slow.has_value());
  close(momentum_function(channel.section, channel.discharge, toe->y1),
        momentum_function(channel.section, channel.discharge, toe->y2), 1e-9);
  close(fast->depth_at(toe->x), toe->y1, 1e-12);
  close(slow->depth_at(toe->x), toe->y2, 1e-6);
}

TEST(Toe, StaysOnALongMildChannelWhateverTheTailwater) {
  const ChannelReach channel{.section = {8.0, 0.0},
                             .discharge = 16.0,
                             .bed_slope = 0.0005,
                             .friction = {.law = FrictionLaw::manning, .roughness = 0.025, .walls = true},
                             .length = 250.0};
  const JumpReach reach{.channel = channel, .upstream_depth = 0.25};
  const auto needed = sweep_out_tailwater(reach);
  ASSERT_FALSE(needed);
  EXPECT_EQ(needed.error().reason, "the jump stays on the reach at any tailwater");
  EXPECT_EQ(locate_toe(reach, 0.1)->state, ToeState::on_reach);
}

TEST(Toe, IsRefusedBehindSubcriticalFlow) {
  const ChannelReach channel{.section = {1.0, 0.0}, .discharge = 10.0, .bed_slope = 0.0, .friction = {}, .length = 60.0};
  const auto toe = locate_toe({.channel = channel, .upstream_depth = 3.0}, 5.0);
  ASSERT_FALSE(toe);
  EXPECT_EQ(toe.error().symbol, "y0");
  EXPECT_DOUBLE_EQ(toe.error().value, 3.0);
}

}  // namespace
}  // namespace quell::hydraulics
