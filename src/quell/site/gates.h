// Gates on the crest and outlets beside it: what they discharge at a reservoir level.
//
// A bay passes what its gate lets through and never more than its share of the free crest. Under the gate: the formula with two
// heads, or the one with the least opening where the gate's own coefficient is given; between them and the free crest a
// straight passage (hydraulics/crest_gates.h). Ratings of gates are good to about 10 %. Outlets discharge as orifices under the
// full head and stand beside the spillway: their water counts in the river, not in the basin.
#pragma once

#include "quell/base/outcome.h"
#include "quell/base/working.h"
#include "quell/site/site.h"

namespace quell::site {

/// Discharge (m3/s) through one bay whose gate stands `opening` (m, >= 0) above its seat.
double bay_discharge(const Site& site, double opening, double reservoir_level);

/// Sum over all bays (m3/s).
double pattern_discharge(const Site& site, const GatePattern& pattern, double reservoir_level);

/// The bay that passes most.
struct LoadedBay {
  double opening = 0.0;    ///< m
  double discharge = 0.0;  ///< m3/s
  int open_bays = 0;       ///< bays that pass water
  bool all_alike = true;   ///< every bay has this opening
};
LoadedBay loaded_bay(const Site& site, const GatePattern& pattern, double reservoir_level);

/// Largest difference of opening (m) between neighbouring bays.
double largest_step(const GatePattern& pattern);

/// Reservoir level (m) at a discharge over the spillway (m3/s) with all bays alike: that of the free crest, and with gates at
/// least the level that they hold.
Outcome<double> spillway_level(const Site& site, double discharge);

/// Opening of every bay (m) that passes `discharge` at the level of spillway_level(); the full opening where the gates are
/// clear of the water; 0 without gates.
double equal_opening(const Site& site, double discharge, double reservoir_level);

/// Patterns of the site, and with them those that every gated spillway should be judged for: one gate open, one half open, one
/// shut.
std::vector<GatePattern> all_patterns(const Site& site);

/// Name of the added pattern with the first bay shut and the others open.
inline constexpr std::string_view one_gate_shut = "one gate shut";

/// Levels (m) at which a pattern is judged: its own; else, by the operation, the level above which it gives way to the next
/// (and for the last one the level held); else the level held.
std::vector<double> pattern_levels(const Site& site, std::size_t pattern);

double outlet_discharge(const Outlet& outlet, double reservoir_level);
/// All outlets (m3/s), or only those that run in every flood.
double outlets_discharge(const Site& site, double reservoir_level, bool guaranteed_only);

/// Adds the steps behind the discharge of one bay.
void trace_bay(const Site& site, double opening, double reservoir_level, Working& working);

}  // namespace quell::site
