#include "quell/hydraulics/crest_shape.h"

#include <boost/math/quadrature/gauss_kronrod.hpp>
#include <cmath>

namespace quell::hydraulics {
namespace {

double profile_depth(double x, double Hd, const ProfileConstants& shape) noexcept {
  return std::pow(x, shape.n) / (shape.K * std::pow(Hd, shape.n - 1.0));
}

double tangent_distance(double Hd, double slope, const ProfileConstants& shape) noexcept {
  return Hd * std::pow(shape.K * slope / shape.n, 1.0 / (shape.n - 1.0));
}

/// Length of the profile from the axis to x.
double profile_length(double x, double Hd, const ProfileConstants& shape) {
  const auto element = [&](double at) {
    const double gradient = shape.n / shape.K * std::pow(at / Hd, shape.n - 1.0);
    return std::sqrt(1.0 + gradient * gradient);
  };
  return boost::math::quadrature::gauss_kronrod<double, 31>::integrate(element, 0.0, x, 8, 1e-12);
}

}  // namespace

ProfileConstants profile_constants(FaceSlope face) noexcept {
  static constexpr ProfileConstants shapes[] = {{2.0, 1.85}, {1.936, 1.836}, {1.939, 1.810}, {1.873, 1.776}};
  return shapes[static_cast<int>(face)];
}

double crest_profile(const CrestProfileInput& input) noexcept {
  return profile_depth(input.x, input.Hd, profile_constants(input.face));
}

TangentPoint crest_tangent_point(double Hd, double slope, FaceSlope face) {
  const ProfileConstants shape = profile_constants(face);
  const double x = tangent_distance(Hd, slope, shape);
  return {x, profile_depth(x, Hd, shape), profile_length(x, Hd, shape)};
}

namespace record {
namespace {
constexpr Symbol profile_in[] = {{"x", "distance downstream of the crest axis", dimension::length, {0.0, no_limit}},
                                 {"Hd", "design head", dimension::length, above_zero}};
constexpr Symbol profile_out[] = {{"y", "depth below the crest", dimension::length, {0.0, no_limit}}};
constexpr Symbol tangent_in[] = {{"S", "slope of the chute, fall per horizontal length", dimension::none, {0.05, 5.0}},
                                 {"Hd", "design head", dimension::length, above_zero}};
constexpr Symbol tangent_out[] = {{"xt", "tangent point downstream of the crest axis", dimension::length, above_zero},
                                  {"yt", "tangent point below the crest", dimension::length, above_zero}};
constexpr Symbol arc_in[] = {{"S", "slope of the chute, fall per horizontal length", dimension::none, {0.05, 5.0}},
                             {"Hd", "design head", dimension::length, above_zero},
                             {"K", "factor of the profile x^n = K Hd^(n-1) y", dimension::none, {1.8, 2.3}, 2.0, above_zero},
                             {"n", "exponent of the profile", dimension::none, {1.7, 1.9}, 1.85, {1.01, 5.0}}};
constexpr Symbol arc_out[] = {
    {"s", "length along the profile from crest axis to tangent point", dimension::length, above_zero}};

template <FaceSlope face>
Outcome<void> evaluate_profile(std::span<const double> in, std::span<double> out) {
  out[0] = hydraulics::crest_profile({.x = in[0], .Hd = in[1], .face = face});
  return {};
}

template <FaceSlope face>
Outcome<void> evaluate_tangent(std::span<const double> in, std::span<double> out) {
  const ProfileConstants shape = profile_constants(face);
  out[0] = tangent_distance(in[1], in[0], shape);
  out[1] = profile_depth(out[0], in[1], shape);
  return {};
}

constexpr const char* low_crest = "For a deep approach: on crests lower than 1.33 Hd the shape changes somewhat.";

/// One record for each upstream face: they differ in K and n and in where these stand.
template <FaceSlope face>
constexpr Method profile_record(Text id, Text title, Text equation, Text source, Text place, Provenance provenance) {
  return {.id = id,
          .title = title,
          .equation = equation,
          .inputs = profile_in,
          .outputs = profile_out,
          .source = source,
          .place = place,
          .provenance = provenance,
          .accuracy = "by definition of the shape",
          .remarks = low_crest,
          .evaluate = evaluate_profile<face>};
}

template <FaceSlope face>
constexpr Method tangent_record(Text id, Text title, Text equation) {
  return {.id = id,
          .title = title,
          .equation = equation,
          .inputs = tangent_in,
          .outputs = tangent_out,
          .source = "momentum",
          .place = "slope of the ogee profile set equal to that of the chute",
          .provenance = Provenance::derived,
          .accuracy = "exact",
          .remarks = low_crest,
          .evaluate = evaluate_tangent<face>};
}
}  // namespace

const Method crest_profile_ogee = profile_record<FaceSlope::vertical>(
    "crest.profile.ogee", "Downstream quadrant of the standard ogee crest, vertical upstream face", "y = x^1.85/(2*Hd^0.85)",
    "chow_1959", "sec. 14-5; the same in Hydraulic Design Criteria sheet 111-1", Provenance::seen);
const Method crest_profile_ogee_3_to_1 = profile_record<FaceSlope::slope_3_to_1>(
    "crest.profile.ogee_face_3v_1h", "Downstream quadrant of the ogee crest, upstream face 3V:1H",
    "y = x^1.836/(1.936*Hd^0.836)", "hdc_111", "sheets 111-7 to 111-9", Provenance::memory);
const Method crest_profile_ogee_3_to_2 = profile_record<FaceSlope::slope_3_to_2>(
    "crest.profile.ogee_face_3v_2h", "Downstream quadrant of the ogee crest, upstream face 3V:2H", "y = x^1.81/(1.939*Hd^0.81)",
    "hdc_111", "sheets 111-7 to 111-9", Provenance::memory);
const Method crest_profile_ogee_3_to_3 = profile_record<FaceSlope::slope_3_to_3>(
    "crest.profile.ogee_face_3v_3h", "Downstream quadrant of the ogee crest, upstream face 3V:3H",
    "y = x^1.776/(1.873*Hd^0.776)", "hdc_111", "sheets 111-7 to 111-9", Provenance::memory);

const Method& ogee_profile(FaceSlope face) {
  static constexpr const Method* list[] = {&crest_profile_ogee, &crest_profile_ogee_3_to_1, &crest_profile_ogee_3_to_2,
                                           &crest_profile_ogee_3_to_3};
  return *list[static_cast<int>(face)];
}

const Method crest_tangent_x =
    tangent_record<FaceSlope::vertical>("crest.tangent_point.ogee", "Tangent point of the ogee crest with the chute",
                                        "xt = Hd*(2*S/1.85)^(1/0.85); yt = xt^1.85/(2*Hd^0.85)");
const Method crest_tangent_x_3_to_1 = tangent_record<FaceSlope::slope_3_to_1>(
    "crest.tangent_point.ogee_face_3v_1h", "Tangent point of the ogee crest with the chute, upstream face 3V:1H",
    "xt = Hd*(1.936*S/1.836)^(1/0.836); yt = xt^1.836/(1.936*Hd^0.836)");
const Method crest_tangent_x_3_to_2 = tangent_record<FaceSlope::slope_3_to_2>(
    "crest.tangent_point.ogee_face_3v_2h", "Tangent point of the ogee crest with the chute, upstream face 3V:2H",
    "xt = Hd*(1.939*S/1.81)^(1/0.81); yt = xt^1.81/(1.939*Hd^0.81)");
const Method crest_tangent_x_3_to_3 = tangent_record<FaceSlope::slope_3_to_3>(
    "crest.tangent_point.ogee_face_3v_3h", "Tangent point of the ogee crest with the chute, upstream face 3V:3H",
    "xt = Hd*(1.873*S/1.776)^(1/0.776); yt = xt^1.776/(1.873*Hd^0.776)");

const Method& ogee_tangent_point(FaceSlope face) {
  static constexpr const Method* list[] = {&crest_tangent_x, &crest_tangent_x_3_to_1, &crest_tangent_x_3_to_2,
                                           &crest_tangent_x_3_to_3};
  return *list[static_cast<int>(face)];
}

const Method crest_arc_length{
    .id = "crest.arc_length.ogee",
    .title = "Length of the ogee profile from crest axis to tangent point",
    .kind = EquationKind::procedure,
    .equation = "Integral of the root of 1 + (dy/dx)^2 along x^n = K Hd^(n-1) y, from x = 0 to the tangent point.",
    .inputs = arc_in,
    .outputs = arc_out,
    .source = "momentum",
    .place = "geometry of the profile",
    .provenance = Provenance::derived,
    .accuracy = "quadrature to 1e-10",
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      const ProfileConstants shape{in[2], in[3]};
      out[0] = profile_length(tangent_distance(in[1], in[0], shape), in[1], shape);
      return {};
    }};

}  // namespace record
}  // namespace quell::hydraulics
