// One dissipator type set and sized on a prepared site.
#pragma once

#include "quell/design/apron.h"
#include "quell/design/design.h"

namespace quell::design {

/// The site with its discharges prepared, shared by all types.
struct PreparedSite {
  const site::Site& site;
  const site::ChuteGeometry& geometry;
  std::span<const PreparedCase> cases;
  std::span<const PreparedCase> patterns;  ///< gate patterns
  const site::Study& study;
  double lowest_level = 0.0;  ///< m, limits of the search for an apron level
  double highest_level = 0.0;
};

/// The case of the smallest margin, prepared.
Outcome<PreparedCase> governing_case(const PreparedSite& prepared, const ApronLevel& apron);

/// Sets and sizes `type` at `width`. An option that cannot be sized says why.
Option size_option(const PreparedSite& prepared, const dissipators::Dissipator& type, double width,
                   const DesignOptions& options);

/// The least-concrete width where the width is free, the wished one otherwise; then as above.
Option best_option(const PreparedSite& prepared, const dissipators::Dissipator& type, const DesignOptions& options);

}  // namespace quell::design
