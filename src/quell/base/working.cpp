#include "quell/base/working.h"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <utility>

namespace quell {
namespace {

/// A number with few digits may stand in two places by chance; one with many that is equal to the last bit is the same number.
bool is_unmistakable(double value) {
  if (value == 0.0 || !std::isfinite(value)) return false;
  const double scale = std::pow(10.0, 4.0 - std::floor(std::log10(std::abs(value))));
  return std::abs(value * scale - std::round(value * scale)) > 1e-6;
}

bool holds(const std::vector<double>& values, double value) {
  return std::find(values.begin(), values.end(), value) != values.end();
}

bool has_inputs(const WorkingStep& step, const FindingMethod& behind) {
  return step.method == behind.method &&
         std::equal(step.inputs.begin(), step.inputs.end(), behind.inputs.begin(), behind.inputs.end(),
                    [](double value, const StepInput& input) { return value == input.value; });
}

template <class Inputs>
void put_in(WorkingStep& step, const Inputs& inputs) {
  for (const StepInput& input : inputs) {
    step.inputs.push_back(input.value);
    step.keys.emplace_back(input.key);
    step.words.push_back(input.words);
  }
}

/// The first step that `wanted` is true of.
template <class Wanted>
StepNumber find_step(const Working& working, Wanted wanted) {
  const auto& sections = working.sections();
  for (std::size_t s = 0; s < sections.size(); ++s)
    for (std::size_t i = 0; i < sections[s].steps.size(); ++i)
      if (wanted(sections[s].steps[i])) return {s + 1, i + 1};
  return {};
}

}  // namespace

void Working::open_section(std::string title, std::string remark) {
  sections_.push_back({std::move(title), std::move(remark), {}});
}

void Working::add(const Method& method, std::initializer_list<StepInput> inputs, std::initializer_list<double> outputs,
                  std::string_view purpose) {
  assert(inputs.size() == method.inputs.size() && outputs.size() == method.outputs.size());
  if (sections_.empty()) open_section("Workings");
  WorkingStep step{&method, {}, {}, {}, outputs, std::string(purpose), true};
  put_in(step, inputs);
  step.inside_range = method.covers(step.inputs);
  sections_.back().steps.push_back(std::move(step));
}

void Working::add_behind(const FindingMethod& behind, std::string_view purpose) {
  if (behind.method == nullptr || behind.inputs.empty()) return;
  if (find_step(*this, [&](const WorkingStep& step) { return has_inputs(step, behind); }).found()) return;
  WorkingStep step{behind.method, {}, {}, {}, std::vector<double>(behind.method->outputs.size()), std::string(purpose), true};
  put_in(step, behind.inputs);
  if (!behind.method->answer(step.inputs, step.outputs)) return;
  step.inside_range = behind.method->covers(step.inputs);
  if (sections_.empty()) open_section("Workings");
  sections_.back().steps.push_back(std::move(step));
}

std::size_t Working::step_count() const {
  std::size_t count = 0;
  for (const auto& section : sections_) count += section.steps.size();
  return count;
}

StepNumber step_behind(const Finding& finding, const Working& working) {
  const auto& behind = finding.method;
  const auto yields = [&](const WorkingStep& step) {
    return (is_unmistakable(finding.value) && holds(step.outputs, finding.value)) ||
           (is_unmistakable(finding.limit) && holds(step.outputs, finding.limit));
  };
  if (behind.method == nullptr) return find_step(working, yields);
  const auto own = [&](const WorkingStep& step) { return step.method == behind.method; };
  if (!behind.inputs.empty())
    if (const auto exact = find_step(working, [&](const WorkingStep& step) { return has_inputs(step, behind); }); exact.found())
      return exact;
  if (const auto number = find_step(working, [&](const WorkingStep& step) { return own(step) && yields(step); });
      number.found())
    return number;
  StepNumber last;
  const auto& sections = working.sections();
  for (std::size_t s = 0; s < sections.size(); ++s)
    for (std::size_t i = 0; i < sections[s].steps.size(); ++i)
      if (own(sections[s].steps[i])) last = {s + 1, i + 1};
  return last;
}

StepNumber origin_of_input(const Working& working, StepNumber number, std::size_t input) {
  const auto& sections = working.sections();
  const auto& step = sections[number.section - 1].steps[number.step - 1];
  const double value = step.inputs[input];
  if (!step.keys[input].empty() || value == 0.0) return {};
  const Symbol& wanted = step.method->inputs[input];
  // A round number counts as the same only under the same symbol.
  const bool any_symbol = is_unmistakable(value);
  StepNumber origin;  // the nearest before it
  for (std::size_t s = 0; s < number.section; ++s)
    for (std::size_t i = 0; i < sections[s].steps.size() && (s + 1 < number.section || i + 1 < number.step); ++i) {
      const auto& earlier = sections[s].steps[i];
      for (std::size_t k = 0; k < earlier.outputs.size(); ++k)
        if (const Symbol& symbol = earlier.method->outputs[k]; earlier.outputs[k] == value &&
                                                               symbol.dimension == wanted.dimension &&
                                                               (any_symbol || symbol.name.view() == wanted.name.view()))
          origin = {s + 1, i + 1};
    }
  return origin;
}

}  // namespace quell
