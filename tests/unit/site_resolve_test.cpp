// The site resolved: floods through the reservoir, tailwater from surveyed sections and gaugings, gates and outlets.
#include <gtest/gtest.h>

#include <cmath>

#include "quell/design/design.h"
#include "quell/io/site_file.h"
#include "quell/site/gates.h"
#include "quell/site/reservoir.h"
#include "quell/site/river.h"
#include "quell/site/study.h"
#include "quell/site/toe.h"

namespace quell::site {
namespace {

/// An ungated ogee with a reservoir below it and a trapezoidal valley as surveyed section: bed 30 m wide at 96 m, banks 2H:1V,
/// slope 0.001, n 0.035.
Site valley_site() {
  Site site;
  site.crest = {.crest_level = 120.0, .design_head = 4.0, .net_width = 40.0, .approach_depth = 15.0};
  site.chute.reaches = {{.slope = 1.25, .end_level = 0.0}};
  site.chute.width = site.chute.end_width = 40.0;
  site.chute.roughness_height = 0.6e-3;
  site.river.bed_level = 96.0;
  site.river.source = TailwaterSource::survey;
  site.river.degradation_given = true;
  CrossSection section{.file = "valley.csv"};
  section.station = {0.0, 60.0, 90.0, 150.0};
  section.level = {126.0, 96.0, 96.0, 126.0};
  section.left_bank = 0.0;
  section.right_bank = 150.0;
  section.manning_n = {0.035, 0.035, 0.035};
  site.river.reach.sections = {section};
  site.river.reach.control = RiverControl::normal;
  site.river.reach.control_slope = 0.001;
  site.discharges.design_flood = 300.0;
  site.discharges.check_flood = 400.0;
  site.discharges.smallest = 20.0;
  return site;
}

double tailwater(const ResolvedSite& resolved, double discharge, TailwaterCase tailwater_case) {
  const auto level = tailwater_level(resolved.site.river, discharge, tailwater_case);
  EXPECT_TRUE(level);
  return level.value_or(0.0);
}

// Independent computation of normal depth by SciPy: b 30 m, 2H:1V, S 0.001; n 0.035 and 0.030, k = 1.
TEST(Resolve, TailwaterOfOneSurveyedSectionIsNormalDepth) {
  auto site = valley_site();
  site.river.reach.low_n_factor = 0.030 / 0.035;
  const auto resolved = resolve(site);
  ASSERT_TRUE(resolved) << resolved.error().reason;
  EXPECT_NEAR(tailwater(*resolved, 100.0, TailwaterCase::expected), 98.140, 0.003);
  EXPECT_NEAR(tailwater(*resolved, 300.0, TailwaterCase::expected), 100.026, 0.003);
  EXPECT_NEAR(tailwater(*resolved, 400.0, TailwaterCase::expected), 100.732, 0.003);
  EXPECT_NEAR(tailwater(*resolved, 100.0, TailwaterCase::low), 97.955, 0.003);
  EXPECT_NEAR(tailwater(*resolved, 300.0, TailwaterCase::low), 99.689, 0.003);
}

// The same independent computation: the bed of all the river 0.5 m lower.
TEST(Resolve, DegradationAndLagLowerTheLowCaseOnly) {
  auto site = valley_site();
  site.river.reach.low_n_factor = 0.030 / 0.035;
  const auto before = resolve(site);
  site.river.lag_allowance = 0.25;
  const auto lagging = resolve(site);
  ASSERT_TRUE(before);
  ASSERT_TRUE(lagging);
  EXPECT_NEAR(tailwater(*lagging, 200.0, TailwaterCase::low), tailwater(*before, 200.0, TailwaterCase::low) - 0.25, 1e-12);
  EXPECT_EQ(tailwater(*lagging, 200.0, TailwaterCase::high), tailwater(*before, 200.0, TailwaterCase::high));
  site.river.lag_allowance = 0.0;
  site.river.bed_degradation = 0.5;
  const auto sunken = resolve(site);
  ASSERT_TRUE(sunken);
  EXPECT_LT(tailwater(*sunken, 200.0, TailwaterCase::low), tailwater(*before, 200.0, TailwaterCase::low));
  EXPECT_EQ(tailwater(*sunken, 200.0, TailwaterCase::expected), tailwater(*before, 200.0, TailwaterCase::expected));
}

// A long prismatic river forgets its control: the profile reaches normal depth, whatever the level at its end.
TEST(Resolve, ProfileThroughALongUniformReachIsNormalDepth) {
  auto site = valley_site();
  const auto one = resolve(site);
  ASSERT_TRUE(one);
  auto& reach = site.river.reach;
  for (int i = 1; i <= 120; ++i) {
    auto section = reach.sections.front();
    section.distance = 100.0 * i;
    for (double& level : section.level) level -= 0.1 * i;
    reach.sections.push_back(section);
  }
  reach.control = RiverControl::level;
  reach.control_level = {89.0, 89.0, 89.0};  // 5 m above the bed at the end: a backwater
  const auto profile = resolve(site);
  ASSERT_TRUE(profile) << profile.error().reason;
  for (const double discharge : {50.0, 200.0, 400.0})
    EXPECT_NEAR(tailwater(*profile, discharge, TailwaterCase::expected), tailwater(*one, discharge, TailwaterCase::expected),
                0.006);
  EXPECT_LT(profile->study.river.start_spread, 0.01);
  EXPECT_EQ(profile->study.river.held_at_critical, 0);
}

// Q = 35 (h - 101.2)^1.7, sampled: the law is found and the band has no width where nothing scatters.
TEST(Resolve, GaugingsOnAPowerLawGiveItBack) {
  auto site = valley_site();
  site.river.source = TailwaterSource::gauging;
  for (const double discharge : {20.0, 45.0, 100.0, 180.0, 320.0, 500.0}) {
    site.river.gauging.discharge.push_back(discharge);
    site.river.gauging.level.push_back(101.2 + std::pow(discharge / 35.0, 1.0 / 1.7));
  }
  const auto resolved = resolve(site);
  ASSERT_TRUE(resolved) << resolved.error().reason;
  EXPECT_NEAR(resolved->study.river.fit.zero_level, 101.2, 1e-3);
  EXPECT_NEAR(resolved->study.river.fit.power, 1.7, 2e-3);
  const double level = 101.2 + std::pow(250.0 / 35.0, 1.0 / 1.7);
  for (const auto tailwater_case : tailwater_cases) EXPECT_NEAR(tailwater(*resolved, 250.0, tailwater_case), level, 0.004);
}

void give_reservoir(Site& site) {
  site.reservoir.level = {100.0, 115.0, 120.0, 126.0};
  site.reservoir.area = {0.2e6, 1.6e6, 2.0e6, 2.6e6};
  site.floods.inflows = {
      {.name = "flood", .return_period = 100.0, .shape = InflowShape::gamma, .peak = 500.0, .time_to_peak = 6.0 * 3600.0}};
  site.discharges = {};
  site.discharges.design_inflow = "flood";
}

TEST(Resolve, InflowPassesTheReservoirAndBecomesTheDesignFlood) {
  auto site = valley_site();
  give_reservoir(site);
  const auto resolved = resolve(site);
  ASSERT_TRUE(resolved) << resolved.error().reason;
  ASSERT_EQ(resolved->study.inflows.size(), 1u);
  const auto& flood = resolved->study.inflows.front();
  EXPECT_LT(flood.peak_outflow, flood.peak_inflow);
  EXPECT_NEAR(flood.peak_outflow, crest_discharge(site.crest, flood.peak_level - 120.0), 2e-3 * flood.peak_outflow);
  EXPECT_LT(std::abs(flood.balance_error), 1e-9);
  // The classical table method with two hundred steps is within half a per cent of the integration.
  EXPECT_NEAR(flood.table_peak_outflow, flood.peak_outflow, 5e-3 * flood.peak_outflow);
  const auto& discharges = resolved->site.discharges;
  EXPECT_EQ(discharges.design_flood, flood.peak_spillway);
  EXPECT_EQ(discharges.check_flood, flood.peak_spillway);
  EXPECT_NEAR(discharges.smallest, 0.05 * flood.peak_spillway, 1e-9);
  ASSERT_EQ(discharges.floods.size(), 1u);
  EXPECT_TRUE(discharges.floods.front().is_routed);
}

TEST(Resolve, ClimateFactorRaisesTheOutflow) {
  auto site = valley_site();
  give_reservoir(site);
  const auto today = resolve(site);
  site.floods.climate_factor = 1.2;
  const auto later = resolve(site);
  ASSERT_TRUE(today);
  ASSERT_TRUE(later);
  EXPECT_NEAR(later->study.inflows[0].peak_inflow, 1.2 * today->study.inflows[0].peak_inflow, 1e-6);
  EXPECT_NEAR(later->study.inflows[0].volume_in, 1.2 * today->study.inflows[0].volume_in, 1.0);
  EXPECT_GT(later->study.inflows[0].peak_level, today->study.inflows[0].peak_level);
}

TEST(Resolve, InflowWithoutStorageOrAboveTheCheckFloodIsRefused) {
  auto site = valley_site();
  give_reservoir(site);
  site.discharges.check_flood = 100.0;
  site.discharges.design_inflow.clear();
  site.discharges.design_flood = 90.0;
  EXPECT_FALSE(resolve(site));
  site = valley_site();
  give_reservoir(site);
  site.reservoir = {};
  EXPECT_FALSE(resolve(site));
}

TEST(Resolve, RiverThatReachesTheCrestIsRefused) {
  auto site = valley_site();
  site.river.reach.control = RiverControl::level;
  site.river.reach.control_level = {99.0, 100.0, 121.0};
  const auto resolved = resolve(site);
  ASSERT_FALSE(resolved);
  EXPECT_NE(resolved.error().reason.find("crest"), std::string_view::npos);
}

Site gated_site() {
  auto site = valley_site();
  site.crest.piers = 3;
  site.gates = {.count = 4, .bay_width = 10.0, .full_opening = 5.0, .seat_level = 120.0, .held_level = 124.0};
  return site;
}

TEST(Gates, HoldTheLevelUntilTheyAreFullyOpen) {
  const auto site = gated_site();
  const double capacity = crest_discharge(site.crest, 4.0);
  EXPECT_EQ(*spillway_level(site, 0.5 * capacity), 124.0);
  EXPECT_NEAR(*spillway_level(site, capacity), 124.0, 1e-6);
  EXPECT_GT(*spillway_level(site, 1.2 * capacity), 124.0);
  const double opening = equal_opening(site, 0.5 * capacity, 124.0);
  EXPECT_NEAR(4.0 * bay_discharge(site, opening, 124.0), 0.5 * capacity, 1e-4);
  EXPECT_EQ(equal_opening(site, 1.2 * capacity, *spillway_level(site, 1.2 * capacity)), 5.0);
}

TEST(Gates, BayNeverPassesMoreThanItsShareOfTheFreeCrest) {
  const auto site = gated_site();
  for (const double level : {120.5, 122.0, 124.0, 126.0}) {
    double before = 0.0;
    for (double opening = 0.25; opening <= 5.0; opening += 0.25) {
      const double discharge = bay_discharge(site, opening, level);
      EXPECT_GE(discharge, before);
      EXPECT_LE(discharge, crest_discharge(site.crest, level - 120.0) / 4.0 + 1e-9);
      before = discharge;
    }
  }
  EXPECT_EQ(bay_discharge(site, 0.0, 124.0), 0.0);
  EXPECT_EQ(bay_discharge(site, 2.0, 119.0), 0.0);
}

// (2/3) sqrt(2g) Cd b (H^1.5 - H1^1.5) with b 10 m, Cd 0.6, H 4 m, H1 3 m: computed independently, 49.6780 m3/s.
TEST(Gates, SmallOpeningByTheFormulaWithTwoHeads) {
  EXPECT_NEAR(bay_discharge(gated_site(), 1.0, 124.0), 49.6780, 1e-3);
}

// Independent computation: basin 20 m wide in four bays of 5 m, energy level 20 m above the floor at 92 m, no losses; 75 m3/s
// through all, two and one of the bays; tailwater 97.808 m at 75 m3/s.
TEST(Gates, OneOpenBaySweepsOutWhatFourWouldKeep) {
  struct Row {
    double width, sequent_depth, margin;
  };
  for (const auto& row : {Row{20.0, 3.788, 2.020}, Row{10.0, 5.289, 0.519}, Row{5.0, 7.330, -1.522}}) {
    const auto toe = toe_flow(75.0, row.width, 112.0, 112.0, 92.0);
    ASSERT_TRUE(toe);
    EXPECT_NEAR(toe->y2, row.sequent_depth, 0.0006);
    EXPECT_NEAR(97.808 - 92.0 - toe->y2, row.margin, 0.0006);
  }
}

TEST(Gates, StandardPatternsAreAddedAsChecks) {
  const auto resolved = resolve(gated_site());
  ASSERT_TRUE(resolved) << resolved.error().reason;
  ASSERT_EQ(resolved->site.gates.patterns.size(), 3u);
  for (const auto& pattern : resolved->site.gates.patterns) EXPECT_TRUE(pattern.is_check);
  const auto loaded = loaded_bay(resolved->site, resolved->site.gates.patterns[0], 124.0);
  EXPECT_EQ(loaded.open_bays, 1);
  EXPECT_FALSE(loaded.all_alike);
}

TEST(Gates, DesignPatternSetsTheApronAndACheckDoesNot) {
  auto site = gated_site();
  site.gates.standard_patterns = false;
  site.basin.width = 40.0;
  const dissipators::Dissipator* const types[] = {dissipators::find_dissipator("type_1")};
  const auto apron = [&] {
    const auto result = design::run_design(site, {.types = types});
    EXPECT_TRUE(result);
    return result ? result->options[0].apron_level : 0.0;
  };
  const double alike = apron();
  site.gates.patterns = {{.name = "one bay", .opening = {5.0, 0.0, 0.0, 0.0}, .level = {}, .is_check = true}};
  EXPECT_EQ(apron(), alike);
  site.gates.patterns[0].is_check = false;
  EXPECT_LT(apron(), alike - 0.5);
}

TEST(Outlets, CountInTheLowTailwaterOnlyWhereTheyAreSureToRun) {
  auto site = valley_site();
  site.outlets = {{.name = "outlet", .centre_level = 100.0, .area = 3.0, .coefficient = 0.8}};
  EXPECT_EQ(outlets_discharge(site, 120.0, true), 0.0);
  // 0.8 * 3 * sqrt(2 * 9.81 * 20), computed independently
  EXPECT_NEAR(outlets_discharge(site, 120.0, false), 47.5418, 1e-3);
  site.outlets[0].is_guaranteed = true;
  EXPECT_NEAR(outlets_discharge(site, 120.0, true), 47.5418, 1e-3);
  site.outlets[0].has_tail_level = true;
  site.outlets[0].tail_level = 115.0;
  EXPECT_NEAR(outlets_discharge(site, 120.0, true), 23.7709, 1e-3);
}

/// The smallest margin of the first type, with the design's own discharges and with ten times as many.
class Example : public testing::TestWithParam<const char*> {};

TEST_P(Example, TenTimesMoreDischargesDoNotMoveTheMargin) {
  const auto file = io::read_site_file(std::string(QUELL_ROOT "/examples/") + GetParam() + "/site.toml");
  ASSERT_TRUE(file.good());
  auto site = file.site;
  const dissipators::Dissipator* const types[] = {dissipators::find_dissipator("type_2")};
  const auto coarse = design::run_design(site, {.types = types, .with_positions = false});
  site.discharges.steps *= 10;
  const auto fine = design::run_design(site, {.types = types, .with_positions = false});
  ASSERT_TRUE(coarse);
  ASSERT_TRUE(fine);
  const auto& a = coarse->options[0];
  const auto& b = fine->options[0];
  EXPECT_LT(std::abs(a.governing.margin + a.apron_level - b.governing.margin - b.apron_level), 0.01);
}
INSTANTIATE_TEST_SUITE_P(Examples, Example,
                         testing::Values("01-gravity-dam", "02-small-dam", "03-labyrinth", "04-stepped-dam", "05-gated-dam",
                                         "06-canal-drop"));

}  // namespace
}  // namespace quell::site
