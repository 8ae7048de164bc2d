#include "quell/hydraulics/jump_front.h"

#include <cmath>

#include "quell/base/constants.h"
#include "quell/base/roots.h"
#include "quell/hydraulics/section.h"

namespace quell::hydraulics {

double jump_front_excess(const JumpFrontInput& input) noexcept {
  const auto& [q, d1, theta, z1, Lj, T] = input;
  const double cosine = std::cos(theta);
  const double vertical = d1 / cosine;
  const double at_foot = z1 + vertical + (T - z1 - vertical) * z1 / (std::tan(theta) * Lj);
  const double before = q * q / (gravity * d1) + d1 * d1 * cosine / 2.0 + z1 * (vertical + at_foot) / 2.0;
  return before - q * q / (gravity * T) - T * T / 2.0;
}

Outcome<double> tailwater_for_front(JumpFrontInput input) {
  const double critical = critical_depth(input.q);
  if (!(input.d1 < critical))
    return bad_input("d1", input.d1, above_zero.lowest, critical, "the flow must be supercritical: below critical depth");
  const auto excess = [&input](double T) {
    input.T = T;
    return jump_front_excess(input);
  };
  double upper = 2.0 * (critical + input.z1);
  while (excess(upper) > 0.0) upper *= 2.0;
  return find_root(excess, critical, upper, 1e-14 * upper);
}

namespace record {
namespace {
constexpr Symbol front_in[] = {{"q", "unit discharge", dimension::unit_discharge, above_zero},
                               {"d1", "depth normal to the face, at the front", dimension::length, above_zero},
                               {"theta",
                                "angle of the face with the horizontal",
                                dimension::none,
                                {0.05, 1.2},
                                std::numeric_limits<double>::quiet_NaN(),
                                {0.0, 1.57}},
                               {"z1", "height of the front above the apron", dimension::length, {0.0, no_limit}},
                               {"Lj", "length of the jump, horizontal", dimension::length, above_zero}};
constexpr Symbol front_out[] = {{"T", "depth of tailwater above the apron", dimension::length, above_zero}};
}  // namespace

const Method jump_front_on_chute{
    .id = "jump.front_on_chute.momentum",
    .title = "Tailwater that holds the front of the jump at a height on the chute",
    .kind = EquationKind::residual,
    .equation =
        "q^2/(g*d1) + d1^2*cos(theta)/2 + z1/2*(2*d1/cos(theta) + z1 + (T - z1 - d1/cos(theta))*z1/(tan(theta)*Lj)) = "
        "q^2/(g*T) + T^2/2",
    .inputs = front_in,
    .outputs = front_out,
    .source = "momentum",
    .place =
        "horizontal momentum from the front to the end of the jump; the curve at the foot turns the jet without loss, the "
        "surface is "
        "straight",
    .provenance = Provenance::derived,
    .accuracy = "about 10 % of the depth on faces steeper than 20 degrees, where pressures near the foot are not hydrostatic",
    .remarks = "With z1 = 0 it is the sequent depth on a horizontal apron, but for the cosine in the pressure before the jump.",
    .condition = [](std::span<const double> in) -> std::string_view {
      if (in[3] / std::tan(in[2]) <= in[4]) return {};
      return "the front is more than a jump's length before the foot: the whole jump stands on the slope";
    },
    .evaluate =
        [](std::span<const double> in, std::span<double> out) {
          return store(tailwater_for_front({.q = in[0], .d1 = in[1], .theta = in[2], .z1 = in[3], .Lj = in[4], .T = 0.0}), out);
        }};

}  // namespace record
}  // namespace quell::hydraulics
