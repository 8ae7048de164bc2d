#include "quell/io/csv_cells.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>

namespace quell::io {
namespace {

constexpr std::size_t longest_number = 60;  ///< characters; longer ones are no numbers of a table

int characters(std::string_view text) {
  return static_cast<int>(
      std::count_if(text.begin(), text.end(), [](char c) { return (static_cast<unsigned char>(c) & 0xC0u) != 0x80u; }));
}

bool is_digit(char c) {
  return c >= '0' && c <= '9';
}

/// End of the cell that starts at `start`: its separator or the end of the row. Separators inside quotes do not count.
std::size_t end_of_cell(std::string_view row, std::size_t start, char separator) {
  std::size_t at = std::min(row.find_first_not_of(" \t", start), row.size());
  if (at < row.size() && row[at] == '"') {
    // A doubled quote is a quote inside the cell.
    for (++at; at < row.size(); ++at)
      if (row[at] == '"') {
        if (at + 1 >= row.size() || row[at + 1] != '"') break;
        ++at;
      }
  }
  return std::min(row.find(separator, std::min(at, row.size())), row.size());
}

/// Bytes of a mark between groups of three digits at `at`: point, comma, blank, apostrophe, underscore, or one of the narrow
/// and unbreakable blanks that spreadsheets write. 0 where there is none.
std::size_t group_mark(std::string_view text, std::size_t at) {
  for (const std::string_view mark :
       {std::string_view(","), std::string_view("."), std::string_view(" "), std::string_view("'"), std::string_view("_"),
        std::string_view("\xC2\xA0"), std::string_view("\xE2\x80\xAF"), std::string_view("\xE2\x80\x89"),
        std::string_view("\xE2\x80\x99")})
    if (text.substr(at, mark.size()) == mark) return mark.size();
  return 0;
}

bool three_digits(std::string_view text, std::size_t at) {
  return at + 3 <= text.size() && is_digit(text[at]) && is_digit(text[at + 1]) && is_digit(text[at + 2]) &&
         (at + 3 == text.size() || !is_digit(text[at + 3]));
}

}  // namespace

std::string_view without_blanks(std::string_view text) {
  while (!text.empty() && (text.front() == ' ' || text.front() == '\t')) text.remove_prefix(1);
  while (!text.empty() && (text.back() == ' ' || text.back() == '\t')) text.remove_suffix(1);
  return text;
}

void cut_cells(std::string_view row, char separator, std::vector<CsvCell>& cells) {
  cells.clear();
  std::size_t start = 0;
  while (true) {
    const std::size_t end = end_of_cell(row, start, separator);
    const std::string_view raw = row.substr(start, end - start);
    const std::size_t indent = std::min(raw.find_first_not_of(" \t"), raw.size());
    std::string_view text = without_blanks(raw);
    if (text.size() >= 2 && text.front() == '"' && text.back() == '"') text = without_blanks(text.substr(1, text.size() - 2));
    cells.push_back({text, characters(row.substr(0, start + indent)) + 1});
    if (end == row.size()) return;
    start = end + 1;
  }
}

std::optional<double> plain_number(std::string_view text, char decimal_mark) {
  if (!text.empty() && text.front() == '+') {
    text.remove_prefix(1);
    if (!text.empty() && text.front() == '-') return std::nullopt;
  }
  if (text.empty() || text.size() > longest_number) return std::nullopt;
  std::array<char, longest_number> digits{};
  for (std::size_t i = 0; i < text.size(); ++i) {
    const char c = text[i];
    if (!is_digit(c) && c != decimal_mark && c != '+' && c != '-' && c != 'e' && c != 'E') return std::nullopt;
    digits[i] = c == decimal_mark ? '.' : c;
  }
  double value = 0.0;
  const char* end = digits.data() + text.size();
  const auto [stop, error] = std::from_chars(digits.data(), end, value);
  if (error != std::errc() || stop != end || !std::isfinite(value)) return std::nullopt;
  return value;
}

std::string without_groups(std::string_view text) {
  std::size_t at = !text.empty() && (text.front() == '-' || text.front() == '+') ? 1 : 0;
  std::string digits(text.substr(0, at));
  const std::size_t first = at;
  while (at < text.size() && is_digit(text[at])) digits += text[at++];
  if (at == first || at - first > 3) return "";
  const std::string_view mark = text.substr(at, group_mark(text, at));
  if (mark.empty()) return "";
  std::size_t groups = 0;
  while (at < text.size() && text.substr(at, mark.size()) == mark && three_digits(text, at + mark.size())) {
    digits += text.substr(at + mark.size(), 3);
    at += mark.size() + 3;
    ++groups;
  }
  if (groups == 0) return "";
  if (at == text.size()) return digits;
  if ((text[at] != '.' && text[at] != ',') || text.substr(at, 1) == mark) return "";
  const std::string_view decimals = text.substr(at + 1);
  if (decimals.empty() || !std::all_of(decimals.begin(), decimals.end(), is_digit)) return "";
  return fmt::format("{}.{}", digits, decimals);
}

}  // namespace quell::io
