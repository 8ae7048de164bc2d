#include "quell/io/toml_layout.h"

#include <algorithm>

namespace quell::io {
namespace {

bool is_blank(char c) {
  return c == ' ' || c == '\t';
}
bool is_space(char c) {
  return is_blank(c) || c == '\r' || c == '\n';
}
bool continues_character(char c) {
  return (static_cast<unsigned char>(c) & 0xC0u) == 0x80u;
}

}  // namespace

TomlLayout::TomlLayout(std::string_view text, const toml::table& root) : text_(text), root_(root), line_starts_{0} {
  for (std::size_t i = 0; i < text.size(); ++i)
    if (text[i] == '\n') line_starts_.push_back(i + 1);
  collect_headers(root, "");
  // A table that only a heading below it calls for has the place of that heading; the heading belongs to the lowest of them,
  // which was collected last.
  std::stable_sort(headers_.begin(), headers_.end(), [](const Header& a, const Header& b) { return a.begin < b.begin; });
  std::vector<Header> own;
  for (const Header& header : headers_) {
    if (!own.empty() && own.back().begin == header.begin) own.pop_back();
    own.push_back(header);
  }
  headers_ = std::move(own);
  for (std::size_t i = 0; i < headers_.size(); ++i) header_of_table_[headers_[i].table] = i;
}

/// The parser counts lines and characters from 1.
std::size_t TomlLayout::offset(const toml::source_position& place) const {
  const std::size_t line = std::clamp<std::size_t>(place.line, 1, line_starts_.size()) - 1;
  std::size_t at = line_starts_[line];
  for (std::size_t column = 1; column < place.column && at < text_.size() && text_[at] != '\n'; ++column) {
    ++at;
    while (at < text_.size() && continues_character(text_[at])) ++at;
  }
  return at;
}

Span TomlLayout::value(const toml::node& node) const {
  Span span{skip_blanks(offset(node.source().begin)), offset(node.source().end)};
  while (span.end > span.begin && is_space(text_[span.end - 1])) --span.end;
  return span;
}

void TomlLayout::collect_headers(const toml::table& table, const std::string& path) {
  for (const auto& [key, node] : table) {
    std::string name = path;
    name.append(path.empty() ? "" : ".").append(key.str());
    if (const toml::table* inner = node.as_table(); inner != nullptr && !inner->is_inline()) {
      if (has_headings(node)) headers_.push_back({offset(node.source().begin), inner, name});
      collect_headers(*inner, name);
    } else if (has_headings(node)) {
      for (const toml::node& member : *node.as_array()) {
        headers_.push_back({offset(member.source().begin), member.as_table(), name});
        collect_headers(*member.as_table(), name);
      }
    }
  }
}

std::size_t TomlLayout::header_of(const toml::table& table) const {
  const auto found = header_of_table_.find(&table);
  return found == header_of_table_.end() ? npos : found->second;
}

bool TomlLayout::has_headings(const toml::node& node) const {
  if (const toml::array* members = node.as_array())
    return !members->empty() && members->front().is_table() && !members->front().as_table()->is_inline();
  const toml::table* table = node.as_table();
  if (table == nullptr || table->is_inline() || table == &root_) return false;
  const std::size_t at = offset(node.source().begin);
  return at < text_.size() && text_[at] == '[';
}

bool TomlLayout::is_dotted(const toml::node& node) const {
  const toml::table* table = node.as_table();
  return table != nullptr && table != &root_ && !table->is_inline() && !has_headings(node);
}

void TomlLayout::collect_entries(const toml::table& table, std::vector<Entry>& found) const {
  for (const auto& [name, node] : table) {
    if (has_headings(node)) continue;
    if (is_dotted(node))
      collect_entries(*node.as_table(), found);
    else
      found.push_back({offset(name.source().begin), value(node)});
  }
}

std::vector<TomlLayout::Entry> TomlLayout::entries(const toml::table& table) const {
  std::vector<Entry> found;
  collect_entries(table, found);
  std::sort(found.begin(), found.end(), [](const Entry& a, const Entry& b) { return a.begin < b.begin; });
  return found;
}

TomlLayout::Bracketed TomlLayout::bracketed(const toml::node& node) const {
  Bracketed result{value(node), {}, node.is_table()};
  if (const toml::array* members = node.as_array()) {
    for (const toml::node& member : *members) result.items.push_back(value(member));
    return result;
  }
  std::size_t begin = skip_blanks(result.outer.begin + 1);
  for (const Entry& entry : entries(*node.as_table())) {
    result.items.push_back({begin, entry.value.end});
    const std::size_t comma = comma_after(entry.value.end);
    begin = comma == npos ? entry.value.end : skip_blanks(comma + 1);
  }
  return result;
}

std::size_t TomlLayout::head_end() const {
  const std::vector<Entry> keys = entries(root_);
  return keys.empty() ? 0 : line_end(keys.back().value.end);
}

std::size_t TomlLayout::keys_end(std::size_t header) const {
  const std::vector<Entry> keys = entries(*headers_[header].table);
  return line_end(keys.empty() ? headers_[header].begin : keys.back().value.end);
}

std::size_t TomlLayout::lead_of(std::size_t header) const {
  const std::size_t own = line_begin(headers_[header].begin);
  const std::size_t least = header == 0 ? head_end() : keys_end(header - 1);
  std::size_t lead = own;
  while (lead > least && is_comment_line(line_begin(lead - 1))) lead = line_begin(lead - 1);
  // What stands at the very top speaks of the whole file.
  return lead == 0 ? own : lead;
}

std::size_t TomlLayout::tail_of(std::size_t header) const {
  const std::size_t most = header + 1 < headers_.size() ? lead_of(header + 1) : text_.size();
  std::size_t tail = keys_end(header);
  while (tail < most && is_comment_line(tail)) tail = line_end(tail);
  return tail;
}

std::size_t TomlLayout::line_begin(std::size_t at) const {
  const auto after = std::upper_bound(line_starts_.begin(), line_starts_.end(), at);
  return *(after - 1);
}

std::size_t TomlLayout::line_end(std::size_t at) const {
  const auto after = std::upper_bound(line_starts_.begin(), line_starts_.end(), at);
  return after == line_starts_.end() ? text_.size() : *after;
}

std::size_t TomlLayout::skip_blanks(std::size_t at) const {
  while (at < text_.size() && is_blank(text_[at])) ++at;
  return at;
}

std::size_t TomlLayout::back_over_blanks(std::size_t at) const {
  while (at > 0 && is_blank(text_[at - 1])) --at;
  return at;
}

bool TomlLayout::is_blank_line(std::size_t at) const {
  const std::string_view line = text_.substr(line_begin(at), line_end(at) - line_begin(at));
  return std::all_of(line.begin(), line.end(), is_space);
}

bool TomlLayout::is_comment_line(std::size_t at) const {
  const std::size_t first = skip_blanks(line_begin(at));
  return first < text_.size() && text_[first] == '#';
}

std::size_t TomlLayout::comma_after(std::size_t at) const {
  while (at < text_.size() && (is_space(text_[at]) || text_[at] == '#')) at = text_[at] == '#' ? line_end(at) : at + 1;
  return at < text_.size() && text_[at] == ',' ? at : npos;
}

std::size_t TomlLayout::comment_after(std::size_t at) const {
  const std::size_t end = line_end(at);
  for (char quote = '\0'; at < end; ++at) {
    const char c = text_[at];
    if (quote != '\0') {
      if (c == '\\' && quote == '"')
        ++at;
      else if (c == quote)
        quote = '\0';
    } else if (c == '#') {
      return at;
    } else if (c == '"' || c == '\'') {
      // A string over many lines has no comment behind it on this one.
      if (text_.substr(at, 3) == std::string(3, c)) return npos;
      quote = c;
    }
  }
  return npos;
}

std::string_view TomlLayout::newline_at(std::size_t at) const {
  std::size_t feed = at > 0 ? text_.rfind('\n', at - 1) : std::string_view::npos;
  if (feed == std::string_view::npos) feed = text_.find('\n', at);
  return feed != std::string_view::npos && feed > 0 && text_[feed - 1] == '\r' ? "\r\n" : "\n";
}

}  // namespace quell::io
