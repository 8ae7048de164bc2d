#include "quell/io/toml_splice.h"

#include <fmt/format.h>

#include <algorithm>

namespace quell::io {
namespace {

constexpr std::size_t npos = TomlLayout::npos;

std::ptrdiff_t characters(std::string_view text) {
  return std::count_if(text.begin(), text.end(), [](char c) { return (static_cast<unsigned char>(c) & 0xC0u) != 0x80u; });
}

/// Takes a growth of the line out of the spaces before its comment; at least one stays.
void keep_comment_column(const TomlLayout& layout, std::size_t at, std::ptrdiff_t growth, std::vector<Splice>& splices) {
  const std::size_t comment = layout.comment_after(at);
  if (comment == npos || growth == 0) return;
  const std::size_t gap = layout.back_over_blanks(comment);
  const std::string_view blanks = layout.slice({gap, comment});
  if (gap < at || blanks.empty() || blanks.find('\t') != std::string_view::npos) return;
  const std::ptrdiff_t width = std::max<std::ptrdiff_t>(1, static_cast<std::ptrdiff_t>(blanks.size()) - growth);
  splices.push_back({{gap, comment}, std::string(static_cast<std::size_t>(width), ' ')});
}

bool starts_line(const TomlLayout& layout, std::size_t at) {
  return layout.back_over_blanks(at) == layout.line_begin(at);
}

bool ends_line(const TomlLayout& layout, std::size_t at) {
  const std::size_t next = layout.skip_blanks(at);
  return next >= layout.text().size() || std::string_view("#\r\n").find(layout.text()[next]) != std::string_view::npos;
}

std::string_view indent_of(const TomlLayout& layout, std::size_t at) {
  const std::size_t begin = layout.line_begin(at);
  return layout.slice({begin, layout.skip_blanks(begin)});
}

std::vector<Splice> insert_only_item(const TomlLayout& layout, const TomlLayout::Bracketed& list, std::string_view item) {
  const Span inner{list.outer.begin + 1, list.outer.end - 1};
  if (layout.skip_blanks(inner.begin) >= inner.end) {
    const std::string_view blank = inner.begin == inner.end ? (list.is_table ? " " : "") : " ";
    return {{inner, fmt::format("{}{}{}", blank, item, blank)}};
  }
  const std::size_t at = layout.line_end(inner.begin);
  return {{{at, at}, fmt::format("{}  {},{}", indent_of(layout, list.outer.begin), item, layout.newline_at(at))}};
}

std::vector<Splice> append_item(const TomlLayout& layout, const TomlLayout::Bracketed& list, std::string_view item) {
  const Span last = list.items.back();
  const std::size_t comma = layout.comma_after(last.end);
  const std::size_t end = comma == npos ? last.end : comma + 1;
  if (!starts_line(layout, last.begin) || !ends_line(layout, end)) {
    if (comma == npos) return {{{end, end}, fmt::format(", {}", item)}};
    return {{{end, end}, fmt::format(" {},", item)}};
  }
  std::vector<Splice> splices;
  const std::size_t next = layout.line_end(end);
  if (comma == npos) {
    splices.push_back({{end, end}, ","});
    keep_comment_column(layout, end, 1, splices);
  }
  splices.push_back(
      {{next, next},
       fmt::format("{}{}{}{}", indent_of(layout, last.begin), item, comma == npos ? "" : ",", layout.newline_at(next))});
  return splices;
}

/// Lines of a block in the line ends of the place.
std::string joined(std::span<const std::string> lines, std::string_view newline) {
  std::string text;
  for (const std::string& line : lines) text += fmt::format("{}{}", line, newline);
  return text;
}

/// Whole lines put in at the beginning of a line, or behind a last line that has no end.
Splice lines_at(const TomlLayout& layout, std::size_t at, std::string lines) {
  const std::string_view text = layout.text();
  const std::string_view newline = layout.newline_at(at);
  if (at == text.size() && !text.empty() && text.back() != '\n') {
    lines.erase(lines.size() - newline.size());
    lines.insert(0, newline);
  }
  return {{at, at}, std::move(lines)};
}

}  // namespace

std::string spliced(std::string_view text, std::vector<Splice> splices) {
  std::stable_sort(splices.begin(), splices.end(), [](const Splice& a, const Splice& b) { return a.old.begin < b.old.begin; });
  std::string result;
  std::size_t at = 0;
  for (const Splice& splice : splices) {
    if (splice.old.begin > at) result += text.substr(at, splice.old.begin - at);
    result += splice.fresh;
    at = std::max(at, splice.old.end);
  }
  return result += text.substr(at);
}

std::vector<Splice> replace_value(const TomlLayout& layout, Span value, std::string_view fresh) {
  std::vector<Splice> splices{{value, std::string(fresh)}};
  const std::string_view old = layout.slice(value);
  if (old.find('\n') == std::string_view::npos && fresh.find('\n') == std::string_view::npos)
    keep_comment_column(layout, value.end, characters(fresh) - characters(old), splices);
  return splices;
}

std::vector<Splice> insert_item(const TomlLayout& layout, const TomlLayout::Bracketed& list, std::size_t index,
                                std::string_view item) {
  if (list.items.empty()) return insert_only_item(layout, list, item);
  if (index >= list.items.size()) return append_item(layout, list, item);
  const std::size_t at = list.items[index].begin;
  if (!starts_line(layout, at)) return {{{at, at}, fmt::format("{}, ", item)}};
  const std::size_t line = layout.line_begin(at);
  return {{{line, line}, fmt::format("{}{},{}", indent_of(layout, at), item, layout.newline_at(at))}};
}

std::vector<Splice> remove_item(const TomlLayout& layout, const TomlLayout::Bracketed& list, std::size_t index) {
  const Span item = list.items[index];
  const std::size_t comma = layout.comma_after(item.end);
  const std::size_t end = comma == npos ? item.end : comma + 1;
  const bool together = layout.line_begin(item.end) == layout.line_begin(end - 1);
  if (starts_line(layout, item.begin) && ends_line(layout, end) && together)
    return {{{layout.line_begin(item.begin), layout.line_end(end - 1)}, ""}};
  const std::size_t before = layout.back_over_blanks(item.begin);
  if (comma != npos) {
    // A comma on a later line has comments before it, which stay: the comma of the member before serves in its place.
    if (!together) return {{{item.begin, item.end}, ""}, {{comma, comma + 1}, ""}};
    const std::size_t next = layout.skip_blanks(end);
    const bool line_ends = next >= layout.text().size() || layout.text()[next] == '\r' || layout.text()[next] == '\n';
    return {{line_ends ? Span{before, end} : Span{item.begin, next}, ""}};
  }
  if (index == 0) return {{{item.begin, layout.skip_blanks(item.end)}, ""}};
  const std::size_t previous = list.items[index - 1].end;
  const bool adjoins =
      layout.back_over_blanks(layout.comma_after(previous)) == previous && before == layout.comma_after(previous) + 1;
  return {{{adjoins ? previous : before, item.end}, ""}};
}

Splice remove_entry(const TomlLayout& layout, const TomlLayout::Entry& entry) {
  return {{layout.line_begin(entry.begin), layout.line_end(entry.value.end)}, ""};
}

Splice insert_line_after(const TomlLayout& layout, const TomlLayout::Entry& last, std::string_view line) {
  const std::size_t at = layout.line_end(last.value.end);
  return lines_at(layout, at, fmt::format("{}{}{}", indent_of(layout, last.begin), line, layout.newline_at(at)));
}

Splice insert_line_under(const TomlLayout& layout, std::size_t header, std::string_view line) {
  const std::size_t begin = layout.headers()[header].begin;
  const std::size_t at = layout.line_end(begin);
  return lines_at(layout, at, fmt::format("{}{}{}", indent_of(layout, begin), line, layout.newline_at(at)));
}

Splice insert_first_line(const TomlLayout& layout, std::string_view line) {
  const std::string lines[] = {std::string(line)};
  if (!layout.headers().empty()) return insert_block_before(layout, 0, lines);
  const std::size_t at = layout.text().size();
  return lines_at(layout, at, joined(lines, layout.newline_at(at)));
}

std::vector<Splice> remove_blocks(const TomlLayout& layout, std::span<const std::size_t> headers) {
  std::vector<Splice> splices;
  for (const std::size_t header : headers) {
    Span block{layout.lead_of(header), layout.tail_of(header)};
    while (block.end < layout.text().size() && layout.is_blank_line(block.end)) block.end = layout.line_end(block.end);
    if (!splices.empty() && splices.back().old.end == block.begin)
      splices.back().old.end = block.end;
    else
      splices.push_back({block, ""});
  }
  // The blank lines behind a block go with it; at the end of the file there may be none, so those before it go.
  if (!splices.empty() && splices.back().old.end == layout.text().size()) {
    std::size_t& begin = splices.back().old.begin;
    while (begin > 0 && layout.is_blank_line(begin - 1)) begin = layout.line_begin(begin - 1);
  }
  return splices;
}

Splice insert_block_after(const TomlLayout& layout, std::size_t header, std::span<const std::string> lines) {
  const std::string_view text = layout.text();
  const std::size_t at = header == npos ? text.size() : layout.tail_of(header);
  const std::string_view newline = layout.newline_at(at);
  const bool spaced = !text.empty() && (at == text.size() || layout.is_blank_line(at));
  return lines_at(layout, at, fmt::format("{}{}", spaced ? newline : "", joined(lines, newline)));
}

Splice insert_block_before(const TomlLayout& layout, std::size_t header, std::span<const std::string> lines) {
  const std::size_t at = layout.lead_of(header);
  const std::string_view newline = layout.newline_at(at);
  return {{at, at}, fmt::format("{}{}", joined(lines, newline), newline)};
}

}  // namespace quell::io
