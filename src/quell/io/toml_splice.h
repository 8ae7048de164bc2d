// Changes of a TOML text, each as the bytes that go and those that come in their place. The layout around them is kept:
// indents, line ends, the columns of comments, one member to a line or many.
#pragma once

#include <span>
#include <string>
#include <vector>

#include "quell/io/toml_layout.h"

namespace quell::io {

struct Splice {
  Span old;
  std::string fresh;
};

/// The text with all changes made; deletions may overlap each other, nothing else may.
std::string spliced(std::string_view text, std::vector<Splice> splices);

/// Another value in place of the old one; a comment behind it keeps its column where it fits.
std::vector<Splice> replace_value(const TomlLayout& layout, Span value, std::string_view fresh);

/// One more member of an array or inline table, to stand before the item of that index, or at the end.
std::vector<Splice> insert_item(const TomlLayout& layout, const TomlLayout::Bracketed& list, std::size_t index,
                                std::string_view item);
std::vector<Splice> remove_item(const TomlLayout& layout, const TomlLayout::Bracketed& list, std::size_t index);

/// The whole lines of a `key = value`.
Splice remove_entry(const TomlLayout& layout, const TomlLayout::Entry& entry);

/// A line behind the last of these keys, with its indent.
Splice insert_line_after(const TomlLayout& layout, const TomlLayout::Entry& last, std::string_view line);
/// A line behind a heading that has no keys, or as the first of the file.
Splice insert_line_under(const TomlLayout& layout, std::size_t header, std::string_view line);
Splice insert_first_line(const TomlLayout& layout, std::string_view line);

/// The blocks of these headings with the comments that belong to them.
std::vector<Splice> remove_blocks(const TomlLayout& layout, std::span<const std::size_t> headers);
/// A block of lines, the heading first, behind or before the block of a heading; `header` npos: at the end of the file.
Splice insert_block_after(const TomlLayout& layout, std::size_t header, std::span<const std::string> lines);
Splice insert_block_before(const TomlLayout& layout, std::size_t header, std::span<const std::string> lines);

}  // namespace quell::io
