// The bed of the river below a dam that holds back its sediment: how far clear water digs before stones armour the bed or the
// slope becomes too flat to carry them, and what that lowers at the dam.
//
// Discharge: the one that shapes the bed, about bank-full or the two-year flood. Grain sizes in m; the formulas of the sources
// take mm. The rules differ by a factor of three on the same river: compute all, report the spread, and take the smaller depth
// of armour and slope only where both are supported.
#pragma once

#include "quell/base/method.h"

namespace quell::hydraulics {

struct ArmourInput {
  double thickness;  ///< of the armour, m, > 0: a choice of the designer
  double share;      ///< of the bed coarser than the armouring size, 0 to 1; unreliable below 0.1
};
/// Depth (m) to which the bed falls until enough stones lie on it: thickness (1/share - 1).
Outcome<double> armouring_depth(const ArmourInput& input);

/// The flow over a bed, and what it is compared with.
struct BedFlow {
  double Q;          ///< m3/s, > 0
  double B;          ///< width of the bed, m, > 0
  double d;          ///< mean depth, m, > 0
  double V;          ///< mean velocity, m/s, > 0
  double slope;      ///< > 0
  double manning_n;  ///< of the bed, s/m^(1/3), > 0
  double d90;        ///< m, > 0
  double shields;    ///< critical Shields number, 0.03 to 0.06
};
/// Smallest grain (m) that the flow does not move, by five rules.
struct ArmourSizes {
  double competent_velocity;  ///< 0.0202 V^2, Mavis and Laushey
  double meyer_peter_muller;  ///< 0.001 S d/(0.058 (n/d90^(1/6))^1.5), d90 in mm
  double schoklitsch;         ///< 0.001 (S/0.000293)^(4/3) Q/B
  double shields;             ///< S d/(1.65 shields)
  double yang;                ///< 0.0216 V^2, turbulent grains
  double least() const noexcept;
  double most() const noexcept;
  double mean() const noexcept;
};
ArmourSizes armour_sizes(const BedFlow& flow) noexcept;

struct StableSlopeInput {
  double D;          ///< size of the bed material, m, > 0
  double Q;          ///< m3/s, > 0
  double B;          ///< m, > 0
  double d;          ///< m, > 0
  double manning_n;  ///< s/m^(1/3), > 0
  double d90;        ///< m, > 0
  double shields;    ///< critical Shields number
};
/// The slope on which a bed of grains D comes to rest, by three rules.
struct StableSlopes {
  double schoklitsch;         ///< 0.000293 (D B/Q)^0.75, D in mm
  double meyer_peter_muller;  ///< 0.058 (n/d90^(1/6))^1.5 D/d, sizes in mm; the whole discharge over the bed
  double shields;             ///< 1.65 shields D/d
};
StableSlopes stable_slopes(const StableSlopeInput& input) noexcept;

struct DegradationInput {
  double bed_slope;     ///< S0
  double stable_slope;  ///< SL, below S0
};
/// Depth (m) at the dam when a fixed control lies `length` (m) downstream: (S0 - SL) length.
Outcome<double> degradation_above_control(const DegradationInput& slopes, double length);

struct DegradationWedge {
  double volume;  ///< eroded per unit width, m2
  double length;  ///< m
};
/// The wedge that a depth at the dam (m) empties where no control stops it: depth^2/(2 (S0 - SL)), depth/(S0 - SL).
Outcome<DegradationWedge> degradation_wedge(const DegradationInput& slopes, double depth);

namespace record {
extern const Method armour_depth;
extern const Method armour_size_competent;
extern const Method armour_size_meyer_peter;
extern const Method armour_size_schoklitsch;
extern const Method armour_size_shields;
extern const Method armour_size_yang;
extern const Method armour_size_spread;
extern const Method stable_slope_schoklitsch;
extern const Method stable_slope_meyer_peter;
extern const Method stable_slope_shields;
extern const Method stable_slope_lane;
extern const Method degradation_control;
extern const Method degradation_wedge;
}  // namespace record

}  // namespace quell::hydraulics
