// Micro benchmarks of the engine, from one formula to a whole design. bench/peer_scipy.py does the work of whole_design in
// Python and reads this program's JSON for the ratio.
#include <benchmark/benchmark.h>

#include <array>
#include <cstdlib>

#include "quell/base/quantity_text.h"
#include "quell/base/units.h"
#include "quell/design/design.h"
#include "quell/design/discharge_cases.h"
#include "quell/hydraulics/jump.h"
#include "quell/io/result_json.h"
#include "quell/io/site_file.h"
#include "quell/site/chute_flow.h"
#include "quell/site/reservoir.h"
#include "quell/site/toe.h"

namespace {

using namespace quell;

constexpr const char* example_path = QUELL_ROOT "/examples/01-gravity-dam/site.toml";
constexpr int discharges = 40;
constexpr std::array<std::string_view, 3> type_ids{"type_1", "type_2", "type_3"};

/// The first example with a fixed width and 40 discharges, whatever the file says: every run does the same work.
const site::Site& example() {
  static const site::Site site = [] {
    const auto file = io::read_site_file(example_path);
    if (!file.good()) std::abort();
    site::Site read = file.site;
    read.basin.width_is_free = false;
    read.basin.width = read.chute.end_width;
    read.discharges.steps = discharges;
    read.discharges.floods.clear();
    return read;
  }();
  return site;
}

const site::ChuteGeometry& example_geometry() {
  static const auto geometry = site::chute_geometry(example(), example().river.bed_level - 10.0);
  if (!geometry) std::abort();
  return *geometry;
}

double level_for(double discharge) {
  const auto head = site::crest_head(example().crest, discharge);
  if (!head) std::abort();
  return example().crest.crest_level + *head;
}

void sequent_depth(benchmark::State& state) {
  double velocity = 12.0;
  for (auto _ : state) {
    benchmark::DoNotOptimize(velocity);
    benchmark::DoNotOptimize(hydraulics::sequent_depth({.y1 = 0.8, .V1 = velocity}));
  }
}
BENCHMARK(sequent_depth);

void crest_head(benchmark::State& state) {
  double discharge = example().discharges.design_flood;
  for (auto _ : state) {
    benchmark::DoNotOptimize(discharge);
    benchmark::DoNotOptimize(site::crest_head(example().crest, discharge));
  }
}
BENCHMARK(crest_head);

void toe_flow(benchmark::State& state) {
  const double apron_level = example().river.bed_level - 3.0;
  double energy_level = apron_level + 40.0;
  for (auto _ : state) {
    benchmark::DoNotOptimize(energy_level);
    benchmark::DoNotOptimize(site::toe_flow(example().discharges.design_flood, example().basin.width, energy_level,
                                            energy_level + 1.0, apron_level));
  }
}
BENCHMARK(toe_flow);

/// Argument: thousandths of the check flood. A small flow is fully turbulent early and is integrated; a large one is not.
void chute_flow(benchmark::State& state) {
  const double discharge = example().discharges.check_flood * static_cast<double>(state.range(0)) / 1000.0;
  const double level = level_for(discharge);
  for (auto _ : state) benchmark::DoNotOptimize(site::ChuteFlow::compute(example_geometry(), discharge, level));
}
BENCHMARK(chute_flow)->Arg(20)->Arg(200)->Arg(1000);

std::array<const dissipators::Dissipator*, type_ids.size()> three_types() {
  std::array<const dissipators::Dissipator*, type_ids.size()> types{};
  for (std::size_t i = 0; i < types.size(); ++i) {
    types[i] = dissipators::find_dissipator(type_ids[i]);
    if (types[i] == nullptr) std::abort();
  }
  return types;
}

/// 40 discharges, 3 tailwater cases, 3 types: apron levels, structures, findings. Items are cases.
void whole_design(benchmark::State& state) {
  const auto types = three_types();
  std::size_t cases = 0;
  for (auto _ : state) {
    const auto result = design::run_design(example(), {.types = types});
    if (!result) {
      state.SkipWithError("the example has no design");
      return;
    }
    cases = 0;
    for (const auto& option : result->options) cases += option.cases.size();
    benchmark::DoNotOptimize(result);
  }
  state.counters["cases"] = static_cast<double>(cases);
}
BENCHMARK(whole_design)->Unit(benchmark::kMillisecond);

/// The same design with the moving water as text for the page: what `quell serve` adds to it.
void page_json(benchmark::State& state) {
  const auto types = three_types();
  const auto result = design::run_design(example(), {.types = types, .with_moving_water = true});
  const auto file = io::read_site_file(example_path);
  if (!result) return state.SkipWithError("the example has no design");
  std::size_t bytes = 0;
  for (auto _ : state) {
    const std::string text =
        io::page_json(file, *result, [&](std::string_view words) { return with_units(words, file.site.units); });
    bytes = text.size();
    benchmark::DoNotOptimize(bytes);
  }
  state.counters["bytes"] = static_cast<double>(bytes);
}
BENCHMARK(page_json)->Unit(benchmark::kMillisecond);

/// Every type of the catalogue over 40 discharges and 3 tailwater cases, each with its level set and its findings; the argument
/// says whether slab, walls, foundation, river and model are checked too, so that the difference of the two rows is their cost.
void whole_catalogue(benchmark::State& state) {
  std::size_t cases = 0;
  for (auto _ : state) {
    const auto result = design::run_design(example(), {.types = dissipators::catalogue(), .with_safety = state.range(0) != 0});
    if (!result) {
      state.SkipWithError("the example has no design");
      return;
    }
    cases = 0;
    for (const auto& option : result->options) cases += option.cases.size();
    benchmark::DoNotOptimize(result);
  }
  state.counters["cases"] = static_cast<double>(cases);
}
BENCHMARK(whole_catalogue)->ArgName("safety")->Arg(0)->Arg(1)->Unit(benchmark::kMillisecond);

/// Tailwater, length and every element of one type for one flow whose toe state is known.
void size_one_type(benchmark::State& state) {
  const auto& type = *dissipators::catalogue()[static_cast<std::size_t>(state.range(0))];
  const auto& site = example();
  const auto setting = design::setting_of(site, 40.0);
  const auto flow = site::toe_flow(400.0, 40.0, 112.0, 112.0, 98.0);
  if (!flow) std::abort();
  const std::array<double, 3> levels{104.0, 104.5, 105.0};
  const dissipators::SizingInput input{
      .setting = setting, .flows = std::span(&*flow, 1), .tailwater_levels = std::span(&levels, 1), .apron_level = 98.0};
  for (auto _ : state) {
    benchmark::DoNotOptimize(type.tailwater_need(*flow, setting));
    benchmark::DoNotOptimize(type.size(input, nullptr));
  }
  state.SetLabel(std::string(type.record().id.view()));
}
BENCHMARK(size_one_type)->DenseRange(0, 15);

}  // namespace
