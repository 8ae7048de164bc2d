// The kinds of CSV files that a site file names: their columns, and readers that fill the site's plain structs. Each reader
// also judges the rows together; problems carry the CSV file's line. False where there is any.
#pragma once

#include <span>
#include <string_view>

#include "quell/io/csv_table.h"

namespace quell::io {

/// Every kind, in the order of the documentation.
std::span<const CsvFormat> csv_formats();

/// Tailwater over discharge. `has_spread` tells whether the file has columns for low or high.
bool read_rating_csv(std::string_view text, UnitSystem system, site::TailwaterRating& rating, bool& has_spread,
                     ProblemList& problems);

/// Flow over time, into `time` and `flow` of the inflow.
bool read_hydrograph_csv(std::string_view text, UnitSystem system, site::Inflow& inflow, ProblemList& problems);

/// Level with area or storage, into the tables of the reservoir.
bool read_storage_csv(std::string_view text, UnitSystem system, site::Reservoir& reservoir, ProblemList& problems);

/// Largest flow of each year, into `year` and `yearly_flood` of the record.
bool read_record_csv(std::string_view text, UnitSystem system, site::FloodRecord& record, ProblemList& problems);

/// Gauged pairs, in any order, with the scatter of measurements.
bool read_gauging_csv(std::string_view text, UnitSystem system, site::Gauging& gauging, ProblemList& problems);

/// Points of a surveyed section from the left to the right bank.
bool read_section_csv(std::string_view text, UnitSystem system, site::CrossSection& section, ProblemList& problems);

}  // namespace quell::io
