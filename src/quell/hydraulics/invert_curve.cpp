#include "quell/hydraulics/invert_curve.h"

#include <cmath>

#include "quell/hydraulics/chute_symbols.h"

namespace quell::hydraulics {

double invert_radius_by_pressure(const CurvePressureInput& input) noexcept {
  return water_density * input.q * input.V / input.p;
}

Outcome<double> invert_radius_by_total_pressure(const TotalPressureInput& input) noexcept {
  const double left = input.PT - water_unit_weight * input.d;
  if (!(left > 0.0))
    return bad_input("PT", input.PT, water_unit_weight * input.d, no_limit, "the depth alone presses more on the bed");
  return water_density * input.d * input.V * input.V / left;
}

double invert_radius_by_depth(const CurveDepthInput& input) noexcept {
  return (input.ogee || input.theta >= 45 * degree ? 5.0 : 10.0) * input.d;
}

double curved_bed_pressure_head(const CurvedBedInput& input) noexcept {
  return input.d * std::cos(input.phi) + input.d * input.V * input.V / (gravity * input.R);
}

namespace record {
namespace {
constexpr Symbol velocity{"V", "mean velocity", dimension::velocity, above_zero};
constexpr Symbol depth{"d", "depth normal to the bed", dimension::length, above_zero};
constexpr Symbol pressure_in[] = {{"q", "discharge per unit width", dimension::unit_discharge, above_zero},
                                  velocity,
                                  {"p", "pressure that the curve may add", dimension::pressure, above_zero}};
constexpr Symbol total_in[] = {depth, velocity, {"PT", "pressure allowed on the bed", dimension::pressure, above_zero}};
constexpr Symbol depth_in[] = {
    depth, bed_angle("theta", 0.0, 1.4), {"k", "1 at the toe of an ogee crest, 0 below a chute", dimension::none, {0.0, 1.0}}};
constexpr Symbol bed_in[] = {
    depth, velocity, {"R", "radius of the curve", dimension::length, above_zero}, bed_angle("phi", 0.0, 1.4)};
constexpr Symbol radius_out[] = {{"R", "least radius of the curve", dimension::length, above_zero}};
constexpr Symbol bed_out[] = {{"hp", "pressure head on the bed", dimension::length, above_zero}};
}  // namespace

const Method invert_radius_pressure{.id = "invert.radius.pressure",
                                    .title = "Least radius of the invert curve by the pressure that it adds",
                                    .equation = "R = rho*q*V/p",
                                    .inputs = pressure_in,
                                    .outputs = radius_out,
                                    .source = "dsd_1987",
                                    .place = "ch. 9, R = 2 q V/p in ft and lb/ft2 with p = 100 lb/ft2 on ordinary chutes",
                                    .provenance = Provenance::memory,
                                    .accuracy = "the printed 2 is 1.94, rounded up",
                                    .remarks = "On high spillways 100 lb/ft2 asks for radii of hundreds of metres.",
                                    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                      out[0] = invert_radius_by_pressure({.q = in[0], .V = in[1], .p = in[2]});
                                      return {};
                                    }};

const Method invert_radius_total_pressure{
    .id = "invert.radius.em1603",
    .title = "Least radius of the invert curve by the pressure on its bed",
    .equation = "R = rho*d*V^2/(PT - gamma_w*d)",
    .inputs = total_in,
    .outputs = radius_out,
    .source = "em1603_1990",
    .place = "toe curve, total pressure of 1000 lb/ft2",
    .provenance = Provenance::memory,
    .accuracy = "exact for concentric flow",
    .condition = [](std::span<const double> in) -> std::string_view {
      return in[2] > water_unit_weight * in[0] ? std::string_view{} : "the depth alone presses more on the bed";
    },
    .evaluate =
        [](std::span<const double> in, std::span<double> out) {
          return store(invert_radius_by_total_pressure({.d = in[0], .V = in[1], .PT = in[2]}), out);
        }};

const Method invert_radius_depth{
    .id = "invert.radius.depth",
    .title = "Least radius of the invert curve by the depth",
    .kind = EquationKind::procedure,
    .equation = "R = 5 d at the toe of an ogee crest and below chutes of 45 degrees and steeper, else 10 d.",
    .inputs = depth_in,
    .outputs = radius_out,
    .source = "dsd_1987",
    .place = "ch. 9, vertical curves of chutes and toes of ogee crests",
    .provenance = Provenance::memory,
    .accuracy = "rule of practice",
    .remarks = "Engineering Monograph 25 takes 4 times the depth for chutes of 45 degrees and steeper.",
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      out[0] = invert_radius_by_depth({.d = in[0], .theta = in[1], .ogee = in[2] >= 0.5});
      return {};
    }};

const Method curved_bed_pressure{.id = "invert.bed_pressure.curve",
                                 .title = "Pressure head on the bed of the invert curve",
                                 .equation = "hp = d*cos(phi) + d*V^2/(g*R)",
                                 .inputs = bed_in,
                                 .outputs = bed_out,
                                 .source = "momentum",
                                 .place = "centripetal force of concentric flow",
                                 .provenance = Provenance::derived,
                                 .accuracy = "exact for concentric flow, d small against R",
                                 .condition = [](std::span<const double> in) -> std::string_view {
                                   return in[0] < in[2] ? std::string_view{} : "the flow is deeper than the curve is wide";
                                 },
                                 .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                   out[0] = curved_bed_pressure_head({.d = in[0], .V = in[1], .R = in[2], .phi = in[3]});
                                   return {};
                                 }};

}  // namespace record
}  // namespace quell::hydraulics
