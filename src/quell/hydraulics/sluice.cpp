#include "quell/hydraulics/sluice.h"

#include <cmath>
#include <limits>
#include <numbers>

#include "quell/base/constants.h"
#include "quell/hydraulics/jump.h"

namespace quell::hydraulics {

double radial_gate_contraction(double lip_angle) noexcept {
  const double share = lip_angle / (std::numbers::pi / 2.0);
  return 1.0 - 0.75 * share + 0.36 * share * share;
}

Outcome<SluiceFlow> sluice_free(const SluiceInput& input) noexcept {
  const double y1 = input.Cc * input.a;
  if (!(y1 < input.y0))
    return bad_input("y0", input.y0, y1, no_limit, "the water before the gate must stand above the contracted jet");
  const double Cd = input.Cc / std::sqrt(1.0 + y1 / input.y0);
  const double q = Cd * input.a * std::sqrt(2.0 * gravity * input.y0);
  const double V1 = q / y1;
  return SluiceFlow{
      .q = q, .Cd = Cd, .y1 = y1, .V1 = V1, .F1 = V1 / std::sqrt(gravity * y1), .y2 = sequent_depth({.y1 = y1, .V1 = V1})};
}

Outcome<DrownedSluiceFlow> sluice_drowned(const DrownedSluiceInput& input) noexcept {
  const auto free = sluice_free({.a = input.a, .y0 = input.y0, .Cc = input.Cc});
  if (!free) return tl::unexpected(free.error());
  if (!(input.ytw >= free->y2 && input.ytw < input.y0))
    return bad_input("ytw", input.ytw, free->y2, input.y0,
                     "below the sequent depth of the jet the gate flows free, at the depth before it nothing flows");
  // q^2/g from the energy balance put into the momentum balance leaves a square equation in y3.
  const double y1 = free->y1;
  const double k = 2.0 * (1.0 / y1 - 1.0 / input.ytw) / (1.0 / (y1 * y1) - 1.0 / (input.y0 * input.y0));
  const double y3 = k + std::sqrt(k * k - 2.0 * k * input.y0 + input.ytw * input.ytw);
  const double q = std::sqrt(2.0 * gravity * (input.y0 - y3) / (1.0 / (y1 * y1) - 1.0 / (input.y0 * input.y0)));
  return DrownedSluiceFlow{q, y3};
}

namespace record {
namespace {
constexpr Symbol angle_in[] = {{"theta",
                                "angle of the gate lip to the horizontal",
                                dimension::none,
                                {0.5, 1.5707963267948966},
                                std::numeric_limits<double>::quiet_NaN(),
                                {0.0, 1.5707963267948966}}};
constexpr Symbol contraction_out[] = {
    {"Cc", "contraction, thinnest depth of the jet over the opening", dimension::none, {0.5, 1.0}}};
constexpr Symbol free_in[] = {{"a", "opening of the gate", dimension::length, above_zero},
                              {"y0", "depth before the gate", dimension::length, above_zero},
                              {"Cc", "contraction", dimension::none, {0.58, 1.0}, sluice_contraction, {1e-6, 1.0}}};
constexpr Symbol free_out[] = {{"q", "discharge per width", dimension::unit_discharge, above_zero},
                               {"Cd", "coefficient of q = Cd a sqrt(2 g y0)", dimension::none, above_zero},
                               {"y1", "thinnest depth of the jet", dimension::length, above_zero},
                               {"V1", "velocity of the jet", dimension::velocity, above_zero},
                               {"F1", "Froude number of the jet", dimension::none, above_zero},
                               {"y2", "tailwater depth above which the gate is drowned", dimension::length, above_zero}};
constexpr Symbol drowned_in[] = {{"a", "opening of the gate", dimension::length, above_zero},
                                 {"y0", "depth before the gate", dimension::length, above_zero},
                                 {"ytw", "tailwater depth", dimension::length, above_zero},
                                 {"Cc", "contraction", dimension::none, {0.58, 1.0}, sluice_contraction, {1e-6, 1.0}}};
constexpr Symbol drowned_out[] = {{"q", "discharge per width", dimension::unit_discharge, above_zero},
                                  {"y3", "depth above the bed where the jet is thinnest", dimension::length, above_zero}};

std::string_view opening_condition(std::span<const double> in) {
  return in[0] <= 0.5 * in[1] ? std::string_view{}
                              : "the opening is more than half the depth: the contraction is another there";
}
}  // namespace

const Method sluice_contraction_radial{.id = "sluice.contraction.radial",
                                       .title = "Contraction under a radial gate on a level bed",
                                       .equation = "s = theta/(pi/2); Cc = 1 - 0.75*s + 0.36*s^2",
                                       .inputs = angle_in,
                                       .outputs = contraction_out,
                                       .source = "henderson_1966",
                                       .place = "fit to the measurements of Toch",
                                       .provenance = Provenance::memory,
                                       .accuracy = "about 5 %",
                                       .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                         out[0] = radial_gate_contraction(in[0]);
                                         return {};
                                       }};

const Method sluice_discharge_free{
    .id = "sluice.discharge.free",
    .title = "Free flow under a gate on a level bed, and the jet below it",
    .equation =
        "y1 = Cc*a; Cd = Cc/sqrt(1 + y1/y0); q = Cd*a*sqrt(2*g*y0); V1 = q/y1; F1 = V1/sqrt(g*y1); "
        "y2 = y1/2*(sqrt(1 + 8*F1^2) - 1)",
    .inputs = free_in,
    .outputs = free_out,
    .source = "momentum",
    .place = "energy from before the gate to the thinnest depth; momentum in the jump",
    .provenance = Provenance::derived,
    .accuracy = "exact without loss; measured velocities of the jet were found down to 5 % lower",
    .condition = opening_condition,
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      const auto flow = sluice_free({.a = in[0], .y0 = in[1], .Cc = in[2]});
      if (!flow) return tl::unexpected(flow.error());
      out[0] = flow->q;
      out[1] = flow->Cd;
      out[2] = flow->y1;
      out[3] = flow->V1;
      out[4] = flow->F1;
      out[5] = flow->y2;
      return {};
    }};

const Method sluice_discharge_drowned{
    .id = "sluice.discharge.drowned",
    .title = "Flow under a gate on a level bed drowned by its tailwater",
    .equation =
        "y1 = Cc*a; k = 2*(1/y1 - 1/ytw)/(1/y1^2 - 1/y0^2); y3 = k + sqrt(k^2 - 2*k*y0 + ytw^2); "
        "q = sqrt(2*g*(y0 - y3)/(1/y1^2 - 1/y0^2))",
    .inputs = drowned_in,
    .outputs = drowned_out,
    .source = "momentum",
    .place = "energy from before the gate to the jet under its cover, momentum from there to the tailwater",
    .provenance = Provenance::derived,
    .accuracy = "exact under its assumptions; the contraction of a drowned jet is somewhat larger",
    .remarks = "Where drowning begins both states are possible, and q falls by some per cent from the free to the drowned one.",
    .condition = opening_condition,
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      const auto flow = sluice_drowned({.a = in[0], .y0 = in[1], .ytw = in[2], .Cc = in[3]});
      if (!flow) return tl::unexpected(flow.error());
      out[0] = flow->q;
      out[1] = flow->y3;
      return {};
    }};

}  // namespace record
}  // namespace quell::hydraulics
