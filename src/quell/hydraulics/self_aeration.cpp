#include "quell/hydraulics/self_aeration.h"

#include <cmath>

#include "quell/base/curve.h"
#include "quell/base/roots.h"
#include "quell/hydraulics/chute_symbols.h"

namespace quell::hydraulics {
namespace {

double roughness_froude(const SmoothInceptionInput& input) noexcept {
  return input.q / std::sqrt(gravity * std::sin(input.theta) * input.ks * input.ks * input.ks);
}

/// C at which ln((1 - C)/(Ce - C)) is u above its value without air: 0 at u = 0, Ce as u grows without bound.
double content_at(double Ce, double u) noexcept {
  return -Ce * std::expm1(-u) / (1.0 - Ce * std::exp(-u));
}

}  // namespace

SmoothInception smooth_inception(const SmoothInceptionInput& input) noexcept {
  const double F = roughness_froude(input);
  const double sine = std::sin(input.theta);
  return {13.6 * input.ks * std::pow(sine, 0.0796) * std::pow(F, 0.713),
          0.223 * input.ks * std::pow(sine, -0.04) * std::pow(F, 0.643)};
}

double equilibrium_air(double theta) noexcept {
  static const Curve& content = curve("equilibrium_air");
  return content.at(theta / degree);
}

double air_drag_reduction(double C) noexcept {
  if (!(C > 0.0)) return 1.0;
  return 0.5 * (1.0 + std::tanh(0.628 * (0.514 - C) / (C * (1.0 - C))));
}

Outcome<double> developing_air(const DevelopingAirInput& input) noexcept {
  const double Ce = input.Ce;
  if (!(Ce > 0.0) || !(Ce < 1.0)) return bad_input("Ce", Ce, above_zero.lowest, 1.0, "water must be left between the air");
  if (!(input.q > 0.0)) return bad_input("q", input.q, above_zero.lowest, no_limit, "there must be a flow");
  const double reach = input.ur * std::cos(input.theta) * input.x / input.q;
  if (!(reach >= 0.0)) return bad_input("x", input.x, 0.0, no_limit, "the air comes in downstream of inception");
  const double water = 1.0 - Ce;
  // ln((1 - C)/(Ce - C)) grows by u from inception; C/(1 - C) is at most Ce/(1 - Ce), which closes the bracket.
  const auto excess = [&](double u) {
    const double C = content_at(Ce, u);
    return u / (water * water) - C / ((1.0 - C) * water) - reach;
  };
  const auto u = find_root(excess, 0.0, (water * water * reach + Ce) * (1.0 + 1e-12), 1e-16);
  if (!u) return u;
  return content_at(Ce, *u);
}

namespace record {
namespace {
constexpr Symbol unit_discharge{"q", "discharge per unit width", dimension::unit_discharge, above_zero};
constexpr Symbol inception_in[] = {unit_discharge,
                                   bed_angle("theta", 5 * degree, 70 * degree),
                                   {"ks", "equivalent sand roughness", dimension::length, {1e-5, 0.05}}};
constexpr Symbol inception_out[] = {{"Li", "distance along the bed to the inception of air", dimension::length, above_zero},
                                    {"dI", "depth there, normal to the bed", dimension::length, above_zero}};
constexpr Symbol equilibrium_in[] = {bed_angle("theta", 7.5 * degree, 75 * degree)};
constexpr Symbol equilibrium_out[] = {{"Ce", "mean air content of uniform flow", dimension::none, {0.0, 1.0}}};
constexpr Symbol drag_in[] = {{"C", "mean air content", dimension::none, {0.01, 0.75}, must_be_given, {0.0, 0.999}}};
constexpr Symbol drag_out[] = {{"fr", "friction factor of aerated over clear flow", dimension::none, {0.0, 1.0}}};
constexpr Symbol developing_in[] = {
    unit_discharge,
    bed_angle("theta", 7.5 * degree, 75 * degree),
    {"Ce", "mean air content of uniform flow", dimension::none, {0.05, 0.75}, must_be_given, {0.0, 0.999}},
    {"ur", "rise velocity of the bubbles", dimension::velocity, {0.2, 0.6}, 0.4},
    {"x", "distance along the bed below inception", dimension::length, {0.0, 2000.0}}};
constexpr Symbol developing_out[] = {{"C", "mean air content", dimension::none, {0.0, 1.0}}};
}  // namespace

const Method smooth_inception{.id = "aeration.inception.wood",
                              .title = "Inception of self-aeration on a smooth chute",
                              .equation =
                                  "Fs = q/sqrt(g*sin(theta)*ks^3); Li = 13.6*ks*sin(theta)^0.0796*Fs^0.713; "
                                  "dI = 0.223*ks*sin(theta)^(-0.04)*Fs^0.643",
                              .inputs = inception_in,
                              .outputs = inception_out,
                              .source = "wood_ackers_loveless_1983",
                              .place = "as given by Chanson",
                              .provenance = Provenance::memory,
                              .accuracy = "about 20 %; the boundary layer reaching the surface is the other measure",
                              .condition = [](std::span<const double> in) -> std::string_view {
                                const double F = roughness_froude({.q = in[0], .theta = in[1], .ks = in[2]});
                                return F > 1e3 && F < 1e7 ? std::string_view{}
                                                          : "the roughness Froude number is not from 1e3 to 1e7";
                              },
                              .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                const auto inception = hydraulics::smooth_inception({.q = in[0], .theta = in[1], .ks = in[2]});
                                out[0] = inception.length;
                                out[1] = inception.depth;
                                return {};
                              }};

const Method equilibrium_air{.id = "aeration.equilibrium.wood",
                             .title = "Mean air content of uniform flow on a smooth chute",
                             .equation = "Ce = equilibrium_air(theta*180/pi)",
                             .inputs = equilibrium_in,
                             .outputs = equilibrium_out,
                             .source = "wood_1983",
                             .place = "measurements of Straub and Anderson as worked up by Wood",
                             .provenance = Provenance::memory,
                             .accuracy = "published relations differ by 0.06",
                             .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                               out[0] = hydraulics::equilibrium_air(in[0]);
                               return {};
                             }};

const Method air_drag_reduction{.id = "aeration.drag_reduction.chanson",
                                .title = "Friction of aerated over clear flow",
                                .equation = "fr = 0.5*(1 + tanh(0.628*(0.514 - C)/(C*(1 - C))))",
                                .inputs = drag_in,
                                .outputs = drag_out,
                                .source = "chanson_1994",
                                .place = "fit to flumes and prototypes",
                                .provenance = Provenance::memory,
                                .accuracy = "scatter of about 0.1",
                                .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                  out[0] = hydraulics::air_drag_reduction(in[0]);
                                  return {};
                                }};

const Method developing_air{
    .id = "aeration.concentration.developing",
    .title = "Mean air content below inception",
    .kind = EquationKind::residual,
    .equation = "ur*cos(theta)*x/q = ln(Ce*(1 - C)/(Ce - C))/(1 - Ce)^2 - C/((1 - C)*(1 - Ce))",
    .inputs = developing_in,
    .outputs = developing_out,
    .source = "chanson_1993",
    .place = "continuity of the air, dC/dx = (1 - C)^2 (Ce - C) ur cos(theta)/q, after Wood",
    .provenance = Provenance::derived,
    .accuracy = "solved to 1e-14; the rise velocity is known to about 30 %",
    .condition = [](std::span<const double> in) -> std::string_view {
      const double reach = in[3] * std::cos(in[1]) * in[4] / in[0];
      if (reach * (1.0 - in[2]) * (1.0 - in[2]) > 12.0) return "the flow is uniform to six digits: the content is Ce";
      return {};
    },
    .evaluate =
        [](std::span<const double> in, std::span<double> out) {
          return store(hydraulics::developing_air({.q = in[0], .theta = in[1], .Ce = in[2], .ur = in[3], .x = in[4]}), out);
        }};

}  // namespace record
}  // namespace quell::hydraulics
