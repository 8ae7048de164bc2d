// Wall friction: Darcy-Weisbach with the factor of Colebrook in terms of the hydraulic radius, and the conversion of Manning's
// n.
#pragma once

#include "quell/base/constants.h"
#include "quell/base/method.h"

namespace quell::hydraulics {

struct FrictionInput {
  double ks;  ///< equivalent sand roughness, m, > 0
  double R;   ///< hydraulic radius, m, > 0
  double V;   ///< mean velocity, m/s, > 0
};
/// Darcy's f by Colebrook: 1/sqrt f = -2 log10(ks/(14.84 R) + 2.51/(Re sqrt f)), Re = 4 R V/nu, to 1e-12. Allocates nothing.
/// Valid for 5e3 < Re < 1e9 and ks/(4R) < 0.05.
double friction_factor(const FrictionInput& input) noexcept;

struct FrictionSlopeInput {
  double f;  ///< Darcy's factor
  double V;  ///< m/s
  double R;  ///< m
};
/// Sf = f V^2/(8 g R).
double friction_slope(const FrictionSlopeInput& input) noexcept;

struct ManningConversion {
  double n;  ///< Manning's n, s/m^(1/3), > 0
  double R;  ///< hydraulic radius at which both give the same friction, m, > 0
};
/// ks (m) that gives the friction of n at R in fully rough flow: f = 8 g n^2/R^(1/3), ks = 14.84 R 10^(-1/(2 sqrt f)).
double roughness_height_from_manning(const ManningConversion& input) noexcept;

namespace record {
extern const Method friction_factor_colebrook;
extern const Method friction_slope_darcy;
extern const Method roughness_height_manning;
}  // namespace record

}  // namespace quell::hydraulics
