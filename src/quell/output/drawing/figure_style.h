// Ink of the figures: one style sheet for all of them, so that line kinds mean the same everywhere.
#pragma once

#include <string_view>

namespace quell::output {

/// CSS for the classes "f-…". Every meaning is carried by line style and weight first; colour only helps.
std::string_view figure_style();

}  // namespace quell::output
