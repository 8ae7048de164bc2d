#include "quell/base/method.h"

#include <cassert>
#include <cmath>
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

Outcome<void> Method::answer(std::span<const double> values, std::span<double> results) const {
  assert(values.size() == inputs.size() && results.size() == outputs.size());
  for (std::size_t i = 0; i < inputs.size(); ++i) {
    const Range possible = inputs[i].possible_values();
    if (!possible.contains(values[i]))  // a NaN lies in no range
      return bad_input(inputs[i].name.view(), values[i], possible.lowest, possible.highest, inputs[i].meaning.view());
  }
  if (auto done = evaluate(values, results); !done) return done;
  for (const double result : results)
    if (!std::isfinite(result)) return no_answer("the inputs give no finite result");
  return {};
}

bool Method::covers(std::span<const double> values) const {
  assert(values.size() == inputs.size());
  for (std::size_t i = 0; i < inputs.size(); ++i)
    if (!inputs[i].range.contains(values[i])) return false;
  return condition == nullptr || condition(values).empty();
}

}  // namespace quell
