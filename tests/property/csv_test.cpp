// A table written in any dialect of CSV reads back as the same numbers.
#include <fmt/format.h>
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>

#include "quell/io/csv_files.h"
#include "quell/io/csv_table.h"
#include "quell/io/input_text.h"

namespace quell::io {
namespace {

/// How one program or another writes a CSV file.
struct Dialect {
  bool semicolons = false;
  bool decimal_comma = false;  ///< with semicolons only
  bool byte_order_mark = false;
  bool carriage_returns = false;
  bool last_line_ends = true;
  bool square_brackets = false;
  int order = 0;  ///< of the three columns, 0 to 5
};

Dialect any_dialect() {
  Dialect d;
  d.semicolons = *rc::gen::arbitrary<bool>();
  d.decimal_comma = d.semicolons && *rc::gen::arbitrary<bool>();
  d.byte_order_mark = *rc::gen::arbitrary<bool>();
  d.carriage_returns = *rc::gen::arbitrary<bool>();
  d.last_line_ends = *rc::gen::arbitrary<bool>();
  d.square_brackets = *rc::gen::arbitrary<bool>();
  d.order = *rc::gen::inRange(0, 6);
  return d;
}

constexpr std::array columns{
    CsvColumn{.name = "level", .what = "a level", .dimension = dimension::length, .required = true, .range = {-1e6, 1e6}},
    CsvColumn{.name = "area", .what = "an area", .dimension = dimension::area, .required = true, .range = {-1e6, 1e6}},
    CsvColumn{.name = "n", .what = "a number", .required = true, .range = {-1e6, 1e6}}};
constexpr CsvFormat format{.name = "a table", .example = "level (m), area (m2), n", .columns = columns};

/// Shortest text that reads back as this double, or the same with an exponent.
std::string number_text(double value, bool with_exponent) {
  return with_exponent ? fmt::format("{:.16e}", value) : fmt::format("{}", value);
}

/// One cell: the number, perhaps with blanks or in quotes.
std::string cell(double value, const Dialect& dialect) {
  std::string text = number_text(value, *rc::gen::arbitrary<bool>());
  if (dialect.decimal_comma) std::replace(text.begin(), text.end(), '.', ',');
  switch (*rc::gen::inRange(0, 4)) {
    case 0: return "  " + text + "\t";
    case 1: return "\"" + text + "\"";
    default: return text;
  }
}

std::string written(const std::vector<std::vector<double>>& rows, const Dialect& dialect) {
  const std::string end = dialect.carriage_returns ? "\r\n" : "\n";
  const std::string separator = dialect.semicolons ? ";" : ",";
  std::vector<std::size_t> order{0, 1, 2};
  for (int i = 0; i < dialect.order; ++i) std::next_permutation(order.begin(), order.end());
  const auto bracket = [&](const std::string& unit) { return dialect.square_brackets ? "[" + unit + "]" : "(" + unit + ")"; };
  const std::array<std::string, 3> headings{"level " + bracket("m"), "Area" + bracket("m2"), "n"};
  std::string text = dialect.byte_order_mark ? "\xEF\xBB\xBF" : "";
  for (std::size_t i = 0; i < 3; ++i) text += (i > 0 ? separator : "") + headings[order[i]];
  for (const std::vector<double>& row : rows) {
    text += end;
    if (*rc::gen::inRange(0, 8) == 0) text += "# a remark, with a comma" + end + end;
    for (std::size_t i = 0; i < 3; ++i) text += (i > 0 ? separator : "") + cell(row[order[i]], dialect);
  }
  return dialect.last_line_ends ? text + end : text;
}

RC_GTEST_PROP(CsvProperty, AnyDialectReadsBackEqual, ()) {
  const Dialect dialect = any_dialect();
  const auto value = rc::gen::map(rc::gen::inRange<int64_t>(-999999999, 999999999),
                                  [](int64_t digits) { return static_cast<double>(digits) / 1024.0; });
  const auto rows = *rc::gen::container<std::vector<std::vector<double>>>(rc::gen::container<std::vector<double>>(3, value));
  const std::string text = written(rows, dialect);
  ProblemList problems("any.csv", split_lines(text));
  CsvTable table;
  const bool good = read_csv(text, format, UnitSystem::si, table, problems);
  SiteFile told;
  problems.hand_over(told);
  if (!good) RC_FAIL(to_text(told.problems.front()) + "\n" + text);
  RC_ASSERT(table.rows() == rows.size());
  for (std::size_t row = 0; row < rows.size(); ++row)
    for (std::size_t column = 0; column < 3; ++column) RC_ASSERT(table.columns[column][row] == rows[row][column]);
  RC_ASSERT(told.remarks.size() <= 2u);
}

RC_GTEST_PROP(CsvProperty, PlacesPointAtTheNumber, ()) {
  const Dialect dialect = any_dialect();
  const std::vector<std::vector<double>> rows{{1.5, 2.5, 3.5}, {4.5, 5.5, 6.5}};
  const std::string text = written(rows, dialect);
  const auto lines = split_lines(text);
  ProblemList problems("any.csv", lines);
  CsvTable table;
  RC_ASSERT(read_csv(text, format, UnitSystem::si, table, problems));
  for (std::size_t row = 0; row < 2; ++row)
    for (std::size_t column = 0; column < 3; ++column) {
      const Place place = table.place(row, column);
      std::string_view at = lines[static_cast<std::size_t>(place.line - 1)].substr(static_cast<std::size_t>(place.column - 1));
      if (at.front() == '"') at.remove_prefix(1);
      RC_ASSERT(at.front() == fmt::format("{}", rows[row][column]).front());
    }
}

/// Any bytes come to an end, and a table that is good has as many numbers in each column.
RC_GTEST_PROP(CsvProperty, AnyTextIsJudged, ()) {
  const auto tokens =
      rc::gen::element<std::string>("level", "area (m2)", "n", ",", ";", "\n", "\"", "1", "2.5", "1,5", "-", " ", "(", "[m]",
                                    "#", "\r\n", "e", "\xEF\xBB\xBF", "remark", "1 000", "nan");
  std::string text = *rc::gen::arbitrary<bool>() ? "level,area (m2),n\n" : "";
  for (const std::string& token : *rc::gen::container<std::vector<std::string>>(tokens)) text += token;
  ProblemList problems("any.csv", split_lines(text));
  CsvTable table;
  const bool good = read_csv(text, format, UnitSystem::si, table, problems);
  RC_ASSERT(good == (problems.problem_count() == 0));
  for (const std::vector<double>& column : table.columns)
    if (good) RC_ASSERT(column.size() == table.rows());
}

}  // namespace
}  // namespace quell::io
