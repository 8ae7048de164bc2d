// No physical answer: the third kind of trouble. A computation that has no answer says why, and the reason
// travels with the result instead of a NaN.
#pragma once

#include <string_view>
#include <tl/expected.hpp>

namespace quell {

/// Why there is no answer. The texts are static, so that hot loops can return them without allocating. Where an input is to
/// blame, it is named with its value and what would be allowed.
struct NoAnswer {
  std::string_view reason;
  std::string_view symbol = {};  ///< the input, or a number formed from inputs ("F1"); empty where none is to blame
  double value = 0.0;            ///< what it was, SI
  double lowest = 0.0;           ///< allowed, SI; the lowest double where there is no lower limit
  double highest = 0.0;          ///< allowed, SI; the highest double where there is no upper limit
  constexpr bool is_bad_input() const { return !symbol.empty(); }
};

template <class T>
using Outcome = tl::expected<T, NoAnswer>;

inline tl::unexpected<NoAnswer> no_answer(std::string_view reason) {
  return tl::unexpected<NoAnswer>(NoAnswer{reason});
}

/// An input for which there cannot be an answer: `symbol` is `value`, and must lie from `lowest` to `highest`.
inline tl::unexpected<NoAnswer> bad_input(std::string_view symbol, double value, double lowest, double highest,
                                          std::string_view reason) {
  return tl::unexpected<NoAnswer>(NoAnswer{reason, symbol, value, lowest, highest});
}

}  // namespace quell
