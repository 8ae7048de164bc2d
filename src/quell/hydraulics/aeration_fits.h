// Short relations for the air content of chutes, to hold against the curve: they differ by up to 0.06 in the mean.
//
// theta angle of the bed (rad), q discharge per unit width (m2/s).
#pragma once

#include "quell/base/constants.h"
#include "quell/base/method.h"

namespace quell::hydraulics {

/// Ce = 0.9 sin(theta), below 50 degrees. Chanson.
double equilibrium_air_sine(double theta) noexcept;

/// Ce = 0.75 (sin theta)^0.75. Novak et al. (2007), eq. 4.53.
double equilibrium_air_power(double theta) noexcept;

/// Ce = the smaller of 0.015 theta and 0.45 + 0.0036 theta, theta in degrees, up to 70. Novak et al. (2007), eq. 4.52, changes
/// over at 40 degrees; the lines cross at 39.5, where the smaller is within 0.006 and without a step.
double equilibrium_air_linear(double theta) noexcept;

/// Content at the bed: the smaller of 1.25 theta^3 and 0.65 sin(theta). Novak et al. (2007), eq. 4.54, changes over at
/// 40 degrees; the lines cross at 39.7, where the smaller is within 0.008 and without a step.
double bed_air(double theta) noexcept;

struct SlopeDischarge {
  double theta;  ///< rad
  double q;      ///< m2/s, > 0
};
/// Rough bed: 0.7226 + 0.743 log10(S/q^0.2), S = sin(theta), for S/q^0.2 from 0.16 to 1.4. Straub and Anderson (1958).
double mean_air_rough(const SlopeDischarge& input) noexcept;
/// Smooth bed: 0.5027 (S/q^(2/3))^0.385, for S/q^(2/3) from 0.23 to 2.3. Novak et al. (2007), eq. 4.45.
double mean_air_smooth(const SlopeDischarge& input) noexcept;

struct FalveyAirInput {
  double V;      ///< m/s, > 0
  double d;      ///< m, > 0
  double theta;  ///< rad
};
/// Falvey (1980): 0.05 F - sqrt(sin theta) We/(63 F), F = V/sqrt(g d), We = V/sqrt(sigma_s/(rho d)), sigma_s = 0.0728 N/m. To
/// be trusted from 0 to 0.6.
double mean_air_falvey(const FalveyAirInput& input) noexcept;

namespace record {
extern const Method equilibrium_air_sine;
extern const Method equilibrium_air_power;
extern const Method equilibrium_air_linear;
extern const Method bed_air;
extern const Method mean_air_rough;
extern const Method mean_air_smooth;
extern const Method mean_air_falvey;
}  // namespace record

}  // namespace quell::hydraulics
