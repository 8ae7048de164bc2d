#include "quell/checks/slab_loads.h"

#include <algorithm>

#include "quell/base/constants.h"
#include "quell/hydraulics/cavitation.h"
#include "quell/hydraulics/slab_uplift.h"

namespace quell::checks {

SlabLoads::SlabLoads(const BasinView& view, const Seepage& seepage)
    : view_(view),
      seepage_(seepage),
      toe_(seepage.horizontal - view.structure.length),
      atmosphere_(hydraulics::atmospheric_pressure(view.site.project.altitude)),
      vapour_(hydraulics::vapour_pressure(view.site.project.water_temperature)) {}

double SlabLoads::head_share(double x) const {
  const double share = head_share_at(view_, seepage_, toe_ + x);
  const auto& foundation = view_.site.foundation;
  if (!foundation.has_toe_head_share) return share;
  const double at_toe = head_share_at(view_, seepage_, toe_);
  return at_toe > 0.0 ? foundation.toe_head_share * share / at_toe : 0.0;
}

double SlabLoads::empty_head(double groundwater_head, double from, double to) const {
  const auto& river = view_.site.river;
  const double no_flow = river.bed_level - river.bed_degradation - view_.apron_level;
  return std::max(groundwater_head, no_flow + seepage_.no_flow_head * head_share(0.5 * (from + to)));
}

/// The largest of what the ends and the middle of the panel see.
FloorPulse SlabLoads::pulse_over(const site::ToeFlow& toe, double from, double to) const {
  FloorPulse largest{};
  for (const double x : {from, 0.5 * (from + to), to}) {
    const auto here = floor_pulse(view_.site.slab, toe.F1, x / toe.y2);
    largest = {std::max(largest.range, here.range), std::max(largest.suction, here.suction)};
  }
  return largest;
}

PanelLoad SlabLoads::on_panel(const TailwaterState& state, double from, double to, double range_factor) const {
  const auto& slab = view_.site.slab;
  const auto& toe = *state.toe;
  const double middle = 0.5 * (from + to);
  PanelLoad load{};
  load.depth = jump_depth_over(state, from, to);
  const double tailwater = state.available_depth;
  load.behind = std::max(toe.y1, std::min(toe.y2, tailwater));
  load.tailwater = tailwater;
  const double between = std::max(0.0, toe.reservoir_level - state.tailwater_level);
  load.seepage = tailwater + between * head_share(middle);
  load.working = hydraulics::uplift_head({.h0 = load.seepage, .hs = tailwater, .E = slab.drain_efficiency});
  load.failed = load.seepage;
  const double head = toe.V1 * toe.V1 / (2.0 * gravity);
  const auto pulse = pulse_over(toe, from, to);
  load.range = pulse.range;
  const double wanted = range_factor * pulse.suction * head;
  const double bound = hydraulics::suction_cap(load.depth, atmosphere_, vapour_);
  load.boils = wanted > bound;
  const double suction = std::min(wanted, bound);
  const double range = range_factor * std::max(0.0, pulse.range - pulse.suction) * head + suction;
  load.pulse = slab.pulse_length * toe.y1;
  const auto share = hydraulics::panel_coefficients(slab.panel_length / load.pulse, slab.panel_width / load.pulse);
  load.sealed = share.sealed * suction;
  load.open = share.four * range;
  load.one = share.one * range;
  return load;
}

}  // namespace quell::checks
