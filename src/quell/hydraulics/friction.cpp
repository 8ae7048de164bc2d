#include "quell/hydraulics/friction.h"

#include <cmath>

namespace quell::hydraulics {

double friction_factor(const FrictionInput& input) noexcept {
  const double rough = input.ks / (14.84 * input.R);
  const double smooth = 2.51 * water_viscosity / (4.0 * input.R * input.V);
  // Newton for u = 1/sqrt f, starting from u = 9 under the logarithm: u stands only in the smooth part, so that the equation is
  // nearly explicit. The error of a step is far below its square.
  constexpr double ln10 = 2.302585092994046;
  double u = -2.0 * std::log10(rough + smooth * 9.0);
  for (int i = 0; i < 6; ++i) {
    const double inside = rough + smooth * u;
    const double step = (u + 2.0 * std::log10(inside)) / (1.0 + 2.0 * smooth / (ln10 * inside));
    u -= step;
    if (std::abs(step) < 1e-5 * u) break;
  }
  return 1.0 / (u * u);
}

double friction_slope(const FrictionSlopeInput& input) noexcept {
  return input.f * input.V * input.V / (8.0 * gravity * input.R);
}

double roughness_height_from_manning(const ManningConversion& input) noexcept {
  const double f = 8.0 * gravity * input.n * input.n / std::cbrt(input.R);
  return 14.84 * input.R * std::pow(10.0, -0.5 / std::sqrt(f));
}

namespace record {
namespace {
constexpr Symbol factor_in[] = {{"ks", "equivalent sand roughness", dimension::length, {1e-6, 0.05}},
                                {"R", "hydraulic radius", dimension::length, {1e-3, 100.0}},
                                {"V", "mean velocity", dimension::velocity, {0.01, 100.0}}};
constexpr Symbol factor_out[] = {{"f", "Darcy's friction factor", dimension::none, above_zero}};
constexpr Symbol slope_in[] = {{"f", "Darcy's friction factor", dimension::none, {0.005, 0.2}},
                               {"V", "mean velocity", dimension::velocity, above_zero},
                               {"R", "hydraulic radius", dimension::length, above_zero}};
constexpr Symbol slope_out[] = {{"Sf", "friction slope along the bed", dimension::none, above_zero}};
constexpr Symbol manning_in[] = {{"n", "Manning's roughness", dimension::manning, {0.008, 0.03}},
                                 {"R", "hydraulic radius at which both agree", dimension::length, {0.05, 20.0}}};
constexpr Symbol manning_out[] = {{"ks", "equivalent sand roughness", dimension::length, above_zero}};
}  // namespace

const Method friction_factor_colebrook{.id = "chute.friction_factor.colebrook",
                                       .title = "Darcy's friction factor of the chute by Colebrook",
                                       .kind = EquationKind::residual,
                                       .equation = "1/sqrt(f) = -2*log10(ks/(14.84*R) + 2.51*nu/(4*R*V*sqrt(f)))",
                                       .inputs = factor_in,
                                       .outputs = factor_out,
                                       .source = "colebrook_1939",
                                       .place = "transition formula, written with the hydraulic radius",
                                       .provenance = Provenance::memory,
                                       .accuracy = "solved to 1e-12; the formula itself about 3 to 5 %",
                                       .condition = [](std::span<const double> in) -> std::string_view {
                                         if (in[0] / (4.0 * in[1]) >= 0.05)
                                           return "ks/(4 R) is 0.05 or more: rougher than the formula was made for";
                                         if (4.0 * in[1] * in[2] / water_viscosity < 5e3)
                                           return "the Reynolds number is below 5000";
                                         return {};
                                       },
                                       .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                         if (!(in[0] > 0.0 && in[1] > 0.0 && in[2] > 0.0))
                                           return no_answer("ks, R and V must be above zero");
                                         out[0] = friction_factor({.ks = in[0], .R = in[1], .V = in[2]});
                                         return {};
                                       }};

const Method friction_slope_darcy{.id = "chute.friction_slope.darcy",
                                  .title = "Friction slope by Darcy and Weisbach",
                                  .equation = "Sf = f*V^2/(8*g*R)",
                                  .inputs = slope_in,
                                  .outputs = slope_out,
                                  .source = "momentum",
                                  .place = "definition of the friction factor",
                                  .provenance = Provenance::derived,
                                  .accuracy = "exact for the factor given",
                                  .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                    out[0] = friction_slope({.f = in[0], .V = in[1], .R = in[2]});
                                    return {};
                                  }};

const Method roughness_height_manning{
    .id = "chute.roughness_height.manning",
    .title = "Roughness height that gives the friction of Manning's n",
    .equation = "f = 8*g*n^2/R^(1/3); ks = 14.84*R*10^(-1/(2*sqrt(f)))",
    .inputs = manning_in,
    .outputs = manning_out,
    .source = "momentum",
    .place = "Manning and the fully rough limit of Colebrook set equal at the hydraulic radius R",
    .provenance = Provenance::derived,
    .accuracy = "exact at R; 10 % in n is about a factor 3 in ks",
    .remarks =
        "The closed power law n = ks^(1/6)/26.4 holds only for R/ks from 5 to 500 and underestimates n on smooth chutes.",
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      if (!(in[0] > 0.0 && in[1] > 0.0)) return no_answer("n and R must be above zero");
      out[0] = roughness_height_from_manning({.n = in[0], .R = in[1]});
      return {};
    }};

}  // namespace record
}  // namespace quell::hydraulics
