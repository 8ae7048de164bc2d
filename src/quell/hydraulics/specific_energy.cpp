#include "quell/hydraulics/specific_energy.h"

#include <algorithm>

#include "quell/hydraulics/energy.h"

namespace quell::hydraulics {

Outcome<AlternateDepths> alternate_depths(double q, double E) {
  const auto supercritical = supercritical_depth({.q = q, .E = E});
  if (!supercritical) return tl::unexpected(supercritical.error());
  // The sine of half the angle keeps the digits that 1 - 27 q^2/(4 g E^3) would lose for a thin flow.
  const double half = std::asin(std::min(1.0, std::sqrt(27.0 * q * q / (8.0 * gravity * E * E * E))));
  return AlternateDepths{.subcritical = E / 3.0 * (1.0 + 2.0 * std::cos(2.0 * half / 3.0)), .supercritical = *supercritical};
}

namespace record {
namespace {
constexpr Symbol unit_width_in[] = {{"q", "discharge per unit width", dimension::unit_discharge, above_zero},
                                    {"y", "depth", dimension::length, above_zero}};
constexpr Symbol trapezoid_in[] = {{"b", "bottom width", dimension::length, {0.0, no_limit}},
                                   {"m", "side slope, horizontal to 1 vertical", dimension::none, {0.0, no_limit}},
                                   {"Q", "discharge", dimension::discharge, above_zero},
                                   {"y", "depth", dimension::length, above_zero}};
constexpr Symbol circle_in[] = {{"D", "diameter", dimension::length, above_zero},
                                {"Q", "discharge", dimension::discharge, above_zero},
                                {"y", "depth", dimension::length, above_zero}};
constexpr Symbol energy_in[] = {{"q", "discharge per unit width", dimension::unit_discharge, above_zero},
                                {"E", "specific energy", dimension::length, above_zero}};
constexpr Symbol energy_out[] = {{"E", "specific energy", dimension::length, above_zero}};
constexpr Symbol froude_out[] = {{"F", "Froude number with the hydraulic depth A/T", dimension::none, above_zero}};
constexpr Symbol depths_out[] = {{"ysub", "subcritical depth", dimension::length, above_zero},
                                 {"ysup", "supercritical depth", dimension::length, above_zero}};

constexpr std::string_view inside_the_circle = "a free surface lies inside the circle";
constexpr std::string_view no_section = "a section without width or slope holds no water";
}  // namespace

const Method specific_energy_rectangular{.id = "section.specific_energy.rectangular",
                                         .title = "Specific energy in a rectangular section",
                                         .equation = "E = y + q^2/(2*g*y^2)",
                                         .inputs = unit_width_in,
                                         .outputs = energy_out,
                                         .source = "momentum",
                                         .place = "energy over the bed, bed slope below 0.1, energy coefficient 1",
                                         .provenance = Provenance::derived,
                                         .accuracy = "exact",
                                         .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                           out[0] = specific_energy(Trapezoid{1.0, 0.0}, in[0], in[1]);
                                           return {};
                                         }};

const Method specific_energy_trapezoidal{.id = "section.specific_energy.trapezoidal",
                                         .title = "Specific energy in a trapezoidal section",
                                         .equation = "E = y + Q^2/(2*g*((b + m*y)*y)^2)",
                                         .inputs = trapezoid_in,
                                         .outputs = energy_out,
                                         .source = "momentum",
                                         .place = "energy over the bed, bed slope below 0.1, energy coefficient 1",
                                         .provenance = Provenance::derived,
                                         .accuracy = "exact",
                                         .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                           if (!(in[0] + in[1] > 0.0)) return no_answer(no_section);
                                           out[0] = specific_energy(Trapezoid{in[0], in[1]}, in[2], in[3]);
                                           return {};
                                         }};

const Method specific_energy_circular{
    .id = "section.specific_energy.circular",
    .title = "Specific energy in a circular section",
    .equation = "phi = acos(1 - 2*y/D); A = D^2*(phi - sin(phi)*cos(phi))/4; E = y + Q^2/(2*g*A^2)",
    .inputs = circle_in,
    .outputs = energy_out,
    .source = "momentum",
    .place = "energy over the invert, slope below 0.1, energy coefficient 1",
    .provenance = Provenance::derived,
    .accuracy = "exact",
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      if (!(in[2] <= in[0])) return bad_input("y", in[2], above_zero.lowest, in[0], inside_the_circle);
      out[0] = specific_energy(Circle{in[0]}, in[1], in[2]);
      return {};
    }};

const Method froude_number_trapezoidal{.id = "flow.froude_number.trapezoidal",
                                       .title = "Froude number in a trapezoidal section",
                                       .equation = "A = (b + m*y)*y; F = Q/A/sqrt(g*A/(b + 2*m*y))",
                                       .inputs = trapezoid_in,
                                       .outputs = froude_out,
                                       .source = "momentum",
                                       .place = "definition with the hydraulic depth: F = 1 where the specific energy is least",
                                       .provenance = Provenance::derived,
                                       .accuracy = "exact",
                                       .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                         if (!(in[0] + in[1] > 0.0)) return no_answer(no_section);
                                         out[0] = hydraulics::froude_number(Trapezoid{in[0], in[1]}, in[2], in[3]);
                                         return {};
                                       }};

const Method froude_number_circular{
    .id = "flow.froude_number.circular",
    .title = "Froude number in a circular section",
    .equation = "phi = acos(1 - 2*y/D); A = D^2*(phi - sin(phi)*cos(phi))/4; F = Q/A/sqrt(g*A/(D*sin(phi)))",
    .inputs = circle_in,
    .outputs = froude_out,
    .source = "momentum",
    .place = "definition with the hydraulic depth: F = 1 where the specific energy is least",
    .provenance = Provenance::derived,
    .accuracy = "exact",
    .remarks = "As the conduit fills, the surface width vanishes and so does F.",
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      if (!(in[2] < in[0])) return bad_input("y", in[2], above_zero.lowest, in[0], inside_the_circle);
      out[0] = hydraulics::froude_number(Circle{in[0]}, in[1], in[2]);
      return {};
    }};

const Method alternate_depths_rectangular{
    .id = "section.alternate_depths.rectangular",
    .title = "The two depths at which a discharge flows with one energy, rectangular section",
    .equation = "psi = 2*asin(sqrt(27*q^2/(8*g*E^3))); ysub = E/3*(1 + 2*cos(psi/3)); ysup = E/3*(1 + 2*cos(psi/3 - 2*pi/3))",
    .inputs = energy_in,
    .outputs = depths_out,
    .source = "momentum",
    .place = "the positive roots of y^3 - E y^2 + q^2/(2 g) = 0",
    .provenance = Provenance::derived,
    .accuracy = "exact",
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      const auto depths = alternate_depths(in[0], in[1]);
      if (!depths) return tl::unexpected(depths.error());
      out[0] = depths->subcritical;
      out[1] = depths->supercritical;
      return {};
    }};

}  // namespace record
}  // namespace quell::hydraulics
