// Rating files: each problem names the CSV file and its line.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "site_text.h"

namespace quell::test {
namespace {

using testing::HasSubstr;

/// The good site with its inline rating replaced by a file.
std::string site_with_csv() {
  std::string text(good_site);
  const std::size_t from = text.find("discharge = [");
  const std::size_t to = text.find("[discharges]");
  return text.replace(from, to - from, "file = \"rating.csv\"\n");
}

io::SiteFile read_with_csv(const std::string& csv) {
  static int number = 0;
  const Folder folder("csv" + std::to_string(++number));
  folder.write("rating.csv", csv);
  return io::read_site_file(folder.write("site.toml", site_with_csv()));
}

struct Case {
  const char* name;
  const char* csv;
  int line;
  const char* message;
};

std::ostream& operator<<(std::ostream& out, const Case& c) {
  return out << c.name;
}
std::string name_of_case(const testing::TestParamInfo<Case>& tested) {
  return tested.param.name;
}

class CsvFault : public testing::TestWithParam<Case> {};

TEST_P(CsvFault, IsToldOnceWithFileAndLine) {
  const Case& c = GetParam();
  const io::SiteFile file = read_with_csv(c.csv);
  ASSERT_EQ(file.problems.size(), 1u) << all_problems(file);
  EXPECT_THAT(file.problems[0].file, HasSubstr("rating.csv"));
  EXPECT_EQ(file.problems[0].line, c.line) << all_problems(file);
  EXPECT_THAT(file.problems[0].message, HasSubstr(c.message));
}

const Case cases[] = {
    {"empty", "", 1, "no row of headings"},
    {"no_headings", "20,100.5\n900,106\n", 1, "must be the headings"},
    {"no_rows", "discharge (m3/s),level (m)\n", 1, "at least two rows"},
    {"one_row", "discharge (m3/s),level (m)\n20,100.5\n", 2, "at least two rows"},
    {"unknown_column", "discharge (m3/s),levl (m)\n20,100.5\n900,106\n", 1, "did you mean 'level'?"},
    {"no_level", "discharge (m3/s),low (m)\n20,100.5\n900,106\n", 1, "'expected' is missing"},
    {"column_twice", "discharge,level,expected\n20,100,100\n900,106,106\n", 1, "stands twice"},
    {"wrong_unit", "discharge (m),level (m)\n20,100.5\n900,106\n", 1, "'m' is not a unit of a discharge"},
    {"open_bracket", "discharge (m3/s,level (m)\n20,100.5\n900,106\n", 1, "not closed"},
    {"letters", "discharge (m3/s),level (m)\n20,100.5\n# note\n400,high\n900,106\n", 4, "'high' is not a plain number"},
    {"empty_cell", "discharge (m3/s),level (m)\n20,\n30,101\n900,106\n", 2, "this cell is empty"},
    {"short_row", "discharge (m3/s),level (m)\n20,100.5\n400\n900,106\n", 3, "1 cells, but there are 2 headings"},
    {"grouped_thousands", "discharge (m3/s),level (m)\n20,100.5\n1,900,106\n1950,107\n", 3, "do not group thousands"},
    {"grouped_by_space", "discharge (m3/s);level (m)\n20;100.5\n1 900;106\n1950;107\n", 3, "no grouped thousands"},
    {"grouped_by_point", "discharge (m3/s);level (m)\n20;100,5\n1.900,5;106\n1950;107\n", 3, "no grouped thousands"},
    {"not_finite", "discharge (m3/s),level (m)\n20,100.5\n400,nan\n900,106\n", 3, "'nan' is not a plain number"},
    {"overflow", "discharge (m3/s),level (m)\n20,100.5\n400,1e999\n900,106\n", 3, "'1e999' is not a plain number"},
    {"absurd", "discharge (m3/s),level (m)\n20,100.5\n400,1e9\n900,106\n", 3, "is not a level that can be"},
    {"not_increasing", "discharge (m3/s),level (m)\n20,100.5\n\n900,106\n900,107\n", 5,
     "must increase: 900 m3/s follows 900 m3/s"},
    {"falling", "discharge (m3/s),level (m)\n20,100.5\n400,103\n900,102.9\n", 4, "must not fall"},
    {"crossed", "discharge (m3/s),low (m),expected (m)\n20,100.5,100.6\n900,106.2,106.1\n", 3, "lies below the low one"},
    {"not_utf8", "discharge (m3/s),level (m)\n20,100.5\n# \xE9\n900,106\n", 3, "not UTF-8"},
    {"control", "discharge (m3/s),level (m)\n20,100.5\x02\n900,106\n", 2, "control character 0x02"},
};
INSTANTIATE_TEST_SUITE_P(Csv, CsvFault, testing::ValuesIn(cases), name_of_case);

TEST(CsvFile, MissingIsShownInTheSiteFile) {
  const Folder folder("csv_missing");
  const std::string text = site_with_csv();
  const io::SiteFile file = io::read_site_file(folder.write("site.toml", text));
  ASSERT_EQ(file.problems.size(), 1u) << all_problems(file);
  EXPECT_THAT(file.problems[0].file, HasSubstr("site.toml"));
  EXPECT_EQ(file.problems[0].line, line_of(text, "rating.csv"));
  EXPECT_THAT(file.problems[0].message, HasSubstr("rating.csv: there is no such file"));
}

TEST(CsvFile, DirectoryAndHugeFile) {
  const Folder folder("csv_kinds");
  const std::filesystem::path site = folder.write("site.toml", site_with_csv());
  std::filesystem::create_directory(folder.path() / "rating.csv");
  EXPECT_THAT(all_problems(io::read_site_file(site)), HasSubstr("this is a directory"));
  std::filesystem::remove(folder.path() / "rating.csv");
  std::filesystem::resize_file(folder.write("rating.csv", "x"), 1u << 30u);
  EXPECT_THAT(all_problems(io::read_site_file(site)), HasSubstr("at most 16 MB are read"));
}

TEST(CsvFile, AWrongColumnDoesNotFlood) {
  std::string csv = "discharge (m3/s),level (m)\n";
  for (int i = 0; i < 3000; ++i) csv += std::to_string(i) + ",x\n";
  EXPECT_LE(read_with_csv(csv).problems.size(), 21u);
}

}  // namespace
}  // namespace quell::test
