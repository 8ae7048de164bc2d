#include "quell/hydraulics/weirs.h"

#include <algorithm>
#include <cmath>

#include "quell/base/constants.h"
#include "quell/base/curve.h"

namespace quell::hydraulics {

double rehbock_discharge(const SharpWeirInput& input) noexcept {
  const double coefficient = 0.602 + 0.083 * input.h / input.P;
  return 2.0 / 3.0 * coefficient * std::sqrt(2.0 * gravity) * input.b * std::pow(input.h + 0.0012, 1.5);
}

double textbook_weir_discharge(const SharpWeirInput& input) noexcept {
  return (3.27 + 0.40 * input.h / input.P) * std::sqrt(0.3048) * input.b * std::pow(input.h, 1.5);
}

double sill_discharge(const SharpWeirInput& input) noexcept {
  return std::sqrt(gravity) * input.b * std::pow(input.h + input.P, 1.5);
}

ContractedWeirFlow kindsvater_carter_discharge(const ContractedWeirInput& input) noexcept {
  static const Curve& base = curve("kindsvater_carter_base");
  static const Curve& slope = curve("kindsvater_carter_slope");
  static const Curve& width = curve("kindsvater_carter_width");
  const double contraction = input.b / input.B;
  const double Ce = base.at(contraction) + slope.at(contraction) * input.h / input.P;
  const double length = input.b + width.at(contraction);
  return {Ce, 2.0 / 3.0 * Ce * std::sqrt(2.0 * gravity) * length * std::pow(input.h + 0.001, 1.5)};
}

double villemonte_factor(const HeadsInput& input) noexcept {
  const double ratio = std::clamp(input.h2 / input.h1, 0.0, 1.0);
  return std::pow(1.0 - std::pow(ratio, 1.5), 0.385);
}

namespace record {
namespace {
constexpr Symbol discharge_out[] = {{"Q", "discharge", dimension::discharge, {0.0, no_limit}}};
constexpr Symbol rehbock_in[] = {{"h", "water level above the crest", dimension::length, {0.03, 0.75}},
                                 {"P", "crest above the approach floor", dimension::length, {0.1, no_limit}},
                                 {"b", "crest length, the width of the channel", dimension::length, above_zero}};
constexpr Symbol textbook_in[] = {{"h", "water level above the crest", dimension::length, {0.03, no_limit}},
                                  {"P", "crest above the approach floor", dimension::length, above_zero},
                                  {"b", "crest length, the width of the channel", dimension::length, above_zero}};
constexpr Symbol contracted_in[] = {{"h", "water level above the crest", dimension::length, {0.03, no_limit}},
                                    {"P", "crest above the approach floor", dimension::length, {0.1, no_limit}},
                                    {"b", "crest length", dimension::length, {0.15, no_limit}},
                                    {"B", "width of the approach channel", dimension::length, {0.15, no_limit}}};
constexpr Symbol contracted_out[] = {{"Ce", "discharge coefficient", dimension::none, {0.0, 1.0}},
                                     {"Q", "discharge", dimension::discharge, {0.0, no_limit}}};
constexpr Symbol heads_in[] = {
    {"h1", "upstream level above the crest", dimension::length, above_zero},
    {"h2", "downstream level above the crest, 0 where it is below", dimension::length, {0.0, no_limit}}};
constexpr Symbol factor_out[] = {{"k", "discharge over that of the free weir", dimension::none, {0.0, 1.0}}};

SharpWeirInput sharp_weir(std::span<const double> in) {
  return {.h = in[0], .P = in[1], .b = in[2]};
}

std::string_view height_condition(std::span<const double> in, double highest, std::string_view reason) {
  return in[0] <= highest * in[1] ? std::string_view{} : reason;
}
}  // namespace

const Method weir_rehbock{.id = "weir.discharge.rehbock",
                          .title = "Sharp-crested weir as wide as its channel, after Rehbock",
                          .equation = "Q = 2/3*(0.602 + 0.083*h/P)*sqrt(2*g)*b*(h + 0.0012)^1.5",
                          .inputs = rehbock_in,
                          .outputs = discharge_out,
                          .source = "iso_1438",
                          .place = "full-width rectangular weir",
                          .provenance = Provenance::memory,
                          .accuracy = "1 to 2 % with an aerated nappe",
                          .condition = [](std::span<const double> in) { return height_condition(in, 1.0, "h/P is above 1"); },
                          .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                            out[0] = rehbock_discharge(sharp_weir(in));
                            return {};
                          }};

const Method weir_textbook{
    .id = "weir.discharge.sharp_us",
    .title = "Sharp-crested weir as wide as its channel, coefficient 3.27 + 0.40 h/P in ft^0.5/s",
    .equation = "Q = (3.27 + 0.4*h/P)*0.3048^0.5*b*h^1.5",
    .inputs = textbook_in,
    .outputs = discharge_out,
    .source = "ponce_lecture_9",
    .place = "sharp-crested weirs, after Chow 1959",
    .provenance = Provenance::seen,
    .accuracy = "not stated; 1 % from Rehbock's formula at h/P of 0.5",
    .condition =
        [](std::span<const double> in) {
          return height_condition(in, 5.0, "h/P is above 5: from about 15 on it is a sill, between there is no good formula");
        },
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      out[0] = textbook_weir_discharge(sharp_weir(in));
      return {};
    }};

const Method weir_sill{.id = "weir.discharge.sill",
                       .title = "Flow over a very low sill: critical depth above the floor",
                       .equation = "Q = sqrt(g)*b*(h + P)^1.5",
                       .inputs = textbook_in,
                       .outputs = discharge_out,
                       .source = "ponce_lecture_9",
                       .place = "the form 5.68 (1 + P/h)^1.5 in ft^0.5/s, whose 5.68 is the square root of g",
                       .provenance = Provenance::seen,
                       .accuracy = "not stated; the limit of h/P is given as 15 and as 20",
                       .condition =
                           [](std::span<const double> in) {
                             return in[0] >= 15.0 * in[1] ? std::string_view{}
                                                          : "h/P is below 15: the depth above the floor is not critical";
                           },
                       .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                         out[0] = sill_discharge(sharp_weir(in));
                         return {};
                       }};

const Method weir_kindsvater_carter{.id = "weir.discharge.kindsvater_carter",
                                    .title = "Sharp-crested weir narrower than its channel, after Kindsvater and Carter",
                                    .equation =
                                        "Ce = kindsvater_carter_base(b/B) + kindsvater_carter_slope(b/B)*h/P; "
                                        "Q = 2/3*Ce*sqrt(2*g)*(b + kindsvater_carter_width(b/B))*(h + 0.001)^1.5",
                                    .inputs = contracted_in,
                                    .outputs = contracted_out,
                                    .source = "kindsvater_carter_1959",
                                    .place = "coefficients by contraction ratio",
                                    .provenance = Provenance::memory,
                                    .accuracy = "about 1 %; prints differ in the third decimal",
                                    .condition = [](std::span<const double> in) -> std::string_view {
                                      if (in[2] > in[3]) return "the crest is longer than the channel is wide";
                                      return height_condition(in, 2.0, "h/P is above 2");
                                    },
                                    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                      const auto flow =
                                          kindsvater_carter_discharge({.h = in[0], .P = in[1], .b = in[2], .B = in[3]});
                                      if (!(flow.Ce > 0.0))
                                        return no_answer("h/P is so large that the coefficient loses its meaning");
                                      out[0] = flow.Ce;
                                      out[1] = flow.Q;
                                      return {};
                                    }};

const Method weir_submergence_villemonte{.id = "weir.submergence.villemonte",
                                         .title = "Drowned sharp-crested weir: part of the free discharge that passes",
                                         .equation = "k = (1 - (h2/h1)^1.5)^0.385",
                                         .inputs = heads_in,
                                         .outputs = factor_out,
                                         .source = "villemonte_1947",
                                         .place = "rectangular weir",
                                         .provenance = Provenance::memory,
                                         .accuracy = "about 5 %",
                                         .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                           if (in[1] > in[0])
                                             return bad_input("h2", in[1], 0.0, in[0],
                                                              "the water would flow back: h2 is above h1");
                                           out[0] = villemonte_factor({.h1 = in[0], .h2 = in[1]});
                                           return {};
                                         }};

}  // namespace record
}  // namespace quell::hydraulics
