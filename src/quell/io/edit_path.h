// Where an edit goes: "crest.level", "gates.patterns[2].openings", "crest.design_head.cov". Members count from 1, as they do in
// the reader's messages.
#pragma once

#include <toml++/toml.h>

#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace quell::io {

struct PathStep {
  std::string name;        ///< letters a to z, digits, '_' and '-'
  std::size_t member = 0;  ///< of the list of that name, from 1; 0: the list or value itself
};
using EditPath = std::vector<PathStep>;

/// Nothing where the text is not a path of at most eight names.
std::optional<EditPath> parse_edit_path(std::string_view text);

/// "gates.patterns.openings": the names without the numbers of members.
std::string schema_name(std::span<const PathStep> path);

/// Why a key that is not in the file may not be put in; empty where the schema has it, or has it as a word of a value that
/// may be a table (a spread, an uncertainty).
std::string why_unknown(std::span<const PathStep> path);

/// How far a path leads into a document.
struct Walk {
  const toml::node* node = nullptr;         ///< the last that was found, the root at least
  std::vector<const toml::table*> parents;  ///< for each step: the table that holds its name
  std::size_t found = 0;                    ///< steps found whole
  bool lacks_member = false;                ///< the step after them names a list (then `node`) without that many members
  std::string wrong;                        ///< why the path cannot be followed in this document
};
Walk walk(const toml::table& root, std::span<const PathStep> path);

}  // namespace quell::io
