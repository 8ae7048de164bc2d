// Seepage below a floor with several cutoffs on deep even soil, by independent variables (Khosla, Bose and Taylor): each cutoff
// as if it stood alone, then corrected for its neighbours, for the thickness of the floor and for a sloping underside.
//
// E is the point where the upstream face of a cutoff meets the floor, D its tip, C where its downstream face meets the floor.
// phi is the share of the head between the pools that is left there, 1 at the upstream end and 0 at the downstream one.
#pragma once

#include <array>

#include "quell/base/method.h"

namespace quell::hydraulics {

/// phi at one cutoff.
struct KeyPressures {
  double E = 0.0, D = 0.0, C = 0.0;
};

struct EndCutoffInput {
  double b;  ///< length of the floor, m, > 0
  double d;  ///< depth of the cutoff below the top of the floor, m, > 0
};
/// Cutoff at the upstream end, nothing else: E = 1; the mirror image of one at the downstream end, where E' = 1 - C, D' = 1 -
/// D.
KeyPressures khosla_upstream(const EndCutoffInput& input) noexcept;
KeyPressures khosla_downstream(const EndCutoffInput& input) noexcept;

struct MiddleCutoffInput {
  double b1;  ///< floor upstream of it, m, > 0
  double b2;  ///< floor downstream of it, m, > 0
  double d;   ///< m, > 0
};
KeyPressures khosla_middle(const MiddleCutoffInput& input) noexcept;

struct InterferenceInput {
  double D;        ///< depth of the neighbour's tip below the floor at the cutoff that it changes, m, >= 0
  double d;        ///< depth of that cutoff, m, > 0
  double spacing;  ///< between the two, m, > 0
  double b;        ///< length of the whole floor, m, > 0
};
/// 0.19 sqrt(D/spacing) (d + D)/b, share of the head: added upstream of the neighbour, taken off downstream of it.
double khosla_interference(const InterferenceInput& input) noexcept;

struct ThicknessInput {
  double at_floor;  ///< phi at the top of the floor
  double at_tip;    ///< phi at the tip
  double d;         ///< depth below the top of the floor, m, > 0
  double t;         ///< thickness of the floor, m, 0 to d
};
/// (at_tip - at_floor) t/d, to be added to the pressure at the top to have that at the underside.
double khosla_thickness(const ThicknessInput& input) noexcept;

struct SlopeInput {
  double m;        ///< m horizontal per m that the floor falls, 1 to 8
  double length;   ///< horizontal length of the slope, m, >= 0
  double spacing;  ///< between the two cutoffs between which it lies, m, > 0
};
/// Share of the head that a falling floor adds at the cutoff at its upper end; table of slopes 1:1 to 1:8, straight between.
double khosla_slope(const SlopeInput& input) noexcept;

/// Floor with up to three cutoffs. A depth of 0: no cutoff there.
struct FloorCutoffs {
  double b;                    ///< length of the floor, m, > 0
  std::array<double, 3> d;     ///< upstream, middle, downstream: below the top of the floor, m
  std::array<double, 3> t;     ///< thickness of the floor at each, m
  double middle;               ///< m from the upstream end
  double slope, slope_length;  ///< of the underside from the upstream cutoff on; slope 0: level
};
/// One cutoff with its corrections. `final` is what counts.
struct CutoffPressures {
  bool exists = false;
  double distance = 0.0;  ///< m from the upstream end
  KeyPressures alone, thickness, interference, slope, final;
};
/// All of them. The final pressures never rise downstream and stay within 0 and 1: where the corrections would break that, the
/// larger pressure is kept at the point before.
std::array<CutoffPressures, 3> khosla_floor(const FloorCutoffs& input) noexcept;

/// phi under the floor `x` m from its upstream end, straight between the cutoffs.
double khosla_share(const std::array<CutoffPressures, 3>& cutoffs, double b, double x) noexcept;

struct BlighCreepInput {
  double Lv;  ///< vertical creep, m
  double Lh;  ///< horizontal creep, m
  double dH;  ///< head difference, m, > 0
};
/// (Lv + Lh)/dH.
double creep_ratio_bligh(const BlighCreepInput& input) noexcept;

namespace record {
extern const Method khosla_end_cutoff;
extern const Method khosla_middle_cutoff;
extern const Method khosla_interference;
extern const Method khosla_thickness;
extern const Method khosla_slope;
extern const Method creep_ratio_bligh;
}  // namespace record

}  // namespace quell::hydraulics
