// How late the tailwater follows a change of discharge, how far down the river its cause may lie, and the step in level between
// basin and river.
//
// Between basin and control lies a pool that must fill first: A dw/dt = Q(t) - Q(w), linearised about the rating of the
// control. The surge that runs ahead of the filling is in surge.h.
#pragma once

#include "quell/base/method.h"

namespace quell::hydraulics {

struct PoolInput {
  double T;        ///< surface width, m, > 0
  double control;  ///< distance to the control, m, > 0
  double y;        ///< depth, m, > 0
  double slope;    ///< S0, > 0
};
/// 0.7 y/S0 (m), Samuels: beyond, the level downstream is forgotten.
double influence_length(double y, double slope) noexcept;
/// Surface (m2) of the pool that must fill: T times the distance to the control, 0.7 y/S0 at most.
double pool_area(const PoolInput& input) noexcept;

/// tau (s) = A dw/dQ, with the surface A (m2) and the rise of the rating dw/dQ (s/m2).
double lag_time(double area, double rating_slope) noexcept;

struct LagInput {
  double tau;  ///< s, > 0
  double t;    ///< time since the change began, s, >= 0
};
/// Part of the steady rise that is there at t after a step: 1 - exp(-t/tau).
double lag_response(const LagInput& input) noexcept;
/// How far (m) the level lags behind the steady one that rises at `rate` (m/s): rate tau (1 - exp(-t/tau)).
double lag_deficit(double rate, const LagInput& input) noexcept;
/// Fastest rise (m/s) of the steady level whose lag stays within `margin` (m, >= 0) for ever: margin/tau.
double permissible_rise(double margin, double tau) noexcept;

struct ExitTransfer {
  double river_level;  ///< m
  double Vb;           ///< velocity at the end of the basin, m/s
  double Vr;           ///< velocity of the river, m/s, <= Vb
  double Ce;           ///< part of the difference of velocity heads that is lost: 0 lower bound, 0.5, 1 upper bound
};
/// Level (m) at the end of the basin: river_level - (1 - Ce)(Vb^2 - Vr^2)/(2 g).
Outcome<double> level_at_basin_exit(const ExitTransfer& input);

namespace record {
extern const Method river_influence_length;
extern const Method river_pool_area;
extern const Method lag_time_constant;
extern const Method lag_step;
extern const Method lag_ramp;
extern const Method lag_permissible_ramp;
extern const Method basin_exit_level;
}  // namespace record

}  // namespace quell::hydraulics
