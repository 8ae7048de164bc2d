// A tailwater rating judged on its own, wherever it stands.
#pragma once

#include <array>
#include <functional>

#include "quell/io/problem_list.h"

namespace quell::io {

/// Where the numbers of a rating stand.
struct RatingPlaces {
  std::function<Place(std::size_t row)> discharge;
  std::function<Place(std::size_t row, site::TailwaterCase which)> level;
  std::array<bool, 3> own{true, true, true};  ///< levels that stand in the file; the others repeat the expected ones
  Place end;                                  ///< where to tell that rows are missing
};

/// At least two rows, discharges increasing, levels not decreasing, low <= expected <= high. False where there is any problem.
bool check_rating(const site::TailwaterRating& rating, const RatingPlaces& places, UnitSystem system, ProblemList& problems);

}  // namespace quell::io
