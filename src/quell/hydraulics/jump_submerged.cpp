#include "quell/hydraulics/jump_submerged.h"

#include <algorithm>
#include <cmath>

namespace quell::hydraulics {

Outcome<SubmergedJump> submerged_jump(const SubmergedInput& input) {
  const double froude_squared = input.V1 * input.V1 / (gravity * input.y1);
  if (!(froude_squared > 1.0))
    return bad_input("F1", std::sqrt(froude_squared), 1.0, no_limit, "flow that is not supercritical makes no jump");
  SubmergedJump jump{};
  jump.y2 = sequent_depth({.y1 = input.y1, .V1 = input.V1});
  // A tailwater that is y2 but for rounding is the free jump.
  if (input.yt < jump.y2 * (1.0 - 1e-12))
    return bad_input("yt", input.yt, jump.y2, no_limit, "below the sequent depth the jump is free, or swept out");
  jump.Sub = std::max(0.0, (input.yt - jump.y2) / jump.y2);
  const double Yt = input.yt / input.y1;
  jump.y3 = input.y1 * std::sqrt(std::max(1.0, Yt * Yt - 2.0 * froude_squared * (1.0 - 1.0 / Yt)));
  jump.dE = jump.y3 - input.yt + input.V1 * input.V1 / (2.0 * gravity) * (1.0 - 1.0 / (Yt * Yt));
  return jump;
}

double submerged_jump_length(double y2, double submergence) noexcept {
  return y2 * (6.1 + 4.9 * submergence);
}

FrontPosition front_position(double yt, double y2) noexcept {
  if (yt > 0.98 * y2) return FrontPosition::on_apron;
  return yt > 0.96 * y2 ? FrontPosition::moving : FrontPosition::swept_out;
}

namespace record {
namespace {
constexpr Symbol submerged_in[] = {{"y1", "depth of the jet at its narrowest", dimension::length, above_zero},
                                   {"V1", "velocity of the jet", dimension::velocity, above_zero},
                                   {"yt", "tailwater depth", dimension::length, above_zero}};
constexpr Symbol submerged_out[] = {{"y2", "sequent depth of the free jump", dimension::length, above_zero},
                                    {"Sub", "tailwater above the sequent depth, over it", dimension::none, {0.0, no_limit}},
                                    {"y3", "depth above the jet at the toe", dimension::length, above_zero},
                                    {"dE", "energy loss", dimension::length, {0.0, no_limit}}};
constexpr Symbol length_in[] = {{"y2", "sequent depth of the free jump", dimension::length, above_zero},
                                {"Sub", "tailwater above the sequent depth, over it", dimension::none, {0.0, 1.04}}};
constexpr Symbol length_out[] = {{"L", "length of the drowned jump", dimension::length, above_zero}};
constexpr Symbol front_in[] = {{"yt", "tailwater depth", dimension::length, above_zero},
                               {"y2", "sequent depth", dimension::length, above_zero}};
constexpr Symbol front_out[] = {{"ratio", "tailwater over sequent depth", dimension::none, above_zero},
                                {"position", "0 stands, 1 front moving, 2 swept out", dimension::none, {0.0, 2.0}}};

std::string_view is_drowned(std::span<const double> in) {
  const auto jump = hydraulics::submerged_jump({.y1 = in[0], .V1 = in[1], .yt = in[2]});
  return jump ? std::string_view{} : jump.error().reason;
}
}  // namespace

const Method submerged_jump{
    .id = "jump.submerged.rectangular",
    .title = "Drowned jump behind a gate: depth above the jet, and loss",
    .equation =
        "F1 = V1/sqrt(g*y1); y2 = y1/2*(sqrt(1 + 8*F1^2) - 1); Sub = (yt - y2)/y2; "
        "y3 = y1*sqrt((yt/y1)^2 - 2*F1^2*(1 - y1/yt)); dE = y3 + V1^2/(2*g) - yt - (V1*y1/yt)^2/(2*g)",
    .inputs = submerged_in,
    .outputs = submerged_out,
    .source = "govinda_rao_rajaratnam_1963",
    .place = "momentum between the covered jet and the tailwater, no bed friction",
    .provenance = Provenance::derived,
    .accuracy = "exact under its assumptions",
    .remarks =
        "The gate is drowned only while y3 reaches its opening; its discharge then follows from the head above y3 and must be "
        "found with it. Above Sub = 0.2 the jet stays along the bed and erodes farther; the roller holds floating bodies.",
    .condition = is_drowned,
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      const auto jump = hydraulics::submerged_jump({.y1 = in[0], .V1 = in[1], .yt = in[2]});
      if (!jump) return tl::unexpected(jump.error());
      out[0] = jump->y2;
      out[1] = jump->Sub;
      out[2] = jump->y3;
      out[3] = jump->dE;
      return {};
    }};

const Method submerged_jump_length{.id = "jump.submerged.length",
                                   .title = "Length of the drowned jump",
                                   .equation = "L = y2*(6.1 + 4.9*Sub)",
                                   .inputs = length_in,
                                   .outputs = length_out,
                                   .source = "govinda_rao_rajaratnam_1963",
                                   .place = "length of the submerged jump",
                                   .provenance = Provenance::memory,
                                   .accuracy = "about 15 %",
                                   .remarks = "Later measurements reach Sub = 1.04 and Froude numbers from 3 to 8.2.",
                                   .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                     out[0] = hydraulics::submerged_jump_length(in[0], in[1]);
                                     return {};
                                   }};

const Method front_position{
    .id = "jump.front.smooth_apron",
    .title = "Whether the jump keeps its place on a smooth horizontal apron",
    .kind = EquationKind::procedure,
    .equation =
        "0 where yt > 0.98 y2; 1 down to 0.96 y2, the front moves; 2 at 0.96 y2 and below, the jump may leave the basin.",
    .inputs = front_in,
    .outputs = front_out,
    .source = "peterka_1984",
    .place = "sec. 1, as restated in a later text, for F1 = 10",
    .provenance = Provenance::seen,
    .accuracy = "about 1 % of y2",
    .remarks = "Read for F1 = 10 only. The apron needs the whole sequent depth, and 5 to 10 % above it as a margin.",
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      out[0] = in[0] / in[1];
      out[1] = static_cast<double>(hydraulics::front_position(in[0], in[1]));
      return {};
    }};

}  // namespace record
}  // namespace quell::hydraulics
