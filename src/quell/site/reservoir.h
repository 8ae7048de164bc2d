// Reservoir level from the crest rating, and back, for every shape of crest.
//
// The level is read in the still reservoir: it is the energy level, and the head on the crest is the level less the crest's.
// Ogee: coefficient by design head, approach depth and face. Broad: Hager and Schwalt with square edges, Bos with a rounded
// one. Sharp: Rehbock on the water level before the weir, which the velocity of approach over the full width lowers below the
// reservoir's. Labyrinth: Crookston and Tullis, half-round crest.
#pragma once

#include "quell/base/outcome.h"
#include "quell/base/working.h"
#include "quell/site/site.h"

namespace quell::site {

/// Discharge (m3/s) over the crest at total head He (m, >= 0), contractions taken off; free flow. 0 for a labyrinth with an
/// angle that was not measured.
double crest_discharge(const Crest& crest, double crest_head);

/// Head He (m) that passes `discharge` (m3/s, > 0). No answer where the contractions use up the crest before, or the
/// angle of the labyrinth was not measured.
Outcome<double> crest_head(const Crest& crest, double discharge);

/// Adds the steps from the head to the discharge.
void trace_crest(const Crest& crest, const StepInput& crest_head, Working& working);

}  // namespace quell::site
