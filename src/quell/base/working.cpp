#include "quell/base/working.h"

#include <cassert>
#include <utility>

namespace quell {

void Working::open_section(std::string title, std::string remark) {
  sections_.push_back({std::move(title), std::move(remark), {}});
}

void Working::add(const Method& method, std::initializer_list<double> inputs, std::initializer_list<double> outputs,
                  std::string_view purpose) {
  assert(inputs.size() == method.inputs.size() && outputs.size() == method.outputs.size());
  if (sections_.empty()) open_section("Workings");
  WorkingStep step{&method, inputs, outputs, std::string(purpose), true};
  step.inside_range = method.covers(step.inputs);
  sections_.back().steps.push_back(std::move(step));
}

std::size_t Working::step_count() const {
  std::size_t count = 0;
  for (const auto& section : sections_) count += section.steps.size();
  return count;
}

}  // namespace quell
