// The longer tables of the safety chapter: stone and filter, uplift at the cutoffs, runs of the physical model.
#pragma once

#include "quell/checks/safety.h"
#include "quell/output/format.h"
#include "quell/output/report/html.h"

namespace quell::output {

void write_stone_layers(Html& html, const checks::StoneLayers& layers, const Printer& p);
void write_uplift_points(Html& html, const checks::Safety& safety, const Printer& p);
void write_model_runs(Html& html, const checks::ModelAdvice& model, const Printer& p);

/// A large number without a unit to two digits, written out: "210 000".
std::string round_number(double value);

}  // namespace quell::output
