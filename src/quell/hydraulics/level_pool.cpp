#include "quell/hydraulics/level_pool.h"

#include <algorithm>
#include <cmath>

#include "quell/hydraulics/level_pool_router.h"

namespace quell::hydraulics {
namespace {

struct TableLaw {
  const RatingTable* table;
  std::size_t panel = 0;
  double at(double level) { return table->at(level, panel); }
  double smooth(double level) { return table->line_at(level, panel); }
};

Outcome<void> check_rating(const RatingTable& rating, double lowest_level) {
  const auto& level = rating.level;
  const auto& discharge = rating.discharge;
  if (level.size() != discharge.size() || level.size() < 2)
    return no_answer("a rating needs two points or more, with a discharge for every level");
  for (std::size_t i = 0; i < level.size(); ++i) {
    if (!std::isfinite(level[i]) || !std::isfinite(discharge[i])) return no_answer("a rating holds finite numbers only");
    if (i > 0 && !(level[i] > level[i - 1]))
      return bad_input("level", level[i], level[i - 1], no_limit, "the levels of a rating must rise");
    const double least = i > 0 ? discharge[i - 1] : 0.0;
    if (!(discharge[i] >= least))
      return bad_input("discharge", discharge[i], least, no_limit,
                       "the discharge of a rating must not fall, nor be below zero");
  }
  if (discharge[0] > 0.0 && level[0] > lowest_level)
    return bad_input("discharge", discharge[0], 0.0, 0.0, "a rating that begins above the lowest storage begins at zero");
  return {};
}

Outcome<void> check_series(const RoutingInput& input) {
  const auto& time = input.time;
  if (time.size() != input.inflow.size() || time.size() < 2)
    return no_answer("a flood needs two points or more, with an inflow for every time");
  for (std::size_t i = 0; i < time.size(); ++i) {
    if (!std::isfinite(time[i]) || !std::isfinite(input.inflow[i])) return no_answer("a flood holds finite numbers only");
    if (i > 0 && !(time[i] > time[i - 1]))
      return bad_input("time", time[i], time[i - 1], no_limit, "the times of a flood must rise");
  }
  if (!(input.initial_level >= input.storage.lowest_level()))
    return bad_input("initial_level", input.initial_level, input.storage.lowest_level(), no_limit,
                     "below the lowest level of the storage nothing is known");
  if (!std::isfinite(input.initial_level)) return no_answer("the level at the start is not finite");
  if (!(input.tolerance > 0.0))
    return bad_input("tolerance", input.tolerance, above_zero.lowest, no_limit, "the error allowed must be above zero");
  if (!(input.longest_step > 0.0))
    return bad_input("longest_step", input.longest_step, above_zero.lowest, no_limit, "a step is longer than nothing");
  if (!(input.after >= 0.0) || !std::isfinite(input.after))
    return bad_input("after", input.after, 0.0, no_limit, "the time after the flood is not below zero");
  return {};
}

/// C L (H - crest)^1.5, levels from the crest.
struct CrestLaw {
  double coefficient;
  double at(double level) const { return level > 0.0 ? smooth(level) : 0.0; }
  double smooth(double level) const { return coefficient * level * std::sqrt(std::abs(level)); }
};
}  // namespace

double RatingTable::at(double height, std::size_t& panel) const noexcept {
  return height < level.front() ? 0.0 : line_at(height, panel);
}

double RatingTable::line_at(double height, std::size_t& panel) const noexcept {
  const std::size_t last = level.size() - 2;
  if (panel > last) panel = last;
  while (panel > 0 && height < level[panel]) --panel;
  while (panel < last && height >= level[panel + 1]) ++panel;
  const double slope = (discharge[panel + 1] - discharge[panel]) / (level[panel + 1] - level[panel]);
  return discharge[panel] + slope * (height - level[panel]);
}

double RatingTable::at(double height) const noexcept {
  const auto above = std::upper_bound(level.begin(), level.end(), height);
  std::size_t panel = above == level.begin() ? 0 : static_cast<std::size_t>(above - level.begin()) - 1;
  return at(height, panel);
}

Outcome<void> check_routing(const RoutingInput& input) {
  if (const auto good = check_series(input); !good) return good;
  if (input.stages.empty()) return no_answer("there is no outflow to route through");
  for (const auto& stage : input.stages) {
    if (const auto good = check_rating(stage.rating, input.storage.lowest_level()); !good) return good;
    if (std::isnan(stage.up_level) || std::isnan(stage.down_level)) return no_answer("a level of a stage is no number");
  }
  if (input.first_stage >= input.stages.size()) return no_answer("the first stage is none of the stages");
  return {};
}

Outcome<RoutedFlood> route_level_pool(const RoutingInput& input) {
  if (const auto good = check_routing(input); !good) return tl::unexpected(good.error());
  std::vector<RouterStage<TableLaw>> stages;
  stages.reserve(input.stages.size());
  for (const auto& stage : input.stages)
    stages.push_back(
        {TableLaw{.table = &stage.rating}, stage.rating.level, stage.rating.level.front(), stage.up_level, stage.down_level});
  return LevelPoolRouter<TableLaw>(input, std::move(stages)).run();
}

Outcome<RoutedFlood> route_over_crest(const RoutingInput& input, double coefficient) {
  if (const auto good = check_series(input); !good) return tl::unexpected(good.error());
  constexpr double endless = std::numeric_limits<double>::infinity();
  static constexpr double crest[] = {0.0};
  return LevelPoolRouter<CrestLaw>(input, {{CrestLaw{coefficient}, crest, 0.0, endless, -endless}}).run();
}

}  // namespace quell::hydraulics
