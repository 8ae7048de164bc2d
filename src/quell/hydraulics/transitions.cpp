#include "quell/hydraulics/transitions.h"

#include <algorithm>
#include <cmath>

#include "quell/base/roots.h"

namespace quell::hydraulics {
namespace {

double velocity_head(const Trapezoid& section, double Q, double y) {
  const double V = Q / section.area(y);
  return V * V / (2.0 * gravity);
}

double froude_squared(const Trapezoid& section, double Q, double y) {
  const double A = section.area(y);
  return Q * Q * section.top_width(y) / (gravity * A * A * A);
}

double manning_velocity_head(const LakeInletInput& input, double y) {
  const double R = input.section.area(y) / input.section.perimeter(y);
  return std::pow(R, 4.0 / 3.0) * input.bed_slope / (2.0 * gravity * input.manning_n * input.manning_n);
}

double depth_of_area(const Trapezoid& section, double A) {
  return 2.0 * A / (section.b + std::sqrt(section.b * section.b + 4.0 * section.m * A));
}

/// The horizontal to vertical slope and width that make a section hold water.
bool holds_water(const Trapezoid& section) {
  return section.b >= 0.0 && section.m >= 0.0 && section.b + section.m > 0.0;
}
constexpr std::string_view no_section = "the section needs a bottom width or a side slope above zero";
}  // namespace

Outcome<double> depth_before_transition(const SectionChangeInput& input) {
  if (!holds_water(input.upstream) || !holds_water(input.downstream)) return no_answer(no_section);
  const auto critical = critical_depth(input.upstream, input.Q);
  if (!critical) return critical;
  const double after = velocity_head(input.downstream, input.Q, input.y2);
  const auto excess = [&](double y) {
    const double before = velocity_head(input.upstream, input.Q, y);
    return y + input.drop + before - input.y2 - after - input.K * std::abs(before - after);
  };
  // Where the velocities are equal nothing is lost and the balance has a kink: it is solved on one side of it.
  const double level = depth_of_area(input.upstream, input.downstream.area(input.y2));
  if (level >= *critical && std::abs(level + input.drop - input.y2) <= 1e-14 * input.y2) return level;
  const bool slows_down = level + input.drop > input.y2;
  const double lower = slows_down ? *critical : std::max(*critical, level);
  double upper = slows_down ? level : 2.0 * std::max(*critical, input.y2);
  while (!slows_down && excess(upper) < 0.0) upper *= 2.0;
  if (lower > upper || excess(lower) > 0.0)
    return no_answer("the transition is a control: the flow upstream of it is not subcritical");
  return find_root(excess, lower, upper, upper * 1e-14);
}

Outcome<double> critical_depth_from_head(const Trapezoid& section, double H) {
  if (!holds_water(section) || !(H > 0.0)) return no_answer(no_section);
  const auto excess = [&](double y) { return y + section.area(y) / (2.0 * section.top_width(y)) - H; };
  return find_root(excess, 0.5 * H, H, H * 1e-15);
}

Outcome<double> depth_at_lake_inlet(const LakeInletInput& input) {
  if (!holds_water(input.section)) return no_answer(no_section);
  const auto excess = [&](double y) { return y + manning_velocity_head(input, y) - input.H; };
  const auto y = find_root(excess, input.H * 1e-9, input.H, input.H * 1e-15);
  if (!y) return y;
  const double A = input.section.area(*y);
  const double Q = A * std::sqrt(2.0 * gravity * manning_velocity_head(input, *y));
  if (froude_squared(input.section, Q, *y) > 1.0) return no_answer("the channel is steep: critical depth at the inlet governs");
  return y;
}

namespace record {
namespace {
constexpr Symbol transition_in[] = {{"b1", "bottom width upstream", dimension::length, {0.0, no_limit}},
                                    {"m1", "side slope upstream, horizontal to 1 vertical", dimension::none, {0.0, no_limit}},
                                    {"b2", "bottom width downstream", dimension::length, {0.0, no_limit}},
                                    {"m2", "side slope downstream, horizontal to 1 vertical", dimension::none, {0.0, no_limit}},
                                    {"y2", "depth downstream", dimension::length, above_zero},
                                    {"Q", "discharge", dimension::discharge, above_zero},
                                    {"dz", "fall of the bed from upstream to downstream", dimension::length, any_value},
                                    {.name = "K",
                                     .meaning = "share of the change of the velocity head that is lost",
                                     .dimension = dimension::none,
                                     .range = {0.0, 1.0},
                                     .possible = {0.0, 1.0}}};
constexpr Symbol head_in[] = {{"b", "bottom width", dimension::length, {0.0, no_limit}},
                              {"m", "side slope, horizontal to 1 vertical", dimension::none, {0.0, no_limit}},
                              {"H", "lake level above the bed at the inlet", dimension::length, above_zero}};
constexpr Symbol inlet_in[] = {{"b", "bottom width", dimension::length, {0.0, no_limit}},
                               {"m", "side slope, horizontal to 1 vertical", dimension::none, {0.0, no_limit}},
                               {"S", "bed slope", dimension::none, {1e-6, 0.1}},
                               {"n", "Manning's roughness", dimension::manning, {0.008, 0.2}},
                               {"H", "lake level above the bed at the inlet", dimension::length, above_zero}};
constexpr Symbol y1_out[] = {{"y1", "subcritical depth upstream", dimension::length, above_zero}};
constexpr Symbol critical_out[] = {{"yc", "critical depth at the inlet", dimension::length, above_zero},
                                   {"Q", "discharge", dimension::discharge, above_zero}};
constexpr Symbol inlet_out[] = {{"y", "normal depth at the inlet", dimension::length, above_zero}};
}  // namespace

const Method depth_before_transition{
    .id = "transition.depth.energy",
    .title = "Subcritical depth before a transition between two trapezoidal sections",
    .kind = EquationKind::residual,
    .equation =
        "y1 + dz + (Q/((b1 + m1*y1)*y1))^2/(2*g) = y2 + (Q/((b2 + m2*y2)*y2))^2/(2*g) + "
        "K*abs((Q/((b1 + m1*y1)*y1))^2 - (Q/((b2 + m2*y2)*y2))^2)/(2*g)",
    .inputs = transition_in,
    .outputs = y1_out,
    .source = "momentum",
    .place = "energy before and after, with a share of the change of the velocity head lost",
    .provenance = Provenance::derived,
    .accuracy = "exact for the loss coefficient given",
    .remarks = "Loss coefficients: 0.1 to 0.3 for gradual, 0.5 to 0.8 for abrupt transitions (common practice).",
    .condition = [](std::span<const double> in) -> std::string_view {
      if (!(in[2] + in[3] > 0.0)) return no_section;
      return froude_squared(Trapezoid{in[2], in[3]}, in[5], in[4]) < 1.0 ? std::string_view{}
                                                                         : "the flow downstream is not subcritical";
    },
    .evaluate =
        [](std::span<const double> in, std::span<double> out) {
          return store(hydraulics::depth_before_transition({.upstream = {in[0], in[1]},
                                                            .downstream = {in[2], in[3]},
                                                            .y2 = in[4],
                                                            .Q = in[5],
                                                            .drop = in[6],
                                                            .K = in[7]}),
                       out);
        }};

const Method lake_inlet_critical{
    .id = "inlet.critical.trapezoidal",
    .title = "Critical depth and discharge from a lake into a steep channel",
    .kind = EquationKind::residual,
    .equation = "H = yc + (b + m*yc)*yc/(2*(b + 2*m*yc)); Q = sqrt(g*((b + m*yc)*yc)^3/(b + 2*m*yc))",
    .inputs = head_in,
    .outputs = critical_out,
    .source = "momentum",
    .place = "critical flow at the inlet, lake at rest, without loss",
    .provenance = Provenance::derived,
    .accuracy = "solved to 1e-12; inlet losses are left out",
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      const Trapezoid section{in[0], in[1]};
      const auto yc = critical_depth_from_head(section, in[2]);
      if (!yc) return tl::unexpected(yc.error());
      const double A = section.area(*yc);
      out[0] = *yc;
      out[1] = A * std::sqrt(gravity * A / section.top_width(*yc));
      return {};
    }};

const Method lake_inlet_uniform{
    .id = "inlet.uniform.trapezoidal",
    .title = "Normal depth in a long mild channel fed by a lake",
    .kind = EquationKind::residual,
    .equation = "H = y + ((b + m*y)*y/(b + 2*y*sqrt(1 + m^2)))^(4/3)*S/(2*g*n^2)",
    .inputs = inlet_in,
    .outputs = inlet_out,
    .source = "momentum",
    .place = "energy of uniform flow by Manning's formula equal to the level of the lake, without loss at the inlet",
    .provenance = Provenance::derived,
    .accuracy = "solved to 1e-12; n itself is rarely known better than 15 %",
    .remarks = "A steep channel is refused: there critical depth at the inlet governs.",
    .evaluate = [](std::span<const double> in, std::span<double> out) {
      return store(depth_at_lake_inlet({.section = {in[0], in[1]}, .bed_slope = in[2], .manning_n = in[3], .H = in[4]}), out);
    }};

}  // namespace record
}  // namespace quell::hydraulics
