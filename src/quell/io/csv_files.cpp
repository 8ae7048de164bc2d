#include "quell/io/csv_files.h"

#include <fmt/format.h>

#include <algorithm>
#include <numeric>

#include "quell/io/csv_formats.h"
#include "quell/io/rating_checks.h"
#include "quell/io/shown.h"

namespace quell::io {
namespace {

constexpr std::size_t most_problems = 10;  ///< of the rows of one file together
constexpr double longest_step = 10.0;      ///< of a hydrograph, in usual (median) steps; beyond it lies a gap
constexpr std::size_t fewest_years = 10;   ///< with fewer a law of floods has no meaning
constexpr double worst_scatter = 2.0;      ///< between gauged discharges in the wrong order

/// The rows of one file, judged together.
class Rows {
 public:
  Rows(CsvKind kind, std::string_view text, UnitSystem system, ProblemList& problems)
      : system_(system), problems_(problems), before_(problems.problem_count()), format_(csv_format(kind)) {
    read_csv(text, format_, system, table_, problems);
  }

  bool good() const { return problems_.problem_count() == before_; }
  const CsvTable& table() const { return table_; }
  std::size_t count() const { return table_.rows(); }
  bool has(std::size_t column) const { return table_.has(column); }
  const std::vector<double>& column(std::size_t column) const { return table_.columns[column]; }
  double at(std::size_t row, std::size_t column) const { return table_.columns[column][row]; }
  int line(std::size_t row) const { return table_.line[row]; }
  std::string text(std::size_t row, std::size_t column) const {
    return shown(at(row, column), format_.columns[column].dimension, system_);
  }

  void fail(std::size_t row, std::size_t column, std::string message) {
    if (problems_.problem_count() < before_ + most_problems) problems_.problem(table_.place(row, column), std::move(message));
  }
  void fail_at_end(std::string message) { problems_.problem(table_.end(), std::move(message)); }
  void fail_at_head(std::string message) { problems_.problem({table_.heading_line, 1}, std::move(message)); }

  void need(std::size_t rows, std::string_view message) {
    if (good() && count() < rows) fail_at_end(std::string(message));
  }

  /// `what` names the column in the plural: "the levels of a storage table".
  void need_increase(std::size_t column, std::string_view what) {
    for (std::size_t i = 1; i < count(); ++i)
      if (!(at(i, column) > at(i - 1, column)))
        fail(i, column, fmt::format("{} must increase: {} follows {}", what, text(i, column), text(i - 1, column)));
  }
  void need_no_fall(std::size_t column, std::string_view what) {
    for (std::size_t i = 1; i < count(); ++i)
      if (at(i, column) < at(i - 1, column))
        fail(i, column, fmt::format("{} must not fall: {} follows {}", what, text(i, column), text(i - 1, column)));
  }

 private:
  UnitSystem system_;
  ProblemList& problems_;
  std::size_t before_;
  const CsvFormat& format_;
  CsvTable table_;
};

}  // namespace

bool read_rating_csv(std::string_view text, UnitSystem system, site::TailwaterRating& rating, bool& has_spread,
                     ProblemList& problems) {
  Rows rows(CsvKind::rating, text, system, problems);
  if (!rows.good()) return false;
  has_spread = rows.has(column::low) || rows.has(column::high);
  rating.discharge = rows.column(column::discharge);
  constexpr std::array levels{column::low, column::expected, column::high};
  RatingPlaces places;
  for (std::size_t i = 0; i < levels.size(); ++i) {
    places.own[i] = rows.has(levels[i]);
    rating.level[i] = rows.column(places.own[i] ? levels[i] : column::expected);
  }
  places.discharge = [&](std::size_t row) { return rows.table().place(row, column::discharge); };
  places.level = [&](std::size_t row, site::TailwaterCase which) {
    const std::size_t i = site::index_of(which);
    return rows.table().place(row, places.own[i] ? levels[i] : column::expected);
  };
  places.end = rows.table().end();
  return check_rating(rating, places, system, problems);
}

bool read_hydrograph_csv(std::string_view text, UnitSystem system, site::Inflow& inflow, ProblemList& problems) {
  Rows rows(CsvKind::hydrograph, text, system, problems);
  rows.need(3, "a hydrograph needs at least three rows");
  if (!rows.good()) return false;
  rows.need_increase(column::time, "the times of a hydrograph");
  if (!rows.good()) return false;
  inflow.time = rows.column(column::time);
  inflow.flow = rows.column(column::flow);
  std::vector<double> steps(rows.count() - 1);
  for (std::size_t i = 0; i < steps.size(); ++i) steps[i] = inflow.time[i + 1] - inflow.time[i];
  const auto middle = steps.begin() + static_cast<std::ptrdiff_t>(steps.size() / 2);
  std::nth_element(steps.begin(), middle, steps.end());
  for (std::size_t i = 1; i < rows.count(); ++i)
    if (inflow.time[i] - inflow.time[i - 1] > longest_step * *middle)
      rows.fail(
          i, column::time,
          fmt::format("a gap between the rows of lines {} and {}: {:.6g} h pass, where the usual step is {:.6g} h; fill in "
                      "the rows between",
                      rows.line(i - 1), rows.line(i), (inflow.time[i] - inflow.time[i - 1]) / 3600.0, *middle / 3600.0));
  if (rows.good() && std::all_of(inflow.flow.begin(), inflow.flow.end(), [](double flow) { return flow == 0.0; }))
    rows.fail_at_end("every flow of this hydrograph is zero");
  return rows.good();
}

bool read_storage_csv(std::string_view text, UnitSystem system, site::Reservoir& reservoir, ProblemList& problems) {
  Rows rows(CsvKind::storage, text, system, problems);
  if (!rows.good()) return false;
  if (rows.has(column::area) == rows.has(column::storage)) {
    rows.fail_at_head(rows.has(column::area) ? "a storage table has area or storage, not both; delete one column"
                                             : "a storage table needs a column area (km2) or storage (hm3) beside level");
    return false;
  }
  rows.need(2, "a storage table needs at least two rows");
  if (!rows.good()) return false;
  rows.need_increase(column::storage_level, "the levels of a storage table");
  if (rows.has(column::area)) rows.need_no_fall(column::area, "the area of a reservoir");
  if (rows.has(column::storage)) rows.need_increase(column::storage, "the storage of a reservoir");
  if (rows.good() && rows.has(column::area) && rows.at(rows.count() - 1, column::area) == 0.0)
    rows.fail_at_end("a reservoir whose area is zero up to its highest level holds no water");
  reservoir.level = rows.column(column::storage_level);
  reservoir.area = rows.column(column::area);
  reservoir.storage = rows.column(column::storage);
  return rows.good();
}

bool read_record_csv(std::string_view text, UnitSystem system, site::FloodRecord& record, ProblemList& problems) {
  Rows rows(CsvKind::record, text, system, problems);
  if (!rows.good()) return false;
  if (rows.count() < fewest_years) {
    rows.fail_at_end(fmt::format("a flood record needs at least {} years, this one has {}: no law of floods follows from fewer",
                                 fewest_years, rows.count()));
    return false;
  }
  record.yearly_flood = rows.column(column::flood);
  record.year.clear();
  if (!rows.has(column::year)) return true;
  for (const double year : rows.column(column::year)) record.year.push_back(static_cast<int>(year));
  std::vector<std::size_t> order(rows.count());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
    return record.year[a] != record.year[b] ? record.year[a] < record.year[b] : a < b;
  });
  for (std::size_t i = 1; i < order.size(); ++i)
    if (record.year[order[i]] == record.year[order[i - 1]])
      rows.fail(order[i], column::year,
                fmt::format("the year {} stands twice, here and in line {}; keep the larger flood of the two",
                            record.year[order[i]], rows.line(order[i - 1])));
  return rows.good();
}

bool read_gauging_csv(std::string_view text, UnitSystem system, site::Gauging& gauging, ProblemList& problems) {
  Rows rows(CsvKind::gauging, text, system, problems);
  rows.need(4, "a gauging needs at least four points: the law through them has three constants");
  if (!rows.good()) return false;
  gauging.level = rows.column(column::gauged_level);
  gauging.discharge = rows.column(column::gauged_discharge);
  std::vector<std::size_t> order(rows.count());
  std::iota(order.begin(), order.end(), std::size_t{0});
  // At one level the larger discharge first, so that the smaller one meets it.
  std::sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
    if (gauging.level[a] != gauging.level[b]) return gauging.level[a] < gauging.level[b];
    return gauging.discharge[a] != gauging.discharge[b] ? gauging.discharge[a] > gauging.discharge[b] : a < b;
  });
  std::size_t largest = order.front();
  for (const std::size_t row : order) {
    if (worst_scatter * gauging.discharge[row] < gauging.discharge[largest])
      rows.fail(row, column::gauged_discharge,
                fmt::format("the gauging crosses itself: {} at {} is less than half of the {} at {} in line {}; one of the two "
                            "is mistaken, or belongs to another bed",
                            rows.text(row, column::gauged_discharge), rows.text(row, column::gauged_level),
                            rows.text(largest, column::gauged_discharge), rows.text(largest, column::gauged_level),
                            rows.line(largest)));
    if (gauging.discharge[row] > gauging.discharge[largest]) largest = row;
  }
  if (rows.good() && gauging.level[order.front()] == gauging.level[order.back()])
    rows.fail_at_end("every point of this gauging lies at the same level");
  return rows.good();
}

bool read_section_csv(std::string_view text, UnitSystem system, site::CrossSection& section, ProblemList& problems) {
  Rows rows(CsvKind::section, text, system, problems);
  rows.need(3, "a cross-section needs at least three points");
  if (!rows.good()) return false;
  section.station = rows.column(column::station);
  section.level = rows.column(column::point_level);
  section.point_n = rows.column(column::point_n);
  for (std::size_t i = 1; i < rows.count(); ++i)
    if (section.station[i] < section.station[i - 1])
      rows.fail(i, column::station,
                fmt::format("overlapping stations: {} follows {}; the points go from the left to the right bank",
                            rows.text(i, column::station), rows.text(i - 1, column::station)));
  if (!rows.good()) return false;
  if (!(section.station.back() > section.station.front())) rows.fail_at_end("every point of this section has the same station");
  const auto [lowest, highest] = std::minmax_element(section.level.begin(), section.level.end());
  if (rows.good() && *lowest == *highest) rows.fail_at_end("this section is level and holds no water: it needs banks");
  return rows.good();
}

}  // namespace quell::io
