// Flow at the toe: what enters a basin on a horizontal apron, and the free jump that it would make there.
#pragma once

#include "quell/base/outcome.h"
#include "quell/base/working.h"

namespace quell::site {

/// State at the start of a horizontal apron for one discharge. Clear-water depths (no air), momentum and energy
/// coefficients 1.
struct ToeFlow {
  double discharge = 0.0;        ///< Q, m3/s
  double width = 0.0;            ///< W, m, clear width of the basin
  double unit_discharge = 0.0;   ///< q = Q/W, m2/s
  double apron_level = 0.0;      ///< m
  double reservoir_level = 0.0;  ///< m
  double energy_head = 0.0;      ///< E1, m above the apron
  double y1 = 0.0;               ///< m
  double V1 = 0.0;               ///< m/s
  double F1 = 0.0;               ///< V1/sqrt(g y1)
  double y2 = 0.0;               ///< m, sequent depth on a smooth horizontal apron
};

/// Toe flow from the energy level at the toe. No answer where the flow would hardly be supercritical: energy head above the
/// apron below 1.3 times 1.5 critical depths.
Outcome<ToeFlow> toe_flow(double discharge, double width, double energy_level, double reservoir_level, double apron_level,
                          Working* working = nullptr);

/// The step of discharge (m3/s) over a width (m), unless the workings have it. `where` ends "discharge per unit width …".
void trace_unit_discharge(const StepInput& discharge, const StepInput& width, std::string_view where, Working& working);

/// Energy head (m above the apron) below which toe_flow() has no answer.
double least_energy_head(double discharge, double width);

}  // namespace quell::site
