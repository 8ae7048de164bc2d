#include "quell/base/finding.h"

#include <algorithm>

namespace quell {

std::string_view name_of(Status status) {
  switch (status) {
    case Status::ok: return "ok";
    case Status::caution: return "caution";
    case Status::fails: return "fails";
  }
  return "unknown";
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
