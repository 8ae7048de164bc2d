#include "quell/hydraulics/canal_fall.h"

#include <cmath>

namespace quell::hydraulics {

SardaCrest sarda_crest(const SardaInput& input) noexcept {
  const double B = 0.55 * std::sqrt(input.D);
  return {.H = std::pow(input.Q * std::pow(B, 1.0 / 6.0) / (1.99 * input.L), 0.6), .B = B};
}

Cistern vertical_fall_cistern(double E, double HL) noexcept {
  return {.length = 5.0 * std::sqrt(E * HL), .depth = std::pow(E * HL, 2.0 / 3.0) / 4.0};
}

Cistern glacis_cistern(double E2) noexcept {
  return {.length = 6.0 * E2, .depth = 1.25 * E2};
}

namespace record {
namespace {
constexpr Symbol crest_in[] = {
    {"Q", "discharge", dimension::discharge, {14.0, 500.0}},
    {"L", "length of the crest", dimension::length, above_zero},
    {"D", "height of the upstream water level above the downstream bed", dimension::length, above_zero}};
constexpr Symbol vertical_in[] = {{"E", "head of energy over the crest", dimension::length, above_zero},
                                  {"HL", "fall of the water level", dimension::length, above_zero}};
constexpr Symbol glacis_in[] = {{"E2", "energy head after the jump", dimension::length, above_zero}};
constexpr Symbol crest_out[] = {{"H", "head over the crest", dimension::length, above_zero},
                                {"B", "width of the top of the crest", dimension::length, above_zero}};
constexpr Symbol vertical_out[] = {{"Lc", "length of the cistern", dimension::length, above_zero},
                                   {"x", "depth of the cistern below the downstream bed", dimension::length, above_zero}};
constexpr Symbol glacis_out[] = {
    {"Lc", "length of the cistern", dimension::length, above_zero},
    {"x", "depth of the cistern's floor below the downstream energy level", dimension::length, above_zero}};
}  // namespace

const Method fall_crest_sarda{.id = "fall.crest.sarda",
                              .title = "Head over the trapezoidal crest of a vertical canal fall (Sarda type)",
                              .equation = "B = 0.55*sqrt(D); H = (Q*B^(1/6)/(1.99*L))^(3/5)",
                              .inputs = crest_in,
                              .outputs = crest_out,
                              .source = "punmia",
                              .place = "ex. 18.1: Q = 1.99 L H^1.5 (H/B)^(1/6), free fall",
                              .provenance = Provenance::seen,
                              .accuracy = "empirical",
                              .remarks = "For more than 14 m3/s; smaller falls have a rectangular crest.",
                              .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                const auto crest = sarda_crest({.Q = in[0], .L = in[1], .D = in[2]});
                                out[0] = crest.H;
                                out[1] = crest.B;
                                return {};
                              }};

const Method fall_cistern_vertical{.id = "fall.cistern.vertical",
                                   .title = "Cistern below a vertical canal fall",
                                   .equation = "Lc = 5*sqrt(E*HL); x = (E*HL)^(2/3)/4",
                                   .inputs = vertical_in,
                                   .outputs = vertical_out,
                                   .source = "punmia",
                                   .place = "ex. 18.1, lengths in m",
                                   .provenance = Provenance::seen,
                                   .accuracy = "empirical",
                                   .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                     const auto cistern = vertical_fall_cistern(in[0], in[1]);
                                     out[0] = cistern.length;
                                     out[1] = cistern.depth;
                                     return {};
                                   }};

const Method fall_cistern_glacis{.id = "fall.cistern.glacis",
                                 .title = "Cistern below a straight glacis fall",
                                 .equation = "Lc = 6*E2; x = 1.25*E2",
                                 .inputs = glacis_in,
                                 .outputs = glacis_out,
                                 .source = "punmia",
                                 .place = "ex. 18.2; E2 is the energy head after the jump",
                                 .provenance = Provenance::seen,
                                 .accuracy = "empirical",
                                 .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                   const auto cistern = glacis_cistern(in[0]);
                                   out[0] = cistern.length;
                                   out[1] = cistern.depth;
                                   return {};
                                 }};

}  // namespace record
}  // namespace quell::hydraulics
