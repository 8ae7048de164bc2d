#include <cmath>

#include "quell/hydraulics/jump_location.h"

namespace quell::hydraulics::record {
namespace {
constexpr Symbol q_symbol{"q", "discharge per unit width", dimension::unit_discharge, {0.02, 200.0}};
constexpr Symbol n_symbol{"n", "Manning's roughness", dimension::manning, {0.008, 0.05}};
constexpr Symbol y0_symbol{"y0", "supercritical depth at the upstream end", dimension::length, {0.01, 4.0}};
constexpr Symbol apron_symbol{"La", "length of the apron", dimension::length, {1.0, 500.0}};
constexpr Symbol TW_symbol{"TW", "tailwater depth at the downstream end", dimension::length, {0.05, 40.0}};
constexpr Symbol k_symbol{
    "kL", "length of the jump over its sequent depth; 0 for a jump without length", dimension::none, {0.0, 8.0}, 0.0};

constexpr Symbol horizontal_in[] = {q_symbol, n_symbol, y0_symbol, {"y", "depth at x", dimension::length, above_zero}};
constexpr Symbol horizontal_out[] = {{"x", "distance from the depth y0, downstream positive", dimension::length, any_value}};
constexpr Symbol apron_in[] = {q_symbol, n_symbol, y0_symbol, apron_symbol, TW_symbol, k_symbol};
constexpr Symbol toe_out[] = {{"xtoe", "distance of the toe from the upstream end", dimension::length, {0.0, no_limit}},
                              {"y1", "depth before the jump", dimension::length, above_zero},
                              {"y2", "depth after the jump", dimension::length, above_zero}};
constexpr Symbol channel_in[] = {
    {"b", "bottom width", dimension::length, {0.0, 200.0}},
    {"m", "side slope, horizontal to 1 vertical", dimension::none, {0.0, 5.0}},
    {"Q", "discharge", dimension::discharge, above_zero},
    {"S0", "bed slope, falling downstream above zero", dimension::none, {-0.02, 0.02}, 0.0, {-0.5, 0.5}},
    n_symbol,
    y0_symbol,
    {"L", "length of the reach", dimension::length, {1.0, 2000.0}},
    TW_symbol};
constexpr Symbol limit_in[] = {q_symbol, n_symbol, y0_symbol, apron_symbol};
constexpr Symbol limit_out[] = {TW_symbol};

ChannelReach wide_apron(double q, double n, double length) {
  return {.section = {1.0, 0.0},
          .discharge = q,
          .bed_slope = 0.0,
          .friction = {.law = FrictionLaw::manning, .roughness = n, .walls = false},
          .length = length};
}

Outcome<void> store_toe(const Outcome<JumpToe>& toe, std::span<double> out) {
  if (!toe) return tl::unexpected(toe.error());
  if (toe->state == ToeState::swept_out) return no_answer("the tailwater is too low: the jump is swept out");
  if (toe->state == ToeState::drowned_at_upstream_control)
    return no_answer("the tailwater is so high that the jump drowns the upstream end");
  out[0] = toe->x;
  out[1] = toe->y1;
  out[2] = toe->y2;
  return {};
}
}  // namespace

const Method jump_profile_horizontal{
    .id = "jump.profile.horizontal",
    .title = "Distance along a wide level apron over which friction changes the depth",
    .equation = "x = (3/4*q^2/g*(y^(4/3) - y0^(4/3)) - 3/13*(y^(13/3) - y0^(13/3)))/(n^2*q^2)",
    .inputs = horizontal_in,
    .outputs = horizontal_out,
    .source = "momentum",
    .place = "integral of (F^2 - 1)/Sf over the depth, Manning's Sf with R = y, level bed",
    .provenance = Provenance::derived,
    .accuracy = "exact under its assumptions; n itself is rarely known better than 15 %, and x goes with 1/n^2",
    .remarks = "Supercritical flow deepens downstream (y > y0 gives x > 0), subcritical flow upstream.",
    .condition = [](std::span<const double> in) -> std::string_view {
      const double yc = critical_depth(in[0]);
      return (in[2] <= yc) == (in[3] <= yc) ? std::string_view{}
                                            : "critical depth lies between y0 and y: no one profile holds both";
    },
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      out[0] = horizontal_profile_distance({.q = in[0], .manning_n = in[1]}, {.start = in[2], .end = in[3]});
      return {};
    }};

const Method jump_location_horizontal_apron{
    .id = "jump.location.horizontal_apron",
    .title = "Where the jump stands on a level apron with friction",
    .kind = EquationKind::procedure,
    .equation =
        "Supercritical depth ys from y0 downstream and subcritical depth yt from TW upstream, both by dy/dx = -Sf/(1 - F^2) "
        "with "
        "R = y; the toe stands where q^2/(g y) + y^2/2 is the same for ys(x) and yt(x + kL y2), with yt = TW beyond the apron.",
    .inputs = apron_in,
    .outputs = toe_out,
    .source = "momentum",
    .place = "momentum over the jump between two friction profiles; friction within the jump left out",
    .provenance = Provenance::derived,
    .accuracy = "toe to 1e-7 m; a tailwater 1 % off moves it by several depths",
    .evaluate = [](std::span<const double> in, std::span<double> out) {
      const JumpLength length{.law = [](double, double, double y2) { return y2; }, .factor = in[5]};
      return store_toe(
          locate_toe({.channel = wide_apron(in[0], in[1], in[3]), .upstream_depth = in[2], .length = length}, in[4]), out);
    }};

const Method jump_location_channel{
    .id = "jump.location.channel",
    .title = "Where the jump stands in a prismatic channel",
    .kind = EquationKind::procedure,
    .equation =
        "Supercritical depth ys from y0 downstream and subcritical depth yt from TW upstream, both by dy/dx = (S0 - Sf)/(1 - "
        "F^2) "
        "with R = A/P; the toe stands where Q^2/(g A) + A ybar is the same for both, the jump taken without length.",
    .inputs = channel_in,
    .outputs = toe_out,
    .source = "momentum",
    .place = "momentum over the jump between two friction profiles; friction and weight within the jump left out",
    .provenance = Provenance::derived,
    .accuracy = "toe to 1e-7 m; n itself is rarely known better than 15 %",
    .remarks = "A tailwater below critical depth lets the flow leave through critical depth.",
    .evaluate = [](std::span<const double> in, std::span<double> out) {
      const ChannelReach channel{.section = {in[0], in[1]},
                                 .discharge = in[2],
                                 .bed_slope = in[3],
                                 .friction = {.law = FrictionLaw::manning, .roughness = in[4], .walls = true},
                                 .length = in[6]};
      return store_toe(locate_toe({.channel = channel, .upstream_depth = in[5]}, in[7]), out);
    }};

const Method jump_sweep_out_depth_friction{
    .id = "jump.sweep_out_depth.friction",
    .title = "Tailwater depth below which the jump is swept off a level apron",
    .kind = EquationKind::procedure,
    .equation =
        "Supercritical depth ys from y0 downstream by dy/dx = -Sf/(1 - F^2) with R = y; TW is the sequent depth of ys at the "
        "end "
        "of the apron.",
    .inputs = limit_in,
    .outputs = limit_out,
    .source = "momentum",
    .place = "the toe at the end of the apron",
    .provenance = Provenance::derived,
    .accuracy = "solved to 1e-9 m; no margin is in it",
    .evaluate = [](std::span<const double> in, std::span<double> out) {
      return store(sweep_out_tailwater({.channel = wide_apron(in[0], in[1], in[3]), .upstream_depth = in[2]}), out);
    }};

const Method jump_drowning_depth_friction{
    .id = "jump.drowning_depth.friction",
    .title = "Tailwater depth above which the jump drowns the upstream end of a level apron",
    .kind = EquationKind::procedure,
    .equation =
        "The sequent depth of y0 stands at the upstream end; from there dy/dx = -Sf/(1 - F^2) with R = y leads to TW at the "
        "end of "
        "the apron.",
    .inputs = limit_in,
    .outputs = limit_out,
    .source = "momentum",
    .place = "the toe at the upstream end",
    .provenance = Provenance::derived,
    .accuracy = "solved to 1e-9 m",
    .evaluate = [](std::span<const double> in, std::span<double> out) {
      return store(drowning_tailwater({.channel = wide_apron(in[0], in[1], in[3]), .upstream_depth = in[2]}), out);
    }};

}  // namespace quell::hydraulics::record
