// Transitions between two sections with a loss, and the flow from a lake into a channel.
//
// Energy coefficient 1, level water in the lake; the loss of a transition is K times the change of the velocity head (K 0.1 to
// 0.3 for gradual, 0.5 to 0.8 for abrupt ones: common practice).
#pragma once

#include "quell/hydraulics/section.h"

namespace quell::hydraulics {

struct SectionChangeInput {
  Trapezoid upstream;
  Trapezoid downstream;
  double y2;    ///< depth downstream, m, > 0
  double Q;     ///< m3/s, > 0
  double drop;  ///< fall of the bed from upstream to downstream, m; a rise is negative
  double K;     ///< share of the change of the velocity head that is lost, 0 to 1
};
/// Subcritical depth y1 (m) upstream: y1 + drop + V1^2/2g = y2 + V2^2/2g + K |V1^2 - V2^2|/2g. No answer where the transition
/// is a control: the depth upstream is then critical or its flow chokes.
Outcome<double> depth_before_transition(const SectionChangeInput& input);

/// yc (m) at the inlet of a steep channel from a lake whose level stands H (m, > 0) above the inlet's bed: H = yc + A/(2 T).
Outcome<double> critical_depth_from_head(const Trapezoid& section, double H);

struct LakeInletInput {
  Trapezoid section;
  double bed_slope;  ///< S, > 0
  double manning_n;  ///< s/m^(1/3), > 0
  double H;          ///< lake level above the inlet's bed, m, > 0
};
/// Normal depth y (m) at the inlet of a long mild channel: H = y + V^2/(2 g) with V by Manning. No answer where the channel is
/// steep: critical depth at the inlet then governs.
Outcome<double> depth_at_lake_inlet(const LakeInletInput& input);

namespace record {
extern const Method depth_before_transition;
extern const Method lake_inlet_critical;
extern const Method lake_inlet_uniform;
}  // namespace record

}  // namespace quell::hydraulics
