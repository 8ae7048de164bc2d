// One kind of CSV file out of `csv_formats`, and its columns by name.
#pragma once

#include "quell/io/csv_table.h"

namespace quell::io {

/// In the order of `csv_formats`.
enum class CsvKind { rating, hydrograph, storage, record, gauging, section };
const CsvFormat& csv_format(CsvKind kind);

/// Index of each column in its format.
namespace column {
enum Rating : std::size_t { discharge, low, expected, high };
enum Hydrograph : std::size_t { time, flow };
enum Storage : std::size_t { storage_level, area, storage };
enum Record : std::size_t { year, flood };
enum Gauging : std::size_t { gauged_level, gauged_discharge };
enum Section : std::size_t { station, point_level, point_n };
}  // namespace column

}  // namespace quell::io
