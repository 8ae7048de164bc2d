// The turbulent boundary layer on a spillway face, from the start of the crest's curvature.
//
// Thickness delta by the relation of Campbell, Cox and Boyd (1965), taken up in Engineer Manual 1110-2-1603; displacement
// thickness 0.18 delta, energy thickness 0.22 delta. Valid while delta is less than the depth.
#pragma once

#include "quell/base/method.h"

namespace quell::hydraulics {

struct BoundaryLayerInput {
  double L;   ///< m along the bed from the start of the crest's curvature, > 0
  double ks;  ///< m, > 0
};
/// delta (m) = 0.08 L (L/ks)^-0.233.
double boundary_layer_thickness(const BoundaryLayerInput& input) noexcept;

inline constexpr double displacement_share = 0.18;  ///< displacement thickness over delta
inline constexpr double energy_share = 0.22;        ///< energy thickness over delta

struct LayerLossInput {
  double delta;  ///< m
  double u;      ///< potential velocity, m/s
  double q;      ///< m2/s
};
/// HL (m) = 0.22 delta u^3/(2 g q): head lost up to the section.
double boundary_layer_head_loss(const LayerLossInput& input) noexcept;

namespace record {
extern const Method boundary_layer_em1603;
extern const Method boundary_layer_head_loss;
}  // namespace record

}  // namespace quell::hydraulics
