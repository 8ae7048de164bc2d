#include "quell/hydraulics/stepped_inception.h"

#include <algorithm>
#include <cmath>

#include "quell/hydraulics/chute_symbols.h"
#include "quell/hydraulics/section.h"

namespace quell::hydraulics {
namespace {

/// Roughness Froude number q/sqrt(g sin(phi) k^3) for a roughness height k.
double roughness_froude(const SteppedFlow& flow, double k) noexcept {
  return flow.q / std::sqrt(gravity * std::sin(flow.phi) * k * k * k);
}

}  // namespace

SkimmingOnset skimming_onset(const StepInput& input) noexcept {
  const double slope = std::tan(input.phi);
  return {input.s * (0.89 - 0.4 * slope), input.s * (1.2 - 0.325 * slope)};
}

double skimming_onset_boes_hager(const StepInput& input) noexcept {
  return input.s * (0.91 - 0.14 * std::tan(input.phi));
}

SteppedInception stepped_inception_chanson(const SteppedFlow& input) noexcept {
  const double k = input.s * std::cos(input.phi);
  const double F = roughness_froude(input, k);
  const double sine = std::sin(input.phi);
  return {9.719 * k * std::pow(sine, 0.0796) * std::pow(F, 0.713), 0.4034 * k * std::pow(sine, -0.04) * std::pow(F, 0.592)};
}

SteppedInception stepped_inception_boes_hager(const SteppedFlow& input) noexcept {
  const double F = roughness_froude(input, input.s);
  const double length =
      5.90 * std::pow(critical_depth(input.q), 1.2) / (std::pow(std::sin(input.phi), 1.4) * std::pow(input.s, 0.2));
  return {length, 0.40 * input.s * std::pow(F, 0.60)};
}

double stepped_inception_hunt_kadavy(const SteppedFlow& input) noexcept {
  const double k = input.s * std::cos(input.phi);
  const double F = roughness_froude(input, k);
  return k * std::min(5.19 * std::pow(F, 0.89), 7.48 * std::pow(F, 0.78));
}

namespace record {
namespace {
constexpr Symbol step_height{"s", "height of a step", dimension::length, {0.1, 3.0}};
constexpr Symbol unit_discharge{"q", "discharge per unit width", dimension::unit_discharge, above_zero};
// tan(phi) from 0.05 to 1.7
constexpr Symbol onset_in[] = {step_height, bed_angle("phi", 0.05, 1.039)};
constexpr Symbol onset_out[] = {{"dn", "critical depth below which nappe flow is sure", dimension::length, any_value},
                                {"ds", "critical depth above which skimming flow is sure", dimension::length, any_value}};
constexpr Symbol steep_onset_in[] = {step_height, bed_angle("phi", 26 * degree, 55 * degree)};
constexpr Symbol steep_onset_out[] = {{"ds", "critical depth above which the flow skims", dimension::length, any_value}};
constexpr Symbol chanson_in[] = {unit_discharge, step_height, bed_angle("phi", 14 * degree, 53 * degree)};
constexpr Symbol boes_hager_in[] = {unit_discharge, step_height, bed_angle("phi", 26 * degree, 55 * degree)};
constexpr Symbol hunt_kadavy_in[] = {unit_discharge, step_height, bed_angle("phi", 10 * degree, 30 * degree)};
constexpr Symbol chanson_out[] = {
    {"Li", "distance along the step edges from the crest to the inception of air", dimension::length, above_zero},
    {"di", "clear-water depth there, normal to the edges", dimension::length, above_zero}};
constexpr Symbol boes_hager_out[] = {
    {"Li", "distance along the step edges from the crest to the inception of air", dimension::length, above_zero},
    {"hi", "mixture depth there, normal to the edges", dimension::length, above_zero}};
constexpr Symbol length_out[] = {
    {"Li", "distance along the step edges from the crest to the inception of air", dimension::length, above_zero}};

SteppedFlow flow_of(std::span<const double> in) {
  return {.q = in[0], .s = in[1], .phi = in[2]};
}
double edge_froude(std::span<const double> in) {
  return roughness_froude(flow_of(in), in[1] * std::cos(in[2]));
}
}  // namespace

const Method skimming_onset_chanson{
    .id = "stepped.onset.chanson",
    .title = "Critical depths at which nappe flow ends and skimming flow begins on steps",
    .equation = "dn = s*(0.89 - 0.4*tan(phi)); ds = s*(1.2 - 0.325*tan(phi))",
    .inputs = onset_in,
    .outputs = onset_out,
    .source = "chanson_2001",
    .place = "summary of observed limits, step height over tread from 0.05 to 1.7",
    .provenance = Provenance::memory,
    .accuracy = "observers differ by about 0.1 s",
    .remarks = "Between the two the flow is a transition, unsteady and to be avoided at design flow.",
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      const auto onset = skimming_onset({.s = in[0], .phi = in[1]});
      out[0] = onset.nappe;
      out[1] = onset.skimming;
      return {};
    }};

const Method skimming_onset_boes_hager{.id = "stepped.onset.boes_hager",
                                       .title = "Critical depth above which the flow skims over steep steps",
                                       .equation = "ds = s*(0.91 - 0.14*tan(phi))",
                                       .inputs = steep_onset_in,
                                       .outputs = steep_onset_out,
                                       .source = "boes_hager_2003",
                                       .place = "onset of skimming flow",
                                       .provenance = Provenance::memory,
                                       .accuracy = "observers differ by about 0.1 s",
                                       .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                         out[0] = hydraulics::skimming_onset_boes_hager({.s = in[0], .phi = in[1]});
                                         return {};
                                       }};

const Method stepped_inception_chanson{
    .id = "stepped.inception.chanson",
    .title = "Inception of air on steps by Chanson",
    .equation =
        "k = s*cos(phi); Fs = q/sqrt(g*sin(phi)*k^3); Li = 9.719*k*sin(phi)^0.0796*Fs^0.713; "
        "di = 0.4034*k*sin(phi)^(-0.04)*Fs^0.592",
    .inputs = chanson_in,
    .outputs = chanson_out,
    .source = "chanson_2001",
    .place = "inception in skimming flow",
    .provenance = Provenance::memory,
    .accuracy = "about 20 %",
    .remarks = "Made for 27 to 53 degrees; flatter, to 4 to 1, for roughness Froude numbers from 10 to 100.",
    .condition = [](std::span<const double> in) -> std::string_view {
      const double F = edge_froude(in);
      return in[2] >= 27 * degree || (F > 10.0 && F < 100.0)
                 ? std::string_view{}
                 : "below 27 degrees only where the roughness Froude number is from 10 to 100";
    },
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      const auto inception = hydraulics::stepped_inception_chanson(flow_of(in));
      out[0] = inception.length;
      out[1] = inception.depth;
      return {};
    }};

const Method stepped_inception_boes_hager{
    .id = "stepped.inception.boes_hager",
    .title = "Inception of air on steep steps by Boes and Hager",
    .equation = "dc = (q^2/g)^(1/3); Fs = q/sqrt(g*sin(phi)*s^3); Li = 5.90*dc^1.2/(sin(phi)^1.4*s^0.2); hi = 0.40*s*Fs^0.60",
    .inputs = boes_hager_in,
    .outputs = boes_hager_out,
    .source = "boes_hager_2003",
    .place = "inception point",
    .provenance = Provenance::memory,
    .accuracy = "about 20 %; up to 20 % shorter than by Chanson",
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      const auto inception = hydraulics::stepped_inception_boes_hager(flow_of(in));
      out[0] = inception.length;
      out[1] = inception.depth;
      return {};
    }};

const Method stepped_inception_hunt_kadavy{
    .id = "stepped.inception.hunt_kadavy",
    .title = "Inception of air on moderate stepped slopes",
    .equation = "k = s*cos(phi); Fs = q/sqrt(g*sin(phi)*k^3); Li = k*min(5.19*Fs^0.89, 7.48*Fs^0.78)",
    .inputs = hunt_kadavy_in,
    .outputs = length_out,
    .source = "hunt_kadavy_hanson_2014",
    .place = "inception, 5.19 Fs^0.89 up to 28 and 7.48 Fs^0.78 above",
    .provenance = Provenance::memory,
    .accuracy = "about 10 % of the measurements",
    .remarks = "The two lines cross at 27.7, not 28: the smaller of both is within a thousandth and without a step.",
    .condition = [](std::span<const double> in) -> std::string_view {
      const double F = edge_froude(in);
      return F > 0.1 && F < 1e5 ? std::string_view{} : "the roughness Froude number is not from 0.1 to 1e5";
    },
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      out[0] = hydraulics::stepped_inception_hunt_kadavy(flow_of(in));
      return {};
    }};

}  // namespace record
}  // namespace quell::hydraulics
