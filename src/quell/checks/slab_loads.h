// What the flow does to one panel of the slab: seepage from below, water from above, pulses of the jump.
#pragma once

#include "quell/checks/floor_pulses.h"
#include "quell/checks/safety.h"

namespace quell::checks {

/// One state over one panel. Heads above the top of the floor, m; those of the pulses are of the net force on the panel.
struct PanelLoad {
  double depth;              ///< mean depth of the water over it
  double seepage;            ///< without drains
  double working, failed;    ///< uplift, drains working or failed
  double sealed, open, one;  ///< pulses, by the state of the joints
  double range;              ///< of the fluctuation, over the velocity head
  double behind, tailwater;  ///< depth behind the jump, depth where the drains discharge
  double pulse;              ///< length over which a pulse hangs together, m
  bool boils;                ///< the fall of the pressure is bounded by vapour, not by its share of the velocity head
};

class SlabLoads {
 public:
  /// After judge_foundation.
  SlabLoads(const BasinView& view, const Seepage& seepage);

  /// `from`, `to`: m from the toe. `range_factor` stands on the pressure fluctuation, 1 for the given one.
  PanelLoad on_panel(const TailwaterState& state, double from, double to, double range_factor = 1.0) const;

  /// Head under the empty basin: ground water beside it, or the seepage from the full reservoir while the river does not flow.
  double empty_head(double groundwater_head, double from, double to) const;

 private:
  const BasinView& view_;
  const Seepage& seepage_;
  double toe_;                  ///< m from the upstream face
  double atmosphere_, vapour_;  ///< Pa

  /// Share of the head between the pools that is left under the slab, `x` m from the toe; from the share at the toe where the
  /// site gives it.
  double head_share(double x) const;
  FloorPulse pulse_over(const site::ToeFlow& toe, double from, double to) const;
};

}  // namespace quell::checks
