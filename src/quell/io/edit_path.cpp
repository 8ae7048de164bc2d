#include "quell/io/edit_path.h"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>

#include "quell/io/nearest.h"
#include "quell/io/schema.h"
#include "quell/io/uncertainty_reader.h"

namespace quell::io {
namespace {

constexpr std::size_t most_steps = 8;
constexpr std::size_t longest_name = 60;

bool is_name_letter(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '_' || c == '-';
}

std::optional<PathStep> parse_step(std::string_view text) {
  const std::size_t bracket = text.find('[');
  PathStep step{std::string(text.substr(0, bracket)), 0};
  if (step.name.empty() || step.name.size() > longest_name || !std::all_of(step.name.begin(), step.name.end(), is_name_letter))
    return std::nullopt;
  if (bracket == std::string_view::npos) return step;
  const std::string_view number = text.substr(bracket + 1, text.size() - bracket - 2);
  if (text.back() != ']' || number.empty() || number.size() > 6) return std::nullopt;
  const auto [end, error] = std::from_chars(number.data(), number.data() + number.size(), step.member);
  if (error != std::errc() || end != number.data() + number.size() || step.member == 0) return std::nullopt;
  return step;
}

}  // namespace

std::optional<EditPath> parse_edit_path(std::string_view text) {
  EditPath path;
  while (path.size() < most_steps) {
    const std::size_t dot = text.find('.');
    const auto step = parse_step(text.substr(0, dot));
    if (!step) return std::nullopt;
    path.push_back(*step);
    if (dot == std::string_view::npos) return path;
    text.remove_prefix(dot + 1);
  }
  return std::nullopt;
}

std::string schema_name(std::span<const PathStep> path) {
  std::string text;
  for (const PathStep& step : path) text += fmt::format("{}{}", text.empty() ? "" : ".", step.name);
  return text;
}

std::string why_unknown(std::span<const PathStep> path) {
  const std::string name = schema_name(path);
  if (find_key(name) != nullptr) return "";
  const std::string section = schema_name(path.first(path.size() - 1));
  std::vector<std::string_view> names;
  if (const Key* owner = find_key(section); owner != nullptr) names = words_of_value(*owner);
  for (const Key* key : keys_of(section)) names.push_back(key->name);
  if (std::find(names.begin(), names.end(), path.back().name) != names.end()) return "";
  const std::string_view meant = nearest(path.back().name, names);
  return meant.empty() ? fmt::format("a site file has no {}", name)
                       : fmt::format("a site file has no {}; did you mean '{}'?", name, meant);
}

Walk walk(const toml::table& root, std::span<const PathStep> path) {
  Walk result;
  result.node = &root;
  for (const PathStep& step : path) {
    const std::string here = schema_name(path.first(result.found));
    const toml::table* table = result.node->as_table();
    if (table == nullptr) {
      result.wrong = result.node->is_array()
                         ? fmt::format("{} is a list: say which member, as in {}[1].{}", here, here, step.name)
                         : fmt::format("{} is a value and holds no {}", here, step.name);
      return result;
    }
    const toml::node* child = table->get(step.name);
    if (child == nullptr) return result;
    result.parents.push_back(table);
    if (step.member > 0) {
      const toml::array* list = child->as_array();
      if (list == nullptr) {
        result.wrong = fmt::format("{} is not a list", schema_name(path.first(result.found + 1)));
        return result;
      }
      if (step.member > list->size()) {
        result.node = list;
        result.lacks_member = true;
        return result;
      }
      child = list->get(step.member - 1);
    }
    result.node = child;
    ++result.found;
  }
  return result;
}

}  // namespace quell::io
