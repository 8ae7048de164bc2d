// Rows of a CSV file cut into cells, and cells read as numbers.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace quell::io {

struct CsvCell {
  std::string_view text;  ///< without blanks and quotes around it
  int column = 0;         ///< in characters, from 1
};

/// Cuts a row; `cells` is used again from row to row.
void cut_cells(std::string_view row, char separator, std::vector<CsvCell>& cells);

/// A plain number, digits with at most one decimal mark and an exponent; nothing where it is not one, or not finite.
std::optional<double> plain_number(std::string_view text, char decimal_mark = '.');

/// What to write instead of grouped thousands: "1250.0" for "1,250.0", "1 250.0" and "1.250,0". Empty where the text is
/// something else.
std::string without_groups(std::string_view text);

std::string_view without_blanks(std::string_view text);

}  // namespace quell::io
