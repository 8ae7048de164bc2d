// Records of wall_loads.h.
#include <limits>

#include "quell/hydraulics/wall_loads.h"

namespace quell::hydraulics::record {
namespace {
constexpr Dimension force_per_length{0, 6, -12};
constexpr Dimension moment_per_length = dimension::force;  // N m per m
constexpr Range not_negative{0.0, no_limit};
constexpr double upright = 1.5707;  // rad, short of a right angle

constexpr Symbol pulse_in[] = {{"k", "peak over rms", dimension::none, {3.0, 5.0}, 4.0},
                               {"Cp", "rms of the pressure over the velocity head", dimension::none, {0.0, 0.085}},
                               {"V", "velocity at the toe", dimension::velocity, above_zero}};
constexpr Symbol pulse_out[] = {{"p", "peak of the pressure on the wall", dimension::pressure, not_negative}};
constexpr Symbol even_in[] = {{"p", "pressure", dimension::pressure, not_negative},
                              {"y", "height over which it acts, from the floor", dimension::length, not_negative}};
constexpr Symbol force_out[] = {{"F", "force per length of wall", force_per_length, not_negative},
                                {"M", "moment about the floor per length", moment_per_length, not_negative}};
constexpr double given = std::numeric_limits<double>::quiet_NaN();
constexpr Symbol coefficient_in[] = {
    {"phi", "angle of friction of the fill", dimension::none, {0.3, 0.8}, given, {0.0, upright}},
    {"delta", "angle of friction between fill and wall", dimension::none, {0.0, 0.53}, 0.0, {0.0, upright}},
    {"kh", "horizontal acceleration over g", dimension::none, {0.0, 0.4}},
    {"kv", "vertical acceleration over g, upward", dimension::none, {-0.3, 0.3}, 0.0, {-0.99, 0.99}}};
constexpr Symbol coefficient_out[] = {{"K", "coefficient of active earth pressure", dimension::none, above_zero}};
constexpr Symbol fill_in[] = {{"dK", "active coefficient in the earthquake less the one without", dimension::none, {0.0, 1.0}},
                              {"h", "height of the fill above the floor", dimension::length, above_zero},
                              {"hw", "water table above the floor", dimension::length, not_negative},
                              {"g1", "moist unit weight", dimension::unit_weight, {15.0e3, 23.0e3}},
                              {"g2", "submerged unit weight", dimension::unit_weight, {7.0e3, 14.0e3}}};
constexpr Symbol water_in[] = {{"kh", "horizontal acceleration over g", dimension::none, {0.0, 0.4}},
                               {"h", "depth of the water", dimension::length, not_negative}};
constexpr Range usual_weight{1.0e3, 2.0e7};  // N per m, walls of 1 m to 50 m
constexpr Symbol stability_in[] = {
    {"F", "horizontal force on the stem, the way it is driven", force_per_length, usual_weight},
    {"M", "its moment about the floor", moment_per_length, any_value},
    {"s", "thickness of the base", dimension::length, above_zero},
    {"W1", "weight of the stem", force_per_length, usual_weight},
    {"a1", "its distance from the turning edge", dimension::length, not_negative},
    {"W2", "weight of the base", force_per_length, usual_weight},
    {"W3", "weight of earth and water on the heel", force_per_length, {0.0, 2.0e7}},
    {"a3", "its distance from the turning edge", dimension::length, not_negative},
    {"B", "width of the base", dimension::length, above_zero},
    {"u1", "uplift at the turning edge", dimension::pressure, not_negative, 0.0},
    {"u2", "uplift at the far edge", dimension::pressure, not_negative, 0.0},
    {"phi", "angle of friction of the base", dimension::none, {0.17, 0.87}, given, {0.0, upright}}};
constexpr Symbol stability_out[] = {
    {"SFo", "safety against overturning", dimension::none, not_negative},
    {"SFs", "safety against sliding", dimension::none, not_negative},
    {"e", "resultant from the middle of the base, towards the turning edge", dimension::length, any_value}};

Outcome<void> store(const WaterForce& load, std::span<double> out) {
  out[0] = load.force;
  out[1] = load.moment;
  return {};
}
}  // namespace

const Method wall_pulse{
    .id = "wall.fluctuation_peak.velocity_head",
    .title = "Peak pressure of a jump on a wall",
    .equation = "p = k*Cp*rho*V^2/2",
    .inputs = pulse_in,
    .outputs = pulse_out,
    .source = "practice",
    .place = "peak of a Gaussian signal, three to five times its rms",
    .provenance = Provenance::common_practice,
    .accuracy = "order of size: the rms is that of floors, known to 30 %, and no measured wall load was read",
    .remarks = "Local: over a whole wall the peaks do not act at once.",
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      out[0] = hydraulics::wall_pulse({in[0], in[1], in[2]});
      return {};
    }};

const Method even_pressure_on_wall{.id = "wall.pressure_force.even",
                                   .title = "Even pressure on the lower part of a wall",
                                   .equation = "F = p*y; M = p*y^2/2",
                                   .inputs = even_in,
                                   .outputs = force_out,
                                   .source = "momentum",
                                   .place = "integral of the pressure",
                                   .provenance = Provenance::derived,
                                   .accuracy = "exact",
                                   .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                     return store(hydraulics::even_pressure_on_wall(in[0], in[1]), out);
                                   }};

const Method earth_coefficient_in_earthquake{
    .id = "wall.earth_coefficient.mononobe_okabe",
    .title = "Active earth pressure on an upright wall in an earthquake, level fill",
    .equation =
        "psi = atan(kh/(1 - kv)); w = 1 + sqrt(sin(phi + delta)*sin(phi - psi)/cos(delta + psi)); "
        "K = cos(phi - psi)^2/(cos(psi)*cos(delta + psi)*w^2)",
    .inputs = coefficient_in,
    .outputs = coefficient_out,
    .source = "mononobe_matsuo_1929",
    .place = "force on the sliding wedge, largest over its slope",
    .provenance = Provenance::memory,
    .accuracy = "exact for a plane wedge of dry sand behind a wall that yields",
    .remarks = "A wall that cannot yield bears more.",
    .evaluate = [](std::span<const double> in, std::span<double> out) {
      return quell::store(hydraulics::earth_coefficient_in_earthquake({in[0], in[1], in[2], in[3]}), out);
    }};

const Method earthquake_in_fill{.id = "wall.earthquake_force.fill",
                                .title = "Thrust that an earthquake adds to that of a fill",
                                .equation = "a = h - hw; F = dK/2*(g1*a^2 + 2*g1*a*hw + (g2 + gamma_w)*hw^2); M = 0.6*h*F",
                                .inputs = fill_in,
                                .outputs = force_out,
                                .source = "seed_whitman_1970",
                                .place = "increment of the thrust at 0.6 of the height",
                                .provenance = Provenance::memory,
                                .accuracy = "first check; the pore water is taken to move with the grains",
                                .condition = [](std::span<const double> in) -> std::string_view {
                                  return in[2] <= in[1] ? std::string_view{} : "the water table lies above the fill";
                                },
                                .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                  return store(hydraulics::earthquake_in_fill({in[0], in[1], in[2], in[3], in[4]}), out);
                                }};

const Method earthquake_in_water{.id = "wall.earthquake_force.westergaard",
                                 .title = "Thrust of water before an upright wall in an earthquake",
                                 .equation = "F = 7/12*kh*gamma_w*h^2; M = 7/30*kh*gamma_w*h^3",
                                 .inputs = water_in,
                                 .outputs = force_out,
                                 .source = "westergaard_1933",
                                 .place = "parabola 7/8 kh gamma sqrt(h z) below the surface, integrated",
                                 .provenance = Provenance::memory,
                                 .accuracy = "within some per cent for a rigid wall and water that reaches far back",
                                 .remarks = "In a narrow basin the water before the wall is less, and so is the thrust.",
                                 .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                   return store(hydraulics::earthquake_in_water(in[0], in[1]), out);
                                 }};

const Method wall_stability{
    .id = "wall.stability.l_shaped",
    .title = "Overturning, sliding and resultant of an L-shaped wall",
    .equation =
        "N = W1 + W2 + W3 - (u1 + u2)/2*B; R = W1*a1 + W2*B/2 + W3*a3; D = M + F*s + B^2*(u1/6 + u2/3); "
        "SFo = R/max(D, R/1000); SFs = N*tan(phi)/F; e = B/2 - (R - D)/N",
    .inputs = stability_in,
    .outputs = stability_out,
    .source = "momentum",
    .place = "balance about the lower edge to which the wall is driven",
    .provenance = Provenance::derived,
    .accuracy = "exact for the loads given",
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      const auto wall = hydraulics::wall_stability({.F = in[0],
                                                    .M = in[1],
                                                    .s = in[2],
                                                    .W1 = in[3],
                                                    .a1 = in[4],
                                                    .W3 = in[6],
                                                    .a3 = in[7],
                                                    .W2 = in[5],
                                                    .B = in[8],
                                                    .u1 = in[9],
                                                    .u2 = in[10],
                                                    .phi = in[11]});
      if (!wall) return tl::unexpected(wall.error());
      out[0] = wall->overturning;
      out[1] = wall->sliding;
      out[2] = wall->eccentricity;
      return {};
    }};

}  // namespace quell::hydraulics::record
