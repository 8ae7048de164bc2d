// Flow under a sluice or radial gate on a level bed: free, and drowned by its tailwater.
//
// a is the opening, y0 the depth before the gate, y1 = Cc a the depth where the jet is thinnest, two to three openings below
// the gate, m; q the discharge per width, m2/s. Energy without loss up to there.
#pragma once

#include "quell/base/method.h"

namespace quell::hydraulics {

/// Contraction of a vertical gate with a sharp lip at small openings.
inline constexpr double sluice_contraction = 0.611;

/// Contraction Cc of a radial gate whose lip makes `lip_angle` (rad, 0 to pi/2) with the horizontal, after Henderson.
double radial_gate_contraction(double lip_angle) noexcept;

struct SluiceInput {
  double a;   ///< m, > 0
  double y0;  ///< m, > Cc a
  double Cc = sluice_contraction;
};
struct SluiceFlow {
  double q;   ///< m2/s
  double Cd;  ///< in q = Cd a sqrt(2 g y0)
  double y1;  ///< m
  double V1;  ///< m/s
  double F1;  ///< Froude number of the jet
  double y2;  ///< sequent depth of the jet: with tailwater above it the gate is drowned, m
};
/// Free flow. No answer where the contracted jet would be as deep as the water before the gate.
Outcome<SluiceFlow> sluice_free(const SluiceInput& input) noexcept;

struct DrownedSluiceInput {
  double a;    ///< m, > 0
  double y0;   ///< m
  double ytw;  ///< tailwater depth, m, below y0
  double Cc = sluice_contraction;
};
struct DrownedSluiceFlow {
  double q;   ///< m2/s
  double y3;  ///< depth of water above the jet at its thinnest, m
};
/// Drowned flow: energy from y0 to the jet under the depth y3, momentum from there to the tailwater. No answer where the
/// tailwater lies below the sequent depth of the free jet, or not below y0. Where drowning begins, free and drowned flow are
/// both possible, and q falls by some per cent from one to the other.
Outcome<DrownedSluiceFlow> sluice_drowned(const DrownedSluiceInput& input) noexcept;

namespace record {
extern const Method sluice_contraction_radial;
extern const Method sluice_discharge_free;
extern const Method sluice_discharge_drowned;
}  // namespace record

}  // namespace quell::hydraulics
