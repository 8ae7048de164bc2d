#include "quell/base/method.h"

#include <cassert>
#include <cstddef>

namespace quell {

std::string_view name_of(Provenance provenance) {
  switch (provenance) {
    case Provenance::seen: return "seen in the source";
    case Provenance::memory: return "from memory";
    case Provenance::common_practice: return "common practice, no published source";
    case Provenance::derived: return "derived";
  }
  return "unknown";
}

bool Method::covers(std::span<const double> values) const {
  assert(values.size() == inputs.size());
  for (std::size_t i = 0; i < inputs.size(); ++i)
    if (!inputs[i].range.contains(values[i])) return false;
  return condition == nullptr || condition(values).empty();
}

}  // namespace quell
