#include "quell/io/toml_key.h"

#include <fmt/format.h>

#include <tuple>

namespace quell::io {
namespace {

class KeySearch {
 public:
  explicit KeySearch(Place place) : place_(place) {}

  void walk(const toml::table& table, const std::string& label) {
    for (const auto& [key, node] : table) {
      const std::string name = full_name(label, key.str());
      offer(key.source().begin, name);
      if (const toml::table* section = node.as_table()) {
        offer(section->source().begin, name);
        walk(*section, name);
      } else if (const toml::array* members = node.as_array()) {
        walk_members(*members, name);
      }
    }
  }

  const std::string& found() const { return found_; }

 private:
  Place place_;
  Place best_{};
  std::string found_;

  void walk_members(const toml::array& members, const std::string& name) {
    std::size_t number = 0;
    for (const toml::node& member : members) {
      ++number;
      const toml::table* section = member.as_table();
      if (section == nullptr) continue;
      const std::string label = fmt::format("{}[{}]", name, number);
      offer(section->source().begin, label);
      walk(*section, label);
    }
  }

  /// Of two that start at the same place the one met later is the deeper.
  void offer(const toml::source_position& begin, const std::string& name) {
    const Place start{static_cast<int>(begin.line), static_cast<int>(begin.column)};
    const auto order = [](Place p) { return std::tuple(p.line, p.column); };
    if (start.line == 0 || order(start) > order(place_) || order(start) < order(best_)) return;
    best_ = start;
    found_ = name;
  }
};

}  // namespace

std::string key_at(const toml::table& root, Place place) {
  if (place.line == 0) return {};
  KeySearch search(place);
  search.walk(root, {});
  return search.found();
}

}  // namespace quell::io
