// Reservoir level from the crest rating, and back.
//
// The level is read in the still reservoir: it is the energy level, and the head on the crest is the level less the crest's.
#pragma once

#include "quell/base/outcome.h"
#include "quell/base/working.h"
#include "quell/site/site.h"

namespace quell::site {

/// Discharge (m3/s) over the crest at total head He (m, >= 0), contractions taken off.
double crest_discharge(const Crest& crest, double crest_head);

/// Head He (m) that passes `discharge` (m3/s, > 0). No answer where the contractions use up the crest before.
Outcome<double> crest_head(const Crest& crest, double discharge);

/// Adds the steps from the head to the discharge.
void trace_crest(const Crest& crest, double crest_head, Working& working);

}  // namespace quell::site
