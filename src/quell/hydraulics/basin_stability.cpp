#include "quell/hydraulics/basin_stability.h"

#include <algorithm>
#include <cmath>

#include "quell/base/constants.h"

namespace quell::hydraulics {

double flotation_factor(const FlotationInput& input) noexcept {
  return (input.Ws + input.Wc + input.S) / (input.U - input.Wg);
}

WaterForce water_on_wall(double ho, double hi) noexcept {
  return {.force = 0.5 * water_unit_weight * (ho * ho - hi * hi),
          .moment = water_unit_weight * (ho * ho * ho - hi * hi * hi) / 6.0};
}

WaterForce backfill_on_wall(const BackfillInput& input) noexcept {
  const double above = input.h - input.hw;
  const double at_table = input.K0 * input.gamma * above;
  const double dry = 0.5 * at_table * above;
  const double block = at_table * input.hw;
  const double wet = 0.5 * input.K0 * input.gamma_below * input.hw * input.hw;
  const auto water = water_on_wall(input.hw, 0.0);
  return {.force = dry + block + wet + water.force,
          .moment = dry * (input.hw + above / 3.0) + block * input.hw / 2.0 + wet * input.hw / 3.0 + water.moment};
}

Outcome<Bearing> bearing_pressure(const BearingInput& input) {
  const double e = std::abs(input.e);
  if (!(e < 0.5 * input.B)) return no_answer("the force leaves the base: the wall overturns");
  if (e <= input.B / 6.0)
    return Bearing{input.N / input.B * (1.0 + 6.0 * e / input.B), input.N / input.B * (1.0 - 6.0 * e / input.B)};
  return Bearing{2.0 * input.N / (3.0 * (0.5 * input.B - e)), 0.0};
}

namespace record {
namespace {
constexpr Dimension force_per_length{0, 6, -12};
constexpr Dimension moment_per_length = dimension::force;  // N m per m
constexpr Range not_negative{0.0, no_limit};
constexpr Symbol flotation_in[] = {{"Ws", "weight of structure and soil on it, per length", force_per_length, above_zero},
                                   {"Wc", "water held inside under control", force_per_length, not_negative, 0.0},
                                   {"S", "surcharge", force_per_length, not_negative, 0.0},
                                   {"U", "uplift on the base", force_per_length, above_zero},
                                   {"Wg", "water above the structure", force_per_length, not_negative, 0.0}};
constexpr Symbol wall_in[] = {{"ho", "water outside, above the floor", dimension::length, not_negative},
                              {"hi", "water inside, above the floor", dimension::length, not_negative, 0.0}};
constexpr Symbol backfill_in[] = {{"h", "height of the fill above the floor", dimension::length, above_zero},
                                  {"hw", "water table above the floor", dimension::length, not_negative},
                                  {"K0", "coefficient of earth pressure at rest", dimension::none, {0.3, 1.0}, 0.5},
                                  {"g1", "moist unit weight", dimension::unit_weight, {15.0e3, 23.0e3}},
                                  {"g2", "submerged unit weight", dimension::unit_weight, {7.0e3, 14.0e3}}};
constexpr Symbol bearing_in[] = {{"N", "normal force per length", force_per_length, above_zero},
                                 {"e", "eccentricity from the middle of the base", dimension::length, any_value},
                                 {"B", "width of the base", dimension::length, above_zero}};
constexpr Symbol sliding_in[] = {{"N", "effective normal force per length", force_per_length, above_zero},
                                 {"phi", "angle of friction", dimension::none, {0.17, 0.87}},
                                 {"c", "cohesion", dimension::pressure, not_negative, 0.0},
                                 {"B", "length of the plane", dimension::length, above_zero},
                                 {"T", "driving force per length", force_per_length, above_zero}};
constexpr Symbol factor_out[] = {{"SF", "safety factor", dimension::none, not_negative}};
constexpr Symbol force_out[] = {{"F", "force per length of wall", force_per_length, any_value},
                                {"M", "moment about the floor per length", moment_per_length, any_value}};
constexpr Symbol bearing_out[] = {{"p1", "largest pressure", dimension::pressure, above_zero},
                                  {"p2", "smallest pressure", dimension::pressure, not_negative}};
}  // namespace

const Method flotation_factor{.id = "basin.flotation.etl_307",
                              .title = "Safety of a basin against flotation",
                              .equation = "SF = (Ws + Wc + S)/(U - Wg)",
                              .inputs = flotation_in,
                              .outputs = factor_out,
                              .source = "etl_1110_2_307",
                              .place = "definition, which names stilling basins",
                              .provenance = Provenance::seen,
                              .accuracy = "1.3 usual, 1.2 unusual and 1.1 extreme, recalled from EM 1110-2-2100",
                              .condition = [](std::span<const double> in) -> std::string_view {
                                return in[3] > in[4] ? std::string_view{} : "no uplift is left";
                              },
                              .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                if (!(in[3] > in[4])) return no_answer("no uplift is left");
                                out[0] = hydraulics::flotation_factor({in[0], in[1], in[2], in[3], in[4]});
                                return {};
                              }};

const Method water_on_wall{.id = "wall.water_force.two_sides",
                           .title = "Water on both sides of a wall",
                           .equation = "F = gamma_w/2*(ho^2 - hi^2); M = gamma_w/6*(ho^3 - hi^3)",
                           .inputs = wall_in,
                           .outputs = force_out,
                           .source = "momentum",
                           .place = "hydrostatic pressure",
                           .provenance = Provenance::derived,
                           .accuracy = "exact",
                           .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                             const auto wall = hydraulics::water_on_wall(in[0], in[1]);
                             out[0] = wall.force;
                             out[1] = wall.moment;
                             return {};
                           }};

const Method backfill_on_wall{.id = "wall.earth_force.at_rest",
                              .title = "Earth at rest and water on a wall",
                              .equation =
                                  "a = h - hw; F = K0*g1*a^2/2 + K0*g1*a*hw + K0*g2*hw^2/2 + gamma_w/2*hw^2; "
                                  "M = K0*g1*a^2/2*(hw + a/3) + K0*g1*a*hw^2/2 + K0*g2*hw^3/6 + gamma_w/6*hw^3",
                              .inputs = backfill_in,
                              .outputs = force_out,
                              .source = "momentum",
                              .place = "earth pressure in proportion to the weight above, water beside it",
                              .provenance = Provenance::derived,
                              .accuracy = "as good as the coefficient",
                              .condition = [](std::span<const double> in) -> std::string_view {
                                return in[1] <= in[0] ? std::string_view{} : "the water table lies above the fill";
                              },
                              .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                const auto wall = hydraulics::backfill_on_wall({in[0], in[1], in[2], in[3], in[4]});
                                out[0] = wall.force;
                                out[1] = wall.moment;
                                return {};
                              }};

const Method bearing_pressure{.id = "basin.bearing.straight_line",
                              .title = "Pressure below a base without tension",
                              .kind = EquationKind::procedure,
                              .equation =
                                  "Inside the middle third N/B (1 +- 6 e/B); outside it a triangle over three times the "
                                  "distance from the force to the nearer edge.",
                              .inputs = bearing_in,
                              .outputs = bearing_out,
                              .source = "momentum",
                              .place = "rigid base on soil that takes no tension",
                              .provenance = Provenance::derived,
                              .accuracy = "exact for a straight line of pressure",
                              .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                const auto bearing = hydraulics::bearing_pressure({in[0], in[1], in[2]});
                                if (!bearing) return tl::unexpected(bearing.error());
                                out[0] = bearing->largest;
                                out[1] = bearing->smallest;
                                return {};
                              }};

const Method sliding_factor{.id = "basin.sliding.friction",
                            .title = "Safety against sliding",
                            .equation = "SF = (N*tan(phi) + c*B)/T",
                            .inputs = sliding_in,
                            .outputs = factor_out,
                            .source = "em_2100_2005",
                            .place = "eq. 3-1",
                            .provenance = Provenance::seen,
                            .accuracy = "1.5 to 2.0 usual, recalled",
                            .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                              out[0] = (in[0] * std::tan(in[1]) + in[2] * in[3]) / in[4];
                              return {};
                            }};

}  // namespace record
}  // namespace quell::hydraulics
