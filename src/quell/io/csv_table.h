// A table of numbers from a CSV file: the one reader of every kind of CSV file that a site file names.
//
// First row: headings with units in round or square brackets, `discharge (m3/s), level (m)`, in any order, upper and lower case
// alike; a heading without unit stands in the site file's system. Cells are parted by commas or, where the first row holds one,
// by semicolons; then a decimal comma is tolerated and remarked. Cells may stand in double quotes. Empty lines and lines that
// start with '#' are skipped. Grouped thousands are refused: a comma or point in them may mean either.
#pragma once

#include <span>
#include <string_view>
#include <vector>

#include "quell/io/problem_list.h"
#include "quell/io/schema.h"

namespace quell::io {

/// A column that a file of some kind may have.
struct CsvColumn {
  std::string_view name = {};      ///< its heading, small letters
  std::string_view synonyms = {};  ///< other headings for it: "level|stage"
  std::string_view what = {};      ///< what a cell holds, for messages: "a discharge"
  Dimension dimension = {};
  bool required = false;
  bool needs_unit = false;  ///< its heading must name the unit: nobody can tell hours from seconds
  bool is_whole = false;    ///< whole numbers only
  Range range = {};         ///< SI; keeps absurd numbers from the engine
  std::string_view help = {};
};

/// A kind of CSV file.
struct CsvFormat {
  std::string_view name = {};     ///< "a rating", to begin a message
  std::string_view key = {};      ///< key of the site file that names it: "river.rating.file"
  std::string_view example = {};  ///< a row of headings
  std::string_view help = {};     ///< what must hold between its rows
  std::span<const CsvColumn> columns = {};
};

/// The rows as read, in SI. Its views point into the text that was read, which must outlive it.
struct CsvTable {
  std::vector<std::vector<double>> columns;  ///< by CsvFormat; empty where the file has none
  std::vector<int> position;                 ///< of each column in the file, from 0; -1 where the file has none
  std::vector<int> line;                     ///< of each row, from 1
  std::vector<std::string_view> text;        ///< of each row
  char separator = ',';
  int heading_line = 1;

  std::size_t rows() const { return line.size(); }
  bool has(std::size_t column) const { return position[column] >= 0; }
  /// Of a cell; computed from the text, so that good rows cost nothing.
  Place place(std::size_t row, std::size_t column) const;
  /// Where to tell that rows are missing: the last row, or the headings.
  Place end() const { return {line.empty() ? heading_line : line.back(), 1}; }
};

/// Reads all rows, each within its range. Problems carry the file's line; after twenty reading stops. False where there is any.
bool read_csv(std::string_view text, const CsvFormat& format, UnitSystem system, CsvTable& table, ProblemList& problems);

}  // namespace quell::io
