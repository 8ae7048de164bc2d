#include "quell/hydraulics/level_pool_steps.h"

#include <algorithm>
#include <cmath>

#include "quell/base/roots.h"
#include "quell/hydraulics/level_pool_rows.h"

namespace quell::hydraulics {
namespace {

constexpr std::string_view empties =
    "the outflow of the step takes more than is stored: the step is too long, or the pool empties";

/// Storage S2 with 2 S2/dt + O(S2) = indicator, both from `lowest` up.
template <class Outflow>
Outcome<double> indicated_storage(const Outflow& outflow, double indicator, double dt, double lowest) {
  const auto excess = [&](double S) { return 2.0 * S / dt + outflow(S) - indicator; };
  const double highest = 0.5 * dt * indicator * (1.0 + 1e-12);
  if (!(excess(lowest) <= 0.0)) return no_answer(empties);
  return find_root(excess, lowest, std::max(lowest, highest), 0.0);
}

double inflow_at(const RoutingInput& input, double time) {
  if (time >= input.time.back()) return input.inflow.back();
  const auto above = std::upper_bound(input.time.begin(), input.time.end(), time);
  const auto i = static_cast<std::size_t>(std::max<std::ptrdiff_t>(1, above - input.time.begin()));
  const double share = (time - input.time[i - 1]) / (input.time[i] - input.time[i - 1]);
  return input.inflow[i - 1] + share * (input.inflow[i] - input.inflow[i - 1]);
}

void put(RoutedFlood& flood, const FloodRow& row) {
  append_row(flood, row);
  const bool first = flood.time.size() == 1;
  flood.peak_inflow = first ? row.inflow : std::max(flood.peak_inflow, row.inflow);
  if (first || row.level > flood.peak_level) {
    flood.peak_level = row.level;
    flood.peak_level_time = row.time;
  }
  if (first || row.outflow > flood.peak_outflow) {
    flood.peak_outflow = row.outflow;
    flood.peak_outflow_time = row.time;
  }
}
}  // namespace

double CrestPool::outflow(double H) const noexcept {
  return H > 0.0 ? C * L * H * std::sqrt(H) : 0.0;
}

Outcome<double> storage_indication_step(const CrestPool& pool, const PoolStep& step) {
  const double indicator = step.I1 + step.I2 + 2.0 * pool.storage(step.H1) / step.dt - pool.outflow(step.H1);
  if (!(indicator >= 0.0)) return no_answer(empties);
  const auto excess = [&](double H) { return 2.0 * pool.storage(H) / step.dt + pool.outflow(H) - indicator; };
  // A0 H alone holds at most what is indicated.
  return find_root(excess, 0.0, 0.5 * step.dt * indicator / pool.A0 * (1.0 + 1e-12), 0.0);
}

Outcome<double> storage_indication_step(const StorageCurve& storage, const RatingTable& rating, const PoolStep& step) {
  const double indicator = step.I1 + step.I2 + 2.0 * storage.storage(step.H1) / step.dt - rating.at(step.H1);
  const auto outflow = [&](double S) { return rating.at(storage.level_at(S)); };
  const auto stored = indicated_storage(outflow, indicator, step.dt, storage.lowest_storage());
  if (!stored) return stored;
  return storage.level_at(*stored);
}

double shortest_response(const StorageCurve& storage, const RatingTable& rating) noexcept {
  double shortest = std::numeric_limits<double>::infinity();
  for (std::size_t i = 1; i < rating.level.size(); ++i) {
    const double stored = storage.storage(rating.level[i]) - storage.storage(rating.level[i - 1]);
    const double more = rating.discharge[i] - rating.discharge[i - 1];
    if (more > 0.0 && stored > 0.0) shortest = std::min(shortest, 2.0 * stored / more);
  }
  return shortest;
}

Outcome<IndicationRouting> route_storage_indication(const RoutingInput& input, double step) {
  if (const auto good = check_routing(input); !good) return tl::unexpected(good.error());
  if (input.stages.size() != 1) return no_answer("storage indication routes through one stage");
  if (!(step > 0.0)) return bad_input("step", step, above_zero.lowest, no_limit, "a step is longer than nothing");
  const RatingTable& rating = input.stages[0].rating;
  const StorageCurve& storage = input.storage;
  const double dead = storage.storage(rating.level.front());
  const double duration = input.time.back() - input.time.front() + input.after;
  const double steps = std::ceil(duration / step * (1.0 - 1e-12));
  if (steps > static_cast<double>(input.most_steps)) return no_answer("there are more steps than allowed");
  IndicationRouting routing;
  RoutedFlood& flood = routing.flood;
  double level = input.initial_level;
  double outflow = rating.at(level);
  double inflow = input.inflow.front();
  put(flood, {input.time.front(), inflow, outflow, level, 0});
  for (double k = 1.0; k <= steps; ++k) {
    const double time = input.time.front() + k * step;
    const double next = inflow_at(input, time);
    if (2.0 * (storage.storage(level) - dead) / step < outflow) routing.objection = step_above_storage;
    const auto found = storage_indication_step(storage, rating, {.I1 = inflow, .I2 = next, .dt = step, .H1 = level});
    if (!found) return tl::unexpected(found.error());
    const double after = rating.at(*found);
    flood.volume_in += 0.5 * step * (inflow + next);
    flood.volume_out += 0.5 * step * (outflow + after);
    level = *found;
    outflow = after;
    inflow = next;
    put(flood, {time, inflow, outflow, level, 0});
  }
  flood.storage_change = storage.storage(level) - storage.storage(input.initial_level);
  flood.balance_error = balance_of(flood);
  flood.storage_extrapolated = storage.extrapolated(flood.peak_level);
  const auto top = std::max_element(input.inflow.begin(), input.inflow.end());
  const double rise = input.time[static_cast<std::size_t>(top - input.inflow.begin())] - input.time.front();
  if (rise > 0.0 && step > rise / 5.0 * (1.0 + 1e-12))
    routing.objection = "the step is above a fifth of the time in which the inflow rises";
  if (step > shortest_response(storage, rating)) routing.objection = step_swings;
  return routing;
}

RungeKutta3 runge_kutta_3_step(const StorageCurve& storage, const RatingTable& rating, const PoolStep& step) {
  const auto rise = [&](double share, double H) {
    return step.dt * (step.I1 + share * (step.I2 - step.I1) - rating.at(H)) / storage.area(H);
  };
  RungeKutta3 result{};
  result.dH1 = rise(0.0, step.H1);
  result.dH2 = rise(1.0 / 3.0, step.H1 + result.dH1 / 3.0);
  result.dH3 = rise(2.0 / 3.0, step.H1 + 2.0 * result.dH2 / 3.0);
  result.H2 = step.H1 + result.dH1 / 4.0 + 3.0 * result.dH3 / 4.0;
  return result;
}

double linear_reservoir_step(const LinearStep& step) noexcept {
  const double ratio = step.dt / step.K;
  return (ratio * (step.I1 + step.I2) + (2.0 - ratio) * step.O1) / (2.0 + ratio);
}

double draining_head(const DrainingLake& lake, double t) noexcept {
  const double root = 1.0 / std::sqrt(lake.H0) + lake.C * lake.L * t / (2.0 * lake.A);
  return 1.0 / (root * root);
}

}  // namespace quell::hydraulics
