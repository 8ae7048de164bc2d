// The discharges that the design runs over, each with its reservoir level, tailwater and flow on the chute.
#pragma once

#include <vector>

#include "quell/base/outcome.h"
#include "quell/design/result.h"

namespace quell::design {

/// A discharge with everything that does not depend on the basin. `reported` is false for the extra discharges (kinks of a
/// tailwater rating) that are only searched.
struct PreparedCase {
  DischargeCase data;
  site::ChuteFlow chute;
  bool reported = true;
};

/// Prepares one discharge. No answer where crest, river or chute has none.
Outcome<PreparedCase> prepare_case(const site::Site& site, const site::ChuteGeometry& geometry, double discharge);

/// All of the range, the named floods and the kinks of the rating, in order of discharge.
Outcome<std::vector<PreparedCase>> prepare_cases(const site::Site& site, const site::ChuteGeometry& geometry);

}  // namespace quell::design
