// "Did you mean …?": the nearest of the valid words.
#pragma once

#include <span>
#include <string_view>

namespace quell::io {

/// The valid word nearest to `word`: by edits (swapped neighbours count as one), or by a whole word in common ("crest_level"
/// for "level"). Empty where none is near enough to be meant.
std::string_view nearest(std::string_view word, std::span<const std::string_view> valid);

}  // namespace quell::io
