// The validation book compiled in: data/checks/<author_year>.toml, for `quell verify`.
#pragma once

#include <span>
#include <string_view>

namespace quell::app {

struct CheckText {
  std::string_view name;  ///< file name
  std::string_view text;  ///< TOML
};

std::span<const CheckText> check_texts();

}  // namespace quell::app
