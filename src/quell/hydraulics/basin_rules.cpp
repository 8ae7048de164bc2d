#include "quell/hydraulics/basin_rules.h"

#include <cmath>

namespace quell::hydraulics {

double basin_freeboard(const BasinFreeboardInput& input) noexcept {
  return 0.1 * (input.V1 + input.y2);
}

double chute_freeboard(const ChuteFreeboardInput& input) noexcept {
  return 0.61 + 0.0371 * input.V * std::cbrt(input.d);
}

double invert_curve_pressure(const InvertPressureInput& input) noexcept {
  return water_density * input.q * input.V / input.R;
}

double baffle_pier_force(const PierForceInput& input) noexcept {
  return 2.0 * water_unit_weight * input.A * (input.y1 + input.V1 * input.V1 / (2.0 * gravity));
}

double stagnation_force(double A, double V) noexcept {
  return 0.5 * water_density * V * V * A;
}

double largest_flare(const FlareInput& input) noexcept {
  return 1.0 / (3.0 * input.F);
}

namespace record {
namespace {
constexpr Symbol freeboard_in[] = {{"V1", "velocity at the toe", dimension::velocity, above_zero},
                                   {"y2", "sequent depth", dimension::length, above_zero}};
constexpr Symbol freeboard_out[] = {
    {"FB", "freeboard above the higher of tailwater and sequent depth", dimension::length, above_zero}};
constexpr Symbol chute_in[] = {{"V", "mean velocity", dimension::velocity, above_zero},
                               {"d", "clear-water depth normal to the floor", dimension::length, above_zero}};
constexpr Symbol chute_out[] = {{"FB", "freeboard normal to the floor", dimension::length, above_zero}};
constexpr Symbol pressure_in[] = {{"q", "discharge per unit width", dimension::unit_discharge, above_zero},
                                  {"V", "mean velocity", dimension::velocity, above_zero},
                                  {"R", "radius of the invert curve", dimension::length, above_zero}};
constexpr Symbol pressure_out[] = {{"p", "pressure added by the curve", dimension::pressure, above_zero}};
constexpr Symbol pier_in[] = {{"A", "frontal area of the pier", dimension::area, above_zero},
                              {"y1", "depth at the toe", dimension::length, above_zero},
                              {"V1", "velocity at the toe", dimension::velocity, above_zero}};
constexpr Symbol pier_out[] = {{"Fp", "force on the pier", dimension::force, above_zero}};
constexpr Symbol face_in[] = {{"A", "area of the face", dimension::area, above_zero},
                              {"V", "velocity of the jet", dimension::velocity, above_zero}};
constexpr Symbol face_out[] = {{"Fs", "force on the face", dimension::force, above_zero}};
constexpr Symbol flare_in[] = {{"F", "Froude number at the start of the flare", dimension::none, {1.0, 20.0}}};
constexpr Symbol flare_out[] = {{"t", "tangent of the angle of each wall", dimension::none, above_zero}};
}  // namespace

const Method basin_freeboard{.id = "wall.freeboard.basin",
                             .title = "Freeboard of the basin's walls",
                             .equation = "FB = 0.1*(V1 + y2)",
                             .inputs = freeboard_in,
                             .outputs = freeboard_out,
                             .source = "dsd_1987",
                             .place = "ch. 9, freeboard of stilling basins",
                             .provenance = Provenance::memory,
                             .accuracy = "rule of practice",
                             .remarks = "The factor of V1 is 0.1 s, so the rule reads the same in m and in ft.",
                             .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                               out[0] = hydraulics::basin_freeboard({.V1 = in[0], .y2 = in[1]});
                               return {};
                             }};

const Method chute_freeboard{.id = "wall.freeboard.chute",
                             .title = "Freeboard of the chute's walls, normal to the floor",
                             .equation = "FB = 0.61 + 0.0371*V*d^(1/3)",
                             .inputs = chute_in,
                             .outputs = chute_out,
                             .source = "dsd_1987",
                             .place = "ch. 9, freeboard of chutes: 2.0 + 0.025 V d^(1/3) in ft and ft/s",
                             .provenance = Provenance::memory,
                             .accuracy = "rule of practice",
                             .remarks = "Numbers in m and m/s.",
                             .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                               out[0] = hydraulics::chute_freeboard({.V = in[0], .d = in[1]});
                               return {};
                             }};

const Method invert_curve_pressure{.id = "invert.pressure.momentum",
                                   .title = "Pressure that the invert curve adds",
                                   .equation = "p = rho*q*V/R",
                                   .inputs = pressure_in,
                                   .outputs = pressure_out,
                                   .source = "momentum",
                                   .place = "centripetal force of the flow over the curve's length",
                                   .provenance = Provenance::derived,
                                   .accuracy = "exact for concentric flow",
                                   .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                     if (!(in[2] > 0.0)) return no_answer("R must be above zero");
                                     out[0] = hydraulics::invert_curve_pressure({.q = in[0], .V = in[1], .R = in[2]});
                                     return {};
                                   }};

const Method baffle_pier_force{.id = "basin.pier_force.em25",
                               .title = "Design force on a baffle pier",
                               .equation = "Fp = 2*gamma_w*A*(y1 + V1^2/(2*g))",
                               .inputs = pier_in,
                               .outputs = pier_out,
                               .source = "peterka_1984",
                               .place = "sec. 3",
                               .provenance = Provenance::memory,
                               .accuracy = "conservative: a jet on a plane, suction behind left out",
                               .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                 out[0] = hydraulics::baffle_pier_force({.A = in[0], .y1 = in[1], .V1 = in[2]});
                                 return {};
                               }};

const Method stagnation_force{
    .id = "basin.face_force.stagnation",
    .title = "Force of a jet that meets the face of a block or sill whole",
    .equation = "Fs = rho*V^2/2*A",
    .inputs = face_in,
    .outputs = face_out,
    .source = "momentum",
    .place = "stagnation pressure over the whole face",
    .provenance = Provenance::derived,
    .accuracy = "upper bound of the mean force on a face that the jet covers; fluctuation not included",
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      out[0] = hydraulics::stagnation_force(in[0], in[1]);
      return {};
    }};

const Method largest_flare{.id = "chute.largest_flare.froude",
                           .title = "Largest flare of a wall that supercritical flow follows",
                           .equation = "t = 1/(3*F)",
                           .inputs = flare_in,
                           .outputs = flare_out,
                           .source = "hec14_2006",
                           .place = "ch. 4, errata; the same rule in Design of small dams",
                           .provenance = Provenance::seen,
                           .accuracy = "rule of practice",
                           .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                             if (!(in[0] > 0.0)) return no_answer("F must be above zero");
                             out[0] = hydraulics::largest_flare({.F = in[0]});
                             return {};
                           }};

}  // namespace record
}  // namespace quell::hydraulics
