// Lacey's regime of channels in alluvium: silt factor, the stable channel for a discharge, and the depth of scour.
//
// Empirical, from canals of the Indian plains; SI. f is Lacey's silt factor, 1 for the standard silt of 0.3 mm.
#pragma once

#include "quell/base/method.h"

namespace quell::hydraulics {

/// f = 1.76 sqrt(d/1 mm); d mean size of the bed, m, > 0.
double silt_factor(double d) noexcept;

struct RegimeChannel {
  double V;  ///< mean velocity, m/s
  double A;  ///< area, m2
  double P;  ///< wetted perimeter, m
  double S;  ///< bed slope
};
/// V = (Q f^2/140)^(1/6), P = 4.75 sqrt(Q), S = f^(5/3)/(3340 Q^(1/6)); Q m3/s, > 0.
RegimeChannel regime_channel(double Q, double f) noexcept;

/// R (m below the water surface) = 1.35 (q^2/f)^(1/3); q m2/s. Multiply by 1.25 to 2 for bends and structures.
double regime_scour_depth(double q, double f) noexcept;

namespace record {
extern const Method silt_factor_lacey;
extern const Method regime_channel_lacey;
extern const Method scour_depth_lacey;
}  // namespace record

}  // namespace quell::hydraulics
