#include "quell/hydraulics/jump_expanding.h"

#include <cmath>

#include "quell/base/constants.h"
#include "quell/base/roots.h"
#include "quell/hydraulics/jump_cubic.h"

namespace quell::hydraulics {
namespace {
constexpr std::string_view no_jump = "flow that is not supercritical makes no jump";
}

Outcome<double> sequent_depth_radial(const RadialJumpInput& input) {
  const auto& [y1, V1, r] = input;
  const double F1 = froude_number(V1, y1);
  if (!(F1 > 1.0)) return bad_input("F1", F1, 1.0, no_limit, no_jump);
  if (!(r >= 1.0)) return bad_input("r", r, 1.0, no_limit, "the basin must not narrow");
  const double square = F1 * F1;
  const auto excess = [&](double Y) {
    return r * Y * Y - 1.0 - (r - 1.0) * (1.0 + Y + Y * Y) / 3.0 + 2.0 * square * (1.0 / (r * Y) - 1.0);
  };
  // Convex. Y = 1 is a root at r = 1 and below zero beyond; the critical ratio is below zero where r is little above 1.
  const double critical = std::cbrt(square);
  const double lower = excess(critical) < 0.0 ? critical : 1.0;
  double upper = 2.0 * critical;
  while (excess(upper) < 0.0) upper *= 2.0;
  const auto Y = find_root(excess, lower, upper, 1e-14);
  if (!Y) return Y;
  return *Y * y1;
}

double radius_ratio(const DivergingWalls& walls) noexcept {
  return 1.0 + 2.0 * walls.t * walls.Lj / walls.b1;
}

Outcome<double> sequent_depth_expansion(const ExpansionInput& input) {
  const double F1 = froude_number(input.V1, input.y1);
  if (!(F1 > 1.0)) return bad_input("F1", F1, 1.0, no_limit, no_jump);
  if (!(input.B >= 1.0)) return bad_input("B", input.B, 1.0, no_limit, "the basin must not narrow");
  const auto Y = largest_root({.p = 1.0 + 2.0 * F1 * F1 / input.B, .q = 2.0 * F1 * F1 / (input.B * input.B)});
  if (!Y) return Y;
  return *Y * input.y1;
}

double sequent_depth_herbrand(const ExpansionInput& input) noexcept {
  return sequent_depth({.y1 = input.y1, .V1 = input.V1}) / std::sqrt(input.B);
}

namespace record {
namespace {
constexpr Symbol y1_symbol{"y1", "depth before the jump", dimension::length, above_zero};
constexpr Symbol V1_symbol{"V1", "mean velocity before the jump", dimension::velocity, above_zero};
constexpr Symbol radial_in[] = {
    y1_symbol, V1_symbol, {"r", "radius at the end over radius at the toe", dimension::none, {1.0, 2.0}}};
constexpr Symbol diverging_in[] = {y1_symbol,
                                   V1_symbol,
                                   {"b1", "width at the toe", dimension::length, above_zero},
                                   {"t", "flare of each wall, lateral per longitudinal", dimension::none, {0.0, 0.3}},
                                   {"Lj", "length of the jump", dimension::length, {0.0, no_limit}}};
constexpr Symbol expansion_in[] = {y1_symbol, V1_symbol, {"B", "width behind over width before", dimension::none, {1.0, 4.0}}};
constexpr Symbol y2_out[] = {{"y2", "depth after the jump", dimension::length, above_zero}};

constexpr std::string_view lopsided =
    "Jumps at a sudden expansion are lopsided and swing from side to side: a physical model must show what they do.";
}  // namespace

const Method sequent_depth_radial{
    .id = "jump.sequent_depth.radial",
    .title = "Sequent depth between walls on rays",
    .kind = EquationKind::residual,
    .equation = "1 + 2*V1^2/(g*y1) + (r - 1)*(1 + y2/y1 + (y2/y1)^2)/3 = r*(y2/y1)^2 + 2*V1^2/(g*y1)/(r*y2/y1)",
    .inputs = radial_in,
    .outputs = y2_out,
    .source = "momentum",
    .place = "momentum with the pressure of a straight water surface on the walls between toe and end",
    .provenance = Provenance::derived,
    .accuracy = "exact under its assumptions",
    .remarks =
        "Widening lowers y2 only above F1 = 2.26; a weaker jump rises as its walls part. Such a jump is recalled to be about "
        "0.7 as long as "
        "that between parallel walls.",
    .evaluate = [](std::span<const double> in, std::span<double> out) {
      return store(hydraulics::sequent_depth_radial({.y1 = in[0], .V1 = in[1], .r = in[2]}), out);
    }};

const Method sequent_depth_diverging{.id = "jump.sequent_depth.diverging_walls",
                                     .title = "Sequent depth between straight diverging walls",
                                     .kind = EquationKind::residual,
                                     .equation =
                                         "1 + 2*V1^2/(g*y1) + 2*t*Lj/b1*(1 + y2/y1 + (y2/y1)^2)/3 = "
                                         "(1 + 2*t*Lj/b1)*(y2/y1)^2 + 2*V1^2/(g*y1)/((1 + 2*t*Lj/b1)*y2/y1)",
                                     .inputs = diverging_in,
                                     .outputs = y2_out,
                                     .source = "momentum",
                                     .place = "jump between walls on rays with r2/r1 = 1 + 2 t Lj/b1",
                                     .provenance = Provenance::derived,
                                     .accuracy = "exact under its assumptions; as good as the length",
                                     .condition = [](std::span<const double> in) -> std::string_view {
                                       const double r = hydraulics::radius_ratio({.b1 = in[2], .t = in[3], .Lj = in[4]});
                                       if (r > 2.0) return "the basin more than doubles its width within the jump";
                                       return in[3] * 3.0 * hydraulics::froude_number(in[1], in[0]) <= 1.0
                                                  ? std::string_view{}
                                                  : "the walls flare by more than 1/(3 F1): the flow would not follow them";
                                     },
                                     .evaluate =
                                         [](std::span<const double> in, std::span<double> out) {
                                           const double r = radius_ratio({.b1 = in[2], .t = in[3], .Lj = in[4]});
                                           return store(hydraulics::sequent_depth_radial({.y1 = in[0], .V1 = in[1], .r = r}),
                                                        out);
                                         }};

const Method sequent_depth_expansion{
    .id = "jump.sequent_depth.sudden_expansion",
    .title = "Sequent depth with the toe at a sudden expansion",
    .equation = "F1 = V1/sqrt(g*y1); p = 1 + 2*F1^2/B; q = 2*F1^2/B^2; y2 = y1*2*sqrt(p/3)*cos(acos(-q/2*(3/p)^1.5)/3)",
    .inputs = expansion_in,
    .outputs = y2_out,
    .source = "momentum",
    .place = "side faces pressed by the depth before the jump; largest root of Y^3 - p Y + q",
    .provenance = Provenance::derived,
    .accuracy = "exact under its assumptions",
    .remarks = lopsided,
    .evaluate = [](std::span<const double> in, std::span<double> out) {
      return store(hydraulics::sequent_depth_expansion({.y1 = in[0], .V1 = in[1], .B = in[2]}), out);
    }};

const Method sequent_depth_herbrand{
    .id = "jump.sequent_depth.herbrand_1973",
    .title = "Sequent depth at a sudden expansion, short form",
    .equation = "F1 = V1/sqrt(g*y1); y2 = y1/2*(sqrt(1 + 8*F1^2) - 1)/sqrt(B)",
    .inputs = expansion_in,
    .outputs = y2_out,
    .source = "herbrand_1973",
    .place = "sequent depth of the spatial jump",
    .provenance = Provenance::memory,
    .accuracy = "1 to 4 % below the balance of momentum with the toe at the expansion (F1 5 to 8, B 1.5 to 2)",
    .remarks = lopsided,
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      const double F1 = hydraulics::froude_number(in[1], in[0]);
      if (!(F1 > 1.0)) return bad_input("F1", F1, 1.0, no_limit, no_jump);
      if (!(in[2] >= 1.0)) return bad_input("B", in[2], 1.0, no_limit, "the basin must not narrow");
      out[0] = hydraulics::sequent_depth_herbrand({.y1 = in[0], .V1 = in[1], .B = in[2]});
      return {};
    }};

}  // namespace record
}  // namespace quell::hydraulics
