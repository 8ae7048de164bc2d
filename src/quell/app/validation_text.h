// The words of one row of the validation book: quantities in the source's own units, and tolerances.
#pragma once

#include <string>
#include <string_view>
#include <tl/expected.hpp>

#include "quell/base/units.h"

namespace quell::app {

/// A number of the book. `unit` is the text behind the number, empty for a bare one; `factor` turns that unit into SI.
struct BookNumber {
  double value = 0.0;  ///< SI
  double factor = 1.0;
  std::string unit;
};

/// Reads "3.19 ft" or "9.05" for a symbol of that dimension; the error is a sentence.
tl::expected<BookNumber, std::string> read_book_number(std::string_view text, Dimension dimension);

/// "0.5 %" is relative to `expected`, everything else absolute. Returns it absolute, in SI.
tl::expected<double, std::string> read_tolerance(std::string_view text, Dimension dimension, double expected);

/// `value` (SI) in the unit of `like`, with six significant digits.
std::string text_like(double value, const BookNumber& like);

}  // namespace quell::app
