// What the checks ask of a draft: was a key read, where does it stand, how is a quantity shown.
#pragma once

#include <algorithm>
#include <initializer_list>
#include <string>
#include <string_view>

#include "quell/io/schema.h"
#include "quell/io/shown.h"

namespace quell::io {

class DraftView {
 public:
  explicit DraftView(const Draft& draft) : draft_(draft) {}

  /// Every one of the keys was read without a problem, or took its default.
  bool have(std::initializer_list<std::string_view> keys) const {
    return std::all_of(keys.begin(), keys.end(),
                       [&](std::string_view key) { return draft_.read.find(key) != draft_.read.end(); });
  }

  Place at(std::string_view key) const {
    const auto found = draft_.read.find(key);
    return found == draft_.read.end() ? Place{} : found->second;
  }

  /// It stands in the file: a default cannot be pointed at.
  bool typed(std::string_view key) const { return at(key).line > 0; }

  /// The first of the keys that stands in the file.
  Place at_typed(std::initializer_list<std::string_view> keys) const {
    const auto* found = std::find_if(keys.begin(), keys.end(), [&](std::string_view key) { return typed(key); });
    return found == keys.end() ? Place{} : at(*found);
  }

  /// Of a member of a list; of the list where that is a default.
  Place member_at(std::string_view key, std::size_t index) const {
    const auto found = draft_.member_places.find(key);
    return found != draft_.member_places.end() && index < found->second.size() ? found->second[index] : at(key);
  }

  std::string length(double si) const { return shown(si, dimension::length, draft_.site.units); }
  std::string discharge(double si) const { return shown(si, dimension::discharge, draft_.site.units); }

 private:
  const Draft& draft_;
};

}  // namespace quell::io
