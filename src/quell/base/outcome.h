// No physical answer: the third kind of trouble. A computation that has no answer says why, and the reason
// travels with the result instead of a NaN.
#pragma once

#include <string_view>
#include <tl/expected.hpp>

namespace quell {

/// Why there is no answer. The text is static, so that hot loops can return it without allocating.
struct NoAnswer {
  std::string_view reason;
};

template <class T>
using Outcome = tl::expected<T, NoAnswer>;

inline tl::unexpected<NoAnswer> no_answer(std::string_view reason) {
  return tl::unexpected<NoAnswer>(NoAnswer{reason});
}

}  // namespace quell
