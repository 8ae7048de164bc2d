// Dialects of CSV, read by the one reader: what is taken, what is remarked, what is refused and what to write instead.
#include "quell/io/csv_table.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "quell/io/csv_cells.h"
#include "quell/io/input_text.h"

namespace quell::io {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;

constexpr std::array columns{
    CsvColumn{.name = "level",
              .synonyms = "stage",
              .what = "a level",
              .dimension = dimension::length,
              .required = true,
              .range = {-500.0, 9000.0}},
    CsvColumn{.name = "area", .what = "an area", .dimension = dimension::area, .needs_unit = true, .range = {0.0, 1e12}},
    CsvColumn{.name = "year", .what = "a year", .is_whole = true, .range = {-5000.0, 5000.0}}};
constexpr CsvFormat format{.name = "a table", .key = "a.file", .example = "level (m), area (km2)", .columns = columns};

struct Read {
  bool good = false;
  CsvTable table;
  std::string problems;
  std::vector<Problem> remarks;
  std::string remark() const { return remarks.size() == 1 ? remarks[0].message : std::to_string(remarks.size()) + " remarks"; }
};

Read read(std::string_view csv, UnitSystem system = UnitSystem::si) {
  Read result;
  ProblemList list("t.csv", split_lines(csv));
  result.good = read_csv(csv, format, system, result.table, list);
  SiteFile file;
  list.hand_over(file);
  for (const Problem& problem : file.problems) result.problems += to_text(problem) + "\n";
  result.remarks = file.remarks;
  return result;
}

TEST(CsvTable, CommasSemicolonsMarkAndCarriageReturnsGiveTheSameTable) {
  const Read plain = read("level (m),area (km2)\n100.5,0.25\n101,1e1\n");
  for (const std::string_view csv : {std::string_view("level (m);area (km2)\n100.5;0.25\n101;1e1\n"),
                                     std::string_view("\xEF\xBB\xBFlevel (m),area (km2)\r\n100.5,0.25\r\n101,1e1\r\n"),
                                     std::string_view("level (m);area (km2)\n100,5;0,25\n101;1e1\n"),
                                     std::string_view("\"Level (m)\" , \"AREA [km2]\"\n\"100.5\",\" 0.25 \"\n  +101 ,1e1"),
                                     std::string_view("# made by hand\n\narea (ha),stage (cm)\n25,10050\n#\n1000,10100\n")}) {
    const Read other = read(csv);
    ASSERT_TRUE(other.good) << csv << other.problems;
    ASSERT_EQ(other.table.rows(), 2u);
    for (std::size_t column : {0u, 1u})
      for (std::size_t row : {0u, 1u})
        EXPECT_NEAR(other.table.columns[column][row], plain.table.columns[column][row], 1e-9) << csv;
  }
  EXPECT_THAT(plain.table.columns[0], ElementsAre(100.5, 101.0));
  EXPECT_THAT(plain.table.columns[1], ElementsAre(250000.0, 10e6));
  EXPECT_FALSE(plain.table.has(2));
  EXPECT_TRUE(plain.table.columns[2].empty());
  EXPECT_TRUE(plain.remarks.empty());
}

TEST(CsvTable, ToleratedThingsAreRemarked) {
  EXPECT_THAT(read("level (m);area (km2)\n1,5;1\n2,5;2\n").remark(), HasSubstr("read as decimal commas"));
  EXPECT_THAT(read("\xEF\xBB\xBFlevel\n1\n").remark(), HasSubstr("byte order mark"));
  const Read note = read("level,Note,area (m2)\n1,\"flood, high\",5\n2,,6\n");
  ASSERT_TRUE(note.good) << note.problems;
  EXPECT_THAT(note.remark(), HasSubstr("the column 'note' is not read"));
  EXPECT_THAT(note.table.columns[1], ElementsAre(5.0, 6.0));
  EXPECT_EQ(read("level,date\n1,1990-05-01\n").remark(), "the column 'date' is not read");
}

TEST(CsvTable, GroupedThousandsAreRefusedWithWhatToWrite) {
  const auto told = [](const std::string& cell) { return read("level (m);area (m2)\n1;" + cell + "\n").problems; };
  EXPECT_THAT(told("1,250.0"), HasSubstr("'1,250.0' is not a plain number: no grouped thousands, write 1250.0"));
  EXPECT_THAT(told("1.250,0"), HasSubstr("write 1250.0"));
  EXPECT_THAT(told("1 250"), HasSubstr("write 1250"));
  EXPECT_THAT(told("1'250"), HasSubstr("write 1250"));
  EXPECT_THAT(told("12 345 678,5"), HasSubstr("write 12345678.5"));
  EXPECT_THAT(told("1,234,567"), HasSubstr("write 1234567"));
  EXPECT_THAT(told("1\xC2\xA0"
                   "250"),
              HasSubstr("write 1250"));
  EXPECT_THAT(read("level (m),area (m2)\n1,\"1,250\"\n").problems,
              HasSubstr("write 1250, or 1.250 if the comma is a decimal one"));
  EXPECT_THAT(read("level (m),area (m2)\n1,1,250\n").problems, HasSubstr("this row has 3 cells, but there are 2 headings"));
  EXPECT_THAT(told("1 25"), HasSubstr("write digits with a decimal point"));
}

TEST(CsvTable, DecimalCommasAndPointsDoNotMix) {
  const Read first_comma = read("level;area (m2)\n1,5;1\n2;1.250\n");
  EXPECT_THAT(first_comma.problems, HasSubstr("t.csv:3:3: error: this file holds decimal commas and decimal points"));
  EXPECT_THAT(read("level;area (m2)\n1.5;1\n2;1,250\n").problems, HasSubstr("decimal commas and decimal points"));
}

TEST(CsvTable, EveryFaultHasItsPlace) {
  struct {
    const char* csv;
    const char* told;
  } const cases[] = {
      {"level (m),area\n1,2\n", "t.csv:1:11: error: the heading 'area' needs its unit in brackets, one of m2"},
      {"level (s)\n1\n", "t.csv:1:1: error: 's' is not a unit of a level"},
      {"level (m,area (m2)\n", "t.csv:1:1: error: the bracket with the unit is not closed"},
      {"area (m2)\n1\n", "t.csv:1:1: error: a table needs the columns level (or stage), headed like"},
      {"level,stage\n1,2\n", "t.csv:1:7: error: the column 'stage' stands twice"},
      {"level,ara (m2)\n1,2\n", "did you mean 'area'?"},
      {"level,colour\n1,2\n", "a table has level, area and year; head a column that is not to be read 'remark'"},
      {"level,year (d)\n1,2\n", "t.csv:1:7: error: 'year' has no unit; delete 'd'"},
      {"level,year\n1,1990.5\n", "t.csv:2:3: error: '1990.5' is not a whole number"},
      {"level,area (m2)\n1,-2\n", "t.csv:2:3: error: '-2' is not an area that can be: it must not be negative"},
      {"level\n1\n\n9999\n", "t.csv:4:1: error: '9999' is not a level that can be"},
      {"level,area (m2)\n1, \n", "error: this cell is empty"},
      {"level,area (m2)\n1\n", "t.csv:2:1: error: this row has 1 cells, but there are 2 headings"},
      {"level\n1;2\n", "'1;2' is not a plain number"},
      {"level\ninf\n", "'inf' is not a plain number"},
      {"level\n-nan\n", "'-nan' is not a plain number"},
      {"level\n0x10\n", "'0x10' is not a plain number"},
      {"level\n1e999\n", "'1e999' is not a plain number"},
      {"1.5,2\n", "t.csv:1:1: error: the first row must be the headings, like \"level (m), area (km2)\", not numbers"},
      {"# nothing\n\n", "t.csv:1:1: error: the file holds no row of headings"},
  };
  for (const auto& c : cases) {
    const Read r = read(c.csv);
    EXPECT_FALSE(r.good) << c.csv;
    EXPECT_THAT(r.problems, HasSubstr(c.told)) << c.csv;
  }
}

TEST(CsvTable, ReadingStopsAfterTwentyProblems) {
  std::string csv = "level\n";
  for (int i = 0; i < 500; ++i) csv += "x\n";
  const Read r = read(csv);
  EXPECT_EQ(std::count(r.problems.begin(), r.problems.end(), '^'), 20) << r.problems;
  EXPECT_THAT(r.problems, HasSubstr("t.csv:21: error: reading stops here: too many problems"));
}

TEST(CsvTable, PlacesOfGoodCellsAreFoundAgain) {
  const std::string csv = "area (m2), level\n\n 7 ,  \xC3\xA4\n";
  const Read bad = read(csv);
  EXPECT_THAT(bad.problems, HasSubstr("t.csv:3:7:"));
  const std::string good = "area (m2), level\n\n 7 ,  12\n";
  ProblemList list("t.csv", split_lines(good));
  CsvTable table;
  ASSERT_TRUE(read_csv(good, format, UnitSystem::si, table, list));
  EXPECT_EQ(table.place(0, 0).line, 3);
  EXPECT_EQ(table.place(0, 0).column, 7);
  EXPECT_EQ(table.place(0, 1).column, 2);
}

TEST(CsvTable, ABareHeadingStandsInTheSystemOfTheSite) {
  EXPECT_NEAR(read("level\n10\n", UnitSystem::us).table.columns[0][0], 3.048, 1e-12);
  EXPECT_EQ(read("level\n10\n", UnitSystem::si).table.columns[0][0], 10.0);
}

TEST(CsvCells, SeparatorsInQuotesDoNotPart) {
  std::vector<CsvCell> cells;
  cut_cells("a, \"b, \"\"c\"\", d\" ,\"e", ',', cells);
  ASSERT_EQ(cells.size(), 3u);
  EXPECT_EQ(cells[1].text, "b, \"\"c\"\", d");
  EXPECT_EQ(cells[1].column, 4);
  EXPECT_EQ(cells[2].text, "\"e");
}

TEST(CsvCells, WithoutGroups) {
  EXPECT_EQ(without_groups("-1,250.75"), "-1250.75");
  EXPECT_EQ(without_groups("1250"), "");
  EXPECT_EQ(without_groups("1,25"), "");
  EXPECT_EQ(without_groups("1234,567"), "");
  EXPECT_EQ(without_groups("1,234.567,8"), "");
  EXPECT_EQ(without_groups("high"), "");
  EXPECT_EQ(without_groups(""), "");
}

}  // namespace
}  // namespace quell::io
