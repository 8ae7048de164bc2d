// The workings: a record of the methods that were used for one case, with the values that went in and came out.
// Callers that want one pass a `Working*`; passing null costs one comparison and nothing else.
#pragma once

#include <initializer_list>
#include <string>
#include <string_view>
#include <vector>

#include "quell/base/method.h"

namespace quell {

/// One method applied once. Values are SI, in the order of the method's symbols.
struct WorkingStep {
  const Method* method = nullptr;
  std::vector<double> inputs;
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
  void add(const Method& method, std::initializer_list<double> inputs, std::initializer_list<double> outputs,
           std::string_view purpose);
  const std::vector<WorkingSection>& sections() const { return sections_; }
  std::size_t step_count() const;

 private:
  std::vector<WorkingSection> sections_;
};

/// Records the step where a working is wanted.
inline void trace(Working* working, const Method& method, std::initializer_list<double> inputs,
                  std::initializer_list<double> outputs, std::string_view purpose) {
  if (working != nullptr) working->add(method, inputs, outputs, purpose);
}

}  // namespace quell
