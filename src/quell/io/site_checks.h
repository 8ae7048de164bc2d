// What must hold between the keys of a site file.
#pragma once

#include <span>
#include <string_view>

#include "quell/io/problem_list.h"
#include "quell/io/schema.h"

namespace quell::io {

/// Judges the rating on its own: at least two rows, discharges increasing, levels not decreasing, low <= expected <= high.
/// `problems` belongs to the file in which the rating stands. False where there is any problem.
bool check_rating(const Draft& draft, ProblemList& problems);

/// Judges what needs more than one key. A check whose keys were not read is skipped: they have their own problem already.
/// `known_types` are the ids of the catalogue.
void check_site(const Draft& draft, std::span<const std::string_view> known_types, ProblemList& problems);

}  // namespace quell::io
