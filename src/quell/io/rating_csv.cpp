#include "quell/io/rating_csv.h"

#include <fmt/format.h>

#include <cmath>
#include <cstdlib>
#include <optional>

#include "quell/io/input_text.h"
#include "quell/io/nearest.h"

namespace quell::io {
namespace {

constexpr std::size_t most_problems = 20;  ///< one wrong column is one mistake, not a thousand
constexpr std::array<std::string_view, 5> names{"discharge", "low", "expected", "high", "level"};

struct Cell {
  std::string_view text;
  int column = 0;  ///< in characters, from 1
};

std::string_view trimmed(std::string_view text) {
  while (!text.empty() && (text.front() == ' ' || text.front() == '\t')) text.remove_prefix(1);
  while (!text.empty() && (text.back() == ' ' || text.back() == '\t')) text.remove_suffix(1);
  if (text.size() >= 2 && text.front() == '"' && text.back() == '"') return text.substr(1, text.size() - 2);
  return text;
}

int characters(std::string_view text) {
  int count = 0;
  for (const char c : text)
    if ((static_cast<unsigned char>(c) & 0xC0u) != 0x80u) ++count;
  return count;
}

std::vector<Cell> cells_of(std::string_view line, char separator) {
  std::vector<Cell> cells;
  std::size_t start = 0;
  while (true) {
    const std::size_t end = std::min(line.find(separator, start), line.size());
    const std::string_view raw = line.substr(start, end - start);
    const std::size_t indent = std::min(raw.find_first_not_of(" \t"), raw.size());
    cells.push_back({trimmed(raw), characters(line.substr(0, start + indent)) + 1});
    if (end == line.size()) return cells;
    start = end + 1;
  }
}

/// A plain number, digits with at most one point and an exponent; nothing where it is not one.
std::optional<double> plain_number(std::string_view text) {
  if (text.empty() || text.size() > 60 || text.find_first_not_of("0123456789.+-eE") != std::string_view::npos)
    return std::nullopt;
  const std::string copy(text);
  char* end = nullptr;
  const double value = std::strtod(copy.c_str(), &end);
  if (*end != '\0' || !std::isfinite(value)) return std::nullopt;
  return value;
}

struct Column {
  std::size_t index = 0;  ///< 0: discharge, else 1 + TailwaterCase
  double factor = 1.0;    ///< to SI
};

class CsvReader {
 public:
  CsvReader(UnitSystem system, Draft& draft, ProblemList& problems) : system_(system), draft_(draft), problems_(problems) {}

  bool read(std::string_view text) {
    const std::size_t before = problems_.problem_count();
    if (drop_byte_order_mark(text)) problems_.remark({1, 1}, "the file starts with a byte order mark, which is skipped");
    int number = 0;
    for (const std::string_view line : split_lines(text)) {
      ++number;
      if (trimmed(line).empty() || trimmed(line).front() == '#') continue;
      if (columns_.empty()) {
        if (!read_headings(line, number)) return false;
      } else {
        read_row(line, number);
      }
      if (problems_.problem_count() >= before + most_problems) {
        problems_.problem({number, 0}, "reading stops here: too many problems");
        return false;
      }
    }
    if (columns_.empty())
      problems_.problem({1, 1}, "the file holds no row of headings like \"discharge (m3/s), expected (m)\"");
    return problems_.problem_count() == before;
  }

 private:
  UnitSystem system_;
  Draft& draft_;
  ProblemList& problems_;
  char separator_ = ',';
  std::vector<Column> columns_;
  bool comma_remarked_ = false;

  bool fail(Place place, std::string message) {
    problems_.problem(place, std::move(message));
    return false;
  }

  bool read_headings(std::string_view line, int number) {
    if (line.find(';') != std::string_view::npos) separator_ = ';';
    bool good = true;
    std::vector<Column> columns;
    std::array<bool, 4> seen{};
    const std::vector<Cell> cells = cells_of(line, separator_);
    if (plain_number(cells.front().text))
      return fail({number, 1}, "the first row must be the headings, like \"discharge (m3/s), expected (m)\", not numbers");
    for (const Cell& cell : cells) {
      Column column;
      if (!read_heading(cell, number, column)) {
        good = false;
        continue;
      }
      if (seen[column.index]) good = fail({number, cell.column}, fmt::format("the column '{}' stands twice", cell.text));
      seen[column.index] = true;
      columns.push_back(column);
    }
    if (good && !(seen[0] && seen[2]))
      good = fail({number, 1},
                  fmt::format("a rating needs the columns discharge and expected (or level), headed like \"discharge (m3/s), "
                              "expected (m)\"; '{}' is missing",
                              seen[0] ? "expected" : "discharge"));
    draft_.site.river.has_spread = seen[1] || seen[3];
    columns_ = std::move(columns);
    return good;
  }

  bool read_heading(const Cell& cell, int number, Column& column) {
    const Place place{number, cell.column};
    const std::size_t open = cell.text.find_first_of("([");
    const std::string name(trimmed(cell.text.substr(0, open)));
    std::size_t index = 0;
    while (index < names.size() && names[index] != name) ++index;
    if (index == names.size()) {
      const std::string_view meant = nearest(name, names);
      return fail(place, fmt::format("unknown column '{}'; a rating has discharge, low, expected and high{}", name,
                                     meant.empty() ? std::string() : fmt::format("; did you mean '{}'?", meant)));
    }
    column.index = index == 4 ? 2 : index;
    const Dimension wanted = column.index == 0 ? dimension::discharge : dimension::length;
    column.factor = from_unit(1.0, wanted, system_);
    if (open == std::string_view::npos) return true;
    std::string_view unit = cell.text.substr(open + 1);
    if (unit.empty() || (unit.back() != ')' && unit.back() != ']'))
      return fail(place, "the bracket with the unit is not closed");
    unit.remove_suffix(1);
    const auto one = parse_quantity(fmt::format("1 {}", unit));
    if (!one || one->dimension != wanted)
      return fail(place,
                  fmt::format("'{}' is not a unit of a {}; write one of {}", unit, name_of(wanted), example_units(wanted)));
    column.factor = one->value;
    return true;
  }

  void read_row(std::string_view line, int number) {
    const std::vector<Cell> cells = cells_of(line, separator_);
    if (cells.size() != columns_.size()) {
      const bool comma = separator_ == ',' && cells.size() > columns_.size();
      fail({number, 1},
           fmt::format("this row has {} cells, but there are {} headings{}", cells.size(), columns_.size(),
                       comma ? "; with decimal commas, part the cells by semicolons; do not group thousands" : ""));
      return;
    }
    std::array<double, 4> values{};
    std::array<Place, 4> places{};
    for (std::size_t i = 0; i < cells.size(); ++i) {
      const std::optional<double> value = read_cell(cells[i], number);
      if (!value) return;
      const Range range = columns_[i].index == 0 ? Range{0.0, 1e6} : Range{-500.0, 9000.0};
      values[columns_[i].index] = *value * columns_[i].factor;
      places[columns_[i].index] = {number, cells[i].column};
      if (!range.contains(values[columns_[i].index])) {
        fail({number, cells[i].column},
             fmt::format("'{}' is not a {} that can be", cells[i].text, columns_[i].index == 0 ? "discharge" : "level"));
        return;
      }
    }
    store(values, places);
  }

  std::optional<double> read_cell(const Cell& cell, int number) {
    if (const auto value = plain_number(cell.text)) return value;
    const std::size_t comma = cell.text.find(',');
    const bool one_comma =
        separator_ == ';' && comma != std::string_view::npos && cell.text.find('.') == std::string_view::npos;
    if (one_comma) {
      std::string with_point(cell.text);
      with_point[comma] = '.';
      if (const auto value = plain_number(with_point)) {
        if (!comma_remarked_)
          problems_.remark({number, cell.column}, "commas inside the cells of this file are read as decimal commas");
        comma_remarked_ = true;
        return value;
      }
    }
    fail({number, cell.column},
         cell.text.empty()
             ? std::string("this cell is empty")
             : fmt::format(
                   "'{}' is not a plain number; write digits with a decimal point, no grouped thousands, and the unit in the "
                   "heading",
                   cell.text.substr(0, 40)));
    return std::nullopt;
  }

  void store(const std::array<double, 4>& values, const std::array<Place, 4>& places) {
    site::TailwaterRating& rating = draft_.site.river.rating;
    rating.discharge.push_back(values[0]);
    draft_.rating_discharge_places.push_back(places[0]);
    for (std::size_t i = 0; i < 3; ++i) {
      const bool given = places[i + 1].line > 0;
      rating.level[i].push_back(given ? values[i + 1] : values[2]);
      draft_.rating_level_places[i].push_back(given ? places[i + 1] : places[2]);
    }
  }
};

}  // namespace

bool read_rating_csv(std::string_view text, UnitSystem system, Draft& draft, ProblemList& problems) {
  return CsvReader(system, draft, problems).read(text);
}

}  // namespace quell::io
