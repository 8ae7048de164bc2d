#include "quell/hydraulics/jump_forced.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "quell/base/constants.h"
#include "quell/hydraulics/jump_cubic.h"

namespace quell::hydraulics {

Outcome<double> sequent_depth_forced(const ForcedJumpInput& input) {
  const double F1 = froude_number(input.V1, input.y1);
  if (!(F1 > 1.0)) return bad_input("F1", F1, 1.0, no_limit, "flow that is not supercritical makes no jump");
  const auto Y = largest_root({.p = 1.0 + 2.0 * F1 * F1 - input.Phi, .q = 2.0 * F1 * F1});
  if (!Y) return Y;
  return *Y * input.y1;
}

double block_drag(const BlockInput& input) noexcept {
  return input.CD * input.Nb * input.Ab * water_density * input.V1 * input.V1 / 2.0;
}

double shear_index_smooth(double F1) noexcept {
  const double root = std::max(0.0, 0.4 * F1 - 1.0);
  return root * root;
}

double shear_index_corrugated(double F1) noexcept {
  return (F1 - 1.0) * (F1 - 1.0);
}

double sequent_depth_gravel(const GravelBedInput& input) noexcept {
  const double F1 = froude_number(input.V1, input.y1);
  const double bt = 2.0 / std::numbers::pi * std::atan(0.8 * std::pow(input.ks / input.y1, 0.75));
  return input.y1 / 2.0 * (std::sqrt(1.0 + 8.0 * (1.0 - bt) * F1 * F1) - 1.0);
}

namespace record {
namespace {
constexpr Symbol y1_symbol{"y1", "depth before the jump", dimension::length, above_zero};
constexpr Symbol V1_symbol{"V1", "mean velocity before the jump", dimension::velocity, above_zero};
constexpr Symbol b_symbol{"b", "width of the basin", dimension::length, {0.1, 300.0}};
constexpr Symbol inflow_in[] = {y1_symbol, V1_symbol};
constexpr Symbol baffles_in[] = {y1_symbol,
                                 V1_symbol,
                                 b_symbol,
                                 {"CD", "drag coefficient of a block on V1", dimension::none, {0.1, 1.5}},
                                 {"Nb", "number of blocks", dimension::none, {1.0, 200.0}},
                                 {"Ab", "area of one block facing the flow", dimension::area, {1e-4, 10.0}}};
constexpr Symbol sill_in[] = {y1_symbol,
                              V1_symbol,
                              b_symbol,
                              {"Fs", "force of the sill on the flow over the whole width", dimension::force, {0.0, no_limit}}};
constexpr Symbol gravel_in[] = {y1_symbol, V1_symbol, {"ks", "height of the roughness", dimension::length, {0.0, no_limit}}};
constexpr Symbol baffles_out[] = {{"FB", "drag of the blocks over the whole width", dimension::force, {0.0, no_limit}},
                                  {"y2", "depth after the jump", dimension::length, above_zero}};
constexpr Symbol y2_out[] = {{"y2", "depth after the jump", dimension::length, above_zero}};

double pressure_force(double y1) {
  return water_density * gravity * y1 * y1 / 2.0;
}

template <double (*index)(double)>
Outcome<void> from_shear(std::span<const double> in, std::span<double> out) {
  return store(sequent_depth_forced({.y1 = in[0], .V1 = in[1], .Phi = index(hydraulics::froude_number(in[1], in[0]))}), out);
}
}  // namespace

const Method sequent_depth_baffles{
    .id = "jump.sequent_depth.baffles",
    .title = "Depth after a jump that a row of blocks holds",
    .equation =
        "FB = CD*Nb*Ab*rho*V1^2/2; F1 = V1/sqrt(g*y1); Phi = FB/b/(rho*g*y1^2/2); p = 1 + 2*F1^2 - Phi; q = 2*F1^2; "
        "y2 = y1*2*sqrt(p/3)*cos(acos(-q/2*(3/p)^1.5)/3)",
    .inputs = baffles_in,
    .outputs = baffles_out,
    .source = "momentum",
    .place = "momentum over the jump with the drag of blocks; largest root of Y^3 - p Y + q",
    .provenance = Provenance::derived,
    .accuracy = "exact under its assumptions; the coefficient itself is uncertain by half",
    .remarks =
        "CD near the front of the jump is recalled as 0.3 to 0.7 and is yours to justify. The tailwater may fall to y2 only "
        "while the "
        "blocks stand: common practice keeps 0.9 to 1.0 of the free sequent depth.",
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      const double drag = block_drag({.V1 = in[1], .CD = in[3], .Nb = in[4], .Ab = in[5]});
      const auto y2 = sequent_depth_forced({.y1 = in[0], .V1 = in[1], .Phi = drag / in[2] / pressure_force(in[0])});
      if (!y2) return tl::unexpected(y2.error());
      out[0] = drag;
      out[1] = *y2;
      return {};
    }};

const Method sequent_depth_end_sill{
    .id = "jump.sequent_depth.end_sill",
    .title = "Depth after a jump that an end sill of known force holds",
    .equation =
        "F1 = V1/sqrt(g*y1); Phi = Fs/b/(rho*g*y1^2/2); p = 1 + 2*F1^2 - Phi; q = 2*F1^2; "
        "y2 = y1*2*sqrt(p/3)*cos(acos(-q/2*(3/p)^1.5)/3)",
    .inputs = sill_in,
    .outputs = y2_out,
    .source = "momentum",
    .place = "momentum over the jump with the force of the sill; largest root of Y^3 - p Y + q",
    .provenance = Provenance::derived,
    .accuracy = "exact under its assumptions; as good as the force",
    .remarks = "A sill lowers the tailwater needed by a few per cent; the lower the tailwater, the deeper the scour behind it.",
    .evaluate = [](std::span<const double> in, std::span<double> out) {
      return store(sequent_depth_forced({.y1 = in[0], .V1 = in[1], .Phi = in[3] / in[2] / pressure_force(in[0])}), out);
    }};

const Method sequent_depth_smooth_shear{
    .id = "jump.sequent_depth.smooth_shear",
    .title = "Sequent depth with the friction of a smooth bed",
    .equation =
        "F1 = V1/sqrt(g*y1); Phi = max(0, 0.4*F1 - 1)^2; p = 1 + 2*F1^2 - Phi; q = 2*F1^2; "
        "y2 = y1*2*sqrt(p/3)*cos(acos(-q/2*(3/p)^1.5)/3)",
    .inputs = inflow_in,
    .outputs = y2_out,
    .source = "rajaratnam_1965",
    .place = "integrated shear of the bed under the jump over the pressure force before it",
    .provenance = Provenance::memory,
    .accuracy = "lowers y2 by 0.8 % at F1 = 4 and 2.6 % at F1 = 10",
    .condition = [](std::span<const double> in) -> std::string_view {
      return hydraulics::froude_number(in[1], in[0]) <= 12.0 ? std::string_view{} : "F1 lies above 12, beyond the measurements";
    },
    .evaluate = from_shear<shear_index_smooth>};

const Method sequent_depth_corrugated{
    .id = "jump.sequent_depth.corrugated_bed",
    .title = "Sequent depth on a bed of corrugated sheets",
    .equation =
        "F1 = V1/sqrt(g*y1); Phi = (F1 - 1)^2; p = 1 + 2*F1^2 - Phi; q = 2*F1^2; "
        "y2 = y1*2*sqrt(p/3)*cos(acos(-q/2*(3/p)^1.5)/3)",
    .inputs = inflow_in,
    .outputs = y2_out,
    .source = "ead_rajaratnam_2002",
    .place = "integrated shear of the bed, corrugations of 0.25 to 0.5 y1; the root is y2 = F1 y1",
    .provenance = Provenance::memory,
    .accuracy = "other sinusoidal beds gave a tailwater only about 20 % lower: take 20 % as the prudent credit",
    .remarks = "The jump is about half as long as on a smooth bed. Above V1 = 10 to 15 m/s such a bed cavitates and wears.",
    .condition = [](std::span<const double> in) -> std::string_view {
      const double F1 = hydraulics::froude_number(in[1], in[0]);
      return F1 >= 4.0 && F1 <= 10.0 ? std::string_view{} : "F1 lies outside 4 to 10, the range of the tests";
    },
    .evaluate = from_shear<shear_index_corrugated>};

const Method sequent_depth_gravel{
    .id = "jump.sequent_depth.gravel_bed",
    .title = "Sequent depth on a bed of gravel",
    .equation = "F1 = V1/sqrt(g*y1); bt = 2/pi*atan(0.8*(ks/y1)^0.75); y2 = y1/2*(sqrt(1 + 8*(1 - bt)*F1^2) - 1)",
    .inputs = gravel_in,
    .outputs = y2_out,
    .source = "carollo_2007",
    .place = "sequent depths on gravel glued to the bed",
    .provenance = Provenance::memory,
    .accuracy = "about 10 %",
    .remarks = "Above V1 = 10 to 15 m/s such a bed cavitates and wears.",
    .condition = [](std::span<const double> in) -> std::string_view {
      const double F1 = hydraulics::froude_number(in[1], in[0]);
      if (F1 < 2.0 || F1 > 10.0) return "F1 lies outside 2 to 10, the range of the tests";
      return in[2] <= 2.0 * in[0] ? std::string_view{} : "the roughness is more than twice as high as the flow";
    },
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      const double F1 = hydraulics::froude_number(in[1], in[0]);
      if (!(F1 > 1.0)) return bad_input("F1", F1, 1.0, no_limit, "flow that is not supercritical makes no jump");
      out[0] = hydraulics::sequent_depth_gravel({.y1 = in[0], .V1 = in[1], .ks = in[2]});
      if (!(out[0] > in[0])) return no_answer("the bed is so rough that the flow becomes subcritical without a jump");
      return {};
    }};

}  // namespace record
}  // namespace quell::hydraulics
