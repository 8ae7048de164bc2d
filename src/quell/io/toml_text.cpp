#include "quell/io/toml_text.h"

#include <fmt/format.h>

#include <cmath>

#include "quell/io/input_text.h"
#include "quell/io/problem_list.h"
#include "quell/io/toml_error.h"
#include "quell/io/toml_layout.h"

namespace quell::io {
namespace {

constexpr std::string_view start_of_fragment = "v = ";

tl::unexpected<std::vector<Problem>> problem_at(std::string_view text, Place place, std::string message) {
  ProblemList problems("site file", split_lines(text));
  problems.problem(place, std::move(message));
  SiteFile told;
  problems.hand_over(told);
  return tl::unexpected(std::move(told.problems));
}

/// The table that holds the last name of the path.
toml::table& holder_of(toml::table& document, std::span<const PathStep> path) {
  toml::table* at = &document;
  for (const PathStep& step : path.first(path.size() - 1)) {
    toml::node* next = at->get(step.name);
    if (next == nullptr) next = &at->insert(step.name, toml::table{}).first->second;
    if (step.member > 0) next = next->as_array()->get(step.member - 1);
    at = next->as_table();
  }
  return *at;
}

}  // namespace

tl::expected<toml::table, std::vector<Problem>> parse_toml(std::string_view text) {
  if (text.size() > largest_input_file) return problem_at({}, {}, "the text is larger than 16 MB");
  auto fault = find_text_fault(text);
  if (!fault) fault = find_toml_fault(text);
  if (fault) return problem_at(text, fault->place, std::move(fault->message));
  try {
    return toml::parse(text, std::string_view{"site file"});
  } catch (const toml::parse_error& error) {
    const toml::source_position& at = error.source().begin;
    const Place place{static_cast<int>(at.line), static_cast<int>(at.column)};
    const ProblemList lines("site file", split_lines(text));
    return problem_at(text, place, explain_toml_error(error.description(), lines.line(place.line)));
  }
}

tl::expected<Fragment, std::string> read_fragment(std::string_view name, std::string_view typed) {
  const std::size_t first = typed.find_first_not_of(" \t");
  if (first == std::string_view::npos) return tl::unexpected(fmt::format("'{}' has no value", name));
  Fragment fragment;
  fragment.text = typed.substr(first, typed.find_last_not_of(" \t") - first + 1);
  fragment.document = fmt::format("{}{}", start_of_fragment, fragment.text);
  auto document = parse_toml(fragment.document);
  if (!document) {
    // The hint of a usual slip is better with the true name of the key.
    std::string message = document.error().front().message;
    const std::size_t at = message.find(": v = ");
    if (at != std::string::npos) message.replace(at + 2, 1, name);
    if (message == "'v' has no value") message = fmt::format("'{}' has no value", name);
    return tl::unexpected(std::move(message));
  }
  fragment.holder = std::move(*document);
  const TomlLayout layout(fragment.document, fragment.holder);
  const Span span = layout.value(fragment.node());
  if (fragment.holder.size() != 1 || span.begin != start_of_fragment.size() || span.end != fragment.document.size())
    return tl::unexpected(fmt::format("what is written for '{}' is more than one value", name));
  return fragment;
}

bool same_content(const toml::node& a, const toml::node& b) {
  if (a.type() != b.type()) return false;
  if (const toml::table* table = a.as_table()) {
    const toml::table& other = *b.as_table();
    if (table->size() != other.size()) return false;
    for (const auto& [key, node] : *table)
      if (const toml::node* match = other.get(key.str()); match == nullptr || !same_content(node, *match)) return false;
    return true;
  }
  if (const toml::array* list = a.as_array()) {
    const toml::array& other = *b.as_array();
    if (list->size() != other.size()) return false;
    for (std::size_t i = 0; i < list->size(); ++i)
      if (!same_content(*list->get(i), *other.get(i))) return false;
    return true;
  }
  if (const auto number = a.value_exact<double>(); number && std::isnan(*number)) return std::isnan(*b.value_exact<double>());
  return a.visit([&](const auto& value) {
    using NodeType = std::decay_t<decltype(value)>;
    if constexpr (toml::is_value<NodeType>)
      return value.get() == b.as<typename NodeType::value_type>()->get();
    else
      return false;
  });
}

void put_value(toml::table& document, std::span<const PathStep> path, const toml::node& value) {
  toml::table& holder = holder_of(document, path);
  const PathStep& last = path.back();
  if (last.member == 0) {
    holder.insert_or_assign(last.name, value);
    return;
  }
  toml::array& list = *holder.get_as<toml::array>(last.name);
  const auto at = list.cbegin() + static_cast<std::ptrdiff_t>(last.member - 1);
  list.insert(list.erase(at), value);
}

void put_member(toml::table& document, std::span<const PathStep> path, std::size_t index, const toml::node& value) {
  toml::table& holder = holder_of(document, path);
  if (!holder.contains(path.back().name)) holder.insert(path.back().name, toml::array{});
  toml::array& list = *holder.get_as<toml::array>(path.back().name);
  list.insert(list.cbegin() + static_cast<std::ptrdiff_t>(index), value);
}

void take_out(toml::table& document, std::span<const PathStep> path, bool vanishes_when_empty) {
  toml::table& holder = holder_of(document, path);
  const PathStep& last = path.back();
  if (last.member == 0) {
    holder.erase(last.name);
    return;
  }
  toml::array& list = *holder.get_as<toml::array>(last.name);
  list.erase(list.cbegin() + static_cast<std::ptrdiff_t>(last.member - 1));
  if (list.empty() && vanishes_when_empty) holder.erase(last.name);
}

}  // namespace quell::io
