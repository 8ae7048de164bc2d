// Curves: straight lines between the points, the end value outside; and what the compiled-in tables promise.
#include "quell/base/curve.h"

#include <gtest/gtest.h>

#include <cmath>
#include <string>

#include "quell/base/source.h"

namespace quell {
namespace {

constexpr double xs[] = {1.0, 2.0, 4.0};
constexpr double ys[] = {10.0, 20.0, 10.0};
const Curve tent{"tent", "A tent", "x", "y", "momentum", "none", Provenance::derived, 0.0, "", xs, ys};

TEST(Curve, GoesThroughItsPointsAndStraightBetween) {
  for (std::size_t i = 0; i < 3; ++i) EXPECT_DOUBLE_EQ(tent.at(xs[i]), ys[i]);
  EXPECT_DOUBLE_EQ(tent.at(1.5), 15.0);
  EXPECT_DOUBLE_EQ(tent.at(3.5), 12.5);
}

TEST(Curve, HoldsItsEndValuesOutside) {
  EXPECT_DOUBLE_EQ(tent.at(-100.0), 10.0);
  EXPECT_DOUBLE_EQ(tent.at(100.0), 10.0);
  EXPECT_FALSE(std::isnan(tent.at(std::nan(""))));
  EXPECT_TRUE(tent.range().contains(4.0));
  EXPECT_FALSE(tent.range().contains(4.1));
}

TEST(Curves, AreSortedWellFormedAndCited) {
  std::string_view before;
  for (const auto& curve : all_curves()) {
    EXPECT_LT(before, curve.id);
    before = curve.id;
    ASSERT_GE(curve.x.size(), 2U) << curve.id;
    ASSERT_EQ(curve.x.size(), curve.y.size()) << curve.id;
    for (std::size_t i = 1; i < curve.x.size(); ++i) EXPECT_LT(curve.x[i - 1], curve.x[i]) << curve.id;
    for (std::size_t i = 0; i < curve.x.size(); ++i) EXPECT_DOUBLE_EQ(curve.at(curve.x[i]), curve.y[i]) << curve.id;
    EXPECT_NE(find_source(curve.source), nullptr) << curve.id << " cites " << curve.source;
    EXPECT_GE(curve.reading_error, 0.0) << curve.id;
    EXPECT_EQ(find_curve(curve.id), &curve);
  }
}

TEST(Curves, UnknownIdIsNull) {
  EXPECT_EQ(find_curve("no_such_curve"), nullptr);
}

TEST(CurvesDeathTest, UnknownIdOfAProgrammerStops) {
  testing::FLAGS_gtest_death_test_style = "threadsafe";
  EXPECT_DEATH(curve("no_such_curve"), "no curve 'no_such_curve'");
}

TEST(Sources, AreCitedShortAndLong) {
  EXPECT_EQ(short_citation("peterka_1984"), "Peterka 1984");
  const std::string full = full_citation("peterka_1984");
  EXPECT_EQ(full.rfind("Peterka, A. J. (1984). Hydraulic design of stilling basins and energy dissipators. ", 0), 0U) << full;
  EXPECT_EQ(full.back(), '.');
  EXPECT_EQ(short_citation("hec14_2006"), "Thompson and Kilgore 2006");
  EXPECT_EQ(short_citation("hager_1990"), "Hager et al. 1990");
  EXPECT_EQ(short_citation("momentum"), "Mechanics");  // undated
  EXPECT_EQ(full_citation("momentum").find("undated"), std::string::npos);
}

TEST(Sources, KeyWithoutEntryIsReturned) {
  EXPECT_EQ(find_source("nobody_1900"), nullptr);
  EXPECT_EQ(short_citation("nobody_1900"), "nobody_1900");
  EXPECT_EQ(full_citation("nobody_1900"), "nobody_1900");
}

TEST(Sources, KeysAreUniqueAndEveryEntryCanBeCited) {
  for (const auto& source : all_sources()) {
    EXPECT_EQ(find_source(source.key), &source) << source.key;
    EXPECT_FALSE(short_citation(source.key).empty());
    EXPECT_EQ(full_citation(source.key).find(".."), std::string::npos) << full_citation(source.key);
  }
}

}  // namespace
}  // namespace quell
