// The validation book, run from data/checks on disk: one test per file, each failing row named. And the proof that the runner
// can fail: books with a wrong number, a wrong unit, a misspelt key.
#include "quell/app/validation.h"

#include <gmock/gmock.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <set>
#include <sstream>

#include "quell/app/check_texts.h"
#include "quell/app/method_index.h"

namespace quell::app {
namespace {

namespace fs = std::filesystem;
using ::testing::ElementsAre;
using ::testing::HasSubstr;

std::string read(const fs::path& path) {
  std::ifstream in(path, std::ios::binary);
  std::ostringstream text;
  text << in.rdbuf();
  return text.str();
}

std::vector<std::string> book_files() {
  std::vector<std::string> names;
  for (const auto& entry : fs::directory_iterator(fs::path(QUELL_ROOT) / "data" / "checks"))
    if (entry.path().extension() == ".toml") names.push_back(entry.path().stem().string());
  std::sort(names.begin(), names.end());
  return names;
}

CheckedFile run_from_disk(const std::string& name) {
  return run_checks(name + ".toml", read(fs::path(QUELL_ROOT) / "data" / "checks" / (name + ".toml")));
}

class Book : public ::testing::TestWithParam<std::string> {};

TEST_P(Book, Agrees) {
  const CheckedFile file = run_from_disk(GetParam());
  for (const auto& fault : file.faults) ADD_FAILURE() << fault;
  for (const auto& row : file.rows)
    EXPECT_TRUE(row.passed) << row.method << " " << row.symbol << " at " << row.place << "\n  expected " << row.expected_text
                            << ", got " << row.got_text << ", tolerance " << row.tolerance_text << "\n  " << row.note;
  EXPECT_FALSE(file.rows.empty());
}

INSTANTIATE_TEST_SUITE_P(DataChecks, Book, ::testing::ValuesIn(book_files()), [](const auto& one) {
  std::string name = one.param;
  std::replace_if(name.begin(), name.end(), [](char c) { return std::isalnum(static_cast<unsigned char>(c)) == 0; }, '_');
  return name;
});

TEST(BookAsAWhole, IsCompiledInAsItIsOnDisk) {
  const auto names = book_files();
  ASSERT_EQ(check_texts().size(), names.size());
  for (const CheckText& text : check_texts())
    EXPECT_EQ(text.text, read(fs::path(QUELL_ROOT) / "data" / "checks" / text.name)) << text.name;
}

TEST(BookAsAWhole, HasAtLeastOneNumberForEveryMethod) {
  std::set<std::string> checked;
  for (const auto& name : book_files())
    for (const auto& row : run_from_disk(name).rows)
      if (!row.expected_text.empty()) checked.insert(row.method);
  for (const Method* method : all_methods())
    EXPECT_EQ(checked.count(std::string(method->id.view())), 1U) << method->id.view() << " has no row in data/checks";
}

// --- the runner can fail

constexpr std::string_view head = "source = \"Nobody: an invented book\"\ntitle = \"invented\"\nknown = \"computed\"\n";

CheckedFile run_row(std::string_view row) {
  return run_checks("invented.toml",
                    std::string(head) + "[[check]]\nplace = \"p. 1\"\nwhy = \"invented\"\n" + std::string(row));
}

/// Sequent depth at F1 = 6: eight times the depth before the jump.
std::string jump_row(std::string_view expect, std::string_view tolerance, std::string_view more = "") {
  return "method = \"jump.sequent_depth.rectangular\"\ninputs = { y1 = \"1 m\", V1 = \"18.79255171603899 m/s\" }\nexpect = { "
         "y2 = " +
         std::string(expect) + " }\ntolerance = " + std::string(tolerance) + "\n" + std::string(more);
}

TEST(Runner, AcceptsARightNumberInAnyUnit) {
  EXPECT_TRUE(run_row(jump_row("\"8 m\"", "1e-9")).passed());
  EXPECT_TRUE(run_row(jump_row("8", "1e-9")).passed());
  EXPECT_TRUE(run_row(jump_row("\"26.2467 ft\"", "\"0.0001 ft\"")).passed());
  EXPECT_TRUE(run_row(jump_row("\"8.07 m\"", "\"1 %\"")).passed());
}

TEST(Runner, FailsOnAWrongNumber) {
  for (const auto& row :
       {jump_row("\"8.01 m\"", "\"0.005 m\""), jump_row("\"7.99 m\"", "0.005"), jump_row("\"8.1 m\"", "\"1 %\""),
        jump_row("\"-8 m\"", "\"0.005 m\""), jump_row("\"8 ft\"", "\"0.005 ft\"")}) {
    const CheckedFile file = run_row(row);
    EXPECT_EQ(file.failures(), 1U) << row;
    ASSERT_EQ(file.rows.size(), 1U) << row;
    EXPECT_FALSE(file.rows[0].passed);
    EXPECT_TRUE(file.faults.empty());
  }
}

TEST(Runner, ShowsTheNumberInTheUnitOfTheBook) {
  const CheckedFile file = run_row(jump_row("\"20 ft\"", "\"0.1 ft\""));
  ASSERT_EQ(file.rows.size(), 1U);
  EXPECT_EQ(file.rows[0].got_text, "26.2467 ft");
  EXPECT_NEAR(file.rows[0].expected, 6.096, 1e-12);
}

TEST(Runner, FailsWhereValidityIsNotWhatTheBookSays) {
  EXPECT_EQ(run_row(jump_row("\"8 m\"", "1e-9", "expect_valid = false\n")).failures(), 1U);
  const std::string filling =
      "method = \"jump.sequent_depth.circular\"\ninputs = { D = 1, y1 = 0.4, Q = 2 }\nexpect = { y2 = 1.671076 }\n"
      "tolerance = 1e-6\n";
  EXPECT_EQ(run_row(filling).failures(), 1U) << "outside the method, but the row does not say so";
  EXPECT_TRUE(run_row(filling + "expect_valid = false\n").passed());
}

TEST(Runner, FailsWhereAnAnswerIsNotWhatTheBookSays) {
  const std::string possible = "method = \"toe.depth.energy\"\ninputs = { q = 3, E1 = 2.5 }\n";
  const std::string impossible = "method = \"toe.depth.energy\"\ninputs = { q = 3, E1 = 1 }\n";
  EXPECT_FALSE(run_row(possible + "expect_no_answer = true\n").passed());
  EXPECT_TRUE(run_row(impossible + "expect_no_answer = true\n").passed());
  EXPECT_FALSE(run_row(impossible + "expect = { y1 = 1 }\ntolerance = 10\n").passed());
}

TEST(Runner, CallsAMalformedRowAFault) {
  const auto only_fault = [](const std::string& row) {
    const CheckedFile file = run_row(row);
    EXPECT_FALSE(file.passed()) << row;
    return file.faults.size() == 1 ? file.faults[0] : std::string("not exactly one fault");
  };
  EXPECT_THAT(only_fault("method = \"jump.of_joy\"\ninputs = {}\n"), HasSubstr("no such method"));
  EXPECT_THAT(only_fault(jump_row("\"8 s\"", "0.1")), HasSubstr("time"));
  EXPECT_THAT(only_fault(jump_row("\"8 m\"", "\"0.1 s\"")), HasSubstr("tolerance"));
  EXPECT_THAT(only_fault(jump_row("\"8 m\"", "0.1", "expext_valid = false\n")), HasSubstr("expext_valid"));
  EXPECT_THAT(only_fault("method = \"toe.depth.energy\"\ninputs = { q = 3 }\nexpect = { y1 = 1 }\ntolerance = 1\n"),
              HasSubstr("'E1' is missing"));
  EXPECT_THAT(
      only_fault("method = \"toe.depth.energy\"\ninputs = { q = 3, E1 = 9, x = 1 }\nexpect = { y1 = 1 }\ntolerance = 1\n"),
      HasSubstr("'x' is no input"));
  EXPECT_THAT(only_fault("method = \"toe.depth.energy\"\ninputs = { q = 3, E1 = 9 }\nexpect = { y9 = 1 }\ntolerance = 1\n"),
              HasSubstr("'y9' is no output"));
  EXPECT_THAT(only_fault("method = \"toe.depth.energy\"\ninputs = { q = 3, E1 = 9 }\nexpect = { y1 = 1 }\n"),
              HasSubstr("tolerance"));
  EXPECT_THAT(only_fault("method = \"toe.depth.energy\"\ninputs = { q = 3, E1 = 9 }\n"), HasSubstr("expect"));
}

/// A rectangle 2 m wide: an area of 3 m2 at 1.5 m.
std::string section_row(std::string_view x, std::string_view z) {
  return "method = \"section.geometry.tabulated\"\ninputs = { y = 1.5, x = " + std::string(x) + ", z = " + std::string(z) +
         " }\nexpect = { A = 3 }\ntolerance = 1e-9\n";
}

TEST(Runner, TakesListsAsArrays) {
  EXPECT_TRUE(run_row(section_row("[0, 0, 2, 2]", "[2, 0, 0, 2]")).passed());
  EXPECT_TRUE(run_row(section_row("[\"0 m\", 0, \"200 cm\", 2.0]", "[\"2 m\", 0, 0, 2]")).passed());
  EXPECT_FALSE(run_row(section_row("[0, 0, 2.1, 2.1]", "[2, 0, 0, 2]")).passed());
  EXPECT_THAT(run_row(section_row("[0, 0, 2, 2]", "[2, 0, 2]")).faults, ElementsAre(HasSubstr("equally long")));
  EXPECT_THAT(run_row(section_row("[]", "[]")).faults, ElementsAre(HasSubstr("no number")));
  EXPECT_THAT(run_row(section_row("2", "[2, 0]")).faults, ElementsAre(HasSubstr("a list")));
  EXPECT_THAT(run_row(section_row("[0, \"2 s\"]", "[2, 0]")).faults, ElementsAre(HasSubstr("input x")));
  EXPECT_THAT(run_row(jump_row("8", "1e-9") + "\n[[check]]\nplace = \"p\"\nwhy = \"w\"\nmethod = \"toe.depth.energy\"\n"
                                              "inputs = { q = [3], E1 = 9 }\nexpect = { y1 = 1 }\ntolerance = 1\n")
                  .faults,
              ElementsAre(HasSubstr("no list")));
}

TEST(Runner, CallsAMalformedFileAFault) {
  EXPECT_FALSE(run_checks("x.toml", "source = ").passed());
  EXPECT_FALSE(run_checks("x.toml", std::string(head)).passed()) << "no row";
  EXPECT_FALSE(run_checks("x.toml", "").passed());
  const CheckedFile file = run_checks("x.toml", "source = \"no_such_key\"\ntitle = \"t\"\nknown = \"hearsay\"\n[[check]]\n");
  EXPECT_EQ(file.faults.size(), 3U);
}

}  // namespace
}  // namespace quell::app
