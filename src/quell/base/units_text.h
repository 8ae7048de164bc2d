// Private to the units: a place in a text that is being read, and the reading of its number.
#pragma once

#include <string>
#include <string_view>
#include <utility>

#include "quell/base/units.h"

namespace quell::unit_text {

using Failure = tl::unexpected<QuantityError>;

inline bool is_digit(char c) {
  return c >= '0' && c <= '9';
}
inline bool is_letter(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}
inline bool is_high(char c) {
  return static_cast<unsigned char>(c) >= 0x80;
}

/// The start of a foreign text, fit for a message: bytes that are no text become '?'.
std::string quoted(std::string_view text);

class Cursor {
 public:
  explicit Cursor(std::string_view text) : text_(text) {}

 protected:
  std::string_view rest() const { return text_.substr(at_); }
  char peek(std::size_t ahead = 0) const { return at_ + ahead < text_.size() ? text_[at_ + ahead] : '\0'; }
  Failure fail(std::string message) const { return Failure(QuantityError{at_, std::move(message)}); }

  bool take(std::string_view expected) {
    if (!rest().starts_with(expected)) return false;
    at_ += expected.size();
    return true;
  }

  bool take_space() {  // blank, tab, and the unbreakable and narrow spaces that word processors put before units
    return take(" ") || take("\t") || take("\u00a0") || take("\u2009") || take("\u202f");
  }

  bool skip_space() {
    const std::size_t start = at_;
    while (take_space()) {
    }
    return at_ > start;
  }

  std::size_t digits_from(std::size_t from) const {
    std::size_t to = from;
    while (to < text_.size() && is_digit(text_[to])) ++to;
    return to - from;
  }

  std::string_view text_;
  std::size_t at_ = 0;
};

/// Reads the number at the front of a quantity.
class NumberReader : public Cursor {
 public:
  using Cursor::Cursor;

 protected:
  /// Leaves the place behind the number; what is no number, or not clearly one, is refused.
  tl::expected<double, QuantityError> read_number();
  Failure grouping_failure() const;

 private:
  tl::expected<void, QuantityError> read_whole(std::string& digits);
  void read_decimals(std::string& digits);
  void read_exponent(std::string& digits);
  Failure comma_failure(const std::string& before) const;
  Failure no_number() const;
};

}  // namespace quell::unit_text
