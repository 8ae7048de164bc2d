// Stone and filter, seepage below floors with cutoffs, the programme of the physical model.
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <cmath>

#include "property/safety_case.h"
#include "quell/base/constants.h"
#include "quell/design/design.h"
#include "quell/dissipators/catalogue.h"
#include "quell/hydraulics/filters.h"
#include "quell/hydraulics/khosla.h"
#include "quell/io/site_file.h"

namespace quell {
namespace {

using test::example;
using test::safety_of;

double between(double low, double high) {
  return low + (high - low) * 1e-6 * *rc::gen::inRange(0, 1000001);
}

hydraulics::LayerBand point(double d15, double d50, double d85) {
  return {.D15 = {d15, d15}, .D50 = {d50, d50}, .D85 = {d85, d85}};
}

/// A river of that bed; no allowance for its sinking, so that only the grain matters.
void give_bed(site::Site& site, double mean_size, double coarse_size) {
  site.river.degradation_given = true;
  site.river.bed = {.given = true,
                    .mean_size = mean_size,
                    .coarse_size = coarse_size,
                    .dominant_discharge = 240.0,
                    .bed_width = 55.0,
                    .mean_depth = 2.1,
                    .bed_slope = 0.003,
                    .manning_n = 0.03};
}

void raise(site::Site& site, double up) {
  site.crest.crest_level += up;
  site.river.bed_level += up;
  for (auto& levels : site.river.rating.level)
    for (auto& level : levels) level += up;
  site.basin.lowest_apron_level += up;
  site.ground.ground_level += up;
  site.ground.foundation_level += up;
}

// The rules are written here again, not called: bed on layer, layer on layer, layer on stone, worst edges.
void expect_rules(const hydraulics::LayerBand& lower, const hydraulics::LayerBand& upper) {
  RC_ASSERT(upper.D15.most <= 5.0 * lower.D85.least * (1.0 + 1e-9));
  RC_ASSERT(upper.D15.most <= 40.0 * lower.D15.least * (1.0 + 1e-9));
  RC_ASSERT(upper.D50.most <= 40.0 * lower.D50.least * (1.0 + 1e-9));
}

RC_GTEST_PROP(SafetyFilter, RulesHoldBetweenEveryTwoLayers, ()) {
  const double d50 = std::pow(10.0, between(-5.0, -1.5));
  const double d15 = d50 / between(1.2, 6.0), d85 = d50 * between(1.2, 6.0);
  const double D50 = between(0.1, 1.5);
  const hydraulics::LayerBand cover{.D15 = {0.75 * D50, 0.86 * D50}, .D50 = {D50, 1.14 * D50}, .D85 = {1.33 * D50, 1.51 * D50}};
  const auto chain = hydraulics::filter_chain({.base = {.d15 = d15, .d50 = d50, .d85 = d85}, .cover = cover});
  RC_PRE(chain.closes);
  auto lower = point(d15, d50, d85);
  for (const auto& layer : chain.layers) {
    expect_rules(lower, layer);
    RC_ASSERT(layer.D15.least * (1.0 + 1e-9) >= 5.0 * lower.D15.most);
    RC_ASSERT(hydraulics::holds_between(lower, layer));
    lower = layer;
  }
  expect_rules(lower, cover);
  // One layer fewer of the least kind would not do: the stone alone breaks a rule wherever there are layers.
  if (!chain.layers.empty())
    RC_ASSERT(cover.D15.most > 5.0 * d85 || cover.D15.most > 40.0 * d15 || cover.D50.most > 40.0 * d50);
}

RC_GTEST_PROP(SafetyFilter, CommonBedsClose, ()) {
  // Sand and gravel graded as rivers leave them: d85/d15 of 4 and more.
  const double d50 = std::pow(10.0, between(-4.0, -2.0));
  const double d15 = d50 / between(2.0, 4.0), d85 = d50 * between(2.0, 4.0);
  const auto stone = hydraulics::riprap_gradation({.De = 0.5, .Di = 0.5, .k = 1.5});
  const auto wide = [&](double size) { return hydraulics::SizeBand{size, stone.band * size}; };
  const auto chain =
      hydraulics::filter_chain({.base = {.d15 = d15, .d50 = d50, .d85 = d85},
                                .cover = {.D15 = wide(stone.D15), .D50 = wide(stone.D50), .D85 = wide(stone.D85)}});
  RC_ASSERT(chain.closes);
  RC_ASSERT(chain.layers.size() <= 4U);
}

RC_GTEST_PROP(SafetyFilter, DrainLayersHoldOneAnother, ()) {
  const double d50 = std::pow(10.0, between(-5.0, -2.0));
  const double d15 = d50 / between(1.5, 6.0), d85 = d50 * between(1.5, 6.0);
  const auto chain = hydraulics::drain_layers({.d15 = d15, .d50 = d50, .d85 = d85});
  auto lower = point(d15, d50, d85);
  for (const auto& layer : chain.layers) {
    RC_ASSERT(hydraulics::holds_between(lower, layer, 1e-9));
    lower = layer;
  }
  RC_ASSERT(std::sqrt(lower.D50.least * lower.D50.most) >= 0.005);
}

RC_GTEST_PROP(SafetySeepage, HeadsFallDownstreamBetweenThePools, ()) {
  const double b = between(10.0, 150.0);
  hydraulics::FloorCutoffs floor{
      .b = b, .d = {}, .t = {}, .middle = between(0.15, 0.85) * b, .slope = 0.0, .slope_length = 0.0};
  for (std::size_t i = 0; i < 3; ++i)
    if (*rc::gen::inRange(0, 4) > 0) {
      floor.t[i] = between(0.0, 2.0);
      floor.d[i] = floor.t[i] + between(0.5, 0.6 * b);
    }
  if (*rc::gen::arbitrary<bool>()) {
    floor.slope = between(1.0, 8.0);
    floor.slope_length = between(0.0, b);
  }
  const auto cutoffs = hydraulics::khosla_floor(floor);
  double before = 1.0;
  for (const auto& cutoff : cutoffs) {
    if (!cutoff.exists) continue;
    for (const double share : {cutoff.final.E, cutoff.final.D, cutoff.final.C}) {
      RC_ASSERT(share >= 0.0);
      RC_ASSERT(share <= before + 1e-12);
      before = share;
    }
  }
  double left = 1.0;
  for (int i = 0; i <= 50; ++i) {
    const double share = hydraulics::khosla_share(cutoffs, b, b * i / 50.0);
    RC_ASSERT(share >= -1e-12);
    RC_ASSERT(share <= left + 1e-12);
    left = share;
  }
}

// A middle cutoff at the very end or start is the one at the end or start; mirror images add to one.
RC_GTEST_PROP(SafetySeepage, LimitsOfTheMiddleCutoff, ()) {
  const double b = between(10.0, 100.0), d = between(1.0, 10.0);
  const auto end = hydraulics::khosla_downstream({.b = b, .d = d});
  const auto middle = hydraulics::khosla_middle({.b1 = b, .b2 = 1e-9, .d = d});
  RC_ASSERT(std::abs(middle.E - end.E) < 1e-6);
  RC_ASSERT(std::abs(middle.D - end.D) < 1e-6);
  const auto one = hydraulics::khosla_middle({.b1 = 0.3 * b, .b2 = 0.7 * b, .d = d});
  const auto other = hydraulics::khosla_middle({.b1 = 0.7 * b, .b2 = 0.3 * b, .d = d});
  RC_ASSERT(std::abs(one.E + other.C - 1.0) < 1e-12);
  RC_ASSERT(std::abs(one.D + other.D - 1.0) < 1e-12);
}

TEST(SafetySeepage, ADeeperUpstreamCutoffNeverRaisesTheUpliftAtTheToe) {
  auto site = example("06-canal-drop");
  site.foundation.soil = site::Soil::coarse_sand;
  site.foundation.downstream_cutoff = 1.0;
  double head = 1e300;
  for (const double depth : {0.0, 0.5, 1.0, 2.0}) {
    site.foundation.upstream_cutoff = depth;
    const auto safety = safety_of(site, "saf");
    EXPECT_LE(safety.seepage.toe_head, head + 1e-9);
    EXPECT_GT(safety.seepage.toe_head, 0.0);
    EXPECT_LE(safety.seepage.toe_head, safety.seepage.no_flow_head);
    head = safety.seepage.toe_head;
  }
}

// Every run keeps the Froude number, and its discharge is the prototype's over the scale to the power 2.5.
TEST(SafetyModel, RunsKeepTheFroudeNumber) {
  for (const char* name : {"01-gravity-dam", "05-gated-dam"}) {
    const auto safety = safety_of(example(name));
    const auto& model = safety.model;
    ASSERT_GT(model.scale, 0.0);
    ASSERT_GE(model.runs.size(), 5U);
    for (const auto& run : model.runs) {
      EXPECT_NEAR(run.model_F1, run.F1, 1e-9 * run.F1) << run.name;
      if (!model.is_section) {
        EXPECT_NEAR(run.model_discharge * std::pow(model.scale, 2.5), run.discharge, 1e-9 * run.discharge);
        EXPECT_LE(run.model_discharge, model.ranges.largest_discharge);
      }
      EXPECT_NEAR(run.reynolds * water_viscosity, run.model_V1 * run.model_y1, 1e-12);
      EXPECT_FALSE(run.measure.empty());
      EXPECT_LE(run.model_depth[0], run.model_depth[2] + 1e-12);
    }
    EXPECT_LT(model.ranges.least_pressure, model.ranges.largest_pressure);
  }
}

TEST(SafetyModel, GatesBringTheirPatterns) {
  const auto runs = safety_of(example("05-gated-dam")).model.runs;
  EXPECT_TRUE(std::any_of(runs.begin(), runs.end(), [](const auto& run) { return run.name.rfind("gates: ", 0) == 0; }));
}

TEST(SafetyRiver, LayersDoNotDependOnTheDatum) {
  auto site = example("01-gravity-dam");
  give_bed(site, 0.002, 0.006);
  site.foundation.soil = site::Soil::fine_gravel;
  site.foundation.upstream_cutoff = 5.0;
  site.foundation.downstream_cutoff = 4.0;
  const auto low = safety_of(site);
  raise(site, 250.0);
  const auto high = safety_of(site);
  ASSERT_FALSE(low.layers.filter.empty());
  ASSERT_EQ(low.layers.filter.size(), high.layers.filter.size());
  for (std::size_t i = 0; i < low.layers.filter.size(); ++i) {
    EXPECT_NEAR(high.layers.filter[i].band.D15.most, low.layers.filter[i].band.D15.most, 1e-9);
    EXPECT_NEAR(high.layers.filter[i].thickness, low.layers.filter[i].thickness, 1e-9);
  }
  ASSERT_EQ(low.seepage.points.size(), 7U);
  for (std::size_t i = 0; i < low.seepage.points.size(); ++i)
    EXPECT_NEAR(high.seepage.points[i].khosla, low.seepage.points[i].khosla, 1e-9);
  ASSERT_EQ(low.model.runs.size(), high.model.runs.size());
  for (std::size_t i = 0; i < low.model.runs.size(); ++i)
    EXPECT_NEAR(high.model.runs[i].model_depth[0], low.model.runs[i].model_depth[0], 1e-6);
}

// Finer beds never need fewer layers, and a bed that is not given brings words and no numbers.
TEST(SafetyRiver, FinerBedsNeedMoreLayers) {
  auto site = example("01-gravity-dam");
  site.river.bed.given = false;
  EXPECT_TRUE(safety_of(site).layers.filter.empty());
  EXPECT_FALSE(safety_of(site).layers.bed_known);
  std::size_t layers = 0;
  for (const double size : {0.2, 0.01, 0.001, 0.0002}) {
    give_bed(site, size, 3.0 * size);
    const auto safety = safety_of(site);
    EXPECT_TRUE(safety.layers.closes) << size;
    EXPECT_GE(safety.layers.filter.size(), layers);
    layers = safety.layers.filter.size();
  }
  EXPECT_GE(layers, 2U);
}

}  // namespace
}  // namespace quell
