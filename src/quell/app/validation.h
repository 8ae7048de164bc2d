// The validation book: published numbers (data/checks/<author_year>.toml), run through the records of the methods.
// data/checks/README.md says how a row is written.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "quell/base/units.h"

namespace quell::app {

/// One number of one check, compared. Values are SI; `*_text` is what the book says, in the source's own unit.
struct CheckRow {
  std::string method;
  std::string place;
  std::string provenance;  ///< seen, memory or computed
  std::string symbol;      ///< "y2"; "answer" where the check is that there is none; "valid" where validity differs
  Dimension dimension;
  double expected = 0.0;
  double got = 0.0;
  double tolerance = 0.0;     ///< absolute
  std::string expected_text;  ///< "3.19 ft"
  std::string got_text;       ///< the method's value in the same unit
  std::string tolerance_text;
  bool passed = false;
  std::string note;  ///< why it fails, or what else there is to say
  std::string why;   ///< why this tolerance
};

/// One file of the book after its run.
struct CheckedFile {
  std::string name;
  std::string source;  ///< key in data/sources.bib, or the citation itself
  std::string title;
  std::string known;  ///< how the whole file is known, where a row does not say otherwise
  std::vector<CheckRow> rows;
  std::vector<std::string> faults;  ///< the file itself is wrong: a misspelt key, an unknown method. Each counts as a failure.

  std::size_t failures() const;
  bool passed() const { return failures() == 0; }
};

/// Reads and runs one file. Never throws for what the text holds.
CheckedFile run_checks(std::string_view name, std::string_view text);

/// "Peterka 1984" for a key, the citation as it stands for anything else.
std::string source_label(const CheckedFile& file);

}  // namespace quell::app
