#include "quell/hydraulics/stepped_energy.h"

#include <algorithm>
#include <cmath>

#include "quell/hydraulics/chute_symbols.h"
#include "quell/hydraulics/section.h"

namespace quell::hydraulics {
namespace {

constexpr double boes_hager_energy_coefficient = 1.1;

double uniform_depth_boes_hager(double q, double phi) noexcept {
  return 0.215 * critical_depth(q) / std::cbrt(std::sin(phi));
}

/// K/Dh of uniform flow.
double relative_roughness(double hw, double s, double phi) noexcept {
  return s * std::cos(phi) / (4.0 * hw);
}

}  // namespace

UniformSteppedFlow stepped_uniform_flow(const SteppedFlow& input) noexcept {
  const double sine = std::sin(input.phi);
  const double F = input.q / std::sqrt(gravity * sine * input.s * input.s * input.s);
  return {uniform_depth_boes_hager(input.q, input.phi), 0.50 * input.s * std::pow(F, 0.1 * std::tan(input.phi) + 0.5),
          24.0 * critical_depth(input.q) * std::pow(sine, 2.0 / 3.0)};
}

double stepped_friction_factor(const StepFrictionInput& input) noexcept {
  const double logarithm = 1.0 - 0.25 * std::log10(relative_roughness(input.hw, input.s, input.phi));
  return (0.5 - 0.42 * std::sin(2.0 * input.phi)) / (logarithm * logarithm);
}

double stepped_residual_head_boes_hager(const SteppedDrop& input) noexcept {
  const double dc = critical_depth(input.q);
  const double sine = std::sin(input.phi);
  const double hw = uniform_depth_boes_hager(input.q, input.phi);
  const double X = input.Hdam / dc;
  const double developing =
      std::exp(-0.045 * std::pow(relative_roughness(hw, input.s, input.phi), 0.1) * std::pow(sine, -0.8) * X);
  const double a = std::cbrt(stepped_friction_factor({.hw = hw, .s = input.s, .phi = input.phi}) / (8.0 * sine));
  const double Fu = a * std::cos(input.phi) + 0.5 * boes_hager_energy_coefficient / (a * a);
  return (input.Hdam + 1.5 * dc) * std::max(developing, Fu / (X + Fu));
}

double stepped_residual_head_hunt_kadavy(const SteppedDrop& input) noexcept {
  const double length = input.Hdam / std::sin(input.phi);
  const double ratio = length / stepped_inception_hunt_kadavy({.q = input.q, .s = input.s, .phi = input.phi});
  const double lost = std::max(0.30 * std::min(ratio, 1.0), 1.0 - std::pow(ratio + 0.51, -0.87));
  return (input.Hdam + 1.5 * critical_depth(input.q)) * (1.0 - lost);
}

double stepped_depth_hunt_kadavy(const SteppedFlow& input) noexcept {
  const double dc = critical_depth(input.q);
  return 0.34 * dc * std::pow(input.s * std::cos(input.phi) / dc, 0.063) * std::pow(std::sin(input.phi), -0.18);
}

double stepped_depth_chanson(const ConstantFrictionFlow& input) noexcept {
  return std::cbrt(input.f * input.q * input.q / (8.0 * gravity * std::sin(input.phi)));
}

double stepped_residual_head_chanson(const ConstantFrictionFlow& input) noexcept {
  const double d = stepped_depth_chanson(input);
  return d * std::cos(input.phi) + input.q * input.q / (2.0 * gravity * d * d);
}

namespace record {
namespace {
constexpr Symbol step_height{"s", "height of a step", dimension::length, {0.1, 3.0}};
constexpr Symbol unit_discharge{"q", "discharge per unit width", dimension::unit_discharge, above_zero};
constexpr Symbol drop{"Hdam", "drop from the crest to the toe", dimension::length, {0.0, no_limit}};
constexpr Symbol steep = bed_angle("phi", 19 * degree, 55 * degree);
constexpr Symbol moderate = bed_angle("phi", 10 * degree, 30 * degree);
constexpr Symbol residual_head{"Hres", "energy head over the toe that is left", dimension::length, above_zero};
constexpr Symbol clear_depth{"hw", "clear-water depth normal to the step edges", dimension::length, above_zero};

constexpr Symbol uniform_in[] = {unit_discharge, step_height, steep};
constexpr Symbol uniform_out[] = {clear_depth,
                                  {"h90", "depth to an air content of 90 %", dimension::length, above_zero},
                                  {"Hu", "drop from the crest at which the flow is uniform", dimension::length, above_zero}};
constexpr Symbol friction_in[] = {clear_depth, step_height, steep};
constexpr Symbol friction_out[] = {{"fb", "Darcy's friction factor of the steps", dimension::none, above_zero}};
constexpr Symbol steep_drop_in[] = {unit_discharge, step_height, steep, drop};
constexpr Symbol moderate_drop_in[] = {unit_discharge, step_height, moderate, drop};
constexpr Symbol residual_out[] = {residual_head};
constexpr Symbol moderate_in[] = {unit_discharge, step_height, moderate};
constexpr Symbol depth_out[] = {clear_depth};
constexpr Symbol chanson_in[] = {unit_discharge,
                                 bed_angle("phi", 3.4 * degree, 60 * degree),
                                 {"f", "Darcy's friction factor of the steps", dimension::none, {0.05, 0.5}, 0.2}};
constexpr Symbol chanson_out[] = {clear_depth, residual_head};
constexpr Symbol wall_in[] = {{"h90", "depth to an air content of 90 %", dimension::length, above_zero},
                              {"eta", "1.2 beside concrete, 1.5 beside an erodible toe", dimension::none, {1.2, 1.5}, 1.2}};
constexpr Symbol wall_out[] = {{"hd", "height of the wall normal to the step edges", dimension::length, above_zero}};

std::string_view roughness_objection(double hw, double s, double phi) {
  const double ratio = relative_roughness(hw, s, phi);
  return ratio > 0.1 && ratio < 1.0 ? std::string_view{} : "s cos(phi)/(4 hw) is not from 0.1 to 1";
}
}  // namespace

const Method stepped_uniform_boes_hager{.id = "stepped.uniform_flow.boes_hager",
                                        .title = "Uniform skimming flow on steps: depths, and the drop that it needs",
                                        .equation =
                                            "dc = (q^2/g)^(1/3); Fs = q/sqrt(g*sin(phi)*s^3); hw = 0.215*dc*sin(phi)^(-1/3); "
                                            "h90 = 0.50*s*Fs^(0.1*tan(phi) + 0.5); Hu = 24*dc*sin(phi)^(2/3)",
                                        .inputs = uniform_in,
                                        .outputs = uniform_out,
                                        .source = "boes_hager_2003",
                                        .place = "uniform equivalent clear-water depth, characteristic mixture depth",
                                        .provenance = Provenance::memory,
                                        .accuracy = "about 10 %",
                                        .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                          const auto flow = stepped_uniform_flow({.q = in[0], .s = in[1], .phi = in[2]});
                                          out[0] = flow.clear_water;
                                          out[1] = flow.mixture;
                                          out[2] = flow.drop;
                                          return {};
                                        }};

const Method stepped_friction_factor_boes_hager{
    .id = "stepped.friction_factor.boes_hager",
    .title = "Darcy's friction factor of steps in skimming flow",
    .equation = "fb = (0.5 - 0.42*sin(2*phi))/(1 - 0.25*log10(s*cos(phi)/(4*hw)))^2",
    .inputs = friction_in,
    .outputs = friction_out,
    .source = "boes_hager_2003",
    .place = "friction factor of the bed, wide chute",
    .provenance = Provenance::memory,
    .accuracy = "about 10 %; other authors differ by a factor 2",
    .condition = [](std::span<const double> in) { return roughness_objection(in[0], in[1], in[2]); },
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      if (relative_roughness(in[0], in[1], in[2]) >= 1e4)
        return no_answer("the steps are ten thousand times the depth: this is no flow over the edges");
      out[0] = stepped_friction_factor({.hw = in[0], .s = in[1], .phi = in[2]});
      return {};
    }};

const Method stepped_residual_boes_hager{
    .id = "stepped.residual_head.boes_hager",
    .title = "Energy head left at the toe of a steep stepped chute",
    .equation =
        "dc = (q^2/g)^(1/3); hw = 0.215*dc*sin(phi)^(-1/3); r = s*cos(phi)/(4*hw); "
        "fb = (0.5 - 0.42*sin(2*phi))/(1 - 0.25*log10(r))^2; a = (fb/(8*sin(phi)))^(1/3); "
        "Fu = a*cos(phi) + 1.1/2/a^2; Hmax = Hdam + 1.5*dc; "
        "Hres = Hmax*max(exp(-0.045*r^0.1*sin(phi)^(-0.8)*Hdam/dc), Fu/(Hdam/dc + Fu))",
    .inputs = steep_drop_in,
    .outputs = residual_out,
    .source = "boes_hager_2003",
    .place = "energy dissipation: developing flow up to Hdam/dc = 15 to 20, uniform flow above",
    .provenance = Provenance::memory,
    .accuracy = "about 10 %; other authors leave as little as half",
    .remarks = "The larger of the two lines at every drop: they cross once, between 16 and 31 dc.",
    .condition =
        [](std::span<const double> in) { return roughness_objection(uniform_depth_boes_hager(in[0], in[2]), in[1], in[2]); },
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      out[0] = stepped_residual_head_boes_hager({.q = in[0], .s = in[1], .phi = in[2], .Hdam = in[3]});
      return {};
    }};

const Method stepped_residual_hunt_kadavy{
    .id = "stepped.residual_head.hunt_kadavy",
    .title = "Energy head left at the toe of a moderate stepped slope",
    .equation =
        "dc = (q^2/g)^(1/3); k = s*cos(phi); Fs = q/sqrt(g*sin(phi)*k^3); "
        "Li = k*min(5.19*Fs^0.89, 7.48*Fs^0.78); L = Hdam/sin(phi); "
        "Hres = (Hdam + 1.5*dc)*(1 - max(0.30*min(L/Li, 1), 1 - (L/Li + 0.51)^(-0.87)))",
    .inputs = moderate_drop_in,
    .outputs = residual_out,
    .source = "hunt_kadavy_2014",
    .place = "loss 0.30 L/Li up to inception, 1 - (L/Li + 0.51)^-0.87 beyond",
    .provenance = Provenance::memory,
    .accuracy = "about 10 % of the head lost",
    .remarks = "The two lines miss each other by 0.0013 at inception; the larger loss within 0.015 Li before it joins them.",
    .condition = [](std::span<const double> in) -> std::string_view {
      const double Li = hydraulics::stepped_inception_hunt_kadavy({.q = in[0], .s = in[1], .phi = in[2]});
      return in[3] / std::sin(in[2]) <= 6.0 * Li ? std::string_view{} : "longer than six times the length to inception";
    },
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      out[0] = stepped_residual_head_hunt_kadavy({.q = in[0], .s = in[1], .phi = in[2], .Hdam = in[3]});
      return {};
    }};

const Method stepped_depth_hunt_kadavy{.id = "stepped.depth.hunt_kadavy",
                                       .title = "Clear-water depth on a moderate stepped slope below inception",
                                       .equation = "dc = (q^2/g)^(1/3); hw = 0.34*dc*(s*cos(phi)/dc)^0.063*sin(phi)^(-0.18)",
                                       .inputs = moderate_in,
                                       .outputs = depth_out,
                                       .source = "hunt_kadavy_2014",
                                       .place = "flow depth downstream of inception",
                                       .provenance = Provenance::memory,
                                       .accuracy = "about 10 %",
                                       .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                         out[0] = hydraulics::stepped_depth_hunt_kadavy({.q = in[0], .s = in[1], .phi = in[2]});
                                         return {};
                                       }};

const Method stepped_uniform_chanson{.id = "stepped.uniform_flow.chanson",
                                     .title = "Uniform skimming flow on steps with a constant friction factor",
                                     .equation = "hw = (f*q^2/(8*g*sin(phi)))^(1/3); Hres = hw*cos(phi) + q^2/(2*g*hw^2)",
                                     .inputs = chanson_in,
                                     .outputs = chanson_out,
                                     .source = "chanson_2001",
                                     .place = "uniform flow, f = 0.2 for design",
                                     .provenance = Provenance::memory,
                                     .accuracy = "measured factors lie from 0.05 to 0.3",
                                     .remarks = "Divided by Hdam + 1.5 dc it is the share of the head that is left.",
                                     .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                       const ConstantFrictionFlow flow{.q = in[0], .phi = in[1], .f = in[2]};
                                       out[0] = stepped_depth_chanson(flow);
                                       out[1] = stepped_residual_head_chanson(flow);
                                       return {};
                                     }};

const Method stepped_wall_height_boes_hager{.id = "stepped.wall_height.boes_hager",
                                            .title = "Height of the walls of a stepped chute",
                                            .equation = "hd = eta*h90",
                                            .inputs = wall_in,
                                            .outputs = wall_out,
                                            .source = "boes_hager_2003",
                                            .place = "side walls",
                                            .provenance = Provenance::memory,
                                            .accuracy = "rule of practice",
                                            .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                              out[0] = stepped_wall_height({.h90 = in[0], .eta = in[1]});
                                              return {};
                                            }};

}  // namespace record
}  // namespace quell::hydraulics
