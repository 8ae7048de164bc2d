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

/// Reads with one of the readers; problems as text, empty where there are none.
template <typename Data>
std::string faults(bool (*reader)(std::string_view, UnitSystem, Data&, ProblemList&), std::string_view csv, Data& data) {
  ProblemList list("f.csv", split_lines(csv));
  const bool good = reader(csv, UnitSystem::si, data, list);
  SiteFile file;
  list.hand_over(file);
  std::string text;
  for (const Problem& problem : file.problems) text += to_text(problem) + "\n";
  EXPECT_EQ(good, text.empty());
  return text;
}

std::string inflow_faults(std::string_view csv) {
  site::Inflow inflow;
  return faults(read_hydrograph_csv, csv, inflow);
}
std::string storage_faults(std::string_view csv) {
  site::Reservoir reservoir;
  return faults(read_storage_csv, csv, reservoir);
}
std::string record_faults(std::string_view csv) {
  site::FloodRecord record;
  return faults(read_record_csv, csv, record);
}
std::string gauging_faults(std::string_view csv) {
  site::Gauging gauging;
  return faults(read_gauging_csv, csv, gauging);
}
std::string section_faults(std::string_view csv) {
  site::CrossSection section;
  return faults(read_section_csv, csv, section);
}

TEST(HydrographCsv, TimeInItsUnitAndAnyStep) {
  site::Inflow inflow;
  ASSERT_EQ(faults(read_hydrograph_csv, "time (h), inflow (m3/s)\n-1,0\n0,20\n0.5,35\n2.5,12\n", inflow), "");
  EXPECT_THAT(inflow.time, ElementsAre(-3600.0, 0.0, 1800.0, 9000.0));
  EXPECT_THAT(inflow.flow, ElementsAre(0.0, 20.0, 35.0, 12.0));
}

TEST(HydrographCsv, WhatCannotBeRouted) {
  EXPECT_THAT(inflow_faults("time,flow (m3/s)\n0,1\n1,2\n2,1\n"),
              HasSubstr("f.csv:1:1: error: the heading 'time' needs its unit"));
  EXPECT_THAT(inflow_faults("time (h),flow (m3/s)\n0,1\n1,2\n"),
              HasSubstr("f.csv:3:1: error: a hydrograph needs at least three"));
  EXPECT_THAT(inflow_faults("time (h),flow (m3/s)\n0,1\n1,2\n1,3\n"),
              HasSubstr("f.csv:4:1: error: the times of a hydrograph must increase: 3600 s follows 3600 s"));
  EXPECT_THAT(inflow_faults("time (h),flow (m3/s)\n0,1\n1,-2\n2,3\n"),
              HasSubstr("f.csv:3:3: error: '-2' is not a flow that can be"));
  EXPECT_THAT(inflow_faults("time (h),flow (m3/s)\n0,0\n1,0\n2,0\n"), HasSubstr("every flow of this hydrograph is zero"));
}

TEST(HydrographCsv, AGapNamesBothRows) {
  const std::string csv = "time (h),flow (m3/s)\n0,1\n1,2\n2,3\n\n";
  EXPECT_EQ(inflow_faults(csv + "12,4\n13,2\n"), "") << "ten usual steps are no gap";
  EXPECT_THAT(inflow_faults(csv + "12.1,4\n13.1,2\n"),
              HasSubstr("f.csv:6:1: error: a gap between the rows of lines 4 and 6: 10.1 h pass, where the usual step is 1 h"));
}

TEST(StorageCsv, AreaOrStorage) {
  site::Reservoir by_area, by_storage;
  ASSERT_EQ(faults(read_storage_csv, "level (m),area (km2)\n100,0\n110,1.5\n120,1.5\n", by_area), "");
  EXPECT_THAT(by_area.area, ElementsAre(0.0, 1.5e6, 1.5e6));
  EXPECT_TRUE(by_area.storage.empty());
  ASSERT_EQ(faults(read_storage_csv, "level (m),volume (hm3)\n100,0\n110,2\n", by_storage), "");
  EXPECT_THAT(by_storage.storage, ElementsAre(0.0, 2e6));
  EXPECT_TRUE(by_storage.area.empty());
  EXPECT_THAT(storage_faults("level (m)\n100\n110\n"),
              HasSubstr("f.csv:1:1: error: a storage table needs a column area (km2) or"));
  EXPECT_THAT(storage_faults("level,area (m2),storage (m3)\n1,1,1\n2,2,2\n"), HasSubstr("area or storage, not both"));
  EXPECT_THAT(storage_faults("level,area (m2)\n1,1\n"), HasSubstr("at least two rows"));
  EXPECT_THAT(storage_faults("level,area (m2)\n1,1\n1,2\n"),
              HasSubstr("f.csv:3:1: error: the levels of a storage table must increase"));
  EXPECT_THAT(storage_faults("level,area (m2)\n1,3\n2,2\n"),
              HasSubstr("f.csv:3:3: error: the area of a reservoir must not fall: 2 m2"));
  EXPECT_THAT(storage_faults("level,storage (m3)\n1,3\n2,3\n"),
              HasSubstr("the storage of a reservoir must increase: 3 m3 follows"));
  EXPECT_THAT(storage_faults("level,area (m2)\n1,0\n2,0\n"), HasSubstr("holds no water"));
}

std::string yearly(int years, bool with_year) {
  std::string csv = with_year ? "year,flow (m3/s)\n" : "flow (m3/s)\n";
  for (int i = 0; i < years; ++i)
    csv += (with_year ? std::to_string(2000 - i) + "," : "") + std::to_string(100 + 10 * i) + "\n";
  return csv;
}

TEST(RecordCsv, YearsInAnyOrderEachOnce) {
  site::FloodRecord record, nameless;
  ASSERT_EQ(faults(read_record_csv, yearly(10, true), record), "");
  EXPECT_EQ(record.year.front(), 2000);
  EXPECT_EQ(record.yearly_flood.back(), 190.0);
  ASSERT_EQ(faults(read_record_csv, yearly(10, false), nameless), "");
  EXPECT_TRUE(nameless.year.empty());
  EXPECT_THAT(record_faults(yearly(9, true)), HasSubstr("a flood record needs at least 10 years, this one has 9"));
  EXPECT_THAT(record_faults(yearly(12, true) + "1995,77\n"),
              HasSubstr("f.csv:14:1: error: the year 1995 stands twice, here and in line 7"));
  EXPECT_THAT(record_faults(yearly(12, true) + "1980.5,77\n"), HasSubstr("f.csv:14:1: error: '1980.5' is not a whole number"));
  EXPECT_THAT(record_faults(yearly(12, true) + "1980,0\n"), HasSubstr("it must be greater than zero"));
}

TEST(GaugingCsv, ScatterIsToleratedAndCrossingIsNot) {
  site::Gauging gauging;
  const std::string scattered = "level (m),discharge (m3/s)\n12,60\n10,10\n11,30\n11.1,26\n11,40\n";
  ASSERT_EQ(faults(read_gauging_csv, scattered, gauging), "");
  EXPECT_THAT(gauging.level, ElementsAre(12.0, 10.0, 11.0, 11.1, 11.0)) << "in the order of the file";
  EXPECT_THAT(
      gauging_faults(scattered + "11,19\n"),
      HasSubstr(
          "f.csv:7:4: error: the gauging crosses itself: 19 m3/s at 11 m is less than half of the 40 m3/s at 11 m in line 6"));
  EXPECT_THAT(gauging_faults(scattered + "12.5,25\n"), HasSubstr("less than half of the 60 m3/s at 12 m in line 2"));
  EXPECT_THAT(gauging_faults("level (m),discharge (m3/s)\n1,1\n2,2\n3,3\n"), HasSubstr("at least four points"));
  EXPECT_THAT(gauging_faults("level (m),discharge (m3/s)\n1,1\n1,1\n1,1\n1,1\n"), HasSubstr("at the same level"));
}

TEST(SectionCsv, StationsFromLeftToRight) {
  site::CrossSection section;
  ASSERT_EQ(faults(read_section_csv, "station (m),level (m),n\n-5,10,0.06\n0,4,0.03\n0,3.5,0.03\n20,10,0.06\n", section), "");
  EXPECT_THAT(section.station, ElementsAre(-5.0, 0.0, 0.0, 20.0)) << "a wall may stand upright";
  EXPECT_THAT(section.point_n, ElementsAre(0.06, 0.03, 0.03, 0.06));
  EXPECT_THAT(section_faults("station,level\n0,10\n5,2\n4,3\n9,10\n"),
              HasSubstr("f.csv:4:1: error: overlapping stations: 4 m follows 5 m"));
  EXPECT_THAT(section_faults("station,level\n0,10\n5,2\n"), HasSubstr("at least three points"));
  EXPECT_THAT(section_faults("station,level,n\n0,10,0.03\n5,2,0.6\n9,9,0.03\n"),
              HasSubstr("f.csv:3:5: error: '0.6' is not Manning's n that can be"));
  EXPECT_THAT(section_faults("station,level\n0,10\n0,2\n0,3\n"), HasSubstr("the same station"));
  EXPECT_THAT(section_faults("station,level\n0,10\n1,10\n2,10\n"), HasSubstr("holds no water"));
}

TEST(CsvFormats, AreWhole) {
  for (const CsvFormat& format : csv_formats()) {
    EXPECT_FALSE(format.help.empty()) << format.name;
    EXPECT_FALSE(format.example.empty()) << format.name;
    for (const CsvColumn& column : format.columns) {
      EXPECT_FALSE(column.help.empty()) << format.name << column.name;
      EXPECT_FALSE(column.what.empty()) << format.name << column.name;
      EXPECT_TRUE(column.range.bounded_below() && column.range.bounded_above()) << format.name << column.name;
    }
    // The example is a row of headings that the reader takes.
    CsvTable table;
    ProblemList list("example.csv", {});
    EXPECT_TRUE(read_csv(format.example, format, UnitSystem::si, table, list)) << format.example;
  }
}

}  // namespace
}  // namespace quell::io
