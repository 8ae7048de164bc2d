#include "quell/hydraulics/river_protection.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "quell/base/constants.h"

namespace quell::hydraulics {

using std::numbers::pi;

double riprap_escarameia_may(const TurbulentStoneInput& input) noexcept {
  return (12.3 * input.r - 0.20) * input.ub * input.ub / (2.0 * gravity * (input.s - 1.0)) / 0.84;
}

double riprap_maynord(const ChannelStoneInput& input) noexcept {
  const double ratio = std::sqrt(1.0 / (input.s - 1.0)) * input.V / std::sqrt(input.K1 * gravity * input.d);
  return input.Sf * 0.30 * input.Cv * input.d * std::pow(ratio, 2.5);
}

double stone_mass(double D, double s) noexcept {
  return pi / 6.0 * s * water_density * D * D * D;
}

double scour_schoklitsch(const BedScourInput& input) noexcept {
  return 4.75 * std::pow(input.H, 0.2) * std::pow(input.q, 0.57) / std::pow(1000.0 * input.d90, 0.32);
}

double scour_jaeger(const BedScourInput& input) noexcept {
  return 0.6 * std::pow(input.H, 0.25) * std::sqrt(input.q) * std::cbrt(input.h / input.d90);
}

double scour_novak(const BedScourInput& input) noexcept {
  return std::max(0.0, 0.55 * (scour_jaeger(input) - input.h));
}

ScourGrowth scour_growth(const ScourGrowthInput& input) noexcept {
  ScourGrowth growth{};
  growth.critical_velocity = 6.19 * std::pow(input.h0, 1.0 / 6.0) * std::cbrt(input.d50);
  const double excess = (1.5 + 5.0 * input.r0) * input.U - growth.critical_velocity;
  if (!(excess > 0.0)) return growth;
  growth.time_scale = 3600.0 * 330.0 * std::pow(input.s - 1.0, 1.7) * input.h0 * input.h0 / std::pow(excess, 4.3);
  growth.depth = input.h0 * std::pow(input.t / growth.time_scale, 0.40);
  return growth;
}

LaunchingApron launching_apron(const LaunchInput& input) noexcept {
  const double root = std::sqrt(5.0);
  return {.length = 1.5 * input.D, .thickness = 1.25 * root * input.T / 1.5, .volume = 1.25 * root * input.T * input.D};
}

double cutoff_depth(const CutoffDepthInput& input) noexcept {
  // GE = H/(pi d sqrt(lambda)), lambda = (1 + sqrt(1 + (b/d)^2))/2, solved for d.
  const double k = input.H / (pi * input.GE * input.b);
  const double root = 1.0 + 1.0 / (2.0 * k * k);
  return input.b / std::sqrt(root * root - 1.0);
}

namespace record {
namespace {
constexpr Range turbulences{0.05, 0.5};
constexpr Range densities{1.5, 3.5};
constexpr Symbol turbulent_in[] = {{"ub", "velocity near the bed, at a tenth of the depth", dimension::velocity, {0.0, 10.0}},
                                   {"r", "relative turbulence, rms over mean", dimension::none, turbulences},
                                   {"s", "specific gravity of the stone", dimension::none, densities, 2.65}};
constexpr Symbol maynord_in[] = {{"V", "depth-averaged local velocity", dimension::velocity, {0.0, 8.0}},
                                 {"d", "local depth", dimension::length, above_zero},
                                 {"s", "specific gravity of the stone", dimension::none, densities, 2.65},
                                 {"Cv", "1 straight, 1.25 below concrete channels", dimension::none, {1.0, 1.3}, 1.0},
                                 {"K1", "side slope: 1 on the bed, 0.88 at 2H:1V", dimension::none, {0.7, 1.0}, 1.0},
                                 {"Sf", "safety factor", dimension::none, {1.1, 2.0}, 1.1}};
constexpr Symbol mass_in[] = {{"D", "diameter of the sphere", dimension::length, above_zero},
                              {"s", "specific gravity of the stone", dimension::none, densities, 2.65}};
constexpr Symbol schoklitsch_in[] = {
    {"q", "discharge per width", dimension::unit_discharge, above_zero},
    {"H", "drop of the head", dimension::length, above_zero},
    {"d90", "size than which nine tenths of the bed are finer", dimension::length, above_zero}};
constexpr Symbol jaeger_in[] = {{"q", "discharge per width", dimension::unit_discharge, above_zero},
                                {"H", "drop of the head", dimension::length, above_zero},
                                {"h", "tailwater above the bed", dimension::length, above_zero},
                                {"d90", "size than which nine tenths of the bed are finer", dimension::length, above_zero}};
constexpr Symbol growth_in[] = {{"h0", "depth of the flow", dimension::length, above_zero},
                                {"U", "mean velocity over the end of the protection", dimension::velocity, {0.0, 10.0}},
                                {"d50", "mean size of the bed", dimension::length, {5e-5, 0.1}},
                                {"r0", "relative turbulence there", dimension::none, {0.05, 0.4}},
                                {"s", "specific gravity of the grains", dimension::none, densities, 2.65},
                                {"t", "duration", dimension::time, above_zero}};
constexpr Symbol launch_in[] = {{"T", "thickness of the stone once settled", dimension::length, above_zero},
                                {"D", "scour below the apron", dimension::length, above_zero}};
constexpr Symbol cutoff_in[] = {{"b", "length of the floor", dimension::length, above_zero},
                                {"H", "head difference", dimension::length, above_zero},
                                {"GE", "exit gradient allowed", dimension::none, {0.05, 0.5}}};
constexpr Symbol D50_out[] = {{"D50", "median stone size", dimension::length, {0.0, no_limit}}};
constexpr Symbol D30_out[] = {{"D30", "size than which three tenths are finer", dimension::length, {0.0, no_limit}}};
constexpr Symbol mass_out[] = {{"W", "mass of the stone", dimension::mass, above_zero}};
constexpr Symbol scour_out[] = {{"D", "depth of scour below the tailwater", dimension::length, above_zero}};
constexpr Symbol below_bed_out[] = {{"ys", "depth of scour below the bed", dimension::length, {0.0, no_limit}}};
constexpr Symbol growth_out[] = {{"Uc", "critical velocity of the bed", dimension::velocity, above_zero},
                                 {"t1", "time until the scour is as deep as the flow", dimension::time, {0.0, no_limit}},
                                 {"ym", "depth of scour below the bed", dimension::length, {0.0, no_limit}}};
constexpr Symbol launch_out[] = {{"La", "length of the apron", dimension::length, above_zero},
                                 {"Ta", "thickness in place", dimension::length, above_zero},
                                 {"Va", "volume per width", dimension::area, above_zero}};
constexpr Symbol cutoff_out[] = {{"d", "depth of the cutoff", dimension::length, above_zero}};
}  // namespace

const Method riprap_escarameia_may{.id = "protection.riprap.escarameia_may",
                                   .title = "Riprap size from the turbulence near the bed",
                                   .equation = "D50 = (12.3*r - 0.2)*ub^2/(2*g*(s - 1))/0.84",
                                   .inputs = turbulent_in,
                                   .outputs = D50_out,
                                   .source = "escarameia_may_1992",
                                   .place = "riprap, with the nominal size taken as 0.84 of the median",
                                   .provenance = Provenance::memory,
                                   .accuracy = "the turbulence shortly below a basin, 0.25 to 0.35, is known poorly",
                                   .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                     if (!(in[2] > 1.0)) return bad_input("s", in[2], 1.0, no_limit, "lighter than water");
                                     out[0] = std::max(0.0, hydraulics::riprap_escarameia_may({in[0], in[1], in[2]}));
                                     return {};
                                   }};

const Method riprap_maynord{
    .id = "protection.riprap.maynord",
    .title = "Riprap size of channels",
    .equation = "D30 = Sf*0.3*Cv*d*(sqrt(1/(s - 1))*V/sqrt(K1*g*d))^2.5",
    .inputs = maynord_in,
    .outputs = D30_out,
    .source = "em1601_1991",
    .place = "eq. 3-3, angular stone; par. 3-1 bars it just downstream of basins",
    .provenance = Provenance::memory,
    .accuracy = "channels flatter than 2 %; printed example of a manual on streambanks within 0.5 %",
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      if (!(in[2] > 1.0)) return bad_input("s", in[2], 1.0, no_limit, "lighter than water");
      out[0] = hydraulics::riprap_maynord({.V = in[0], .d = in[1], .s = in[2], .Cv = in[3], .K1 = in[4], .Sf = in[5]});
      return {};
    }};

const Method stone_mass{.id = "protection.stone_mass.sphere",
                        .title = "Mass of a stone from its size",
                        .equation = "W = pi/6*s*rho*D^3",
                        .inputs = mass_in,
                        .outputs = mass_out,
                        .source = "momentum",
                        .place = "sphere of that diameter",
                        .provenance = Provenance::derived,
                        .accuracy = "exact for a sphere",
                        .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                          out[0] = hydraulics::stone_mass(in[0], in[1]);
                          return {};
                        }};

const Method scour_schoklitsch{.id = "scour.depth.schoklitsch",
                               .title = "Scour of a bed by Schoklitsch",
                               .equation = "D = 4.75*H^0.2*q^0.57/(1000*d90)^0.32",
                               .inputs = schoklitsch_in,
                               .outputs = scour_out,
                               .source = "schoklitsch_1932",
                               .place = "overfall onto a bed of grains",
                               .provenance = Provenance::memory,
                               .accuracy = "field cases scatter widely",
                               .remarks = "Numbers in m and m2/s, grains in mm.",
                               .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                 out[0] = hydraulics::scour_schoklitsch({.q = in[0], .H = in[1], .h = 1.0, .d90 = in[2]});
                                 return {};
                               }};

const Method scour_jaeger{.id = "scour.depth.jaeger",
                          .title = "Scour of a bed by Jaeger",
                          .equation = "D = 0.6*H^0.25*q^0.5*(h/d90)^(1/3)",
                          .inputs = jaeger_in,
                          .outputs = scour_out,
                          .source = "jaeger_1939",
                          .place = "overfall onto a bed of grains under tailwater",
                          .provenance = Provenance::memory,
                          .accuracy = "an upper end of the published depths",
                          .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                            out[0] = hydraulics::scour_jaeger({.q = in[0], .H = in[1], .h = in[2], .d90 = in[3]});
                            return {};
                          }};

const Method scour_novak{.id = "scour.depth.novak_basin",
                         .title = "Scour below the sill of a working jump basin",
                         .equation = "ys = max(0, 0.55*(0.6*H^0.25*q^0.5*(h/d90)^(1/3) - h))",
                         .inputs = jaeger_in,
                         .outputs = below_bed_out,
                         .source = "novak_2007",
                         .place = "about half of the scour without a basin",
                         .provenance = Provenance::memory,
                         .accuracy = "an upper end of the published depths",
                         .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                           out[0] = hydraulics::scour_novak({.q = in[0], .H = in[1], .h = in[2], .d90 = in[3]});
                           return {};
                         }};

const Method scour_growth{
    .id = "scour.growth.breusers",
    .title = "Growth of the scour behind a protected bed",
    .equation = "Uc = 6.19*h0^(1/6)*d50^(1/3); t1 = 3600*330*(s - 1)^1.7*h0^2/((1.5 + 5*r0)*U - Uc)^4.3; ym = h0*(t/t1)^0.4",
    .inputs = growth_in,
    .outputs = growth_out,
    .source = "hoffmans_verheij_1997",
    .place = "after Breusers 1966, exponent 0.40 of the two-dimensional hole",
    .provenance = Provenance::memory,
    .accuracy = "the factor on the velocity is very uncertain",
    .remarks = "Meant for scour up to about the depth of the flow. The bed must move: (1.5 + 5 r0) U above Uc.",
    .condition = [](std::span<const double> in) -> std::string_view {
      const auto growth = hydraulics::scour_growth({in[0], in[1], in[2], in[3], in[4], 1.0});
      return growth.time_scale > 0.0 ? std::string_view{} : "the bed does not move at this velocity";
    },
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      const auto growth = hydraulics::scour_growth({in[0], in[1], in[2], in[3], in[4], in[5]});
      if (!(growth.time_scale > 0.0)) return no_answer("the bed does not move at this velocity");
      out[0] = growth.critical_velocity;
      out[1] = growth.time_scale;
      out[2] = growth.depth;
      return {};
    }};

const Method launching_apron{.id = "protection.launching_apron.slope_1_to_2",
                             .title = "Apron of stone that settles into the scour",
                             .equation = "La = 1.5*D; Ta = 1.25*sqrt(5)*T/1.5; Va = 1.25*sqrt(5)*T*D",
                             .inputs = launch_in,
                             .outputs = launch_out,
                             .source = "practice",
                             .place = "Indian practice, read in a scour calculation: settled slope 1V:2H, a quarter to spare",
                             .provenance = Provenance::common_practice,
                             .accuracy = "rule of practice",
                             .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                               const auto apron = hydraulics::launching_apron({in[0], in[1]});
                               out[0] = apron.length;
                               out[1] = apron.thickness;
                               out[2] = apron.volume;
                               return {};
                             }};

const Method cutoff_depth{.id = "seepage.cutoff_depth.khosla",
                          .title = "Depth of the downstream cutoff for an exit gradient",
                          .equation = "k = H/(pi*GE*b); d = b/sqrt((1 + 1/(2*k^2))^2 - 1)",
                          .inputs = cutoff_in,
                          .outputs = cutoff_out,
                          .source = "khosla_1936",
                          .place = "exit gradient of a floor with one cutoff at its end, solved for the depth",
                          .provenance = Provenance::memory,
                          .accuracy = "exact for deep even soil",
                          .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                            out[0] = hydraulics::cutoff_depth({.b = in[0], .H = in[1], .GE = in[2]});
                            return {};
                          }};

}  // namespace record
}  // namespace quell::hydraulics
