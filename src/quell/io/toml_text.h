// TOML text to a document, and documents compared: what the edits of a site file start from and are proved with.
#pragma once

#include <toml++/toml.h>

#include <string>
#include <string_view>
#include <tl/expected.hpp>
#include <vector>

#include "quell/io/edit_path.h"
#include "quell/io/site_file.h"

namespace quell::io {

/// The document of a text without byte order mark, or the problem that keeps it from being read.
tl::expected<toml::table, std::vector<Problem>> parse_toml(std::string_view text);

/// One value as it is typed. `holder` is the document "v = …" with that text.
struct Fragment {
  std::string text;      ///< without the blanks around it
  std::string document;  ///< "v = " and the text
  toml::table holder;
  const toml::node& node() const { return *holder.get("v"); }
};
/// `name` is that of its key, for messages. Refuses what is not exactly one value: nothing, two lines, a comment behind it.
tl::expected<Fragment, std::string> read_fragment(std::string_view name, std::string_view typed);

/// Whether two nodes hold the same, whatever their order and spelling.
bool same_content(const toml::node& a, const toml::node& b);

/// The same changes made to the document itself. Tables on the way are made where they are missing.
void put_value(toml::table& document, std::span<const PathStep> path, const toml::node& value);
/// Adds a member to the list at `path`, whose own member number is not looked at, before the member of that index.
void put_member(toml::table& document, std::span<const PathStep> path, std::size_t index, const toml::node& value);
/// Takes out what stands at `path`. A list of sections that is then empty vanishes.
void take_out(toml::table& document, std::span<const PathStep> path, bool vanishes_when_empty);

}  // namespace quell::io
