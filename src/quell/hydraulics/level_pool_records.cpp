// The records of level_pool.h.
#include <limits>
#include <vector>

#include "quell/hydraulics/flood_shapes.h"
#include "quell/hydraulics/level_pool.h"

namespace quell::hydraulics::record {
namespace {
constexpr Range not_negative{0.0, no_limit};
constexpr double must_be_given = std::numeric_limits<double>::quiet_NaN();
constexpr double tolerance = 1e-8;          // m in one step
constexpr std::size_t most_steps = 40000;   // a method answers at once or not at all
constexpr double rows_in_the_rise = 120.0;  // of the gamma flood
constexpr double times_of_the_rise = 12.0;  // for which it is routed

constexpr Symbol A0_symbol{"A0", "area at the crest", dimension::area, above_zero};
constexpr Symbol A1_symbol{"A1", "growth of the area with the level", dimension::length, not_negative};
constexpr Symbol C_symbol{"C", "coefficient of the crest", dimension::weir_coefficient, {0.0, 2.5}};
constexpr Symbol L_symbol{"L", "length of the crest", dimension::length, not_negative};
constexpr Symbol t_symbol{"t", "times of the inflow, rising", dimension::time, any_value, must_be_given, {}, true};
constexpr Symbol I_symbol{"I", "inflow at the times", dimension::discharge, not_negative, must_be_given, {}, true};

constexpr Symbol crest_in[] = {
    A0_symbol, A1_symbol, C_symbol, L_symbol, {"H0", "head at the start", dimension::length, not_negative}, t_symbol, I_symbol};
constexpr Symbol table_in[] = {{"H0", "level at the start", dimension::length, any_value},
                               {"dt", "time between two inflows", dimension::time, above_zero},
                               {"level", "levels of the tables, rising", dimension::length, any_value, must_be_given, {}, true},
                               {"area", "areas at the levels", dimension::area, not_negative, must_be_given, {}, true},
                               {"O", "outflows at the levels", dimension::discharge, not_negative, must_be_given, {}, true},
                               {"I", "inflow from time zero on", dimension::discharge, not_negative, must_be_given, {}, true}};
constexpr Symbol gamma_in[] = {{"Qp", "peak inflow", dimension::discharge, above_zero},
                               {"tp", "time to the peak", dimension::time, above_zero},
                               {.name = "m",
                                .meaning = "exponent of the flood",
                                .dimension = dimension::none,
                                .range = {0.2, 15.0},
                                .possible = {0.05, 100.0}},
                               A0_symbol,
                               A1_symbol,
                               C_symbol,
                               L_symbol,
                               {"Qb", "base flow", dimension::discharge, not_negative, 0.0},
                               {"H0", "head at the start", dimension::length, not_negative, 0.0}};
constexpr Symbol flood_out[] = {{"Hm", "highest level", dimension::length, any_value},
                                {"tm", "time at which it is reached", dimension::time, any_value},
                                {"Om", "largest outflow", dimension::discharge, not_negative},
                                {"He", "level at the end", dimension::length, any_value},
                                {"V", "volume out", dimension::volume, not_negative}};

void put(const RoutedFlood& flood, std::span<double> out) {
  out[0] = flood.peak_level;
  out[1] = flood.peak_level_time;
  out[2] = flood.peak_outflow;
  out[3] = flood.level.back();
  out[4] = flood.volume_out;
}

struct CrestValues {
  double A0, A1, coefficient, H0;
};
Outcome<void> route(const CrestValues& crest, std::span<const double> time, std::span<const double> inflow,
                    std::span<double> out) {
  const double level[] = {0.0, 1.0};
  const double area[] = {crest.A0, crest.A0 + crest.A1};
  const auto storage = StorageCurve::from_areas(level, area);
  if (!storage) return tl::unexpected(storage.error());
  const auto flood = route_over_crest({.storage = *storage,
                                       .time = time,
                                       .inflow = inflow,
                                       .stages = {},
                                       .initial_level = crest.H0,
                                       .tolerance = tolerance,
                                       .most_steps = most_steps},
                                      crest.coefficient);
  if (!flood) return tl::unexpected(flood.error());
  put(*flood, out);
  return {};
}
}  // namespace

const Method reservoir_flood_crest{
    .id = "reservoir.flood.free_crest",
    .title = "Flood through a reservoir with a free crest",
    .kind = EquationKind::procedure,
    .equation =
        "(A0 + A1 H) dH/dt = I - C L H^1.5, with the head H over the crest and the inflow straight between its times: "
        "integrated "
        "by Dormand and Prince's pair of fifth and fourth order with the error of each step held.",
    .inputs = crest_in,
    .outputs = flood_out,
    .source = "momentum",
    .place = "mass balance of a level pool",
    .provenance = Provenance::derived,
    .accuracy = "1e-8 m in each step; a level surface is assumed",
    .remarks = "At the highest level the outflow equals the inflow.",
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      const std::size_t n = (in.size() - 5) / 2;
      return route({.A0 = in[0], .A1 = in[1], .coefficient = in[2] * in[3], .H0 = in[4]}, in.subspan(5, n), in.subspan(5 + n),
                   out);
    }};

const Method reservoir_flood_tabulated{
    .id = "reservoir.flood.tabulated",
    .title = "Flood through a reservoir with tables of area and outflow",
    .kind = EquationKind::procedure,
    .equation =
        "A dH/dt = I - O, area and outflow straight between the levels of the tables and the inflow between its times: "
        "integrated "
        "by Dormand and Prince's pair of fifth and fourth order with the error of each step held.",
    .inputs = table_in,
    .outputs = flood_out,
    .source = "momentum",
    .place = "mass balance of a level pool",
    .provenance = Provenance::derived,
    .accuracy = "1e-8 m in each step; a level surface is assumed",
    .remarks = "Below the first level nothing flows out; above the last the lines of area and outflow go on.",
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      const std::size_t n = (in.size() - 2) / 4;
      const auto list = [&](std::size_t k) { return in.subspan(2 + k * n, n); };
      const auto level = list(0);
      const auto outflow = list(2);
      const auto storage = StorageCurve::from_areas(level, list(1));
      if (!storage) return tl::unexpected(storage.error());
      std::vector<double> time(n);
      for (std::size_t i = 0; i < n; ++i) time[i] = static_cast<double>(i) * in[1];
      const OutflowStage stage{.rating = {{level.begin(), level.end()}, {outflow.begin(), outflow.end()}}};
      const auto flood = route_level_pool({.storage = *storage,
                                           .time = time,
                                           .inflow = list(3),
                                           .stages = std::span(&stage, 1),
                                           .initial_level = in[0],
                                           .tolerance = tolerance,
                                           .most_steps = most_steps});
      if (!flood) return tl::unexpected(flood.error());
      put(*flood, out);
      return {};
    }};

const Method reservoir_flood_gamma{.id = "reservoir.flood.gamma_inflow",
                                   .title = "Flood of gamma shape through a reservoir with a free crest",
                                   .kind = EquationKind::procedure,
                                   .equation =
                                       "(A0 + A1 H) dH/dt = I - C L H^1.5 with I = Qb + (Qp - Qb) (t/tp)^m exp(m (1 - t/tp)), "
                                       "routed for twelve times the rise with "
                                       "the inflow straight between 120 points to the rise.",
                                   .inputs = gamma_in,
                                   .outputs = flood_out,
                                   .source = "momentum",
                                   .place = "mass balance of a level pool",
                                   .provenance = Provenance::derived,
                                   .accuracy = "3e-5 of the peak outflow",
                                   .condition = [](std::span<const double> in) -> std::string_view {
                                     return in[7] <= in[0] ? std::string_view{} : "the base flow is above the peak";
                                   },
                                   .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                     const auto flood = gamma_flood({.peak = in[0],
                                                                     .time_to_peak = in[1],
                                                                     .base_flow = in[7],
                                                                     .exponent = in[2],
                                                                     .duration = times_of_the_rise * in[1],
                                                                     .step = in[1] / rows_in_the_rise});
                                     return route({.A0 = in[3], .A1 = in[4], .coefficient = in[5] * in[6], .H0 = in[8]},
                                                  flood.time, flood.flow, out);
                                   }};

}  // namespace quell::hydraulics::record
