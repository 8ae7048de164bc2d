// Compiled in for `quell verify`: the validation book (data/checks/<author_year>.toml) and the measured data
// (data/measured/<author_year>.csv with its card).
#pragma once

#include <span>
#include <string_view>

namespace quell::app {

struct CheckText {
  std::string_view name;  ///< file name
  std::string_view text;  ///< TOML
};

std::span<const CheckText> check_texts();

struct MeasuredText {
  std::string_view name;    ///< without ending
  std::string_view card;    ///< TOML
  std::string_view points;  ///< CSV
};

std::span<const MeasuredText> measured_texts();

}  // namespace quell::app
