// Between crest and chute: the energy with which the chute's flow starts, and what apron and tailwater take from the crest.
//
// A nappe that falls freely onto a floor loses the height of its fall: the flow starts there anew, with the energy of critical
// depth (common practice). Elsewhere it brings the energy of the reservoir.
#pragma once

#include "quell/base/outcome.h"
#include "quell/base/working.h"
#include "quell/site/site.h"

namespace quell::site {

/// Energy level (m) at the start of the chute: the reservoir's; below a fall at most 1.5 critical depths above the floor.
double start_energy_level(const Site& site, double discharge, double reservoir_level);

/// Adds the step behind that level where it is not the reservoir's. Answers what the level is, in words.
std::string_view trace_start_energy(const Site& site, double discharge, double reservoir_level, Working& working);

/// The crest at one discharge with the water below it.
struct BackwaterInput {
  double discharge = 0.0;        ///< m3/s
  double reservoir_level = 0.0;  ///< m, of the free flow
  double apron_level = 0.0;      ///< m
  double tailwater_level = 0.0;  ///< m
  bool jump_drowned = false;     ///< the tailwater drowns the jump, so that it may reach the crest
};

/// Level (m) of the water below the crest: tailwater or, below a fall, the energy level of critical flow on the floor where
/// that is higher.
double level_below_crest(const Site& site, const BackwaterInput& input);

/// Share (0 to 1) of the free discharge that passes at the same reservoir level against the water below. Ogee: where the jump
/// or the crest is drowned (Design of Small Dams 1987). Broad: Sturm 2001. Sharp and labyrinth: Villemonte 1947. Above 0.9995
/// it is 1.
double submergence_share(const Site& site, const BackwaterInput& input);

/// The same for an apron close below an ogee crest; 1 for other shapes.
double apron_share(const Site& site, const BackwaterInput& input);

/// By how much (m, >= 0) the reservoir would stand higher to pass the discharge against both. No answer where no level found
/// does.
Outcome<double> reservoir_rise(const Site& site, const BackwaterInput& input);

}  // namespace quell::site
