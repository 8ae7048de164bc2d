#include "quell/hydraulics/roll_waves.h"

#include <cmath>

#include "quell/hydraulics/chute_symbols.h"

namespace quell::hydraulics {
namespace {

double shape_times_froude(const RollWaveInput& input) noexcept {
  const double F = input.V / std::sqrt(gravity * input.d * std::cos(input.theta));
  return input.b / (input.b + 2.0 * input.d) * F;
}

}  // namespace

double vedernikov_manning(const RollWaveInput& input) noexcept {
  return 2.0 / 3.0 * shape_times_froude(input);
}

double vedernikov_chezy(const RollWaveInput& input) noexcept {
  return 0.5 * shape_times_froude(input);
}

namespace record {
namespace {
constexpr Symbol wave_in[] = {{"V", "mean velocity", dimension::velocity, above_zero},
                              {"d", "depth normal to the bed", dimension::length, above_zero},
                              {"b", "width of the channel", dimension::length, above_zero},
                              bed_angle("theta", 0.0, 1.4)};
constexpr Symbol wave_out[] = {{"Ve", "Vedernikov number: waves grow above 1", dimension::none, above_zero}};

RollWaveInput flow_of(std::span<const double> in) {
  return {.V = in[0], .d = in[1], .b = in[2], .theta = in[3]};
}
}  // namespace

const Method vedernikov_manning{
    .id = "roll_wave.vedernikov.manning",
    .title = "Vedernikov number of rectangular flow with Manning's friction",
    .equation = "Ve = 2/3*b/(b + 2*d)*V/sqrt(g*d*cos(theta))",
    .inputs = wave_in,
    .outputs = wave_out,
    .source = "chow_1959",
    .place = "instability of uniform flow",
    .provenance = Provenance::memory,
    .accuracy = "exact for small waves on uniform flow",
    .remarks = "In wide channels unstable above F = 1.5. Nearly every chute is; short ones leave the waves no length to grow.",
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      out[0] = hydraulics::vedernikov_manning(flow_of(in));
      return {};
    }};

const Method vedernikov_chezy{.id = "roll_wave.vedernikov.chezy",
                              .title = "Vedernikov number of rectangular flow with a constant friction factor",
                              .equation = "Ve = 1/2*b/(b + 2*d)*V/sqrt(g*d*cos(theta))",
                              .inputs = wave_in,
                              .outputs = wave_out,
                              .source = "chow_1959",
                              .place = "instability of uniform flow",
                              .provenance = Provenance::memory,
                              .accuracy = "exact for small waves on uniform flow",
                              .remarks = "In wide channels unstable above F = 2.",
                              .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                out[0] = hydraulics::vedernikov_chezy(flow_of(in));
                                return {};
                              }};

}  // namespace record
}  // namespace quell::hydraulics
