#include "quell/io/csv_files.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "quell/io/input_text.h"

namespace quell::io {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;

struct Read {
  bool good = false;
  site::River river;
  std::string problems;
  std::vector<Problem> remarks;
};

Read read(std::string_view csv, UnitSystem system = UnitSystem::si) {
  ProblemList list("rating.csv", split_lines(csv));
  Read result;
  result.good = read_rating_csv(csv, system, result.river.rating, result.river.has_spread, list);
  SiteFile file;
  list.hand_over(file);
  for (const Problem& problem : file.problems) result.problems += to_text(problem) + "\n";
  result.remarks = file.remarks;
  return result;
}

TEST(RatingCsv, ColumnsInAnyOrderWithTheirUnits) {
  const Read r = read("high [ft], discharge [ft3/s] ,low [m],expected [cm]\n10,1000,2.5,280\n# a remark\n\n20 , 2e3, 4, 510\n");
  ASSERT_TRUE(r.good) << r.problems;
  const site::TailwaterRating& rating = r.river.rating;
  ASSERT_EQ(rating.discharge.size(), 2u);
  EXPECT_NEAR(rating.discharge[0], 28.316846592, 1e-12);
  EXPECT_NEAR(rating.discharge[1], 56.633693184, 1e-12);
  EXPECT_THAT(rating.level[0], ElementsAre(2.5, 4.0));
  EXPECT_NEAR(rating.level[1][1], 5.1, 1e-12);
  EXPECT_NEAR(rating.level[2][0], 3.048, 1e-12);
  EXPECT_TRUE(r.river.has_spread);
  EXPECT_TRUE(r.remarks.empty());
}

TEST(RatingCsv, OneLevelColumnServesAllCases) {
  const Read r = read("discharge (m3/s),level (m)\n1,10\n2,11\n");
  ASSERT_TRUE(r.good) << r.problems;
  EXPECT_FALSE(r.river.has_spread);
  for (const auto& level : r.river.rating.level) EXPECT_THAT(level, ElementsAre(10.0, 11.0));
}

TEST(RatingCsv, AHeadingWithoutUnitStandsInTheSystemOfTheSite) {
  EXPECT_NEAR(read("discharge,level\n1,10\n2,11\n", UnitSystem::us).river.rating.level[1][0], 3.048, 1e-12);
  EXPECT_EQ(read("discharge,level\n1,10\n2,11\n", UnitSystem::si).river.rating.level[1][0], 10.0);
}

TEST(RatingCsv, DecimalCommaIsReadAndRemarkedOnce) {
  const Read r = read("discharge (m3/s);expected (m)\n1,5;10,25\n2,5;11\n");
  ASSERT_TRUE(r.good) << r.problems;
  EXPECT_THAT(r.river.rating.discharge, ElementsAre(1.5, 2.5));
  EXPECT_THAT(r.river.rating.level[1], ElementsAre(10.25, 11.0));
  ASSERT_EQ(r.remarks.size(), 1u);
  EXPECT_EQ(r.remarks[0].line, 2);
  EXPECT_THAT(r.remarks[0].message, HasSubstr("decimal commas"));
}

TEST(RatingCsv, ByteOrderMarkQuotesAndCarriageReturns) {
  const Read r = read("\xEF\xBB\xBF\"discharge (m3/s)\",\"level (m)\"\r\n\"1\",\"10\"\r\n2,11\r\n");
  ASSERT_TRUE(r.good) << r.problems;
  EXPECT_THAT(r.river.rating.discharge, ElementsAre(1.0, 2.0));
  ASSERT_EQ(r.remarks.size(), 1u);
  EXPECT_THAT(r.remarks[0].message, HasSubstr("byte order mark"));
}

TEST(RatingCsv, ProblemsPointAtTheCell) {
  const Read r = read("discharge (m3/s),level (m)\n1,  x\n");
  EXPECT_THAT(r.problems, HasSubstr("rating.csv:2:5: error: 'x' is not a plain number"));
}

}  // namespace
}  // namespace quell::io
