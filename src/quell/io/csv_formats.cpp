// The columns of every kind of CSV file.
#include <array>

#include "quell/io/csv_files.h"
#include "quell/io/csv_formats.h"

namespace quell::io {
namespace {

constexpr Range level_range{-500.0, 9000.0};
constexpr Range flow_range{0.0, 1e6};

constexpr CsvColumn level_column{.name = "level",
                                 .synonyms = "stage|elevation",
                                 .what = "a level",
                                 .dimension = dimension::length,
                                 .required = true,
                                 .range = level_range,
                                 .help = "level"};

// clang-format off: a table is read in rows
constexpr std::array rating_columns{
    CsvColumn{.name = "discharge", .synonyms = "flow", .what = "a discharge", .dimension = dimension::discharge, .required = true,
              .range = flow_range, .help = "discharge, increasing from row to row"},
    CsvColumn{.name = "low", .what = "a level", .dimension = dimension::length, .range = level_range,
              .help = "lowest level at this discharge, not falling"},
    CsvColumn{.name = "expected", .synonyms = "level|stage", .what = "a level", .dimension = dimension::length, .required = true,
              .range = level_range, .help = "expected level, not falling; not below the low one"},
    CsvColumn{.name = "high", .what = "a level", .dimension = dimension::length, .range = level_range,
              .help = "highest level, not falling; not below the expected one"}};

constexpr std::array hydrograph_columns{
    CsvColumn{.name = "time", .what = "a time", .dimension = dimension::time, .required = true, .needs_unit = true,
              .range = {-1e9, 1e10}, .help = "time, increasing, in any step; its unit must be given, such as (h)"},
    CsvColumn{.name = "flow", .synonyms = "inflow|discharge", .what = "a flow", .dimension = dimension::discharge, .required = true,
              .range = flow_range, .help = "flow into the reservoir, not negative"}};

constexpr std::array storage_columns{
    level_column,
    CsvColumn{.name = "area", .what = "an area", .dimension = dimension::area, .needs_unit = true, .range = {0.0, 1e12},
              .help = "area of the water at this level, not falling; its unit must be given, such as (km2)"},
    CsvColumn{.name = "storage", .synonyms = "volume", .what = "a volume", .dimension = dimension::volume, .needs_unit = true,
              .range = {0.0, 1e13}, .help = "volume below this level, increasing, instead of area; its unit must be given, such as (hm3)"}};

constexpr std::array record_columns{
    CsvColumn{.name = "year", .what = "a year", .is_whole = true, .range = {-5000.0, 5000.0},
              .help = "year, whole, each once; may be left out"},
    CsvColumn{.name = "flow", .synonyms = "flood|discharge|peak", .what = "a flood", .dimension = dimension::discharge,
              .required = true, .range = {1e-12, 1e6}, .help = "largest flow of the year, above zero"}};

constexpr std::array gauging_columns{
    level_column,
    CsvColumn{.name = "discharge", .synonyms = "flow", .what = "a discharge", .dimension = dimension::discharge, .required = true,
              .range = {1e-12, 1e6}, .help = "discharge measured at this level, above zero"}};

constexpr std::array section_columns{
    CsvColumn{.name = "station", .synonyms = "offset", .what = "a station", .dimension = dimension::length, .required = true,
              .range = {-1e5, 1e5}, .help = "distance across the river, from the left to the right bank looking downstream, not falling"},
    level_column,
    CsvColumn{.name = "n", .synonyms = "manning_n", .what = "Manning's n", .range = {0.008, 0.5},
              .help = "Manning's n from this point to the next; may be left out"}};

constexpr std::array<CsvFormat, 6> formats{
    CsvFormat{.name = "a rating", .key = "river.rating.file", .example = "discharge (m3/s), expected (m)",
              .help = "Tailwater over discharge, also at the lower end of a surveyed river (river.survey.control_file). At least two rows.",
              .columns = rating_columns},
    CsvFormat{.name = "a hydrograph", .key = "floods.inflows.file", .example = "time (h), flow (m3/s)",
              .help = "At least three rows. A step of time longer than ten times the usual one is a gap, and refused: fill it.",
              .columns = hydrograph_columns},
    CsvFormat{.name = "a storage table", .key = "reservoir.file", .example = "level (m), area (km2)",
              .help = "Levels increase. Either area or storage is given. At least two rows.", .columns = storage_columns},
    CsvFormat{.name = "a flood record", .key = "floods.record.file", .example = "year, flow (m3/s)",
              .help = "One row for each year, in any order. At least ten.", .columns = record_columns},
    CsvFormat{.name = "a gauging", .key = "river.gauging.file", .example = "level (m), discharge (m3/s)",
              .help = "Measured pairs in any order, at least four. Scatter is tolerated; a point with less than half the discharge of "
                      "one that lies no higher is refused.",
              .columns = gauging_columns},
    CsvFormat{.name = "a cross-section", .key = "river.survey.sections.file", .example = "station (m), level (m)",
              .help = "At least three points.", .columns = section_columns}};
// clang-format on

}  // namespace

std::span<const CsvFormat> csv_formats() {
  return formats;
}

const CsvFormat& csv_format(CsvKind kind) {
  return formats[static_cast<std::size_t>(kind)];
}

}  // namespace quell::io
