#include "quell/hydraulics/section.h"

#include <cmath>
#include <numbers>

#include "quell/base/roots.h"

namespace quell::hydraulics {
namespace {

double half_angle(const Circle& circle, double y) {
  return std::acos(1.0 - 2.0 * y / circle.D);
}

/// Depth above which a trapezoid certainly flows slower than critical or carries more than Q: the wide and the triangular limit
/// added.
double generous_depth(const Trapezoid& section, double per_width, double per_triangle) {
  const double rectangular = section.b > 0.0 ? per_width : 0.0;
  const double triangular = section.m > 0.0 ? per_triangle : 0.0;
  if (section.b <= 0.0) return 2.0 * triangular;
  if (section.m <= 0.0) return 2.0 * rectangular;
  return 2.0 * std::min(rectangular, triangular);
}
}  // namespace

double Trapezoid::perimeter(double y) const {
  return b + 2.0 * y * std::sqrt(1.0 + m * m);
}

double Circle::area(double y) const {
  const double phi = 2.0 * half_angle(*this, y);
  return D * D * (phi - std::sin(phi)) / 8.0;
}
double Circle::top_width(double y) const {
  return D * std::sin(half_angle(*this, y));
}
double Circle::perimeter(double y) const {
  return D * half_angle(*this, y);
}
double Circle::first_moment(double y) const {
  const double half = half_angle(*this, y);
  const double sine = std::sin(half);
  return D * D * D / 24.0 * (3.0 * sine - sine * sine * sine - 3.0 * half * std::cos(half));
}

double critical_depth(double unit_discharge) {
  return std::cbrt(unit_discharge * unit_discharge / gravity);
}

Outcome<double> critical_depth(const Trapezoid& section, double discharge) {
  if (!(discharge > 0.0) || section.b < 0.0 || section.m < 0.0 || !(section.b + section.m > 0.0))
    return no_answer("critical depth needs a discharge above zero and a section that holds water");
  const double rectangular = section.b > 0.0 ? critical_depth(discharge / section.b) : 0.0;
  const double triangular =
      section.m > 0.0 ? std::pow(2.0 * discharge * discharge / (gravity * section.m * section.m), 0.2) : 0.0;
  const double upper = generous_depth(section, rectangular, triangular);
  const auto excess = [&](double y) {
    return discharge * discharge * section.top_width(y) - gravity * std::pow(section.area(y), 3);
  };
  return find_root(excess, upper * 1e-9, upper, upper * 1e-14);
}

Outcome<double> critical_depth(const Circle& section, double discharge) {
  if (!(discharge > 0.0) || !(section.D > 0.0)) return no_answer("critical depth needs a discharge and a diameter above zero");
  // In the angle the equation stays smooth up to the crown, where the surface width vanishes.
  const auto excess = [&](double half) {
    const double area = section.D * section.D * (2.0 * half - std::sin(2.0 * half)) / 8.0;
    return discharge * discharge * section.D * std::sin(half) - gravity * area * area * area;
  };
  const auto half = find_root(excess, 1e-6, std::numbers::pi * (1.0 - 1e-12), 1e-15);
  if (!half) return half;
  return section.D * (1.0 - std::cos(*half)) / 2.0;
}

Outcome<double> normal_depth(const NormalDepthInput& input) {
  const auto& [section, bed_slope, manning_n, discharge] = input;
  if (!(discharge > 0.0) || !(bed_slope > 0.0) || !(manning_n > 0.0) || !(section.b + section.m > 0.0))
    return no_answer("normal depth needs a discharge, a bed slope, a roughness and a section above zero");
  const double conveyance = discharge * manning_n / std::sqrt(bed_slope);  // A R^(2/3)
  const auto carries = [&](double y) {
    const double area = section.area(y);
    return area * std::cbrt(area * area / (section.perimeter(y) * section.perimeter(y))) - conveyance;
  };
  double upper = 1.0;
  while (carries(upper) < 0.0) {
    upper *= 2.0;
    if (upper > 1e9) return no_answer("normal depth is beyond any river");
  }
  return find_root(carries, upper * 1e-12, upper, upper * 1e-15);
}

namespace record {
namespace {
constexpr Symbol q_in[] = {{"q", "discharge per unit width", dimension::unit_discharge, above_zero}};
constexpr Symbol trapezoid_in[] = {{"b", "bottom width", dimension::length, {0.0, no_limit}},
                                   {"m", "side slope, horizontal to 1 vertical", dimension::none, {0.0, no_limit}},
                                   {"Q", "discharge", dimension::discharge, above_zero}};
constexpr Symbol circle_in[] = {{"D", "diameter", dimension::length, above_zero},
                                {"Q", "discharge", dimension::discharge, above_zero}};
constexpr Symbol normal_in[] = {{"b", "bottom width", dimension::length, {0.0, no_limit}},
                                {"m", "side slope, horizontal to 1 vertical", dimension::none, {0.0, no_limit}},
                                {"S", "bed slope", dimension::none, {1e-6, 0.1}},
                                {"n", "Manning's roughness", dimension::manning, {0.008, 0.2}},
                                {"Q", "discharge", dimension::discharge, above_zero}};
constexpr Symbol yc_out[] = {{"yc", "critical depth", dimension::length, above_zero}};
constexpr Symbol yn_out[] = {{"yn", "normal depth", dimension::length, above_zero}};
}  // namespace

const Method critical_depth_rectangular{.id = "section.critical_depth.rectangular",
                                        .title = "Critical depth in a rectangular section",
                                        .equation = "yc = (q^2/g)^(1/3)",
                                        .inputs = q_in,
                                        .outputs = yc_out,
                                        .source = "momentum",
                                        .place = "least specific energy at given discharge, energy coefficient 1",
                                        .provenance = Provenance::derived,
                                        .accuracy = "exact",
                                        .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                          out[0] = critical_depth(in[0]);
                                          return {};
                                        }};

const Method critical_depth_trapezoidal{.id = "section.critical_depth.trapezoidal",
                                        .title = "Critical depth in a trapezoidal section",
                                        .kind = EquationKind::residual,
                                        .equation = "Q^2*(b + 2*m*yc)/g = ((b + m*yc)*yc)^3",
                                        .inputs = trapezoid_in,
                                        .outputs = yc_out,
                                        .source = "momentum",
                                        .place = "least specific energy at given discharge, energy coefficient 1",
                                        .provenance = Provenance::derived,
                                        .accuracy = "solved to 1e-12",
                                        .evaluate = [](std::span<const double> in, std::span<double> out) {
                                          return store(critical_depth(Trapezoid{in[0], in[1]}, in[2]), out);
                                        }};

const Method critical_depth_circular{
    .id = "section.critical_depth.circular",
    .title = "Critical depth in a circular section",
    .kind = EquationKind::residual,
    .equation = "Q^2*D*sin(acos(1 - 2*yc/D))/g = (D^2*(2*acos(1 - 2*yc/D) - sin(2*acos(1 - 2*yc/D)))/8)^3",
    .inputs = circle_in,
    .outputs = yc_out,
    .source = "momentum",
    .place = "least specific energy at given discharge, energy coefficient 1",
    .provenance = Provenance::derived,
    .accuracy = "solved to 1e-12",
    .remarks = "As the section fills, the surface width vanishes and the critical depth only approaches the diameter.",
    .condition = [](std::span<const double> in) -> std::string_view {
      const auto depth = critical_depth(Circle{in[0]}, in[1]);
      if (depth && *depth < 0.95 * in[0]) return {};
      return "critical depth is within 5 % of the crown: the conduit will fill, and free-surface flow is not to be relied on";
    },
    .evaluate = [](std::span<const double> in,
                   std::span<double> out) { return store(critical_depth(Circle{in[0]}, in[1]), out); }};

const Method normal_depth_trapezoidal{.id = "section.normal_depth.trapezoidal",
                                      .title = "Normal depth in a trapezoidal section by Manning's formula",
                                      .kind = EquationKind::residual,
                                      .equation = "Q = (b + m*yn)*yn/n*((b + m*yn)*yn/(b + 2*yn*sqrt(1 + m^2)))^(2/3)*sqrt(S)",
                                      .inputs = normal_in,
                                      .outputs = yn_out,
                                      .source = "chow_1959",
                                      .place = "ch. 5 and 6, uniform flow",
                                      .provenance = Provenance::memory,
                                      .accuracy = "solved to 1e-12; n itself is rarely known better than 15 %",
                                      .evaluate = [](std::span<const double> in, std::span<double> out) {
                                        return store(normal_depth({Trapezoid{in[0], in[1]}, in[2], in[3], in[4]}), out);
                                      }};

}  // namespace record
}  // namespace quell::hydraulics
