#include <fmt/format.h>

#include "quell/io/site_checks.h"

namespace quell::io {
namespace {

constexpr std::size_t most_problems = 10;

std::string shown(double si, Dimension dimension, UnitSystem system) {
  return fmt::format("{:.6g} {}", to_unit(si, dimension, system), unit_symbol(dimension, system));
}

}  // namespace

bool check_rating(const Draft& draft, ProblemList& problems) {
  const site::TailwaterRating& rating = draft.site.river.rating;
  const UnitSystem system = draft.site.units;
  const std::size_t before = problems.problem_count();
  const auto full = [&] { return problems.problem_count() >= before + most_problems; };
  const auto discharge = [&](std::size_t i) { return shown(rating.discharge[i], dimension::discharge, system); };
  if (rating.discharge.size() < 2) {
    const Place place = draft.rating_discharge_places.empty() ? Place{1, 1} : draft.rating_discharge_places.front();
    problems.problem(place, "a rating needs at least two rows");
    return false;
  }
  for (std::size_t i = 1; i < rating.discharge.size() && !full(); ++i)
    if (!(rating.discharge[i] > rating.discharge[i - 1]))
      problems.problem(draft.rating_discharge_places[i],
                       fmt::format("the discharges of a rating must increase: {} follows {}", discharge(i), discharge(i - 1)));
  for (const site::TailwaterCase which : site::tailwater_cases) {
    const std::vector<double>& level = rating.level[site::index_of(which)];
    const std::vector<Place>& places = draft.rating_level_places[site::index_of(which)];
    const bool own =
        which == site::TailwaterCase::expected ||
        places.front().column != draft.rating_level_places[site::index_of(site::TailwaterCase::expected)].front().column ||
        places.front().line != draft.rating_level_places[site::index_of(site::TailwaterCase::expected)].front().line;
    for (std::size_t i = 1; i < level.size() && own && !full(); ++i)
      if (level[i] < level[i - 1])
        problems.problem(places[i], fmt::format("the tailwater must not fall as the discharge grows: {} at {} follows {}",
                                                shown(level[i], dimension::length, system), discharge(i),
                                                shown(level[i - 1], dimension::length, system)));
  }
  // A level that falls crosses its neighbours too: one mistake, one message.
  if (problems.problem_count() > before) return false;
  for (std::size_t i = 0; i < rating.discharge.size() && !full(); ++i)
    for (std::size_t k = 1; k < 3; ++k)
      if (rating.level[k][i] < rating.level[k - 1][i])
        problems.problem(
            draft.rating_level_places[k][i],
            fmt::format("at {} the {} tailwater {} lies below the {} one {}", discharge(i),
                        site::name_of(site::tailwater_cases[k]), shown(rating.level[k][i], dimension::length, system),
                        site::name_of(site::tailwater_cases[k - 1]), shown(rating.level[k - 1][i], dimension::length, system)));
  return problems.problem_count() == before;
}

}  // namespace quell::io
