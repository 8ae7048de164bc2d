#include "quell/hydraulics/crest_coefficient.h"

#include <cmath>
#include <numbers>

namespace quell::hydraulics {
namespace {
constexpr double metres_in_a_foot = 0.3048;
}

double upper_crest_coefficient() noexcept {
  return 4.03 * std::sqrt(metres_in_a_foot);
}

double crest_discharge_upper(const CrestDischargeInput& input) noexcept {
  const double growth = 7.0 / 9.0 * (1.0 + 4.0 * input.He / (9.0 * input.Hd + 5.0 * input.He));
  return upper_crest_coefficient() * growth * input.L * std::pow(input.He, 1.5);
}

double crest_coefficient_hager(const HeadRatioInput& input) noexcept {
  return 2.0 / (3.0 * std::numbers::sqrt3) * (1.0 + 4.0 * input.He / (9.0 * input.Hd + 5.0 * input.He));
}

double crest_coefficient_iwasaki(const CrestHeightInput& input) noexcept {
  return 2.200 - 0.0416 * std::pow(input.Hd / input.P, 0.990);
}

double crest_head(const HeadInput& input) noexcept {
  return std::pow(input.discharge / (input.C * input.L), 2.0 / 3.0);
}

namespace record {
namespace {
constexpr Symbol discharge_in[] = {{"He", "total head above the crest", dimension::length, {0.05, no_limit}},
                                   {"Hd", "design head", dimension::length, above_zero},
                                   {"P", "crest above the approach floor", dimension::length, {0.0, no_limit}},
                                   {"L", "effective crest length", dimension::length, above_zero}};
constexpr Symbol discharge_out[] = {{"Q", "discharge", dimension::discharge, {0.0, no_limit}}};
constexpr Symbol ratio_in[] = {{"He", "total head above the crest", dimension::length, {0.05, no_limit}},
                               {"Hd", "design head", dimension::length, above_zero}};
constexpr Symbol ratio_out[] = {{"Cd", "coefficient of Q = Cd b sqrt(2 g) He^1.5", dimension::none, {0.0, 1.0}},
                                {"C", "coefficient of Q = C b He^1.5", dimension::weir_coefficient, above_zero}};
constexpr Symbol height_in[] = {{"Hd", "design head", dimension::length, above_zero},
                                {"P", "crest above the approach floor", dimension::length, above_zero}};
constexpr Symbol coefficient_out[] = {{"C", "coefficient of Q = C b Hd^1.5", dimension::weir_coefficient, above_zero}};
constexpr Symbol conversion_in[] = {{"C", "coefficient of Q = C b H^1.5", dimension::weir_coefficient, {0.5, 3.0}}};
constexpr Symbol conversion_out[] = {
    {"Cd", "coefficient of Q = (2/3) Cd b sqrt(2 g) H^1.5", dimension::none, above_zero},
    {"Cd1", "coefficient of Q = Cd1 b sqrt(2 g) H^1.5", dimension::none, above_zero},
    {"Cd2", "coefficient of Q = (2/3)^1.5 Cd2 b sqrt(g) H^1.5, over that of critical flow", dimension::none, above_zero}};
constexpr Symbol head_in[] = {{"Q", "discharge", dimension::discharge, above_zero},
                              {"C", "discharge coefficient", dimension::weir_coefficient, {1.4, 2.5}},
                              {"L", "effective crest length", dimension::length, above_zero}};
constexpr Symbol head_out[] = {{"He", "total head above the crest", dimension::length, above_zero}};

constexpr std::string_view overload = "He/Hd is above 1.5: higher than the coefficient was tested for";
}  // namespace

const Method crest_discharge_ogee_upper{
    .id = "crest.discharge.ogee_upper",
    .title = "Free discharge over a high ogee crest by the larger of the two published practices",
    .equation = "C = 4.03*0.3048^0.5*7/9*(1 + 4*He/(9*Hd + 5*He)); Q = C*L*He^1.5",
    .inputs = discharge_in,
    .outputs = discharge_out,
    .source = "chow_1959",
    .place = "example 14-1: 4.03 ft^0.5/s at the design head; its change with head after Castro-Orgaz and Hager",
    .provenance = Provenance::seen,
    .accuracy = "1 % at the design head; head factor 1.2 %",
    .remarks = "2 % above crest.discharge.ogee: safe for the basin, not for the reservoir level.",
    .condition =
        [](std::span<const double> in) {
          if (in[0] > 1.5 * in[1]) return overload;
          return in[2] >= 1.33 * in[1] ? std::string_view{} : "P/Hd is below 1.33: the coefficient is that of a high crest";
        },
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      out[0] = crest_discharge_upper({.He = in[0], .Hd = in[1], .P = in[2], .L = in[3]});
      return {};
    }};

const Method crest_coefficient_castro_orgaz{
    .id = "crest.coefficient.hager",
    .title = "Discharge coefficient of a high ogee crest from the curvature of the flow",
    .equation = "Cd = 2/(3*sqrt(3))*(1 + 4*He/(9*Hd + 5*He)); C = Cd*sqrt(2*g)",
    .inputs = ratio_in,
    .outputs = ratio_out,
    .source = "vischer_hager_1998",
    .place = "standard crest, discharge characteristics",
    .provenance = Provenance::memory,
    .accuracy = "within 1.2 % of another published curve of the change with head, He/Hd from 0.1 to 1.4",
    .condition = [](std::span<const double> in) { return in[0] <= 1.5 * in[1] ? std::string_view{} : overload; },
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      out[0] = crest_coefficient_hager({.He = in[0], .Hd = in[1]});
      out[1] = out[0] * std::sqrt(2.0 * gravity);
      return {};
    }};

const Method crest_coefficient_jsce{.id = "crest.coefficient.iwasaki",
                                    .title = "Discharge coefficient of the ogee crest at its design head after Iwasaki",
                                    .equation = "C = 2.2 - 0.0416*(Hd/P)^0.99",
                                    .inputs = height_in,
                                    .outputs = coefficient_out,
                                    .source = "jsce_1985",
                                    .place = "formula of Iwasaki",
                                    .provenance = Provenance::memory,
                                    .accuracy = "0.2 to 1.6 % above the table of crest.discharge.ogee for P/Hd from 0.2 to 3",
                                    .condition =
                                        [](std::span<const double> in) {
                                          return in[1] >= 0.2 * in[0] ? std::string_view{}
                                                                      : "P/Hd is below 0.2: the formula does not reach so far";
                                        },
                                    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                      out[0] = crest_coefficient_iwasaki({.Hd = in[0], .P = in[1]});
                                      if (!(out[0] > 0.0)) return no_answer("the crest is far too low for the formula");
                                      return {};
                                    }};

const Method crest_coefficient_conversion{.id = "crest.coefficient.conversion",
                                          .title = "The forms in which a discharge coefficient is published",
                                          .equation = "Cd = C/(2/3*sqrt(2*g)); Cd1 = C/sqrt(2*g); Cd2 = C/((2/3)^1.5*sqrt(g))",
                                          .inputs = conversion_in,
                                          .outputs = conversion_out,
                                          .source = "momentum",
                                          .place = "the four forms set equal",
                                          .provenance = Provenance::derived,
                                          .accuracy = "exact",
                                          .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                            out[0] = in[0] / (2.0 / 3.0 * std::sqrt(2.0 * gravity));
                                            out[1] = in[0] / std::sqrt(2.0 * gravity);
                                            out[2] = in[0] / (std::pow(2.0 / 3.0, 1.5) * std::sqrt(gravity));
                                            return {};
                                          }};

const Method crest_head_constant{.id = "crest.head.constant_coefficient",
                                 .title = "Head above a crest that a discharge needs, constant coefficient",
                                 .equation = "He = (Q/(C*L))^(2/3)",
                                 .inputs = head_in,
                                 .outputs = head_out,
                                 .source = "momentum",
                                 .place = "Q = C L He^1.5 solved for the head",
                                 .provenance = Provenance::derived,
                                 .accuracy = "exact; the coefficient brings its own error",
                                 .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                   out[0] = crest_head({.discharge = in[0], .C = in[1], .L = in[2]});
                                   return {};
                                 }};

}  // namespace record
}  // namespace quell::hydraulics
