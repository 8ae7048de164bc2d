// The level pool: balance, closed solutions, order, rest, and what a rule of stages does.
#include "quell/hydraulics/level_pool.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <cmath>
#include <vector>

#include "draws.h"
#include "quell/hydraulics/flood_shapes.h"
#include "quell/hydraulics/level_pool_steps.h"

namespace quell::hydraulics {
namespace {

using draws::close;
using draws::drawn;

StorageCurve curve_of(std::vector<double> level, std::vector<double> area) {
  const auto curve = StorageCurve::from_areas(level, area);
  RC_ASSERT(curve.has_value());
  return *curve;
}

/// A rating of c (H - crest)^1.5 in a table of points that stand closer near the crest.
RatingTable crest_table(double crest, double c, double highest, int points) {
  RatingTable table;
  for (int i = 0; i <= points; ++i) {
    const double head = highest * std::pow(static_cast<double>(i) / points, 2.0);
    table.level.push_back(crest + head);
    table.discharge.push_back(c * std::pow(head, 1.5));
  }
  return table;
}

struct Site {
  StorageCurve storage;
  std::vector<OutflowStage> stages;
  FloodSeries flood;
  double initial;
  RoutingInput input() const {
    return {.storage = storage, .time = flood.time, .inflow = flood.flow, .stages = stages, .initial_level = initial};
  }
};

/// Bottom at 90 m, crest at 100 m, table up to 106 m; a flood of gamma shape, twelve steps to its rise.
Site drawn_site() {
  const double area = drawn(2e5, 5e6);
  const double peak = drawn(50.0, 900.0);
  const double rise = drawn(2.0 * 3600.0, 20.0 * 3600.0);
  return {.storage = curve_of({90.0, 98.0, 102.0, 106.0}, {0.2 * area, 0.7 * area, area, 1.3 * area}),
          .stages = {{.rating = crest_table(100.0, drawn(20.0, 200.0), 10.0, 30)}},
          .flood = gamma_flood({.peak = peak,
                                .time_to_peak = rise,
                                .base_flow = 0.02 * peak,
                                .exponent = drawn(1.0, 6.0),
                                .duration = 8.0 * rise,
                                .step = rise / 12.0}),
          .initial = 96.0 + drawn(0.1, 4.5)};
}

RC_GTEST_PROP(StorageCurve, GivesTheLevelBack, ()) {
  const std::vector<double> level{10.0, 10.0 + drawn(0.1, 5.0), 20.0, 20.0 + drawn(0.1, 9.0)};
  const std::vector<double> area{0.0, drawn(1.0, 1e6), drawn(1.0, 1e6), drawn(1.0, 1e6)};
  const auto by_areas = StorageCurve::from_areas(level, area);
  const auto by_storages =
      StorageCurve::from_storages(level, std::vector<double>{5.0, 6.0, 6.0 + area[1], 7.0 + area[1] + area[2]});
  RC_ASSERT(by_areas.has_value() && by_storages.has_value());
  std::size_t panel = 77;
  for (const auto* curve : {&*by_areas, &*by_storages}) {
    for (double h = 10.01; h < 35.0; h += 0.37) {
      close(curve->level_at(curve->storage(h)), h, 1e-9);
      RC_ASSERT(curve->level_at(curve->storage(h), panel) == curve->level_at(curve->storage(h)));
      RC_ASSERT(curve->storage(h + 0.01) > curve->storage(h));
      // The area is the slope of the storage, away from the points.
      const bool near = std::any_of(level.begin(), level.end(), [h](double z) { return std::abs(z - h) < 1e-3; });
      if (!near) close((curve->storage(h + 1e-4) - curve->storage(h - 1e-4)) / 2e-4, curve->area(h), 2e-4);
    }
    RC_ASSERT(curve->storage(0.0) == curve->lowest_storage() && curve->level_at(-1e9) == curve->lowest_level());
    RC_ASSERT(curve->extrapolated(level[3] + 0.1) && !curve->extrapolated(level[3]));
  }
}

RC_GTEST_PROP(LevelPool, ClosesItsBalanceAndStaysBelowTheInflow, ()) {
  const Site site = drawn_site();
  const auto routed = route_level_pool(site.input());
  RC_ASSERT(routed.has_value());
  RC_ASSERT(std::abs(routed->balance_error) < 1e-9);
  RC_ASSERT(routed->peak_outflow <= std::max(routed->peak_inflow, routed->outflow.front()) * (1.0 + 1e-9));
  RC_ASSERT(std::is_sorted(routed->time.begin(), routed->time.end()));
  RC_ASSERT(routed->time.size() >= site.flood.time.size() && routed->time.size() <= site.flood.time.size() + 2);
  RC_ASSERT(*std::max_element(routed->level.begin(), routed->level.end()) == routed->peak_level);
  RC_ASSERT(*std::max_element(routed->outflow.begin(), routed->outflow.end()) == routed->peak_outflow);
  const double stored = site.storage.storage(routed->level.back()) - site.storage.storage(site.initial);
  RC_ASSERT(std::abs(stored - routed->storage_change) < 1e-9 * routed->volume_in);
  // The rows themselves: outflow over time by the trapezoidal rule is the volume out, to the curvature between them.
  double volume = 0.0;
  for (std::size_t i = 1; i < routed->time.size(); ++i)
    volume += 0.5 * (routed->time[i] - routed->time[i - 1]) * (routed->outflow[i] + routed->outflow[i - 1]);
  RC_ASSERT(std::abs(volume - routed->volume_out) < 0.02 * routed->volume_in);
  const RatingTable& rating = site.stages[0].rating;
  for (std::size_t i = 0; i < routed->time.size(); ++i)
    RC_ASSERT(std::abs(rating.at(routed->level[i]) - routed->outflow[i]) <= 1e-9 * routed->peak_outflow);
}

/// A free crest lets the outflow rise until it equals the falling inflow.
RC_GTEST_PROP(LevelPool, HasItsPeakWhereOutflowEqualsInflow, ()) {
  const Site site = drawn_site();
  const auto routed = route_level_pool(site.input());
  RC_ASSERT(routed.has_value());
  const auto at = std::find(routed->time.begin(), routed->time.end(), routed->peak_level_time) - routed->time.begin();
  const auto row = static_cast<std::size_t>(at);
  RC_PRE(row > 0 && row + 1 < routed->time.size());
  close(routed->inflow[row], routed->outflow[row], 1e-6);
  RC_ASSERT(routed->peak_level_time == routed->peak_outflow_time);
  RC_ASSERT(routed->peak_level_time >
            site.flood.time[static_cast<std::size_t>(std::max_element(site.flood.flow.begin(), site.flood.flow.end()) -
                                                     site.flood.flow.begin())]);
}

/// Against the closed form of a lake that drains: the error falls with the tolerance.
RC_GTEST_PROP(LevelPool, DrainsAsTheClosedFormSays, ()) {
  const DrainingLake lake{.H0 = drawn(0.2, 5.0), .A = drawn(1e5, 1e7), .C = 2.0, .L = drawn(5.0, 100.0)};
  const double time = drawn(600.0, 86400.0);
  const auto storage = curve_of({0.0, 10.0}, {lake.A, lake.A});
  const std::vector<double> times{0.0, time};
  const std::vector<double> none{0.0, 0.0};
  const double exact = draining_head(lake, time);
  for (const double tolerance : {1e-3, 1e-6, 1e-9}) {
    const auto routed = route_over_crest(
        {.storage = storage, .time = times, .inflow = none, .stages = {}, .initial_level = lake.H0, .tolerance = tolerance},
        lake.C * lake.L);
    RC_ASSERT(routed.has_value());
    const double error = std::abs(routed->level.back() - exact);
    RC_ASSERT(error < 30.0 * tolerance);  // a long first step may hide some of its error
    RC_ASSERT(std::abs(routed->balance_error) < 1e-9);
  }
}

/// A reservoir of constant area with a straight rating is the linear reservoir, whose answer to a ramp is known.
RC_GTEST_PROP(LevelPool, IsTheLinearReservoirUnderAStraightRating, ()) {
  const double area = drawn(1e5, 1e7);
  const double K = drawn(1800.0, 1e5);
  const auto storage = curve_of({0.0, 50.0}, {area, area});
  const std::vector<OutflowStage> stages{{.rating = {{0.0, 1.0}, {0.0, area / K}}}};
  const double time = drawn(600.0, 2e5);
  const double slope = drawn(1e-4, 1e-2);
  const std::vector<double> times{0.0, time};
  const std::vector<double> ramp{0.0, slope * time};
  const auto routed = route_level_pool(
      {.storage = storage, .time = times, .inflow = ramp, .stages = stages, .initial_level = 0.0, .tolerance = 1e-10});
  RC_ASSERT(routed.has_value());
  const double exact = slope * (time - K * (1.0 - std::exp(-time / K)));
  RC_ASSERT(std::abs(routed->outflow.back() - exact) <= 1e-7 * area / K + 1e-9 * exact);
}

RC_GTEST_PROP(LevelPool, RestsWhereAConstantInflowLeavesIt, ()) {
  Site site = drawn_site();
  const double level = 100.0 + drawn(0.2, 5.0);
  const double flow = site.stages[0].rating.at(level);
  site.flood = {.time = {0.0, 1e4, 5e4}, .flow = {flow, flow, flow}};
  site.initial = level;
  const auto still = route_level_pool(site.input());
  RC_ASSERT(still.has_value());
  RC_ASSERT(std::abs(still->level.back() - level) < 1e-9);
  // From elsewhere it comes there in time.
  site.initial = 99.0;
  auto input = site.input();
  input.after = 4e8 / flow + 1e6;
  const auto filled = route_level_pool(input);
  RC_ASSERT(filled.has_value());
  RC_ASSERT(std::abs(filled->level.back() - level) < 0.01);
  RC_ASSERT(filled->time.back() == 5e4 + input.after);
}

/// With a small step the table method comes to the same peak.
RC_GTEST_PROP(StorageIndication, AgreesWithTheIntegration, ()) {
  const Site site = drawn_site();
  const auto routed = route_level_pool(site.input());
  const auto table = route_storage_indication(site.input(), (site.flood.time[1] - site.flood.time[0]) / 5.0);
  RC_ASSERT(routed.has_value() && table.has_value());
  RC_ASSERT(std::abs(table->flood.peak_level - routed->peak_level) < 5e-3);
  RC_ASSERT(std::abs(table->flood.balance_error) < 1e-9);
  RC_ASSERT(route_storage_indication(site.input(), site.flood.time.back() / 4.0)->objection.size() > 0);
}

/// Chow, Maidment and Mays 1988, ex. 8.2.1 (memory): a detention basin of one acre, drained by a pipe; peak of 270 ft3/s
/// and 9.77 ft at 80 min. The outflows at 30 and 150 min are computed with numpy.interp on the indicator.
TEST(StorageIndication, IsThePublishedDetentionBasin) {
  constexpr double foot = 0.3048;
  constexpr double cubic_foot = foot * foot * foot;
  std::vector<double> inflow{0, 60, 120, 180, 240, 300, 360, 320, 280, 240, 200, 160, 120, 80, 40, 0, 0, 0, 0, 0, 0};
  RatingTable rating{{}, {0, 3, 8, 17, 30, 43, 60, 78, 97, 117, 137, 156, 173, 190, 205, 218, 231, 242, 253, 264, 275}};
  std::vector<double> time;
  for (std::size_t i = 0; i < 21; ++i) {
    time.push_back(600.0 * static_cast<double>(i));
    rating.level.push_back(0.5 * foot * static_cast<double>(i));
    inflow[i] *= cubic_foot;
    rating.discharge[i] *= cubic_foot;
  }
  const std::vector<double> level{0.0, 10.0 * foot};
  const std::vector<double> area{43560.0 * foot * foot, 43560.0 * foot * foot};
  const auto storage = StorageCurve::from_areas(level, area);
  ASSERT_TRUE(storage.has_value());
  const std::vector<OutflowStage> stages{{.rating = rating}};
  const auto routed = route_storage_indication(
      {.storage = *storage, .time = time, .inflow = inflow, .stages = stages, .initial_level = 0.0}, 600.0);
  ASSERT_TRUE(routed.has_value());
  EXPECT_TRUE(routed->objection.empty()) << routed->objection;
  EXPECT_NEAR(routed->flood.peak_outflow / cubic_foot, 270.0, 0.5);
  EXPECT_NEAR(routed->flood.peak_level / foot, 9.77, 0.005);
  EXPECT_DOUBLE_EQ(routed->flood.peak_outflow_time, 4800.0);
  EXPECT_NEAR(routed->flood.outflow[3] / cubic_foot, 61.09371435645, 1e-8);
  EXPECT_NEAR(routed->flood.outflow[15] / cubic_foot, 79.84612827341, 1e-8);
  EXPECT_LT(std::abs(routed->flood.balance_error), 1e-12);
}

RC_GTEST_PROP(LinearReservoir, KeepsASteadyFlowAndTheVolume, ()) {
  const double K = drawn(600.0, 1e5);
  const double dt = K * drawn(0.01, 1.9);
  const double Q = drawn(1.0, 1000.0);
  close(linear_reservoir_step({.I1 = Q, .I2 = Q, .O1 = Q, .K = K, .dt = dt}), Q, 1e-12);
  const LinearStep step{.I1 = drawn(1.0, 1e3), .I2 = drawn(1.0, 1e3), .O1 = drawn(1.0, 1e3), .K = K, .dt = dt};
  const double O2 = linear_reservoir_step(step);
  RC_ASSERT(std::abs(K * (O2 - step.O1) - 0.5 * dt * (step.I1 + step.I2 - step.O1 - O2)) < 1e-8 * K * 1e3);
}

/// The Runge-Kutta step of third order meets the exact decay of a linear reservoir to its fourth power.
RC_GTEST_PROP(RungeKutta3, IsOfThirdOrder, ()) {
  const auto storage = curve_of({0.0, 10.0}, {1e6, 1e6});
  const double k = drawn(1e-6, 1e-3);
  const RatingTable rating{{0.0, 10.0}, {0.0, 1e7 * k}};
  const double x = drawn(0.02, 0.5);  // k dt
  const auto step = runge_kutta_3_step(storage, rating, {.I1 = 0.0, .I2 = 0.0, .dt = x / k, .H1 = 5.0});
  RC_ASSERT(std::abs(step.H2 / 5.0 - (1.0 - x + x * x / 2.0 - x * x * x / 6.0)) < 1e-12);
}

}  // namespace
}  // namespace quell::hydraulics
