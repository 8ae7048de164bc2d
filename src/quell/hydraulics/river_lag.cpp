#include "quell/hydraulics/river_lag.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "quell/base/constants.h"

namespace quell::hydraulics {

double influence_length(double y, double slope) noexcept {
  return 0.7 * y / slope;
}

double pool_area(const PoolInput& input) noexcept {
  return input.T * std::min(input.control, influence_length(input.y, input.slope));
}

double lag_time(double area, double rating_slope) noexcept {
  return area * rating_slope;
}

double lag_response(const LagInput& input) noexcept {
  return -std::expm1(-input.t / input.tau);
}

double lag_deficit(double rate, const LagInput& input) noexcept {
  return rate * input.tau * lag_response(input);
}

double permissible_rise(double margin, double tau) noexcept {
  return margin / tau;
}

Outcome<double> level_at_basin_exit(const ExitTransfer& input) {
  if (!(input.Vr <= input.Vb))
    return bad_input("Vr", input.Vr, 0.0, input.Vb, "the river is faster than the flow that leaves the basin");
  return input.river_level - (1.0 - input.Ce) * (input.Vb * input.Vb - input.Vr * input.Vr) / (2.0 * gravity);
}

namespace record {
namespace {
constexpr double must_be_given = std::numeric_limits<double>::quiet_NaN();
constexpr Dimension per_unit_discharge{-12, 0, 6};  // s/m2
constexpr Symbol y{"y", "depth of the river", dimension::length, above_zero};
constexpr Symbol S0{"S0", "slope of the bed", dimension::none, {1e-5, 0.02}, must_be_given, above_zero};
constexpr Symbol tau{"tau", "time constant", dimension::time, above_zero};
constexpr Symbol t{"t", "time since the change began", dimension::time, {0.0, no_limit}};
constexpr Symbol influence_in[] = {y, S0};
constexpr Symbol pool_in[] = {{"T", "surface width", dimension::length, above_zero},
                              {"Lc", "distance to the control", dimension::length, above_zero},
                              y,
                              S0};
constexpr Symbol constant_in[] = {{"As", "surface of the pool between basin and control", dimension::area, above_zero},
                                  {"k", "rise of the rating: level per discharge", per_unit_discharge, above_zero}};
constexpr Symbol step_in[] = {{"dw", "rise of the steady level", dimension::length, {0.0, no_limit}}, tau, t};
constexpr Symbol ramp_in[] = {{"r", "rise of the steady level per time", dimension::velocity, {0.0, no_limit}}, tau, t};
constexpr Symbol permissible_in[] = {{"m", "margin of the tailwater that may be used up", dimension::length, {0.0, no_limit}},
                                     tau};
constexpr Symbol exit_in[] = {
    {"wr", "level of the river", dimension::length, any_value},
    {"Vb", "velocity at the end of the basin", dimension::velocity, {0.0, no_limit}},
    {"Vr", "velocity of the river", dimension::velocity, {0.0, no_limit}},
    {"Ce", "part of the difference of velocity heads that is lost", dimension::none, {0.0, 1.0}, 0.5, {0.0, 1.0}}};
constexpr Symbol length_out[] = {{"L", "length of influence", dimension::length, above_zero}};
constexpr Symbol area_out[] = {{"As", "surface of the pool that must fill", dimension::area, above_zero}};
constexpr Symbol tau_out[] = {tau};
constexpr Symbol rise_out[] = {{"w", "rise at t", dimension::length, {0.0, no_limit}}};
constexpr Symbol deficit_out[] = {{"dl", "how far the level lags behind the steady one", dimension::length, {0.0, no_limit}}};
constexpr Symbol rate_out[] = {{"r", "fastest rise of the steady level", dimension::velocity, {0.0, no_limit}}};
constexpr Symbol exit_out[] = {{"wb", "level at the end of the basin", dimension::length, any_value}};
constexpr Text rough = "the surface of the pool is known to some 30 %";
}  // namespace

const Method river_influence_length{.id = "river.influence_length.samuels",
                                    .title = "Distance over which a level downstream is felt (Samuels)",
                                    .equation = "L = 0.7*y/S0",
                                    .inputs = influence_in,
                                    .outputs = length_out,
                                    .source = "samuels_1989",
                                    .place = "backwater length in a wide river",
                                    .provenance = Provenance::memory,
                                    .accuracy = "an order of magnitude: there the difference is down to a tenth",
                                    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                      out[0] = influence_length(in[0], in[1]);
                                      return {};
                                    }};

const Method river_pool_area{.id = "river.lag.pool_area",
                             .title = "Surface of the tailwater pool that must fill",
                             .equation = "As = T*min(Lc, 0.7*y/S0)",
                             .inputs = pool_in,
                             .outputs = area_out,
                             .source = "momentum",
                             .place = "the reach up to the control, or as far as a level is felt",
                             .provenance = Provenance::derived,
                             .accuracy = rough,
                             .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                               out[0] = pool_area({.T = in[0], .control = in[1], .y = in[2], .slope = in[3]});
                               return {};
                             }};

const Method lag_time_constant{.id = "river.lag.time_constant",
                               .title = "Time constant with which the tailwater follows the discharge",
                               .equation = "tau = As*k",
                               .inputs = constant_in,
                               .outputs = tau_out,
                               .source = "momentum",
                               .place = "filling of a level pool, linearised about the rating of the control",
                               .provenance = Provenance::derived,
                               .accuracy = rough,
                               .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                 out[0] = lag_time(in[0], in[1]);
                                 return {};
                               }};

const Method lag_step{.id = "river.lag.step",
                      .title = "Rise of the tailwater after a sudden change of discharge",
                      .equation = "w = dw*(1 - exp(-t/tau))",
                      .inputs = step_in,
                      .outputs = rise_out,
                      .source = "momentum",
                      .place = "filling of a level pool, linearised about the rating of the control",
                      .provenance = Provenance::derived,
                      .accuracy = rough,
                      .remarks = "A surge runs ahead and gives part of the rise at once.",
                      .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                        out[0] = in[0] * lag_response({.tau = in[1], .t = in[2]});
                        return {};
                      }};

const Method lag_ramp{.id = "river.lag.ramp",
                      .title = "How far the tailwater lags behind a steady level that rises evenly",
                      .equation = "dl = r*tau*(1 - exp(-t/tau))",
                      .inputs = ramp_in,
                      .outputs = deficit_out,
                      .source = "momentum",
                      .place = "filling of a level pool, linearised about the rating of the control",
                      .provenance = Provenance::derived,
                      .accuracy = rough,
                      .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                        out[0] = lag_deficit(in[0], {.tau = in[1], .t = in[2]});
                        return {};
                      }};

const Method lag_permissible_ramp{.id = "river.lag.permissible_ramp",
                                  .title = "Fastest rise of the steady tailwater whose lag stays within a margin",
                                  .equation = "r = m/tau",
                                  .inputs = permissible_in,
                                  .outputs = rate_out,
                                  .source = "momentum",
                                  .place = "filling of a level pool, linearised about the rating of the control",
                                  .provenance = Provenance::derived,
                                  .accuracy = rough,
                                  .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                    out[0] = permissible_rise(in[0], in[1]);
                                    return {};
                                  }};

const Method basin_exit_level{
    .id = "river.transfer.velocity_head",
    .title = "Level at the end of a basin from that of the river",
    .equation = "wb = wr - (1 - Ce)*(Vb^2 - Vr^2)/(2*g)",
    .inputs = exit_in,
    .outputs = exit_out,
    .source = "momentum",
    .place = "energy between the end of the basin and the river",
    .provenance = Provenance::derived,
    .accuracy = "Ce = 0 is the lower bound, for sweep-out; Ce = 1 the upper, for walls and submergence",
    .condition = [](std::span<const double> in) -> std::string_view {
      return in[2] <= in[1] ? std::string_view{} : "the river is faster than the flow that leaves the basin";
    },
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      return store(level_at_basin_exit({.river_level = in[0], .Vb = in[1], .Vr = in[2], .Ce = in[3]}), out);
    }};

}  // namespace record
}  // namespace quell::hydraulics
