// Properties of river profiles: the energy balance of every step, a prismatic reach against its integrated profile, regimes and
// jumps, refinement.
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cmath>
#include <utility>

#include "draws.h"
#include "quell/hydraulics/open_channel_profile.h"
#include "river_models.h"

namespace quell::hydraulics {
namespace {
using draws::close;
using draws::drawn;

using namespace river_models;

RC_GTEST_PROP(RiverProfile, BalancesTheEnergyOfEveryStep, ()) {
  River river;
  double station = 0.0;
  double z = 100.0;
  const int count = *rc::gen::inRange(2, 12);
  for (int i = 0; i < count; ++i) {
    river.add(station, compound(drawn(0.1, 30.0), z));
    const double length = drawn(50.0, 400.0);
    station += length;
    z += length * drawn(1e-4, 2e-3);
  }
  for (auto& reach : river.stations) reach.length = {0.9 * reach.length[0], reach.length[1], 1.2 * reach.length[2]};
  const double Q = drawn(20.0, 600.0);
  const auto profile = river_profile(
      {.stations = river.stations, .discharge = Q, .downstream = {.kind = RiverBoundary::Kind::normal_depth, .value = 1e-3}});
  RC_ASSERT(profile.has_value());
  const auto& nodes = profile->nodes;
  for (std::size_t i = 1; i < nodes.size(); ++i) {
    RC_ASSERT(nodes[i].level >= nodes[i].critical_level - 1e-9);
    if (nodes[i].held_at_critical) {
      RC_ASSERT(nodes[i].level == nodes[i].critical_level);
      continue;
    }
    const auto down = river.sections[i - 1]->at_level(nodes[i - 1].level);
    const auto up = river.sections[i]->at_level(nodes[i].level);
    double length = 0.0;
    for (std::size_t part = 0; part < 3; ++part)
      length += river.stations[i].length[part] *
                (down.part_conveyance[part] / down.conveyance + up.part_conveyance[part] / up.conveyance) / 2.0;
    const double h1 = nodes[i - 1].energy_level - nodes[i - 1].level;
    const double h2 = nodes[i].energy_level - nodes[i].level;
    const double loss =
        length * std::pow(2.0 * Q / (down.conveyance + up.conveyance), 2) + (h1 > h2 ? 0.1 : 0.3) * std::abs(h1 - h2);
    RC_ASSERT(std::abs(nodes[i].energy_level - nodes[i - 1].energy_level - loss) < 1e-8);
    close(nodes[i].conveyance_ratio, up.conveyance / down.conveyance, 1e-9);
  }
}

RC_GTEST_PROP(RiverProfile, AgreesWithTheIntegratedProfileOfAPrismaticReach, ()) {
  const double b = drawn(5.0, 40.0);
  const double m = drawn(0.5, 3.0);
  const double n = drawn(0.02, 0.05);
  const double slope = drawn(2e-4, 1.5e-3);
  const double Q = drawn(20.0, 300.0);
  const auto normal = normal_depth({.section = {b, m}, .bed_slope = slope, .manning_n = n, .discharge = Q});
  RC_ASSERT(normal.has_value());
  const double depth = *normal * drawn(1.05, 2.0);
  const double length = 500.0;
  const ChannelReach reach{
      .section = {b, m}, .discharge = Q, .bed_slope = slope, .friction = {.roughness = n}, .length = length};
  RC_PRE(froude_squared(reach, *normal) < 0.6);
  const auto exact = subcritical_profile(reach, depth);
  RC_ASSERT(exact.has_value());
  River river;
  for (int i = 0; i <= 50; ++i) river.add(10.0 * i, trapezoid(b, m, slope * 10.0 * i, n));
  const auto plain = river_profile(
      {.stations = river.stations, .discharge = Q, .downstream = at_level(depth), .contraction = 0.0, .expansion = 0.0});
  RC_ASSERT(plain.has_value());
  RC_ASSERT(std::abs(plain->nodes.back().level - slope * length - exact->depth_at(0.0)) < 2e-4);
}

TEST(MixedProfile, JumpsWhereTheSpecificForcesAreEqual) {
  // A steep reach between two mild ones, dammed downstream: critical at its head, a jump on it.
  River river;
  double z = 0.0;
  for (int i = 0; i <= 150; ++i) {
    if (i > 0) z += 10.0 * (i <= 50 ? 0.0005 : i <= 100 ? 0.02 : 0.0005);
    river.add(10.0 * i, trapezoid(20.0, 1.0, z, 0.025));
  }
  const RiverProfileInput input{.stations = river.stations,
                                .discharge = 100.0,
                                .downstream = at_level(6.0),
                                .contraction = 0.0,
                                .expansion = 0.0,
                                .regime = ProfileRegime::mixed};
  const auto mixed = river_profile(input);
  ASSERT_TRUE(mixed.has_value());
  int jumps = 0;
  for (std::size_t i = 0; i + 1 < mixed->nodes.size(); ++i) {
    const auto& node = mixed->nodes[i];
    const auto& above = mixed->nodes[i + 1];
    if (!node.jump) continue;
    ++jumps;
    EXPECT_LT(node.froude, 1.0);
    EXPECT_GT(above.froude, 1.0);
    EXPECT_GT(above.station, 500.0);
    EXPECT_LT(above.station, 1000.0);
    // The level below the jump is near the sequent depth of the flow above it: within what a step of 10 m leaves open.
    const auto& section = *river.stations[i + 1].section;
    EXPECT_GT(section.specific_force(above.level, 100.0), section.specific_force(above.critical_level, 100.0));
  }
  EXPECT_EQ(jumps, 1);
  // Downstream of the jump it is the subcritical profile, far upstream as well; on the steep reach the supercritical one.
  RiverProfileInput one = input;
  one.regime = ProfileRegime::subcritical;
  const auto tranquil = river_profile(one);
  one.regime = ProfileRegime::supercritical;
  const auto rapid = river_profile(one);
  ASSERT_TRUE(tranquil.has_value() && rapid.has_value());
  EXPECT_EQ(mixed->nodes.front().level, tranquil->nodes.front().level);
  EXPECT_EQ(mixed->nodes.back().level, tranquil->nodes.back().level);
  EXPECT_EQ(mixed->nodes[95].level, rapid->nodes[95].level);
  EXPECT_GT(mixed->nodes[95].froude, 1.2);
  for (std::size_t i = 0; i < mixed->nodes.size(); ++i) {
    const auto& section = *river.stations[i].section;
    const double force = section.specific_force(mixed->nodes[i].level, 100.0);
    EXPECT_GE(force, section.specific_force(tranquil->nodes[i].level, 100.0) * (1.0 - 1e-12));
    EXPECT_GE(force, section.specific_force(rapid->nodes[i].level, 100.0) * (1.0 - 1e-12));
  }
}

TEST(RefinedRiver, NarrowsTheRatioOfConveyancesAndConverges) {
  River river;
  river.add(0.0, compound(0.0, 100.0));
  river.add(600.0, compound(40.0, 101.0));
  const auto level_with = [&](double spacing) {
    const auto refinement = refined(river.stations, spacing);
    EXPECT_TRUE(refinement.has_value());
    const auto profile = river_profile({.stations = refinement->stations, .discharge = 300.0, .downstream = at_level(103.0)});
    EXPECT_TRUE(profile.has_value());
    return std::pair(profile->nodes.back().level, profile->spacing_wide);
  };
  const auto [coarse, coarse_wide] = level_with(1e9);
  EXPECT_TRUE(coarse_wide);
  const auto [fine, fine_wide] = level_with(25.0);
  EXPECT_FALSE(fine_wide);
  const auto [finer, finer_wide] = level_with(12.5);
  EXPECT_LT(std::abs(finer - fine), 0.3 * std::abs(fine - coarse));
  const auto refinement = refined(river.stations, 100.0);
  ASSERT_TRUE(refinement.has_value());
  ASSERT_EQ(refinement->stations.size(), 7U);
  EXPECT_NEAR(refinement->stations[3].station, 300.0, 1e-9);
  EXPECT_NEAR(refinement->stations[3].section->lowest_level(), 100.5, 1e-9);
  double length = 0.0;
  for (const auto& station : refinement->stations) length += station.length[1];
  EXPECT_NEAR(length, 600.0, 1e-9);
}

TEST(ReachError, VanishesWithTheLengthOfTheReach) {
  double before = 1e9;
  for (const double length : {500.0, 1500.0, 4500.0}) {
    River river;
    for (int i = 0; i <= 60; ++i) river.add(length * i / 60.0, compound(0.0, 100.0 + 0.0008 * length * i / 60.0));
    const auto error = reach_error({.stations = river.stations, .discharge = 200.0}, 102.5, 104.5);
    ASSERT_TRUE(error.has_value());
    EXPECT_LT(*error, 0.8 * before);
    before = *error;
  }
  EXPECT_LT(before, 0.3);
}

TEST(RiverProfile, RefusesWhatIsNoRiver) {
  River river;
  river.add(0.0, compound(0.0, 100.0));
  river.add(100.0, compound(0.0, 100.1));
  RiverProfileInput input{.stations = river.stations, .discharge = 0.0};
  EXPECT_EQ(river_profile(input).error().symbol, "Q");
  input.discharge = 100.0;
  input.expansion = 1.5;
  EXPECT_EQ(river_profile(input).error().symbol, "Ce");
  input.expansion = 0.3;
  input.downstream = at_level(90.0);
  EXPECT_EQ(river_profile(input).error().symbol, "w");
  input.downstream = {.kind = RiverBoundary::Kind::normal_depth, .value = -0.001};
  EXPECT_EQ(river_profile(input).error().symbol, "S");
  std::swap(river.stations[0], river.stations[1]);
  EXPECT_FALSE(river_profile(input).has_value());
  EXPECT_FALSE(river_profile({.stations = std::span(river.stations).first(1), .discharge = 100.0}).has_value());
  EXPECT_EQ(refined(river.stations, 0.0).error().symbol, "longest_spacing");
}

}  // namespace
}  // namespace quell::hydraulics
