// Conduit outlets: depth and velocity where the flow leaves the conduit, its way to a wider basin, its free jet.
//
// Q in m3/s, depths above the invert, m. A conduit ends with a free fall or with lower water: no tailwater holds its flow back.
#pragma once

#include "quell/hydraulics/section.h"

namespace quell::hydraulics {

struct OutletFlow {
  double y;  ///< depth at the outlet, the height of the conduit where it flows full, m
  double V;  ///< mean velocity, m/s
};

struct CircularOutletInput {
  double D;          ///< m, > 0
  double bed_slope;  ///< S, > 0
  double manning_n;  ///< s/m^(1/3), > 0
  double discharge;  ///< m3/s, > 0
};
/// Partly full: normal depth on a steep slope, critical depth on a mild one, the smaller of both. Full where Manning's formula
/// finds no depth that carries the discharge.
Outcome<OutletFlow> circular_outlet(const CircularOutletInput& input);

struct BoxOutletInput {
  double b;          ///< width, m, > 0
  double h;          ///< height, m, > 0
  double bed_slope;  ///< S, > 0
  double manning_n;  ///< s/m^(1/3), > 0
  double discharge;  ///< m3/s, > 0
};
/// The same for a rectangular conduit.
Outcome<OutletFlow> box_outlet(const BoxOutletInput& input);

struct OrificeInput {
  double C;  ///< discharge coefficient, 0.3 to 1
  double A;  ///< area of the controlling section, m2, > 0
  double H;  ///< reservoir level above the centre of the section or, where that is higher, the water outside, m, >= 0
};
/// Q (m3/s) = C A sqrt(2 g H): an outlet that runs full.
double orifice_discharge(const OrificeInput& input) noexcept;

struct TransitionInput {
  double y;     ///< depth at the outlet, m, > 0
  double V;     ///< velocity there, m/s, > 0
  double fall;  ///< from the invert of the outlet to the apron, m, >= 0
  double q;     ///< discharge per width of the basin, m2/s, > 0
  double K;     ///< loss over the change of velocity head, 0.1 to 0.2
};
struct BasinInflow {
  double y1;  ///< m
  double V1;  ///< m/s
};
/// Supercritical flow on the apron after a transition to the width of the basin.
Outcome<BasinInflow> outlet_transition(const TransitionInput& input) noexcept;

struct JetInput {
  double distance;  ///< m: along (jet_fall) or fall (jet_reach), >= 0
  double V;         ///< m/s, > 0
  double theta;     ///< slope of the jet below the horizontal where it leaves, rad, above -pi/2 and below pi/2
};
/// Fall (m) of a free jet at a horizontal distance; no air resistance.
double jet_fall(const JetInput& input) noexcept;
/// Horizontal distance (m) at which the jet has fallen so far.
double jet_reach(const JetInput& input) noexcept;

namespace record {
extern const Method outlet_depth_circular;
extern const Method outlet_depth_box;
extern const Method outlet_discharge_orifice;
extern const Method outlet_inflow_transition;
extern const Method outlet_jet_fall;
extern const Method outlet_jet_reach;
}  // namespace record

}  // namespace quell::hydraulics
