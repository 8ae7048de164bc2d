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

std::span<const double> Method::values_of(std::size_t input, std::span<const double> values) const {
  if (!takes_lists()) return values.subspan(input, 1);
  std::size_t singles = 0;
  while (!inputs[singles].list) ++singles;
  if (input < singles) return values.subspan(input, 1);
  const std::size_t length = (values.size() - singles) / (inputs.size() - singles);
  return values.subspan(singles + (input - singles) * length, length);
}

Outcome<void> Method::answer(std::span<const double> values, std::span<double> results) const {
  assert((takes_lists() || values.size() == inputs.size()) && results.size() == outputs.size());
  for (std::size_t i = 0; i < inputs.size(); ++i) {
    const Range possible = inputs[i].possible_values();
    for (const double value : values_of(i, values))
      if (!possible.contains(value))  // a NaN lies in no range
        return bad_input(inputs[i].name.view(), value, possible.lowest, possible.highest, inputs[i].meaning.view());
  }
  if (auto done = evaluate(values, results); !done) return done;
  for (const double result : results)
    if (!std::isfinite(result)) return no_answer("the inputs give no finite result");
  return {};
}

bool Method::covers(std::span<const double> values) const {
  assert(takes_lists() || values.size() == inputs.size());
  for (std::size_t i = 0; i < inputs.size(); ++i)
    for (const double value : values_of(i, values))
      if (!inputs[i].range.contains(value)) return false;
  return condition == nullptr || condition(values).empty();
}

}  // namespace quell
