// Slopes as the trade writes them.
#pragma once

#include <string_view>
#include <tl/expected.hpp>

namespace quell::io {

/// A slope read from text: fall and horizontal run, not both zero. "0.7H:1V", "1V:0.7H", "35 deg" (fall sin, run cos), "25 %".
struct Slope {
  double fall = 0.0;
  double run = 0.0;
};

/// The error is a sentence.
tl::expected<Slope, std::string> parse_slope(std::string_view text);

}  // namespace quell::io
