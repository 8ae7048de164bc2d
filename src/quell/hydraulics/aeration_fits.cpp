#include "quell/hydraulics/aeration_fits.h"

#include <algorithm>
#include <cmath>

#include "quell/base/constants.h"
#include "quell/hydraulics/chute_symbols.h"

namespace quell::hydraulics {
namespace {

double rough_argument(const SlopeDischarge& input) noexcept {
  return std::sin(input.theta) / std::pow(input.q, 0.2);
}
double smooth_argument(const SlopeDischarge& input) noexcept {
  return std::sin(input.theta) / std::pow(input.q, 2.0 / 3.0);
}
}  // namespace

double equilibrium_air_sine(double theta) noexcept {
  return 0.9 * std::sin(theta);
}

double equilibrium_air_power(double theta) noexcept {
  return 0.75 * std::pow(std::sin(theta), 0.75);
}

double equilibrium_air_linear(double theta) noexcept {
  const double degrees = theta / degree;
  return std::min(0.015 * degrees, 0.45 + 0.0036 * degrees);
}

double bed_air(double theta) noexcept {
  return std::min(1.25 * theta * theta * theta, 0.65 * std::sin(theta));
}

double mean_air_rough(const SlopeDischarge& input) noexcept {
  return 0.7226 + 0.743 * std::log10(rough_argument(input));
}

double mean_air_smooth(const SlopeDischarge& input) noexcept {
  return 0.5027 * std::pow(smooth_argument(input), 0.385);
}

double mean_air_falvey(const FalveyAirInput& input) noexcept {
  const double F = input.V / std::sqrt(gravity * input.d);
  const double We = input.V / std::sqrt(surface_tension / (water_density * input.d));
  return 0.05 * F - std::sqrt(std::sin(input.theta)) * We / (63.0 * F);
}

namespace record {
namespace {
constexpr Symbol equilibrium_out[] = {{"Ce", "mean air content of uniform flow", dimension::none, {0.0, 1.0}}};
constexpr Symbol content_out[] = {{"C", "mean air content", dimension::none, any_value}};
constexpr Symbol bed_out[] = {{"C0", "air content at the bed", dimension::none, {0.0, 1.0}}};
constexpr Symbol sine_in[] = {bed_angle("theta", 5 * degree, 50 * degree)};
constexpr Symbol power_in[] = {bed_angle("theta", 5 * degree, 75 * degree)};
constexpr Symbol linear_in[] = {bed_angle("theta", 5 * degree, 70 * degree)};
constexpr Symbol discharge_in[] = {bed_angle("theta", 5 * degree, 75 * degree),
                                   {"q", "discharge per unit width", dimension::unit_discharge, above_zero}};
constexpr Symbol falvey_in[] = {{"V", "mean velocity", dimension::velocity, above_zero},
                                {"d", "depth normal to the bed", dimension::length, above_zero},
                                bed_angle("theta", 5 * degree, 75 * degree)};

SlopeDischarge slope_and_discharge(std::span<const double> in) {
  return {.theta = in[0], .q = in[1]};
}
}  // namespace

const Method equilibrium_air_sine{.id = "aeration.equilibrium.sine",
                                  .title = "Mean air content of uniform flow, proportional to the sine",
                                  .equation = "Ce = 0.9*sin(theta)",
                                  .inputs = sine_in,
                                  .outputs = equilibrium_out,
                                  .source = "chanson_1993",
                                  .place = "fit below 50 degrees",
                                  .provenance = Provenance::memory,
                                  .accuracy = "published relations differ by 0.06",
                                  .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                    out[0] = hydraulics::equilibrium_air_sine(in[0]);
                                    return {};
                                  }};

const Method equilibrium_air_power{.id = "aeration.equilibrium.power",
                                   .title = "Mean air content of uniform flow, a power of the sine",
                                   .equation = "Ce = 0.75*sin(theta)^0.75",
                                   .inputs = power_in,
                                   .outputs = equilibrium_out,
                                   .source = "novak_2007",
                                   .place = "eq. 4.53",
                                   .provenance = Provenance::seen,
                                   .accuracy = "published relations differ by 0.06",
                                   .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                     out[0] = hydraulics::equilibrium_air_power(in[0]);
                                     return {};
                                   }};

const Method equilibrium_air_linear{.id = "aeration.equilibrium.linear",
                                    .title = "Mean air content of uniform flow by two straight lines",
                                    .equation = "Ce = min(0.015*theta*180/pi, 0.45 + 0.0036*theta*180/pi)",
                                    .inputs = linear_in,
                                    .outputs = equilibrium_out,
                                    .source = "novak_2007",
                                    .place = "eq. 4.52, after Wood (1991)",
                                    .provenance = Provenance::seen,
                                    .accuracy = "published relations differ by 0.06",
                                    .remarks = "The source changes lines at 40 degrees, they cross at 39.5.",
                                    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                      out[0] = hydraulics::equilibrium_air_linear(in[0]);
                                      return {};
                                    }};

const Method bed_air{.id = "aeration.bed_content.novak",
                     .title = "Air content at the bed of a smooth chute in uniform flow",
                     .equation = "C0 = min(1.25*theta^3, 0.65*sin(theta))",
                     .inputs = linear_in,
                     .outputs = bed_out,
                     .source = "novak_2007",
                     .place = "eq. 4.54 and 4.54a",
                     .provenance = Provenance::seen,
                     .accuracy = "not stated",
                     .remarks = "The source changes lines at 40 degrees, they cross at 39.7.",
                     .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                       out[0] = hydraulics::bed_air(in[0]);
                       return {};
                     }};

const Method mean_air_rough{.id = "aeration.content.straub_anderson",
                            .title = "Mean air content on a rough bed",
                            .equation = "C = 0.7226 + 0.743*log10(sin(theta)/q^0.2)",
                            .inputs = discharge_in,
                            .outputs = content_out,
                            .source = "straub_anderson_1958",
                            .place = "fit to the flume, in m2/s",
                            .provenance = Provenance::memory,
                            .accuracy = "about 0.05",
                            .condition = [](std::span<const double> in) -> std::string_view {
                              const double argument = rough_argument(slope_and_discharge(in));
                              return argument >= 0.16 && argument <= 1.4 ? std::string_view{}
                                                                         : "sin(theta)/q^0.2 is not from 0.16 to 1.4";
                            },
                            .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                              if (!(in[0] > 0.0)) return no_answer("a level bed has no such flow");
                              out[0] = hydraulics::mean_air_rough(slope_and_discharge(in));
                              return {};
                            }};

const Method mean_air_smooth{.id = "aeration.content.smooth",
                             .title = "Mean air content on a smooth bed",
                             .equation = "C = 0.5027*(sin(theta)/q^(2/3))^0.385",
                             .inputs = discharge_in,
                             .outputs = content_out,
                             .source = "novak_2007",
                             .place = "eq. 4.45, in m2/s",
                             .provenance = Provenance::seen,
                             .accuracy = "about 0.05",
                             .condition = [](std::span<const double> in) -> std::string_view {
                               const double argument = smooth_argument(slope_and_discharge(in));
                               return argument >= 0.23 && argument <= 2.3 ? std::string_view{}
                                                                          : "sin(theta)/q^(2/3) is not from 0.23 to 2.3";
                             },
                             .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                               out[0] = hydraulics::mean_air_smooth(slope_and_discharge(in));
                               return {};
                             }};

const Method mean_air_falvey{
    .id = "aeration.content.falvey",
    .title = "Mean air content from Froude and Weber number",
    .equation = "F = V/sqrt(g*d); We = V/sqrt(0.0728/(rho*d)); C = 0.05*F - sqrt(sin(theta))*We/(63*F)",
    .inputs = falvey_in,
    .outputs = content_out,
    .source = "falvey_1980",
    .place = "as given by Novak et al. (2007), eq. 4.46",
    .provenance = Provenance::seen,
    .accuracy = "about 10 % of the flume's measurements",
    .remarks = "For flumes: on prototypes the Weber number carries the formula below none.",
    .condition = [](std::span<const double> in) -> std::string_view {
      const double C = hydraulics::mean_air_falvey({.V = in[0], .d = in[1], .theta = in[2]});
      return C > 0.0 && C <= 0.6 ? std::string_view{} : "the content is not from 0 to 0.6";
    },
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      out[0] = hydraulics::mean_air_falvey({.V = in[0], .d = in[1], .theta = in[2]});
      return {};
    }};

}  // namespace record
}  // namespace quell::hydraulics
