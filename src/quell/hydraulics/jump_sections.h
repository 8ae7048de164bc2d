// Sequent depths where the section is not a rectangle, and over a positive step. Horizontal frictionless bed.
#pragma once

#include "quell/hydraulics/section.h"

namespace quell::hydraulics {

struct SectionJumpInput {
  double y1;         ///< m, > 0, supercritical
  double discharge;  ///< m3/s, > 0
};
/// y2 (m) with the same momentum function as y1. From a subcritical y1 the supercritical depth before it.
Outcome<double> sequent_depth(const Trapezoid& section, const SectionJumpInput& input);

/// The same in a closed circular conduit. Where it fills, the answer is the piezometric head above the invert, which is above
/// D.
Outcome<double> sequent_depth(const Circle& section, const SectionJumpInput& input);

struct StepJumpInput {
  double y1;  ///< m, > 0
  double V1;  ///< m/s, > 0
  double s;   ///< height of the step, m, >= 0
};
/// y2 (m) above the step, with the jump ending at the step and its face pressed by the level behind it. No answer where the
/// step chokes the flow.
Outcome<double> sequent_depth_over_step(const StepJumpInput& input);

namespace record {
extern const Method sequent_depth_trapezoidal;
extern const Method sequent_depth_circular;
extern const Method sequent_depth_positive_step;
}  // namespace record

}  // namespace quell::hydraulics
