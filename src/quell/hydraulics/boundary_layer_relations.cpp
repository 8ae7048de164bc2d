#include "quell/hydraulics/boundary_layer_relations.h"

#include <cmath>

namespace quell::hydraulics {

double boundary_layer_bauer(const BoundaryLayerInput& input) noexcept {
  return 0.024 * input.L * std::pow(input.L / input.ks, -0.13);
}

double boundary_layer_wood(const WoodLayerInput& input) noexcept {
  return 0.0212 * input.L * std::pow(input.L / input.Hs, 0.11) * std::pow(input.L / input.ks, -0.10);
}

namespace record {
namespace {
constexpr Symbol length{"L", "length along the bed from the crest", dimension::length, {0.1, 1000.0}};
constexpr Symbol roughness{"ks", "equivalent sand roughness", dimension::length, {1e-5, 0.05}};
constexpr Symbol bauer_in[] = {length, roughness};
constexpr Symbol wood_in[] = {length, {"Hs", "drop of the potential head to here", dimension::length, above_zero}, roughness};
constexpr Symbol layer_out[] = {{"delta", "thickness of the boundary layer", dimension::length, above_zero}};
}  // namespace

const Method boundary_layer_bauer{.id = "chute.boundary_layer.bauer",
                                  .title = "Thickness of the boundary layer by Bauer",
                                  .equation = "delta = 0.024*L*(L/ks)^(-0.13)",
                                  .inputs = bauer_in,
                                  .outputs = layer_out,
                                  .source = "bauer_1954",
                                  .place = "laboratory chutes",
                                  .provenance = Provenance::memory,
                                  .accuracy = "other published relations differ by 10 to 35 %",
                                  .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                    out[0] = hydraulics::boundary_layer_bauer({.L = in[0], .ks = in[1]});
                                    return {};
                                  }};

const Method boundary_layer_wood{.id = "chute.boundary_layer.wood",
                                 .title = "Thickness of the boundary layer by Wood, Ackers and Loveless",
                                 .equation = "delta = 0.0212*L*(L/Hs)^0.11*(L/ks)^(-0.10)",
                                 .inputs = wood_in,
                                 .outputs = layer_out,
                                 .source = "wood_ackers_loveless_1983",
                                 .place = "any spillway profile; the sign of the exponent 0.11 reproduces their inception",
                                 .provenance = Provenance::memory,
                                 .accuracy = "other published relations differ by 10 to 35 %",
                                 .condition = [](std::span<const double> in) -> std::string_view {
                                   return in[1] < in[0] ? std::string_view{} : "the drop is greater than the length";
                                 },
                                 .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                   out[0] = hydraulics::boundary_layer_wood({.L = in[0], .Hs = in[1], .ks = in[2]});
                                   return {};
                                 }};

}  // namespace record
}  // namespace quell::hydraulics
