// A tailwater rating from a CSV file.
//
// First row: headings with units, `discharge (m3/s), low (m), expected (m), high (m)`, in any order, units in round or square
// brackets; a heading without unit stands in the site file's system. `level` is another word for `expected`. Cells are parted
// by commas or, where the first row holds one, by semicolons; then a decimal comma is tolerated and remarked. Empty lines and
// lines that start with '#' are skipped.
#pragma once

#include <string_view>

#include "quell/io/problem_list.h"
#include "quell/io/schema.h"

namespace quell::io {

/// Fills rating and places of `draft`; problems carry the CSV's line. False where there is any.
bool read_rating_csv(std::string_view text, UnitSystem system, Draft& draft, ProblemList& problems);

}  // namespace quell::io
