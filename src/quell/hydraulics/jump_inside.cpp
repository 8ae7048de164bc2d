#include "quell/hydraulics/jump_inside.h"

#include <algorithm>
#include <cmath>

#include "quell/base/curve.h"

namespace quell::hydraulics {

double roller_surface(const RollerSurfaceInput& input) noexcept {
  const double at_end = std::tanh(1.5);
  // The cubic stays monotone while the jump is at most 2.05 times as long as its roller.
  const double w = std::clamp(input.Lj, 1.05 * input.Lr, 2.0 * input.Lr) - input.Lr;
  const double s = std::clamp(input.x / input.Lr, 0.0, 1.0);
  const double t = std::clamp((input.x - input.Lr) / w, 0.0, 1.0);
  const double slope = 1.5 * (1.0 - at_end * at_end) * w / input.Lr;
  const double share = std::tanh(1.5 * s) + (1.0 - at_end) * t * t * (3.0 - 2.0 * t) + slope * t * (1.0 - t) * (1.0 - t);
  return input.y1 + (input.y2 - input.y1) * share;
}

double power_surface(const PowerSurfaceInput& input, double exponent) noexcept {
  const double s = std::clamp(input.x / input.Lr, 0.0, 1.0);
  return input.y1 + (input.y2 - input.y1) * std::pow(s, exponent);
}

double surface_reference_length(double F1, double y1) noexcept {
  return y1 * (5.08 * F1 - 7.82);
}

double reference_surface(const ReferenceSurfaceInput& input) {
  static const Curve& mean = curve("rajaratnam_surface");
  const double X = surface_reference_length(input.F1, input.y1);
  return input.y1 + 0.75 * (input.y2 - input.y1) * mean.at(input.x / X);
}

double wall_jet_velocity(const WallJetInput& input) noexcept {
  const double eta = input.z / input.b_half;
  return input.um * 1.48 * std::pow(eta, 1.0 / 7.0) * std::erfc(0.68 * eta);
}

double wall_jet_largest_velocity(const WallJetDecayInput& input) noexcept {
  return std::min(input.V1, 3.5 * input.V1 * std::sqrt(input.y1 / input.x));
}

namespace record {
namespace {
constexpr Symbol surface_in[] = {{"x", "distance from the toe", dimension::length, {0.0, no_limit}},
                                 {"y1", "depth before the jump", dimension::length, above_zero},
                                 {"y2", "sequent depth", dimension::length, above_zero},
                                 {"Lr", "length of the roller", dimension::length, above_zero},
                                 {"Lj", "length of the jump", dimension::length, above_zero}};
constexpr Symbol power_in[] = {{"x", "distance from the toe", dimension::length, {0.0, no_limit}},
                               {"y1", "depth before the jump", dimension::length, above_zero},
                               {"y2", "sequent depth", dimension::length, above_zero},
                               {"Lr", "length of the roller", dimension::length, above_zero}};
constexpr Symbol reference_in[] = {{"x", "distance from the toe, up to X", dimension::length, {0.0, no_limit}},
                                   {"F1", "Froude number before the jump", dimension::none, {2.0, 10.0}},
                                   {"y1", "depth before the jump", dimension::length, above_zero},
                                   {"y2", "sequent depth", dimension::length, above_zero}};
constexpr Symbol surface_out[] = {{"y", "mean depth at x", dimension::length, above_zero}};
constexpr Symbol jet_in[] = {{"z", "height above the floor", dimension::length, {0.0, no_limit}},
                             {"b_half", "height at which the velocity is half the largest", dimension::length, above_zero},
                             {"um", "largest velocity of the section", dimension::velocity, above_zero}};
constexpr Symbol jet_out[] = {{"u", "velocity at z", dimension::velocity, {0.0, no_limit}}};
constexpr Symbol decay_in[] = {{"x", "distance from the toe", dimension::length, above_zero},
                               {"y1", "depth before the jump", dimension::length, above_zero},
                               {"V1", "mean velocity before the jump", dimension::velocity, above_zero}};
constexpr Symbol decay_out[] = {{"um", "largest velocity at x", dimension::velocity, above_zero}};

constexpr std::string_view below_y1 = "the depth after a jump is above that before it";

std::string_view inside_roller(std::span<const double> in) {
  return in[0] <= in[3] ? std::string_view{} : "x lies behind the roller: y2 is held";
}

std::string_view before_reference(std::span<const double> in) {
  return in[0] <= surface_reference_length(in[1], in[2]) ? std::string_view{}
                                                         : "x lies beyond X, where the curve is not known: 0.75 is held";
}

std::string_view developed(std::span<const double> in) {
  return in[0] >= 12.0 * in[1] ? std::string_view{} : "x is below 12 y1: the jet is not developed";
}

constexpr double chanson_exponent = 0.441;
constexpr double wang_exponent = 0.54;

template <const double& exponent>
Outcome<void> evaluate_power(std::span<const double> in, std::span<double> out) {
  if (in[2] < in[1]) return bad_input("y2", in[2], in[1], no_limit, below_y1);
  out[0] = power_surface({.x = in[0], .y1 = in[1], .y2 = in[2], .Lr = in[3]}, exponent);
  return {};
}
}  // namespace

const Method surface_hager_1992{
    .id = "jump.surface.hager_1992",
    .title = "Mean surface of the jump, led into the tailwater",
    .equation =
        "w = max(1.05*Lr, min(2*Lr, Lj)) - Lr; s = max(0, min(1, x/Lr)); t = max(0, min(1, (x - Lr)/w)); "
        "y = y1 + (y2 - y1)*(tanh(1.5*s) + (1 - tanh(1.5))*t^2*(3 - 2*t) + 1.5*(1 - tanh(1.5)^2)*w/Lr*t*(1 - t)^2)",
    .inputs = surface_in,
    .outputs = surface_out,
    .source = "hager_1992",
    .place = "classical jump, surface profile with the roller length of 1990",
    .provenance = Provenance::memory,
    .accuracy = "about 10 % of y2 - y1",
    .remarks =
        "To the end of the roller it is the published form, which reaches 0.905 of the rise there and y2 nowhere; the cubic "
        "from "
        "there to y2 at the end of the jump is ours. Lj counts between 1.05 Lr and 2 Lr.",
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      if (in[2] < in[1]) return bad_input("y2", in[2], in[1], no_limit, below_y1);
      out[0] = roller_surface({.x = in[0], .y1 = in[1], .y2 = in[2], .Lr = in[3], .Lj = in[4]});
      return {};
    }};

const Method surface_chanson_2011{.id = "jump.surface.chanson_2011",
                                  .title = "Mean surface of the roller, power form",
                                  .equation = "y = y1 + (y2 - y1)*max(0, min(1, x/Lr))^0.441",
                                  .inputs = power_in,
                                  .outputs = surface_out,
                                  .source = "chanson_2011",
                                  .place = "mean surface within the roller",
                                  .provenance = Provenance::memory,
                                  .accuracy = "about 10 % of y2 - y1",
                                  .remarks = "Its roller ends where the surface reaches y2.",
                                  .condition = inside_roller,
                                  .evaluate = evaluate_power<chanson_exponent>};

const Method surface_wang_2015{.id = "jump.surface.wang_chanson_2015",
                               .title = "Mean surface of the roller, power form from aerated jumps",
                               .equation = "y = y1 + (y2 - y1)*max(0, min(1, x/Lr))^0.54",
                               .inputs = power_in,
                               .outputs = surface_out,
                               .source = "wang_chanson_2015",
                               .place = "mean surface within the roller",
                               .provenance = Provenance::memory,
                               .accuracy = "about 10 % of y2 - y1",
                               .remarks = "With the roller length of the same authors, 6 y1 (F1 - 1).",
                               .condition = inside_roller,
                               .evaluate = evaluate_power<wang_exponent>};

const Method surface_rajaratnam_1968{
    .id = "jump.surface.rajaratnam_1968",
    .title = "Mean surface of the jump to three quarters of its rise",
    .equation = "X = y1*(5.08*F1 - 7.82); y = y1 + 0.75*(y2 - y1)*rajaratnam_surface(x/X)",
    .inputs = reference_in,
    .outputs = surface_out,
    .source = "rajaratnam_subramanya_1968",
    .place = "reference length and mean curve",
    .provenance = Provenance::memory,
    .accuracy = "0.02 of 0.75 (y2 - y1) in the curve, 5 % in the reference length",
    .remarks = "No range of Froude numbers is known; 2 to 10 is where the reference length was compared with another author's.",
    .condition = before_reference,
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      if (!(surface_reference_length(in[1], in[2]) > 0.0))
        return bad_input("F1", in[1], 7.82 / 5.08, no_limit, "the reference length vanishes");
      if (in[3] < in[2]) return bad_input("y2", in[3], in[2], no_limit, below_y1);
      out[0] = reference_surface({.x = in[0], .F1 = in[1], .y1 = in[2], .y2 = in[3]});
      return {};
    }};

const Method wall_jet_profile{
    .id = "jump.velocity.verhoff_1963",
    .title = "Velocity over the height in the jet along the floor",
    .kind = EquationKind::procedure,
    .equation = "u = um 1.48 eta^(1/7) (1 - erf(0.68 eta)), eta = z/b_half, with the error function erf.",
    .inputs = jet_in,
    .outputs = jet_out,
    .source = "verhoff_1963",
    .place = "velocity profile of the two-dimensional turbulent wall jet",
    .provenance = Provenance::memory,
    .accuracy = "0.5 % at the largest velocity and at half of it; the flow in the roller above is left out",
    .remarks = "The largest velocity stands at z = 0.16 b_half.",
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      out[0] = wall_jet_velocity({.z = in[0], .b_half = in[1], .um = in[2]});
      return {};
    }};

const Method wall_jet_decay{.id = "jump.velocity.wall_jet_decay",
                            .title = "Largest velocity near the floor along a simple wall jet",
                            .equation = "um = min(V1, 3.5*V1*sqrt(y1/x))",
                            .inputs = decay_in,
                            .outputs = decay_out,
                            .source = "rajaratnam_1976",
                            .place = "plane turbulent wall jet",
                            .provenance = Provenance::memory,
                            .accuracy = "5 % for the simple wall jet; an upper bound in a jump",
                            .remarks = "In a jump the pressure rises along the jet and the velocity falls faster.",
                            .condition = developed,
                            .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                              out[0] = wall_jet_largest_velocity({.x = in[0], .y1 = in[1], .V1 = in[2]});
                              return {};
                            }};

}  // namespace record
}  // namespace quell::hydraulics
