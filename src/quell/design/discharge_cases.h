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
  double bay_width = 0.0;  ///< m; above 0: one bay is followed down, without spreading, and `chute` is its flow
};

/// Flow at the toe of a basin of that width; behind a single bay, of the width of the bay.
Outcome<site::ToeFlow> toe_at(const PreparedCase& prepared, double width, double apron_level, Working* working = nullptr);

/// What a type may know of the site beside the flow, for a basin of that width.
dissipators::Setting setting_of(const site::Site& site, double width);

/// Flow that enters a basin of that type whose apron (floor, invert) lies at `apron_level`: at the height where the type takes
/// it up, or from the crest for a type without a chute above it. No answer where there is no supercritical flow.
Outcome<site::ToeFlow> entering_flow(const dissipators::Dissipator& type, const dissipators::Setting& setting,
                                     const PreparedCase& prepared, double apron_level, Working* working = nullptr);

/// Prepares one discharge. No answer where crest, river or chute has none.
Outcome<PreparedCase> prepare_case(const site::Site& site, const site::ChuteGeometry& geometry, double discharge);

/// All of the range, the named floods and the kinks of the rating, in order of discharge.
Outcome<std::vector<PreparedCase>> prepare_cases(const site::Site& site, const site::ChuteGeometry& geometry);

/// The chute behind one bay: parallel walls as far apart as the bay is wide.
Outcome<site::ChuteGeometry> bay_geometry(const site::Site& site, double lowest_level);

/// The gate patterns at their levels, in order of discharge; those with all bays alike flow over the whole width. Patterns that
/// pass no water there are left out, and so are added ones for which the tailwater rating has no row.
Outcome<std::vector<PreparedCase>> prepare_patterns(const site::Site& site, const site::ChuteGeometry& geometry,
                                                    const site::ChuteGeometry& bay);

}  // namespace quell::design
