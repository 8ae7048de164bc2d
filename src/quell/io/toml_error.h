// The TOML parser's complaint in our words, with the usual slip behind it where it can be seen.
#pragma once

#include <string>
#include <string_view>

namespace quell::io {

/// `description` is the parser's; `line` the text where it stopped.
std::string explain_toml_error(std::string_view description, std::string_view line);

}  // namespace quell::io
