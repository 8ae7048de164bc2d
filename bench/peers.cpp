// The same work by quell and by the GNU Scientific Library, side by side in one run. bench/peer_*.py add SciPy's times.
//
// Both solve the same equations to the same tolerance; each pair first agrees in its answer, or the run stops.
#include <benchmark/benchmark.h>
#include <gsl/gsl_errno.h>
#include <gsl/gsl_odeiv2.h>
#include <gsl/gsl_roots.h>

#include <array>
#include <cmath>
#include <cstdlib>
#include <vector>

#include "quell/base/constants.h"
#include "quell/hydraulics/chute_profile.h"
#include "quell/hydraulics/energy.h"
#include "quell/hydraulics/friction.h"
#include "quell/hydraulics/jump_sections.h"
#include "quell/hydraulics/section.h"

namespace {

using namespace quell;
using namespace quell::hydraulics;

constexpr std::size_t batch = 256;

/// Supercritical flow in a channel 3 m wide with sides 2:1, from 1.5 to 8 in Froude number.
std::array<SectionJumpInput, batch> trapezoidal_inflows() {
  std::array<SectionJumpInput, batch> inflows{};
  const Trapezoid section{3.0, 2.0};
  for (std::size_t i = 0; i < batch; ++i) {
    const double share = static_cast<double>(i) / static_cast<double>(batch - 1);
    const double y1 = 0.3 + 0.9 * share;
    const double froude = 1.5 + 6.5 * std::fmod(7.0 * share, 1.0);
    const double area = section.area(y1);
    inflows[i] = {y1, froude * std::sqrt(gravity * area * area * area / section.top_width(y1))};
  }
  return inflows;
}

struct Momentum {
  Trapezoid section;
  double discharge;
  double target;
};

double gsl_excess(double y, void* data) {
  const auto& m = *static_cast<const Momentum*>(data);
  return momentum_function(m.section, m.discharge, y) - m.target;
}

/// Bracketed by critical depth below and doubling above, Brent's method, to 1e-12.
double gsl_sequent_depth(gsl_root_fsolver* solver, const Trapezoid& section, const SectionJumpInput& in) {
  Momentum data{section, in.discharge, momentum_function(section, in.discharge, in.y1)};
  double lower = in.y1 * 1.0001;
  double upper = 2.0 * in.y1;
  while (gsl_excess(upper, &data) < 0.0) {
    lower = upper;
    upper *= 2.0;
  }
  gsl_function f{&gsl_excess, &data};
  gsl_root_fsolver_set(solver, &f, lower, upper);
  for (int i = 0; i < 100; ++i) {
    gsl_root_fsolver_iterate(solver);
    if (gsl_root_test_interval(gsl_root_fsolver_x_lower(solver), gsl_root_fsolver_x_upper(solver), 0.0, 1e-12) == GSL_SUCCESS)
      break;
  }
  return gsl_root_fsolver_root(solver);
}

void sequent_depth_trapezoidal(benchmark::State& state) {
  const auto inflows = trapezoidal_inflows();
  const Trapezoid section{3.0, 2.0};
  for (auto _ : state)
    for (const auto& inflow : inflows) benchmark::DoNotOptimize(sequent_depth(section, inflow));
  state.SetItemsProcessed(state.iterations() * static_cast<std::int64_t>(batch));
}
BENCHMARK(sequent_depth_trapezoidal);

void sequent_depth_trapezoidal_gsl(benchmark::State& state) {
  const auto inflows = trapezoidal_inflows();
  const Trapezoid section{3.0, 2.0};
  gsl_root_fsolver* solver = gsl_root_fsolver_alloc(gsl_root_fsolver_brent);
  for (const auto& inflow : inflows) {
    const auto ours = sequent_depth(section, inflow);
    if (!ours || std::abs(*ours - gsl_sequent_depth(solver, section, inflow)) > 1e-9 * *ours) std::abort();
  }
  for (auto _ : state)
    for (const auto& inflow : inflows) benchmark::DoNotOptimize(gsl_sequent_depth(solver, section, inflow));
  state.SetItemsProcessed(state.iterations() * static_cast<std::int64_t>(batch));
  gsl_root_fsolver_free(solver);
}
BENCHMARK(sequent_depth_trapezoidal_gsl);

/// 20 m3/s a metre down 150 m at 30 degrees, from a depth of 2 m; 1e-6 m in the energy level is closer than 1e-6 m in the
/// depth.
constexpr double unit_discharge = 20.0;
const ChuteStretch& stretch() {
  static const ChuteStretch value{.discharge = unit_discharge * 10.0,
                                  .start_width = 10.0,
                                  .start_level = 75.0,
                                  .sine = 0.5,
                                  .cosine = std::sqrt(0.75),
                                  .ks = 0.0005,
                                  .length = 150.0,
                                  .tolerance = 1e-6};
  return value;
}
double start_energy() {
  return stretch().start_level + 2.0 * stretch().cosine + 100.0 / (2.0 * gravity);
}

void chute_profile(benchmark::State& state) {
  std::vector<EnergyNode> nodes;
  for (auto _ : state) {
    nodes.clear();
    benchmark::DoNotOptimize(integrate_energy(stretch(), start_energy(), nodes));
  }
  state.counters["nodes"] = static_cast<double>(nodes.size());
}
BENCHMARK(chute_profile)->Unit(benchmark::kMicrosecond);

int gsl_gradient(double x, const double energy[], double slope[], void*) {
  const auto gradient = energy_gradient(stretch(), x, energy[0]);
  if (!gradient) return GSL_EDOM;
  slope[0] = *gradient;
  return GSL_SUCCESS;
}

/// The same equation, with quell's own right-hand side, by GSL's Dormand-Prince pair of order 8; 1e-6 m in the energy level.
double gsl_profile() {
  gsl_odeiv2_system system{&gsl_gradient, nullptr, 1, nullptr};
  gsl_odeiv2_driver* driver = gsl_odeiv2_driver_alloc_y_new(&system, gsl_odeiv2_step_rk8pd, 1.0, 1e-6, 0.0);
  double x = 0.0;
  double energy = start_energy();
  gsl_odeiv2_driver_apply(driver, &x, stretch().length, &energy);
  gsl_odeiv2_driver_free(driver);
  return energy;
}

void chute_profile_gsl(benchmark::State& state) {
  std::vector<EnergyNode> nodes;
  if (!integrate_energy(stretch(), start_energy(), nodes)) std::abort();
  if (std::abs(nodes.back().energy_level - gsl_profile()) > 1e-4) std::abort();
  for (auto _ : state) benchmark::DoNotOptimize(gsl_profile());
}
BENCHMARK(chute_profile_gsl)->Unit(benchmark::kMicrosecond);

}  // namespace
