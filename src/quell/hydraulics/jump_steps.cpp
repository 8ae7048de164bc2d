#include "quell/hydraulics/jump_steps.h"

#include <algorithm>
#include <cmath>

#include "quell/base/roots.h"
#include "quell/hydraulics/jump_cubic.h"

namespace quell::hydraulics {
namespace {

constexpr std::string_view choked = "the step is so high that it chokes the flow";

/// F1^2 of the inflow, refused where it is not supercritical.
Outcome<double> supercritical_square(const StepJumpInput& input) {
  if (!(input.y1 > 0.0 && input.s >= 0.0)) return no_answer("y1 must be above zero, s not below");
  const double F1 = froude_number(input.V1, input.y1);
  if (!(F1 > 1.0)) return bad_input("F1", F1, 1.0, no_limit, "flow that is not supercritical makes no jump");
  return F1 * F1;
}

double classical_ratio(const StepJumpInput& input) {
  return sequent_depth({.y1 = input.y1, .V1 = input.V1}) / input.y1;
}

}  // namespace

Outcome<double> sequent_depth_drop_a(const StepJumpInput& input) {
  const auto square = supercritical_square(input);
  if (!square) return square;
  const double S = input.s / input.y1;
  const auto excess = [&](double Y) { return (Y - S) * (Y - S) - 1.0 + 2.0 * *square * (1.0 / Y - 1.0); };
  // Convex, below zero at the larger of these two, above zero where the depth behind carries the whole momentum.
  const double lower = std::max(std::cbrt(*square), 1.0 + S);
  const auto Y = find_root(excess, lower, S + std::sqrt(1.0 + 2.0 * *square), 1e-14);
  if (!Y) return Y;
  return *Y * input.y1;
}

Outcome<double> sequent_depth_drop_b(const StepJumpInput& input) {
  const auto square = supercritical_square(input);
  if (!square) return square;
  const double face = 1.0 + input.s / input.y1;
  const auto Y = largest_root({.p = face * face + 2.0 * *square, .q = 2.0 * *square});
  if (!Y) return Y;
  return *Y * input.y1;
}

Outcome<double> froude_number_drop_a(const StepDepths& depths) {
  const double Y = depths.y2 / depths.y1;
  const double S = depths.s / depths.y1;
  if (!(Y - S > 1.0))
    return bad_input("y2", depths.y2, depths.y1 + depths.s, no_limit, "a jump that ends at the drop is deeper than y1 + s");
  return std::sqrt(Y / (2.0 * (1.0 - Y)) * (1.0 - (Y - S) * (Y - S)));
}

Outcome<double> froude_number_drop_b(const StepDepths& depths) {
  const double Y = depths.y2 / depths.y1;
  const double S = depths.s / depths.y1;
  if (!(Y > 1.0 + S))
    return bad_input("y2", depths.y2, depths.y1 + depths.s, no_limit, "a jump with its toe at the drop is deeper than y1 + s");
  return std::sqrt(Y / (2.0 * (1.0 - Y)) * ((1.0 + S) * (1.0 + S) - Y * Y));
}

Outcome<double> sequent_depth_rise_momentum(const StepJumpInput& input) {
  const auto square = supercritical_square(input);
  if (!square) return square;
  const double Y = classical_ratio(input);
  const double S = input.s / input.y1;
  const auto above = largest_root({.p = 1.0 + 2.0 * *square - S * (2.0 * Y - S), .q = 2.0 * *square});
  if (S > Y || !above) return no_answer(choked);
  return *above * input.y1;
}

Outcome<double> sequent_depth_rise_energy(const StepJumpInput& input) {
  const auto square = supercritical_square(input);
  if (!square) return square;
  const double Y = classical_ratio(input);
  const double energy = Y + *square / (2.0 * Y * Y) - input.s / input.y1;
  const double cosine = energy > 0.0 ? 1.0 - 27.0 * *square / (4.0 * energy * energy * energy) : -2.0;
  if (!(cosine >= -1.0)) return no_answer(choked);
  return input.y1 * energy / 3.0 * (1.0 + 2.0 * std::cos(std::acos(cosine) / 3.0));
}

double largest_rise(const JumpInflow& inflow) {
  const double F1 = froude_number(inflow.V1, inflow.y1);
  const double Y = (std::sqrt(1.0 + 8.0 * F1 * F1) - 1.0) / 2.0;
  return inflow.y1 * std::max(0.0, Y + F1 * F1 / (2.0 * Y * Y) - 1.5 * std::pow(F1, 2.0 / 3.0));
}

namespace record {
namespace {
constexpr Symbol y1_symbol{"y1", "depth before the jump", dimension::length, above_zero};
constexpr Symbol V1_symbol{"V1", "mean velocity before the jump", dimension::velocity, above_zero};
constexpr Symbol drop_in[] = {y1_symbol, V1_symbol, {"s", "height of the drop", dimension::length, {0.0, no_limit}}};
constexpr Symbol rise_in[] = {y1_symbol, V1_symbol, {"s", "height of the rise", dimension::length, {0.0, no_limit}}};
constexpr Symbol depths_in[] = {y1_symbol,
                                {"y2", "depth below the drop", dimension::length, above_zero},
                                {"s", "height of the drop", dimension::length, {0.0, no_limit}}};
constexpr Symbol inflow_in[] = {y1_symbol, V1_symbol};
constexpr Symbol below_out[] = {{"y2", "depth below the drop", dimension::length, above_zero}};
constexpr Symbol above_out[] = {{"y2", "depth above the rise", dimension::length, above_zero}};
constexpr Symbol F1_out[] = {{"F1", "Froude number before the jump", dimension::none, above_zero}};
constexpr Symbol rise_out[] = {{"s", "height of the rise", dimension::length, {0.0, no_limit}}};

constexpr std::string_view swinging =
    "Between the depths of the jump that ends at the drop and of that which starts there, the jump stays near the drop and may "
    "swing "
    "between forms.";

template <Outcome<double> (*function)(const StepJumpInput&)>
Outcome<void> from_step(std::span<const double> in, std::span<double> out) {
  return store(function({.y1 = in[0], .V1 = in[1], .s = in[2]}), out);
}

/// A complete jump before the rise can climb it while its energy exceeds that of critical flow on top.
std::string_view climbs(std::span<const double> in) {
  const JumpInflow inflow{.y1 = in[0], .V1 = in[1]};
  return in[2] <= hydraulics::largest_rise(inflow)
             ? std::string_view{}
             : "the rise is higher than a complete jump can climb: the flow chokes over it";
}
}  // namespace

const Method sequent_depth_drop_a{.id = "jump.sequent_depth.abrupt_drop_a",
                                  .title = "Depth below an abrupt drop at which the jump ends",
                                  .kind = EquationKind::residual,
                                  .equation = "1 + 2*V1^2/(g*y1) = (y2/y1 - s/y1)^2 + 2*V1^2/(g*y1)/(y2/y1)",
                                  .inputs = drop_in,
                                  .outputs = below_out,
                                  .source = "momentum",
                                  .place = "face of the drop pressed by the tailwater (A-jump), horizontal frictionless beds",
                                  .provenance = Provenance::derived,
                                  .accuracy = "exact under its assumptions",
                                  .remarks = swinging,
                                  .evaluate = from_step<hydraulics::sequent_depth_drop_a>};

const Method sequent_depth_drop_b{
    .id = "jump.sequent_depth.abrupt_drop_b",
    .title = "Depth below an abrupt drop with the toe of the jump at its edge",
    .equation = "F1 = V1/sqrt(g*y1); p = (1 + s/y1)^2 + 2*F1^2; q = 2*F1^2; y2 = y1*2*sqrt(p/3)*cos(acos(-q/2*(3/p)^1.5)/3)",
    .inputs = drop_in,
    .outputs = below_out,
    .source = "momentum",
    .place =
        "face of the drop pressed by the depth y1 + s (B-jump), horizontal frictionless beds; largest root of Y^3 - p Y + q",
    .provenance = Provenance::derived,
    .accuracy = "exact under its assumptions",
    .remarks = swinging,
    .evaluate = from_step<hydraulics::sequent_depth_drop_b>};

const Method froude_number_drop_a{.id = "jump.froude_number.abrupt_drop_a",
                                  .title = "Froude number of the jump that ends at an abrupt drop",
                                  .equation = "Y = y2/y1; S = s/y1; F1 = sqrt(Y/(2*(1 - Y))*(1 - (Y - S)^2))",
                                  .inputs = depths_in,
                                  .outputs = F1_out,
                                  .source = "momentum",
                                  .place = "face of the drop pressed by the tailwater (A-jump), horizontal frictionless beds",
                                  .provenance = Provenance::derived,
                                  .accuracy = "exact under its assumptions",
                                  .evaluate = [](std::span<const double> in, std::span<double> out) {
                                    return store(hydraulics::froude_number_drop_a({.y1 = in[0], .y2 = in[1], .s = in[2]}), out);
                                  }};

const Method froude_number_drop_b{
    .id = "jump.froude_number.abrupt_drop_b",
    .title = "Froude number of the jump with its toe at an abrupt drop",
    .equation = "Y = y2/y1; S = s/y1; F1 = sqrt(Y/(2*(1 - Y))*((1 + S)^2 - Y^2))",
    .inputs = depths_in,
    .outputs = F1_out,
    .source = "momentum",
    .place = "face of the drop pressed by the depth y1 + s (B-jump), horizontal frictionless beds",
    .provenance = Provenance::derived,
    .accuracy = "exact under its assumptions",
    .evaluate = [](std::span<const double> in, std::span<double> out) {
      return store(hydraulics::froude_number_drop_b({.y1 = in[0], .y2 = in[1], .s = in[2]}), out);
    }};

const Method sequent_depth_rise_momentum{
    .id = "jump.sequent_depth.rise_momentum",
    .title = "Depth above an abrupt rise behind a complete jump, by momentum",
    .equation =
        "F1 = V1/sqrt(g*y1); S = s/y1; Y = (sqrt(1 + 8*F1^2) - 1)/2; p = 1 + 2*F1^2 - S*(2*Y - S); q = 2*F1^2; "
        "y2 = y1*2*sqrt(p/3)*cos(acos(-q/2*(3/p)^1.5)/3)",
    .inputs = rise_in,
    .outputs = above_out,
    .source = "momentum",
    .place =
        "face of the rise pressed by the sequent depth before it, horizontal frictionless beds; largest root of Y^3 - p Y + q",
    .provenance = Provenance::derived,
    .accuracy = "exact under its assumptions; within 0.5 % of the other two closures at s = y1 and F1 = 5",
    .condition = climbs,
    .evaluate = from_step<hydraulics::sequent_depth_rise_momentum>};

const Method sequent_depth_rise_energy{
    .id = "jump.sequent_depth.rise_energy",
    .title = "Depth above an abrupt rise behind a complete jump, by energy",
    .equation =
        "F1 = V1/sqrt(g*y1); Y = (sqrt(1 + 8*F1^2) - 1)/2; E = Y + F1^2/(2*Y^2) - s/y1; "
        "y2 = y1*E/3*(1 + 2*cos(acos(1 - 27*F1^2/(4*E^3))/3))",
    .inputs = rise_in,
    .outputs = above_out,
    .source = "momentum",
    .place = "energy behind the jump less the height of the rise, no loss over it; subcritical root",
    .provenance = Provenance::derived,
    .accuracy = "exact under its assumptions; within 0.5 % of the other two closures at s = y1 and F1 = 5",
    .condition = climbs,
    .evaluate = from_step<hydraulics::sequent_depth_rise_energy>};

const Method largest_rise{
    .id = "jump.largest_rise.energy",
    .title = "Highest abrupt rise that a complete jump climbs",
    .equation = "F1 = V1/sqrt(g*y1); Y = (sqrt(1 + 8*F1^2) - 1)/2; s = y1*max(0, Y + F1^2/(2*Y^2) - 1.5*F1^(2/3))",
    .inputs = inflow_in,
    .outputs = rise_out,
    .source = "momentum",
    .place = "energy behind the jump less that of critical flow on the rise",
    .provenance = Provenance::derived,
    .accuracy = "exact under its assumptions",
    .remarks = "Over a higher rise the flow chokes: the depth before it grows and drowns the jump.",
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      const double F1 = hydraulics::froude_number(in[1], in[0]);
      if (!(F1 > 1.0)) return bad_input("F1", F1, 1.0, no_limit, "flow that is not supercritical makes no jump");
      out[0] = hydraulics::largest_rise({.y1 = in[0], .V1 = in[1]});
      return {};
    }};

}  // namespace record
}  // namespace quell::hydraulics
