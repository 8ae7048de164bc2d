// Where the parts of a TOML text stand, in bytes: what an edit needs to change one of them and leave the rest alone. Places
// come from the parser's regions; only separators, line ends and comments are looked for in the text.
#pragma once

#include <toml++/toml.h>

#include <cstddef>
#include <map>
#include <string>
#include <string_view>
#include <vector>

namespace quell::io {

/// Bytes from `begin` up to, and without, `end`.
struct Span {
  std::size_t begin = 0;
  std::size_t end = 0;
};

class TomlLayout {
 public:
  /// `text` holds no byte order mark and parses to `root`; both must outlive the layout.
  TomlLayout(std::string_view text, const toml::table& root);

  /// A heading, [a.b] or [[a.b]], and the table under it.
  struct Header {
    std::size_t begin = 0;
    const toml::table* table = nullptr;
    std::string name;  ///< "river.bed"
  };
  /// `key = value` on lines of its own.
  struct Entry {
    std::size_t begin = 0;  ///< of the last part of the key
    Span value;
  };
  /// An array or inline table: the members of the one, the `key = value` of the other.
  struct Bracketed {
    Span outer;  ///< with the brackets
    std::vector<Span> items;
    bool is_table = false;
  };

  std::string_view text() const { return text_; }
  std::string_view slice(Span span) const { return text_.substr(span.begin, span.end - span.begin); }
  Span value(const toml::node& node) const;

  /// In the order of the file.
  const std::vector<Header>& headers() const { return headers_; }
  /// Position of the table's own heading in `headers`; npos where it has none.
  std::size_t header_of(const toml::table& table) const;
  static constexpr std::size_t npos = static_cast<std::size_t>(-1);

  /// A section, a list of sections, or what exists only because a section below it has a heading.
  bool has_headings(const toml::node& node) const;
  /// A table that exists because keys are written with dots.
  bool is_dotted(const toml::node& node) const;
  /// The keys of a table that stand under its heading (or in its braces), those with dots among them; in the order of the file.
  std::vector<Entry> entries(const toml::table& table) const;
  Bracketed bracketed(const toml::node& node) const;

  /// Of the block of a heading: first byte of the comment that stands directly above it, or of its own line.
  std::size_t lead_of(std::size_t header) const;
  /// Behind the last line of the block, its closing comment among them.
  std::size_t tail_of(std::size_t header) const;
  /// Behind the last line of the keys before the first heading; 0 where there are none.
  std::size_t head_end() const;

  std::size_t line_begin(std::size_t at) const;
  std::size_t line_end(std::size_t at) const;  ///< behind the line feed
  std::size_t skip_blanks(std::size_t at) const;
  std::size_t back_over_blanks(std::size_t at) const;
  bool is_blank_line(std::size_t at) const;
  bool is_comment_line(std::size_t at) const;
  /// The comma that follows a member, behind blanks, line ends and comments; npos where there is none.
  std::size_t comma_after(std::size_t at) const;
  /// The '#' of the comment on the rest of the line; npos where there is none. `at` stands outside strings.
  std::size_t comment_after(std::size_t at) const;
  /// The line end in use around there: "\n" or "\r\n".
  std::string_view newline_at(std::size_t at) const;

 private:
  std::string_view text_;
  const toml::table& root_;
  std::vector<std::size_t> line_starts_;
  std::vector<Header> headers_;
  std::map<const toml::table*, std::size_t> header_of_table_;

  std::size_t offset(const toml::source_position& place) const;
  void collect_headers(const toml::table& table, const std::string& path);
  void collect_entries(const toml::table& table, std::vector<Entry>& found) const;
  /// Behind the line of the last key (or the heading) of a block.
  std::size_t keys_end(std::size_t header) const;
};

}  // namespace quell::io
