// Friction factors without iteration, and the ways between Darcy's factor, Manning's n and Chezy's coefficient.
//
// R hydraulic radius (m), ks equivalent sand roughness (m), V mean velocity (m/s), Re = 4 R V/nu. The explicit formulas are
// meant for Re from 5e3 to 1e8 and ks/(4 R) below 0.05.
#pragma once

#include "quell/hydraulics/friction.h"

namespace quell::hydraulics {

/// Haaland (1983): f = (-1.8 log10((ks/(14.8 R))^1.11 + 6.9/Re))^-2; within 2 % of Colebrook.
double friction_factor_haaland(const FrictionInput& input) noexcept;

/// Swamee and Jain (1976): f = 0.25/(log10(ks/(14.8 R) + 5.74/Re^0.9))^2; within 1 to 3 % of Colebrook.
double friction_factor_swamee_jain(const FrictionInput& input) noexcept;

/// f = 8 g n^2/R^(1/3), n in s/m^(1/3).
double friction_factor_from_manning(const ManningConversion& input) noexcept;

struct DarcyConversion {
  double f;  ///< > 0
  double R;  ///< m, > 0
};
/// n (s/m^(1/3)) = R^(1/6) sqrt(f/(8 g)).
double manning_from_friction_factor(const DarcyConversion& input) noexcept;

/// n (s/m^(1/3)) = ks^(1/6)/26.4, ks in m, for R/ks from 5 to 500. On chutes R/ks is often above 1000, where n is higher.
double manning_from_strickler(double ks) noexcept;

struct RoughRadius {
  double R;   ///< m, > 0
  double ks;  ///< m, > 0, below 12.2 R
};
/// Chezy's coefficient V/sqrt(R Sf) (m^(1/2)/s) of fully rough flow: 32.6 log10(12.2 R/ks) in ft.
double chezy_rough(const RoughRadius& input) noexcept;

namespace record {
extern const Method friction_factor_haaland;
extern const Method friction_factor_swamee_jain;
extern const Method friction_factor_manning;
extern const Method manning_darcy;
extern const Method manning_strickler;
extern const Method chezy_em1601;
}  // namespace record

}  // namespace quell::hydraulics
