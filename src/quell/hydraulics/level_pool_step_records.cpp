// The records of level_pool_steps.h.
#include <limits>

#include "quell/hydraulics/level_pool_steps.h"

namespace quell::hydraulics::record {
namespace {
constexpr Range not_negative{0.0, no_limit};
constexpr double must_be_given = std::numeric_limits<double>::quiet_NaN();
constexpr Symbol I1_symbol{"I1", "inflow at the start of the step", dimension::discharge, not_negative};
constexpr Symbol I2_symbol{"I2", "inflow at its end", dimension::discharge, not_negative};
constexpr Symbol dt_symbol{"dt", "step", dimension::time, above_zero};
constexpr Symbol level_symbol{"level", "levels of the tables, rising", dimension::length, any_value, must_be_given, {}, true};
constexpr Symbol area_symbol{"area", "areas at the levels", dimension::area, not_negative, must_be_given, {}, true};
constexpr Symbol O_symbol{"O", "outflows at the levels", dimension::discharge, not_negative, must_be_given, {}, true};

constexpr Symbol indicator_in[] = {
    {"S", "storage", dimension::volume, not_negative}, {"O", "outflow", dimension::discharge, not_negative}, dt_symbol};
constexpr Symbol indicator_out[] = {{"N", "indicator", dimension::discharge, not_negative}};
constexpr Symbol step_in[] = {{"A0", "area at the crest", dimension::area, above_zero},
                              {"A1", "growth of the area with the level", dimension::length, not_negative},
                              {"C", "coefficient of the crest", dimension::weir_coefficient, {0.0, 2.5}},
                              {"L", "length of the crest", dimension::length, not_negative},
                              {"H1", "head at the start", dimension::length, not_negative},
                              I1_symbol,
                              I2_symbol,
                              dt_symbol};
constexpr Symbol step_out[] = {{"H2", "head at the end of the step", dimension::length, not_negative}};
constexpr Symbol tables_in[] = {
    I1_symbol,    I2_symbol,   dt_symbol, {"H1", "level at the start", dimension::length, any_value},
    level_symbol, area_symbol, O_symbol};
constexpr Symbol level_out[] = {{"H2", "level at the end of the step", dimension::length, any_value},
                                {"O2", "outflow at the end of the step", dimension::discharge, not_negative}};
constexpr Symbol kutta_out[] = {{"dH1", "rise with the slope at the start", dimension::length, any_value},
                                {"dH2", "rise with the slope a third on", dimension::length, any_value},
                                {"dH3", "rise with the slope two thirds on", dimension::length, any_value},
                                {"H2", "level at the end of the step", dimension::length, any_value},
                                {"O2", "outflow at the end of the step", dimension::discharge, not_negative}};
constexpr Symbol linear_in[] = {{"K", "storage time, S = K O", dimension::time, above_zero},
                                dt_symbol,
                                I1_symbol,
                                I2_symbol,
                                {"O1", "outflow at the start of the step", dimension::discharge, not_negative}};
constexpr Symbol linear_out[] = {{"O2", "outflow at the end of the step", dimension::discharge, any_value}};
constexpr Symbol lake_in[] = {{"H0", "head at the start", dimension::length, above_zero},
                              {"A", "area of the lake", dimension::area, above_zero},
                              {"C", "coefficient of the crest", dimension::weir_coefficient, {0.0, 2.5}},
                              {"L", "length of the crest", dimension::length, not_negative},
                              {"t", "time", dimension::time, not_negative}};
constexpr Symbol lake_out[] = {{"H", "head at the time", dimension::length, not_negative}};

struct Tables {
  StorageCurve storage;
  RatingTable rating;
};
/// From level, area and O, written out one after the other.
Outcome<Tables> tables_of(std::span<const double> lists) {
  const std::size_t n = lists.size() / 3;
  auto storage = StorageCurve::from_areas(lists.first(n), lists.subspan(n, n));
  if (!storage) return tl::unexpected(storage.error());
  const auto level = lists.first(n);
  const auto outflow = lists.last(n);
  return Tables{.storage = std::move(*storage), .rating = {{level.begin(), level.end()}, {outflow.begin(), outflow.end()}}};
}
}  // namespace

const Method reservoir_indicator{
    .id = "reservoir.indicator.storage_outflow",
    .title = "Storage indicator of a reservoir",
    .equation = "N = S/dt + O/2",
    .inputs = indicator_in,
    .outputs = indicator_out,
    .source = "usace_1976",
    .place = "vol. 7, p. 3-02: the new indicator is the old one less the outflow plus the mean inflow",
    .provenance = Provenance::seen,
    .accuracy = "exact",
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      out[0] = in[0] / in[2] + 0.5 * in[1];
      return {};
    }};

const Method reservoir_indication_step{
    .id = "reservoir.head.storage_indication",
    .title = "Head over a free crest at the end of a step by storage indication",
    .kind = EquationKind::residual,
    .equation = "2*(A0*H2 + A1*H2^2/2)/dt + C*L*H2^1.5 = I1 + I2 + 2*(A0*H1 + A1*H1^2/2)/dt - C*L*H1^1.5",
    .inputs = step_in,
    .outputs = step_out,
    .source = "chow_1988",
    .place = "sec. 8.2, level pool routing: 2 S2/dt + O2 = I1 + I2 + 2 S1/dt - O1",
    .provenance = Provenance::memory,
    .accuracy = "solved to rounding; the trapezoidal rule itself errs by 0.3 % of the peak with a step of a sixth of the rise",
    .condition = [](std::span<const double> in) -> std::string_view {
      const CrestPool pool{.A0 = in[0], .A1 = in[1], .C = in[2], .L = in[3]};
      return 2.0 * pool.storage(in[4]) / in[7] >= pool.outflow(in[4]) ? std::string_view{} : step_above_storage;
    },
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      return store(storage_indication_step(CrestPool{.A0 = in[0], .A1 = in[1], .C = in[2], .L = in[3]},
                                           {.I1 = in[5], .I2 = in[6], .dt = in[7], .H1 = in[4]}),
                   out);
    }};

const Method reservoir_indication_level{
    .id = "reservoir.level.storage_indication",
    .title = "Level of a reservoir at the end of a step by storage indication with tables",
    .kind = EquationKind::procedure,
    .equation =
        "2 S2/dt + O2 = I1 + I2 + 2 S1/dt - O1 solved for the storage S2 at the end, the level of which gives the outflow O2; "
        "area "
        "and outflow are straight between the levels of the tables, the storage the integral of the area.",
    .inputs = tables_in,
    .outputs = level_out,
    .source = "chow_1988",
    .place = "sec. 8.2, level pool routing",
    .provenance = Provenance::memory,
    .accuracy = "solved to rounding; the step should be a fifth of the rise of the inflow or less",
    .remarks = "The integration with steps controlled by their error is reservoir.flood.tabulated.",
    .condition = [](std::span<const double> in) -> std::string_view {
      const auto tables = tables_of(in.subspan(4));
      if (!tables) return tables.error().reason;
      const double dead = tables->storage.storage(tables->rating.level.front());
      if (2.0 * (tables->storage.storage(in[3]) - dead) / in[2] < tables->rating.at(in[3])) return step_above_storage;
      return in[2] > shortest_response(tables->storage, tables->rating) ? step_swings : std::string_view{};
    },
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      const auto tables = tables_of(in.subspan(4));
      if (!tables) return tl::unexpected(tables.error());
      if (in[3] < tables->storage.lowest_level())
        return bad_input("H1", in[3], tables->storage.lowest_level(), no_limit, "below the tables nothing is known");
      const auto level =
          storage_indication_step(tables->storage, tables->rating, {.I1 = in[0], .I2 = in[1], .dt = in[2], .H1 = in[3]});
      if (!level) return tl::unexpected(level.error());
      out[0] = *level;
      out[1] = tables->rating.at(*level);
      return {};
    }};

const Method reservoir_runge_kutta_3{
    .id = "reservoir.level.runge_kutta_3",
    .title = "Level of a reservoir at the end of a step by a Runge-Kutta method of third order",
    .kind = EquationKind::procedure,
    .equation =
        "dH1 = dt f(t, H), dH2 = dt f(t + dt/3, H + dH1/3), dH3 = dt f(t + 2 dt/3, H + 2 dH2/3), H2 = H + dH1/4 + 3 dH3/4, "
        "with "
        "f = (I - O)/A; area and outflow are straight between the levels of the tables.",
    .inputs = tables_in,
    .outputs = kutta_out,
    .source = "chow_1988",
    .place = "sec. 8.3",
    .provenance = Provenance::memory,
    .accuracy = "of third order in the step; no control of its error",
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      const auto tables = tables_of(in.subspan(4));
      if (!tables) return tl::unexpected(tables.error());
      if (in[3] < tables->storage.lowest_level())
        return bad_input("H1", in[3], tables->storage.lowest_level(), no_limit, "below the tables nothing is known");
      const auto step =
          runge_kutta_3_step(tables->storage, tables->rating, {.I1 = in[0], .I2 = in[1], .dt = in[2], .H1 = in[3]});
      out[0] = step.dH1;
      out[1] = step.dH2;
      out[2] = step.dH3;
      out[3] = step.H2;
      out[4] = tables->rating.at(step.H2);
      return {};
    }};

const Method reservoir_linear_step{
    .id = "reservoir.outflow.linear",
    .title = "Outflow at the end of a step of a reservoir whose outflow is in proportion to its storage",
    .equation = "r = dt/K; O2 = (r*(I1 + I2) + (2 - r)*O1)/(2 + r)",
    .inputs = linear_in,
    .outputs = linear_out,
    .source = "ponce_1989",
    .place = "ch. 8, linear reservoir",
    .provenance = Provenance::memory,
    .accuracy = "keeps the volume exactly; of second order in the step",
    .condition = [](std::span<const double> in) -> std::string_view {
      return in[1] <= 2.0 * in[0] ? std::string_view{} : "dt is above 2 K: the outflow swings";
    },
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      out[0] = linear_reservoir_step({.I1 = in[2], .I2 = in[3], .O1 = in[4], .K = in[0], .dt = in[1]});
      return {};
    }};

const Method reservoir_draining_crest{.id = "reservoir.head.draining_crest",
                                      .title = "Head of a lake of constant area that drains over a crest without inflow",
                                      .equation = "H = (1/sqrt(H0) + C*L*t/(2*A))^(-2)",
                                      .inputs = lake_in,
                                      .outputs = lake_out,
                                      .source = "momentum",
                                      .place = "mass balance, A dH/dt = -C L H^1.5",
                                      .provenance = Provenance::derived,
                                      .accuracy = "exact for a constant coefficient and area",
                                      .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                        out[0] = draining_head({.H0 = in[0], .A = in[1], .C = in[2], .L = in[3]}, in[4]);
                                        return {};
                                      }};

}  // namespace quell::hydraulics::record
