#include "quell/hydraulics/flood_routing.h"

#include <algorithm>

namespace quell::hydraulics {

double excess_rain(const RainBlock& block, double initial_loss, double phi) noexcept {
  return std::max(0.0, block.P - initial_loss - phi * block.dt);
}

double direct_flow(std::span<const double> excess, std::span<const double> unit_ordinates, std::size_t i) noexcept {
  double sum = 0.0;
  for (std::size_t k = 0; k < excess.size() && k <= i; ++k)
    if (i - k < unit_ordinates.size()) sum += excess[k] * unit_ordinates[i - k];
  return sum;
}

MuskingumWeights muskingum_weights(const MuskingumReach& reach) noexcept {
  const double whole = reach.K * (1.0 - reach.x) + 0.5 * reach.dt;
  return {.C0 = (0.5 * reach.dt - reach.K * reach.x) / whole,
          .C1 = (0.5 * reach.dt + reach.K * reach.x) / whole,
          .C2 = (reach.K * (1.0 - reach.x) - 0.5 * reach.dt) / whole};
}

double muskingum_step(const MuskingumReach& reach, const MuskingumFlows& flows) noexcept {
  const auto weights = muskingum_weights(reach);
  return weights.C0 * flows.I2 + weights.C1 * flows.I1 + weights.C2 * flows.O1;
}

namespace record {
namespace {
constexpr Range not_negative{0.0, no_limit};
constexpr Symbol rain_in[] = {{"P", "depth of rain in the block", dimension::length, not_negative},
                              {"dt", "length of the block", dimension::time, above_zero},
                              {"phi", "constant loss rate", dimension::velocity, not_negative},
                              {"Ia", "initial loss within the block", dimension::length, not_negative, 0.0}};
constexpr Symbol flow_in[] = {{"U1", "unit hydrograph at the time", dimension::unit_discharge, not_negative},
                              {"U2", "unit hydrograph one block earlier", dimension::unit_discharge, not_negative},
                              {"U3", "unit hydrograph two blocks earlier", dimension::unit_discharge, not_negative},
                              {"P1", "excess rain of the first block", dimension::length, not_negative},
                              {"P2", "excess rain of the second block", dimension::length, not_negative},
                              {"P3", "excess rain of the third block", dimension::length, not_negative},
                              {"Qb", "base flow", dimension::discharge, not_negative, 0.0}};
constexpr Symbol ordinate_in[] = {
    {"Q", "flow at the time", dimension::discharge, not_negative},
    {"U2", "unit hydrograph one block earlier, already known", dimension::unit_discharge, not_negative},
    {"P1", "excess rain of the first block", dimension::length, above_zero},
    {"P2", "excess rain of the second block", dimension::length, not_negative},
    {"Qb", "base flow", dimension::discharge, not_negative, 0.0}};
constexpr Symbol reach_in[] = {
    {"K", "storage time of the reach", dimension::time, above_zero},
    {.name = "x", .meaning = "weight of the inflow", .dimension = dimension::none, .range = {0.0, 0.5}, .possible = {0.0, 0.5}},
    {"dt", "step", dimension::time, above_zero},
    {"I1", "inflow at the start of the step", dimension::discharge, not_negative},
    {"I2", "inflow at the end of the step", dimension::discharge, not_negative},
    {"O1", "outflow at the start of the step", dimension::discharge, not_negative}};
constexpr Symbol excess_out[] = {{"Pe", "rain in excess of the losses", dimension::length, not_negative}};
constexpr Symbol flow_out[] = {{"Q", "flow at the time", dimension::discharge, not_negative}};
constexpr Symbol ordinate_out[] = {{"U", "unit hydrograph at the time", dimension::unit_discharge, any_value}};
constexpr Symbol outflow_out[] = {{"O2", "outflow at the end of the step", dimension::discharge, any_value}};
}  // namespace

const Method excess_rain{.id = "flood.excess_rain.phi_index",
                         .title = "Rain in excess of a constant loss rate and an initial loss",
                         .equation = "Pe = max(0, P - Ia - phi*dt)",
                         .inputs = rain_in,
                         .outputs = excess_out,
                         .source = "chow_1988",
                         .place = "ch. 5, phi index",
                         .provenance = Provenance::memory,
                         .accuracy = "as good as the losses, which vary within a storm",
                         .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                           out[0] = hydraulics::excess_rain({.P = in[0], .dt = in[1]}, in[3], in[2]);
                           return {};
                         }};

const Method direct_flow{.id = "flood.flow.unit_hydrograph",
                         .title = "Flow at one time from three blocks of excess rain and the unit hydrograph",
                         .equation = "Q = P1*U1 + P2*U2 + P3*U3 + Qb",
                         .inputs = flow_in,
                         .outputs = flow_out,
                         .source = "chow_1988",
                         .place = "ch. 7, discrete convolution",
                         .provenance = Provenance::memory,
                         .accuracy = "exact for the unit hydrograph given",
                         .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                           const double unit_ordinates[] = {in[2], in[1], in[0]};
                           const double excess[] = {in[3], in[4], in[5]};
                           out[0] = hydraulics::direct_flow(excess, unit_ordinates, 2) + in[6];
                           return {};
                         }};

const Method unit_ordinate{.id = "flood.unit_hydrograph.two_blocks",
                           .title = "Ordinate of the unit hydrograph from the flow of two blocks of excess rain",
                           .equation = "U = (Q - Qb - P2*U2)/P1",
                           .inputs = ordinate_in,
                           .outputs = ordinate_out,
                           .source = "chow_1988",
                           .place = "ch. 7, deconvolution",
                           .provenance = Provenance::memory,
                           .accuracy = "exact; errors of the flows add from ordinate to ordinate",
                           .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                             out[0] = (in[0] - in[4] - in[3] * in[1]) / in[2];
                             return {};
                           }};

const Method muskingum_step{
    .id = "flood.routing.muskingum",
    .title = "Outflow of a reach at the end of a step by Muskingum",
    .equation =
        "w = K*(1 - x) + 0.5*dt; C0 = (0.5*dt - K*x)/w; C1 = (0.5*dt + K*x)/w; C2 = (K*(1 - x) - 0.5*dt)/w; "
        "O2 = C0*I2 + C1*I1 + C2*O1",
    .inputs = reach_in,
    .outputs = outflow_out,
    .source = "chow_1988",
    .place = "ch. 8, Muskingum method",
    .provenance = Provenance::memory,
    .accuracy = "keeps the volume exactly; attenuation as good as K and x",
    .condition = [](std::span<const double> in) -> std::string_view {
      if (in[2] < 2.0 * in[0] * in[1]) return "dt is below 2 K x: the outflow first dips before it rises";
      if (in[2] > 2.0 * in[0] * (1.0 - in[1])) return "dt is above 2 K (1 - x): the outflow swings";
      return {};
    },
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      out[0] = hydraulics::muskingum_step({.K = in[0], .x = in[1], .dt = in[2]}, {.I1 = in[3], .I2 = in[4], .O1 = in[5]});
      return {};
    }};

}  // namespace record
}  // namespace quell::hydraulics
