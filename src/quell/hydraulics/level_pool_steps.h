// Single steps and closed answers of level-pool routing: the storage-indication step and the third-order Runge-Kutta step of
// the textbooks, the linear reservoir, and the lake that drains over a crest. route_level_pool is what a design uses.
//
// A step goes from the inflow I1 to I2 (m3/s, straight between) in dt (s), from the level H1 (m).
#pragma once

#include <span>
#include <string_view>

#include "quell/base/method.h"
#include "quell/hydraulics/level_pool.h"

namespace quell::hydraulics {

struct PoolStep {
  double I1, I2;  ///< m3/s
  double dt;      ///< s, > 0
  double H1;      ///< m
};

/// A pool of area A0 + A1 H (m2) above a crest at level zero with the outflow C L H^1.5 (m3/s).
struct CrestPool {
  double A0;  ///< m2, > 0
  double A1;  ///< m, >= 0
  double C;   ///< m^0.5/s, >= 0
  double L;   ///< m, >= 0
  double storage(double H) const noexcept { return H * (A0 + 0.5 * A1 * H); }
  double outflow(double H) const noexcept;
};

/// H2 (m, above the crest): 2 S2/dt + O2 = I1 + I2 + 2 S1/dt - O1. No answer where the right side is below zero.
Outcome<double> storage_indication_step(const CrestPool& pool, const PoolStep& step);

/// The same with the tables of `storage` and `rating`.
Outcome<double> storage_indication_step(const StorageCurve& storage, const RatingTable& rating, const PoolStep& step);

inline constexpr std::string_view step_above_storage = "2 S/dt is below O: the step is too long for the storage";
inline constexpr std::string_view step_swings = "the step is above 2 dS/dO: the outflow swings";
/// The least of 2 dS/dO (s) between the levels of the rating: a longer step lets the outflow swing.
double shortest_response(const StorageCurve& storage, const RatingTable& rating) noexcept;

struct IndicationRouting {
  RoutedFlood flood;           ///< rows one step apart; the peaks are those of the rows
  std::string_view objection;  ///< why the step is too long for the method; empty where it is not
};
/// The classical method with a constant step (s), through the one stage of `input`; its tolerance and longest step are not
/// used.
Outcome<IndicationRouting> route_storage_indication(const RoutingInput& input, double step);

struct RungeKutta3 {
  double dH1, dH2, dH3;  ///< the three rises, m
  double H2;             ///< level at the end, m
};
/// One step of third order (Heun) of dH/dt = (I - O(H))/A(H).
RungeKutta3 runge_kutta_3_step(const StorageCurve& storage, const RatingTable& rating, const PoolStep& step);

struct LinearStep {
  double I1, I2, O1;  ///< m3/s
  double K;           ///< S = K O, s, > 0
  double dt;          ///< s, > 0
};
/// O2 of a reservoir whose outflow is in proportion to its storage, by the trapezoidal rule.
double linear_reservoir_step(const LinearStep& step) noexcept;

struct DrainingLake {
  double H0;  ///< head at the start, m, > 0
  double A;   ///< area, m2, > 0
  double C;   ///< m^0.5/s
  double L;   ///< m
};
/// Head (m) after t (s) without inflow: (H0^-0.5 + C L t/(2 A))^-2.
double draining_head(const DrainingLake& lake, double t) noexcept;

namespace record {
extern const Method reservoir_indicator;
extern const Method reservoir_indication_step;
extern const Method reservoir_indication_level;
extern const Method reservoir_runge_kutta_3;
extern const Method reservoir_linear_step;
extern const Method reservoir_draining_crest;
}  // namespace record

}  // namespace quell::hydraulics
