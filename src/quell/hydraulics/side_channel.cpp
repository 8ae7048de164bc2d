#include "quell/hydraulics/side_channel.h"

#include <array>
#include <cmath>

#include "quell/base/roots.h"

namespace quell::hydraulics {

Outcome<double> trough_depth_gradient(const TroughGradientInput& input) noexcept {
  const double froude_squared =
      input.discharge * input.discharge * input.top_width / (gravity * input.area * input.area * input.area);
  if (froude_squared == 1.0) return no_answer("the flow is critical: the gradient has no value there");
  const double inflow = 2.0 * input.discharge * input.lateral / (gravity * input.area * input.area);
  return (input.bed_slope - input.loss_slope - inflow) / (1.0 - froude_squared);
}

Outcome<double> level_trough_depth(const LevelTroughInput& input) noexcept {
  const double share = input.x / input.L;
  if (!(share >= 0.0 && share <= 1.0)) return bad_input("x", input.x, 0.0, input.L, "the trough ends there");
  // Y (3 - Y^2) = 2 share^2 for Y from 1 to sqrt 3: with Y = 2 cos(a) the left side is -2 cos(3 a).
  const double angle = std::acos(-share * share) / 3.0;
  return 2.0 * std::cos(angle) * critical_depth(input.discharge / input.b);
}

double trough_surface_fall(const TroughStepInput& input) noexcept {
  const double momentum = input.Q1 * (input.V2 - input.V1) + input.V2 * (input.Q2 - input.Q1);
  return (input.V1 + input.V2) / (gravity * (input.Q1 + input.Q2)) * momentum + input.loss_slope * input.dx;
}

Outcome<void> trough_profile(const TroughInput& input, std::span<double> out) {
  const auto& section = input.section;
  const auto control = critical_depth(section, input.discharge);
  if (!control) return tl::unexpected(control.error());
  const auto velocity = [&](double discharge, double y) { return discharge == 0.0 ? 0.0 : discharge / section.area(y); };
  const auto loss = [&](double discharge, double y) {
    const double V = velocity(discharge, y);
    return std::pow(input.manning_n * V, 2.0) * std::pow(section.perimeter(y) / section.area(y), 4.0 / 3.0);
  };
  const double steps = static_cast<double>(out.size() - 1);
  const double dx = input.L / steps;
  out.back() = *control;
  for (std::size_t i = out.size() - 1; i > 0; --i) {
    const double Q2 = input.discharge * static_cast<double>(i) / steps;
    const double Q1 = input.discharge * static_cast<double>(i - 1) / steps;
    const double y2 = out[i];
    const double loss_below = loss(Q2, y2);
    const double V2 = velocity(Q2, y2);
    // Above zero where the level upstream stands higher than the fall to section 2 asks for.
    const auto excess = [&](double y1) {
      const double mean_loss = 0.5 * (loss(Q1, y1) + loss_below);
      const double fall =
          trough_surface_fall({.Q1 = Q1, .V1 = velocity(Q1, y1), .Q2 = Q2, .V2 = V2, .loss_slope = mean_loss, .dx = dx});
      return y1 + input.bed_slope * dx - y2 - fall;
    };
    double lower = 1e-6 * y2;
    if (Q1 > 0.0) {
      const auto critical = critical_depth(section, Q1);
      if (!critical) return tl::unexpected(critical.error());
      lower = *critical;
    }
    if (excess(lower) > 0.0) return no_answer("the trough is so steep that the flow is critical inside it, not at its end");
    double upper = 2.0 * y2;
    while (excess(upper) < 0.0) upper *= 2.0;
    const auto y1 = find_root(excess, lower, upper, 1e-13 * y2);
    if (!y1) return tl::unexpected(y1.error());
    out[i - 1] = *y1;
  }
  return {};
}

Outcome<double> trough_control_distance(const TroughControlInput& input) noexcept {
  const double rest = input.bed_slope - input.loss_slope;
  if (!(rest > 0.0))
    return bad_input("S0", input.bed_slope, input.loss_slope, no_limit,
                     "a trough flatter than critical flow needs for its friction has its control at its end or below");
  return 8.0 * input.lateral * input.lateral / (gravity * input.top_width * input.top_width * std::pow(rest, 3.0));
}

namespace record {
namespace {
constexpr Symbol gradient_in[] = {{"Q", "discharge at the section", dimension::discharge, {0.0, no_limit}},
                                  {"qs", "inflow per length of the trough", dimension::unit_discharge, {0.0, no_limit}},
                                  {"A", "area of flow", dimension::area, above_zero},
                                  {"T", "width of the water surface", dimension::length, above_zero},
                                  {"S0", "bed slope", dimension::none, {0.0, 0.5}},
                                  {"Sf", "friction slope", dimension::none, {0.0, 0.5}, 0.0}};
constexpr Symbol gradient_out[] = {{"S", "growth of depth along the trough, dy/dx", dimension::none, any_value}};
constexpr Symbol level_in[] = {{"x", "distance from the upstream end", dimension::length, {0.0, no_limit}},
                               {"L", "length of the trough", dimension::length, above_zero},
                               {"Q", "discharge at the downstream end", dimension::discharge, above_zero},
                               {"b", "width of the trough", dimension::length, above_zero}};
constexpr Symbol depth_out[] = {{"y", "depth in the trough", dimension::length, above_zero}};
constexpr Symbol fall_in[] = {{"Q1", "discharge upstream", dimension::discharge, {0.0, no_limit}},
                              {"V1", "velocity upstream", dimension::velocity, {0.0, no_limit}},
                              {"Q2", "discharge downstream", dimension::discharge, above_zero},
                              {"V2", "velocity downstream", dimension::velocity, above_zero},
                              {"Sf", "mean friction slope", dimension::none, {0.0, 0.5}},
                              {"dx", "distance between the sections", dimension::length, above_zero}};
constexpr Symbol fall_out[] = {{"dZ", "fall of the water surface", dimension::length, any_value}};
constexpr Symbol profile_in[] = {{"b", "bottom width", dimension::length, above_zero},
                                 {"m", "side slope, horizontal to 1 vertical", dimension::none, {0.0, 3.0}},
                                 {"L", "length of the trough", dimension::length, above_zero},
                                 {"Q", "discharge at the downstream end", dimension::discharge, above_zero},
                                 {"S0", "bed slope", dimension::none, {0.0, 0.2}},
                                 {"n", "Manning's n, 0 without friction", dimension::manning, {0.0, 0.03}}};
constexpr Symbol profile_out[] = {
    {"y0", "depth at the upstream end", dimension::length, above_zero},
    {"ym", "depth half way", dimension::length, above_zero},
    {"yc", "depth at the downstream end, critical", dimension::length, above_zero},
    {"H", "highest water level above the bed of the downstream end", dimension::length, above_zero}};
constexpr Symbol control_in[] = {{"S0", "bed slope", dimension::none, {0.0, 0.5}},
                                 {"qs", "inflow per length of the trough", dimension::unit_discharge, above_zero},
                                 {"B", "width of the water surface", dimension::length, above_zero},
                                 {"Sf", "friction slope of critical flow, g Pw/(C^2 B)", dimension::none, {0.0, 0.1}, 0.0}};
constexpr Symbol control_out[] = {{"x", "distance of critical flow from the upstream end", dimension::length, above_zero}};

constexpr std::size_t record_steps = 200;  ///< with these the depth upstream is 0.1 % from the closed form
}  // namespace

const Method side_channel_gradient{.id = "side_channel.gradient.novak",
                                   .title = "Change of depth along a trough of growing discharge",
                                   .equation = "S = (S0 - Sf - 2*Q*qs/(g*A^2))/(1 - Q^2*T/(g*A^3))",
                                   .inputs = gradient_in,
                                   .outputs = gradient_out,
                                   .source = "novak_2007",
                                   .place = "eq. 4.25",
                                   .provenance = Provenance::seen,
                                   .accuracy = "exact for inflow without momentum along the trough",
                                   .evaluate = [](std::span<const double> in, std::span<double> out) {
                                     return store(trough_depth_gradient({.discharge = in[0],
                                                                         .lateral = in[1],
                                                                         .area = in[2],
                                                                         .top_width = in[3],
                                                                         .bed_slope = in[4],
                                                                         .loss_slope = in[5]}),
                                                  out);
                                   }};

const Method side_channel_level_depth{
    .id = "side_channel.depth.level",
    .title = "Depth in a level frictionless rectangular trough with critical depth at its end",
    .kind = EquationKind::residual,
    .equation = "y/(Q^2/(g*b^2))^(1/3)*(1.5 - 0.5*y^2/(Q^2/(g*b^2))^(2/3)) = (x/L)^2",
    .inputs = level_in,
    .outputs = depth_out,
    .source = "novak_2007",
    .place = "eq. 4.29",
    .provenance = Provenance::seen,
    .accuracy = "exact under its assumptions",
    .evaluate = [](std::span<const double> in, std::span<double> out) {
      return store(level_trough_depth({.x = in[0], .L = in[1], .discharge = in[2], .b = in[3]}), out);
    }};

const Method side_channel_fall{
    .id = "side_channel.fall.dsd",
    .title = "Fall of the water surface between two sections of a trough",
    .equation = "dZ = (V1 + V2)/(g*(Q1 + Q2))*(Q1*(V2 - V1) + V2*(Q2 - Q1)) + Sf*dx",
    .inputs = fall_in,
    .outputs = fall_out,
    .source = "dsd_1987",
    .place = "ch. 9, side channel spillways: momentum in steps",
    .provenance = Provenance::memory,
    .accuracy = "second order in the step",
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      out[0] = trough_surface_fall({.Q1 = in[0], .V1 = in[1], .Q2 = in[2], .V2 = in[3], .loss_slope = in[4], .dx = in[5]});
      return {};
    }};

const Method side_channel_profile{
    .id = "side_channel.profile.dsd",
    .title = "Water surface along a trapezoidal trough with critical depth at its end",
    .kind = EquationKind::procedure,
    .equation =
        "March upstream from critical depth at x = L in 200 steps; each depth is that whose level exceeds the next by the fall "
        "of the momentum step, with the mean friction slope of Manning's formula.",
    .inputs = profile_in,
    .outputs = profile_out,
    .source = "dsd_1987",
    .place = "ch. 9, side channel spillways: momentum in steps, marched upstream from the control",
    .provenance = Provenance::memory,
    .accuracy = "0.1 % of the depth by the step",
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      std::array<double, record_steps + 1> depths{};
      const TroughInput trough{{in[0], in[1]}, in[2], in[3], in[4], in[5]};
      if (auto done = trough_profile(trough, depths); !done) return done;
      double highest = 0.0;
      for (std::size_t i = 0; i < depths.size(); ++i) {
        const double below = static_cast<double>(record_steps - i) / static_cast<double>(record_steps) * trough.L;
        highest = std::max(highest, depths[i] + below * trough.bed_slope);
      }
      out[0] = depths.front();
      out[1] = depths[record_steps / 2];
      out[2] = depths.back();
      out[3] = highest;
      return {};
    }};

const Method side_channel_control{
    .id = "side_channel.control_distance.novak",
    .title = "Where the flow in a steep trough is critical",
    .equation = "x = 8*qs^2/(g*B^2*(S0 - Sf)^3)",
    .inputs = control_in,
    .outputs = control_out,
    .source = "novak_2007",
    .place = "eq. 4.26 and 4.27, derived again from the gradient at critical depth",
    .provenance = Provenance::derived,
    .accuracy = "exact under its assumptions",
    .remarks = "Beyond the end of the trough the control is at its end or below.",
    .evaluate = [](std::span<const double> in, std::span<double> out) {
      return store(trough_control_distance({.bed_slope = in[0], .lateral = in[1], .top_width = in[2], .loss_slope = in[3]}),
                   out);
    }};

}  // namespace record
}  // namespace quell::hydraulics
