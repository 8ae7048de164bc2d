#include "quell/hydraulics/flat_plate.h"

#include <cmath>

#include "quell/base/constants.h"

namespace quell::hydraulics {
namespace {
double reynolds(const PlateFlow& flow) {
  return flow.U * flow.x / flow.nu;
}
}  // namespace

PlateLayer laminar_layer(const PlateFlow& flow) noexcept {
  const double root = std::sqrt(reynolds(flow));
  return {.delta = 5.0 * flow.x / root, .cf = 0.664 / root};
}

PlateLayer turbulent_layer(const PlateFlow& flow) noexcept {
  const double Re = reynolds(flow);
  return {.delta = 0.22 * flow.x / std::pow(Re, 1.0 / 6.0), .cf = 0.370 / std::pow(std::log10(Re), 2.58)};
}

double rough_plate_coefficient(double L, double ks) noexcept {
  return std::pow(1.89 + 1.62 * std::log10(L / ks), -2.5);
}

namespace record {
namespace {
constexpr Symbol U_symbol{"U", "free velocity", dimension::velocity, above_zero};
constexpr Symbol x_symbol{"x", "distance from the leading edge", dimension::length, above_zero};
constexpr Symbol rho_symbol{"rho", "density", dimension::density, above_zero, water_density};
constexpr Symbol nu_symbol{"nu", "kinematic viscosity", dimension::kinematic_viscosity, {1e-7, 1e-4}, water_viscosity};
constexpr Symbol plate_in[] = {U_symbol, x_symbol, nu_symbol, rho_symbol};
constexpr Symbol rough_in[] = {U_symbol,
                               {"L", "length of the plate", dimension::length, above_zero},
                               {"ks", "equivalent sand roughness", dimension::length, {1e-6, 0.1}},
                               rho_symbol};
constexpr Symbol layer_out[] = {{"delta", "thickness of the layer", dimension::length, above_zero},
                                {"cf", "local coefficient of friction", dimension::none, above_zero},
                                {"tau", "shear on the wall", dimension::pressure, above_zero}};
constexpr Symbol rough_out[] = {{"CF", "mean coefficient of friction", dimension::none, above_zero},
                                {"tau", "mean shear on the wall, one side", dimension::pressure, above_zero}};

void fill(const PlateLayer& layer, double U, double rho, std::span<double> out) {
  out[0] = layer.delta;
  out[1] = layer.cf;
  out[2] = layer.cf * rho * U * U / 2.0;
}
}  // namespace

const Method plate_laminar{
    .id = "plate.layer.laminar",
    .title = "Laminar boundary layer on a flat plate (Blasius)",
    .equation = "Re = U*x/nu; delta = 5*x/sqrt(Re); cf = 0.664/sqrt(Re); tau = cf*rho*U^2/2",
    .inputs = plate_in,
    .outputs = layer_out,
    .source = "schlichting_1979",
    .place = "ch. 7, flat plate at zero incidence",
    .provenance = Provenance::memory,
    .accuracy = "exact for the local friction; the thickness is where the velocity is 99 % of the free one",
    .condition = [](std::span<const double> in) -> std::string_view {
      return in[0] * in[1] / in[2] <= 5e5 * (1.0 + 1e-12) ? std::string_view{}
                                                          : "Re is above 5e5: the layer is usually turbulent";
    },
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      fill(laminar_layer({.U = in[0], .x = in[1], .nu = in[2]}), in[0], in[3], out);
      return {};
    }};

const Method plate_turbulent{.id = "plate.layer.turbulent",
                             .title = "Turbulent boundary layer on a smooth flat plate",
                             .equation = "Re = U*x/nu; delta = 0.22*x/Re^(1/6); cf = 0.370/log10(Re)^2.58; tau = cf*rho*U^2/2",
                             .inputs = plate_in,
                             .outputs = layer_out,
                             .source = "subramanya_problems",
                             .place = "ch. 8, ex. 8.11: turbulent from the leading edge",
                             .provenance = Provenance::seen,
                             .accuracy = "about 5 %",
                             .condition = [](std::span<const double> in) -> std::string_view {
                               const double Re = in[0] * in[1] / in[2];
                               if (Re < 5e6) return "Re is below 5e6: the laminar start counts";
                               return Re <= 1e9 ? std::string_view{} : "Re is above 1e9: beyond the measurements";
                             },
                             .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                               if (!(in[0] * in[1] / in[2] > 10.0))
                                 return no_answer("Re must be above 10 for the formula to hold at all");
                               fill(turbulent_layer({.U = in[0], .x = in[1], .nu = in[2]}), in[0], in[3], out);
                               return {};
                             }};

const Method plate_rough{.id = "plate.drag.rough",
                         .title = "Mean friction on a fully rough flat plate",
                         .equation = "CF = (1.89 + 1.62*log10(L/ks))^(-2.5); tau = CF*rho*U^2/2",
                         .inputs = rough_in,
                         .outputs = rough_out,
                         .source = "schlichting_1979",
                         .place = "ch. 21, rough plate; also used in ex. 8.17 of the problems book",
                         .provenance = Provenance::seen,
                         .accuracy = "about 5 % while the flow is fully rough",
                         .condition = [](std::span<const double> in) -> std::string_view {
                           const double ratio = in[1] / in[2];
                           return ratio >= 100.0 && ratio <= 1e6 ? std::string_view{} : "L/ks is outside 100 to 1e6";
                         },
                         .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                           if (!(in[1] > in[2]))
                             return bad_input("ks", in[2], above_zero.lowest, in[1],
                                              "roughness is smaller than the plate is long");
                           out[0] = rough_plate_coefficient(in[1], in[2]);
                           out[1] = out[0] * in[3] * in[0] * in[0] / 2.0;
                           return {};
                         }};

}  // namespace record
}  // namespace quell::hydraulics
