#include "quell/site/flood_study.h"

#include <algorithm>
#include <boost/math/distributions/normal.hpp>
#include <cmath>
#include <functional>

#include "quell/hydraulics/flood_record.h"
#include "quell/hydraulics/flood_shapes.h"
#include "quell/hydraulics/level_pool.h"
#include "quell/hydraulics/level_pool_steps.h"
#include "quell/hydraulics/reservoir_storage.h"
#include "quell/site/gates.h"
#include "quell/site/reservoir.h"

namespace quell::site {
namespace {

constexpr double control_band = 0.1;  ///< m above the held level over which gates open fully where no rule is given

/// Discharge over level while the gates stand at one pattern; closed where it is null.
double total_discharge(const Site& site, const GatePattern* pattern, double level) {
  double spillway = 0.0;
  if (!site.gates.given()) spillway = crest_discharge(site.crest, level - site.crest.crest_level);
  if (pattern != nullptr) spillway = pattern_discharge(site, *pattern, level);
  return spillway + outlets_discharge(site, level, false);
}

/// Levels from `lowest` to `highest`, closest above each level at which water begins to flow, where a rating curves most.
std::vector<double> rating_levels(const Site& site, double lowest, double highest) {
  constexpr int parts = 160;
  std::vector<double> levels{lowest, highest};
  const auto add_from = [&](double start) {
    if (start >= highest) return;
    const double from = std::max(start, lowest);
    for (int i = 0; i <= parts; ++i) {
      const double share = static_cast<double>(i) / parts;
      levels.push_back(from + (highest - from) * share * share);
    }
  };
  add_from(site.crest.crest_level);
  for (const auto& outlet : site.outlets)
    add_from(outlet.has_tail_level ? std::max(outlet.tail_level, outlet.centre_level) : outlet.centre_level);
  std::sort(levels.begin(), levels.end());
  levels.erase(std::unique(levels.begin(), levels.end(), [](double a, double b) { return b - a < 1e-6; }), levels.end());
  return levels;
}

/// Adds a row. Where the water begins to touch a gate, the formulas of free and of gated flow do not quite meet: more water
/// above never passes less.
void add_row(hydraulics::RatingTable& table, double level, double discharge) {
  const double before = table.discharge.empty() ? 0.0 : table.discharge.back();
  table.level.push_back(level);
  table.discharge.push_back(std::max(before, discharge));
}

hydraulics::RatingTable rating_of(const Site& site, const GatePattern* pattern, std::span<const double> levels) {
  hydraulics::RatingTable table;
  for (const double level : levels) add_row(table, level, total_discharge(site, pattern, level));
  return table;
}

/// Gates that hold the reservoir: shut at the held level, and opening in proportion over the band above it.
hydraulics::RatingTable holding_rating(const Site& site, const GatePattern& open, std::vector<double> levels) {
  const double held = site.gates.held_level;
  levels.push_back(held);
  levels.push_back(held + control_band);
  std::sort(levels.begin(), levels.end());
  levels.erase(std::unique(levels.begin(), levels.end(), [](double a, double b) { return b - a < 1e-9; }), levels.end());
  hydraulics::RatingTable table;
  for (const double level : levels) {
    const double share = std::clamp((level - held) / control_band, 0.0, 1.0);
    const double spillway = share * pattern_discharge(site, open, level);
    add_row(table, level, spillway + outlets_discharge(site, level, false));
  }
  return table;
}

std::vector<hydraulics::OutflowStage> stages_of(const Site& site, std::span<const double> levels) {
  const auto& gates = site.gates;
  std::vector<hydraulics::OutflowStage> stages;
  if (!gates.given()) {
    stages.push_back({.rating = rating_of(site, nullptr, levels)});
  } else if (gates.rules.empty()) {
    const GatePattern open{
        .name = {}, .opening = std::vector<double>(static_cast<std::size_t>(gates.count), gates.full_opening), .level = {}};
    stages.push_back({.rating = holding_rating(site, open, {levels.begin(), levels.end()})});
  } else {
    stages.push_back({.rating = rating_of(site, nullptr, levels)});
    for (const auto& rule : gates.rules) {
      stages.back().up_level = rule.open_level;
      stages.push_back({.rating = rating_of(site, &gates.patterns[rule.pattern], levels), .down_level = rule.close_level});
    }
  }
  return stages;
}

/// The stages of gates that hold the level as well as they can with the first bay shut.
std::vector<hydraulics::OutflowStage> one_shut_stages(const Site& site, std::span<const double> levels) {
  GatePattern rest{.name = {},
                   .opening = std::vector<double>(static_cast<std::size_t>(site.gates.count), site.gates.full_opening),
                   .level = {}};
  rest.opening.front() = 0.0;
  std::vector<hydraulics::OutflowStage> stages;
  stages.push_back({.rating = holding_rating(site, rest, {levels.begin(), levels.end()})});
  return stages;
}

double initial_level(const Site& site) {
  if (site.reservoir.has_initial_level) return site.reservoir.initial_level;
  return site.gates.given() ? site.gates.held_level : site.crest.crest_level;
}

Outcome<hydraulics::RecordFit> fit_of(const FloodRecord& record) {
  hydraulics::RecordOptions options{
      .law = record.law == FrequencyLaw::gumbel ? hydraulics::FloodLaw::gumbel : hydraulics::FloodLaw::log_pearson_3,
      .regional_error = record.regional_skew_error};
  if (record.has_regional_skew) options.regional_skew = record.regional_skew;
  return hydraulics::fit_record(record.yearly_flood, options);
}

double plotting_constant(PlottingPosition plotting) {
  switch (plotting) {
    case PlottingPosition::cunnane: return 0.40;
    case PlottingPosition::weibull: return 0.0;
    case PlottingPosition::hazen: return 0.5;
    case PlottingPosition::gringorten: return 0.44;
    case PlottingPosition::blom: return 0.375;
  }
  return 0.40;
}

/// The shape down to a thousandth of its peak above the base flow.
hydraulics::FloodShape shape_of(const Inflow& inflow, double peak) {
  double end = 5.0;  // times to peak, where the dimensionless unit hydrograph ends
  if (inflow.shape == InflowShape::gamma)
    while (hydraulics::gamma_shape(end, inflow.exponent) > 0.001 && end < 200.0) end += 0.5;
  return {.peak = peak,
          .time_to_peak = inflow.time_to_peak,
          .base_flow = inflow.base_flow,
          .exponent = inflow.exponent,
          .duration = end * inflow.time_to_peak,
          .step = inflow.time_to_peak / 50.0};
}

/// Times and flows of an inflow, with the climate factor.
Outcome<hydraulics::FloodSeries> series_of(const Site& site, const Inflow& inflow, RoutedInflow& routed) {
  hydraulics::FloodSeries series{inflow.time, inflow.flow};
  if (inflow.shape != InflowShape::measured) {
    double peak = inflow.peak;
    if (!(peak > 0.0)) {
      const auto fit = fit_of(site.floods.record);
      if (!fit) return tl::unexpected(fit.error());
      peak = fit->quantile(inflow.return_period);
      routed.peak_from_record = true;
    }
    if (!(peak > inflow.base_flow)) return no_answer("the peak of an inflow lies below its base flow");
    series = inflow.shape == InflowShape::gamma ? hydraulics::gamma_flood(shape_of(inflow, peak))
                                                : hydraulics::dimensionless_flood(shape_of(inflow, peak));
  }
  for (double& flow : series.flow) flow *= site.floods.climate_factor;
  return series;
}

/// The reservoir with what it needs to route any inflow up to a peak.
struct Basin {
  hydraulics::StorageCurve storage;
  std::vector<hydraulics::OutflowStage> stages;
  std::vector<hydraulics::OutflowStage> one_shut;  ///< empty without gates
  std::size_t first_stage = 0;
  double start = 0.0;  ///< level, m
};

/// Above the level at which the free crest would pass the whole peak, an inflow cannot raise the reservoir, unless a gate is
/// shut.
double highest_level(const Site& site, double peak) {
  const auto head = crest_head(site.crest, peak);
  const double free = site.crest.crest_level + (head ? *head : 50.0);
  const double held = site.gates.given() ? site.gates.held_level : free;
  const double level = std::max({free, held, site.reservoir.level.back()});
  return level + 0.5 * (level - site.crest.crest_level) + 1.0;
}

Outcome<Basin> basin_of(const Site& site, double peak) {
  const auto& reservoir = site.reservoir;
  if (!reservoir.given()) return no_answer("an inflow needs the storage of the reservoir to be routed");
  auto storage = reservoir.area.empty() ? hydraulics::StorageCurve::from_storages(reservoir.level, reservoir.storage)
                                        : hydraulics::StorageCurve::from_areas(reservoir.level, reservoir.area);
  if (!storage) return tl::unexpected(storage.error());
  const auto levels = rating_levels(site, storage->lowest_level(), highest_level(site, peak));
  Basin basin{std::move(*storage), stages_of(site, levels), {}, 0, initial_level(site)};
  if (site.gates.count > 1) basin.one_shut = one_shut_stages(site, levels);
  for (const auto& rule : site.gates.rules)
    if (basin.start >= rule.open_level) ++basin.first_stage;
  return basin;
}

/// The classical method beside the integration, where one setting holds throughout.
void add_table_check(const Basin& basin, const hydraulics::RoutingInput& input, RoutedInflow& routed) {
  if (basin.stages.size() > 1) return;
  const double span = input.time.back() - input.time.front();
  const double steps = std::max(200.0, std::ceil(span / std::max(1.0, (routed.peak_inflow_time - input.time.front()) / 20.0)));
  const auto table = hydraulics::route_storage_indication(input, span / steps);
  if (!table) return;
  routed.table_peak_level = table->flood.peak_level;
  routed.table_peak_outflow = table->flood.peak_outflow;
}

Outcome<RoutedInflow> route(const Site& site, const Inflow& inflow, const Basin& basin, const hydraulics::FloodSeries& series,
                            RoutedInflow routed) {
  hydraulics::RoutingInput input{.storage = basin.storage,
                                 .time = series.time,
                                 .inflow = series.flow,
                                 .stages = basin.stages,
                                 .first_stage = basin.first_stage,
                                 .initial_level = basin.start,
                                 .tolerance = 1e-5};
  auto flood = hydraulics::route_level_pool(input);
  if (!flood) return tl::unexpected(flood.error());
  routed.name = inflow.name;
  routed.return_period = inflow.return_period;
  routed.peak_inflow = flood->peak_inflow;
  const auto highest = std::max_element(series.flow.begin(), series.flow.end());
  routed.peak_inflow_time = series.time[static_cast<std::size_t>(highest - series.flow.begin())];
  routed.peak_outflow = flood->peak_outflow;
  routed.peak_level = flood->peak_level;
  routed.peak_level_time = flood->peak_level_time;
  routed.volume_in = flood->volume_in;
  routed.volume_out = flood->volume_out;
  routed.storage_change = flood->storage_change;
  routed.balance_error = flood->balance_error;
  routed.gate_moves = flood->stage_changes;
  routed.storage_extrapolated = flood->storage_extrapolated;
  for (std::size_t i = 0; i < flood->outflow.size(); ++i)
    routed.peak_spillway = std::max(routed.peak_spillway, flood->outflow[i] - outlets_discharge(site, flood->level[i], false));
  add_table_check(basin, input, routed);
  routed.time = std::move(flood->time);
  routed.inflow = std::move(flood->inflow);
  routed.outflow = std::move(flood->outflow);
  routed.level = std::move(flood->level);
  if (!basin.one_shut.empty()) {
    input.stages = basin.one_shut;
    input.first_stage = 0;
    const auto shut = hydraulics::route_level_pool(input);
    if (!shut) return tl::unexpected(shut.error());
    routed.one_shut_peak_level = shut->peak_level;
  }
  return routed;
}

}  // namespace

Outcome<FrequencyStudy> study_record(const FloodRecord& record) {
  const auto fit = fit_of(record);
  if (!fit) return tl::unexpected(fit.error());
  FrequencyStudy study{.law = record.law,
                       .years = static_cast<int>(record.yearly_flood.size()),
                       .mean = fit->mean,
                       .deviation = fit->deviation,
                       .skew = fit->station_skew,
                       .skew_used = fit->weighted_skew,
                       .confidence = record.confidence};
  study.plotted_flood = record.yearly_flood;
  std::sort(study.plotted_flood.begin(), study.plotted_flood.end(), std::greater<>());
  const double N = static_cast<double>(study.years);
  for (int rank = 1; rank <= study.years; ++rank)
    study.plotted_period.push_back(1.0 / hydraulics::plotting_position(rank, N, plotting_constant(record.plotting)));
  const double z = boost::math::quantile(boost::math::normal_distribution<double>(), 0.5 + 0.5 * record.confidence);
  constexpr int points = 60;
  for (int i = 0; i <= points; ++i) {
    const double period = 1.1 * std::pow(longest_drawn_period / 1.1, static_cast<double>(i) / points);
    const auto limits = fit->confidence_limits(period, z);
    if (!limits) return tl::unexpected(limits.error());
    study.period.push_back(period);
    study.quantile.push_back(fit->quantile(period));
    study.lower.push_back(limits->lower);
    study.upper.push_back(limits->upper);
  }
  for (const double flood : study.plotted_flood)
    if (flood > fit->high_outlier || flood < fit->low_outlier) study.outliers.push_back(flood);
  return study;
}

Outcome<std::vector<RoutedInflow>> route_inflows(const Site& site) {
  std::vector<RoutedInflow> all;
  for (const auto& inflow : site.floods.inflows) {
    RoutedInflow routed;
    const auto series = series_of(site, inflow, routed);
    if (!series) return tl::unexpected(series.error());
    const auto basin = basin_of(site, *std::max_element(series->flow.begin(), series->flow.end()));
    if (!basin) return tl::unexpected(basin.error());
    auto done = route(site, inflow, *basin, *series, std::move(routed));
    if (!done) return tl::unexpected(done.error());
    all.push_back(std::move(*done));
  }
  return all;
}

}  // namespace quell::site
