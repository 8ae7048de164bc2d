// Edits of every example file, drawn at random: what was meant is changed, and no byte besides.
#include "quell/io/site_edit.h"

#include <fmt/format.h>
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <map>

#include "property/toml_leaves.h"
#include "quell/io/input_text.h"
#include "quell/io/schema.h"

namespace quell::io {
namespace {

using namespace leaves;

/// The texts of all examples, as they stand and with the line ends and mark of other systems.
const std::vector<std::string>& texts() {
  static const std::vector<std::string> all = [] {
    std::vector<std::filesystem::path> paths;
    for (const auto& entry : std::filesystem::directory_iterator(QUELL_ROOT "/examples"))
      if (exists(entry.path() / "site.toml")) paths.push_back(entry.path() / "site.toml");
    std::sort(paths.begin(), paths.end());
    std::vector<std::string> found;
    for (const auto& path : paths) {
      std::ifstream stream(path, std::ios::binary);
      found.emplace_back(std::istreambuf_iterator<char>(stream), std::istreambuf_iterator<char>());
      std::string other = "\xEF\xBB\xBF";
      for (const char c : found.back()) other += c == '\n' ? "\r\n" : std::string(1, c);
      found.push_back(other);
      // Characters of two, three and four bytes before and behind the values.
      std::string wide = found[found.size() - 2];
      for (std::size_t at = 0; (at = wide.find("name = \"", at)) != std::string::npos; at += 20) wide.insert(at + 8, "é漢🌊 ");
      for (std::size_t at = 0; (at = wide.find("# ", at)) != std::string::npos; at += 12) wide.insert(at + 2, "é漢🌊 ");
      found.push_back(wide);
    }
    return found;
  }();
  return all;
}

std::string edited(const std::string& text, const std::vector<SiteEdit>& edits) {
  const auto result = apply_edits(text, edits);
  if (!result) RC_FAIL(to_text(result.error().front()));
  return *result;
}

/// Lines with their ends.
std::vector<std::string> lines_of(std::string_view text) {
  std::vector<std::string> lines;
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t end = std::min(text.find('\n', at), text.size() - 1) + 1;
    lines.emplace_back(text.substr(at, end - at));
    at = end;
  }
  return lines;
}

struct Difference {
  std::vector<std::string> gone, come;
};

/// What stands between the lines that both texts begin and end with.
Difference difference(const std::string& a, const std::string& b) {
  const auto x = lines_of(a), y = lines_of(b);
  const std::size_t most = std::min(x.size(), y.size());
  std::size_t front = 0, back = 0;
  while (front < most && x[front] == y[front]) ++front;
  while (back < most - front && x[x.size() - 1 - back] == y[y.size() - 1 - back]) ++back;
  const auto middle = [&](const std::vector<std::string>& all) {
    return std::vector<std::string>(all.begin() + static_cast<std::ptrdiff_t>(front),
                                    all.end() - static_cast<std::ptrdiff_t>(back));
  };
  return {middle(x), middle(y)};
}

/// The comment of a line of the examples and where it begins, in bytes; their strings hold no '#'.
std::string comment_of(const std::string& line) {
  const std::size_t at = line.find('#');
  return at == std::string::npos ? "" : line.substr(at);
}

std::string any_value() {
  return *rc::gen::element<std::string>("\"412.5 m\"", "3", "-0.5e-3", "\"ä # \\\" ] }\"", "true", "[\"1 m\", 2.5]", "[]",
                                        "{ low = 1, expected = 2, high = 3 }", "'''\nmany\nlines'''", "[\n  1, # one\n  2,\n]",
                                        "'#'", "1979-05-27", "0x1F", "1_000.5", "{}",
                                        "\"a much longer value than any comment column has room for\"", "nan");
}

const std::string& any_text() {
  return texts()[*rc::gen::inRange<std::size_t>(0, texts().size())];
}

RC_GTEST_PROP(SiteEditProperty, AValueChangesAlone, ()) {
  const std::string& text = any_text();
  const Leaves before = leaves_of(text);
  const std::string path = *rc::gen::elementOf(paths_of(before, false));
  const std::string value = any_value();
  const std::string after = edited(text, {{path, EditAction::set, value}});
  Leaves expected = before;
  Leaves fresh;
  gather(*parsed("v = " + value).get("v"), path, fresh);
  expected.erase(path);
  expected.merge(fresh);
  RC_ASSERT(leaves_of(after) == expected);
  RC_ASSERT(after.find(value) != std::string::npos);
  const Difference changed = difference(text, after);
  RC_ASSERT(changed.gone.size() <= 1u);
  if (value.find('\n') == std::string::npos && !changed.gone.empty()) {
    RC_ASSERT(changed.come.size() == 1u);
    const std::string& old = changed.gone.front();
    const std::string& now = changed.come.front();
    const std::string comment = comment_of(old);
    RC_ASSERT(now.size() >= comment.size());
    RC_ASSERT(now.substr(now.size() - comment.size()) == comment);
    RC_ASSERT(now.substr(0, old.find('=') + 1) == old.substr(0, old.find('=') + 1));
  }
}

RC_GTEST_PROP(SiteEditProperty, TheOldValueAgainChangesNothing, ()) {
  const std::string& text = any_text();
  const toml::table document = parsed(text);
  const Leaves leaves = leaves_of(text);
  const std::string path = *rc::gen::elementOf(paths_of(leaves, false));
  // As typed: cut out of the text at the parser's own place.
  const toml::node& node = *document
                                .at_path([&] {
                                  std::string zero_based = path;
                                  const std::size_t bracket = zero_based.find('[');
                                  if (bracket == std::string::npos) return zero_based;
                                  const std::size_t end = zero_based.find(']');
                                  const int member = std::stoi(zero_based.substr(bracket + 1, end - bracket - 1));
                                  return zero_based.replace(bracket + 1, end - bracket - 1, std::to_string(member - 1));
                                }())
                                .node();
  std::string_view plain = text;
  drop_byte_order_mark(plain);
  const auto lines = split_lines(plain);
  const toml::source_region& at = node.source();
  RC_PRE(at.begin.line == at.end.line);
  std::string characters;
  std::size_t column = 0;
  for (const char c : lines[at.begin.line - 1]) {
    if ((static_cast<unsigned char>(c) & 0xC0u) != 0x80u) ++column;
    if (column >= at.begin.column && column < at.end.column) characters += c;
  }
  RC_ASSERT(edited(text, {{path, EditAction::set, characters}}) == text);
}

RC_GTEST_PROP(SiteEditProperty, ARemovedKeyIsGoneAlone, ()) {
  const std::string& text = any_text();
  const Leaves before = leaves_of(text);
  const std::string path = *rc::gen::elementOf(paths_of(before, false));
  const std::string after = edited(text, {{path, EditAction::remove, ""}});
  Leaves expected = before;
  expected.erase(path);
  RC_ASSERT(leaves_of(after) == expected);
  const Difference changed = difference(text, after);
  RC_ASSERT(changed.come.size() <= 1u);
  if (!changed.come.empty()) RC_ASSERT(comment_of(changed.come.front()) == comment_of(changed.gone.front()));
}

RC_GTEST_PROP(SiteEditProperty, ARemovedSectionIsGoneAlone, ()) {
  const std::string& text = any_text();
  const Leaves before = leaves_of(text);
  const std::string path = *rc::gen::elementOf(paths_of(before, true));
  const std::string after = edited(text, {{path, EditAction::remove, ""}});
  Leaves expected;
  const std::size_t bracket = path.back() == ']' ? path.rfind('[') : std::string::npos;
  for (const auto& [name, value] : before) {
    if (name == path || name.starts_with(path + ".")) continue;
    std::string now = name;
    // The members behind it move up.
    if (bracket != std::string::npos && name.starts_with(path.substr(0, bracket + 1))) {
      const std::size_t end = name.find(']', bracket);
      const int member = std::stoi(name.substr(bracket + 1, end - bracket - 1));
      if (member > std::stoi(path.substr(bracket + 1))) now.replace(bracket + 1, end - bracket - 1, std::to_string(member - 1));
    }
    expected[now] = value;
  }
  Leaves left = leaves_of(after);
  // A list in brackets that lost its only member stays, empty; so do sections that only held it.
  if (bracket != std::string::npos) left.erase(path.substr(0, bracket));
  RC_ASSERT(left == expected);
  RC_ASSERT(difference(text, after).come.size() <= 1u);
}

RC_GTEST_PROP(SiteEditProperty, AKeyComesAlone, ()) {
  const std::string& text = any_text();
  const Leaves before = leaves_of(text);
  std::vector<std::string> absent;
  for (const Key& key : schema()) {
    const std::string path = full_name(key.section, key.name);
    const bool in_list = std::any_of(schema().begin(), schema().end(), [&](const Key& list) {
      return list.kind == Kind::tables && full_name(list.section, list.name) == key.section;
    });
    if (!in_list && key.kind != Kind::table && key.kind != Kind::tables && !before.contains(path)) absent.push_back(path);
  }
  const std::string path = *rc::gen::elementOf(absent);
  const std::string value = any_value();
  const std::string after = edited(text, {{path, EditAction::set, value}});
  Leaves expected = before;
  gather(*parsed("v = " + value).get("v"), path, expected);
  for (std::size_t dot = path.find('.'); dot != std::string::npos; dot = path.find('.', dot + 1))
    expected[path.substr(0, dot)] = "";
  RC_ASSERT(leaves_of(after) == expected);
  RC_ASSERT(difference(text, after).gone.empty());
  // A section that was there gets one line, which goes again.
  if (before.contains(path.substr(0, path.rfind('.')))) RC_ASSERT(edited(after, {{path, EditAction::remove, ""}}) == text);
}

RC_GTEST_PROP(SiteEditProperty, MembersComeAndGo, ()) {
  const std::string& text = any_text();
  const Leaves before = leaves_of(text);
  std::map<std::string, int> lists;
  for (const std::string& path : paths_of(before, true))
    if (path.back() == ']') ++lists[path.substr(0, path.rfind('['))];
  RC_PRE(!lists.empty());
  const auto [list, size] = *rc::gen::elementOf(std::vector<std::pair<std::string, int>>(lists.begin(), lists.end()));
  const int place = *rc::gen::inRange(1, size + 2);
  const std::string after =
      edited(text, {{fmt::format("{}[{}]", list, place), EditAction::insert, "{ name = \"new # one\" }"}});
  const Leaves made = leaves_of(after);
  RC_ASSERT(made.size() == before.size() + 2);
  RC_ASSERT(made.at(fmt::format("{}[{}].name", list, place)).find("new # one") != std::string::npos);
  const Difference changed = difference(text, after);
  RC_ASSERT(changed.gone.size() <= 1u);  // a comma behind the last member
  const std::string again = edited(after, {{fmt::format("{}[{}]", list, place), EditAction::remove, ""}});
  RC_ASSERT(leaves_of(again) == before);
  if (changed.gone.empty()) RC_ASSERT(again == text);
}

RC_GTEST_PROP(SiteEditProperty, ManyEditsInOneCall, ()) {
  const std::string& text = any_text();
  const auto paths =
      *rc::gen::resize(8, rc::gen::container<std::vector<std::string>>(rc::gen::elementOf(paths_of(leaves_of(text), false))));
  std::vector<SiteEdit> edits;
  std::string one_by_one = text;
  Leaves expected = leaves_of(text);
  for (const std::string& path : paths) {
    edits.push_back({path, EditAction::set, fmt::format("{}", edits.size())});
    one_by_one = edited(one_by_one, {edits.back()});
    expected[path] = edits.back().value;
  }
  RC_ASSERT(edited(text, edits) == one_by_one);
  RC_ASSERT(leaves_of(one_by_one) == expected);
}

/// Any tokens as a value, and any as a path: refused, or a document that differs in nothing else.
RC_GTEST_PROP(SiteEditProperty, GarbageHarmsNothing, ()) {
  const std::string& text = any_text();
  const auto tokens =
      rc::gen::element<std::string>("\"", "'", "\"\"\"", "'''", "[", "]", "{", "}", ",", "=", "\n", "\r\n", "#", "1", "a", ".",
                                    " ", "\t", "é", "\xff", "\\", "-", "[x]", "x = 1", "inf", "true", "2020-01-01");
  std::string value;
  for (const std::string& token : *rc::gen::container<std::vector<std::string>>(tokens)) value += token;
  const Leaves before = leaves_of(text);
  const std::string path = *rc::gen::elementOf(paths_of(before, false));
  const auto result = apply_edits(text, std::vector<SiteEdit>{{path, EditAction::set, value}});
  bool is_one_value = false;
  try {
    // The value closed in by brackets and by a line of its own: what passes both without growing is one value.
    const toml::table in_list = toml::parse("v = [" + value + "\n]");
    const toml::table alone = toml::parse("v = " + value);
    is_one_value = in_list.size() == 1 && in_list["v"].as_array()->size() == 1 && alone.size() == 1;
  } catch (const toml::parse_error&) {
  }
  if (!is_one_value) RC_ASSERT(!result.has_value());
  if (result) {
    Leaves expected = before;
    expected.erase(path);
    gather(*parsed("v = " + value).get("v"), path, expected);
    RC_ASSERT(leaves_of(*result) == expected);
  } else {
    RC_ASSERT(!result.error().empty());
  }
  std::string where;
  for (const std::string& token : *rc::gen::container<std::vector<std::string>>(
           rc::gen::element<std::string>("crest", "river", "bed", ".", "[", "]", "1", "0", "9", "floods", " ", "é", "outlets")))
    where += token;
  for (const EditAction action : {EditAction::set, EditAction::remove, EditAction::insert}) {
    const auto other = apply_edits(text, std::vector<SiteEdit>{{where, action, value}});
    if (other) parsed(*other);
  }
}

}  // namespace
}  // namespace quell::io
