#include "quell/io/rating_checks.h"

#include <fmt/format.h>

#include "quell/io/shown.h"

namespace quell::io {
namespace {

constexpr std::size_t most_problems = 10;

}  // namespace

bool check_rating(const site::TailwaterRating& rating, const RatingPlaces& places, UnitSystem system, ProblemList& problems) {
  const std::size_t before = problems.problem_count();
  const auto full = [&] { return problems.problem_count() >= before + most_problems; };
  const auto discharge = [&](std::size_t i) { return shown(rating.discharge[i], dimension::discharge, system); };
  const auto length = [&](double level) { return shown(level, dimension::length, system); };
  if (rating.discharge.size() < 2) {
    problems.problem(places.end, "a rating needs at least two rows");
    return false;
  }
  for (std::size_t i = 1; i < rating.discharge.size() && !full(); ++i)
    if (!(rating.discharge[i] > rating.discharge[i - 1]))
      problems.problem(places.discharge(i),
                       fmt::format("the discharges of a rating must increase: {} follows {}", discharge(i), discharge(i - 1)));
  for (const site::TailwaterCase which : site::tailwater_cases) {
    if (!places.own[site::index_of(which)]) continue;
    const std::vector<double>& level = rating.level[site::index_of(which)];
    for (std::size_t i = 1; i < level.size() && !full(); ++i)
      if (level[i] < level[i - 1])
        problems.problem(places.level(i, which), fmt::format("the tailwater must not fall as the discharge grows: {} at {} "
                                                             "follows {}",
                                                             length(level[i]), discharge(i), length(level[i - 1])));
  }
  // A level that falls crosses its neighbours too: one mistake, one message.
  if (problems.problem_count() > before) return false;
  for (std::size_t i = 0; i < rating.discharge.size() && !full(); ++i)
    for (std::size_t k = 1; k < 3; ++k)
      if (rating.level[k][i] < rating.level[k - 1][i])
        problems.problem(places.level(i, site::tailwater_cases[k]),
                         fmt::format("at {} the {} tailwater {} lies below the {} one {}", discharge(i),
                                     site::name_of(site::tailwater_cases[k]), length(rating.level[k][i]),
                                     site::name_of(site::tailwater_cases[k - 1]), length(rating.level[k - 1][i])));
  return problems.problem_count() == before;
}

}  // namespace quell::io
