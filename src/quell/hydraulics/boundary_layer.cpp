#include "quell/hydraulics/boundary_layer.h"

#include <cmath>

#include "quell/base/constants.h"

namespace quell::hydraulics {

double boundary_layer_thickness(const BoundaryLayerInput& input) noexcept {
  return 0.08 * input.L * std::pow(input.L / input.ks, -0.233);
}

double boundary_layer_head_loss(const LayerLossInput& input) noexcept {
  return energy_share * input.delta * input.u * input.u * input.u / (2.0 * gravity * input.q);
}

namespace record {
namespace {
constexpr Symbol layer_in[] = {
    {"L", "length along the bed from the start of the crest's curvature", dimension::length, {0.1, 1000.0}},
    {"ks", "equivalent sand roughness", dimension::length, {1e-5, 0.05}}};
constexpr Symbol layer_out[] = {{"delta", "thickness of the boundary layer", dimension::length, above_zero}};
constexpr Symbol loss_in[] = {{"delta", "thickness of the boundary layer", dimension::length, above_zero},
                              {"u", "potential velocity outside the layer", dimension::velocity, above_zero},
                              {"q", "discharge per unit width", dimension::unit_discharge, above_zero}};
constexpr Symbol loss_out[] = {{"HL", "head lost in the boundary layer", dimension::length, above_zero}};
}  // namespace

const Method boundary_layer_em1603{.id = "chute.boundary_layer.em1603",
                                   .title = "Thickness of the turbulent boundary layer on a spillway",
                                   .equation = "delta = 0.08*L*(L/ks)^(-0.233)",
                                   .inputs = layer_in,
                                   .outputs = layer_out,
                                   .source = "em1603_1990",
                                   .place = "energy loss on overflow spillways, after Campbell, Cox and Boyd (1965)",
                                   .provenance = Provenance::memory,
                                   .accuracy = "other published relations differ by 10 to 35 %",
                                   .remarks = "Valid while the layer is thinner than the flow.",
                                   .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                     if (!(in[0] > 0.0 && in[1] > 0.0)) return no_answer("L and ks must be above zero");
                                     out[0] = boundary_layer_thickness({.L = in[0], .ks = in[1]});
                                     return {};
                                   }};

const Method boundary_layer_head_loss{.id = "chute.head_loss.em1603",
                                      .title = "Head lost in the boundary layer, by its energy thickness",
                                      .equation = "HL = 0.22*delta*u^3/(2*g*q)",
                                      .inputs = loss_in,
                                      .outputs = loss_out,
                                      .source = "em1603_1990",
                                      .place = "energy thickness 0.22 delta",
                                      .provenance = Provenance::memory,
                                      .accuracy = "the share 0.22 agrees within 2 % with a velocity profile of exponent 0.22",
                                      .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                        if (!(in[2] > 0.0)) return no_answer("q must be above zero");
                                        out[0] = hydraulics::boundary_layer_head_loss({.delta = in[0], .u = in[1], .q = in[2]});
                                        return {};
                                      }};

}  // namespace record
}  // namespace quell::hydraulics
