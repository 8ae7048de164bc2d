// Whether basin and walls stand, as a first check: flotation of the empty basin, water on a wall, overturning, sliding and
// bearing of a wall on its base. Per metre of basin; N, N m, Pa. A structural engineer must design them.
#pragma once

#include "quell/base/method.h"

namespace quell::hydraulics {

struct FlotationInput {
  double Ws;  ///< weight of structure and soil on it, N
  double Wc;  ///< water held inside under control, N
  double S;   ///< surcharge, N
  double U;   ///< uplift on the base, N
  double Wg;  ///< water above the structure, N, < U
};
/// (Ws + Wc + S)/(U - Wg).
double flotation_factor(const FlotationInput& input) noexcept;

struct WaterForce {
  double force;   ///< N per m, towards the side with less water
  double moment;  ///< N m per m, about the floor
};
/// Water ho deep outside and hi deep inside a wall, m.
WaterForce water_on_wall(double ho, double hi) noexcept;

struct BackfillInput {
  double h;            ///< height of the fill, m
  double hw;           ///< water table in it above the floor, m, <= h
  double K0;           ///< coefficient of earth pressure at rest
  double gamma;        ///< moist unit weight, N/m3
  double gamma_below;  ///< submerged unit weight, N/m3
};
/// Earth at rest and water on a wall with a dry inner side.
WaterForce backfill_on_wall(const BackfillInput& input) noexcept;

struct BearingInput {
  double N;  ///< normal force on the base, N, > 0
  double e;  ///< eccentricity from the middle of the base, m, < B/2
  double B;  ///< width of the base, m, > 0
};
struct Bearing {
  double largest, smallest;  ///< Pa; the smallest is 0 where part of the base gapes
};
/// Straight line of pressure, no tension. No answer where the force leaves the base.
Outcome<Bearing> bearing_pressure(const BearingInput& input);

namespace record {
extern const Method flotation_factor;
extern const Method water_on_wall;
extern const Method backfill_on_wall;
extern const Method bearing_pressure;
extern const Method sliding_factor;
}  // namespace record

}  // namespace quell::hydraulics
