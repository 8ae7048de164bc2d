// The workings of one option: which cases are traced, and in what order they are read.
#pragma once

#include "quell/design/option.h"

namespace quell::design {

/// Records crest, chute, toe, jump and required tailwater at the governing discharge and at the largest, then the sizing and
/// what the findings were judged by.
void record_workings(const PreparedSite& prepared, const ApronLevel& apron, const dissipators::SizingInput& sizing,
                     Option& option);

}  // namespace quell::design
