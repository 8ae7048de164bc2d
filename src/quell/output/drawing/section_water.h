// The water of one discharge in the long section: surface, bed below it, energy line.
#pragma once

#include "quell/output/drawing/section_model.h"

namespace quell::output {

/// Needs the section's face, floor and river bed. Indicative beyond what the design computed: see section_model.h.
SectionWater water_of(const LongSection& section, const site::Site& site, const design::Option& option,
                      const design::WaterProfile& profile);

}  // namespace quell::output
