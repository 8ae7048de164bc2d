#include "quell/hydraulics/section_shapes.h"

#include <cmath>

namespace quell::hydraulics {

double PowerSection::top_width(double y) const {
  return Tr * std::pow(y / yr, a - 1.0);
}

Outcome<double> critical_depth(const PowerSection& section, double discharge) {
  const auto& [a, Tr, yr] = section;
  if (!(discharge > 0.0) || !(a >= 1.0) || !(Tr > 0.0) || !(yr > 0.0))
    return no_answer("critical depth needs a discharge above zero and a section that opens upward");
  return yr * std::pow(a * a * a * discharge * discharge / (gravity * Tr * Tr * yr * yr * yr), 1.0 / (2.0 * a + 1.0));
}

namespace record {
namespace {
constexpr Symbol trapezoid_in[] = {{"b", "bottom width", dimension::length, {0.0, no_limit}},
                                   {"m", "side slope, horizontal to 1 vertical", dimension::none, {0.0, no_limit}},
                                   {"y", "depth", dimension::length, above_zero}};
constexpr Symbol circle_in[] = {{"D", "diameter", dimension::length, above_zero},
                                {"y", "depth", dimension::length, above_zero}};
constexpr Symbol power_in[] = {{"a", "exponent: 1 rectangle, 1.5 parabola, 2 triangle", dimension::none, {1.0, 3.0}, 1.5},
                               {"Tr", "surface width at the depth yr", dimension::length, above_zero},
                               {"yr", "depth at which the width is Tr", dimension::length, above_zero, 1.0},
                               {"y", "depth", dimension::length, above_zero}};
constexpr Symbol geometry_out[] = {
    {"A", "area", dimension::area, {0.0, no_limit}},
    {"T", "surface width", dimension::length, {0.0, no_limit}},
    {"P", "wetted perimeter", dimension::length, {0.0, no_limit}},
    {"Aybar", "first moment: area times depth of its centroid", dimension::volume, {0.0, no_limit}}};
constexpr Symbol power_out[] = {geometry_out[0], geometry_out[1], geometry_out[3]};
constexpr Symbol triangle_discharge_in[] = {{"m", "side slope, horizontal to 1 vertical", dimension::none, above_zero},
                                            {"Q", "discharge", dimension::discharge, above_zero}};
constexpr Symbol power_discharge_in[] = {power_in[0], power_in[1], power_in[2], triangle_discharge_in[1]};
constexpr Symbol yc_out[] = {{"yc", "critical depth", dimension::length, above_zero}};
}  // namespace

const Method section_geometry_trapezoidal{
    .id = "section.geometry.trapezoidal",
    .title = "Area, surface width, wetted perimeter and first moment of a trapezoidal section",
    .equation = "A = (b + m*y)*y; T = b + 2*m*y; P = b + 2*y*sqrt(1 + m^2); Aybar = b*y^2/2 + m*y^3/3",
    .inputs = trapezoid_in,
    .outputs = geometry_out,
    .source = "momentum",
    .place = "geometry; the first moment is the area integrated over the depth",
    .provenance = Provenance::derived,
    .accuracy = "exact",
    .remarks = "m = 0 is a rectangle, b = 0 a triangle.",
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      const Trapezoid section{in[0], in[1]};
      if (!(section.b + section.m > 0.0)) return no_answer("a section without width or slope holds no water");
      out[0] = section.area(in[2]);
      out[1] = section.top_width(in[2]);
      out[2] = section.perimeter(in[2]);
      out[3] = section.first_moment(in[2]);
      return {};
    }};

const Method section_geometry_circular{
    .id = "section.geometry.circular",
    .title = "Area, surface width, wetted perimeter and first moment of a circular section",
    .equation =
        "phi = acos(1 - 2*y/D); A = D^2*(phi - sin(phi)*cos(phi))/4; T = D*sin(phi); P = D*phi; "
        "Aybar = D^3/24*(3*sin(phi) - sin(phi)^3 - 3*phi*cos(phi))",
    .inputs = circle_in,
    .outputs = geometry_out,
    .source = "momentum",
    .place = "geometry; phi is half the angle of the wetted arc",
    .provenance = Provenance::derived,
    .accuracy = "exact",
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      const Circle section{in[0]};
      if (!(in[1] <= section.D))
        return bad_input("y", in[1], above_zero.lowest, section.D, "a free surface lies inside the circle");
      out[0] = section.area(in[1]);
      out[1] = section.top_width(in[1]);
      out[2] = section.perimeter(in[1]);
      out[3] = section.first_moment(in[1]);
      return {};
    }};

const Method section_geometry_power_law{
    .id = "section.geometry.power_law",
    .title = "Area, surface width and first moment of a section whose width follows a power of the depth",
    .equation = "T = Tr*(y/yr)^(a - 1); A = T*y/a; Aybar = A*y/(a + 1)",
    .inputs = power_in,
    .outputs = power_out,
    .source = "momentum",
    .place = "geometry; the first moment is the area integrated over the depth",
    .provenance = Provenance::derived,
    .accuracy = "exact",
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      const PowerSection section{.a = in[0], .Tr = in[1], .yr = in[2]};
      out[0] = section.area(in[3]);
      out[1] = section.top_width(in[3]);
      out[2] = section.first_moment(in[3]);
      return {};
    }};

const Method critical_depth_triangular{.id = "section.critical_depth.triangular",
                                       .title = "Critical depth in a triangular section",
                                       .equation = "yc = (2*Q^2/(g*m^2))^(1/5)",
                                       .inputs = triangle_discharge_in,
                                       .outputs = yc_out,
                                       .source = "momentum",
                                       .place = "least specific energy at given discharge, energy coefficient 1",
                                       .provenance = Provenance::derived,
                                       .accuracy = "exact",
                                       .evaluate = [](std::span<const double> in, std::span<double> out) {
                                         return store(critical_depth(PowerSection{.a = 2.0, .Tr = 2.0 * in[0]}, in[1]), out);
                                       }};

const Method critical_depth_power_law{.id = "section.critical_depth.power_law",
                                      .title = "Critical depth in a section whose width follows a power of the depth",
                                      .equation = "yc = yr*(a^3*Q^2/(g*Tr^2*yr^3))^(1/(2*a + 1))",
                                      .inputs = power_discharge_in,
                                      .outputs = yc_out,
                                      .source = "momentum",
                                      .place = "least specific energy at given discharge, energy coefficient 1",
                                      .provenance = Provenance::derived,
                                      .accuracy = "exact",
                                      .evaluate = [](std::span<const double> in, std::span<double> out) {
                                        return store(critical_depth(PowerSection{.a = in[0], .Tr = in[1], .yr = in[2]}, in[3]),
                                                     out);
                                      }};

}  // namespace record
}  // namespace quell::hydraulics
