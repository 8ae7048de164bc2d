// The workings: a record of the methods that were used for one case, with the values that went in and came out.
// Callers that want one pass a `Working*`; passing null costs one comparison and nothing else.
#pragma once

#include <initializer_list>
#include <string>
#include <string_view>
#include <vector>

#include "quell/base/finding.h"
#include "quell/base/method.h"
#include "quell/base/step_input.h"

namespace quell {

/// One method applied once. Values are SI, in the order of the method's symbols.
struct WorkingStep {
  const Method* method = nullptr;
  std::vector<double> inputs;
  std::vector<std::string> keys;        ///< of the site file, one for each input; empty where the input was computed
  std::vector<std::string_view> words;  ///< where each input comes from; empty where its key or an earlier step says it
  std::vector<double> outputs;
  std::string purpose;  ///< what the result is, in the words of the job: "depth at the toe"
  bool inside_range = true;
};

/// Steps under a heading such as "Governing discharge, low tailwater".
struct WorkingSection {
  std::string title;
  std::string remark;  ///< may be empty
  std::vector<WorkingStep> steps;
};

class Working {
 public:
  void open_section(std::string title, std::string remark = {});
  void add(const Method& method, std::initializer_list<StepInput> inputs, std::initializer_list<double> outputs,
           std::string_view purpose);
  /// The step behind a finding, computed by its method, unless it is there already or names no inputs.
  void add_behind(const FindingMethod& behind, std::string_view purpose);
  const std::vector<WorkingSection>& sections() const { return sections_; }
  std::size_t step_count() const;

 private:
  std::vector<WorkingSection> sections_;
};

/// Number of a step as it is printed, from 1; 0: none.
struct StepNumber {
  std::size_t section = 0;
  std::size_t step = 0;
  bool found() const { return section > 0; }
};

/// The step that a finding leads to: the one of its method with its inputs; else the one whose result is its value or its
/// limit; else the last one of its method. None where the workings hold no such step.
StepNumber step_behind(const Finding& finding, const Working& working);

/// The earlier step whose result went into a step, for an input that is no number of the site file; none where it was computed
/// outside the workings.
StepNumber origin_of_input(const Working& working, StepNumber step, std::size_t input);

/// Records the step where a working is wanted.
inline void trace(Working* working, const Method& method, std::initializer_list<StepInput> inputs,
                  std::initializer_list<double> outputs, std::string_view purpose) {
  if (working != nullptr) working->add(method, inputs, outputs, purpose);
}

}  // namespace quell
