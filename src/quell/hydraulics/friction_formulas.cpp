#include "quell/hydraulics/friction_formulas.h"

#include <cmath>

#include "quell/hydraulics/chute_symbols.h"

namespace quell::hydraulics {
namespace {

double reynolds_number(const FrictionInput& input) noexcept {
  return 4.0 * input.R * input.V / water_viscosity;
}

}  // namespace

double friction_factor_haaland(const FrictionInput& input) noexcept {
  const double root = -1.8 * std::log10(std::pow(input.ks / (14.8 * input.R), 1.11) + 6.9 / reynolds_number(input));
  return 1.0 / (root * root);
}

double friction_factor_swamee_jain(const FrictionInput& input) noexcept {
  const double logarithm = std::log10(input.ks / (14.8 * input.R) + 5.74 / std::pow(reynolds_number(input), 0.9));
  return 0.25 / (logarithm * logarithm);
}

double friction_factor_from_manning(const ManningConversion& input) noexcept {
  return 8.0 * gravity * input.n * input.n / std::cbrt(input.R);
}

double manning_from_friction_factor(const DarcyConversion& input) noexcept {
  return std::pow(input.R, 1.0 / 6.0) * std::sqrt(input.f / (8.0 * gravity));
}

double manning_from_strickler(double ks) noexcept {
  return std::pow(ks, 1.0 / 6.0) / 26.4;
}

double chezy_rough(const RoughRadius& input) noexcept {
  return 32.6 * std::sqrt(0.3048) * std::log10(12.2 * input.R / input.ks);
}

namespace record {
namespace {
constexpr Symbol roughness{"ks", "equivalent sand roughness", dimension::length, {1e-6, 0.05}};
constexpr Symbol radius{"R", "hydraulic radius", dimension::length, {1e-3, 100.0}};
constexpr Symbol factor{"f", "Darcy's friction factor", dimension::none, above_zero};
constexpr Symbol manning{"n", "Manning's roughness", dimension::manning, {0.008, 0.05}};
constexpr Symbol factor_in[] = {roughness, radius, {"V", "mean velocity", dimension::velocity, {0.01, 100.0}}};
constexpr Symbol factor_out[] = {factor};
constexpr Symbol manning_in[] = {manning, radius};
constexpr Symbol darcy_in[] = {{"f", "Darcy's friction factor", dimension::none, {0.005, 0.2}}, radius};
constexpr Symbol manning_out[] = {{"n", "Manning's roughness", dimension::manning, above_zero}};
constexpr Symbol strickler_in[] = {roughness, radius};
constexpr Symbol chezy_in[] = {radius, roughness};
constexpr Symbol chezy_out[] = {{"C", "Chezy's coefficient", chezy, above_zero}};

/// The condition of the two explicit formulas, which are fits to Colebrook's.
std::string_view outside_colebrook(std::span<const double> in) {
  if (in[0] / (4.0 * in[1]) >= 0.05) return "ks/(4 R) is 0.05 or more";
  const double Re = reynolds_number({.ks = in[0], .R = in[1], .V = in[2]});
  return Re > 5e3 && Re < 1e8 ? std::string_view{} : "the Reynolds number is not from 5e3 to 1e8";
}
}  // namespace

const Method friction_factor_haaland{.id = "chute.friction_factor.haaland",
                                     .title = "Darcy's friction factor by Haaland",
                                     .equation = "f = (-1.8*log10((ks/(14.8*R))^1.11 + 6.9*nu/(4*R*V)))^(-2)",
                                     .inputs = factor_in,
                                     .outputs = factor_out,
                                     .source = "haaland_1983",
                                     .place = "written with the hydraulic radius",
                                     .provenance = Provenance::memory,
                                     .accuracy = "within 2 % of Colebrook",
                                     .condition = outside_colebrook,
                                     .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                       out[0] = hydraulics::friction_factor_haaland({.ks = in[0], .R = in[1], .V = in[2]});
                                       return {};
                                     }};

const Method friction_factor_swamee_jain{.id = "chute.friction_factor.swamee_jain",
                                         .title = "Darcy's friction factor by Swamee and Jain",
                                         .equation = "f = 0.25/log10(ks/(14.8*R) + 5.74/(4*R*V/nu)^0.9)^2",
                                         .inputs = factor_in,
                                         .outputs = factor_out,
                                         .source = "swamee_jain_1976",
                                         .place = "written with the hydraulic radius",
                                         .provenance = Provenance::memory,
                                         .accuracy = "within 3 % of Colebrook",
                                         .condition = outside_colebrook,
                                         .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                           out[0] =
                                               hydraulics::friction_factor_swamee_jain({.ks = in[0], .R = in[1], .V = in[2]});
                                           return {};
                                         }};

const Method friction_factor_manning{.id = "chute.friction_factor.manning",
                                     .title = "Darcy's friction factor of Manning's n",
                                     .equation = "f = 8*g*n^2/R^(1/3)",
                                     .inputs = manning_in,
                                     .outputs = factor_out,
                                     .source = "momentum",
                                     .place = "the friction slopes of Darcy and Manning set equal",
                                     .provenance = Provenance::derived,
                                     .accuracy = "exact at R",
                                     .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                       out[0] = friction_factor_from_manning({.n = in[0], .R = in[1]});
                                       return {};
                                     }};

const Method manning_darcy{.id = "chute.manning.darcy",
                           .title = "Manning's n of Darcy's friction factor",
                           .equation = "n = R^(1/6)*sqrt(f/(8*g))",
                           .inputs = darcy_in,
                           .outputs = manning_out,
                           .source = "momentum",
                           .place = "the friction slopes of Darcy and Manning set equal",
                           .provenance = Provenance::derived,
                           .accuracy = "exact at R",
                           .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                             out[0] = manning_from_friction_factor({.f = in[0], .R = in[1]});
                             return {};
                           }};

const Method manning_strickler{.id = "chute.manning.strickler",
                               .title = "Manning's n of a roughness height by Strickler",
                               .equation = "n = ks^(1/6)/26.4",
                               .inputs = strickler_in,
                               .outputs = manning_out,
                               .source = "strickler_1923",
                               .place = "ks in m; R enters the range alone",
                               .provenance = Provenance::memory,
                               .accuracy = "about 5 % of the logarithmic law where R/ks is from 5 to 500",
                               .remarks = "On smooth chutes, R/ks above 1000, it is 10 to 15 % too low.",
                               .condition = [](std::span<const double> in) -> std::string_view {
                                 const double ratio = in[1] / in[0];
                                 return ratio > 5.0 && ratio < 500.0 ? std::string_view{} : "R/ks is not from 5 to 500";
                               },
                               .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                 out[0] = manning_from_strickler(in[0]);
                                 return {};
                               }};

const Method chezy_em1601{.id = "chute.chezy.em1601",
                          .title = "Chezy's coefficient of a rough channel",
                          .equation = "C = 32.6*sqrt(0.3048)*log10(12.2*R/ks)",
                          .inputs = chezy_in,
                          .outputs = chezy_out,
                          .source = "em1601_1991",
                          .place = "fully rough flow, 32.6 log10(12.2 R/ks) in ft",
                          .provenance = Provenance::memory,
                          .accuracy = "within 1 % of the rough limit of Colebrook",
                          .condition = [](std::span<const double> in) -> std::string_view {
                            return in[0] > 2.0 * in[1] ? std::string_view{} : "R/ks is below 2: the stones are the channel";
                          },
                          .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                            if (!(in[1] < 12.2 * in[0]))
                              return bad_input("ks", in[1], above_zero.lowest, 12.2 * in[0],
                                               "rougher than the channel is deep");
                            out[0] = chezy_rough({.R = in[0], .ks = in[1]});
                            return {};
                          }};

}  // namespace record
}  // namespace quell::hydraulics
