// Other published relations for the boundary layer of a chute, to hold against the one that the program uses.
#pragma once

#include "quell/hydraulics/boundary_layer.h"

namespace quell::hydraulics {

/// Bauer (1954): delta (m) = 0.024 L (L/ks)^-0.13, from laboratory chutes.
double boundary_layer_bauer(const BoundaryLayerInput& input) noexcept;

struct WoodLayerInput {
  double L;   ///< m, > 0
  double Hs;  ///< drop of the potential head from the start to here, m, > 0: L sin(theta) on a plane
  double ks;  ///< m, > 0
};
/// Wood, Ackers and Loveless (1983): delta (m) = 0.0212 L (L/Hs)^0.11 (L/ks)^-0.10.
double boundary_layer_wood(const WoodLayerInput& input) noexcept;

namespace record {
extern const Method boundary_layer_bauer;
extern const Method boundary_layer_wood;
}  // namespace record

}  // namespace quell::hydraulics
