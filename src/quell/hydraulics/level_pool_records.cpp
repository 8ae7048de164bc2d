#include <cmath>

#include "quell/hydraulics/level_pool.h"

namespace quell::hydraulics::record {
namespace {

constexpr double must_be_given = std::numeric_limits<double>::quiet_NaN();
constexpr Symbol pool_in[] = {{"A0", "area at the level of the weir", dimension::area, above_zero},
                              {"A1", "growth of the area per metre of head", dimension::length, {0.0, no_limit}},
                              {"c", "weir: O = c*H^1.5", {15, 0, -6}, above_zero},
                              {"H0", "head on the weir before the flood", dimension::length, {0.0, 50.0}},
                              {"dt", "time between the ordinates of the inflow", dimension::time, above_zero},
                              {"I", "ordinates of the inflow", dimension::discharge, {0.0, no_limit}, must_be_given, {}, true}};
constexpr Symbol pool_out[] = {{"Hm", "highest head", dimension::length, {0.0, no_limit}},
                               {"Om", "largest outflow", dimension::discharge, {0.0, no_limit}},
                               {"tm", "time of the highest head", dimension::time, {0.0, no_limit}},
                               {"He", "head at the last ordinate", dimension::length, {0.0, no_limit}}};
constexpr Symbol table_in[] = {
    {"A", "area of the reservoir", dimension::area, above_zero},
    {"dt", "step", dimension::time, above_zero},
    {"k", "number of the step looked at", dimension::none, {1.0, 1e6}},
    {"H", "levels of the table, from empty", dimension::length, any_value, must_be_given, {}, true},
    {"O", "outflow at these levels", dimension::discharge, {0.0, no_limit}, must_be_given, {}, true},
    {"I", "inflow at the ends of the steps, from 0", dimension::discharge, {0.0, no_limit}, must_be_given, {}, true}};
constexpr Symbol table_out[] = {{"Hk", "level after k steps", dimension::length, any_value},
                                {"Ok", "outflow after k steps", dimension::discharge, {0.0, no_limit}},
                                {"Hm", "highest level", dimension::length, any_value},
                                {"Om", "largest outflow", dimension::discharge, {0.0, no_limit}}};
constexpr Symbol indication_in[] = {{"S1", "storage at the start of the step", dimension::volume, {0.0, no_limit}},
                                    {"O1", "outflow there", dimension::discharge, {0.0, no_limit}},
                                    {"I1", "inflow at the start", dimension::discharge, {0.0, no_limit}},
                                    {"I2", "inflow at the end", dimension::discharge, {0.0, no_limit}},
                                    {"dt", "step", dimension::time, above_zero}};
constexpr Symbol indication_out[] = {{"G2", "2S/dt + O at the end of the step", dimension::discharge, any_value}};
constexpr Symbol linear_in[] = {{"K", "storage over outflow", dimension::time, above_zero},
                                {"dt", "step, at most 2 K", dimension::time, above_zero},
                                {"I1", "inflow at the start", dimension::discharge, {0.0, no_limit}},
                                {"I2", "inflow at the end", dimension::discharge, {0.0, no_limit}},
                                {"O1", "outflow at the start", dimension::discharge, {0.0, no_limit}}};
constexpr Symbol linear_out[] = {{"O2", "outflow at the end", dimension::discharge, any_value}};
constexpr Symbol lake_in[] = {{"H0", "head on the weir at the start", dimension::length, above_zero},
                              {"c", "weir: O = c*H^1.5", {15, 0, -6}, above_zero},
                              {"A", "area of the lake", dimension::area, above_zero},
                              {"t", "time", dimension::time, {0.0, no_limit}}};
constexpr Symbol lake_out[] = {{"H", "head on the weir", dimension::length, above_zero}};
constexpr Symbol third_in[] = {{"H", "head at the start of the step", dimension::length, {0.0, no_limit}},
                               {"I1", "inflow at the start", dimension::discharge, {0.0, no_limit}},
                               {"I2", "inflow at the end", dimension::discharge, {0.0, no_limit}},
                               {"A", "area of the reservoir", dimension::area, above_zero},
                               {"c", "weir: O = c*H^1.5", {15, 0, -6}, above_zero},
                               {"dt", "step", dimension::time, above_zero}};
constexpr Symbol third_out[] = {{"H2", "head at the end", dimension::length, any_value}};

std::string_view step_too_long(std::span<const double> in) {
  return in[1] > 2.0 * in[0] ? "the step is longer than twice K: the outflow would swing below zero" : "";
}

/// A weir lake with evenly spaced ordinates: A0, A1, c, H0, dt, then I.
Outcome<void> route_lake(std::span<const double> in, std::span<double> out) {
  constexpr int parts = 4000;
  const auto inflow = in.subspan(5);
  if (inflow.size() < 2) return no_answer("an inflow needs two ordinates or more");
  double volume = 0.0;
  double top = in[3] + 1.0;
  std::vector<double> time(inflow.size());
  for (std::size_t i = 0; i < inflow.size(); ++i) {
    time[i] = in[4] * static_cast<double>(i);
    if (i > 0) volume += 0.5 * (inflow[i] + inflow[i - 1]) * in[4];
    top = std::max(top, std::pow(inflow[i] / in[2], 2.0 / 3.0) + 0.1);
  }
  top = std::min(top, in[3] + volume / in[0] + 0.1);
  const double levels[] = {0.0, top};
  const double areas[] = {in[0], in[0] + in[1] * top};
  const auto storage = StorageCurve::from_area(levels, areas);
  if (!storage) return tl::unexpected(storage.error());
  OutflowStage stage;
  for (int i = 0; i <= parts; ++i) {
    const double share = static_cast<double>(i) / parts;
    stage.rating.level.push_back(top * share * share);
    stage.rating.discharge.push_back(in[2] * std::pow(stage.rating.level.back(), 1.5));
  }
  const auto routed =
      route_level_pool({.storage = *storage, .time = time, .inflow = inflow, .stages = {&stage, 1}, .initial_level = in[3]});
  if (!routed) return tl::unexpected(routed.error());
  out[0] = routed->peak_level;
  out[1] = routed->peak_outflow;
  out[2] = routed->peak_level_time;
  out[3] = routed->level.back();
  return {};
}

/// A, dt, k, then H, O and I, equally many.
Outcome<void> route_by_table(std::span<const double> in, std::span<double> out) {
  const std::size_t count = (in.size() - 3) / 3;
  const auto H = in.subspan(3, count);
  const auto I = in.subspan(3 + 2 * count);
  if (count < 2) return no_answer("the table needs two levels or more");
  std::vector<double> volume(count), time(count);
  for (std::size_t i = 0; i < count; ++i) {
    volume[i] = in[0] * (H[i] - H[0]);
    time[i] = in[1] * static_cast<double>(i);
  }
  const auto storage = StorageCurve::from_storage(H, volume);
  if (!storage) return tl::unexpected(storage.error());
  const auto O = in.subspan(3 + count, count);
  const OutflowStage stage{.rating = {.level = {H.begin(), H.end()}, .discharge = {O.begin(), O.end()}}};
  const auto routed = route_storage_indication(
      {.storage = *storage, .time = time, .inflow = I, .stages = {&stage, 1}, .initial_level = H[0]}, in[1]);
  if (!routed) return tl::unexpected(routed.error());
  const double k = std::round(in[2]);
  if (!(k >= 1.0) || k >= static_cast<double>(routed->level.size()))
    return bad_input("k", in[2], 1.0, static_cast<double>(routed->level.size() - 1), "the inflow has no such step");
  out[0] = routed->level[static_cast<std::size_t>(k)];
  out[1] = routed->outflow[static_cast<std::size_t>(k)];
  out[2] = routed->peak_level;
  out[3] = routed->peak_outflow;
  return {};
}

}  // namespace

const Method reservoir_level_pool{
    .id = "reservoir.routing.level_pool",
    .title = "Highest head and largest outflow of a weir lake in a flood",
    .kind = EquationKind::procedure,
    .equation =
        "dS/dt = I(t) - O(H) with area A0 + A1*H and O = c*H^1.5, I straight between its ordinates; Dormand and Prince's "
        "pair 5(4) to 1e-6 m in a step, ending at every ordinate.",
    .inputs = pool_in,
    .outputs = pool_out,
    .source = "momentum",
    .place = "volume balance of a level reservoir",
    .provenance = Provenance::derived,
    .accuracy = "1e-5 m of head; the reservoir is taken as level",
    .evaluate = route_lake};

const Method reservoir_storage_table{
    .id = "reservoir.routing.storage_table",
    .title = "Level and outflow after k steps by the storage-indication table",
    .kind = EquationKind::procedure,
    .equation =
        "Each step: 2*S2/dt + O2 = I1 + I2 + 2*S1/dt - O1; O and H read from the table of 2*S/dt + O by straight lines.",
    .inputs = table_in,
    .outputs = table_out,
    .source = "chow_1988",
    .place = "eq. 8.2.3",
    .provenance = Provenance::memory,
    .accuracy = "of second order in the step; straight lines between the rows of the table",
    .evaluate = route_by_table};

const Method reservoir_indication_step{.id = "reservoir.indication.step",
                                       .title = "Storage indication at the end of a step",
                                       .equation = "G2 = I1 + I2 + 2*S1/dt - O1",
                                       .inputs = indication_in,
                                       .outputs = indication_out,
                                       .source = "chow_1988",
                                       .place = "eq. 8.2.3",
                                       .provenance = Provenance::memory,
                                       .accuracy = "exact for a straight inflow and a straight outflow over the step",
                                       .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                         out[0] = in[2] + in[3] + 2.0 * in[0] / in[4] - in[1];
                                         return {};
                                       }};

const Method reservoir_linear_step{.id = "reservoir.outflow.linear",
                                   .title = "Outflow of a linear reservoir at the end of a step",
                                   .equation = "O2 = (dt/K*(I1 + I2) + (2 - dt/K)*O1)/(2 + dt/K)",
                                   .inputs = linear_in,
                                   .outputs = linear_out,
                                   .source = "ponce_1989",
                                   .place = "ch. 8, linear reservoir",
                                   .provenance = Provenance::memory,
                                   .accuracy = "of second order in the step",
                                   .condition = step_too_long,
                                   .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                     out[0] = linear_reservoir_outflow({in[0], in[1], in[2], in[3], in[4]});
                                     return {};
                                   }};

const Method reservoir_drained_lake{.id = "reservoir.head.drained_lake",
                                    .title = "Head on the weir of a lake without inflow",
                                    .equation = "H = (1/sqrt(H0) + c*t/(2*A))^(-2)",
                                    .inputs = lake_in,
                                    .outputs = lake_out,
                                    .source = "momentum",
                                    .place = "A dH/dt = -c H^1.5 integrated",
                                    .provenance = Provenance::derived,
                                    .accuracy = "exact for a constant area",
                                    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                      out[0] = drained_lake_head({in[0], in[1], in[2], in[3]});
                                      return {};
                                    }};

const Method reservoir_third_order{
    .id = "reservoir.head.third_order",
    .title = "Head of a weir lake after one third-order step",
    .kind = EquationKind::procedure,
    .equation =
        "f(I, H) = dt*(I - c*H^1.5)/A; k1 = f(I1, H), k2 = f(I1 + (I2 - I1)/3, H + k1/3), k3 = f(I1 + 2*(I2 - I1)/3, H + "
        "2*k2/3); H2 = H + k1/4 + 3*k3/4.",
    .inputs = third_in,
    .outputs = third_out,
    .source = "chow_1988",
    .place = "sec. 8.3",
    .provenance = Provenance::memory,
    .accuracy = "of third order in the step",
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      out[0] = third_order_head({in[0], in[1], in[2], in[3], in[4], in[5]});
      return {};
    }};

}  // namespace quell::hydraulics::record
