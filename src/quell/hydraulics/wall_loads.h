// Loads on a basin's wall beyond still water and earth at rest, and whether an L-shaped wall stands under them: pulses of the
// jump, earthquake in the fill and in the water, overturning, sliding and place of the resultant. Per metre of wall; N, N m,
// Pa. A structural engineer must design the walls.
#pragma once

#include "quell/hydraulics/basin_stability.h"

namespace quell::hydraulics {

struct WallPulseInput {
  double k;   ///< peak over rms, 3 to 5
  double Cp;  ///< rms of the pressure over V^2/2g
  double V;   ///< velocity at the toe, m/s
};
/// p (Pa) = k Cp rho V^2/2: peak of the fluctuation on a wall. Local; both numbers are uncertain.
double wall_pulse(const WallPulseInput& input) noexcept;

/// p (Pa) over the lowest y (m) of a wall: force p y, moment p y^2/2 about the floor.
WaterForce even_pressure_on_wall(double p, double y) noexcept;

struct EarthCoefficientInput {
  double phi;    ///< friction of the fill, rad
  double delta;  ///< friction between fill and wall, rad
  double kh;     ///< horizontal acceleration over g
  double kv;     ///< vertical acceleration over g, upward positive, < 1
};
/// KAE of a vertical wall and a level fill (Mononobe and Okabe); kh = kv = 0 gives Coulomb's active pressure. No answer where
/// the fill itself would slide: atan(kh/(1 - kv)) above phi.
Outcome<double> earth_coefficient_in_earthquake(const EarthCoefficientInput& input);

struct EarthquakeFillInput {
  double dK;           ///< KAE less KA
  double h;            ///< height of the fill, m
  double hw;           ///< water table in it above the floor, m, <= h
  double gamma;        ///< moist unit weight, N/m3
  double gamma_below;  ///< submerged unit weight, N/m3
};
/// What an earthquake adds to the fill's thrust, at 0.6 h: below the table the grains carry the pore water with them.
WaterForce earthquake_in_fill(const EarthquakeFillInput& input) noexcept;

/// Westergaard: water h (m) deep before a rigid upright wall, kh the horizontal acceleration over g.
WaterForce earthquake_in_water(double kh, double h) noexcept;

/// An L-shaped wall: vertical forces with their distance from the edge about which it would turn, that edge being the lower
/// corner on the side to which it is driven. Uplift in a straight line from edge to edge.
struct WallStabilityInput {
  double F, M;    ///< horizontal force (N) and its moment about the floor (N m), > 0 the way it is driven
  double s;       ///< thickness of the base below the floor, m
  double W1, a1;  ///< stem: N, m
  double W3, a3;  ///< earth and water on the heel: N, m
  double W2;      ///< base, N, acting in its middle
  double B;       ///< width of the base, m
  double u1, u2;  ///< uplift at the turning edge and at the far one, Pa
  double phi;     ///< friction of the base, rad
};
struct WallStability {
  double overturning;   ///< resisting over driving moment, 1000 at most
  double sliding;       ///< friction over force
  double eccentricity;  ///< m from the middle of the base towards the turning edge
  double normal;        ///< N
};
/// No answer where nothing drives the wall, or the uplift carries it.
Outcome<WallStability> wall_stability(const WallStabilityInput& input);

namespace record {
extern const Method wall_pulse;
extern const Method even_pressure_on_wall;
extern const Method earth_coefficient_in_earthquake;
extern const Method earthquake_in_fill;
extern const Method earthquake_in_water;
extern const Method wall_stability;
}  // namespace record

}  // namespace quell::hydraulics
