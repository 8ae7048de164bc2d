// The same document written in any style that TOML has: sections under headings, with dotted keys, in braces; lists of one
// line, of many, or of headings; comments and blank lines anywhere. Every edit is made in all of them.
#include <fmt/format.h>
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>

#include "property/toml_leaves.h"
#include "quell/io/site_edit.h"

namespace quell::io {
namespace {

using namespace leaves;

bool toss() {
  return *rc::gen::resize(rc::kNominalSize, rc::gen::inRange(0, 2)) == 1;
}
int die(int sides) {
  return *rc::gen::resize(rc::kNominalSize, rc::gen::inRange(0, sides));
}

using Pairs = std::vector<std::pair<std::string, std::string>>;

/// Writes one document. Comments are numbered, so that a lost one is missed.
class Writer {
 public:
  std::string write() {
    newline_ = toss() ? "\r\n" : "\n";
    if (toss()) text_ = "\xEF\xBB\xBF";
    noise();
    line("", "units", "\"SI\"");
    const int crest = die(3), gates = die(2), river = die(3);
    if (crest == 0) dotted("crest.", crest_keys);
    if (crest == 1) line("", "crest", braces(crest_keys));
    if (gates == 0) line("", "gates", braces({{"count", "3"}, {"patterns", one_line_list()}}));
    if (river == 0) {
      dotted("river.", river_keys);
      dotted("river.bed.", bed_keys);
    }
    if (river == 1) line("", "river", braces({{"bed_level", "\"2 m\""}, {"bed", braces(bed_keys)}}));
    if (crest == 2) section("crest", crest_keys);
    if (gates == 1) gates_section();
    for (int i = 0; i < 2; ++i) section("outlets", {{"name", fmt::format("\"#{} é\"", i)}, {"area", "3"}}, true);
    if (river == 2) river_section();
    if (toss()) text_.resize(text_.size() - newline_.size());
    return text_;
  }

 private:
  const Pairs crest_keys{{"level", "\"10 m\""}, {"design_head", "{ value = \"6.5 m\" , cov=0.05 }"}, {"piers", "2"}};
  const Pairs river_keys{{"bed_level", "\"2 m\""}};
  const Pairs bed_keys{{"mean_size", "'24 mm'"}, {"bed_slope", "0.003"}};
  std::string text_;
  std::string newline_;
  int comments_ = 0;

  std::string comment() { return fmt::format("#c{}# é \"[x] {{", ++comments_); }

  void noise() {
    for (int i = die(4); i > 0; --i) text_ += (toss() ? "  " + comment() : std::string()) + newline_;
  }

  void end_line() {
    if (toss()) text_ += std::string(static_cast<std::size_t>(die(6)), ' ') + comment();
    text_ += newline_;
    if (die(3) == 0) noise();
  }

  void line(const std::string& indent, const std::string& name, const std::string& value) {
    text_ += fmt::format("{}{}{}{}", indent, name, toss() ? " = " : "=", value);
    end_line();
  }

  void dotted(const std::string& prefix, const Pairs& pairs) {
    for (const auto& [name, value] : pairs) line("", prefix + name, value);
  }

  std::string braces(const Pairs& pairs) {
    const std::string pad = toss() ? " " : "";
    std::string text = "{" + pad;
    for (std::size_t i = 0; i < pairs.size(); ++i)
      text += fmt::format("{}{} = {}", i > 0 ? (toss() ? ", " : " ,") : "", pairs[i].first, pairs[i].second);
    return text + pad + "}";
  }

  void heading(const std::string& name, bool is_member) {
    text_ += fmt::format("{}{}{}{}", toss() ? "  " : "", is_member ? "[[" : "[", name, is_member ? "]]" : "]");
    end_line();
  }

  void section(const std::string& name, const Pairs& pairs, bool is_member = false) {
    heading(name, is_member);
    const std::string indent = toss() ? "\t" : "";
    for (const auto& [key, value] : pairs) line(indent, key, value);
  }

  std::string pattern(int i) {
    return braces({{"name", fmt::format("\"p{}\"", i)}, {"openings", toss() ? "[1, 2]" : "[ 1 ,2, ]"}});
  }
  std::string one_line_list() { return fmt::format("[{}, {}{}]", pattern(1), pattern(2), toss() ? "," : ""); }

  void gates_section() {
    section("gates", {{"count", "3"}});
    const int style = die(3);
    if (style == 0) line("", "patterns", one_line_list());
    if (style == 1) {
      text_ += "patterns = [";
      end_line();
      for (int i = 1; i < 3; ++i) {
        text_ += "    " + pattern(i) + (i < 2 || toss() ? "," : "");
        end_line();
      }
      text_ += "]";
      end_line();
    }
    for (int i = 1; style == 2 && i < 3; ++i)
      section("gates.patterns",
              {{"name", fmt::format("\"p{}\"", i)}, {"openings", fmt::format("[{0} 1, # of the first{0} 2{0}]", newline_)}},
              true);
  }

  void river_section() {
    const int style = die(3);
    section("river", river_keys);
    if (style == 0) section("river.bed", bed_keys);
    if (style == 1) dotted("bed.", bed_keys);
    if (style == 2) line("", "bed", braces(bed_keys));
  }
};

/// Values only: tables that exist by their keys alone come and go with them.
Leaves values_of(std::string_view text) {
  Leaves all = leaves_of(text);
  std::erase_if(all, [](const auto& leaf) { return leaf.second.empty(); });
  return all;
}

std::string edited(const std::string& text, const SiteEdit& edit) {
  const auto result = apply_edits(text, std::vector{edit});
  if (!result) RC_FAIL(to_text(result.error().front()) + "\n" + text);
  return *result;
}

/// All lines end in the same way.
bool is_uniform(const std::string& text) {
  std::size_t feeds = 0, returns = 0;
  for (std::size_t i = 0; i < text.size(); ++i) {
    if (text[i] == '\n') ++feeds;
    if (text[i] == '\n' && i > 0 && text[i - 1] == '\r') ++returns;
  }
  return returns == 0 || returns == feeds;
}

std::size_t comments_in(const std::string& text) {
  std::size_t count = 0;
  for (std::size_t at = text.find("#c"); at != std::string::npos; at = text.find("#c", at + 1)) ++count;
  return count;
}

RC_GTEST_PROP(SiteEditLayout, ValuesChangeInAnyStyle, ()) {
  const std::string text = Writer().write();
  Leaves expected = values_of(text);
  RC_ASSERT(expected.size() == 17u);
  const std::string path = *rc::gen::elementOf(paths_of(expected, false));
  const std::string value =
      *rc::gen::element<std::string>("7", "\"# é\"", "[1, 2]", "'a long one, longer than the one before it'");
  const std::string after = edited(text, {path, EditAction::set, value});
  expected[path] = leaves_of("v = " + value).at("v");
  RC_ASSERT(values_of(after) == expected);
  RC_ASSERT(comments_in(after) == comments_in(text));
  RC_ASSERT(is_uniform(text) && is_uniform(after));
}

RC_GTEST_PROP(SiteEditLayout, KeysGoInAnyStyle, ()) {
  const std::string text = Writer().write();
  Leaves expected = values_of(text);
  const std::string path = *rc::gen::elementOf(paths_of(expected, false));
  const std::string after = edited(text, {path, EditAction::remove, ""});
  expected.erase(path);
  RC_ASSERT(values_of(after) == expected);
  // At most the comment of its own line goes with it.
  RC_ASSERT(comments_in(after) + 1 >= comments_in(text));
}

RC_GTEST_PROP(SiteEditLayout, KeysComeInAnyStyle, ()) {
  const std::string text = Writer().write();
  Leaves expected = values_of(text);
  const std::string path =
      *rc::gen::element<std::string>("crest.shape", "crest.design_head.deviation", "gates.bay_width", "gates.patterns[1].use",
                                     "gates.patterns[2].levels", "outlets[1].coefficient", "river.lag_allowance",
                                     "river.bed.bed_width", "river.rating.file", "project.name", "ground.level");
  const std::string after = edited(text, {path, EditAction::set, "\"# é\""});
  expected[path] = leaves_of("v = \"# é\"").at("v");
  RC_ASSERT(values_of(after) == expected);
  RC_ASSERT(comments_in(after) == comments_in(text));
  RC_ASSERT(is_uniform(text) && is_uniform(after));
  RC_ASSERT(values_of(edited(after, {path, EditAction::remove, ""})) == values_of(text));
}

RC_GTEST_PROP(SiteEditLayout, MembersComeAndGoInAnyStyle, ()) {
  const std::string text = Writer().write();
  const std::string list = *rc::gen::element<std::string>("gates.patterns", "outlets");
  const int place = die(3) + 1;
  const std::string path = fmt::format("{}[{}]", list, place);
  const std::string after = edited(text, {path, EditAction::insert, "{ name = \"new\" }"});
  RC_ASSERT(comments_in(after) == comments_in(text));
  RC_ASSERT(is_uniform(text) && is_uniform(after));
  RC_ASSERT(values_of(after).size() == values_of(text).size() + 1);
  RC_ASSERT(leaves_of(after).at(path + ".name") == leaves_of("v = \"new\"").at("v"));
  RC_ASSERT(values_of(edited(after, {path, EditAction::remove, ""})) == values_of(text));
  const Leaves fewer = values_of(edited(text, {list + "[1]", EditAction::remove, ""}));
  RC_ASSERT(fewer.size() == values_of(text).size() - 2);
  RC_ASSERT(fewer.at(list + "[1].name") == values_of(text).at(list + "[2].name"));
}

RC_GTEST_PROP(SiteEditLayout, SectionsGoInAnyStyle, ()) {
  const std::string text = Writer().write();
  Leaves expected = values_of(text);
  const std::string path = *rc::gen::element<std::string>("crest", "gates", "gates.patterns", "outlets", "river", "river.bed");
  const std::string after = edited(text, {path, EditAction::remove, ""});
  std::erase_if(expected,
                [&](const auto& leaf) { return leaf.first.starts_with(path + ".") || leaf.first.starts_with(path + "["); });
  RC_ASSERT(values_of(after) == expected);
}

/// Tokens of TOML in any order: an answer, and never a text that is not TOML.
RC_GTEST_PROP(SiteEditLayout, AnyTextIsJudged, ()) {
  const auto tokens =
      rc::gen::element<std::string>("crest", "level", "outlets", ".", "[", "]", "[[", "]]", "{", "}", "=", " = ", ",", "\n",
                                    "\r\n", "\"", "'", "\"\"\"", "#", "1", " ", "\xEF\xBB\xBF", "é", "\xff", "\n[crest]\n",
                                    "\nlevel = 1", "\n[[outlets]]\n", "\ncrest = { level = 2 }", "crest.level = 1\n");
  std::string text;
  for (const std::string& token : *rc::gen::container<std::vector<std::string>>(tokens)) text += token;
  for (const EditAction action : {EditAction::set, EditAction::remove, EditAction::insert})
    for (const char* path : {"crest.level", "crest", "outlets", "outlets[1]", "outlets[1].name", "units"}) {
      const auto result = apply_edits(text, std::vector<SiteEdit>{{path, action, "{ name = 1 }"}});
      if (result)
        parsed(*result);
      else
        RC_ASSERT(!result.error().front().message.empty());
    }
}

}  // namespace
}  // namespace quell::io
