// What must hold between the keys of a site file.
#pragma once

#include <span>
#include <string_view>

#include "quell/io/problem_list.h"
#include "quell/io/schema.h"

namespace quell::io {

/// Judges what needs more than one key. A check whose keys were not read is skipped: they have their own problem already.
/// `known_types` are the ids of the catalogue.
void check_site(const Draft& draft, std::span<const std::string_view> known_types, ProblemList& problems);

// Its parts, each for the sections it is named after.
void check_discharges(const Draft& draft, ProblemList& problems);
void check_gates(const Draft& draft, ProblemList& problems);
void check_reservoir(const Draft& draft, ProblemList& problems);
void check_river(const Draft& draft, ProblemList& problems);
void check_slab(const Draft& draft, ProblemList& problems);

}  // namespace quell::io
