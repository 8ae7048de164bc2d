// Cavitation of chutes: pressures from level and temperature, the index of flow on a bed that may be curved, the velocity at a
// given index, and what the index asks for.
//
// sigma = (p_atm + p_bed - p_v)/(rho V^2/2), p_bed = rho g d cos(theta) + rho d V^2 kappa. Curvature kappa = 1/R of the bed is
// above zero where the bed is concave (the flow presses on it) and below where convex. V is the mean velocity; the velocity
// outside the boundary layer is on the safe side.
#pragma once

#include <span>

#include "quell/base/constants.h"
#include "quell/base/method.h"

namespace quell::hydraulics {

/// p_atm (Pa) at z metres above the sea, -1000 to 11 000: the standard atmosphere.
double atmospheric_pressure(double z) noexcept;

/// p_v (Pa) of water at T degrees Celsius, 0 to 50: Tetens' formula in the constants of Murray (1967), within 0.3 %.
double vapour_pressure(double T) noexcept;

struct ChuteCavitationInput {
  double V;            ///< m/s, > 0
  double d;            ///< depth normal to the bed, m, >= 0
  double theta;        ///< rad
  double z;            ///< level above the sea, m
  double T;            ///< temperature of the water, degrees Celsius
  double kappa = 0.0;  ///< curvature of the bed, 1/m, + concave, - convex
};
/// Below zero where the flow would leave a convex bed that strains below vapour pressure.
double chute_cavitation_index(const ChuteCavitationInput& input) noexcept;

struct IndexVelocityInput {
  double sigma;  ///< > 0
  double d;      ///< m
  double theta;  ///< rad
  double z;      ///< m
  double T;      ///< degrees Celsius
};
/// V (m/s) at which a straight bed has this index.
double velocity_at_cavitation_index(const IndexVelocityInput& input) noexcept;

/// What Falvey (1990) asks for, from the mildest to the most severe.
enum class CavitationClass { nothing, surface_finish, profile_or_finish, aeration, other_layout };

struct CavitationRow {
  CavitationClass of;
  double least_sigma;  ///< the class holds from here up to the row before
  std::string_view action;
};
/// The five classes, highest index first: 1.8, 0.25, 0.17, 0.12 and whatever is below.
std::span<const CavitationRow> cavitation_table() noexcept;
const CavitationRow& cavitation_row(double sigma) noexcept;

/// Falvey's flow-surface tolerances.
struct SurfaceTolerance {
  int number;     ///< 1, 2 or 3 (the finest); 4: none is enough
  double offset;  ///< largest abrupt offset, m; 0 for number 4
  double slope;   ///< steepest gradual change, height over length; 0 for number 4
  std::string_view action;
};
/// Tolerance that the index asks for. Not aerated: 1 above 0.60, 2 above 0.40, 3 above 0.20. Aerated: 1 above 0.20, 2 above
/// 0.10.
const SurfaceTolerance& surface_tolerance(double sigma, bool aerated) noexcept;

namespace record {
extern const Method atmospheric_pressure;
extern const Method vapour_pressure;
extern const Method chute_cavitation_index;
extern const Method cavitation_velocity;
extern const Method cavitation_class;
extern const Method surface_tolerance;
}  // namespace record

}  // namespace quell::hydraulics
