#include "quell/hydraulics/short_rules.h"

#include <cmath>

namespace quell::hydraulics {

double velocity_from_head(double phi, double H) noexcept {
  return phi * std::sqrt(2.0 * gravity * H);
}

double weir_head(double q, double C) noexcept {
  return std::pow(q / C, 2.0 / 3.0);
}

double roller_bucket_radius(double q, double H1) noexcept {
  const double FD = 1000.0 * q / std::sqrt(gravity * H1 * H1 * H1);
  return H1 * (0.0826 + 2.07e-3 * FD + 1.4e-5 * FD * FD);
}

double bank_angle_factor(double theta, double phi) noexcept {
  const double ratio = std::sin(theta) / std::sin(phi);
  return std::sqrt(1.0 - ratio * ratio);
}

double bank_riprap(const BankRiprapInput& input) noexcept {
  const double K1 = bank_angle_factor(input.theta, input.phi);
  return 0.00594 * input.V * input.V * input.V / (std::sqrt(input.d) * std::pow(K1, 1.5));
}

namespace record {
namespace {
constexpr Symbol velocity_in[] = {{"phi", "share of the ideal velocity", dimension::none, {0.7, 1.0}, 1.0},
                                  {"H", "head above the place", dimension::length, {0.0, no_limit}}};
constexpr Symbol weir_in[] = {{"q", "discharge per unit width", dimension::unit_discharge, above_zero},
                              {"C", "discharge coefficient", dimension::weir_coefficient, {1.0, 2.4}}};
constexpr Symbol bucket_in[] = {{"q", "discharge per unit width", dimension::unit_discharge, above_zero},
                                {"H1", "reservoir level above the invert of the bucket", dimension::length, above_zero}};
constexpr Symbol rise_in[] = {{"y1", "depth before the jump", dimension::length, above_zero},
                              {"y2", "sequent depth", dimension::length, above_zero}};
constexpr Symbol riprap_in[] = {{"V", "mean velocity of the channel", dimension::velocity, {0.0, 6.0}},
                                {"d", "mean depth of the channel", dimension::length, above_zero},
                                {"theta", "angle of the bank to the horizontal", dimension::none, {0.0, 0.6}},
                                {"phi", "angle of repose of the stone", dimension::none, {0.6, 0.8}}};
constexpr Symbol velocity_out[] = {{"V", "velocity", dimension::velocity, {0.0, no_limit}}};
constexpr Symbol weir_out[] = {{"H", "head of energy over the crest", dimension::length, above_zero}};
constexpr Symbol bucket_out[] = {{"FD", "discharge parameter", dimension::none, above_zero},
                                 {"R", "least radius of the bucket", dimension::length, above_zero}};
constexpr Symbol rise_out[] = {{"L", "length of the apron", dimension::length, {0.0, no_limit}}};
constexpr Symbol riprap_out[] = {{"K1", "factor for the angle of the bank", dimension::none, {0.0, 1.0}},
                                 {"D50", "median stone size", dimension::length, {0.0, no_limit}}};
}  // namespace

const Method velocity_from_head{.id = "toe.velocity.head",
                                .title = "Velocity below a head with a coefficient for the losses",
                                .equation = "V = phi*sqrt(2*g*H)",
                                .inputs = velocity_in,
                                .outputs = velocity_out,
                                .source = "momentum",
                                .place = "energy, the ideal velocity times its coefficient",
                                .provenance = Provenance::derived,
                                .accuracy = "as good as the coefficient",
                                .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                  out[0] = hydraulics::velocity_from_head(in[0], in[1]);
                                  return {};
                                }};

const Method weir_head{.id = "weir.head.coefficient",
                       .title = "Head of energy over a weir from discharge and coefficient",
                       .equation = "H = (q/C)^(2/3)",
                       .inputs = weir_in,
                       .outputs = weir_out,
                       .source = "momentum",
                       .place = "definition of the discharge coefficient, q = C H^1.5",
                       .provenance = Provenance::derived,
                       .accuracy = "as good as the coefficient",
                       .remarks = "1.7 is the ideal broad crest, 1.84 the usual sharp one, 2.2 an ogee at its design head.",
                       .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                         out[0] = hydraulics::weir_head(in[0], in[1]);
                         return {};
                       }};

const Method roller_bucket_radius{.id = "bucket.radius.discharge_parameter",
                                  .title = "Least radius of a solid roller bucket from the discharge parameter",
                                  .equation = "FD = 1000*q/sqrt(g*H1^3); R = H1*(0.0826 + 2.07e-3*FD + 1.4e-5*FD^2)",
                                  .inputs = bucket_in,
                                  .outputs = bucket_out,
                                  .source = "is_7365",
                                  .place = "solid roller bucket, read in a design annex that quotes it",
                                  .provenance = Provenance::seen,
                                  .accuracy = "a fit to model tests",
                                  .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                    out[0] = 1000.0 * in[0] / std::sqrt(gravity * in[1] * in[1] * in[1]);
                                    out[1] = hydraulics::roller_bucket_radius(in[0], in[1]);
                                    return {};
                                  }};

const Method apron_length_rise{.id = "apron.length.five_rises",
                               .title = "Length of a plain apron: five times the rise of the jump",
                               .equation = "L = 5*(y2 - y1)",
                               .inputs = rise_in,
                               .outputs = rise_out,
                               .source = "practice",
                               .place = "rule of thumb of textbooks and design sheets",
                               .provenance = Provenance::common_practice,
                               .accuracy = "a quarter to a third shorter than the free jump by Engineering Monograph 25",
                               .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                 if (in[1] < in[0])
                                   return bad_input("y2", in[1], in[0], no_limit, "the flow is deeper after a jump");
                                 out[0] = 5.0 * (in[1] - in[0]);
                                 return {};
                               }};

const Method bank_riprap{
    .id = "protection.riprap.bank",
    .title = "Riprap on the bank of a channel",
    .equation = "K1 = sqrt(1 - (sin(theta)/sin(phi))^2); D50 = 0.00594*V^3/(sqrt(d)*K1^1.5)",
    .inputs = riprap_in,
    .outputs = riprap_out,
    .source = "brown_clyde_1989",
    .place = "bank riprap, SI, specific gravity 2.65 and stability factor 1.2; read in a permit calculation",
    .provenance = Provenance::seen,
    .accuracy = "empirical; gradually varied flow, not below basins",
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      if (!(in[2] < in[3]))
        return bad_input("theta", in[2], 0.0, in[3], "a bank steeper than the angle of repose holds no stone");
      out[0] = bank_angle_factor(in[2], in[3]);
      out[1] = hydraulics::bank_riprap({.V = in[0], .d = in[1], .theta = in[2], .phi = in[3]});
      return {};
    }};

}  // namespace record
}  // namespace quell::hydraulics
