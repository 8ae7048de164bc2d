#include "quell/hydraulics/uniform_flow.h"

#include <cmath>

#include "quell/base/roots.h"

namespace quell::hydraulics {

double manning_discharge(const ManningFlow& flow) noexcept {
  const double A = flow.section.area(flow.y);
  return A * std::pow(A / flow.section.perimeter(flow.y), 2.0 / 3.0) * std::sqrt(flow.bed_slope) / flow.manning_n;
}

double manning_slope(const ManningSlopeInput& input) noexcept {
  const double A = input.section.area(input.y);
  const double root = input.Q * input.manning_n / (A * std::pow(A / input.section.perimeter(input.y), 2.0 / 3.0));
  return root * root;
}

double manning_roughness(const ManningRoughnessInput& input) noexcept {
  return manning_discharge({.section = input.section, .y = input.y, .bed_slope = input.bed_slope, .manning_n = 1.0}) / input.Q;
}

double chezy_discharge(const ChezyFlow& flow) noexcept {
  const double A = flow.section.area(flow.y);
  return flow.C * A * std::sqrt(A / flow.section.perimeter(flow.y) * flow.bed_slope);
}

Outcome<double> normal_depth_chezy(const ChezyDepthInput& input) {
  const auto& [section, bed_slope, C, Q] = input;
  if (!(section.b + section.m > 0.0)) return no_answer("normal depth needs a section that holds water");
  const double conveyance = Q * Q / (C * C * bed_slope);  // A^3/P
  const auto carries = [&](double y) { return std::pow(section.area(y), 3) / section.perimeter(y) - conveyance; };
  double upper = 1.0;
  while (carries(upper) < 0.0) {
    upper *= 2.0;
    if (upper > 1e9) return no_answer("normal depth is beyond any river");
  }
  return find_root(carries, upper * 1e-12, upper, upper * 1e-15);
}

double critical_slope(const CriticalSlopeInput& input) noexcept {
  const double A = input.section.area(input.yc);
  const double R = A / input.section.perimeter(input.yc);
  return input.manning_n * input.manning_n * gravity * A / (input.section.top_width(input.yc) * std::pow(R, 4.0 / 3.0));
}

double limit_slope(const LimitSlopeInput& input) noexcept {
  const double Fn = input.F * input.manning_n;
  return Fn * Fn * gravity * std::pow(4.0 / 3.0, 4.0 / 3.0) * std::cbrt(6.0 / input.b);
}

double surface_slope_chezy_wide(const WideSurfaceInput& input) noexcept {
  const double friction = std::pow(input.yn / input.y, 3);
  const double froude = std::pow(input.yc / input.y, 3);
  return input.bed_slope * (1.0 - friction) / (1.0 - froude);
}

namespace record {
namespace {
constexpr Symbol width{"b", "bottom width", dimension::length, {0.0, no_limit}};
constexpr Symbol side{"m", "side slope, horizontal to 1 vertical", dimension::none, {0.0, no_limit}};
constexpr Symbol depth{"y", "depth", dimension::length, above_zero};
constexpr Symbol slope{"S", "bed slope", dimension::none, {1e-6, 0.1}};
constexpr Symbol roughness{"n", "Manning's roughness", dimension::manning, {0.008, 0.2}};
constexpr Symbol chezy{"C", "Chezy's coefficient", dimension::weir_coefficient, {10.0, 120.0}};
constexpr Symbol discharge{"Q", "discharge", dimension::discharge, above_zero};

constexpr Symbol manning_in[] = {width, side, depth, slope, roughness};
constexpr Symbol slope_in[] = {width, side, depth, roughness, discharge};
constexpr Symbol roughness_in[] = {width, side, depth, slope, discharge};
constexpr Symbol chezy_in[] = {width, side, depth, slope, chezy};
constexpr Symbol wide_in[] = {depth, slope, chezy};
constexpr Symbol chezy_depth_in[] = {width, side, slope, chezy, discharge};
constexpr Symbol critical_in[] = {width, side, {"yc", "critical depth", dimension::length, above_zero}, roughness};
constexpr Symbol limit_in[] = {{"b", "width", dimension::length, above_zero},
                               roughness,
                               {"F", "Froude number not to be exceeded", dimension::none, {0.1, 3.0}}};
constexpr Symbol surface_in[] = {slope,
                                 {"yn", "normal depth", dimension::length, above_zero},
                                 {"yc", "critical depth", dimension::length, above_zero},
                                 depth};
constexpr Symbol flow_out[] = {discharge,
                               {"V", "mean velocity", dimension::velocity, above_zero},
                               {"R", "hydraulic radius", dimension::length, above_zero}};
constexpr Symbol slope_out[] = {{"S", "slope of the energy line", dimension::none, above_zero}};
constexpr Symbol roughness_out[] = {{"n", "Manning's roughness", dimension::manning, above_zero}};
constexpr Symbol unit_out[] = {{"q", "discharge per unit width", dimension::unit_discharge, above_zero}};
constexpr Symbol normal_out[] = {{"yn", "normal depth", dimension::length, above_zero}};
constexpr Symbol critical_out[] = {{"Sc", "critical slope", dimension::none, above_zero}};
constexpr Symbol limit_out[] = {{"S", "limit slope", dimension::none, above_zero},
                                {"y", "depth at which it is reached", dimension::length, above_zero}};
constexpr Symbol surface_out[] = {{"dydx", "change of depth along the channel", dimension::none, any_value}};

constexpr std::string_view no_section = "b and m are both zero: the section holds no water";

void fill_flow(const Trapezoid& section, double y, double Q, std::span<double> out) {
  out[0] = Q;
  out[1] = Q / section.area(y);
  out[2] = section.area(y) / section.perimeter(y);
}
}  // namespace

const Method discharge_manning{.id = "flow.discharge.manning",
                               .title = "Discharge of uniform flow in a trapezoidal section by Manning's formula",
                               .equation = "R = (b + m*y)*y/(b + 2*y*sqrt(1 + m^2)); V = R^(2/3)*sqrt(S)/n; Q = (b + m*y)*y*V",
                               .inputs = manning_in,
                               .outputs = flow_out,
                               .source = "chow_1959",
                               .place = "ch. 5 and 6, uniform flow",
                               .provenance = Provenance::memory,
                               .accuracy = "n is rarely known better than 15 %",
                               .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                 const Trapezoid section{in[0], in[1]};
                                 if (!(in[0] + in[1] > 0.0)) return no_answer(no_section);
                                 fill_flow(section, in[2], manning_discharge({section, in[2], in[3], in[4]}), out);
                                 return {};
                               }};

const Method slope_manning{.id = "flow.slope.manning",
                           .title = "Slope of uniform flow in a trapezoidal section by Manning's formula",
                           .equation = "R = (b + m*y)*y/(b + 2*y*sqrt(1 + m^2)); S = (Q*n/((b + m*y)*y*R^(2/3)))^2",
                           .inputs = slope_in,
                           .outputs = slope_out,
                           .source = "chow_1959",
                           .place = "ch. 5 and 6, uniform flow",
                           .provenance = Provenance::memory,
                           .accuracy = "n is rarely known better than 15 %, which is 30 % of the slope",
                           .remarks = "At a depth that is not normal it is the friction slope.",
                           .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                             if (!(in[0] + in[1] > 0.0)) return no_answer(no_section);
                             out[0] = manning_slope({{in[0], in[1]}, in[2], in[3], in[4]});
                             return {};
                           }};

const Method roughness_manning{.id = "flow.roughness.manning",
                               .title = "Manning's roughness of a trapezoidal section from a measured uniform flow",
                               .equation = "R = (b + m*y)*y/(b + 2*y*sqrt(1 + m^2)); n = (b + m*y)*y*R^(2/3)*sqrt(S)/Q",
                               .inputs = roughness_in,
                               .outputs = roughness_out,
                               .source = "chow_1959",
                               .place = "ch. 5 and 6, uniform flow",
                               .provenance = Provenance::memory,
                               .accuracy = "as good as the slope of the energy line, which is hard to measure",
                               .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                 if (!(in[0] + in[1] > 0.0)) return no_answer(no_section);
                                 out[0] = manning_roughness({{in[0], in[1]}, in[2], in[3], in[4]});
                                 return {};
                               }};

const Method discharge_chezy{.id = "flow.discharge.chezy",
                             .title = "Discharge of uniform flow in a trapezoidal section by Chezy's formula",
                             .equation = "R = (b + m*y)*y/(b + 2*y*sqrt(1 + m^2)); V = C*sqrt(R*S); Q = (b + m*y)*y*V",
                             .inputs = chezy_in,
                             .outputs = flow_out,
                             .source = "chow_1959",
                             .place = "ch. 5, Chezy's formula",
                             .provenance = Provenance::memory,
                             .accuracy = "as good as C, which varies with depth",
                             .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                               const Trapezoid section{in[0], in[1]};
                               if (!(in[0] + in[1] > 0.0)) return no_answer(no_section);
                               fill_flow(section, in[2], chezy_discharge({section, in[2], in[3], in[4]}), out);
                               return {};
                             }};

const Method unit_discharge_chezy_wide{.id = "flow.unit_discharge.chezy_wide",
                                       .title = "Discharge per unit width of uniform flow in a wide channel by Chezy's formula",
                                       .equation = "q = C*y*sqrt(y*S)",
                                       .inputs = wide_in,
                                       .outputs = unit_out,
                                       .source = "chow_1959",
                                       .place = "ch. 5, Chezy's formula with the depth as hydraulic radius",
                                       .provenance = Provenance::memory,
                                       .accuracy = "within 3 % where the width is above 20 depths; as good as C",
                                       .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                         out[0] = in[2] * in[0] * std::sqrt(in[0] * in[1]);
                                         return {};
                                       }};

const Method normal_depth_chezy{.id = "section.normal_depth.chezy",
                                .title = "Normal depth in a trapezoidal section by Chezy's formula",
                                .kind = EquationKind::residual,
                                .equation = "Q^2 = C^2*S*((b + m*yn)*yn)^3/(b + 2*yn*sqrt(1 + m^2))",
                                .inputs = chezy_depth_in,
                                .outputs = normal_out,
                                .source = "chow_1959",
                                .place = "ch. 5 and 6, uniform flow",
                                .provenance = Provenance::memory,
                                .accuracy = "solved to 1e-12; as good as C, which varies with depth",
                                .evaluate = [](std::span<const double> in, std::span<double> out) {
                                  return store(hydraulics::normal_depth_chezy({{in[0], in[1]}, in[2], in[3], in[4]}), out);
                                }};

const Method critical_slope_manning{
    .id = "section.critical_slope.manning",
    .title = "Critical slope of a trapezoidal section by Manning's formula",
    .equation = "A = (b + m*yc)*yc; R = A/(b + 2*yc*sqrt(1 + m^2)); Sc = n^2*g*A/((b + 2*m*yc)*R^(4/3))",
    .inputs = critical_in,
    .outputs = critical_out,
    .source = "momentum",
    .place = "Manning's velocity set equal to the critical one at critical depth",
    .provenance = Provenance::derived,
    .accuracy = "n is rarely known better than 15 %, which is 30 % of the slope",
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      if (!(in[0] + in[1] > 0.0)) return no_answer(no_section);
      out[0] = critical_slope({{in[0], in[1]}, in[2], in[3]});
      return {};
    }};

const Method limit_slope_manning{.id = "section.limit_slope.manning",
                                 .title = "Steepest slope that keeps uniform flow below a Froude number, rectangular section",
                                 .equation = "y = b/6; S = F^2*g*n^2*(4/3)^(4/3)*(6/b)^(1/3)",
                                 .inputs = limit_in,
                                 .outputs = limit_out,
                                 .source = "momentum",
                                 .place = "least slope over all depths on which Manning's formula gives F; the least is at b/6",
                                 .provenance = Provenance::derived,
                                 .accuracy = "n is rarely known better than 15 %, which is 30 % of the slope",
                                 .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                   out[0] = limit_slope({.b = in[0], .manning_n = in[1], .F = in[2]});
                                   out[1] = in[0] / 6.0;
                                   return {};
                                 }};

const Method surface_slope_chezy_wide{
    .id = "profile.surface_slope.chezy_wide",
    .title = "Change of depth along a wide channel in gradually varied flow, constant Chezy coefficient",
    .equation = "dydx = S*(1 - (yn/y)^3)/(1 - (yc/y)^3)",
    .inputs = surface_in,
    .outputs = surface_out,
    .source = "chow_1959",
    .place = "ch. 8 and 9, gradually varied flow in a wide channel (Bresse)",
    .provenance = Provenance::memory,
    .accuracy = "exact for a constant coefficient and a hydraulic radius equal to the depth",
    .remarks = "A step is dx = dy/dydx, with dydx at the mid-depth of the step.",
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      if (in[3] == in[2]) return no_answer("at critical depth the surface is vertical: the flow is not gradually varied");
      out[0] = hydraulics::surface_slope_chezy_wide({.bed_slope = in[0], .yn = in[1], .yc = in[2], .y = in[3]});
      return {};
    }};

}  // namespace record
}  // namespace quell::hydraulics
