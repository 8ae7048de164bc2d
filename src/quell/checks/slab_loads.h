// What the flow does to one panel of the slab: seepage from below, water from above, pulses of the jump.
#pragma once

#include "quell/checks/checks.h"

namespace quell::checks {

/// One state over one panel. Heads above the top of the floor, m; those of the pulses are of the net force on the panel.
struct PanelLoad {
  double depth;              ///< mean depth of the water over it
  double seepage;            ///< without drains
  double working, failed;    ///< uplift, drains working or failed
  double sealed, open, one;  ///< pulses, by the state of the joints
  double range;              ///< of the fluctuation, over the velocity head
  bool boils;                ///< the fall of the pressure is bounded by vapour, not by its share of the velocity head
};

class SlabLoads {
 public:
  explicit SlabLoads(const BasinView& view);

  /// `from`, `to`: m from the toe. `range_factor` stands on the pressure fluctuation, 1 for the given one.
  PanelLoad on_panel(const TailwaterState& state, double from, double to, double range_factor = 1.0) const;

 private:
  const BasinView& view_;
  double toe_, upstream_, before_, total_;  ///< m along the creep path
  double atmosphere_, vapour_;              ///< Pa

  /// Share of the head between the pools that is left under the slab: by weighted creep, from the share at the toe if given.
  double creep_share(double x) const;
};

}  // namespace quell::checks
