// Stages of a gate rule in level-pool routing: changes located as events, oscillation refused, bad input refused by name.
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cmath>
#include <limits>
#include <string>

#include "draws.h"
#include "quell/hydraulics/flood_shapes.h"
#include "quell/hydraulics/level_pool.h"

namespace quell::hydraulics {
namespace {

/// A lake of 1 km2 with upright walls from 0 to 10 m, an inflow of 50 m3/s for a day.
class StagedPool : public ::testing::Test {
 protected:
  const std::vector<double> level_{0.0, 10.0};
  const std::vector<double> area_{1e6, 1e6};
  const StorageCurve storage_ = *StorageCurve::from_areas(level_, area_);
  std::vector<double> time_{0.0, 43200.0, 86400.0};
  std::vector<double> inflow_{50.0, 50.0, 50.0};
  static RatingTable held(double discharge) { return {{0.0, 10.0}, {discharge, discharge}}; }

  Outcome<RoutedFlood> route(const std::vector<OutflowStage>& stages, double level = 2.0) {
    return route_level_pool({.storage = storage_, .time = time_, .inflow = inflow_, .stages = stages, .initial_level = level});
  }
};

TEST_F(StagedPool, ChangesTheStageAtItsLevelAndTime) {
  // Rises by 40 m3/s on 1 km2 to 3 m in 25 000 s, then falls by 70 m3/s to 2.5 m in 7143 s, and so on.
  const auto flood = route({{.rating = held(10.0), .up_level = 3.0}, {.rating = held(120.0), .down_level = 2.5}});
  ASSERT_TRUE(flood.has_value()) << flood.error().reason;
  EXPECT_EQ(flood->stage_changes, 7);
  std::vector<double> changes;
  for (std::size_t i = 1; i < flood->time.size(); ++i)
    if (flood->stage[i] != flood->stage[i - 1]) {
      changes.push_back(flood->time[i]);
      EXPECT_EQ(flood->time[i], flood->time[i - 1]);
      EXPECT_EQ(flood->level[i], flood->level[i - 1]);
      EXPECT_NEAR(flood->level[i], flood->stage[i] == 1 ? 3.0 : 2.5, 1e-8);
      EXPECT_DOUBLE_EQ(flood->outflow[i], flood->stage[i] == 1 ? 120.0 : 10.0);
    }
  ASSERT_EQ(changes.size(), 7U);
  const double fall = 0.5e6 / 70.0;
  const double rise = 0.5e6 / 40.0;
  const double expected[] = {25000.0,
                             25000.0 + fall,
                             25000.0 + fall + rise,
                             25000.0 + 2.0 * fall + rise,
                             25000.0 + 2.0 * (fall + rise),
                             25000.0 + 3.0 * fall + 2.0 * rise,
                             25000.0 + 3.0 * (fall + rise)};
  for (std::size_t i = 0; i < 7; ++i) EXPECT_NEAR(changes[i], expected[i], 1e-3);
  EXPECT_NEAR(flood->peak_level, 3.0, 1e-8);
  EXPECT_DOUBLE_EQ(flood->peak_outflow, 120.0);
  EXPECT_NEAR(flood->peak_outflow_time, 25000.0, 1e-3);
  EXPECT_LT(std::abs(flood->balance_error), 1e-9);
}

TEST_F(StagedPool, SaysThatARuleWithoutSlackOscillates) {
  for (const double down : {3.0, 3.5}) {
    const auto flood = route({{.rating = held(10.0), .up_level = 3.0}, {.rating = held(120.0), .down_level = down}});
    ASSERT_FALSE(flood.has_value()) << down;
    EXPECT_NE(flood.error().reason.find("oscillates"), std::string_view::npos) << flood.error().reason;
  }
}

TEST_F(StagedPool, StartsInTheStageThatTheLevelAsksFor) {
  const auto flood =
      route({{.rating = held(10.0), .up_level = 3.0}, {.rating = held(60.0), .up_level = 4.0}, {.rating = held(80.0)}}, 5.0);
  ASSERT_TRUE(flood.has_value());
  EXPECT_EQ(flood->stage.front(), 2);
  EXPECT_EQ(flood->stage_changes, 2);
  EXPECT_NEAR(flood->level.back(), 5.0 - 30.0 * 86400.0 / 1e6, 1e-9);
}

TEST_F(StagedPool, SeesAShortRiseBetweenTwoTimes) {
  // The level stands at 2.999 m, rises by 4 mm within a step and is back at its end.
  time_ = {0.0, 200.0};
  inflow_ = {90.0, 10.0};
  const std::vector<OutflowStage> stages{{.rating = held(50.0), .up_level = 3.0}, {.rating = held(50.0)}};
  const auto flood = route(stages, 2.999);
  ASSERT_TRUE(flood.has_value());
  EXPECT_NEAR(flood->peak_level, 3.001, 1e-9);
  EXPECT_NEAR(flood->peak_level_time, 100.0, 1e-4);
  EXPECT_EQ(flood->stage_changes, 1);
}

TEST_F(StagedPool, SaysThatThePoolEmpties) {
  const auto flood = route({{.rating = held(120.0)}});
  ASSERT_FALSE(flood.has_value());
  EXPECT_NE(flood.error().reason.find("empties"), std::string_view::npos);
}

TEST_F(StagedPool, MarksALevelAboveTheTable) {
  const auto flood = route({{.rating = held(10.0)}}, 9.0);
  ASSERT_TRUE(flood.has_value());
  EXPECT_TRUE(flood->storage_extrapolated);
  EXPECT_NEAR(flood->level.back(), 9.0 + 40.0 * 86400.0 / 1e6, 1e-9);
}

TEST_F(StagedPool, RefusesWhatCannotBeByName) {
  const std::vector<OutflowStage> good{{.rating = held(10.0)}};
  EXPECT_EQ(route(good, -1.0).error().symbol, "initial_level");
  EXPECT_EQ(route({{.rating = {{0.0, 1.0}, {5.0, 4.0}}}}).error().symbol, "discharge");
  EXPECT_EQ(route({{.rating = {{1.0, 1.0}, {0.0, 4.0}}}}).error().symbol, "level");
  EXPECT_EQ(route({{.rating = {{1.0, 2.0}, {3.0, 4.0}}}}).error().symbol, "discharge") << "begins with a leap";
  EXPECT_FALSE(route({}).has_value());
  time_[1] = 0.0;
  EXPECT_EQ(route(good).error().symbol, "time");
  inflow_[2] = std::nan("");
  EXPECT_FALSE(route(good).has_value());
  const std::vector<double> flat{1.0, 1.0};
  EXPECT_EQ(StorageCurve::from_areas(flat, area_).error().symbol, "level");
  EXPECT_EQ(StorageCurve::from_areas(level_, std::vector<double>{1.0, 0.0}).error().symbol, "area");
  EXPECT_EQ(StorageCurve::from_areas(level_, std::vector<double>{-1.0, 2.0}).error().symbol, "area");
  EXPECT_EQ(StorageCurve::from_storages(level_, flat).error().symbol, "storage");
}

TEST_F(StagedPool, GivesUpOnAnOutflowTooSteepForItsSteps) {
  const std::vector<OutflowStage> steep{{.rating = {{0.0, 10.0}, {0.0, 1e15}}}};
  const auto flood = route_level_pool(
      {.storage = storage_, .time = time_, .inflow = inflow_, .stages = steep, .initial_level = 2.0, .most_steps = 1000});
  ASSERT_FALSE(flood.has_value());
  EXPECT_NE(flood.error().reason.find("steep"), std::string_view::npos);
}

/// Three openings of the gates of an invented dam, each held between its two levels.
RC_GTEST_PROP(StagedRule, KeepsItsBalanceAndEveryStageBetweenItsLevels, ()) {
  using draws::drawn;
  const double area = drawn(5e5, 5e6);
  const std::vector<double> level{90.0, 100.0, 110.0};
  const std::vector<double> areas{0.0, area, 1.5 * area};
  const auto storage = StorageCurve::from_areas(level, areas);
  RC_ASSERT(storage.has_value());
  const auto gates = [](double share) {
    RatingTable table;
    for (int i = 0; i <= 20; ++i) {
      table.level.push_back(96.0 + 0.5 * i);
      table.discharge.push_back(share * 150.0 * std::sqrt(0.5 * i));
    }
    return table;
  };
  const double slack = drawn(0.1, 0.9);
  const std::vector<OutflowStage> stages{{.rating = gates(0.1), .up_level = 100.0},
                                         {.rating = gates(0.4), .up_level = 101.0, .down_level = 100.0 - slack},
                                         {.rating = gates(1.0), .down_level = 101.0 - slack}};
  const double rise = drawn(7200.0, 40000.0);
  const auto flood = gamma_flood({.peak = drawn(100.0, 600.0),
                                  .time_to_peak = rise,
                                  .base_flow = 20.0,
                                  .exponent = 3.0,
                                  .duration = 8.0 * rise,
                                  .step = rise / 10.0});
  const auto routed = route_level_pool(
      {.storage = *storage, .time = flood.time, .inflow = flood.flow, .stages = stages, .initial_level = 99.5});
  RC_ASSERT(routed.has_value());
  RC_ASSERT(std::abs(routed->balance_error) < 1e-9);
  int changes = 0;
  for (std::size_t i = 0; i < routed->time.size(); ++i) {
    const auto now = static_cast<std::size_t>(routed->stage[i]);
    RC_ASSERT(routed->level[i] < stages[now].up_level + 1e-6);
    RC_ASSERT(routed->level[i] > stages[now].down_level - 1e-6);
    RC_ASSERT(std::abs(stages[now].rating.at(routed->level[i]) - routed->outflow[i]) < 1e-6);
    if (i > 0 && routed->stage[i] != routed->stage[i - 1]) {
      ++changes;
      RC_ASSERT(routed->time[i] == routed->time[i - 1]);
    }
  }
  RC_ASSERT(changes == routed->stage_changes);
}

}  // namespace
}  // namespace quell::hydraulics
