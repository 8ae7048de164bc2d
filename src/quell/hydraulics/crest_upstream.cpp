#include "quell/hydraulics/crest_upstream.h"

#include <algorithm>
#include <boost/math/quadrature/gauss_kronrod.hpp>
#include <cmath>
#include <numbers>

namespace quell::hydraulics {
namespace {

// Half axes of the ellipse over Hd.
constexpr double A = 0.28;
constexpr double B = 0.165;
// Ends of the three arcs upstream of the axis over Hd. Each arc is centred on the line from the centre of the one before to
// their common point, so that they meet without a break.
constexpr double first_end = 0.175;
constexpr double second_end = 0.276;
constexpr double third_end = 0.2818;

/// Fall over an arc of radius R, whose centre is upstream by c, between a and b upstream of the axis; all over Hd.
double fall_over_arc(double R, double c, double a, double b) noexcept {
  return std::sqrt(R * R - (a - c) * (a - c)) - std::sqrt(std::max(R * R - (b - c) * (b - c), 0.0));
}

tl::unexpected<NoAnswer> beyond_quadrant(double xu, double end) {
  return bad_input("xu", xu, 0.0, end, "the upstream quadrant ends there");
}

/// Parameter t of the ellipse x = A sin t, y = B (1 - cos t) where its slope is that of the face.
double tangent_parameter(double inclination) noexcept {
  return std::atan2(A * std::sin(inclination), B * std::cos(inclination));
}

}  // namespace

Outcome<double> upstream_arcs(const QuadrantInput& input) noexcept {
  const double x = input.xu / input.Hd;
  if (!(x >= 0.0 && x <= third_end)) return beyond_quadrant(input.xu, third_end * input.Hd);
  const double first = std::min(x, first_end);
  const double second = std::min(std::max(x, first_end), second_end);
  const double third = std::max(x, second_end);
  return input.Hd * (first * first / (0.5 + std::sqrt(0.25 - first * first)) + fall_over_arc(0.2, 0.105, first_end, second) +
                     fall_over_arc(0.04, 0.2418, second_end, third));
}

Outcome<double> upstream_ellipse(const QuadrantInput& input) noexcept {
  const double share = input.xu / (A * input.Hd);
  if (!(share >= 0.0 && share <= 1.0)) return beyond_quadrant(input.xu, A * input.Hd);
  return B * input.Hd * share * share / (1.0 + std::sqrt(1.0 - share * share));
}

Outcome<double> upstream_single_equation(const QuadrantInput& input) noexcept {
  const double rest = 0.27 - input.xu / input.Hd;
  if (!(rest >= 0.0 && rest <= 0.27)) return beyond_quadrant(input.xu, 0.27 * input.Hd);
  return input.Hd * (0.724 * std::pow(rest, 1.85) + 0.126 - 0.4315 * std::pow(rest, 0.625));
}

double face_inclination(FaceSlope face) noexcept {
  switch (face) {
    case FaceSlope::vertical: break;
    case FaceSlope::slope_3_to_1: return std::atan(3.0);
    case FaceSlope::slope_3_to_2: return std::atan(1.5);
    case FaceSlope::slope_3_to_3: return std::atan(1.0);
  }
  return std::numbers::pi / 2.0;
}

FaceTangent upstream_face_tangent(double Hd, double inclination) {
  const double end = tangent_parameter(inclination);
  const auto element = [](double t) { return std::hypot(A * std::cos(t), B * std::sin(t)); };
  const double arc = boost::math::quadrature::gauss_kronrod<double, 31>::integrate(element, 0.0, end, 8, 1e-12);
  return {A * Hd * std::sin(end), B * Hd * (1.0 - std::cos(end)), arc * Hd};
}

void crest_upstream_outline(double Hd, FaceSlope face, std::span<CrestPoint> out) noexcept {
  const double start = tangent_parameter(face_inclination(face));
  const double last = static_cast<double>(out.size() - 1);
  double index = 0.0;
  for (CrestPoint& point : out) {
    const double t = start * (1.0 - index / last);
    point = {-A * Hd * std::sin(t), B * Hd * (1.0 - std::cos(t))};
    index += 1.0;
  }
}

void crest_upstream_arcs_outline(double Hd, std::span<CrestPoint> out) noexcept {
  const double last = static_cast<double>(out.size() - 1);
  double index = 0.0;
  for (CrestPoint& point : out) {
    // Dense where the outline is steep: even steps of the angle of a circle through the whole quadrant.
    const double xu = third_end * Hd * std::cos(std::numbers::pi / 2.0 * index / last);
    const auto y = upstream_arcs({.xu = std::max(xu, 0.0), .Hd = Hd});
    point = {-xu, y.value_or(0.0)};
    index += 1.0;
  }
}

namespace record {
namespace {
constexpr Symbol head_in[] = {{"Hd", "design head", dimension::length, above_zero}};
constexpr Symbol quadrant_in[] = {{"xu", "distance upstream of the crest axis", dimension::length, {0.0, no_limit}},
                                  {"Hd", "design head", dimension::length, above_zero}};
constexpr Symbol quadrant_out[] = {{"y", "depth below the crest", dimension::length, {0.0, no_limit}}};
constexpr Symbol radii_out[] = {{"R1", "radius of the arc at the axis", dimension::length, above_zero},
                                {"R2", "radius of the second arc", dimension::length, above_zero},
                                {"R3", "radius of the arc at the face", dimension::length, above_zero},
                                {"x1", "end of the first arc upstream of the axis", dimension::length, above_zero},
                                {"x2", "end of the second arc upstream of the axis", dimension::length, above_zero},
                                {"x3", "upstream face upstream of the axis", dimension::length, above_zero}};
constexpr Symbol face_in[] = {{"Hd", "design head", dimension::length, above_zero},
                              {"beta",
                               "inclination of the upstream face above the horizontal",
                               dimension::none,
                               {0.785, 1.5707963267948966},
                               1.5707963267948966,
                               {0.01, 1.5707963267948966}}};
constexpr Symbol face_out[] = {{"xt", "tangent point upstream of the crest axis", dimension::length, above_zero},
                               {"yt", "tangent point below the crest", dimension::length, above_zero}};
constexpr Symbol length_out[] = {
    {"L", "length of the upstream quadrant from the face to the crest axis", dimension::length, above_zero}};
constexpr const char* deep = "For a deep approach. On crests lower than about 1 to 2 Hd the ellipse is smaller.";
}  // namespace

const Method upstream_arcs_radii{
    .id = "crest.upstream_arcs.three_arcs",
    .title = "Radii and ends of the three arcs upstream of the crest axis, vertical face",
    .equation = "R1 = 0.5*Hd; R2 = 0.2*Hd; R3 = 0.04*Hd; x1 = 0.175*Hd; x2 = 0.276*Hd; x3 = 0.2818*Hd",
    .inputs = head_in,
    .outputs = radii_out,
    .source = "hdc_111",
    .place = "sheets 111-1 and 111-2/1; the third arc removes the break at the face",
    .provenance = Provenance::memory,
    .accuracy = "by definition of the shape; the arcs meet without a break",
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      const double Hd = in[0];
      const double values[] = {0.5 * Hd, 0.2 * Hd, 0.04 * Hd, first_end * Hd, second_end * Hd, third_end * Hd};
      std::copy(std::begin(values), std::end(values), out.begin());
      return {};
    }};

const Method upstream_quadrant_arcs{
    .id = "crest.upstream_quadrant.three_arcs",
    .title = "Upstream quadrant of the ogee crest of three arcs, vertical face",
    .equation =
        "a = min(xu/Hd, 0.175); b = min(max(xu/Hd, 0.175), 0.276); c = max(xu/Hd, 0.276); "
        "y = Hd*(a^2/(0.5 + sqrt(0.25 - a^2)) + sqrt(0.04 - 0.07^2) - sqrt(0.04 - (b - 0.105)^2)"
        " + sqrt(0.04^2 - 0.0342^2) - sqrt(max(0.04^2 - (c - 0.2418)^2, 0)))",
    .inputs = quadrant_in,
    .outputs = quadrant_out,
    .source = "hdc_111",
    .place = "sheet 111-2/1",
    .provenance = Provenance::memory,
    .accuracy = "by definition of the shape",
    .evaluate = [](std::span<const double> in, std::span<double> out) {
      return store(upstream_arcs({.xu = in[0], .Hd = in[1]}), out);
    }};

const Method upstream_quadrant_ellipse{.id = "crest.upstream_quadrant.ellipse",
                                       .title = "Upstream quadrant of the ogee crest as an ellipse",
                                       .equation = "s = xu/(0.28*Hd); y = 0.165*Hd*s^2/(1 + sqrt(1 - s^2))",
                                       .inputs = quadrant_in,
                                       .outputs = quadrant_out,
                                       .source = "is_6934_1998",
                                       .place = "half axes seen in a published crest computation after the standard",
                                       .provenance = Provenance::seen,
                                       .accuracy = "by definition of the shape",
                                       .remarks = deep,
                                       .evaluate = [](std::span<const double> in, std::span<double> out) {
                                         return store(upstream_ellipse({.xu = in[0], .Hd = in[1]}), out);
                                       }};

const Method upstream_quadrant_equation{.id = "crest.upstream_quadrant.single_equation",
                                        .title = "Upstream quadrant of the ogee crest by one equation, vertical face",
                                        .equation = "r = 0.27 - xu/Hd; y = Hd*(0.724*r^1.85 + 0.126 - 0.4315*r^0.625)",
                                        .inputs = quadrant_in,
                                        .outputs = quadrant_out,
                                        .source = "em1603_1990",
                                        .place = "crest shape of the 1970s",
                                        .provenance = Provenance::memory,
                                        .accuracy = "0.0001 Hd at the axis, where it should be zero",
                                        .evaluate = [](std::span<const double> in, std::span<double> out) {
                                          return store(upstream_single_equation({.xu = in[0], .Hd = in[1]}), out);
                                        }};

const Method upstream_tangent_ellipse{
    .id = "crest.upstream_tangent.ellipse",
    .title = "Tangent point of an inclined upstream face with the elliptical quadrant",
    .equation = "t = atan(0.28/0.165*tan(beta)); xt = 0.28*Hd*sin(t); yt = 0.165*Hd*(1 - cos(t))",
    .inputs = face_in,
    .outputs = face_out,
    .source = "momentum",
    .place = "slope of the ellipse set equal to that of the face; rule seen in teaching notes after IS 6934",
    .provenance = Provenance::derived,
    .accuracy = "exact",
    .remarks = deep,
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      const FaceTangent tangent = upstream_face_tangent(in[0], in[1]);
      out[0] = tangent.xu;
      out[1] = tangent.y;
      return {};
    }};

const Method upstream_length_arcs{
    .id = "crest.upstream_length.three_arcs",
    .title = "Length of the upstream quadrant of three arcs, where the boundary layer starts",
    .equation = "L = Hd*(0.5*asin(0.35) + 0.2*(asin(0.855) - asin(0.35)) + 0.04*(pi/2 - asin(0.855)))",
    .inputs = head_in,
    .outputs = length_out,
    .source = "momentum",
    .place = "geometry of the three arcs",
    .provenance = Provenance::derived,
    .accuracy = "exact",
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      const double first = std::asin(0.35);
      const double second = std::asin(0.855);
      out[0] = in[0] * (0.5 * first + 0.2 * (second - first) + 0.04 * (std::numbers::pi / 2.0 - second));
      return {};
    }};

const Method upstream_length_ellipse{
    .id = "crest.upstream_length.ellipse",
    .title = "Length of the elliptical upstream quadrant from the face to the crest axis",
    .kind = EquationKind::procedure,
    .equation = "Integral of the root of (0.28 cos t)^2 + (0.165 sin t)^2 from t = 0 to the tangent of the face, times Hd.",
    .inputs = face_in,
    .outputs = length_out,
    .source = "momentum",
    .place = "geometry of the ellipse",
    .provenance = Provenance::derived,
    .accuracy = "quadrature to 1e-10",
    .remarks = deep,
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      out[0] = upstream_face_tangent(in[0], in[1]).arc_length;
      return {};
    }};

}  // namespace record
}  // namespace quell::hydraulics
