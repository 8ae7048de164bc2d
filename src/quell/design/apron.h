// Setting the apron: the highest level at which the required tailwater is met at every discharge in the low tailwater case.
//
// For one discharge the level is a fixed point, since a lower apron raises the velocity at the toe and so the sequent depth:
//   z = TW(Q) - T(toe flow at z) - margin.
// The lowest of these over all discharges is the apron; it is refined between the discharges of the range.
#pragma once

#include <span>

#include "quell/design/discharge_cases.h"

namespace quell::design {

/// What the search needs beside the cases.
struct ApronSearch {
  const site::Site& site;
  const site::ChuteGeometry& geometry;
  const dissipators::Dissipator& type;
  dissipators::Setting setting;
  double lowest_level = 0.0;   ///< m, limit of the search
  double highest_level = 0.0;  ///< m, limit of the search
};

/// Tailwater less what is required (m) for one case at one level, in the low tailwater case. Strongly negative where the drop
/// is too small for supercritical flow, so that such levels are never chosen.
double tailwater_margin(const ApronSearch& search, const PreparedCase& prepared, double apron_level) noexcept;

struct ApronLevel {
  double level = 0.0;                ///< m, rounded down to the step of the site; within the limits
  double wanted = 0.0;               ///< m, before the limits
  bool within_limits = true;         ///< false: a lower level than allowed would be needed; `level` is then the lowest allowed
  bool found = true;                 ///< false: not even the lowest level searched meets every discharge
  double governing_discharge = 0.0;  ///< m3/s, of the smallest margin at `level` with all bays alike
  site::TailwaterCase governing_tailwater_case = site::TailwaterCase::low;
  int governing_pattern = -1;  ///< index of the gate pattern that has a smaller margin still
};

/// No answer where some discharge has no supercritical toe flow at any level searched.
Outcome<ApronLevel> set_apron(const ApronSearch& search, std::span<const PreparedCase> cases,
                              std::span<const PreparedCase> patterns = {});

}  // namespace quell::design
