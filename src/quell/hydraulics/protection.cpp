#include "quell/hydraulics/protection.h"

#include <cmath>

namespace quell::hydraulics {

double riprap_isbash(const IsbashInput& input) noexcept {
  return input.V * input.V / (2.0 * gravity * input.C * input.C * (input.s - 1.0));
}

double riprap_em25(double bottom_velocity) noexcept {
  const double inches = std::pow(bottom_velocity / 0.3048 / 2.6, 2);
  return inches * 0.0254;
}

double creep_ratio_lane(const CreepInput& input) noexcept {
  return (input.Lv + input.Lh / 3.0) / input.dH;
}

double cavitation_index(const CavitationInput& input) noexcept {
  return (input.p0 - input.pv) / (0.5 * water_density * input.V * input.V);
}

FroudeScales froude_scales(double length_scale) noexcept {
  return {std::sqrt(length_scale), std::pow(length_scale, 2.5), std::sqrt(length_scale)};
}

namespace record {
namespace {
constexpr Symbol isbash_in[] = {{"V", "velocity at the stones", dimension::velocity, {0.0, 8.0}},
                                {"s", "specific gravity of the stone", dimension::none, {2.0, 3.2}},
                                {"C", "turbulence coefficient: 0.86 high, 1.20 low", dimension::none, {0.86, 1.2}}};
constexpr Symbol isbash_out[] = {{"D50", "median stone size", dimension::length, {0.0, no_limit}}};
constexpr Symbol em25_in[] = {{"V", "bottom velocity", dimension::velocity, {0.0, 5.5}}};
constexpr Symbol em25_out[] = {{"D", "stone size", dimension::length, {0.0, no_limit}}};
constexpr Symbol lane_in[] = {{"Lv", "vertical creep length", dimension::length, {0.0, no_limit}},
                              {"Lh", "horizontal creep length", dimension::length, {0.0, no_limit}},
                              {"dH", "head difference", dimension::length, above_zero}};
constexpr Symbol lane_out[] = {{"C", "weighted creep ratio", dimension::none, {0.0, no_limit}}};
constexpr Symbol cavitation_in[] = {{"p0", "absolute pressure", dimension::pressure, {0.0, no_limit}},
                                    {"pv", "vapour pressure", dimension::pressure, {0.0, 1e5}},
                                    {"V", "velocity", dimension::velocity, above_zero}};
constexpr Symbol cavitation_out[] = {{"sigma", "cavitation index", dimension::none, any_value}};
constexpr Symbol scale_in[] = {{"Lr", "length scale, prototype over model", dimension::none, {1.0, 200.0}}};
constexpr Symbol scale_out[] = {{"Vr", "velocity scale", dimension::none, above_zero},
                                {"Qr", "discharge scale", dimension::none, above_zero},
                                {"Tr", "time scale", dimension::none, above_zero}};
}  // namespace

const Method riprap_isbash{.id = "protection.riprap.isbash",
                           .title = "Riprap size by Isbash",
                           .equation = "D50 = V^2/(2*g*C^2*(s - 1))",
                           .inputs = isbash_in,
                           .outputs = isbash_out,
                           .source = "hdc_712_1",
                           .place = "sheet 712-1",
                           .provenance = Provenance::memory,
                           .accuracy = "within 4 % of the curve of Engineering Monograph 25 for C = 0.86",
                           .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                             if (!(in[1] > 1.0) || !(in[2] > 0.0)) return no_answer("s must be above 1 and C above zero");
                             out[0] = hydraulics::riprap_isbash({.V = in[0], .s = in[1], .C = in[2]});
                             return {};
                           }};

const Method riprap_em25{.id = "protection.riprap.em25",
                         .title = "Riprap size below stilling basins",
                         .equation = "D = 0.0254*(V/(2.6*0.3048))^2",
                         .inputs = em25_in,
                         .outputs = em25_out,
                         .source = "peterka_1984",
                         .place = "sec. 10: V = 2.6 sqrt(D) in ft/s and inches, stone of specific gravity 2.65",
                         .provenance = Provenance::memory,
                         .accuracy = "envelope of field experience",
                         .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                           out[0] = hydraulics::riprap_em25(in[0]);
                           return {};
                         }};

const Method creep_ratio_lane{.id = "protection.creep_ratio.lane",
                              .title = "Weighted creep ratio under the structure",
                              .equation = "C = (Lv + Lh/3)/dH",
                              .inputs = lane_in,
                              .outputs = lane_out,
                              .source = "lane_1935",
                              .place = "weighted-creep theory",
                              .provenance = Provenance::memory,
                              .accuracy = "empirical",
                              .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                if (!(in[2] > 0.0)) return no_answer("dH must be above zero");
                                out[0] = hydraulics::creep_ratio_lane({.Lv = in[0], .Lh = in[1], .dH = in[2]});
                                return {};
                              }};

const Method cavitation_index{.id = "chute.cavitation_index",
                              .title = "Cavitation index",
                              .equation = "sigma = (p0 - pv)/(rho*V^2/2)",
                              .inputs = cavitation_in,
                              .outputs = cavitation_out,
                              .source = "falvey_1990",
                              .place = "definition",
                              .provenance = Provenance::memory,
                              .accuracy = "exact by definition",
                              .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                if (!(in[2] > 0.0)) return no_answer("V must be above zero");
                                out[0] = hydraulics::cavitation_index({.p0 = in[0], .pv = in[1], .V = in[2]});
                                return {};
                              }};

const Method model_scale_froude{.id = "model.scale.froude",
                                .title = "Scales of a Froude model",
                                .equation = "Vr = sqrt(Lr); Qr = Lr^2.5; Tr = sqrt(Lr)",
                                .inputs = scale_in,
                                .outputs = scale_out,
                                .source = "momentum",
                                .place = "equal Froude number in model and prototype, same fluid and gravity, no distortion",
                                .provenance = Provenance::derived,
                                .accuracy = "exact; air, viscosity and surface tension do not follow it",
                                .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                  if (!(in[0] > 0.0)) return no_answer("Lr must be above zero");
                                  const auto scales = froude_scales(in[0]);
                                  out[0] = scales.velocity;
                                  out[1] = scales.discharge;
                                  out[2] = scales.time;
                                  return {};
                                }};

}  // namespace record
}  // namespace quell::hydraulics
