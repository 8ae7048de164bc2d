// How river profiles approach solutions that are known: a manufactured subcritical one, in second order, and a supercritical
// one.
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <cmath>
#include <vector>

#include "draws.h"
#include "quell/hydraulics/bresse.h"
#include "quell/hydraulics/uniform_flow.h"
#include "river_models.h"

namespace quell::hydraulics {
namespace {
using namespace river_models;

// ---- a manufactured solution: a depth is chosen, and the bed follows from it (type of MacDonald et al. 1995)

constexpr double flow = 20.0;  // m3/s in a rectangle of 10 m, n = 0.03, along 1000 m

double chosen_depth(double x) {
  return std::cbrt(4.0 / gravity) * (1.0 + 0.5 * std::exp(-16.0 * std::pow(x / 1000.0 - 0.5, 2)));
}
double bed_slope(double x) {
  const double y = chosen_depth(x);
  const double rate =
      -std::cbrt(4.0 / gravity) * 0.5 * std::exp(-16.0 * std::pow(x / 1000.0 - 0.5, 2)) * 32.0 * (x / 1000.0 - 0.5) / 1000.0;
  return (1.0 - 4.0 / (gravity * y * y * y)) * rate +
         0.36 * std::pow(2.0 * y + 10.0, 4.0 / 3.0) / std::pow(10.0 * y, 10.0 / 3.0);
}
/// Level of the bed: the slope integrated from x to the end by Simpson's rule.
double bed(double x) {
  const int pieces = 2000;
  const double h = (1000.0 - x) / pieces;
  double sum = 0.0;
  for (int i = 0; i < pieces; ++i) {
    const double from = x + i * h;
    sum += h / 6.0 * (bed_slope(from) + 4.0 * bed_slope(from + h / 2.0) + bed_slope(from + h));
  }
  return sum;
}
/// Largest error of the depth with so many equal steps.
double largest_error(int steps, FrictionAverage average) {
  River river;
  for (int i = 0; i <= steps; ++i) {
    const double station = 1000.0 * i / steps;
    const double z = bed(1000.0 - station);
    river.add(
        station,
        {.x = {0, 0, 10, 10}, .z = {z + 10, z, z, z + 10}, .left_bank = 0, .right_bank = 10, .manning_n = {0.03, 0.03, 0.03}});
  }
  const auto profile = river_profile({.stations = river.stations,
                                      .discharge = flow,
                                      .downstream = at_level(chosen_depth(1000.0)),
                                      .contraction = 0.0,
                                      .expansion = 0.0,
                                      .average = average});
  EXPECT_TRUE(profile.has_value());
  double largest = 0.0;
  for (const RiverNode& node : profile->nodes)
    largest = std::max(largest, std::abs(node.level - node.bed_level - chosen_depth(1000.0 - node.station)));
  return largest;
}

TEST(ManufacturedProfile, HasTheBedThatWasComputedForIt) {
  // Independent values, four decimals (Python 3, SciPy).
  EXPECT_NEAR(bed(0.0), 7.0868, 6e-5);
  EXPECT_NEAR(bed(500.0), 3.3787, 6e-5);
  EXPECT_NEAR(bed(800.0), 2.0270, 6e-5);
  EXPECT_NEAR(chosen_depth(500.0), 1.1123, 6e-5);
}

TEST(ManufacturedProfile, IsApproachedInSecondOrderByEveryAverage) {
  for (const auto average :
       {FrictionAverage::conveyance, FrictionAverage::arithmetic, FrictionAverage::geometric, FrictionAverage::harmonic}) {
    const double coarse = largest_error(100, average);
    const double fine = largest_error(200, average);
    const double finest = largest_error(400, average);
    EXPECT_NEAR(std::log2(coarse / fine), 2.0, 0.2);
    EXPECT_NEAR(std::log2(fine / finest), 2.0, 0.1);
    EXPECT_LT(finest, 2e-4);
  }
}

TEST(SupercriticalProfile, FallsFromCriticalDepthTowardsNormalDepth) {
  // Rectangle of 5 m, slope 0.05, n = 0.015, 20 m3/s: the depths at 5, 10, 20 and 50 m from an integration of dy/dx (SciPy).
  const auto depths = [](int steps) {
    River river;
    for (int i = 0; i <= steps; ++i) {
      const double station = 50.0 * i / steps;
      const double z = 0.05 * station;
      river.add(
          station,
          {.x = {0, 0, 5, 5}, .z = {z + 9, z, z, z + 9}, .left_bank = 0, .right_bank = 5, .manning_n = {0.015, 0.015, 0.015}});
    }
    const auto profile = river_profile({.stations = river.stations,
                                        .discharge = 20.0,
                                        .contraction = 0.0,
                                        .expansion = 0.0,
                                        .regime = ProfileRegime::supercritical});
    EXPECT_TRUE(profile.has_value());
    std::vector<double> found;
    for (const double x : {5.0, 10.0, 20.0, 50.0}) {
      const auto& node = profile->nodes[static_cast<std::size_t>(std::lround((50.0 - x) / 50.0 * steps))];
      found.emplace_back(node.level - node.bed_level);
    }
    return found;
  };
  const auto coarse = depths(10);
  const double coarse_expected[] = {0.8440, 0.7556, 0.6622, 0.5542};  // the same steps of 5 m solved by Brent
  const double exact[] = {0.848614, 0.758605, 0.663927, 0.554821};
  const auto fine = depths(1000);
  for (std::size_t i = 0; i < 4; ++i) {
    EXPECT_NEAR(coarse[i], coarse_expected[i], 6e-5);
    EXPECT_NEAR(fine[i], exact[i], 2e-5);
  }
}

RC_GTEST_PROP(BresseDistance, AddsUpAndHasTheSlopeOfTheSurface, ()) {
  const double yn = draws::drawn(0.2, 8.0);
  const double yc = yn * draws::drawn(0.2, 3.0);
  const double S0 = draws::drawn(1e-4, 0.02);
  const bool above = *rc::gen::arbitrary<bool>();
  const double low = yn * (above ? draws::drawn(1.01, 2.0) : draws::drawn(0.2, 0.6));
  const double high = yn * (above ? draws::drawn(2.1, 5.0) : draws::drawn(0.61, 0.99));
  const auto distance = [&](double from, double to) {
    return *bresse_distance({.bed_slope = S0, .yn = yn, .yc = yc, .y1 = from, .y2 = to});
  };
  const double middle = 0.5 * (low + high);
  const double scale = std::abs(distance(low, middle)) + std::abs(distance(middle, high));
  RC_ASSERT(std::abs(distance(low, middle) + distance(middle, high) - distance(low, high)) <= 1e-10 * scale);
  RC_ASSERT(std::abs(distance(low, high) + distance(high, low)) <= 1e-10 * scale);
  const double h = 1e-4 * middle;
  const double slope = surface_slope_chezy_wide({.bed_slope = S0, .yn = yn, .yc = yc, .y = middle});
  RC_PRE(std::abs(middle / yc - 1.0) > 0.05 && std::abs(middle / yn - 1.0) > 0.02);
  draws::close(2.0 * h / distance(middle - h, middle + h), slope, 1e-3);
  RC_ASSERT(bresse_distance({.bed_slope = S0, .yn = yn, .yc = yc, .y1 = 0.9 * yn, .y2 = 1.1 * yn}).error().symbol == "y2");
}

}  // namespace
}  // namespace quell::hydraulics
