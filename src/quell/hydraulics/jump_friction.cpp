#include "quell/hydraulics/jump_friction.h"

#include <algorithm>
#include <cmath>

namespace quell::hydraulics {
namespace {

constexpr std::string_view no_jump = "flow that is not supercritical makes no jump";

/// Largest root of Y^3 - p Y + r = 0, p > 0, r > 0: Y = 2 s cos(psi/3) with s = sqrt(p/3) and cos(psi) = -r/(2 s^3).
Outcome<double> largest_ratio(double p, double r) {
  const double s = std::sqrt(std::max(0.0, p) / 3.0);
  const double cosine = -r / (2.0 * s * s * s);
  if (!(cosine >= -1.0)) return no_answer("the forces leave no depth at which a jump could stand");
  return 2.0 * s * std::cos(std::acos(cosine) / 3.0);
}

/// F1^2 of supercritical flow.
Outcome<double> froude_squared(const JumpInflow& inflow) {
  if (!(inflow.y1 > 0.0)) return no_answer("the depth before the jump must be above zero");
  const double F1 = froude_number(inflow.V1, inflow.y1);
  if (!(F1 > 1.0)) return bad_input("F1", F1, 1.0, no_limit, no_jump);
  return F1 * F1;
}
}  // namespace

Outcome<double> sequent_depth(const JumpInflow& inflow, const VelocityCoefficients& coefficients) {
  const auto squared = froude_squared(inflow);
  if (!squared) return squared;
  const auto Y = largest_ratio(1.0 + 2.0 * coefficients.beta1 * *squared, 2.0 * coefficients.beta2 * *squared);
  if (!Y) return Y;
  return *Y * inflow.y1;
}

double smooth_bed_friction(double F1) {
  const double excess = std::max(0.0, 0.4 * F1 - 1.0);
  return excess * excess;
}

Outcome<double> sequent_depth_with_friction(const JumpInflow& inflow, double eps) {
  const auto squared = froude_squared(inflow);
  if (!squared) return squared;
  const auto Y = largest_ratio(1.0 + 2.0 * *squared - eps, 2.0 * *squared);
  if (!Y) return Y;
  return *Y * inflow.y1;
}

double sequent_depth_viscous(const JumpInflow& inflow) {
  const double digits = std::log10(inflow.V1 * inflow.y1 / water_viscosity);
  const double F1 = froude_number(inflow.V1, inflow.y1);
  return sequent_depth(inflow) * (1.0 - 0.7 * std::exp(F1 / 8.0) / (digits * digits * std::sqrt(digits)));
}

Outcome<double> sequent_depth_loaded(const LoadedJumpInput& input) {
  const double cosine = std::cos(input.theta);
  if (!(input.b > 0.0) || !(input.d1 > 0.0) || !(cosine > 0.0)) return no_answer("width and depth must be above zero");
  const double F1 = froude_number(input.V1, input.d1 * cosine);
  if (!(F1 > 1.0)) return bad_input("F1", F1, 1.0, no_limit, no_jump);
  // The balance times 2 d2/cos(theta), per unit width and weight: d2^3 - w d2^2 - p d2 + r = 0.
  const double w = input.Kv * input.Lj * std::tan(input.theta);
  const double head = 2.0 * input.V1 * input.V1 * input.d1 / (gravity * cosine);  // 2 q V1/(g cos(theta))
  const double against = 2.0 * (input.friction + input.drag) / (water_unit_weight * input.b * cosine);
  const double p = input.d1 * input.d1 + input.coefficients.beta1 * head + w * input.d1 - against;
  const double r = input.coefficients.beta2 * head * input.d1;
  // Moved by w/3 the square vanishes: t^3 - P t + R = 0.
  const double shift = w / 3.0;
  const double P = p + 3.0 * shift * shift;
  const double R = r - shift * p - 2.0 * shift * shift * shift;
  const double s = std::sqrt(std::max(0.0, P) / 3.0);
  const double ratio = -R / (2.0 * s * s * s);
  if (!(ratio >= -1.0)) return no_answer("the forces leave no depth at which a jump could stand");
  const double t = ratio <= 1.0 ? 2.0 * s * std::cos(std::acos(ratio) / 3.0) : 2.0 * s * std::cosh(std::acosh(ratio) / 3.0);
  const double d2 = t + shift;
  if (!(d2 > 0.0)) return no_answer("the forces leave no depth at which a jump could stand");
  return d2;
}

namespace record {
namespace {
constexpr Symbol y1_symbol{"y1", "depth before the jump", dimension::length, above_zero};
constexpr Symbol V1_symbol{"V1", "mean velocity before the jump", dimension::velocity, above_zero};
constexpr Symbol beta1_symbol{"beta1", "momentum coefficient before the jump", dimension::none, {1.0, 1.3}, 1.0};
constexpr Symbol beta2_symbol{"beta2", "momentum coefficient after the jump", dimension::none, {1.0, 1.3}, 1.0};

constexpr Symbol inflow_in[] = {y1_symbol, V1_symbol};
constexpr Symbol coefficients_in[] = {y1_symbol, V1_symbol, beta1_symbol, beta2_symbol};
constexpr Symbol froude_in[] = {{"F1", "Froude number before the jump", dimension::none, {1.0, 10.0}}};
constexpr Symbol eps_out[] = {{"eps", "friction of the bed over rho g y1^2/2", dimension::none, {0.0, no_limit}}};
constexpr Symbol friction_in[] = {
    y1_symbol, V1_symbol, {"eps", "friction of the bed over rho g y1^2/2", dimension::none, {0.0, no_limit}}};
constexpr Symbol loaded_in[] = {
    {"b", "width of the jump", dimension::length, above_zero},
    {"d1", "depth before the jump, normal to the bed", dimension::length, above_zero},
    V1_symbol,
    {"theta", "angle of the bed, positive downhill", dimension::none, {-0.1, 0.55}, 0.0, {-1.5, 1.5}},
    {"Lj", "length of the jump along the bed", dimension::length, {0.0, no_limit}, 0.0},
    {"Kv", "volume over that under a straight surface", dimension::none, {0.5, 1.5}, 1.0},
    {"Ff", "friction on bed and walls", dimension::force, {0.0, no_limit}, 0.0},
    {"Fd", "drag of blocks, sill or step", dimension::force, {0.0, no_limit}, 0.0},
    beta1_symbol,
    beta2_symbol};
constexpr Symbol y2_out[] = {{"y2", "sequent depth", dimension::length, above_zero}};
constexpr Symbol d2_out[] = {{"d2", "sequent depth, normal to the bed", dimension::length, above_zero}};

std::string_view viscous_condition(std::span<const double> in) {
  const double F1 = hydraulics::froude_number(in[1], in[0]);
  if (!(F1 <= 12.0)) return "F1 is above 12: outside the tests";
  if (!(in[0] * in[1] > 1e4 * water_viscosity)) return "the Reynolds number V1 y1/nu is below 10 000: outside the tests";
  return {};
}
}  // namespace

const Method sequent_depth_momentum_coefficients{
    .id = "jump.sequent_depth.momentum_coefficients",
    .title = "Sequent depth with uneven velocity before and after the jump, rectangular section",
    .equation = "F1 = V1/sqrt(g*y1); s = sqrt((1 + 2*beta1*F1^2)/3); y2 = y1*2*s*cos(acos(-beta2*F1^2/s^3)/3)",
    .inputs = coefficients_in,
    .outputs = y2_out,
    .source = "momentum",
    .place = "largest root of Y^3 - (1 + 2 beta1 F1^2) Y + 2 beta2 F1^2 = 0, Y = y2/y1",
    .provenance = Provenance::derived,
    .accuracy = "exact under its assumptions",
    .evaluate = [](std::span<const double> in, std::span<double> out) {
      return store(sequent_depth(JumpInflow{.y1 = in[0], .V1 = in[1]}, {.beta1 = in[2], .beta2 = in[3]}), out);
    }};

const Method smooth_bed_friction{
    .id = "jump.bed_friction.smooth",
    .title = "Friction of a smooth bed under the jump",
    .equation = "eps = max(0, 0.4*F1 - 1)^2",
    .inputs = froude_in,
    .outputs = eps_out,
    .source = "rajaratnam_1965",
    .place = "integrated bed shear, 0.16 F1^2 - 0.8 F1 + 1, taken as nothing below F1 = 2.5",
    .provenance = Provenance::memory,
    .accuracy = "lowers the sequent depth by 0.8 % at F1 = 4 and 2.6 % at F1 = 10; itself perhaps 20 %",
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      if (in[0] < 1.0) return bad_input("F1", in[0], 1.0, no_limit, no_jump);
      out[0] = hydraulics::smooth_bed_friction(in[0]);
      return {};
    }};

const Method sequent_depth_bed_friction{
    .id = "jump.sequent_depth.bed_friction",
    .title = "Sequent depth with friction on the bed, rectangular section",
    .equation = "F1 = V1/sqrt(g*y1); s = sqrt((1 + 2*F1^2 - eps)/3); y2 = y1*2*s*cos(acos(-F1^2/s^3)/3)",
    .inputs = friction_in,
    .outputs = y2_out,
    .source = "momentum",
    .place = "largest root of Y^3 - (1 + 2 F1^2 - eps) Y + 2 F1^2 = 0, Y = y2/y1",
    .provenance = Provenance::derived,
    .accuracy = "exact for a given friction",
    .evaluate = [](std::span<const double> in, std::span<double> out) {
      return store(sequent_depth_with_friction({.y1 = in[0], .V1 = in[1]}, in[2]), out);
    }};

const Method sequent_depth_viscous{
    .id = "jump.sequent_depth.viscous",
    .title = "Sequent depth in a model, lowered by viscosity, wide rectangular channel",
    .equation = "F1 = V1/sqrt(g*y1); y2 = y1/2*(sqrt(1 + 8*F1^2) - 1)*(1 - 0.7*log10(V1*y1/nu)^(-5/2)*exp(F1/8))",
    .inputs = inflow_in,
    .outputs = y2_out,
    .source = "hager_bremen_1989",
    .place =
        "effect of the Reynolds number on the sequent depths; the effect of the side walls, below 1 % for y1/b < 0.1, is "
        "left out",
    .provenance = Provenance::memory,
    .accuracy = "about 1 %",
    .remarks = "Above V1*y1/nu = 100 000 and for F1 up to 11 the depth falls by less than 5 %.",
    .condition = viscous_condition,
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      const double F1 = hydraulics::froude_number(in[1], in[0]);
      if (!(F1 > 1.0)) return bad_input("F1", F1, 1.0, no_limit, no_jump);
      if (!(in[0] * in[1] > 1e3 * water_viscosity))
        return no_answer("the Reynolds number V1 y1/nu is below 1000: the flow is no longer turbulent");
      out[0] = hydraulics::sequent_depth_viscous({.y1 = in[0], .V1 = in[1]});
      return out[0] > 0.0 ? Outcome<void>{} : no_answer("the correction exceeds the depth");
    }};

const Method sequent_depth_weight_and_drag{
    .id = "jump.sequent_depth.weight_and_drag",
    .title = "Sequent depth with weight along a sloping bed, friction and drag, rectangular section",
    .kind = EquationKind::residual,
    .equation =
        "cos(theta)*d1^2/2 + beta1*V1^2*d1/g + Kv*Lj*sin(theta)*(d1 + d2)/2 = "
        "cos(theta)*d2^2/2 + beta2*(V1*d1)^2/(g*d2) + (Ff + Fd)/(rho*g*b)",
    .inputs = loaded_in,
    .outputs = d2_out,
    .source = "momentum",
    .place = "momentum along the bed, hydrostatic pressure at both ends, weight of the water between them, largest root",
    .provenance = Provenance::derived,
    .accuracy = "exact for given forces; length and volume of the jump are known to about 10 %",
    .remarks = "Where the bed slopes, the length of the jump sets its depth.",
    .evaluate = [](std::span<const double> in, std::span<double> out) {
      return store(sequent_depth_loaded({.b = in[0],
                                         .d1 = in[1],
                                         .V1 = in[2],
                                         .theta = in[3],
                                         .Lj = in[4],
                                         .Kv = in[5],
                                         .friction = in[6],
                                         .drag = in[7],
                                         .coefficients = {.beta1 = in[8], .beta2 = in[9]}}),
                   out);
    }};

}  // namespace record
}  // namespace quell::hydraulics
