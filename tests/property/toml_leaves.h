// A TOML document as its values by path, to compare what an edit meant with what it did.
#pragma once

#include <fmt/format.h>
#include <toml++/toml.h>

#include <map>
#include <sstream>
#include <string>
#include <string_view>
#include <vector>

#include "quell/io/input_text.h"

namespace quell::io::leaves {

inline toml::table parsed(std::string_view text) {
  drop_byte_order_mark(text);
  return toml::parse(text);
}

/// Every value of a document by its path, typed as TOML; lists of values are values too. A table is an empty text.
using Leaves = std::map<std::string, std::string>;

inline std::string typed(const toml::node& node) {
  std::ostringstream stream;
  node.visit([&](const auto& n) { stream << n; });
  return stream.str();
}

inline void gather(const toml::node& node, const std::string& path, Leaves& leaves) {
  const toml::array* list = node.as_array();
  if (const toml::table* table = node.as_table()) {
    if (!path.empty()) leaves[path] = "";
    for (const auto& [key, child] : *table)
      gather(child, path.empty() ? std::string(key.str()) : fmt::format("{}.{}", path, key.str()), leaves);
  } else if (list != nullptr && !list->empty() && list->front().is_table()) {
    for (std::size_t i = 0; i < list->size(); ++i) gather(*list->get(i), fmt::format("{}[{}]", path, i + 1), leaves);
  } else {
    leaves[path] = typed(node);
  }
}

inline Leaves leaves_of(std::string_view text) {
  Leaves leaves;
  gather(parsed(text), "", leaves);
  return leaves;
}

inline std::vector<std::string> paths_of(const Leaves& leaves, bool is_table) {
  std::vector<std::string> paths;
  for (const auto& [path, value] : leaves)
    if (value.empty() == is_table) paths.push_back(path);
  return paths;
}

}  // namespace quell::io::leaves
