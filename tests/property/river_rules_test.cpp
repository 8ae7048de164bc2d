// Properties of the short rules of the river: roughness, degradation of the bed, lag of the tailwater.
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <cmath>

#include "draws.h"
#include "quell/hydraulics/river_bed.h"
#include "quell/hydraulics/river_lag.h"
#include "quell/hydraulics/river_roughness.h"

namespace quell::hydraulics {
namespace {
using draws::close;
using draws::drawn;

TEST(ManningTable, RisesFromLowestToHighestInEveryRow) {
  ASSERT_FALSE(manning_table().empty());
  for (const ManningRow& row : manning_table()) {
    EXPECT_FALSE(row.channel.empty());
    EXPECT_GT(row.lowest, 0.008) << row.channel;
    EXPECT_LT(row.lowest, row.highest) << row.channel;
    EXPECT_LE(row.highest, 0.2) << row.channel;
    if (row.normal > 0.0) {
      EXPECT_LE(row.lowest, row.normal) << row.channel;
      EXPECT_LE(row.normal, row.highest) << row.channel;
    }
  }
}

RC_GTEST_PROP(RiverRoughness, GrowsWithTheGrainsAndFallsWithDepth, ()) {
  const double d = drawn(0.005, 0.3);
  const double R = d * drawn(2.0, 50.0);
  RC_ASSERT(roughness_of_grains(1.1 * d, strickler_d50) > roughness_of_grains(d, strickler_d50));
  close(roughness_of_grains(64.0 * d, strickler_d50), 2.0 * roughness_of_grains(d, strickler_d50), 1e-12);
  const auto n = roughness_limerinos({.R = R, .d = d});
  const auto rougher = roughness_limerinos({.R = R, .d = 1.1 * d});
  const auto shallow = roughness_limerinos({.R = 0.9 * R, .d = d});
  RC_ASSERT(n.has_value() && rougher.has_value() && shallow.has_value());
  RC_ASSERT(*rougher > *n);
  // n/R^(1/6), the friction, falls with depth at all depths.
  RC_ASSERT(*shallow / std::pow(0.9 * R, 1.0 / 6.0) > *n / std::pow(R, 1.0 / 6.0));
  RC_ASSERT(roughness_limerinos({.R = 0.2 * d, .d = d}).error().symbol == "R");
  RC_ASSERT(roughness_jarrett({.R = R, .slope = drawn(0.053, 1.0)}).error().symbol == "S");
}

RC_GTEST_PROP(RiverRoughness, AddsUpByCowan, ()) {
  const CowanInput input{.n0 = drawn(0.02, 0.028),
                         .n1 = drawn(1e-3, 0.02),
                         .n2 = drawn(1e-3, 0.015),
                         .n3 = drawn(1e-3, 0.06),
                         .n4 = drawn(1e-3, 0.1),
                         .m5 = drawn(1.0, 1.3)};
  const double n = roughness_cowan(input);
  RC_ASSERT(n >= input.n0);
  CowanInput straight = input;
  straight.m5 = 1.0;
  close(n, input.m5 * roughness_cowan(straight), 1e-12);
}

RC_GTEST_PROP(Armour, LiesDeeperWhereStonesAreRarer, ()) {
  const double thickness = drawn(0.05, 0.3);
  const double share = drawn(0.01, 0.9);
  const auto deep = armouring_depth({.thickness = thickness, .share = share});
  RC_ASSERT(deep.has_value());
  // What the bed loses leaves the armour behind: the share of the whole dug layer.
  close(share * (*deep + thickness), thickness, 1e-12);
  RC_ASSERT(*armouring_depth({.thickness = thickness, .share = 1.0}) == 0.0);
  RC_ASSERT(armouring_depth({.thickness = thickness, .share = 0.0}).error().symbol == "dp");
}

RC_GTEST_PROP(StableSlope, IsTheSlopeWhoseArmourIsTheBed, ()) {
  const BedFlow flow{.Q = drawn(1.0, 1000.0),
                     .B = drawn(5.0, 200.0),
                     .d = drawn(0.3, 8.0),
                     .V = drawn(0.5, 4.0),
                     .slope = drawn(1e-4, 0.02),
                     .manning_n = drawn(0.02, 0.05),
                     .d90 = drawn(0.002, 0.3),
                     .shields = drawn(0.03, 0.06)};
  const ArmourSizes sizes = armour_sizes(flow);
  const auto slopes = [&](double D) {
    return stable_slopes(
        {.D = D, .Q = flow.Q, .B = flow.B, .d = flow.d, .manning_n = flow.manning_n, .d90 = flow.d90, .shields = flow.shields});
  };
  close(slopes(sizes.schoklitsch).schoklitsch, flow.slope, 1e-9);
  close(slopes(sizes.meyer_peter_muller).meyer_peter_muller, flow.slope, 1e-9);
  close(slopes(sizes.shields).shields, flow.slope, 1e-9);
  RC_ASSERT(sizes.least() <= sizes.mean() && sizes.mean() <= sizes.most());
}

RC_GTEST_PROP(Degradation, MeetsItsWedgeAtTheControl, ()) {
  const DegradationInput slopes{.bed_slope = drawn(1e-3, 1e-2), .stable_slope = drawn(1e-5, 9e-4)};
  const double length = drawn(100.0, 20000.0);
  const auto depth = degradation_above_control(slopes, length);
  RC_ASSERT(depth.has_value());
  const auto wedge = degradation_wedge(slopes, *depth);
  RC_ASSERT(wedge.has_value());
  close(wedge->length, length, 1e-12);
  close(wedge->volume, 0.5 * length * *depth, 1e-12);
  RC_ASSERT(degradation_above_control({.bed_slope = 1e-5, .stable_slope = 1e-4}, length).error().symbol == "SL");
  RC_ASSERT(degradation_wedge({.bed_slope = 1e-4, .stable_slope = 1e-4}, 1.0).error().symbol == "SL");
}

RC_GTEST_PROP(TailwaterLag, GrowsToItsLimits, ()) {
  const double tau = drawn(60.0, 1e5);
  const double t = drawn(1.0, 1e6);
  const double rate = drawn(1e-6, 1e-3);
  const double response = lag_response({.tau = tau, .t = t});
  RC_ASSERT(response > 0.0 && response <= 1.0);
  RC_ASSERT(lag_response({.tau = tau, .t = 1.1 * t}) >= response);
  close(lag_response({.tau = tau, .t = 1e-6 * tau}), 1e-6, 1e-5);
  RC_ASSERT(lag_deficit(rate, {.tau = tau, .t = t}) <= rate * std::min(t, tau) * (1.0 + 1e-12));
  close(lag_deficit(permissible_rise(0.3, tau), {.tau = tau, .t = 100.0 * tau}), 0.3, 1e-12);
  const double T = drawn(5.0, 200.0);
  const double y = drawn(0.3, 8.0);
  const double slope = drawn(1e-4, 0.01);
  const double far = influence_length(y, slope);
  close(pool_area({.T = T, .control = 2.0 * far, .y = y, .slope = slope}), T * far, 1e-12);
  close(pool_area({.T = T, .control = 0.5 * far, .y = y, .slope = slope}), 0.5 * T * far, 1e-12);
}

RC_GTEST_PROP(BasinExit, LiesBetweenItsBounds, ()) {
  const double Vr = drawn(0.1, 3.0);
  ExitTransfer transfer{.river_level = 100.0, .Vb = Vr * drawn(1.01, 5.0), .Vr = Vr, .Ce = 0.0};
  const auto lowest = level_at_basin_exit(transfer);
  transfer.Ce = drawn(0.01, 0.99);
  const auto level = level_at_basin_exit(transfer);
  transfer.Ce = 1.0;
  const auto highest = level_at_basin_exit(transfer);
  RC_ASSERT(lowest.has_value() && level.has_value() && highest.has_value());
  RC_ASSERT(*lowest < *level && *level < *highest && *highest == 100.0);
  // Without loss the energy is the same on both sides.
  close(*lowest + transfer.Vb * transfer.Vb / 19.62, 100.0 + Vr * Vr / 19.62, 1e-12);
  RC_ASSERT(level_at_basin_exit({.river_level = 100.0, .Vb = Vr, .Vr = 1.1 * Vr, .Ce = 0.5}).error().symbol == "Vr");
}

}  // namespace
}  // namespace quell::hydraulics
