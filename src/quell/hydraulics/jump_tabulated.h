// Sequent depth in a surveyed section. Horizontal frictionless bed; depths above the lowest point of the section.
#pragma once

#include "quell/hydraulics/jump_sections.h"
#include "quell/hydraulics/section_tabulated.h"

namespace quell::hydraulics {

struct TabulatedSequentDepth {
  double y2;  ///< m, the lowest depth above y1 with its momentum function
  int count;  ///< how many such depths there are at which the momentum function rises: 1, more in some compound sections
};
/// y1 must be supercritical (F1 > 1 with the hydraulic depth). To 1e-12 relative.
Outcome<TabulatedSequentDepth> sequent_depth(const TabulatedSection& section, const SectionJumpInput& input);

namespace record {
extern const Method sequent_depth_tabulated;
}  // namespace record

}  // namespace quell::hydraulics
