#include "quell/hydraulics/crest.h"

#include <cmath>

#include "quell/base/curve.h"

namespace quell::hydraulics {
namespace {

double face_factor(FaceSlope face, double relative_height) noexcept {
  static const Curve* const curves[] = {nullptr, &curve("crest_face_3_to_1"), &curve("crest_face_3_to_2"),
                                        &curve("crest_face_3_to_3")};
  const Curve* factor = curves[static_cast<int>(face)];
  return factor == nullptr ? 1.0 : factor->at(relative_height);
}

/// C/Co for He/Hd = chi: Castro-Orgaz and Hager's form, 1 at chi = 1.
double head_factor(double chi) noexcept {
  return (1.0 + 4.0 * chi / (9.0 + 5.0 * chi)) * 7.0 / 9.0;
}

}  // namespace

double crest_coefficient(const CrestDischargeInput& input) noexcept {
  static const Curve& basic = curve("crest_coefficient");
  const double relative_height = input.P / input.Hd;
  return basic.at(relative_height) * face_factor(input.face, relative_height) * head_factor(input.He / input.Hd);
}

double crest_discharge(const CrestDischargeInput& input) noexcept {
  if (!(input.He > 0.0)) return 0.0;
  return crest_coefficient(input) * input.L * input.He * std::sqrt(input.He);
}

double effective_crest_length(const EffectiveLengthInput& input) noexcept {
  return input.net_length - 2.0 * (input.piers * input.Kp + input.Ka) * input.He;
}

double crest_least_pressure_head(const CrestPressureInput& input) noexcept {
  const double chi = input.He / input.Hd;
  return chi * (1.0 - chi) * input.Hd;
}

namespace record {
namespace {
constexpr Symbol discharge_in[] = {{"He", "total head above the crest", dimension::length, {0.05, no_limit}},
                                   {"Hd", "design head", dimension::length, above_zero},
                                   {"P", "crest above the approach floor", dimension::length, {0.0, no_limit}},
                                   {"L", "effective crest length", dimension::length, above_zero}};
constexpr Symbol discharge_out[] = {{"Q", "discharge", dimension::discharge, {0.0, no_limit}}};
constexpr Symbol length_in[] = {{"Ln", "net crest length, clear of piers", dimension::length, above_zero},
                                {"N", "number of piers", dimension::none, {0.0, 200.0}},
                                {"Kp", "contraction coefficient of a pier", dimension::none, {0.0, 0.1}},
                                {"Ka", "contraction coefficient of an abutment", dimension::none, {0.0, 0.2}},
                                {"He", "total head above the crest", dimension::length, {0.0, no_limit}}};
constexpr Symbol length_out[] = {{"Le", "effective crest length", dimension::length, above_zero}};
constexpr Symbol pressure_in[] = {{"He", "total head above the crest", dimension::length, {0.0, no_limit}},
                                  {"Hd", "design head", dimension::length, above_zero}};
constexpr Symbol pressure_out[] = {{"hp", "least pressure head on the crest", dimension::length, any_value}};
}  // namespace

namespace {
std::string_view overload_condition(std::span<const double> in) {
  return in[0] / in[1] <= 1.5 ? std::string_view{} : "He/Hd is above 1.5: higher than the coefficient was tested for";
}

template <FaceSlope face>
Outcome<void> evaluate_discharge(std::span<const double> in, std::span<double> out) {
  if (!(in[1] > 0.0)) return no_answer("the design head must be above zero");
  out[0] = crest_discharge({.He = in[0], .Hd = in[1], .P = in[2], .L = in[3], .face = face});
  return {};
}

/// One record for each upstream face: they differ in the curve for the face and in the words.
template <FaceSlope face>
constexpr Method discharge_record(Text id, Text title, Text equation, Text place) {
  return {
      .id = id,
      .title = title,
      .equation = equation,
      .inputs = discharge_in,
      .outputs = discharge_out,
      .source = "dsd_1987",
      .place = place,
      .provenance = Provenance::memory,
      .accuracy = "1 % for P/Hd above 0.2, else 2.5 %; head factor 1.2 %",
      .remarks = "Another published practice gives a coefficient 2 % higher; the lower one is safe for the reservoir level.",
      .condition = overload_condition,
      .evaluate = evaluate_discharge<face>};
}
}  // namespace

const Method crest_discharge_ogee = discharge_record<FaceSlope::vertical>(
    "crest.discharge.ogee", "Free discharge over the ogee crest, vertical upstream face",
    "C = 7/9*crest_coefficient(P/Hd)*(1 + 4*He/(9*Hd + 5*He)); Q = C*L*He^1.5",
    "fig. 9-23 for the coefficient at the design head; its change with head after Castro-Orgaz and Hager");
const Method crest_discharge_ogee_3_to_1 = discharge_record<FaceSlope::slope_3_to_1>(
    "crest.discharge.ogee_face_3v_1h", "Free discharge over the ogee crest, upstream face 3V:1H",
    "C = 7/9*crest_coefficient(P/Hd)*crest_face_3_to_1(P/Hd)*(1 + 4*He/(9*Hd + 5*He)); Q = C*L*He^1.5",
    "fig. 9-23 and 9-25; change of the coefficient with head after Castro-Orgaz and Hager");
const Method crest_discharge_ogee_3_to_2 = discharge_record<FaceSlope::slope_3_to_2>(
    "crest.discharge.ogee_face_3v_2h", "Free discharge over the ogee crest, upstream face 3V:2H",
    "C = 7/9*crest_coefficient(P/Hd)*crest_face_3_to_2(P/Hd)*(1 + 4*He/(9*Hd + 5*He)); Q = C*L*He^1.5",
    "fig. 9-23 and 9-25; change of the coefficient with head after Castro-Orgaz and Hager");
const Method crest_discharge_ogee_3_to_3 = discharge_record<FaceSlope::slope_3_to_3>(
    "crest.discharge.ogee_face_3v_3h", "Free discharge over the ogee crest, upstream face 3V:3H",
    "C = 7/9*crest_coefficient(P/Hd)*crest_face_3_to_3(P/Hd)*(1 + 4*He/(9*Hd + 5*He)); Q = C*L*He^1.5",
    "fig. 9-23 and 9-25; change of the coefficient with head after Castro-Orgaz and Hager");

const Method& ogee_discharge(FaceSlope face) {
  static constexpr const Method* list[] = {&crest_discharge_ogee, &crest_discharge_ogee_3_to_1, &crest_discharge_ogee_3_to_2,
                                           &crest_discharge_ogee_3_to_3};
  return *list[static_cast<int>(face)];
}

const Method effective_length{
    .id = "crest.effective_length.piers",
    .title = "Effective crest length between piers and abutments",
    .equation = "Le = Ln - 2*(N*Kp + Ka)*He",
    .inputs = length_in,
    .outputs = length_out,
    .source = "dsd_1987",
    .place = "sec. 9.12; the form seen in Hydraulic Design Criteria sheet 111-3/2",
    .provenance = Provenance::seen,
    .accuracy = "2 % with constant coefficients",
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      out[0] = effective_crest_length({.net_length = in[0], .piers = in[1], .Kp = in[2], .Ka = in[3], .He = in[4]});
      if (!(out[0] > 0.0)) return no_answer("the contractions use up the whole crest");
      return {};
    }};

const Method crest_least_pressure{.id = "crest.least_pressure.hager",
                                  .title = "Least pressure head on the ogee crest above the design head",
                                  .equation = "hp = He/Hd*(1 - He/Hd)*Hd",
                                  .inputs = pressure_in,
                                  .outputs = pressure_out,
                                  .source = "vischer_hager_1998",
                                  .place = "standard crest, crest bottom pressure",
                                  .provenance = Provenance::memory,
                                  .accuracy = "at He/Hd = 1.33 it gives -0.44 Hd where measured values are -0.43 to -0.5 Hd",
                                  .remarks = "Piers lower the pressure beside them by an amount that is not known well.",
                                  .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                    if (!(in[1] > 0.0)) return no_answer("the design head must be above zero");
                                    out[0] = crest_least_pressure_head({.He = in[0], .Hd = in[1]});
                                    return {};
                                  }};

}  // namespace record
}  // namespace quell::hydraulics
