#include "quell/hydraulics/bends.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace quell::hydraulics {
namespace {

std::string_view objection_to(const BendFlow& flow) noexcept {
  const double F = flow.V / std::sqrt(gravity * flow.d);
  if (F > 4.0) return "the Froude number is above 4: bends are to be avoided or banked";
  return {};
}

}  // namespace

double bend_rise(const BendRiseInput& input) noexcept {
  return input.C * input.V * input.V * input.B / (gravity * input.r);
}

Outcome<BendWaves> bend_waves(const BendFlow& input) noexcept {
  if (!(input.d > 0.0)) return bad_input("d", input.d, above_zero.lowest, no_limit, "there must be a flow");
  if (!(input.r > input.B / 2.0))
    return bad_input("r", input.r, input.B / 2.0, no_limit, "the inner wall would lie beyond the centre of the bend");
  const double F = input.V / std::sqrt(gravity * input.d);
  if (!(F > 1.0)) return bad_input("F", F, 1.0, no_limit, "flow that is not supercritical makes no standing waves");
  const double beta = std::asin(1.0 / F);
  const double theta0 = std::atan(input.B / ((input.r + input.B / 2.0) * std::tan(beta)));
  if (theta0 > 2.0 * beta || beta + theta0 / 2.0 > std::numbers::pi / 2.0)
    return no_answer("the bend is so sharp that the waves break: the formula ends");
  const double head = input.V * input.V / gravity;
  const double outer = std::sin(beta + theta0 / 2.0);
  const double inner = std::sin(beta - theta0 / 2.0);
  return BendWaves{theta0, head * outer * outer, head * inner * inner};
}

Outcome<double> bend_wall_depth(const BendFlow& input, double C) noexcept {
  const auto waves = bend_waves(input);
  if (!waves) return tl::unexpected(waves.error());
  return std::max(waves->outer, input.d + bend_rise({.V = input.V, .B = input.B, .r = input.r, .C = C}));
}

namespace record {
namespace {
constexpr Symbol velocity{"V", "mean velocity", dimension::velocity, above_zero};
constexpr Symbol depth{"d", "depth before the bend", dimension::length, above_zero};
constexpr Symbol width{"B", "width of the channel", dimension::length, above_zero};
constexpr Symbol radius{"r", "radius of the centreline", dimension::length, above_zero};
constexpr Symbol coefficient{"C", "1 for a simple curve, 0.5 with spiral transitions", dimension::none, {0.5, 1.0}, 1.0};
constexpr Symbol rise_in[] = {velocity, width, radius, coefficient};
constexpr Symbol rise_out[] = {{"dy", "rise of the outer edge above the centreline", dimension::length, above_zero}};
constexpr Symbol waves_in[] = {velocity, depth, width, radius};
constexpr Symbol waves_out[] = {{"theta0", "angle along the curve to the first extreme", dimension::none, above_zero},
                                {"yo", "depth at the outer wall there", dimension::length, above_zero},
                                {"yi", "depth at the inner wall there", dimension::length, {0.0, no_limit}}};
constexpr Symbol wall_in[] = {velocity, depth, width, radius, coefficient};
constexpr Symbol wall_out[] = {{"yw", "depth to which the outer wall is wetted", dimension::length, above_zero}};

BendFlow flow_of(std::span<const double> in) {
  return {.V = in[0], .d = in[1], .B = in[2], .r = in[3]};
}
std::string_view waves_condition(std::span<const double> in) {
  return objection_to(flow_of(in));
}
}  // namespace

const Method bend_rise{.id = "bend.rise.em1601",
                       .title = "Rise of the water at the outer wall of a bend",
                       .equation = "dy = C*V^2*B/(g*r)",
                       .inputs = rise_in,
                       .outputs = rise_out,
                       .source = "em1601_1991",
                       .place = "superelevation in curved channels",
                       .provenance = Provenance::memory,
                       .accuracy = "rule of practice",
                       .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                         out[0] = hydraulics::bend_rise({.V = in[0], .B = in[1], .r = in[2], .C = in[3]});
                         return {};
                       }};

const Method bend_waves{.id = "bend.depth.knapp",
                        .title = "Depths at the walls of a bend with rapid flow",
                        .equation =
                            "F = V/sqrt(g*d); beta = asin(1/F); theta0 = atan(B/((r + B/2)*tan(beta))); "
                            "yo = V^2/g*sin(beta + theta0/2)^2; yi = V^2/g*sin(beta - theta0/2)^2",
                        .inputs = waves_in,
                        .outputs = waves_out,
                        .source = "knapp_1951",
                        .place = "standing waves of a simple curve; they repeat every two theta0",
                        .provenance = Provenance::memory,
                        .accuracy = "about 10 % of the rise",
                        .condition = waves_condition,
                        .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                          const auto waves = hydraulics::bend_waves(flow_of(in));
                          if (!waves) return tl::unexpected(waves.error());
                          out[0] = waves->theta0;
                          out[1] = waves->outer;
                          out[2] = waves->inner;
                          return {};
                        }};

const Method bend_wall_depth{.id = "bend.wall_depth.larger",
                             .title = "Depth to which the outer wall of a bend is wetted",
                             .equation =
                                 "F = V/sqrt(g*d); beta = asin(1/F); theta0 = atan(B/((r + B/2)*tan(beta))); "
                                 "yw = max(V^2/g*sin(beta + theta0/2)^2, d + C*V^2*B/(g*r))",
                             .inputs = wall_in,
                             .outputs = wall_out,
                             .source = "em1601_1991",
                             .place = "the larger of its rise and of the waves of Knapp (1951)",
                             .provenance = Provenance::memory,
                             .accuracy = "rule of practice",
                             .condition = waves_condition,
                             .evaluate = [](std::span<const double> in, std::span<double> out) {
                               return store(hydraulics::bend_wall_depth(flow_of(in), in[4]), out);
                             }};

}  // namespace record
}  // namespace quell::hydraulics
