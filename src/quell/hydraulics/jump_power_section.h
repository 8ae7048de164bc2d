// Sequent depth in sections whose width follows a power of the depth: parabola, triangle. Horizontal frictionless bed.
#pragma once

#include "quell/hydraulics/jump_sections.h"
#include "quell/hydraulics/section_shapes.h"

namespace quell::hydraulics {

/// y2 (m) with the same momentum function as y1, which must be supercritical. To the last digits.
Outcome<double> sequent_depth(const PowerSection& section, const SectionJumpInput& input);

namespace record {
extern const Method sequent_depth_triangular;
extern const Method sequent_depth_power_law;
}  // namespace record

}  // namespace quell::hydraulics
