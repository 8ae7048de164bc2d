#include "quell/io/csv_table.h"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <cmath>
#include <optional>

#include "quell/io/csv_cells.h"
#include "quell/io/input_text.h"
#include "quell/io/nearest.h"

namespace quell::io {
namespace {

constexpr std::size_t most_problems = 20;  ///< one wrong column is one mistake, not a thousand
constexpr int ignored = -1;
constexpr std::string_view words_in_between = "remark|remarks|note|notes|date";  ///< columns for the reader's eyes

std::string folded(std::string_view word) {
  std::string result(word);
  for (char& c : result) c = c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
  return result;
}

bool stands_in(std::string_view word, std::string_view list) {
  const auto words = words_of(list);
  return std::find(words.begin(), words.end(), word) != words.end();
}

/// "discharge, low, expected and high".
std::string listed(const CsvFormat& format, bool required_only) {
  std::vector<std::string> names;
  for (const CsvColumn& column : format.columns)
    if (column.required || !required_only) {
      const std::string others = required_only && !column.synonyms.empty()
                                     ? fmt::format(" (or {})", fmt::join(words_of(column.synonyms), ", "))
                                     : std::string();
      names.push_back(fmt::format("{}{}", column.name, others));
    }
  std::string text;
  for (std::size_t i = 0; i < names.size(); ++i)
    text += fmt::format("{}{}", i == 0 ? "" : i + 1 == names.size() ? " and " : ", ", names[i]);
  return text;
}

class CsvReader {
 public:
  CsvReader(const CsvFormat& format, UnitSystem system, CsvTable& table, ProblemList& problems)
      : format_(format), system_(system), table_(table), problems_(problems), values_(format.columns.size()) {}

  bool read(std::string_view text) {
    const std::size_t before = problems_.problem_count();
    if (drop_byte_order_mark(text)) problems_.remark({1, 1}, "the file starts with a byte order mark, which is skipped");
    table_.columns.assign(format_.columns.size(), {});
    table_.position.assign(format_.columns.size(), -1);
    bool has_headings = false;
    int number = 0;
    while (!text.empty()) {
      const std::size_t end = text.find('\n');
      std::string_view line = text.substr(0, end);
      text.remove_prefix(end == std::string_view::npos ? text.size() : end + 1);
      if (!line.empty() && line.back() == '\r') line.remove_suffix(1);
      ++number;
      const std::size_t first = line.find_first_not_of(" \t");
      if (first == std::string_view::npos || line[first] == '#') continue;
      if (!has_headings) {
        if (!read_headings(line, number)) return false;
        has_headings = true;
        make_room(text);
      } else if (!take_plain_row(line, number)) {
        read_row(line, number);
        if (problems_.problem_count() >= before + most_problems)
          return fail({number, 0}, "reading stops here: too many problems");
      }
    }
    if (!has_headings) return fail({1, 1}, fmt::format("the file holds no row of headings like \"{}\"", format_.example));
    return problems_.problem_count() == before;
  }

 private:
  const CsvFormat& format_;
  UnitSystem system_;
  CsvTable& table_;
  ProblemList& problems_;
  std::vector<int> order_;       ///< column of the format for each cell of a row, or `ignored`
  std::vector<double> factors_;  ///< to SI, for each cell of a row
  std::vector<double> values_;   ///< of the row that is read, by the format
  std::vector<CsvCell> cells_;
  bool has_points_ = false;  ///< decimal points were met in a file with semicolons
  bool has_commas_ = false;  ///< decimal commas were met

  bool fail(Place place, std::string message) {
    problems_.problem(place, std::move(message));
    return false;
  }

  void make_room(std::string_view rest) {
    const auto lines = static_cast<std::size_t>(std::count(rest.begin(), rest.end(), '\n')) + 1;
    for (std::size_t i = 0; i < table_.columns.size(); ++i)
      if (table_.has(i)) table_.columns[i].reserve(lines);
    table_.line.reserve(lines);
    table_.text.reserve(lines);
  }

  bool read_headings(std::string_view line, int number) {
    if (line.find(';') != std::string_view::npos) table_.separator = ';';
    table_.heading_line = number;
    cut_cells(line, table_.separator, cells_);
    if (plain_number(cells_.front().text) || plain_number(cells_.front().text, ','))
      return fail({number, 1}, fmt::format("the first row must be the headings, like \"{}\", not numbers", format_.example));
    bool good = true;
    for (const CsvCell& cell : cells_) good = read_heading(cell, number) && good;
    if (!good) return false;
    for (std::size_t i = 0; i < format_.columns.size(); ++i)
      if (format_.columns[i].required && !table_.has(i))
        return fail({number, 1}, fmt::format("{} needs the columns {}, headed like \"{}\"; '{}' is missing", format_.name,
                                             listed(format_, true), format_.example, format_.columns[i].name));
    return true;
  }

  bool read_heading(const CsvCell& cell, int number) {
    const Place place{number, cell.column};
    const std::size_t open = cell.text.find_first_of("([");
    const std::string name = folded(without_blanks(cell.text.substr(0, open)));
    const auto found = std::find_if(format_.columns.begin(), format_.columns.end(), [&](const CsvColumn& column) {
      return column.name == name || stands_in(name, column.synonyms);
    });
    order_.push_back(ignored);
    factors_.push_back(1.0);
    if (found == format_.columns.end()) return read_other_heading(name, place);
    const auto index = static_cast<std::size_t>(found - format_.columns.begin());
    if (table_.has(index)) return fail(place, fmt::format("the column '{}' stands twice", cell.text));
    order_.back() = static_cast<int>(index);
    table_.position[index] = static_cast<int>(order_.size()) - 1;
    return read_unit(*found, open == std::string_view::npos ? "" : cell.text.substr(open), place);
  }

  bool read_other_heading(const std::string& name, Place place) {
    if (stands_in(name, words_in_between)) {
      problems_.remark(place, fmt::format("the column '{}' is not read", name));
      return true;
    }
    std::vector<std::string_view> names;
    for (const CsvColumn& column : format_.columns) {
      names.push_back(column.name);
      for (const std::string_view synonym : words_of(column.synonyms)) names.push_back(synonym);
    }
    const std::string_view meant = nearest(name, names);
    return fail(place, fmt::format("unknown column '{}'; {} has {}{}", name.substr(0, 60), format_.name, listed(format_, false),
                                   meant.empty() ? std::string("; head a column that is not to be read 'remark'")
                                                 : fmt::format("; did you mean '{}'?", meant)));
  }

  /// `bracket` is the heading from its bracket on; empty where it has none.
  bool read_unit(const CsvColumn& column, std::string_view bracket, Place place) {
    if (bracket.empty()) {
      if (column.needs_unit)
        return fail(place, fmt::format("the heading '{}' needs its unit in brackets, one of {}", column.name,
                                       example_units(column.dimension)));
      factors_.back() = from_unit(1.0, column.dimension, system_);
      return true;
    }
    std::string_view unit = bracket.substr(1);
    if (unit.empty() || (unit.back() != ')' && unit.back() != ']'))
      return fail(place, "the bracket with the unit is not closed");
    unit.remove_suffix(1);
    const auto one = parse_quantity(fmt::format("1 {}", unit));
    if (column.dimension == dimension::none && (!without_blanks(unit).empty() && unit != "-"))
      return fail(place, fmt::format("'{}' has no unit; delete '{}'", column.name, unit));
    if (column.dimension == dimension::none) return true;
    if (!one || one->dimension != column.dimension)
      return fail(place,
                  fmt::format("'{}' is not a unit of {}; write one of {}", unit, column.what, example_units(column.dimension)));
    factors_.back() = one->value;
    return true;
  }

  bool may_be(const CsvColumn& column, double value) const {
    return column.range.contains(value) && (!column.is_whole || value == std::floor(value));
  }

  /// Takes a row of plain numbers, which nearly all rows are, at the cost of reading the numbers. False where anything is odd:
  /// `read_row` then finds out what.
  bool take_plain_row(std::string_view line, int number) {
    const char* at = line.data();
    const char* const end = at + line.size();
    for (std::size_t i = 0; i < order_.size(); ++i) {
      while (at != end && (*at == ' ' || *at == '\t')) ++at;
      double value = 0.0;
      if (at == end || order_[i] == ignored || *at > '9') return false;
      const char* stop = read_number(at, end, value);
      if (stop == nullptr) return false;
      at = stop;
      while (at != end && (*at == ' ' || *at == '\t')) ++at;
      const bool is_last = i + 1 == order_.size();
      if (is_last ? at != end : (at == end || *at != table_.separator)) return false;
      if (!is_last) ++at;
      const auto column = static_cast<std::size_t>(order_[i]);
      values_[column] = value * factors_[i];
      if (!may_be(format_.columns[column], values_[column])) return false;
    }
    store(line, number);
    return true;
  }

  /// Reads a number from `at` on and returns its end; nothing where it is none, or where the decimal mark is one that the file
  /// did not show before.
  const char* read_number(const char* at, const char* end, double& value) {
    const auto [stop, error] = std::from_chars(at, end, value);
    if (error != std::errc() || !std::isfinite(value)) return nullptr;
    if (table_.separator != ';') return stop;
    if (std::find(at, stop, '.') != stop) {
      has_points_ = true;
      return has_commas_ ? nullptr : stop;
    }
    if (stop == end || *stop != ',') return stop;
    if (!has_commas_) return nullptr;
    const char* const last = std::find(stop, end, ';');
    const auto number = plain_number(without_blanks({at, static_cast<std::size_t>(last - at)}), ',');
    if (!number) return nullptr;
    value = *number;
    return last;
  }

  void store(std::string_view line, int number) {
    for (std::size_t i = 0; i < values_.size(); ++i)
      if (table_.has(i)) table_.columns[i].push_back(values_[i]);
    table_.line.push_back(number);
    table_.text.push_back(line);
  }

  void read_row(std::string_view line, int number) {
    cut_cells(line, table_.separator, cells_);
    if (cells_.size() != order_.size()) {
      const bool comma = table_.separator == ',' && cells_.size() > order_.size();
      fail({number, 1},
           fmt::format("this row has {} cells, but there are {} headings{}", cells_.size(), order_.size(),
                       comma ? "; with decimal commas, part the cells by semicolons; do not group thousands" : ""));
      return;
    }
    for (std::size_t i = 0; i < cells_.size(); ++i) {
      if (order_[i] == ignored) continue;
      const auto index = static_cast<std::size_t>(order_[i]);
      const std::optional<double> value = read_cell(cells_[i], number);
      if (!value) return;
      values_[index] = *value * factors_[i];
      if (may_be(format_.columns[index], values_[index])) continue;
      fail({number, cells_[i].column}, out_of_range(format_.columns[index], cells_[i], values_[index]));
      return;
    }
    store(line, number);
  }

  static std::string out_of_range(const CsvColumn& column, const CsvCell& cell, double value) {
    if (column.range.contains(value)) return fmt::format("'{}' is not a whole number", cell.text);
    if (value <= 0.0 && column.range.lowest == above_zero.lowest)
      return fmt::format("'{}' is not {} that can be: it must be greater than zero", cell.text, column.what);
    if (value < 0.0 && column.range.lowest == 0.0)
      return fmt::format("'{}' is not {} that can be: it must not be negative", cell.text, column.what);
    return fmt::format("'{}' is not {} that can be", cell.text, column.what);
  }

  std::optional<double> read_cell(const CsvCell& cell, int number) {
    const Place place{number, cell.column};
    const bool semicolons = table_.separator == ';';
    if (const auto value = plain_number(cell.text)) {
      if (semicolons && cell.text.find('.') != std::string_view::npos) {
        if (has_commas_) return refuse_mixture(place);
        has_points_ = true;
      }
      return value;
    }
    if (const auto value = semicolons ? plain_number(cell.text, ',') : std::nullopt) {
      if (has_points_) return refuse_mixture(place);
      if (!has_commas_) problems_.remark(place, "commas inside the cells of this file are read as decimal commas");
      has_commas_ = true;
      return value;
    }
    fail(place, not_a_number(cell.text));
    return std::nullopt;
  }

  std::optional<double> refuse_mixture(Place place) {
    fail(place,
         "this file holds decimal commas and decimal points; write one of them throughout: 1,250 is 1.25 where commas are "
         "decimal, "
         "and 1250 where they group thousands");
    return std::nullopt;
  }

  static std::string not_a_number(std::string_view text) {
    if (text.empty()) return "this cell is empty";
    const std::string shown(text.substr(0, 40));
    const std::string digits = without_groups(text);
    if (!digits.empty()) {
      const bool may_be_decimal = digits.find('.') == std::string::npos && std::count(text.begin(), text.end(), ',') == 1 &&
                                  text.find_first_not_of("0123456789,+-") == std::string_view::npos;
      const std::string other = may_be_decimal ? fmt::format(", or {} if the comma is a decimal one",
                                                             std::string(text).replace(text.find(','), 1, "."))
                                               : std::string();
      return fmt::format("'{}' is not a plain number: no grouped thousands, write {}{}", shown, digits, other);
    }
    return fmt::format(
        "'{}' is not a plain number; write digits with a decimal point, no grouped thousands, and the unit in the heading",
        shown);
  }
};

}  // namespace

Place CsvTable::place(std::size_t row, std::size_t column) const {
  std::vector<CsvCell> cells;
  cut_cells(text[row], separator, cells);
  const auto cell = static_cast<std::size_t>(std::max(0, position[column]));
  return {line[row], cell < cells.size() ? cells[cell].column : 1};
}

bool read_csv(std::string_view text, const CsvFormat& format, UnitSystem system, CsvTable& table, ProblemList& problems) {
  table = {};
  return CsvReader(format, system, table, problems).read(text);
}

}  // namespace quell::io
