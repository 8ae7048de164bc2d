// Load cases of the walls, forces on blocks, natural frequencies: what makes a load worse is never shown as safer.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <limits>

#include "property/safety_case.h"
#include "quell/design/design.h"
#include "quell/dissipators/catalogue.h"
#include "quell/hydraulics/vibration.h"
#include "quell/hydraulics/wall_loads.h"
#include "quell/io/site_file.h"

namespace quell {
namespace {

using test::example;
using test::safety_of;

constexpr double never = std::numeric_limits<double>::infinity();

const checks::WallLoadCase* find_case(const checks::Safety& safety, std::string_view id) {
  const auto& cases = safety.wall.cases;
  const auto found = std::find_if(cases.begin(), cases.end(), [&](const checks::WallLoadCase& load) { return load.id == id; });
  return found == cases.end() ? nullptr : &*found;
}

checks::WallLoadCase case_of(const site::Site& site, std::string_view id) {
  const auto safety = safety_of(site);
  const auto* load = find_case(safety, id);
  EXPECT_NE(load, nullptr) << id;
  return load == nullptr ? checks::WallLoadCase{} : *load;
}

/// Least of both factors over what each needs.
double reserve(const checks::WallLoadCase& load) {
  return std::min(load.overturning / load.overturning_needed, load.sliding / load.sliding_needed);
}

class SafetyWalls : public testing::TestWithParam<const char*> {};

TEST_P(SafetyWalls, MoreDrawdownIsNeverSafer) {
  auto site = example(GetParam());
  double overturning = never, sliding = never, force = -never;
  for (const double lag : {0.0, 0.2, 0.4, 0.6, 0.8, 1.0}) {
    site.walls.drawdown_lag = lag;
    const auto load = case_of(site, "drawdown");
    EXPECT_LE(load.overturning, overturning + 1e-12);
    EXPECT_LE(load.sliding, sliding + 1e-12);
    EXPECT_GE(load.force, force);
    overturning = load.overturning;
    sliding = load.sliding;
    force = load.force;
  }
}

// Without the pool in the basin, and with as much water behind, the empty basin is at least as bad in force as the sudden stop.
TEST_P(SafetyWalls, WaterInTheBasinHoldsTheWallBack) {
  const auto safety = safety_of(example(GetParam()));
  const auto* empty = find_case(safety, "empty");
  const auto* stopped = find_case(safety, "drawdown");
  ASSERT_TRUE(empty != nullptr && stopped != nullptr);
  ASSERT_NEAR(empty->outside, stopped->outside, 1e-9) << "no ground water is given: both take the highest tailwater";
  EXPECT_LE(stopped->force, empty->force);
  const auto water = hydraulics::water_on_wall(stopped->inside, 0.0);
  EXPECT_NEAR(empty->force - stopped->force, water.force, 1e-6 * empty->force);
}

TEST_P(SafetyWalls, AStrongerEarthquakeIsNeverSafer) {
  auto site = example(GetParam());
  EXPECT_EQ(find_case(safety_of(site), "earthquake"), nullptr) << "no coefficient is given";
  site.walls.has_seismic = true;
  double overturning = never, sliding = never;
  for (const double kh : {0.01, 0.05, 0.1, 0.2, 0.3, 0.4}) {
    site.walls.seismic_coefficient = kh;
    const auto load = case_of(site, "earthquake");
    EXPECT_LT(load.overturning, overturning);
    EXPECT_LT(load.sliding, sliding);
    overturning = load.overturning;
    sliding = load.sliding;
  }
}

TEST_P(SafetyWalls, StrongerPulsesAreNeverSafer) {
  auto site = example(GetParam());
  double inward = never, outward = never;
  for (const double rms : {0.0, 0.02, 0.05, 0.07, 0.1, 0.2}) {
    site.walls.fluctuation_rms = rms;
    const auto safety = safety_of(site);
    const auto* in = find_case(safety, "operating_inward");
    const auto* out = find_case(safety, "operating_outward");
    ASSERT_TRUE(in != nullptr && out != nullptr);
    EXPECT_LE(reserve(*in), inward + 1e-12);
    EXPECT_LE(reserve(*out), outward + 1e-12);
    inward = reserve(*in);
    outward = reserve(*out);
  }
}

TEST_P(SafetyWalls, AWiderBaseStandsBetter) {
  auto site = example(GetParam());
  const double height = safety_of(site).wall.height;
  double overturning = 0.0, sliding = 0.0;
  for (const double share : {0.4, 0.6, 0.8, 1.0}) {
    site.walls.base_width = share * height;
    const auto load = case_of(site, "drawdown");
    EXPECT_GT(load.overturning, overturning);
    EXPECT_GT(load.sliding, sliding);
    overturning = load.overturning;
    sliding = load.sliding;
  }
}

TEST_P(SafetyWalls, FindingsHoldTheWorstCase) {
  const auto safety = safety_of(example(GetParam()));
  const auto finding = std::find_if(safety.findings.begin(), safety.findings.end(),
                                    [](const Finding& entry) { return entry.id == "walls.sliding"; });
  ASSERT_NE(finding, safety.findings.end());
  bool is_named = false;
  for (const auto& load : safety.wall.cases) {
    EXPECT_GE(load.sliding / load.sliding_needed, finding->value / finding->limit - 1e-12) << load.id;
    is_named = is_named || (load.sliding == finding->value && finding->text.find(load.name) != std::string::npos);
  }
  EXPECT_TRUE(is_named) << finding->text;
}
INSTANTIATE_TEST_SUITE_P(Examples, SafetyWalls, testing::Values("01-gravity-dam", "02-small-dam", "04-stepped-dam"));

// Ground water, fill of full height and no water inside: the stem's load is that of the fill alone.
TEST(SafetyWalls, TheEmptyBasinBearsTheFill) {
  auto site = example("01-gravity-dam");
  site.ground.has_level = false;
  site.slab.has_groundwater = true;
  site.slab.groundwater_level = site.river.bed_level;
  const auto safety = safety_of(site);
  const auto* empty = find_case(safety, "empty");
  ASSERT_NE(empty, nullptr);
  const auto fill = hydraulics::backfill_on_wall({.h = safety.wall.height,
                                                  .hw = empty->outside,
                                                  .K0 = site.walls.earth_pressure,
                                                  .gamma = site.walls.moist_weight,
                                                  .gamma_below = site.walls.submerged_weight});
  EXPECT_NEAR(empty->force, fill.force, 1e-9 * fill.force);
  EXPECT_NEAR(empty->moment, fill.moment, 1e-9 * fill.moment);
}

TEST(SafetyForces, PeakGrowsWithItsFactorAndIsNeverBelowTheMean) {
  auto site = example("05-gated-dam");
  for (const double factor : {1.0, 1.5, 2.5}) {
    site.elements.peak_factor = factor;
    const auto safety = safety_of(site);
    ASSERT_FALSE(safety.elements.empty());
    for (const auto& force : safety.elements) {
      EXPECT_GT(force.mean, 0.0) << force.name;
      EXPECT_DOUBLE_EQ(force.peak, factor * force.mean) << force.name;
    }
  }
}

TEST(SafetyForces, AWiderCurveIsPressedLess) {
  const auto safety = safety_of(example("05-gated-dam"));
  ASSERT_GT(safety.invert.radius, 0.0);
  EXPECT_GT(safety.invert.added, 0.0);
  EXPECT_GT(safety.invert.pressure, safety.invert.added);
}

TEST(SafetyVibration, StifferAndShorterIsFaster) {
  auto site = example("01-gravity-dam");
  site.walls.thickness = 1.0;
  const double thin = safety_of(site).vibration.wall;
  site.walls.thickness = 2.0;
  EXPECT_NEAR(safety_of(site).vibration.wall, 2.0 * thin, 1e-9 * thin);
  site.slab.pulse_strouhal = 0.01;
  const double pulses = safety_of(site).vibration.jump;
  site.slab.pulse_strouhal = 0.03;
  EXPECT_NEAR(safety_of(site).vibration.jump, 3.0 * pulses, 1e-9 * pulses);
  const auto wall = [](double H) {
    return hydraulics::cantilever_frequency({.H = H, .t = 1.0, .E = 30.0e9, .gamma_c = 24.0e3});
  };
  EXPECT_NEAR(wall(5.0), 4.0 * wall(10.0), 1e-9);
}

// Without earthquake and wall friction the coefficient is Rankine's; with more of it, it only grows, until the fill slides.
TEST(SafetyEarthquake, CoefficientHasItsLimits) {
  for (const double phi : {0.4, 0.5, 0.6, 0.7}) {
    const auto K = [phi](double kh) { return hydraulics::earth_coefficient_in_earthquake({phi, 0.0, kh, 0.0}); };
    const double rankine = (1.0 - std::sin(phi)) / (1.0 + std::sin(phi));
    EXPECT_NEAR(*K(0.0), rankine, 1e-12);
    double last = 0.0;
    for (int i = 0; i < 20; ++i) {
      const auto now = K(std::tan(phi) * i / 20.0);
      ASSERT_TRUE(now);
      EXPECT_GT(*now, last);
      last = *now;
    }
    EXPECT_FALSE(K(std::tan(phi) * 1.001));
  }
}

}  // namespace
}  // namespace quell
