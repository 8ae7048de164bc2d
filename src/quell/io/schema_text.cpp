// What the schema says in words: hints for messages.
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

void collect_sections(std::string_view section, std::vector<const Key*>& found) {
  for (const Key* key : keys_of(section))
    if (key->kind == Kind::table || key->kind == Kind::tables) {
      found.push_back(key);
      collect_sections(full_name(key->section, key->name), found);
    }
}

}  // namespace

std::vector<const Key*> section_rows() {
  std::vector<const Key*> found;
  collect_sections("", found);
  return found;
}

const Key* find_key(std::string_view full) {
  const std::size_t dot = full.rfind('.');
  const std::string_view section = dot == std::string_view::npos ? std::string_view{} : full.substr(0, dot);
  const std::string_view name = dot == std::string_view::npos ? full : full.substr(dot + 1);
  for (const Key& key : schema())
    if (key.section == section && key.name == name) return &key;
  return nullptr;
}

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
  if (key.kind == Kind::spread && key.dimension == dimension::none)
    return "write it like 0.035 or { low = 0.03, expected = 0.035, high = 0.042 }";
  std::string text = fmt::format("write it like {}", key.example_si);
  if (!key.example_us.empty()) text += fmt::format(" or {}", key.example_us);
  return text;
}

}  // namespace quell::io
