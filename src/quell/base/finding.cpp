#include "quell/base/finding.h"

#include <algorithm>
#include <cassert>
#include <utility>

namespace quell {

std::string_view name_of(Status status) {
  switch (status) {
    case Status::ok: return "ok";
    case Status::caution: return "caution";
    case Status::fails: return "fails";
  }
  return "unknown";
}

Finding worked(const Method& method, std::initializer_list<StepInput> inputs, Finding finding) {
  assert(inputs.size() == method.inputs.size());
  finding.method.method = &method;
  finding.method.inputs.assign(inputs.begin(), inputs.end());
  return finding;
}

Finding worked(const Method& method, Finding finding) {
  finding.method.method = &method;
  return finding;
}

Finding keyed(std::string_view key, Finding finding) {
  finding.key = key;
  return finding;
}

Finding counted(Finding finding) {
  finding.is_count = true;
  return finding;
}

Status worst_status(const Findings& findings) {
  Status worst = Status::ok;
  for (const auto& finding : findings) worst = std::max(worst, finding.status);
  return worst;
}

Status judge(double value, LimitSense sense, double limit, Status otherwise) {
  switch (sense) {
    case LimitSense::at_least: return value >= limit ? Status::ok : otherwise;
    case LimitSense::at_most: return value <= limit ? Status::ok : otherwise;
    case LimitSense::note: return otherwise;
  }
  return otherwise;
}

}  // namespace quell
