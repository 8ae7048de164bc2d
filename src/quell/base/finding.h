// A finding: one rule that was checked, with what was measured, the limit, its source and what to do.
// Acceptance (is the design good enough?) is kept apart from validity (may the formula be trusted?).
#pragma once

#include <boost/container/static_vector.hpp>
#include <initializer_list>
#include <string>
#include <vector>

#include "quell/base/method.h"
#include "quell/base/step_input.h"

namespace quell {

enum class Status { ok, caution, fails };

std::string_view name_of(Status status);  ///< "ok", "caution", "fails"

/// Which side of the limit is good.
enum class LimitSense { at_least, at_most, note };  ///< `note`: a statement without a limit

/// The method that yields what a finding judges, with what went in: enough to write the step of the workings.
struct FindingMethod {
  const Method* method = nullptr;                           ///< null: the finding only compares numbers that are given
  boost::container::static_vector<StepInput, 12> inputs{};  ///< SI, in the order of the symbols; empty: the type's or the
                                                            ///< case's own step shows it
};

struct Finding {
  std::string id{};  ///< stable, "type_2.unit_discharge": the key under which it can be accepted
  Status status = Status::ok;
  std::string title{};  ///< the rule in a few words: "Unit discharge without a physical model"
  double value = 0.0;   ///< SI
  double limit = 0.0;   ///< SI
  LimitSense sense = LimitSense::note;
  Dimension dimension{};
  std::string text{};    ///< what was found, a sentence
  std::string advice{};  ///< what to do; empty where status is ok
  std::string source{};  ///< key in data/sources.bib, or "" with common practice
  std::string place{};   ///< where in the source
  Provenance provenance = Provenance::common_practice;
  std::string accepted_by{};  ///< who accepted it, by the site file; empty where nobody did. The status stays as it is
  std::string accepted_because{};
  FindingMethod method{};       ///< yields `value`, or `limit` where the value is given, or what a ratio or a sum is made of
  std::string_view key{};       ///< key of the site file that is judged, "river.bed_degradation"; empty where none is alone
  bool is_count = false;        ///< value and limit are whole numbers: how many, or no (0) and yes (1)
  bool asks_for_model = false;  ///< the limit is that of what was tested: beyond it a physical model is required
};

using Findings = std::vector<Finding>;

/// The finding with the method behind it. Without inputs the step is one that the workings hold anyway.
Finding worked(const Method& method, std::initializer_list<StepInput> inputs, Finding finding);
Finding worked(const Method& method, Finding finding);

/// The finding with the key of the site file that it judges.
Finding keyed(std::string_view key, Finding finding);

/// The finding with a value that is a whole number.
Finding counted(Finding finding);

/// The worst status of a list; `ok` for an empty one.
Status worst_status(const Findings& findings);

/// Judges `value` against `limit`: ok on the good side, otherwise `otherwise`.
Status judge(double value, LimitSense sense, double limit, Status otherwise);

}  // namespace quell
