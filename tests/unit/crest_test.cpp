// Crests of every shape: rating against values computed apart (tests/reference/weir_sites.py), inverse and rise of the rating,
// where the chute starts, with what energy, and what the water below takes.
#include <gtest/gtest.h>

#include <cmath>
#include <numbers>
#include <ostream>

#include "quell/site/chute_flow.h"
#include "quell/site/crest_foot.h"
#include "quell/site/reservoir.h"

namespace quell::site {

/// For the names of the tests.
void PrintTo(const Crest& crest, std::ostream* out) {
  *out << name_of(crest.shape);
  if (crest.shape == CrestShape::broad) *out << (crest.edge == CrestEdge::square ? " square" : " rounded");
  if (crest.shape == CrestShape::labyrinth) *out << ' ' << std::lround(crest.sidewall_angle * 180.0 / std::numbers::pi);
}

namespace {

constexpr double degree = std::numbers::pi / 180.0;

Crest ogee_crest() {
  return {.shape = CrestShape::ogee, .crest_level = 30, .design_head = 2, .net_width = 20, .approach_depth = 4};
}
Crest broad_crest(CrestEdge edge) {
  return {.shape = CrestShape::broad, .crest_level = 30, .net_width = 20, .approach_depth = 4, .crest_length = 4, .edge = edge};
}
Crest sharp_crest() {
  return {.shape = CrestShape::sharp, .crest_level = 30, .net_width = 20, .approach_depth = 4, .floor_level = 27};
}
Crest labyrinth_crest(double angle) {
  return {.shape = CrestShape::labyrinth,
          .crest_level = 58,
          .net_width = 18,
          .approach_depth = 3,
          .sidewall_angle = angle * degree,
          .developed_length = 58,
          .floor_level = 55};
}

/// A chute of 2H:1V below the crest.
Site site_of(const Crest& crest) {
  Site site;
  site.crest = crest;
  site.chute.reaches = {{.slope = 0.5, .end_level = 0.0}};
  site.chute.width = site.chute.end_width = crest.net_width;
  site.chute.roughness_height = 0.6e-3;
  site.discharges.check_flood = 100.0;
  site.river.bed_level = crest.crest_level - 10.0;
  return site;
}

class EveryCrest : public testing::TestWithParam<Crest> {};

TEST_P(EveryCrest, TheRatingRisesAndItsInverseReturns) {
  double before = 0.0;
  for (double head = 0.02; head < 8.0; head *= 1.07) {
    const double discharge = crest_discharge(GetParam(), head);
    ASSERT_GT(discharge, before) << "at a head of " << head;
    before = discharge;
    const auto back = crest_head(GetParam(), discharge);
    ASSERT_TRUE(back);
    EXPECT_NEAR(*back, head, 1e-9 * head);
  }
  EXPECT_EQ(crest_discharge(GetParam(), 0.0), 0.0);
}

TEST_P(EveryCrest, TheWorkingRepeatsTheRating) {
  Working working;
  working.open_section("crest");
  trace_crest(GetParam(), 1.0, working);
  bool found = false;
  for (const auto& step : working.sections().front().steps)
    for (const double output : step.outputs) found = found || std::abs(output - crest_discharge(GetParam(), 1.0)) < 1e-9;
  EXPECT_TRUE(found);
}

// The outline ends where the chute starts, never turns upstream, and reaches the crest level.
TEST_P(EveryCrest, TheOutlineLeadsToTheChute) {
  const auto geometry = chute_geometry(site_of(GetParam()), GetParam().crest_level - 12.0);
  ASSERT_TRUE(geometry);
  const auto& outline = geometry->crest_outline;
  ASSERT_GE(outline.size(), 3u);
  EXPECT_NEAR(outline.front().level, GetParam().crest_level - GetParam().approach_depth, 1e-9);
  EXPECT_NEAR(outline.back().station, geometry->start_station, 1e-9);
  EXPECT_NEAR(outline.back().level, geometry->start_level, 1e-9);
  double highest = outline.front().level;
  for (std::size_t i = 1; i < outline.size(); ++i) {
    EXPECT_GE(outline[i].station, outline[i - 1].station - 1e-12);
    highest = std::max(highest, outline[i].level);
  }
  EXPECT_NEAR(highest, GetParam().crest_level, 1e-9);
}

INSTANTIATE_TEST_SUITE_P(Shapes, EveryCrest,
                         testing::Values(ogee_crest(), broad_crest(CrestEdge::square), broad_crest(CrestEdge::rounded),
                                         sharp_crest(), labyrinth_crest(6), labyrinth_crest(15), labyrinth_crest(27),
                                         labyrinth_crest(35)));

// Heads by SciPy from the published formulas typed again: tests/reference/weir_sites.py.
TEST(CrestHead, AgreesWithIndependentComputations) {
  EXPECT_NEAR(*crest_head(broad_crest(CrestEdge::square), 100), 2.24705428514478, 1e-9);
  EXPECT_NEAR(*crest_head(broad_crest(CrestEdge::rounded), 100), 2.0740434154054, 1e-9);
  EXPECT_NEAR(*crest_head(sharp_crest(), 100), 1.944996001656758, 1e-9);
  EXPECT_NEAR(*crest_head(labyrinth_crest(15), 150), 1.4461063336364, 1e-9);
}

TEST(CrestHead, ALabyrinthAtAnAngleThatWasNotMeasuredHasNoAnswer) {
  EXPECT_FALSE(crest_head(labyrinth_crest(50), 10));
  EXPECT_EQ(crest_discharge(labyrinth_crest(50), 1.0), 0.0);
}

TEST(ChuteStart, StandsWhereTheShapeSays) {
  const auto broad = chute_geometry(site_of(broad_crest(CrestEdge::square)), 18);
  ASSERT_TRUE(broad);
  EXPECT_EQ(broad->start_station, 0.0);
  EXPECT_EQ(broad->start_level, 30.0);
  EXPECT_EQ(broad->start_path, 0.0);
  const auto sharp = chute_geometry(site_of(sharp_crest()), 18);
  ASSERT_TRUE(sharp);
  EXPECT_EQ(sharp->start_level, 27.0);
}

// Chow 1959, sec. 14-5: for a face of 3V:3H the profile is x^1.776 = 1.873 Hd^0.776 y; its slope is 0.5 at
// x = Hd (1.873 0.5/1.776)^(1/0.776), by hand.
TEST(ChuteStart, FollowsTheUpstreamFaceOfAnOgee) {
  auto crest = ogee_crest();
  crest.upstream_face = UpstreamFace::slope_3_to_3;
  const auto geometry = chute_geometry(site_of(crest), 18);
  ASSERT_TRUE(geometry);
  const double x = 2.0 * std::pow(1.873 * 0.5 / 1.776, 1.0 / 0.776);
  EXPECT_NEAR(geometry->start_station, x, 1e-9);
  EXPECT_NEAR(geometry->start_level, 30.0 - std::pow(x, 1.776) / (1.873 * std::pow(2.0, 0.776)), 1e-9);
}

// 1.5 critical depths of 5 m2/s: 1.5 (25/9.81)^(1/3) = 2.048872 m, by hand.
TEST(StartEnergy, IsTheReservoirsExceptBelowAFall) {
  EXPECT_EQ(start_energy_level(site_of(ogee_crest()), 100, 31.5), 31.5);
  EXPECT_EQ(start_energy_level(site_of(broad_crest(CrestEdge::square)), 100, 31.5), 31.5);
  EXPECT_NEAR(start_energy_level(site_of(sharp_crest()), 100, 31.9), 29.048872, 1e-6);
  EXPECT_EQ(start_energy_level(site_of(sharp_crest()), 100, 29.0), 29.0) << "never above the reservoir";
}

TEST(Backwater, AFreeCrestPassesAllOfItsDischarge) {
  const auto site = site_of(ogee_crest());
  const BackwaterInput input{
      .discharge = crest_discharge(site.crest, 2.0), .reservoir_level = 32, .apron_level = 19, .tailwater_level = 25};
  EXPECT_EQ(submergence_share(site, input), 1.0);
  EXPECT_EQ(apron_share(site, input), 1.0);
  EXPECT_EQ(*reservoir_rise(site, input), 0.0);
}

// Design of Small Dams, fig. 9-27 and 9-28 (from memory): the apron at (hd + d)/He = 1.2 leaves 0.917, a tailwater at
// hd/He = 0.5 leaves 0.967.
TEST(Backwater, ApronAndTailwaterTakeTheirShareOfAnOgee) {
  const auto site = site_of(ogee_crest());
  const double free = crest_discharge(site.crest, 2.0);
  const BackwaterInput apron{.discharge = free, .reservoir_level = 32, .apron_level = 29.6, .tailwater_level = 29.8};
  EXPECT_NEAR(apron_share(site, apron), 0.917, 0.001);
  EXPECT_EQ(submergence_share(site, apron), 1.0);
  const BackwaterInput drowned{
      .discharge = free, .reservoir_level = 32, .apron_level = 19, .tailwater_level = 31, .jump_drowned = true};
  EXPECT_NEAR(submergence_share(site, drowned), 0.967, 0.001);
  for (const auto& input : {apron, drowned}) {
    const auto rise = reservoir_rise(site, input);
    ASSERT_TRUE(rise);
    EXPECT_GT(*rise, 0.0);
    auto higher = input;
    higher.reservoir_level += *rise;
    const double passed =
        crest_discharge(site.crest, 2.0 + *rise) * submergence_share(site, higher) * apron_share(site, higher);
    EXPECT_NEAR(passed, free, 1e-4 * free);
  }
}

// Villemonte 1947: the floor at 29 m holds critical flow with its energy level at 31.048872 m; share 0.8235623843 by SciPy.
TEST(Backwater, AFloorCloseBelowDrownsASharpCrest) {
  auto crest = sharp_crest();
  crest.floor_level = 29;
  const auto site = site_of(crest);
  const BackwaterInput input{
      .discharge = 100, .reservoir_level = 30 + *crest_head(crest, 100), .apron_level = 19, .tailwater_level = 22};
  EXPECT_NEAR(level_below_crest(site, input), 31.048872, 1e-6);
  EXPECT_NEAR(submergence_share(site, input), 0.8235623843, 1e-8);
  EXPECT_GT(*reservoir_rise(site, input), 0.1);
}

TEST(Backwater, TailwaterAboveTheReservoirLeavesNothing) {
  for (const auto& crest : {ogee_crest(), broad_crest(CrestEdge::square), sharp_crest()}) {
    const BackwaterInput input{
        .discharge = 50, .reservoir_level = 31, .apron_level = 19, .tailwater_level = 31.5, .jump_drowned = true};
    EXPECT_EQ(submergence_share(site_of(crest), input), 0.0);
  }
}

}  // namespace
}  // namespace quell::site
