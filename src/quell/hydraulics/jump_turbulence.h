// What a jump does besides its mean flow: entrained air, heaving surface, pressure fluctuation on the floor and the slab that
// bears it.
//
// Fits to laboratory data on the classical jump, F1 = V1/sqrt(g y1). Air is known to a factor of two; rms values to 15 to 30 %;
// extremes and their shape over x are not known well enough to be formulas here and are inputs where they are needed.
#pragma once

#include "quell/base/method.h"
#include "quell/hydraulics/jump.h"

namespace quell::hydraulics {

/// beta = Qair/Q, F1 > 1: closed conduits (Kalinske and Robertson 1943), open jumps (Rajaratnam 1967, Wisner 1965, Rabben
/// 1983).
double air_ratio_kalinske(double F1) noexcept;
double air_ratio_rajaratnam(double F1) noexcept;
double air_ratio_wisner(double F1) noexcept;
double air_ratio_rabben(double F1) noexcept;

struct AirBand {
  double lowest;   ///< Qair/Q
  double highest;  ///< Qair/Q
};
/// Lowest and highest of the four.
AirBand air_ratio_band(double F1) noexcept;

/// Largest rms of the surface over the jump, m: 0.116 y1 (F1 - 1)^1.235, F1 to 8.5 (Murzyn and Chanson 2009).
double surface_fluctuation(const RollerInput& input) noexcept;
/// Dominant period of the surface, s: y1/(V1 St), St = 0.143 exp(-0.27 F1) (same).
double surface_period(const RollerInput& input) noexcept;

struct PressureFluctuation {
  double sigma;     ///< largest rms of the pressure head on the floor, m
  double station;   ///< where, m from the toe
  double Cp_prime;  ///< sigma/(V1^2/2g)
};
/// sigma = 0.70 dE y1/y2 at x = 1.75 (y2 - y1), F1 4.5 to 10 (Marques, Drapeau and Verrette 1997).
PressureFluctuation pressure_fluctuation(const RollerInput& input) noexcept;

struct SlabInput {
  double Omega;    ///< 0 to 1: how much of the slab one pulse covers
  double Cp;       ///< Cp+ + Cp-: both extremes over V1^2/2g
  double V1;       ///< m/s
  double gamma_c;  ///< unit weight of the concrete, N/m3, above that of water
};
/// s (m) = Omega Cp V1^2/2g gamma_w/(gamma_c - gamma_w): unanchored slab with stagnation pressure below (Fiorotto and Rinaldo
/// 1992).
double slab_thickness(const SlabInput& input) noexcept;

namespace record {
extern const Method air_kalinske_1943;
extern const Method air_rajaratnam_1967;
extern const Method air_wisner_1965;
extern const Method air_rabben_1983;
extern const Method air_band;
extern const Method surface_fluctuation;
extern const Method surface_period;
extern const Method pressure_fluctuation_marques_1997;
extern const Method pressure_stations_marques_1997;
extern const Method slab_thickness;
}  // namespace record

}  // namespace quell::hydraulics
