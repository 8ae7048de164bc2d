#include "quell/hydraulics/aerated_flow.h"

#include <cmath>

#include "quell/base/roots.h"
#include "quell/hydraulics/chute_symbols.h"
#include "quell/hydraulics/self_aeration.h"

namespace quell::hydraulics {
namespace {

constexpr double tanh_K = 0.31622776601683794;  // sqrt 0.1
constexpr double K_star = 0.32745015023725843;  // atanh of it

/// Mean content of the profile as a function of t = 1/(2 D'): (tanh(K* + t) - tanh K*)/t, written without a difference. It
/// falls from 0.9 at t = 0 to none.
double mean_content(double t) noexcept {
  const double tanh_t = std::tanh(t);
  return tanh_t * (1.0 - tanh_K * tanh_K) / ((1.0 + tanh_K * tanh_t) * t);
}

}  // namespace

Outcome<double> air_diffusivity(double C) noexcept {
  if (!(C > 0.0) || !(C < 0.9)) return bad_input("C", C, above_zero.lowest, 0.9, "the mean lies below the 90 % of the surface");
  // tanh(K* + t) - tanh K* is at most 1 - tanh K*, so that t is at most that over C; a thousandth for rounding.
  const double upper = 1.001 * (1.0 - tanh_K) / C;
  const auto t = find_root([C](double at) { return mean_content(at) - C; }, 1e-9, upper, 1e-16);
  if (!t) return t;
  return 0.5 / *t;
}

double air_profile_constant(double D) noexcept {
  return K_star + 0.5 / D;
}

double local_air(const LocalAirInput& input) noexcept {
  const double tangent = std::tanh(K_star + (1.0 - input.Y) / (2.0 * input.D));
  return 1.0 - tangent * tangent;
}

AeratedUniformFlow aerated_uniform_flow(const AeratedUniformInput& input) noexcept {
  const double fe = input.f * air_drag_reduction(input.C);
  const double depth = std::cbrt(fe * input.q * input.q / (8.0 * gravity * std::sin(input.theta)));
  return {depth, input.q / depth, bulked_depth({.d = depth, .C = input.C})};
}

namespace record {
namespace {
constexpr Symbol content{"C", "mean air content", dimension::none, {0.05, 0.75}, must_be_given, {0.0, 0.999}};
constexpr Symbol diffusivity_in[] = {content};
constexpr Symbol diffusivity_out[] = {{"Dp", "diffusivity of the profile, without dimension", dimension::none, above_zero}};
constexpr Symbol local_in[] = {{"Y", "distance from the bed over Y90", dimension::none, {0.0, 1.0}},
                               {"Dp", "diffusivity of the profile", dimension::none, {0.03, 1.1}}};
constexpr Symbol local_out[] = {{"Ca", "local air content", dimension::none, {0.0, 1.0}}};
constexpr Symbol uniform_in[] = {{"q", "discharge per unit width", dimension::unit_discharge, above_zero},
                                 bed_angle("theta", 7.5 * degree, 75 * degree),
                                 {"f", "Darcy's friction factor of the clear flow", dimension::none, {0.005, 0.1}},
                                 content};
constexpr Symbol uniform_out[] = {{"d", "depth of the water alone, normal to the bed", dimension::length, above_zero},
                                  {"V", "mean velocity of the water", dimension::velocity, above_zero},
                                  {"Y90", "depth to an air content of 90 %", dimension::length, above_zero}};
constexpr Symbol bulked_in[] = {{"d", "depth of the water alone", dimension::length, {0.0, no_limit}},
                                {"C", "mean air content", dimension::none, {0.0, 0.75}, must_be_given, {0.0, 0.999}}};
constexpr Symbol bulked_out[] = {{"Y90", "depth to an air content of 90 %", dimension::length, {0.0, no_limit}}};
}  // namespace

const Method air_diffusivity{.id = "aeration.diffusivity.chanson",
                             .title = "Diffusivity of the profile of air with a given mean",
                             .kind = EquationKind::residual,
                             .equation = "C = 2*Dp*(tanh(0.5*ln((1 + sqrt(0.1))/(1 - sqrt(0.1))) + 1/(2*Dp)) - sqrt(0.1))",
                             .inputs = diffusivity_in,
                             .outputs = diffusivity_out,
                             .source = "chanson_1993",
                             .place = "mean of the profile up to 90 % air",
                             .provenance = Provenance::memory,
                             .accuracy = "solved to 1e-13",
                             .evaluate = [](std::span<const double> in, std::span<double> out) {
                               return store(hydraulics::air_diffusivity(in[0]), out);
                             }};

const Method local_air{.id = "aeration.local_content.chanson",
                       .title = "Air content at a distance from the bed",
                       .equation = "Kp = 0.5*ln((1 + sqrt(0.1))/(1 - sqrt(0.1))) + 1/(2*Dp); Ca = 1 - tanh(Kp - Y/(2*Dp))^2",
                       .inputs = local_in,
                       .outputs = local_out,
                       .source = "chanson_1993",
                       .place = "diffusion of bubbles, the profile through 90 % at Y = 1",
                       .provenance = Provenance::memory,
                       .accuracy = "about 0.05 outside the lowest layer, where the content falls to none at the bed",
                       .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                         if (!(in[1] > 0.0))
                           return bad_input("Dp", in[1], above_zero.lowest, no_limit, "without diffusion there is no profile");
                         out[0] = hydraulics::local_air({.Y = in[0], .D = in[1]});
                         return {};
                       }};

const Method aerated_uniform_flow{
    .id = "aeration.uniform_flow.darcy",
    .title = "Uniform aerated flow on a wide smooth chute",
    .equation =
        "fe = f*0.5*(1 + tanh(0.628*(0.514 - C)/(C*(1 - C)))); d = (fe*q^2/(8*g*sin(theta)))^(1/3); V = q/d; "
        "Y90 = d/(1 - C)",
    .inputs = uniform_in,
    .outputs = uniform_out,
    .source = "chanson_1994",
    .place = "friction slope equal to the sine, drag reduced by the air",
    .provenance = Provenance::memory,
    .accuracy = "about 10 %; reached only far down the chute",
    .remarks = "f is that of the clear flow at its own uniform depth; taken at the thinner depth, d grows by about 3 %.",
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      const auto flow = hydraulics::aerated_uniform_flow({.q = in[0], .theta = in[1], .f = in[2], .C = in[3]});
      out[0] = flow.depth;
      out[1] = flow.velocity;
      out[2] = flow.Y90;
      return {};
    }};

const Method bulked_depth{.id = "aeration.bulked_depth.continuity",
                          .title = "Depth of the mixture of water and air",
                          .equation = "Y90 = d/(1 - C)",
                          .inputs = bulked_in,
                          .outputs = bulked_out,
                          .source = "momentum",
                          .place = "the water of the mixture fills the clear-water depth",
                          .provenance = Provenance::derived,
                          .accuracy = "exact for the content given",
                          .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                            out[0] = hydraulics::bulked_depth({.d = in[0], .C = in[1]});
                            return {};
                          }};

}  // namespace record
}  // namespace quell::hydraulics
