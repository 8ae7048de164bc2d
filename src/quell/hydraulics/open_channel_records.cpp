#include "quell/hydraulics/open_channel_profile.h"

#include <cmath>

namespace quell::hydraulics::record {
namespace {
constexpr Symbol b_symbol{"b", "bottom width", dimension::length, {0.0, no_limit}};
constexpr Symbol m_symbol{"m", "side slope, horizontal to 1 vertical", dimension::none, {0.0, 10.0}};
constexpr Symbol Q_symbol{"Q", "discharge", dimension::discharge, above_zero};
constexpr Symbol slope_symbol{"S0", "bed slope, falling downstream above zero", dimension::none, {-0.1, 0.1}, 0.0, {-1.0, 1.0}};
constexpr Symbol n_symbol{"n", "Manning's roughness", dimension::manning, {0.008, 0.1}};
constexpr Symbol ya_symbol{"ya", "depth at the start", dimension::length, above_zero};
constexpr Symbol yb_symbol{"yb", "depth at the end", dimension::length, above_zero};

constexpr Symbol depth_in[] = {
    b_symbol,
    m_symbol,
    Q_symbol,
    slope_symbol,
    n_symbol,
    {"y0", "depth at the control", dimension::length, above_zero},
    {"x", "distance from the control: downstream of it in supercritical flow, upstream in subcritical", dimension::length,
     above_zero}};
constexpr Symbol depth_out[] = {{"y", "depth at x", dimension::length, above_zero}};
constexpr Symbol distance_in[] = {b_symbol, m_symbol, Q_symbol, slope_symbol, n_symbol, ya_symbol, yb_symbol};
constexpr Symbol step_in[] = {b_symbol,
                              m_symbol,
                              Q_symbol,
                              slope_symbol,
                              n_symbol,
                              ya_symbol,
                              yb_symbol,
                              {"N",
                               "number of equal steps of depth, rounded to a whole one",
                               dimension::none,
                               {1.0, 1000.0},
                               std::numeric_limits<double>::quiet_NaN(),
                               {1.0, 1e4}}};
constexpr Symbol distance_out[] = {{"x", "distance from ya to yb, downstream positive", dimension::length, any_value}};

ChannelReach channel_of(std::span<const double> in, double length) {
  return {.section = {in[0], in[1]},
          .discharge = in[2],
          .bed_slope = in[3],
          .friction = {.law = FrictionLaw::manning, .roughness = in[4], .walls = true},
          .length = length};
}

std::string_view one_side_of_critical(std::span<const double> in) {
  const auto yc = critical_depth(Trapezoid{in[0], in[1]}, in[2]);
  if (!yc) return yc.error().reason;
  return (in[5] <= *yc) == (in[6] <= *yc) ? std::string_view{}
                                          : "critical depth lies between ya and yb: no one profile holds both";
}
}  // namespace

const Method channel_profile_depth{
    .id = "channel.profile.depth",
    .title = "Depth of gradually varied flow away from its control",
    .kind = EquationKind::procedure,
    .equation =
        "dy/dx = (S0 - Sf)/(1 - F^2), Sf = n^2 V^2/R^(4/3), R = A/P, from y0 downstream where it is below critical depth, else "
        "upstream; followed along the arc of (x, y) by Dormand and Prince's pair, error per step below 1e-11.",
    .inputs = depth_in,
    .outputs = depth_out,
    .source = "momentum",
    .place = "energy balance of gradually varied flow, energy coefficient 1; Manning's friction",
    .provenance = Provenance::derived,
    .accuracy = "integration 1e-8 m; n itself is rarely known better than 15 %",
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      const auto channel = channel_of(in, in[6]);
      const auto critical = critical_depth(channel.section, channel.discharge);
      if (!critical) return tl::unexpected(critical.error());
      const bool supercritical = in[5] < *critical;
      const auto profile = supercritical ? supercritical_profile(channel, in[5]) : subcritical_profile(channel, in[5]);
      if (!profile) return tl::unexpected(profile.error());
      if (profile->meets_critical) return no_answer("the flow meets critical depth before x: the profile ends there");
      out[0] = profile->nodes.back().y;
      return {};
    }};

const Method channel_profile_distance{
    .id = "channel.profile.distance",
    .title = "Distance between two depths of gradually varied flow",
    .kind = EquationKind::procedure,
    .equation = "x = integral of (1 - F^2)/(S0 - Sf) from ya to yb, Sf = n^2 V^2/R^(4/3), R = A/P, F^2 = Q^2 T/(g A^3).",
    .inputs = distance_in,
    .outputs = distance_out,
    .source = "momentum",
    .place = "energy balance of gradually varied flow, energy coefficient 1; Manning's friction",
    .provenance = Provenance::derived,
    .accuracy = "integration 1e-10; n itself is rarely known better than 15 %",
    .condition = one_side_of_critical,
    .evaluate = [](std::span<const double> in, std::span<double> out) {
      return store(distance_between(channel_of(in, 1.0), {.start = in[5], .end = in[6]}), out);
    }};

const Method channel_profile_direct_step{
    .id = "channel.profile.direct_step",
    .title = "Distance between two depths of gradually varied flow by the direct step method",
    .kind = EquationKind::procedure,
    .equation =
        "x = sum over N equal steps of depth of (E2 - E1)/(S0 - (Sf1 + Sf2)/2), E = y + V^2/(2 g), Sf = n^2 V^2/R^(4/3), R = "
        "A/P.",
    .inputs = step_in,
    .outputs = distance_out,
    .source = "chow_1959",
    .place = "ch. 10, direct step method",
    .provenance = Provenance::memory,
    .accuracy = "error falls with 1/N^2; with 10 steps often below 1 %",
    .condition = one_side_of_critical,
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      return store(
          direct_step_distance(channel_of(in, 1.0), {.start = in[5], .end = in[6]}, static_cast<int>(std::lround(in[7]))), out);
    }};

}  // namespace quell::hydraulics::record
