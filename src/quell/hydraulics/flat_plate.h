// The boundary layer on a flat plate along the flow, and its drag: laminar, turbulent smooth and fully rough.
//
// x from the leading edge, Re = U x/nu. The layer turns turbulent at Re of about 5e5 in the usual stream, up to 3e6 in a very
// quiet one. Coefficients are local (cf) or means over the length L (CF) on one side.
#pragma once

#include "quell/base/method.h"

namespace quell::hydraulics {

struct PlateFlow {
  double U;   ///< free velocity, m/s, > 0
  double x;   ///< distance from the leading edge, m, > 0
  double nu;  ///< kinematic viscosity, m2/s, > 0
};
struct PlateLayer {
  double delta;  ///< thickness of the layer, m
  double cf;     ///< local coefficient of friction: wall shear over rho U^2/2
};
/// Blasius: delta = 5 x/sqrt(Re), cf = 0.664/sqrt(Re).
PlateLayer laminar_layer(const PlateFlow& flow) noexcept;
/// Smooth turbulent: delta = 0.22 x/Re^(1/6), cf = 0.370/log10(Re)^2.58.
PlateLayer turbulent_layer(const PlateFlow& flow) noexcept;

/// CF = (1.89 + 1.62 log10(L/ks))^-2.5 of a fully rough plate of length L (m) with sand roughness ks (m).
double rough_plate_coefficient(double L, double ks) noexcept;

namespace record {
extern const Method plate_laminar;
extern const Method plate_turbulent;
extern const Method plate_rough;
}  // namespace record

}  // namespace quell::hydraulics
