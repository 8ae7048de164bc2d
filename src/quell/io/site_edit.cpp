#include "quell/io/site_edit.h"

#include <fmt/format.h>

#include <algorithm>

#include "quell/io/edit_path.h"
#include "quell/io/input_text.h"
#include "quell/io/schema.h"
#include "quell/io/toml_layout.h"
#include "quell/io/toml_splice.h"
#include "quell/io/toml_text.h"

namespace quell::io {
namespace {

/// One edit of one text. Every step answers false after it has said what is wrong.
class Editor {
 public:
  Editor(std::string_view text, const toml::table& root, EditPath path)
      : layout_(text, root), root_(root), intended_(root), path_(std::move(path)) {}

  bool set(const Fragment& value) {
    const Walk way = walk(root_, path_);
    if (!way.wrong.empty()) return fail(way.wrong);
    if (way.lacks_member) return no_member(*way.node);
    if (way.found < path_.size()) {
      if (!may_be_added(way)) return false;
      put_value(intended_, path_, value.node());
      return add_key(way, value.text);
    }
    if (layout_.has_headings(*way.node) || layout_.is_dotted(*way.node))
      return fail(fmt::format("{} is a section: change its keys", schema_name(path_)));
    put_value(intended_, path_, value.node());
    splices_ = replace_value(layout_, layout_.value(*way.node), value.text);
    return true;
  }

  bool remove() {
    const Walk way = walk(root_, path_);
    if (!way.wrong.empty()) return fail(way.wrong);
    if (way.lacks_member) return no_member(*way.node);
    if (way.found < path_.size()) return fail("this is not in the file");
    const toml::node& list = *way.parents.back()->get(path_.back().name);
    take_out(intended_, path_, layout_.has_headings(list));
    let_parents_vanish(way);
    if (path_.back().member > 0 && !layout_.has_headings(list)) {
      splices_ = remove_item(layout_, layout_.bracketed(list), path_.back().member - 1);
      return true;
    }
    return layout_.has_headings(*way.node) || layout_.is_dotted(*way.node) ? remove_section(way) : remove_key(way);
  }

  bool insert(const Fragment& value) {
    const std::size_t place = std::exchange(path_.back().member, 0);
    const Walk way = walk(root_, path_);
    if (!way.wrong.empty()) return fail(way.wrong);
    if (way.lacks_member) return no_member(*way.node);
    const Key* row = find_key(schema_name(path_));
    const bool of_tables = row != nullptr && row->kind == Kind::tables;
    if (way.found < path_.size()) {
      if (!may_be_added(way)) return false;
      if (place > 1) return fail(fmt::format("there is no {} yet", schema_name(path_)));
      if (!of_tables && row->kind != Kind::table)
        return fail("this is neither a section nor a list of sections: set its value");
      return value.node().is_table() ? add_section(way, of_tables, value) : no_table();
    }
    const toml::array* list = way.node->as_array();
    if (list == nullptr) return fail("this is there already");
    if ((of_tables || layout_.has_headings(*list)) && !value.node().is_table()) return no_table();
    const std::size_t index = place == 0 ? list->size() : place - 1;
    if (index > list->size()) return no_member(*list);
    put_member(intended_, path_, index, value.node());
    if (!layout_.has_headings(*list)) {
      splices_ = insert_item(layout_, layout_.bracketed(*list), index, value.text);
      return true;
    }
    const std::vector<std::string> lines = block("[[{}]]", value);
    splices_.push_back(index < list->size()
                           ? insert_block_before(layout_, layout_.header_of(*list->get(index)->as_table()), lines)
                           : insert_block_after(layout_, headers_within(list->back()).back(), lines));
    return true;
  }

  const std::string& wrong() const { return wrong_; }
  std::string result() const { return spliced(layout_.text(), splices_); }
  const toml::table& intended() const { return intended_; }

 private:
  TomlLayout layout_;
  const toml::table& root_;
  toml::table intended_;
  EditPath path_;
  std::vector<Splice> splices_;
  std::string wrong_;

  bool fail(std::string message) {
    wrong_ = std::move(message);
    return false;
  }
  bool no_table() { return fail("this takes a table: { key = value, … }"); }
  bool no_member(const toml::node& list) {
    const std::size_t size = list.as_array()->size();
    return fail(fmt::format("the list has {} member{}", size, size == 1 ? "" : "s"));
  }

  /// Whether what is missing is known to the schema, and only sections are missing above it.
  bool may_be_added(const Walk& way) {
    if (std::string unknown = why_unknown(path_); !unknown.empty()) return fail(std::move(unknown));
    const std::span<const PathStep> path(path_);
    for (std::size_t i = way.found; i < path.size(); ++i) {
      const std::string name = schema_name(path.first(i + 1));
      if (path[i].member > 0) return fail(fmt::format("there is no {} yet", name));
      if (i + 1 == path.size()) break;
      const Kind kind = find_key(name)->kind;
      if (kind == Kind::tables) return fail(fmt::format("{} is a list: insert a member and name it, as in {}[1]", name, name));
      if (kind != Kind::table) return fail(fmt::format("there is no {} yet: set its whole value", name));
    }
    return true;
  }

  /// The table whose heading, braces or place at the head of the file hold a table of dotted keys; `prefix` are its names.
  const toml::table& home_of(const Walk& way, std::size_t depth, const toml::table& table, std::string& prefix) const {
    const toml::table* home = &table;
    for (; layout_.is_dotted(*home); --depth) {
      prefix = fmt::format("{}.{}", path_[depth - 1].name, prefix);
      home = way.parents[depth - 1];
    }
    return *home;
  }

  bool in_member(const Walk& way) const {
    return std::any_of(path_.begin(), path_.begin() + static_cast<std::ptrdiff_t>(way.found),
                       [](const PathStep& step) { return step.member > 0; });
  }

  /// Whether sections below this table can have headings.
  bool takes_headings(const Walk& way) const {
    const toml::table& table = *way.node->as_table();
    return !table.is_inline() && !layout_.is_dotted(table) && !in_member(way);
  }

  bool add_key(const Walk& way, std::string_view value) {
    const toml::table& table = *way.node->as_table();
    const std::span<const PathStep> missing = std::span(path_).subspan(way.found);
    const bool has_lines = &table == &root_ || layout_.header_of(table) != TomlLayout::npos;
    if (takes_headings(way) && (missing.size() > 1 || !has_lines)) {
      const std::string section = schema_name(std::span(path_).first(path_.size() - 1));
      place_block(section, {fmt::format("[{}]", section), fmt::format("{} = {}", path_.back().name, value)});
      return true;
    }
    std::string prefix;
    const toml::table& home = home_of(way, way.found, table, prefix);
    const std::string line = fmt::format("{}{} = {}", prefix, schema_name(missing), value);
    if (home.is_inline()) {
      const TomlLayout::Bracketed braces = layout_.bracketed(home);
      splices_ = insert_item(layout_, braces, braces.items.size(), line);
      return true;
    }
    const std::vector<TomlLayout::Entry> keys = layout_.entries(table);
    splices_.push_back(!keys.empty()      ? insert_line_after(layout_, keys.back(), line)
                       : &table == &root_ ? insert_first_line(layout_, line)
                                          : insert_line_under(layout_, layout_.header_of(table), line));
    return true;
  }

  bool add_section(const Walk& way, bool is_list, const Fragment& value) {
    if (is_list)
      put_member(intended_, path_, 0, value.node());
    else
      put_value(intended_, path_, value.node());
    if (!takes_headings(way)) return add_key(way, is_list ? fmt::format("[{}]", value.text) : value.text);
    place_block(schema_name(path_), block(is_list ? "[[{}]]" : "[{}]", value));
    return true;
  }

  /// A heading and the keys of an inline table as lines.
  std::vector<std::string> block(std::string_view heading, const Fragment& value) const {
    const TomlLayout layout(value.document, value.holder);
    std::vector<std::string> lines{fmt::format(fmt::runtime(heading), schema_name(path_))};
    for (const Span& item : layout.bracketed(value.node()).items) lines.emplace_back(layout.slice(item));
    return lines;
  }

  /// Behind the last section that stands before `section` in the schema.
  void place_block(std::string_view section, const std::vector<std::string>& lines) {
    const std::vector<const Key*> rows = section_rows();
    const auto rank = [&](std::string_view name) {
      return std::find_if(rows.begin(), rows.end(),
                          [&](const Key* row) { return full_name(row->section, row->name) == name; }) -
             rows.begin();
    };
    const auto own = rank(section);
    std::ptrdiff_t highest = -1;
    std::size_t before = TomlLayout::npos;
    for (std::size_t i = 0; i < layout_.headers().size(); ++i) {
      const auto other = rank(layout_.headers()[i].name);
      if (other >= own || other < highest) continue;
      highest = other;
      before = i;
    }
    const bool is_first = before == TomlLayout::npos && !layout_.headers().empty();
    splices_.push_back(is_first ? insert_block_before(layout_, 0, lines) : insert_block_after(layout_, before, lines));
  }

  /// Headings of a section and of those below it, in the order of the file.
  std::vector<std::size_t> headers_within(const toml::node& node) const {
    std::vector<std::size_t> found;
    const auto gather = [&](const auto& self, const toml::node& at) -> void {
      if (const toml::table* table = at.as_table()) {
        if (const std::size_t own = layout_.header_of(*table); own != TomlLayout::npos) found.push_back(own);
        for (const auto& [key, below] : *table) self(self, below);
      } else if (layout_.has_headings(at)) {
        for (const toml::node& member : *at.as_array()) self(self, member);
      }
    };
    gather(gather, node);
    std::sort(found.begin(), found.end());
    return found;
  }

  bool remove_section(const Walk& way) {
    splices_ = remove_blocks(layout_, headers_within(*way.node));
    if (!layout_.is_dotted(*way.node)) return true;
    std::string prefix;
    if (home_of(way, way.found, *way.node->as_table(), prefix).is_inline())
      return fail("this is written with dots in an inline table: set the whole table");
    for (const TomlLayout::Entry& entry : layout_.entries(*way.node->as_table()))
      splices_.push_back(remove_entry(layout_, entry));
    return true;
  }

  bool remove_key(const Walk& way) {
    const Span value = layout_.value(*way.node);
    std::string prefix;
    const toml::table& holder = *way.parents.back();
    const toml::table& home = home_of(way, way.found - 1, holder, prefix);
    if (home.is_inline()) {
      const TomlLayout::Bracketed braces = layout_.bracketed(home);
      for (std::size_t i = 0; i < braces.items.size(); ++i)
        if (braces.items[i].end == value.end) splices_ = remove_item(layout_, braces, i);
      return true;
    }
    for (const TomlLayout::Entry& entry : layout_.entries(holder))
      if (entry.value.begin == value.begin) splices_.push_back(remove_entry(layout_, entry));
    return true;
  }

  /// Tables that exist only by what stands below them go with it.
  void let_parents_vanish(const Walk& way) {
    for (std::size_t depth = way.found - 1; depth > 0; --depth) {
      const toml::table& parent = *way.parents[depth];
      const bool stays = parent.is_inline() || layout_.header_of(parent) != TomlLayout::npos || path_[depth - 1].member > 0;
      const std::span<const PathStep> path = std::span(path_).first(depth);
      if (stays || !walk(intended_, path).node->as_table()->empty()) return;
      take_out(intended_, path, false);
    }
  }
};

using Edited = tl::expected<std::string, std::vector<Problem>>;

Edited refused(const SiteEdit& edit, std::string_view why) {
  return tl::unexpected(std::vector{Problem{"site file", 0, 0, fmt::format("{}: {}", edit.path.substr(0, 200), why), ""}});
}

Edited apply_edit(std::string_view text, const SiteEdit& edit) {
  auto root = parse_toml(text);
  if (!root) return tl::unexpected(std::move(root.error()));
  auto path = parse_edit_path(edit.path);
  if (!path) return refused(edit, "a path is written like crest.level or gates.patterns[2].openings");
  const bool is_bare = edit.action == EditAction::remove || (edit.action == EditAction::insert && edit.value.empty());
  const auto value = read_fragment(path->back().name, is_bare ? std::string_view("{}") : std::string_view(edit.value));
  if (!value) return refused(edit, value.error());
  Editor editor(text, *root, std::move(*path));
  const bool good = edit.action == EditAction::set      ? editor.set(*value)
                    : edit.action == EditAction::remove ? editor.remove()
                                                        : editor.insert(*value);
  if (!good) return refused(edit, editor.wrong());
  std::string result = editor.result();
  const auto made = parse_toml(result);
  if (!made || !same_content(*made, editor.intended()))
    return refused(edit, "the way this part of the file is written does not let it be changed by itself; change the text");
  return result;
}

}  // namespace

tl::expected<std::string, std::vector<Problem>> apply_edits(std::string_view text, std::span<const SiteEdit> edits) {
  std::string_view rest = text;
  const bool has_mark = drop_byte_order_mark(rest);
  std::string result(rest);
  for (const SiteEdit& edit : edits) {
    Edited next = apply_edit(result, edit);
    if (!next) return next;
    result = std::move(*next);
  }
  return has_mark ? std::string(text.substr(0, 3)) + result : result;
}

}  // namespace quell::io
