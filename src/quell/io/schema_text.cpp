// What the schema says in words: hints for messages, and the generated reference.
#include <fmt/format.h>

#include "quell/io/schema.h"

namespace quell::io {
namespace {

/// `"a", "b" or "c"`.
std::string quoted_words(const std::vector<std::string_view>& words) {
  std::string text;
  for (std::size_t i = 0; i < words.size(); ++i)
    text += fmt::format("{}\"{}\"", i == 0 ? "" : i + 1 == words.size() ? " or " : ", ", words[i]);
  return text;
}

std::string range_text(const Key& key) {
  const Range& range = key.range;
  if (!range.bounded_below() || key.kind == Kind::choice) return "";
  const std::string unit = key.kind == Kind::angle ? "deg" : unit_symbol(key.dimension, UnitSystem::si);
  const std::string highest = fmt::format("{:g}{}{}", range.highest, unit.empty() ? "" : " ", unit);
  if (range.lowest == above_zero.lowest) return fmt::format("above 0, to {}", highest);
  return fmt::format("{:g} to {}", range.lowest, highest);
}

std::string kind_text(const Key& key) {
  switch (key.kind) {
    case Kind::text: return "text";
    case Kind::choice: return how_to_write(key).substr(std::string_view("write ").size());
    case Kind::quantity: return name_of(key.dimension);
    case Kind::number: return "number";
    case Kind::angle: return "angle";
    case Kind::whole_number: return "whole number";
    case Kind::slope:
    case Kind::side_slope: return "slope";
    case Kind::width: return "`\"free\"` or a length";
    case Kind::texts: return "list of words";
    case Kind::quantities: return "list, each a " + name_of(key.dimension);
    case Kind::spread: return "number, or low, expected and high";
    case Kind::file: return "path, relative to the site file";
    case Kind::table: return "section";
    case Kind::tables: return "list of sections";
  }
  return "";
}

std::string presence_without_condition(const Key& key) {
  if (!key.group.empty()) {
    std::string others;
    for (const Key* other : keys_of(key.section))
      if (other->group == key.group && other->name != key.name)
        others += fmt::format("{}`{}`", others.empty() ? "" : ", ", other->name);
    const std::string preset = key.preset.empty() ? std::string() : fmt::format("; default `{}`", key.preset);
    return fmt::format("{} {}{}", key.required ? "this or" : "not with", others, preset);
  }
  if (key.required) return "required";
  if (!key.preset.empty()) return fmt::format("default `{}`", key.preset);
  if (!key.preset_words.empty()) return fmt::format("default: {}", key.preset_words);
  return "may be left out";
}

std::string presence_text(const Key& key) {
  const std::string text = presence_without_condition(key);
  return key.only_for.chooser.empty() ? text : fmt::format("{}; only with `{}`", text, condition_text(key));
}

std::string section_text(const std::string& heading, std::string_view section, std::string_view help) {
  std::string text = fmt::format(
      "## {}\n\n{}\n\n| key | meaning | value | range (SI) | needed | example |\n|---|---|---|---|---|---|\n", heading, help);
  for (const Key* key : keys_of(section)) {
    std::string example = key->example_si.empty() ? std::string() : fmt::format("`{}`", key->example_si);
    if (!key->example_us.empty()) example += fmt::format(" or `{}`", key->example_us);
    text += fmt::format("| `{}` | {} | {} | {} | {} | {} |\n", key->name, key->help, kind_text(*key), range_text(*key),
                        presence_text(*key), example);
  }
  return text + "\n";
}

}  // namespace

std::vector<const Key*> keys_of(std::string_view section) {
  std::vector<const Key*> keys;
  for (const Key& key : schema())
    if (key.section == section) keys.push_back(&key);
  return keys;
}

std::string full_name(std::string_view section, std::string_view name) {
  return section.empty() ? std::string(name) : fmt::format("{}.{}", section, name);
}

std::vector<std::string_view> words_of(std::string_view list) {
  std::vector<std::string_view> words;
  while (!list.empty()) {
    const std::size_t bar = list.find('|');
    words.push_back(list.substr(0, bar));
    list.remove_prefix(bar == std::string_view::npos ? list.size() : bar + 1);
  }
  return words;
}

std::vector<std::string_view> choices_of(const Key& key) {
  return words_of(key.choices);
}

std::string condition_text(const Key& key) {
  if (key.only_for.chooser.empty()) return "";
  return fmt::format("{} = {}", key.only_for.chooser, quoted_words(words_of(key.only_for.words)));
}

std::string how_to_write(const Key& key) {
  if (key.kind == Kind::choice) return "write " + quoted_words(choices_of(key));
  if (key.kind == Kind::angle) return fmt::format("write it like {}, or a bare number of degrees", key.example_si);
  if (key.kind == Kind::width) return "write \"free\" or a length like \"40 m\" or \"130 ft\"";
  if (key.kind == Kind::slope) return "write it like \"0.7H:1V\" (0.7 horizontal to 1 vertical), \"35 deg\", \"25 %\" or 0.25";
  if (key.kind == Kind::side_slope) return "write it like \"2H:1V\" (2 horizontal to 1 vertical) or \"45 deg\"";
  if (key.kind == Kind::spread) return "write it like 0.035 or { low = 0.03, expected = 0.035, high = 0.042 }";
  std::string text = fmt::format("write it like {}", key.example_si);
  if (!key.example_us.empty()) text += fmt::format(" or {}", key.example_us);
  return text;
}

std::string site_file_reference() {
  std::string text =
      "# The site file, key by key\n\n"
      "Generated from the schema in `src/quell/io/schema.cpp` by `site_file_reference()`; a test compares the two.\n\n"
      "A site file is TOML 1.0, UTF-8, written by hand. A value with a unit stands in quotes: `\"412.5 m\"`, `\"18 500 "
      "ft3/s\"`. A bare\n"
      "number stands in the system that `units` declares. Slopes are `\"0.7H:1V\"` (horizontal to vertical), `\"35 deg\"`, "
      "`\"25 %\"`, or a bare\n"
      "number: fall per horizontal length. Angles are `\"15 deg\"` or a bare number of degrees. Paths are relative to the site "
      "file. Examples show SI, then US customary units.\n\n";
  text += section_text("Head of the file", "", "These stand before the first section, or are the sections.");
  for (const Key& key : schema())
    if (key.kind == Kind::table || key.kind == Kind::tables) {
      const std::string name = full_name(key.section, key.name);
      text +=
          section_text(key.kind == Kind::table ? fmt::format("`[{}]`", name) : fmt::format("`[[{}]]`", name), name, key.help);
    }
  return text;
}

}  // namespace quell::io
