#include "quell/hydraulics/jet.h"

#include <cmath>
#include <limits>

#include "quell/base/constants.h"

namespace quell::hydraulics {

double jet_throw(const JetThrowInput& input) noexcept {
  const double hv = input.V * input.V / (2.0 * gravity);
  const double sine = std::sin(input.theta);
  return hv * std::sin(2.0 * input.theta) + 2.0 * std::cos(input.theta) * std::sqrt(hv * (hv * sine * sine + input.Y));
}

double jet_throw_depth(const JetThrowDepthInput& input) noexcept {
  const double c = 4.0 * input.K * (input.d + input.V * input.V / (2.0 * gravity));
  const double sine = std::sin(input.theta);
  return 0.5 * std::cos(input.theta) * (c * sine + std::sqrt(c * c * sine * sine + 4.0 * c * input.Y));
}

double bucket_pressure_head(const BucketPressureInput& input) noexcept {
  return (input.V * input.V / (gravity * input.R) + 1.0) * input.d1;
}

double scour_veronese(const ScourInput& input) noexcept {
  return 1.90 * std::pow(input.H, 0.225) * std::pow(input.q, 0.54);
}

namespace {
double mason_arumugam(const ScourInput& input, double K, double x, double y) noexcept {
  return K * std::pow(input.q, x) * std::pow(input.H, y) * std::pow(input.h, 0.15) /
         (std::pow(gravity, 0.30) * std::pow(input.d_m, 0.10));
}
}  // namespace

double scour_mason_arumugam(const ScourInput& input) noexcept {
  return mason_arumugam(input, 6.42 - 3.10 * std::pow(input.H, 0.10), 0.60 - input.H / 300.0, 0.15 + input.H / 200.0);
}

double scour_mason_arumugam_constant(const ScourInput& input) noexcept {
  return mason_arumugam(input, 3.27, 0.60, 0.05);
}

namespace record {
namespace {
constexpr Range lip_angles{0.0, 1.2};
constexpr Symbol throw_in[] = {{"V", "velocity at the lip", dimension::velocity, above_zero},
                               {"theta", "lip angle above the horizontal", dimension::none, lip_angles,
                                std::numeric_limits<double>::quiet_NaN(), lip_angles},
                               {"Y", "lip above the surface that the jet hits", dimension::length, {0.0, no_limit}}};
constexpr Symbol depth_in[] = {{"V", "velocity at the lip", dimension::velocity, above_zero},
                               {"theta", "lip angle above the horizontal", dimension::none, lip_angles,
                                std::numeric_limits<double>::quiet_NaN(), lip_angles},
                               {"Y", "lip above the surface that the jet hits", dimension::length, {0.0, no_limit}},
                               {"d", "depth at the lip", dimension::length, above_zero},
                               {"K", "1 in theory, 0.9 for prototype jets", dimension::none, {0.8, 1.0}}};
constexpr Symbol pressure_in[] = {{"V", "velocity in the bucket", dimension::velocity, above_zero},
                                  {"R", "radius of the bucket", dimension::length, above_zero},
                                  {"d1", "depth in the bucket", dimension::length, above_zero}};
constexpr Symbol veronese_in[] = {{"q", "discharge per width", dimension::unit_discharge, above_zero},
                                  {"H", "fall from reservoir to tailwater", dimension::length, above_zero}};
constexpr Symbol mason_in[] = {{"q", "discharge per width", dimension::unit_discharge, above_zero},
                               {"H", "fall from reservoir to tailwater", dimension::length, {1.0, 140.0}},
                               {"h", "tailwater above the bed", dimension::length, above_zero},
                               {"dm", "grain or block size of the bed", dimension::length, above_zero}};
constexpr Symbol factor_in[] = {{"q", "discharge per width", dimension::unit_discharge, above_zero},
                                {"H4", "reservoir level above the lip", dimension::length, above_zero},
                                {"m", "factor of the bed", dimension::none, {0.36, 0.65}}};
constexpr Symbol throw_out[] = {{"X", "horizontal throw", dimension::length, {0.0, no_limit}}};
constexpr Symbol pressure_out[] = {{"hp", "pressure head on the invert", dimension::length, above_zero}};
constexpr Symbol scour_out[] = {{"Ds", "depth of scour below the tailwater", dimension::length, above_zero}};

ScourInput scour_of(std::span<const double> in) {
  return {.q = in[0], .H = in[1], .h = in[2], .d_m = in[3]};
}
}  // namespace

const Method jet_throw{.id = "jet.throw.em1603",
                       .title = "Throw of the jet of a flip bucket",
                       .equation = "hv = V^2/(2*g); X = hv*sin(2*theta) + 2*cos(theta)*sqrt(hv*(hv*sin(theta)^2 + Y))",
                       .inputs = throw_in,
                       .outputs = throw_out,
                       .source = "em1603_1990",
                       .place = "flip buckets; ballistic jet without air",
                       .provenance = Provenance::memory,
                       .accuracy = "upper bound: air and break-up shorten the throw",
                       .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                         out[0] = hydraulics::jet_throw({.V = in[0], .theta = in[1], .Y = in[2]});
                         return {};
                       }};

const Method jet_throw_depth{
    .id = "jet.throw.dsd",
    .title = "Throw of the jet of a flip bucket with its depth and the loss of prototype jets",
    .equation = "c = 4*K*(d + V^2/(2*g)); X = cos(theta)/2*(c*sin(theta) + sqrt(c^2*sin(theta)^2 + 4*c*Y))",
    .inputs = depth_in,
    .outputs = throw_out,
    .source = "dsd_1987",
    .place = "ch. 9, trajectory y = x tan(theta) - x^2/(4 K (d + hv) cos^2(theta)), solved for the throw",
    .provenance = Provenance::memory,
    .accuracy = "K = 0.9 is a rule of practice",
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      out[0] = hydraulics::jet_throw_depth({.V = in[0], .theta = in[1], .Y = in[2], .d = in[3], .K = in[4]});
      return {};
    }};

const Method bucket_pressure_head{.id = "bucket.pressure_head.centripetal",
                                  .title = "Pressure head on the invert of a bucket",
                                  .equation = "hp = (V^2/(g*R) + 1)*d1",
                                  .inputs = pressure_in,
                                  .outputs = pressure_out,
                                  .source = "is_7365",
                                  .place = "read in a design sheet that quotes it",
                                  .provenance = Provenance::seen,
                                  .accuracy = "concentric flow",
                                  .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                    out[0] = hydraulics::bucket_pressure_head({.V = in[0], .R = in[1], .d1 = in[2]});
                                    return {};
                                  }};

const Method scour_veronese{.id = "scour.depth.veronese",
                            .title = "Scour below a falling jet by Veronese",
                            .equation = "Ds = 1.9*H^0.225*q^0.54",
                            .inputs = veronese_in,
                            .outputs = scour_out,
                            .source = "veronese_1937",
                            .place = "limit depth; the US form is 1.32 in ft and ft2/s",
                            .provenance = Provenance::memory,
                            .accuracy = "field cases scatter widely",
                            .remarks = "Numbers in m and m2/s.",
                            .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                              out[0] = hydraulics::scour_veronese({.q = in[0], .H = in[1], .h = 1.0, .d_m = 1.0});
                              return {};
                            }};

const Method scour_mason_arumugam{.id = "scour.depth.mason_arumugam",
                                  .title = "Scour below a falling jet by Mason and Arumugam, exponents by the fall",
                                  .equation = "Ds = (6.42 - 3.1*H^0.1)*q^(0.6 - H/300)*H^(0.15 + H/200)*h^0.15/(g^0.3*dm^0.1)",
                                  .inputs = mason_in,
                                  .outputs = scour_out,
                                  .source = "mason_arumugam_1985",
                                  .place = "formula for models and prototypes; 0.25 m for rock",
                                  .provenance = Provenance::memory,
                                  .accuracy = "standard deviation about 25 % of the depths observed, recalled",
                                  .remarks = "Numbers in m and m2/s.",
                                  .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                    const double depth = hydraulics::scour_mason_arumugam(scour_of(in));
                                    if (!(depth > 0.0)) return no_answer("the formula ends at a fall of about 1450 m");
                                    out[0] = depth;
                                    return {};
                                  }};

const Method scour_mason_arumugam_constant{.id = "scour.depth.mason_arumugam_constant",
                                           .title = "Scour below a falling jet by Mason and Arumugam, constant exponents",
                                           .equation = "Ds = 3.27*q^0.6*H^0.05*h^0.15/(g^0.3*dm^0.1)",
                                           .inputs = mason_in,
                                           .outputs = scour_out,
                                           .source = "mason_arumugam_1985",
                                           .place = "simplified form",
                                           .provenance = Provenance::memory,
                                           .accuracy = "below the other form at falls above 20 m",
                                           .remarks = "Numbers in m and m2/s.",
                                           .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                             out[0] = hydraulics::scour_mason_arumugam_constant(scour_of(in));
                                             return {};
                                           }};

const Method scour_head_factor{.id = "scour.depth.is_7365",
                               .title = "Scour below a trajectory bucket from discharge and head",
                               .equation = "Ds = m*sqrt(q*H4)",
                               .inputs = factor_in,
                               .outputs = scour_out,
                               .source = "is_7365",
                               .place = "m = 0.36 for the least expected, read in a design sheet; larger factors from memory",
                               .provenance = Provenance::seen,
                               .accuracy = "least expected depth",
                               .remarks = "Numbers in m and m2/s.",
                               .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                 out[0] = in[2] * std::sqrt(in[0] * in[1]);
                                 return {};
                               }};

}  // namespace record
}  // namespace quell::hydraulics
