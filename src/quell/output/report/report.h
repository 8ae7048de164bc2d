// The report: one self-contained HTML file that also prints well on A4.
#pragma once

#include <string>
#include <vector>

#include "quell/design/result.h"

namespace quell::output {

/// One line of the inputs as the engineer typed them.
struct ReportInput {
  std::string section, key, typed, meaning;
  bool is_default = false;
};

/// What the report needs besides the result. Times and paths come from the caller: the same input gives the same bytes.
struct ReportContext {
  std::string program_version;
  std::string site_path;
  std::string site_digest;
  UnitSystem units = UnitSystem::si;  ///< in which it prints
  std::vector<ReportInput> inputs;
};

std::string report_html(const site::Site& site, const design::DesignResult& result, const ReportContext& context);

/// Workings as a fragment of HTML with MathML: the one section of that number (from 1), or all for 0; empty where there is no
/// such section. Steps and equations are those of the report.
std::string workings_html(const Working& working, std::size_t section, UnitSystem units);

/// The summary for the terminal, at most 100 columns, readable without colour.
std::string terminal_summary(const site::Site& site, const design::DesignResult& result, UnitSystem units);

}  // namespace quell::output
