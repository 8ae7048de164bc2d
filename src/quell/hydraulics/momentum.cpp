#include "quell/hydraulics/momentum.h"

namespace quell::hydraulics::record {
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
constexpr Symbol unit_width_out[] = {{"M", "momentum function per unit width", dimension::area, above_zero}};
constexpr Symbol section_out[] = {{"M", "momentum function", dimension::momentum_function, above_zero}};
constexpr Text place = "pressure and momentum over the unit weight, horizontal bed, momentum coefficient 1";
}  // namespace

const Method momentum_function_rectangular{.id = "section.momentum_function.rectangular",
                                           .title = "Momentum function in a rectangular section, per unit width",
                                           .equation = "M = q^2/(g*y) + y^2/2",
                                           .inputs = unit_width_in,
                                           .outputs = unit_width_out,
                                           .source = "momentum",
                                           .place = place,
                                           .provenance = Provenance::derived,
                                           .accuracy = "exact",
                                           .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                             out[0] = momentum_function(Trapezoid{1.0, 0.0}, in[0], in[1]);
                                             return {};
                                           }};

const Method momentum_function_trapezoidal{.id = "section.momentum_function.trapezoidal",
                                           .title = "Momentum function in a trapezoidal section",
                                           .equation = "M = Q^2/(g*(b + m*y)*y) + b*y^2/2 + m*y^3/3",
                                           .inputs = trapezoid_in,
                                           .outputs = section_out,
                                           .source = "momentum",
                                           .place = place,
                                           .provenance = Provenance::derived,
                                           .accuracy = "exact",
                                           .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                             if (!(in[0] + in[1] > 0.0))
                                               return no_answer("a section without width or slope holds no water");
                                             out[0] = momentum_function(Trapezoid{in[0], in[1]}, in[2], in[3]);
                                             return {};
                                           }};

const Method momentum_function_circular{.id = "section.momentum_function.circular",
                                        .title = "Momentum function in a circular section",
                                        .equation =
                                            "phi = acos(1 - 2*y/D); A = D^2*(phi - sin(phi)*cos(phi))/4; "
                                            "M = Q^2/(g*A) + D^3/24*(3*sin(phi) - sin(phi)^3 - 3*phi*cos(phi))",
                                        .inputs = circle_in,
                                        .outputs = section_out,
                                        .source = "momentum",
                                        .place = place,
                                        .provenance = Provenance::derived,
                                        .accuracy = "exact",
                                        .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                          if (!(in[2] <= in[0]))
                                            return bad_input("y", in[2], above_zero.lowest, in[0],
                                                             "a free surface lies inside the circle");
                                          out[0] = momentum_function(Circle{in[0]}, in[1], in[2]);
                                          return {};
                                        }};

}  // namespace quell::hydraulics::record
