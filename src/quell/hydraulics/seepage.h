// Seepage under a floor on pervious soil: uplift along the creep path by Bligh, floor thickness, exit gradient at a cut-off,
// the gradient at which soil lifts, and Bligh's lengths of apron.
//
// H is the head difference between the pools. Creep methods are quick checks; flow nets govern a final design.
#pragma once

#include "quell/base/constants.h"
#include "quell/base/method.h"

namespace quell::hydraulics {

struct CreepPoint {
  double H;  ///< head difference, m, >= 0
  double L;  ///< whole length of creep, m, > 0: all vertical and horizontal contact
  double l;  ///< creep up to the point, m, 0 to L
};
/// Head left at the point, m: H (1 - l/L).
double creep_head(const CreepPoint& point) noexcept;

struct FloorInput {
  double h;  ///< head above the top of the floor, m, >= 0
  double G;  ///< specific gravity of the floor, > 1
  double k;  ///< factor of safety, 4/3 by common practice
};
/// t (m) = k h/(G - 1).
double floor_thickness(const FloorInput& input) noexcept;

struct CutoffInput {
  double b;  ///< length of the floor, m, > 0
  double d;  ///< depth of the cut-off at its downstream end, m, > 0
  double H;  ///< head difference, m, >= 0
};
struct CutoffSeepage {
  double exit_gradient;  ///< GE = H/(pi d sqrt(lambda))
  double at_floor;       ///< share of H left at the floor before the cut-off
  double at_tip;         ///< share of H left at its tip
};
/// Khosla, Bose and Taylor: floor with one cut-off at the downstream end on deep even soil. Exact potential flow.
CutoffSeepage cutoff_seepage(const CutoffInput& input) noexcept;

/// ic = (G - 1)(1 - n): specific gravity of the grains, porosity.
double critical_gradient(double G, double porosity) noexcept;

struct BlighApronInput {
  double C;  ///< Bligh's coefficient of creep of the soil
  double H;  ///< head difference, m
  double q;  ///< flood discharge per unit width, m2/s
};
struct ApronLengths {
  double floor;   ///< impervious floor downstream of the weir, m
  double in_all;  ///< floor and loose protection downstream, m
};
/// Weir with crest shutters: 2.21 C sqrt(H/13) and 18 C sqrt(H/13 q/75).
ApronLengths apron_lengths_bligh(const BlighApronInput& input) noexcept;

namespace record {
extern const Method uplift_bligh;
extern const Method floor_thickness_uplift;
extern const Method exit_gradient_khosla;
extern const Method critical_gradient;
extern const Method apron_lengths_bligh;
}  // namespace record

}  // namespace quell::hydraulics
