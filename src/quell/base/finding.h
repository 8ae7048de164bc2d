// A finding: one rule that was checked, with what was measured, the limit, its source and what to do.
// Acceptance (is the design good enough?) is kept apart from validity (may the formula be trusted?).
#pragma once

#include <string>
#include <vector>

#include "quell/base/method.h"

namespace quell {

enum class Status { ok, caution, fails };

std::string_view name_of(Status status);  ///< "ok", "caution", "fails"

/// Which side of the limit is good.
enum class LimitSense { at_least, at_most, note };  ///< `note`: a statement without a limit

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
  bool asks_for_model = false;  ///< the limit is that of what was tested: beyond it a physical model is required
};

using Findings = std::vector<Finding>;

/// The worst status of a list; `ok` for an empty one.
Status worst_status(const Findings& findings);

/// Judges `value` against `limit`: ok on the good side, otherwise `otherwise`.
Status judge(double value, LimitSense sense, double limit, Status otherwise);

}  // namespace quell
