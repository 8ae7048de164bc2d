// Programme of the physical model: the runs, each with its flow in prototype and model, and what the instruments must span.
#include <algorithm>
#include <cmath>

#include "quell/base/constants.h"
#include "quell/base/quantity_text.h"
#include "quell/checks/safety.h"
#include "quell/hydraulics/model_rules.h"
#include "quell/hydraulics/protection.h"
#include "quell/site/gates.h"
#include "quell/site/river.h"

namespace quell::checks {
namespace {

constexpr double least_reynolds = 1e5;  ///< for depths and length of the jump
constexpr double air_reynolds = 2e5;    ///< for air, or the root of the Weber number
constexpr double air_weber_root = 140.0;
constexpr double least_depth = 0.03;   ///< m at the toe
constexpr double least_head = 0.05;    ///< m on the crest
constexpr double transducers = 200.0;  ///< Hz, upper end of what is usual
constexpr double spare = 1.25;         ///< of every range

constexpr std::string_view measure_smallest = "depth at the toe, front of the jump, levels, waves down the river";
constexpr std::string_view measure_floods =
    "front of the jump at each tailwater; mean and fluctuating pressures on floor, blocks and walls; levels along the walls; "
    "velocities over the sill; scour";
constexpr std::string_view measure_margin =
    "front of the jump at each tailwater; pressures on the floor; velocities over the sill";
constexpr std::string_view measure_sweep_out =
    "tailwater at which the front leaves the toe and the basin, lowered and raised again; velocities and scour once it is out";
constexpr std::string_view measure_drowned = "velocities along floor and sill, return flow at the surface, waves";
constexpr std::string_view measure_degraded = "front of the jump, drop over the sill, scour at the cutoff with the bed lowered";
constexpr std::string_view measure_gates =
    "return currents, stones drawn into the basin, front of the jump in the loaded bay, pressures, scour on one side";

std::string lacking(const BasinView& view, const ModelRun& run, double scale, double reservoir_level) {
  std::string text;
  const auto add = [&](bool met, std::string_view words) {
    if (met) text += (text.empty() ? "" : "; ") + std::string(words);
  };
  add(run.reynolds < least_reynolds, "friction: jump too low and short");
  add(run.model_y1 < least_depth, "surface tension at the toe");
  add(run.reynolds < air_reynolds && run.weber_root < air_weber_root, "air too little");
  add((reservoir_level - view.site.crest.crest_level) / scale < least_head, "low head on the crest");
  return text.empty() ? "none of those judged" : text;
}

/// Tailwater levels of a flow in all cases, as the design finds them; false where the river's table does not reach.
bool tailwater_of(const BasinView& view, double discharge, double reservoir_level, std::array<double, 3>& levels) {
  for (const auto tailwater_case : site::tailwater_cases) {
    const bool guaranteed_only = tailwater_case == site::TailwaterCase::low;
    const double river = discharge + site::outlets_discharge(view.site, reservoir_level, guaranteed_only);
    const auto level = site::tailwater_level(view.site.river, river, tailwater_case);
    if (!level) return false;
    levels[site::index_of(tailwater_case)] = *level;
  }
  return true;
}

/// A run without its tailwater.
ModelRun run_of(const BasinView& view, const ModelAdvice& model, std::string name, const site::ToeFlow& toe, double discharge,
                std::string_view measure) {
  const auto scales = hydraulics::froude_scales(model.scale);
  ModelRun run{.name = std::move(name), .discharge = discharge, .y1 = toe.y1, .V1 = toe.V1, .F1 = toe.F1, .measure = measure};
  const double modelled = model.is_section ? toe.unit_discharge * model.section_width * model.scale : discharge;
  run.model_discharge = modelled / scales.discharge;
  run.model_y1 = toe.y1 / model.scale;
  run.model_V1 = toe.V1 / scales.velocity;
  run.model_F1 = run.model_V1 / std::sqrt(gravity * run.model_y1);
  run.reynolds = hydraulics::jump_reynolds_number(run.model_V1 * run.model_y1, water_viscosity);
  run.weber_root = std::sqrt(water_density * run.model_V1 * run.model_V1 * run.model_y1 / surface_tension);
  run.effects = lacking(view, run, model.scale, toe.reservoir_level);
  return run;
}

void set_depths(const BasinView& view, double scale, ModelRun& run) {
  for (std::size_t i = 0; i < run.model_depth.size(); ++i)
    run.model_depth[i] = (run.tailwater_level[i] - view.apron_level) / scale;
}

void add_run(const BasinView& view, ModelAdvice& model, ModelRun run, double reservoir_level) {
  if (!tailwater_of(view, run.discharge, reservoir_level, run.tailwater_level)) return;
  set_depths(view, model.scale, run);
  model.runs.push_back(std::move(run));
}

void add_run_at(const BasinView& view, ModelAdvice& model, ModelRun run, double level) {
  run.one_tailwater = true;
  run.tailwater_level.fill(level);
  set_depths(view, model.scale, run);
  model.runs.push_back(std::move(run));
}

template <class Measure>
const TailwaterState& least_of(const BasinView& view, Measure measure) {
  return *std::min_element(view.states.begin(), view.states.end(),
                           [&](const TailwaterState& a, const TailwaterState& b) { return measure(a) < measure(b); });
}

/// The discharges that name themselves; one run where two of them are the same.
void add_discharges(const BasinView& view, ModelAdvice& model) {
  const auto margin = [](const TailwaterState& state) { return state.available_depth - state.required_depth; };
  const auto near = [&](double discharge) {
    return [discharge](const TailwaterState& state) { return std::abs(state.toe->discharge - discharge); };
  };
  const std::pair<std::string_view, const TailwaterState*> wanted[] = {
      {"smallest discharge", &least_of(view, [](const TailwaterState& state) { return state.toe->discharge; })},
      {"design flood", &least_of(view, near(view.site.discharges.design_flood))},
      {"check flood", &least_of(view, near(view.site.discharges.check_flood))},
      {"governing discharge", &view.states.front()},
      {"smallest margin of tailwater", &least_of(view, margin)}};
  for (const auto& [name, state] : wanted) {
    const double discharge = state->toe->discharge;
    const auto same = std::find_if(model.runs.begin(), model.runs.end(),
                                   [&](const ModelRun& run) { return std::abs(run.discharge - discharge) < 1e-9 * discharge; });
    if (same != model.runs.end()) {
      same->name += ", " + std::string(name);
      continue;
    }
    const auto measure = name == "smallest discharge"                      ? measure_smallest
                         : name == "design flood" || name == "check flood" ? measure_floods
                                                                           : measure_margin;
    add_run(view, model, run_of(view, model, std::string(name), *state->toe, discharge, measure), state->toe->reservoir_level);
  }
}

/// Tailwater lowered until the jump leaves, raised until it drowns, and the river with its bed sunk.
void add_tailwater_tests(const BasinView& view, ModelAdvice& model) {
  const auto reserve = [](const TailwaterState& state) { return state.available_depth - state.need.sweep_out; };
  const auto& swept = least_of(view, reserve);
  const auto run = [&](std::string name, const TailwaterState& state, std::string_view measure) {
    return run_of(view, model, std::move(name), *state.toe, state.toe->discharge, measure);
  };
  if (swept.need.sweep_out > 0.0)
    add_run_at(view, model, run("sweep-out: lowered until the jump leaves", swept, measure_sweep_out),
               view.apron_level + swept.need.sweep_out);
  const auto& deepest = least_of(view, [](const TailwaterState& state) { return -state.available_depth / state.toe->y2; });
  add_run_at(view, model, run("drowned: highest tailwater over sequent depth", deepest, measure_drowned),
             deepest.tailwater_level);
  const double sunk = view.site.river.bed_degradation;
  if (!(sunk > 0.0)) return;
  const auto& low = least_of(view, [](const TailwaterState& state) { return state.available_depth - state.required_depth; });
  add_run_at(view, model, run("river bed sunk by " + quantity_token(sunk, dimension::length), low, measure_degraded),
             low.tailwater_level);
}

/// Patterns outside the operation and uneven ones, each at the level with the least reserve against sweeping out.
void add_gate_patterns(const BasinView& view, ModelAdvice& model) {
  if (model.is_section) return;
  for (std::size_t i = 0; i < view.patterns.size(); ++i) {
    const auto& pattern = view.patterns[i];
    if (!pattern.is_check && !(pattern.largest_step > 0.0)) continue;
    const bool is_worst = std::all_of(view.patterns.begin(), view.patterns.end(), [&](const PatternState& other) {
      return other.name != pattern.name || other.sweep_out_reserve >= pattern.sweep_out_reserve;
    });
    const bool is_first = std::none_of(
        view.patterns.begin(), view.patterns.begin() + static_cast<std::ptrdiff_t>(i), [&](const PatternState& other) {
          return other.name == pattern.name && other.sweep_out_reserve <= pattern.sweep_out_reserve;
        });
    if (!is_worst || !is_first) continue;
    add_run(view, model,
            run_of(view, model, "gates: " + std::string(pattern.name), *pattern.toe, pattern.discharge, measure_gates),
            pattern.toe->reservoir_level);
  }
}

void set_ranges(const BasinView& view, ModelAdvice& model) {
  auto& ranges = model.ranges;
  const auto& slab = view.site.slab;
  double least = no_limit, most = -no_limit;
  ranges.least_discharge = no_limit;
  for (const auto& run : model.runs) {
    ranges.least_discharge = std::min(ranges.least_discharge, run.model_discharge);
    ranges.largest_discharge = std::max(ranges.largest_discharge, spare * run.model_discharge);
    ranges.fastest = std::max(ranges.fastest, spare * run.model_V1);
    const double deepest = *std::max_element(run.model_depth.begin(), run.model_depth.end());
    ranges.deepest = std::max(ranges.deepest, spare * deepest);
    const double head = run.model_V1 * run.model_V1 / (2.0 * gravity);
    least = std::min(least, water_unit_weight * (run.model_y1 - slab.suction * head));
    most = std::max(most, water_unit_weight * (deepest + (slab.pressure_range - slab.suction) * head));
  }
  if (!dissipators::makes_jump(view.type.action)) return;
  const double more = 0.5 * (spare - 1.0) * (most - least);
  ranges.least_pressure = least - more;
  ranges.largest_pressure = most + more;
  ranges.frequency = transducers;
}

}  // namespace

void plan_model_runs(const BasinView& view, ModelAdvice& model) {
  model.runs.reserve(20);
  add_discharges(view, model);
  if (dissipators::makes_jump(view.type.action)) add_tailwater_tests(view, model);
  add_gate_patterns(view, model);
  if (!model.runs.empty()) set_ranges(view, model);
}

}  // namespace quell::checks
