#include "quell/hydraulics/slab_uplift.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "quell/base/constants.h"

namespace quell::hydraulics {

namespace {

constexpr double overlap = 0.382597858232;  ///< (sqrt 2 + ln(1 + sqrt 2))/6

double mean_one(double a) noexcept {
  return a < 1e-6 ? 1.0 - 0.5 * a : (1.0 - std::exp(-a)) / a;
}
double mean_two(double a) noexcept {
  return a < 1e-4 ? 1.0 - a / 3.0 : 2.0 * (a - 1.0 + std::exp(-a)) / (a * a);
}

}  // namespace

double mean_jump_depth(const JumpProfileInput& input, double from, double to) noexcept {
  const double k = 1.5 / input.Lr;
  if (!(to > from)) return input.d1 + (input.d2 - input.d1) * std::tanh(k * from);
  // The integral of tanh is ln cosh, written without overflow.
  const double bend = std::log1p(std::exp(-2.0 * k * to)) - std::log1p(std::exp(-2.0 * k * from));
  return input.d1 + (input.d2 - input.d1) * (1.0 + bend / (k * (to - from)));
}

double uplift_head(const DrainInput& input) noexcept {
  return input.hs + (1.0 - input.E) * (input.h0 - input.hs);
}

double uplift_thickness(const UpliftThicknessInput& input) noexcept {
  const double head = input.hu - input.y + input.hd;
  return std::max(0.0, head * water_unit_weight / (input.gamma_c - water_unit_weight));
}

double suction_cap(double y, double pa, double pv) noexcept {
  return y + (pa - pv) / water_unit_weight;
}

PanelCoefficients panel_coefficients(double a, double b) noexcept {
  const double M1a = mean_one(a), M1b = mean_one(b), M2a = mean_two(a), M2b = mean_two(b);
  const double wx = b / (2.0 * (a + b)), wy = a / (2.0 * (a + b));
  const double one = M2b * (1.0 + M2a - 2.0 * M1a);
  const double four = 2.0 * wx * wx * M2b * (1.0 + std::exp(-a)) + 2.0 * wy * wy * M2a * (1.0 + std::exp(-b)) +
                      8.0 * wx * wy * M1a * M1b + M2a * M2b - 4.0 * wx * M1a * M2b - 4.0 * wy * M1b * M2a;
  return {.sealed = std::sqrt(M2a * M2b), .one = std::sqrt(std::max(0.0, one)), .four = std::sqrt(std::max(0.0, four))};
}

double stagnation_head(double Ku, double V) noexcept {
  return Ku * V * V / (2.0 * gravity);
}

double anchored_pressure(const AnchoredInput& input) noexcept {
  const double lifting = water_unit_weight * (input.hu - input.y + input.DAF * input.hd);
  return std::max(0.0, lifting - (input.gamma_c - water_unit_weight) * input.s);
}

double rock_anchor_length(const RockAnchorInput& input) noexcept {
  return input.FS * input.T / (input.gamma_r * input.spacing * input.spacing) + overlap * input.spacing;
}

double bond_length(double T, double D, double tau) noexcept {
  return T / (std::numbers::pi * D * tau);
}

namespace record {
namespace {
constexpr Range heads{0.0, no_limit};
constexpr Range concretes{20.0e3, 28.0e3};
constexpr Symbol profile_in[] = {{"d1", "depth at the toe", dimension::length, above_zero},
                                 {"d2", "depth behind the jump", dimension::length, above_zero},
                                 {"Lr", "length of the roller", dimension::length, above_zero},
                                 {"x1", "start of the stretch, from the toe", dimension::length, heads},
                                 {"x2", "its end", dimension::length, above_zero}};
constexpr Symbol drain_in[] = {{"h0", "head without drains", dimension::length, heads},
                               {"hs", "head where the drains discharge", dimension::length, heads},
                               {"E", "efficiency of the drains", dimension::none, {0.0, 0.67}}};
constexpr Symbol thickness_in[] = {{"hu", "uplift head above the top of the floor", dimension::length, heads},
                                   {"y", "water over the slab", dimension::length, heads},
                                   {"hd", "head of the pulses", dimension::length, heads, 0.0},
                                   {"gamma_c", "unit weight of the concrete", dimension::unit_weight, concretes, 24.0e3}};
constexpr Symbol cap_in[] = {{"y", "mean depth over the floor", dimension::length, heads},
                             {"pa", "pressure of the atmosphere", dimension::pressure, above_zero},
                             {"pv", "pressure of the vapour", dimension::pressure, above_zero}};
constexpr Symbol cap_out[] = {{"h", "largest fall of the pressure head below its mean", dimension::length, above_zero}};
constexpr Symbol panel_in[] = {{"a", "length of the panel over the length of the pulses", dimension::none, {0.2, 50.0}},
                               {"b", "width of the panel over the width of the pulses", dimension::none, {0.2, 50.0}}};
constexpr Symbol lip_in[] = {{"Ku", "share of the velocity head", dimension::none, {0.0, 1.0}},
                             {"V", "velocity at the height of the lip", dimension::velocity, heads}};
constexpr Symbol anchored_in[] = {{"hu", "uplift head above the top of the floor", dimension::length, heads},
                                  {"y", "water over the slab", dimension::length, heads},
                                  {"hd", "head of the pulses", dimension::length, heads},
                                  {"DAF", "dynamic factor", dimension::none, {1.0, 2.0}},
                                  {"gamma_c", "unit weight of the concrete", dimension::unit_weight, concretes},
                                  {"s", "thickness of the slab", dimension::length, above_zero}};
constexpr Symbol rock_in[] = {{"T", "force on a bar", dimension::force, above_zero},
                              {"sp", "spacing of the bars, square grid", dimension::length, above_zero},
                              {"gamma_r", "submerged unit weight of the rock", dimension::unit_weight, {8.0e3, 22.0e3}},
                              {"FS", "safety", dimension::none, {1.0, 3.0}, 1.5}};
constexpr Symbol bond_in[] = {{"T", "force on a bar", dimension::force, above_zero},
                              {"D", "diameter of hole or bar", dimension::length, above_zero},
                              {"tau", "bond allowed", dimension::pressure, above_zero}};
constexpr Symbol depth_out[] = {{"ym", "mean depth over the stretch", dimension::length, above_zero}};
constexpr Symbol head_out[] = {{"hu", "uplift head above the top of the floor", dimension::length, heads}};
constexpr Symbol thickness_out[] = {{"s", "thickness without anchors", dimension::length, heads}};
constexpr Symbol panel_out[] = {{"Psi", "joints sealed", dimension::none, {0.0, 1.0}},
                                {"O1", "one transverse joint open", dimension::none, {0.0, 1.0}},
                                {"O4", "open on four sides", dimension::none, {0.0, 1.0}}};
constexpr Symbol lip_out[] = {{"dh", "uplift head at the joint", dimension::length, heads}};
constexpr Symbol pressure_out[] = {{"p", "pressure left for the anchors", dimension::pressure, heads}};
constexpr Symbol rock_out[] = {{"L", "length in the rock", dimension::length, above_zero}};
}  // namespace

const Method mean_jump_depth{
    .id = "jump.depth.mean_over_stretch",
    .title = "Mean depth in a jump over a stretch of floor",
    .equation = "k = 1.5/Lr; ym = d1 + (d2 - d1)*(1 + ln((1 + exp(-2*k*x2))/(1 + exp(-2*k*x1)))/(k*(x2 - x1)))",
    .inputs = profile_in,
    .outputs = depth_out,
    .source = "hager_1992",
    .place = "mean surface d1 + (d2 - d1) tanh(1.5 x/Lr), integrated",
    .provenance = Provenance::memory,
    .accuracy = "about 10 %",
    .condition = [](std::span<const double> in) -> std::string_view {
      return in[4] > in[3] ? std::string_view{} : "the stretch has no length";
    },
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      out[0] = hydraulics::mean_jump_depth({in[0], in[1], in[2]}, in[3], in[4]);
      return {};
    }};

const Method uplift_head{.id = "slab.uplift_head.drains",
                         .title = "Uplift head under a slab with drains",
                         .equation = "hu = hs + (1 - E)*(h0 - hs)",
                         .inputs = drain_in,
                         .outputs = head_out,
                         .source = "momentum",
                         .place = "definition of the efficiency of drains; 0.25 to 0.5 unmeasured, 0.67 proven, recalled",
                         .provenance = Provenance::derived,
                         .accuracy = "as good as the efficiency",
                         .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                           out[0] = hydraulics::uplift_head({in[0], in[1], in[2]});
                           return {};
                         }};

const Method uplift_thickness{.id = "slab.thickness.uplift",
                              .title = "Thickness of a slab without anchors against uplift and pulses",
                              .equation = "s = max(0, (hu - y + hd)*gamma_w/(gamma_c - gamma_w))",
                              .inputs = thickness_in,
                              .outputs = thickness_out,
                              .source = "momentum",
                              .place = "weight against uplift, safety factor 1",
                              .provenance = Provenance::derived,
                              .accuracy = "limit equilibrium",
                              .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                if (!(in[3] > water_unit_weight))
                                  return bad_input("gamma_c", in[3], water_unit_weight, no_limit, "lighter than water");
                                out[0] = hydraulics::uplift_thickness({in[0], in[1], in[2], in[3]});
                                return {};
                              }};

const Method suction_cap{.id = "slab.suction_cap.vapour",
                         .title = "Largest fall of the pressure on a floor",
                         .equation = "h = y + (pa - pv)/gamma_w",
                         .inputs = cap_in,
                         .outputs = cap_out,
                         .source = "momentum",
                         .place = "the absolute pressure does not fall below that of the vapour",
                         .provenance = Provenance::derived,
                         .accuracy = "a bound; air in the water makes it smaller",
                         .condition = [](std::span<const double> in) -> std::string_view {
                           return in[1] >= in[2] ? std::string_view{} : "the water boils at rest";
                         },
                         .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                           out[0] = hydraulics::suction_cap(in[0], in[1], in[2]);
                           return {};
                         }};

const Method panel_coefficients{
    .id = "slab.panel_coefficients.separable",
    .title = "Share of the pulses that lifts a panel, by the state of its joints",
    .equation =
        "A = (1 - exp(-a))/a; B = (1 - exp(-b))/b; P = 2*(a - 1 + exp(-a))/a^2; Q = 2*(b - 1 + exp(-b))/b^2; "
        "u = b/(2*(a + b)); v = a/(2*(a + b)); Psi = sqrt(P*Q); O1 = sqrt(Q*(1 + P - 2*A)); "
        "R = 2*u^2*Q*(1 + exp(-a)); S = 2*v^2*P*(1 + exp(-b)); T = 8*u*v*A*B; X = 4*u*A*Q + 4*v*B*P; "
        "O4 = sqrt(R + S + T - X + P*Q)",
    .inputs = panel_in,
    .outputs = panel_out,
    .source = "momentum",
    .place = "variance of the net force with correlation exp(-|x| - |y|), underside at the mean of its open joints",
    .provenance = Provenance::derived,
    .accuracy = "a screening model; a potential solution below the slab is within 12 % for four open joints",
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      const auto c = hydraulics::panel_coefficients(in[0], in[1]);
      out[0] = c.sealed;
      out[1] = c.one;
      out[2] = c.four;
      return {};
    }};

const Method stagnation_head{.id = "slab.joint_uplift.stagnation",
                             .title = "Uplift head at a joint with a lip into the flow",
                             .equation = "dh = Ku*V^2/(2*g)",
                             .inputs = lip_in,
                             .outputs = lip_out,
                             .source = "momentum",
                             .place = "share of the velocity head; 1 with the mean velocity is the upper bound",
                             .provenance = Provenance::derived,
                             .accuracy = "upper bound with Ku = 1; regressions of tests could not be read",
                             .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                               out[0] = hydraulics::stagnation_head(in[0], in[1]);
                               return {};
                             }};

const Method anchored_pressure{.id = "slab.net_pressure.anchored",
                               .title = "Pressure that anchors must hold",
                               .equation = "p = max(0, gamma_w*(hu - y + DAF*hd) - (gamma_c - gamma_w)*s)",
                               .inputs = anchored_in,
                               .outputs = pressure_out,
                               .source = "momentum",
                               .place = "balance of a panel; a dynamic factor of 2 bounds an undamped anchor under a pulse",
                               .provenance = Provenance::derived,
                               .accuracy = "as good as the heads",
                               .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                 out[0] = hydraulics::anchored_pressure(
                                     {.hu = in[0], .y = in[1], .hd = in[2], .DAF = in[3], .gamma_c = in[4], .s = in[5]});
                                 return {};
                               }};

const Method rock_anchor_length{
    .id = "anchor.rock_length.grid",
    .title = "Length of grouted bars for the weight of the rock that they hold",
    .equation = "L = FS*T/(gamma_r*sp^2) + (sqrt(2) + ln(1 + sqrt(2)))/6*sp",
    .inputs = rock_in,
    .outputs = rock_out,
    .source = "em_2400_1964",
    .place = "rock bounded by an apex of 90 degrees at the bar's end, overlap taken off; the volume of the grid derived",
    .provenance = Provenance::seen,
    .accuracy = "where the spacing over the root of two is not above the length",
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      out[0] = hydraulics::rock_anchor_length({.T = in[0], .spacing = in[1], .gamma_r = in[2], .FS = in[3]});
      return {};
    }};

const Method bond_length{.id = "anchor.bond_length.uniform",
                         .title = "Bond length of a grouted bar",
                         .equation = "L = T/(pi*D*tau)",
                         .inputs = bond_in,
                         .outputs = rock_out,
                         .source = "practice",
                         .place = "even bond; 0.5 MPa grout to rock and 1.0 MPa bar to grout as a first look",
                         .provenance = Provenance::common_practice,
                         .accuracy = "pull-out tests decide",
                         .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                           out[0] = hydraulics::bond_length(in[0], in[1], in[2]);
                           return {};
                         }};

}  // namespace record
}  // namespace quell::hydraulics
