// What the operator may do: which openings at which levels, from the tailwater that each needs.
#include "quell/checks/safety.h"
#include "quell/dissipators/parts.h"

namespace quell::checks {

void judge_operation(const BasinView& view, Safety& safety) {
  int forbidden = 0;
  for (const auto& pattern : view.patterns) {
    OperationRow row;
    row.pattern = std::string(pattern.name);
    row.reservoir_level = pattern.toe->reservoir_level;
    row.discharge = pattern.discharge;
    row.tailwater_low = pattern.tailwater_level;
    row.tailwater_needed = pattern.tailwater_level - pattern.margin;
    row.allowed = pattern.margin >= -1e-6;
    forbidden += row.allowed ? 0 : 1;
    safety.operation.push_back(std::move(row));
  }
  if (view.patterns.empty()) return;
  safety.findings.push_back(dissipators::limit_finding(
      "operation.forbidden", "Openings of the gates that lack their tailwater", forbidden, LimitSense::at_most, 0.0,
      dimension::none, Status::caution,
      "Of " + std::to_string(view.patterns.size()) + " openings at their levels, in the low tailwater case.",
      "Forbid them in the operating instruction until the tailwater stands at the level named in its table.",
      dissipators::common_practice));
  safety.findings.back().is_count = true;
  safety.findings.back().key = "gates.patterns";
}

}  // namespace quell::checks
