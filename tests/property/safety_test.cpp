// The safety checks: more head never helps, drains never make it worse, and the datum of the levels does not matter.
#include <gtest/gtest.h>

#include <cmath>

#include "property/safety_case.h"
#include "quell/checks/floor_pulses.h"
#include "quell/design/design.h"
#include "quell/dissipators/catalogue.h"
#include "quell/hydraulics/slab_uplift.h"
#include "quell/io/site_file.h"

namespace quell {
namespace {

using test::example;
using test::safety_of;

class EveryExample : public testing::TestWithParam<const char*> {};

TEST_P(EveryExample, DrainsNeverMakeItWorse) {
  auto site = example(GetParam());
  site.slab.drain_efficiency = 0.0;
  auto before = safety_of(site);
  for (const double efficiency : {0.25, 0.5, 0.67}) {
    site.slab.drain_efficiency = efficiency;
    const auto after = safety_of(site);
    ASSERT_EQ(before.panels.size(), after.panels.size());
    for (std::size_t i = 0; i < after.panels.size(); ++i) {
      EXPECT_LE(after.panels[i].thickness_working, before.panels[i].thickness_working + 1e-12);
      EXPECT_LE(after.panels[i].bar_use, before.panels[i].bar_use + 1e-12);
      EXPECT_LE(after.panels[i].thickness_working, after.panels[i].thickness_failed + 1e-12);
    }
    before = after;
  }
}

TEST_P(EveryExample, MoreGroundWaterNeverHelpsTheEmptyBasin) {
  auto site = example(GetParam());
  site.slab.has_groundwater = true;
  double factor = 1e300;
  double thickness = -1.0;
  for (const double above : {0.0, 1.0, 2.0, 4.0, 8.0}) {
    site.slab.groundwater_level = site.river.bed_level + above;
    const auto safety = safety_of(site);
    if (safety.flotation.factor > 0.0) {
      EXPECT_LE(safety.flotation.factor, factor + 1e-12);
      factor = safety.flotation.factor;
    }
    EXPECT_GE(safety.panels.front().thickness_empty, thickness - 1e-12);
    thickness = safety.panels.front().thickness_empty;
  }
  EXPECT_LT(factor, 1e300) << "the water must have lifted something";
}

TEST_P(EveryExample, AWiderRangeOfPulsesNeverEasesTheAnchors) {
  auto site = example(GetParam());
  double use = -1.0;
  for (const double range : {0.2, 0.8, 1.2, 1.6, 2.0}) {
    site.slab.pressure_range = range;
    const auto safety = safety_of(site);
    EXPECT_GE(safety.panels.front().bar_use, use - 1e-12);
    use = safety.panels.front().bar_use;
  }
}

// A table that says the same everywhere is the envelope; one that decays along the basin never asks for more.
TEST_P(EveryExample, MeasuredPulsesStandInForTheEnvelope) {
  auto site = example(GetParam());
  const auto envelope = safety_of(site);
  for (const double froude : {3.0, 9.0})
    for (const double place : {0.0, 4.0}) site.slab.pressure.push_back({froude, place, 1.6, 0.8});
  const auto same = safety_of(site);
  for (auto& point : site.slab.pressure)
    if (point.place > 0.0) point = {point.froude, point.place, 0.4, 0.2};
  const auto decaying = safety_of(site);
  ASSERT_EQ(same.panels.size(), envelope.panels.size());
  for (std::size_t i = 0; i < same.panels.size(); ++i) {
    EXPECT_DOUBLE_EQ(same.panels[i].bar_force, envelope.panels[i].bar_force);
    EXPECT_LE(decaying.panels[i].bar_use, same.panels[i].bar_use);
  }
  EXPECT_LT(decaying.panels.back().pressure_range, decaying.panels.front().pressure_range);
}

// What the anchors must withstand grows with the states of the joints that count, and the rest is told in a finding.
TEST_P(EveryExample, MoreStatesOfTheJointsNeverEaseTheAnchors) {
  auto site = example(GetParam());
  double use = -1.0;
  for (const auto joints : {site::JointState::sealed, site::JointState::open, site::JointState::one_failed}) {
    site.slab.joints = joints;
    const auto safety = safety_of(site);
    EXPECT_GE(safety.panels.front().bar_use, use);
    use = safety.panels.front().bar_use;
    for (const auto& panel : safety.panels) {
      EXPECT_LE(panel.use_sealed, panel.use_open);
      EXPECT_LE(panel.use_open, panel.use_failed);
      const double counts[] = {panel.use_sealed, panel.use_open, panel.use_failed};
      EXPECT_DOUBLE_EQ(panel.bar_use, counts[static_cast<std::size_t>(joints)]);
    }
  }
}

// Less head behind the dam's curtain and drains never asks for more, and none of it leaves the tailwater alone.
TEST_P(EveryExample, TheDrainedDamTakesHeadFromTheSlab) {
  auto site = example(GetParam());
  site.foundation.has_toe_head_share = true;
  double use = 1e300;
  for (const double share : {0.8, 0.4, 0.2, 0.0}) {
    site.foundation.toe_head_share = share;
    const auto safety = safety_of(site);
    for (const auto& panel : safety.panels) EXPECT_GE(panel.uplift_failed, panel.uplift_working - 1e-12);
    EXPECT_LE(safety.panels.front().bar_use, use);
    use = safety.panels.front().bar_use;
    if (share == 0.0) {
      for (const auto& panel : safety.panels) EXPECT_DOUBLE_EQ(panel.uplift_failed, panel.uplift_working);
    }
  }
}
INSTANTIATE_TEST_SUITE_P(Examples, EveryExample, testing::Values("01-gravity-dam", "02-small-dam", "04-stepped-dam"));

// Every level of the site raised alike: depths, forces and stone stay as they are.
TEST(Safety, DoesNotDependOnTheDatum) {
  auto site = example("01-gravity-dam");
  site.walls.has_seismic = true;
  site.walls.seismic_coefficient = 0.1;
  const auto low = safety_of(site);
  const double up = 250.0;
  site.crest.crest_level += up;
  site.river.bed_level += up;
  for (auto& levels : site.river.rating.level)
    for (auto& level : levels) level += up;
  site.basin.lowest_apron_level += up;
  site.ground.ground_level += up;
  site.ground.foundation_level += up;
  const auto high = safety_of(site);
  ASSERT_EQ(low.panels.size(), high.panels.size());
  for (std::size_t i = 0; i < low.panels.size(); ++i) {
    EXPECT_NEAR(high.panels[i].bar_force, low.panels[i].bar_force, 1e-6 * low.panels[i].bar_force);
    EXPECT_NEAR(high.panels[i].thickness_failed, low.panels[i].thickness_failed, 1e-6);
  }
  EXPECT_NEAR(high.river.stone, low.river.stone, 1e-9);
  EXPECT_NEAR(high.flotation.factor, low.flotation.factor, 1e-9);
  ASSERT_EQ(high.wall.cases.size(), low.wall.cases.size());
  for (std::size_t i = 0; i < low.wall.cases.size(); ++i) {
    EXPECT_NEAR(high.wall.cases[i].force, low.wall.cases[i].force, 1e-6 * low.wall.cases[i].force);
    EXPECT_NEAR(high.wall.cases[i].overturning, low.wall.cases[i].overturning, 1e-6);
  }
  EXPECT_NEAR(high.model.least_scale, low.model.least_scale, 1e-9);
}

// Every mode of failure that the trade knows is looked at by at least one rule, for a basin with a jump.
TEST(Safety, EveryWayToFailIsLookedAt) {
  const dissipators::Dissipator* types[] = {dissipators::find_dissipator("type_2")};
  const auto result = design::run_design(example("05-gated-dam"), {.types = types});
  ASSERT_TRUE(result);
  const auto modes = checks::failure_modes(result->options[0].findings);
  EXPECT_GE(modes.size(), 10U);
  for (const auto& mode : modes) EXPECT_FALSE(mode.findings.empty()) << mode.name;
}

// Soil brings creep and exit gradient; a deeper cutoff never makes either worse.
TEST(Safety, ADeeperCutoffNeverMakesSeepageWorse) {
  auto site = example("06-canal-drop");
  site.foundation.soil = site::Soil::coarse_sand;
  double ratio = -1.0, gradient = 1e300;
  for (const double depth : {0.5, 1.0, 2.0, 4.0}) {
    site.foundation.downstream_cutoff = depth;
    const auto safety = safety_of(site, "saf");
    EXPECT_GT(safety.seepage.creep_ratio, ratio);
    EXPECT_LT(safety.seepage.exit_gradient, gradient);
    ratio = safety.seepage.creep_ratio;
    gradient = safety.seepage.exit_gradient;
  }
}

TEST(Safety, PulsesLieStraightBetweenTheMeasuredPointsAndAreHeldBeyondThem) {
  site::Slab slab;
  EXPECT_EQ(checks::floor_pulse(slab, 5.0, 1.0).range, 1.6);
  slab.pressure = {{4.0, 0.0, 1.2, 0.6}, {4.0, 2.0, 0.8, 0.4}, {8.0, 1.0, 0.6, 0.2}};
  const auto range = [&](double F1, double place) { return checks::floor_pulse(slab, F1, place).range; };
  EXPECT_DOUBLE_EQ(range(4.0, 0.0), 1.2);
  EXPECT_DOUBLE_EQ(range(4.0, 0.5), 1.1);
  EXPECT_DOUBLE_EQ(range(2.0, 9.0), 0.8);
  EXPECT_DOUBLE_EQ(range(8.0, 9.0), 0.6);
  EXPECT_DOUBLE_EQ(range(20.0, 0.0), 0.6);
  EXPECT_DOUBLE_EQ(range(6.0, 1.0), 0.8);
  EXPECT_DOUBLE_EQ(checks::floor_pulse(slab, 6.0, 1.0).suction, 0.35);
}

// On soil the rock's anchors are not credited, whatever the site file says of bars.
TEST(Safety, AnchorsForRockAreNotCreditedInSoil) {
  auto site = example("06-canal-drop");
  site.foundation.soil = site::Soil::fine_sand;
  const auto safety = safety_of(site, "saf");
  const auto status = [&](std::string_view id) {
    for (const auto& finding : safety.findings)
      if (finding.id == id) return finding.status;
    ADD_FAILURE() << id << " missing";
    return Status::ok;
  };
  EXPECT_EQ(status("slab.anchors"), Status::caution);
  EXPECT_EQ(status("foundation.uplift"), safety.seepage.toe_thickness > safety.slab_thickness ? Status::caution : Status::ok);
}

// The limits of the panel model: a tiny panel that is sealed feels the whole pulse, one open on four sides none.
TEST(Safety, PanelCoefficientsHaveTheirLimits) {
  const auto small = hydraulics::panel_coefficients(1e-3, 1e-3);
  EXPECT_NEAR(small.sealed, 1.0, 1e-3);
  EXPECT_LT(small.four, 0.03);
  const auto large = hydraulics::panel_coefficients(200.0, 200.0);
  EXPECT_LT(large.sealed, 0.02);
  EXPECT_LT(large.four, 0.1);
}

}  // namespace
}  // namespace quell
