#include "quell/hydraulics/best_sections.h"

#include <cmath>
#include <numbers>

#include "quell/base/roots.h"

namespace quell::hydraulics {

BestSection best_rectangle(double A) noexcept {
  return best_trapezoid(A, 0.0);
}

BestSection best_trapezoid(double A, double m) noexcept {
  const double side = std::sqrt(1.0 + m * m);
  const double y = std::sqrt(A / (2.0 * side - m));
  return {.y = y, .b = 2.0 * (side - m) * y, .P = 2.0 * (2.0 * side - m) * y};
}

BestSection best_triangle(double A) noexcept {
  const double y = std::sqrt(A);
  return {.y = y, .b = 0.0, .P = 2.0 * std::numbers::sqrt2 * y};
}

double fullest_velocity_depth(double D) {
  // tan(phi) = phi, phi the angle under which the surface is seen from the axis; its first root above pi, to the last digit.
  constexpr double phi = 4.493409457909064175;
  return D * (1.0 - std::cos(phi / 2.0)) / 2.0;
}

Outcome<double> fullest_discharge_depth(double D, double p) {
  // A^(1 + p)/P^p is greatest.
  const auto slope = [p](double phi) { return (1.0 + p) * (1.0 - std::cos(phi)) * phi - p * (phi - std::sin(phi)); };
  const auto phi = find_root(slope, std::numbers::pi, 2.0 * std::numbers::pi, 1e-15);
  if (!phi) return phi;
  return D * (1.0 - std::cos(*phi / 2.0)) / 2.0;
}

Outcome<BestSection> trapezoid_of(const SectionSize& size) noexcept {
  const double k = 2.0 * std::sqrt(1.0 + size.m * size.m) - size.m;  // A = (P - k y) y
  const double under_root = size.P * size.P - 4.0 * k * size.A;
  if (under_root < 0.0)
    return bad_input("P", size.P, 2.0 * std::sqrt(k * size.A), no_limit, "a shorter perimeter cannot hold the area");
  const double y = 2.0 * size.A / (size.P + std::sqrt(under_root));
  const double b = size.A / y - size.m * y;
  if (b < 0.0) return no_answer("a trapezoid with these side slopes would have a bottom width below zero");
  return BestSection{.y = y, .b = b, .P = size.P};
}

namespace record {
namespace {
constexpr Symbol area_in[] = {{"A", "area of flow", dimension::area, above_zero}};
constexpr Symbol trapezoid_in[] = {{"A", "area of flow", dimension::area, above_zero},
                                   {"m", "side slope, horizontal to 1 vertical", dimension::none, {0.0, no_limit}}};
constexpr Symbol circle_in[] = {{"D", "diameter", dimension::length, above_zero}};
constexpr Symbol law_in[] = {
    {"D", "diameter", dimension::length, above_zero},
    {"p", "power of the hydraulic radius in the law of friction: 1/2 Chezy, 2/3 Manning", dimension::none, {0.4, 0.8}}};
constexpr Symbol size_in[] = {{"A", "area of flow", dimension::area, above_zero},
                              {"P", "wetted perimeter", dimension::length, above_zero},
                              {"m", "side slope, horizontal to 1 vertical", dimension::none, {0.0, no_limit}}};
constexpr Symbol best_out[] = {{"y", "depth", dimension::length, above_zero},
                               {"b", "bottom width", dimension::length, {0.0, no_limit}},
                               {"P", "wetted perimeter", dimension::length, above_zero}};
constexpr Symbol triangle_out[] = {{"y", "depth", dimension::length, above_zero},
                                   {"P", "wetted perimeter", dimension::length, above_zero}};
constexpr Symbol circle_out[] = {{"r", "radius, which is the depth", dimension::length, above_zero},
                                 {"P", "wetted perimeter", dimension::length, above_zero}};
constexpr Symbol depth_out[] = {{"y", "depth above the invert", dimension::length, above_zero}};
constexpr Symbol size_out[] = {{"b", "bottom width", dimension::length, {0.0, no_limit}},
                               {"y", "depth", dimension::length, above_zero}};

void fill(const BestSection& best, std::span<double> out) {
  out[0] = best.y;
  out[1] = best.b;
  out[2] = best.P;
}
constexpr auto least_perimeter = "least wetted perimeter for the area";
}  // namespace

const Method best_rectangle{.id = "section.best.rectangular",
                            .title = "Most efficient rectangle of a given area",
                            .equation = "y = sqrt(A/2); b = 2*y; P = 4*y",
                            .inputs = area_in,
                            .outputs = best_out,
                            .source = "momentum",
                            .place = least_perimeter,
                            .provenance = Provenance::derived,
                            .accuracy = "exact",
                            .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                              fill(hydraulics::best_rectangle(in[0]), out);
                              return {};
                            }};

const Method best_triangle{.id = "section.best.triangular",
                           .title = "Most efficient triangle of a given area: sides at 45 degrees",
                           .equation = "y = sqrt(A); P = 2*sqrt(2)*y",
                           .inputs = area_in,
                           .outputs = triangle_out,
                           .source = "momentum",
                           .place = least_perimeter,
                           .provenance = Provenance::derived,
                           .accuracy = "exact",
                           .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                             const auto best = hydraulics::best_triangle(in[0]);
                             out[0] = best.y;
                             out[1] = best.P;
                             return {};
                           }};

const Method best_trapezoid{
    .id = "section.best.trapezoidal",
    .title = "Most efficient trapezoid of a given area and side slope",
    .equation =
        "y = sqrt(A/(2*sqrt(1 + m^2) - m)); b = 2*(sqrt(1 + m^2) - m)*y; "
        "P = 2*(2*sqrt(1 + m^2) - m)*y",
    .inputs = trapezoid_in,
    .outputs = best_out,
    .source = "momentum",
    .place = least_perimeter,
    .provenance = Provenance::derived,
    .accuracy = "exact",
    .remarks = "The best of all side slopes is 1/sqrt(3), 60 degrees to the horizontal: half a hexagon.",
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      fill(hydraulics::best_trapezoid(in[0], in[1]), out);
      return {};
    }};

const Method best_semicircle{.id = "section.best.semicircular",
                             .title = "Half circle of a given area, the most efficient of all sections",
                             .equation = "r = sqrt(2*A/pi); P = pi*r",
                             .inputs = area_in,
                             .outputs = circle_out,
                             .source = "momentum",
                             .place = least_perimeter,
                             .provenance = Provenance::derived,
                             .accuracy = "exact",
                             .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                               out[0] = std::sqrt(2.0 * in[0] / std::numbers::pi);
                               out[1] = std::numbers::pi * out[0];
                               return {};
                             }};

const Method fullest_velocity{
    .id = "section.greatest_velocity.circular",
    .title = "Depth at which a circular conduit flows fastest",
    .kind = EquationKind::residual,
    .equation = "2*acos(1 - 2*y/D)*(1 - cos(2*acos(1 - 2*y/D))) = 2*acos(1 - 2*y/D) - sin(2*acos(1 - 2*y/D))",
    .inputs = circle_in,
    .outputs = depth_out,
    .source = "momentum",
    .place = "greatest hydraulic radius, whatever the law of friction",
    .provenance = Provenance::derived,
    .accuracy = "exact",
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      out[0] = fullest_velocity_depth(in[0]);
      return {};
    }};

const Method fullest_discharge{.id = "section.greatest_discharge.circular",
                               .title = "Depth at which a circular conduit carries most",
                               .kind = EquationKind::residual,
                               .equation =
                                   "(1 + p)*2*acos(1 - 2*y/D)*(1 - cos(2*acos(1 - 2*y/D))) = "
                                   "p*(2*acos(1 - 2*y/D) - sin(2*acos(1 - 2*y/D)))",
                               .inputs = law_in,
                               .outputs = depth_out,
                               .source = "momentum",
                               .place = "greatest area times the hydraulic radius to the power p",
                               .provenance = Provenance::derived,
                               .accuracy = "solved to 1e-12; so near the crown the surface is not steady",
                               .evaluate = [](std::span<const double> in, std::span<double> out) {
                                 return store(fullest_discharge_depth(in[0], in[1]), out);
                               }};

const Method trapezoid_size{.id = "section.size.area_and_perimeter",
                            .title = "Bottom width and depth of a trapezoid from area and wetted perimeter",
                            .equation = "k = 2*sqrt(1 + m^2) - m; y = 2*A/(P + sqrt(P^2 - 4*k*A)); b = A/y - m*y",
                            .inputs = size_in,
                            .outputs = size_out,
                            .source = "momentum",
                            .place = "geometry; the wider and shallower of the two trapezoids",
                            .provenance = Provenance::derived,
                            .accuracy = "exact",
                            .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                              const auto size = trapezoid_of({.A = in[0], .P = in[1], .m = in[2]});
                              if (!size) return tl::unexpected(size.error());
                              out[0] = size->b;
                              out[1] = size->y;
                              return {};
                            }};

}  // namespace record
}  // namespace quell::hydraulics
