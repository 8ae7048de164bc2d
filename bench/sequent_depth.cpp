// Sequent depths in a batch of many different flows, as a sweep over discharges has them: time per depth.
// bench/peer_sequent_depth.py solves the same batches with SciPy.
#include <benchmark/benchmark.h>

#include <array>
#include <cmath>
#include <cstdlib>
#include <numbers>

#include "quell/hydraulics/jump.h"
#include "quell/hydraulics/jump_sections.h"

namespace {

using namespace quell;
using namespace quell::hydraulics;

constexpr std::size_t flows = 1000;

/// The i-th of `flows` numbers spread between two bounds, evenly in the logarithm and in no order; `kind` 0, 1, … gives unlike
/// sequences.
double spread(std::size_t i, int kind, double low, double high) {
  constexpr std::array steps{std::numbers::phi, std::numbers::sqrt2, std::numbers::sqrt3, std::numbers::e};
  const double turns = static_cast<double>(i + 1) * steps.at(static_cast<std::size_t>(kind));
  return low * std::pow(high / low, turns - std::floor(turns));
}

template <class Section>
struct Case {
  Section section;
  SectionJumpInput flow;
};

/// Depths from 0.08 to 0.95 of critical depth.
template <class Section>
Case<Section> supercritical(const Section& section, double discharge, std::size_t i) {
  const auto critical = critical_depth(section, discharge);
  if (!critical) std::abort();
  return {section, {.y1 = *critical * spread(i, 3, 0.08, 0.95), .discharge = discharge}};
}

template <class Section>
void solve_all(benchmark::State& state, const std::array<Case<Section>, flows>& cases) {
  for (auto _ : state) {
    double sum = 0.0;
    for (const auto& one : cases) sum += sequent_depth(one.section, one.flow).value_or(0.0);
    benchmark::DoNotOptimize(sum);
  }
  state.counters["per_depth"] = benchmark::Counter(static_cast<double>(flows),
                                                   benchmark::Counter::kIsIterationInvariantRate | benchmark::Counter::kInvert);
}

void sequent_depths_rectangular(benchmark::State& state) {
  std::array<JumpInflow, flows> cases{};
  for (std::size_t i = 0; i < flows; ++i) {
    const double y1 = spread(i, 0, 0.05, 3.0);
    cases.at(i) = {.y1 = y1, .V1 = spread(i, 1, 1.1, 15.0) * std::sqrt(gravity * y1)};
  }
  for (auto _ : state) {
    double sum = 0.0;
    for (const auto& inflow : cases) sum += sequent_depth(inflow);
    benchmark::DoNotOptimize(sum);
  }
  state.counters["per_depth"] = benchmark::Counter(static_cast<double>(flows),
                                                   benchmark::Counter::kIsIterationInvariantRate | benchmark::Counter::kInvert);
}
BENCHMARK(sequent_depths_rectangular);

void sequent_depths_trapezoidal(benchmark::State& state) {
  std::array<Case<Trapezoid>, flows> cases{};
  for (std::size_t i = 0; i < flows; ++i)
    cases.at(i) = supercritical(Trapezoid{spread(i, 0, 0.5, 100.0), spread(i, 1, 0.05, 4.0)}, spread(i, 2, 0.5, 3000.0), i);
  solve_all(state, cases);
}
BENCHMARK(sequent_depths_trapezoidal);

void sequent_depths_circular(benchmark::State& state) {
  std::array<Case<Circle>, flows> cases{};
  for (std::size_t i = 0; i < flows; ++i) {
    const double D = spread(i, 0, 0.5, 10.0);
    cases.at(i) = supercritical(Circle{D}, spread(i, 1, 0.02, 0.7) * std::sqrt(gravity * std::pow(D, 5)), i);
  }
  solve_all(state, cases);
}
BENCHMARK(sequent_depths_circular);

}  // namespace
