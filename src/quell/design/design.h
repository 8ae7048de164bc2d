// Sizing over the whole range of discharges: apron level, structure, findings, comparison.
#pragma once

#include <span>

#include "quell/base/outcome.h"
#include "quell/design/result.h"

namespace quell::design {

struct DesignOptions {
  std::span<const dissipators::Dissipator* const> types;  ///< which types, in order
  bool with_positions = true;                             ///< find where each jump stands
  bool with_safety = true;                                ///< slab, walls, foundation, river, model
  bool with_workings = false;                             ///< record the workings of the governing cases
  bool with_profiles = false;                             ///< compute the water profiles for figures
  bool with_moving_water = false;                         ///< and those of every reported discharge, in few points
};

/// Runs the design. No answer where the crest or chute has no flow for the range (the reason says which); a type that cannot be
/// sized is an Option with `sized` false.
Outcome<DesignResult> run_design(const site::Site& site, const DesignOptions& options);

/// The same for a site whose floods and river are resolved already: a change of the basin alone needs no new routing.
Outcome<DesignResult> run_design(site::ResolvedSite resolved, const DesignOptions& options);

}  // namespace quell::design
