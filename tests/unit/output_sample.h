// A hand-made design for the tests of the output floor. All of it is invented; the hydraulics are a sketch.
#pragma once

#include "quell/design/result.h"
#include "quell/output/report/report.h"

namespace quell::test {

struct Sample {
  site::Site site;
  design::DesignResult result;
  output::ReportContext context;
};

/// A gravity-dam spillway with three options: one chosen, one not applicable, one that could not be sized. The texts that a
/// user types hold markup, quotes and an ampersand.
Sample output_sample();

}  // namespace quell::test
