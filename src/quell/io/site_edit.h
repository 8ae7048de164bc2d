// Changes of a site file that leave the rest of its text alone: comments, order, blank lines, indents, line ends, the byte
// order mark, and every number as it was typed.
#pragma once

#include <span>
#include <string>
#include <string_view>
#include <tl/expected.hpp>
#include <vector>

#include "quell/io/site_file.h"

namespace quell::io {

enum class EditAction {
  /// Writes `value` at `path`. A key that is absent goes behind the last key of its section, and a section that is absent to
  /// its
  /// place in the schema.
  set,
  /// Takes out a key, a word of an inline table, a member of a list, a list, or a section with those below it. The comment
  /// directly above a heading goes with its section; comments above a key stay.
  remove,
  /// Adds the section or the member of a list that `path` names. Members go to the end, or, as "gates.patterns[2]", to that
  /// place. `value` is the member, for a section or a [[member]] an inline table whose keys become lines; empty: no keys.
  insert
};

/// One change. Paths are names with dots, and members of lists count from 1: "gates.patterns[2].openings",
/// "crest.design_head.cov".
struct SiteEdit {
  std::string path;
  EditAction action = EditAction::set;
  std::string value;  ///< one TOML value, written as it is: `"412.5 m"`, `["1 m", "2 m"]`
};

/// The text after all edits, in their order; or why not, and then no edit is made. Whether the values are sensible is for
/// `read_site_text` to say. The new text is parsed and compared with the document that was meant before it is given out.
tl::expected<std::string, std::vector<Problem>> apply_edits(std::string_view text, std::span<const SiteEdit> edits);

}  // namespace quell::io
