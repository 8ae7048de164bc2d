// Crest, chute and toe of the site against independent computations in double precision (methods named beside each).
#include <gtest/gtest.h>

#include <cmath>

#include "quell/site/chute_flow.h"
#include "quell/site/reservoir.h"
#include "quell/site/river.h"
#include "quell/site/toe.h"

namespace quell::site {
namespace {

/// Ogee of design head Hd at level 0 with a straight face below, ks = 0.61 mm.
Site plain_site(double Hd, double slope) {
  Site site;
  site.crest = {.crest_level = 0.0, .design_head = Hd, .net_width = 1.0, .approach_depth = 10.0 * Hd};
  site.chute.reaches = {{.slope = slope, .end_level = 0.0}};
  site.chute.width = site.chute.end_width = 1.0;
  site.chute.roughness_height = 0.61e-3;
  site.discharges.check_flood = 100.0;
  site.river.bed_level = -60.0;
  return site;
}

struct LayerRow {
  double HT, L, d, V, loss;
};

// Independent computation of the boundary-layer procedure of Engineer Manual 1110-2-1603 (recalled): Hd = He = 10 m, C = 2.18,
// q = 68.938 m2/s, face 0.7H:1V, printed to the digits shown.
TEST(ChuteFlow, BoundaryLayerOnAHighFace) {
  const auto site = plain_site(10.0, 1.0 / 0.7);
  const auto geometry = chute_geometry(site, -65.0);
  ASSERT_TRUE(geometry);
  EXPECT_NEAR(geometry->start_station, 16.675, 0.001);
  EXPECT_NEAR(-geometry->start_level, 12.877, 0.001);
  EXPECT_NEAR(geometry->start_path, 25.108, 0.001);
  const auto flow = ChuteFlow::compute(*geometry, 68.938, 10.0);
  ASSERT_TRUE(flow);
  EXPECT_LT(flow->critical_point_path(), 0.0);
  for (const auto& row : {LayerRow{30, 33.803, 2.9626, 23.269, 0.452}, LayerRow{50, 58.217, 2.2877, 30.134, 1.548},
                          LayerRow{70, 82.630, 1.9505, 35.344, 3.407}}) {
    const auto section = flow->section_at(10.0 - row.HT);
    EXPECT_NEAR(section.path, row.L, 0.001);
    EXPECT_NEAR(section.depth, row.d, 0.0005 * row.d);
    EXPECT_NEAR(section.velocity, row.V, 0.0005 * row.V);
    EXPECT_NEAR(10.0 - section.energy_level, row.loss, 0.001);
  }
  const auto toe = toe_flow(68.938, 1.0, flow->energy_level_at(-60.0), 10.0, -60.0);
  ASSERT_TRUE(toe);
  EXPECT_NEAR(toe->y1, 1.9356, 0.001);
  EXPECT_NEAR(toe->V1, 35.617, 0.018);
  EXPECT_NEAR(toe->F1, 8.174, 0.004);
}

// The same with Hd = 2 m, q = 6.16597 m2/s: the layer reaches the surface at L = 46.884 m.
TEST(ChuteFlow, CriticalPointOnAThinFlow) {
  auto site = plain_site(2.0, 1.0 / 0.7);
  site.chute.width = site.chute.end_width = 1e6;  // wide: no side walls in the hydraulic radius
  const auto geometry = chute_geometry(site, -45.0);
  ASSERT_TRUE(geometry);
  const auto flow = ChuteFlow::compute(*geometry, 6.16597e6, 2.0);
  ASSERT_TRUE(flow);
  EXPECT_NEAR(flow->critical_point_path(), 46.884, 0.002);
  // Energy falls by the layer's loss there, 10.394 m, and never rises.
  double above = 2.0;
  for (double level = -5.0; level > -44.0; level -= 0.05) {
    const double here = flow->energy_level_at(level);
    EXPECT_LE(here, above + 1e-12);
    EXPECT_LT(above - here, 1.0) << "no step at level " << level;
    above = here;
  }
  EXPECT_NEAR(2.0 - flow->energy_level_at(2.0 - 38.870), 10.394, 0.02);
}

// Independent arithmetic: Hd = 6 m, C = 2.18 k_H, L' = 30 m, two piers of 0.01, abutments of 0.1. The basic coefficient of the
// curve is 2.181 at P/Hd of 3 and more, so that ratios of discharges are compared.
TEST(Reservoir, RatingWithPiersAndAbutments) {
  const Crest crest{.crest_level = 100,
                    .design_head = 6,
                    .net_width = 30,
                    .approach_depth = 60,
                    .upstream_face = UpstreamFace::vertical,
                    .piers = 2,
                    .pier_contraction = 0.01,
                    .abutment_contraction = 0.1};
  const double expected[][2] = {{1, 53.88}, {3, 302.83}, {6, 915.04}, {7.5, 1304.09}};
  for (const auto& [head, discharge] : expected) {
    EXPECT_NEAR(crest_discharge(crest, head) * 2.18 / 2.181, discharge, 2e-4 * discharge);
    const auto back = crest_head(crest, crest_discharge(crest, head));
    ASSERT_TRUE(back);
    EXPECT_NEAR(*back, head, 1e-9);
  }
}

TEST(Reservoir, ACrestThatIsTooNarrowHasNoAnswer) {
  const Crest crest{.crest_level = 0,
                    .design_head = 2,
                    .net_width = 3,
                    .approach_depth = 6,
                    .upstream_face = UpstreamFace::vertical,
                    .piers = 2,
                    .pier_contraction = 0.1,
                    .abutment_contraction = 0.2};
  EXPECT_TRUE(crest_head(crest, 5.0));
  EXPECT_FALSE(crest_head(crest, 500.0));
}

TEST(ChuteGeometry, ReachesAndAChangeOfWidthJoin) {
  auto site = plain_site(4.0, 0.25);
  site.chute.reaches = {{.slope = 0.25, .end_level = -10.0}, {.slope = 0.5, .end_level = 0.0}};
  site.chute.width = 20.0;
  site.chute.end_width = 30.0;
  site.chute.end_width_level = -25.0;
  const auto geometry = chute_geometry(site, -40.0);
  ASSERT_TRUE(geometry);
  ASSERT_EQ(geometry->pieces.size(), 3u) << "the second reach is cut where the width stops changing";
  EXPECT_DOUBLE_EQ(geometry->last_reach_level, -10.0);
  for (std::size_t i = 1; i < 3; ++i) {
    const auto& above = geometry->pieces[i - 1];
    const auto& below = geometry->pieces[i];
    EXPECT_NEAR(above.start_path + above.length, below.start_path, 1e-9);
    EXPECT_NEAR(above.start_level - above.length * above.sine, below.start_level, 1e-9);
    EXPECT_NEAR(above.start_width + above.length * above.width_change, below.start_width, 1e-9);
  }
  EXPECT_NEAR(geometry->pieces[2].start_width, 30.0, 1e-12);
  EXPECT_EQ(geometry->pieces[2].width_change, 0.0);
}

TEST(ChuteGeometry, AReachAboveTheTangentPointHasNoAnswer) {
  auto site = plain_site(10.0, 1.4);
  site.chute.reaches = {{.slope = 1.4, .end_level = -2.0}, {.slope = 0.8, .end_level = 0.0}};
  EXPECT_FALSE(chute_geometry(site, -40.0));
}

TEST(River, RatingIsStraightBetweenItsRowsAndLowersTheLowCaseOnly) {
  River river;
  river.source = site::TailwaterSource::rating;
  river.bed_degradation = 0.5;
  river.rating.discharge = {0, 100, 300};
  river.rating.level = {{{10, 12, 14}, {10, 13, 15}, {10, 14, 16}}};
  EXPECT_DOUBLE_EQ(*tailwater_level(river, 200, TailwaterCase::low), 13 - 0.5);
  EXPECT_DOUBLE_EQ(*tailwater_level(river, 50, TailwaterCase::expected), 11.5);
  EXPECT_DOUBLE_EQ(*tailwater_level(river, 300, TailwaterCase::high), 16);
  EXPECT_FALSE(tailwater_level(river, 301, TailwaterCase::high));
}

// Wide-channel limit of Manning's formula: q = 5 m2/s, n = 0.03, S = 0.001 gives 2.54481 m (closed form).
TEST(River, NormalDepthInAWideRiver) {
  River river;
  river.bed_level = 100;
  river.section = {.bottom_width = 1e6, .side_slope = 0, .bed_slope = 0.001, .manning_n = {0.03, 0.03, 0.03}};
  EXPECT_NEAR(*tailwater_level(river, 5e6, TailwaterCase::expected), 102.54481, 2e-5);
}

}  // namespace
}  // namespace quell::site
