#include <algorithm>
#include <cmath>
#include <utility>

#include "quell/base/unit_table.h"
#include "quell/base/units.h"
#include "quell/base/units_text.h"

namespace quell {
namespace {

using unit_text::Failure;
using unit_text::is_digit;
using unit_text::is_high;
using unit_text::is_letter;
using unit_text::quoted;

constexpr int most_power = 12;       // of one unit
constexpr int most_sixths = 240;     // of a whole quantity: keeps the exponents far from overflow
constexpr int most_parentheses = 8;  // keeps the recursion shallow

struct Sign {
  std::string_view text;
  int value;
};
constexpr Sign superscripts[] = {{"⁰", 0}, {"¹", 1}, {"²", 2}, {"³", 3}, {"⁴", 4}, {"⁵", 5},
                                 {"⁶", 6}, {"⁷", 7}, {"⁸", 8}, {"⁹", 9}, {"⁻", -1}};
constexpr Sign fractions[] = {{"½", 3}, {"⅓", 2}, {"⅔", 4}};  // in sixths

class Reader : public unit_text::NumberReader {
 public:
  using NumberReader::NumberReader;

  tl::expected<Quantity, QuantityError> quantity() {
    skip_space();
    const auto number = read_number();
    if (!number) return Failure(number.error());
    const bool spaced = skip_space();
    if (rest().empty()) return Quantity{*number, {}, false};
    if (spaced && is_digit(peek())) return grouping_failure();
    auto unit = read_product(0);
    if (!unit) return Failure(unit.error());
    if (!rest().empty())
      return fail("The unit is not understood from " + quoted(rest()) + " on. Write it like 'm3/s' or 'kN/m3'.");
    const double value = static_cast<double>(*number * unit->factor);
    if (!std::isfinite(value)) return fail("The number is too large.");
    return Quantity{value, unit->dimension, true};
  }

 private:
  struct Unit {
    long double factor = 1.0L;
    Dimension dimension;
  };

  bool at_unit() const { return is_letter(peek()) || is_high(peek()) || peek() == '%' || peek() == '('; }

  bool take_times() {
    if (take("*") || take("·") || take("⋅") || take("×")) return true;
    if (peek() != '-' || !is_letter(peek(1))) return false;
    return take("-");  // "acre-ft"
  }

  tl::expected<Unit, QuantityError> read_product(int depth) {
    Unit product;
    bool divided = false;
    bool first = true;
    while (true) {
      const std::size_t before = at_;
      const bool spaced = skip_space();
      const bool over = take("/");
      const bool times = !over && !first && take_times();
      skip_space();
      if (!over && !times && !first && !(spaced && at_unit())) {
        at_ = rest().empty() ? at_ : before;
        return product;
      }
      if (divided && !over)
        return fail("What belongs below the '/' is not clear. Put the divisor in parentheses, as in 'kg/(m s2)'.");
      const auto factor = read_factor(depth);
      if (!factor) return factor;
      if (!multiply(product, *factor, over ? -1 : 1)) return fail("The powers of this unit are too large.");
      divided = divided || over;
      first = false;
    }
  }

  static bool multiply(Unit& product, const Unit& factor, int sign) {
    product.factor = sign > 0 ? product.factor * factor.factor : product.factor / factor.factor;
    product.dimension.length += sign * factor.dimension.length;
    product.dimension.mass += sign * factor.dimension.mass;
    product.dimension.time += sign * factor.dimension.time;
    return sound(product);
  }

  static bool sound(const Unit& unit) {
    const auto small = [](int sixths) { return std::abs(sixths) <= most_sixths; };
    return small(unit.dimension.length) && small(unit.dimension.mass) && small(unit.dimension.time) && unit.factor > 0.0L &&
           std::isfinite(unit.factor);
  }

  tl::expected<Unit, QuantityError> read_factor(int depth) {
    Unit unit;
    if (peek() == '(') {
      if (depth >= most_parentheses) return fail("The unit has too many parentheses.");
      ++at_;
      const auto inner = read_product(depth + 1);
      if (!inner) return inner;
      skip_space();
      if (!take(")")) return fail("A ')' is missing in the unit.");
      unit = *inner;
    } else {
      const auto named = read_name();
      if (!named) return named;
      unit = *named;
    }
    const auto sixths = read_power();
    if (!sixths) return Failure(sixths.error());
    return raise(unit, *sixths);
  }

  tl::expected<Unit, QuantityError> raise(const Unit& unit, int sixths) const {
    const auto whole = [&](int exponent) { return exponent * sixths % 6 == 0; };
    const Dimension& old = unit.dimension;
    if (!whole(old.length) || !whole(old.mass) || !whole(old.time))
      return fail("Powers are read in sixths, such as (1/2) or (1/3).");
    const Dimension raised{old.length * sixths / 6, old.mass * sixths / 6, old.time * sixths / 6};
    const Unit result{unit_table::power_of(unit.factor, sixths), raised};
    if (!sound(result)) return fail("The powers of this unit are too large.");
    return result;
  }

  std::size_t name_length() const {
    if (peek() == '%') return 1;
    if (rest().starts_with("°")) return std::string_view("°").size();
    std::size_t count = 0;
    while (is_letter(peek(count)) || is_high(peek(count))) {
      const auto here = rest().substr(count);
      const auto starts = [&](const Sign& sign) { return here.starts_with(sign.text); };
      if (std::any_of(std::begin(superscripts), std::end(superscripts), starts)) break;
      if (std::any_of(std::begin(fractions), std::end(fractions), starts)) break;
      if (here.starts_with("·") || here.starts_with("⋅") || here.starts_with("×") || here.starts_with("\u00a0")) break;
      if (here.starts_with("\u2009") || here.starts_with("\u202f")) break;
      ++count;
    }
    return count;
  }

  tl::expected<Unit, QuantityError> read_name() {
    const std::string_view name = text_.substr(at_, name_length());
    if (name.empty()) {
      if (rest().empty()) return fail("The unit ends too early. Write it like 'm3/s'.");
      return fail("A unit is expected here, not " + quoted(rest()) + ". Write it like 'm3/s', powers as in 'm^(1/2)'.");
    }
    const auto* unit = unit_table::find(name);
    if (unit == nullptr) {
      const std::string nearest(unit_table::nearest(name));
      return fail(quoted(name) + " is not a unit known here; the nearest known unit is '" + nearest + "'.");
    }
    at_ += name.size();
    return Unit{unit->factor, unit->dimension};
  }

  Failure power_failure() const {
    return fail("A power is a whole number up to 12 or a fraction in sixths in parentheses, as in 'm^3', 's^-1' or 'm^(1/3)'.");
  }

  tl::expected<int, QuantityError> read_power() {
    if (take("^")) return read_marked_power();
    for (const auto& fraction : fractions)
      if (take(fraction.text)) return fraction.value;
    if (is_digit(peek()) || (peek() == '-' && is_digit(peek(1)))) return read_rational(false);
    return read_raised_power();
  }

  tl::expected<int, QuantityError> read_marked_power() {
    for (const auto& fraction : fractions)
      if (take(fraction.text)) return fraction.value;
    const bool parenthesis = take("(");
    const auto power = read_rational(parenthesis);
    if (!power) return power;
    if (parenthesis && !take(")")) return power_failure();
    return power;
  }

  // A signed whole number, a decimal such as 0.5, or, in parentheses, a fraction. Gives sixths.
  tl::expected<int, QuantityError> read_rational(bool in_parentheses) {
    const int sign = take("-") || take("\u2212") ? -1 : 1;
    int numerator = 0;
    int denominator = 1;
    if (!read_small(numerator)) return power_failure();
    if (peek() == '.' && is_digit(peek(1))) {
      ++at_;
      const int places = static_cast<int>(digits_from(at_));
      int decimals = 0;
      if (places > 2 || !read_small(decimals)) return power_failure();
      denominator = places == 1 ? 10 : 100;
      numerator = numerator * denominator + decimals;
    } else if (in_parentheses && take("/") && (!read_small(denominator) || denominator == 0)) {
      return power_failure();
    }
    if (numerator * 6 % denominator != 0 || numerator > most_power * denominator) return power_failure();
    return sign * numerator * 6 / denominator;
  }

  bool read_small(int& value) {
    const std::size_t count = digits_from(at_);
    if (count == 0 || count > 2) return false;
    value = 0;
    for (std::size_t i = 0; i < count; ++i) value = value * 10 + (text_[at_ + i] - '0');
    at_ += count;
    return true;
  }

  tl::expected<int, QuantityError> read_raised_power() {
    const int sign = take("⁻") ? -1 : 1;
    int value = 0;
    int count = 0;
    for (bool found = true; found && count < 3;) {
      found = false;
      for (const auto& superscript : superscripts) {
        if (superscript.value < 0 || !take(superscript.text)) continue;
        value = value * 10 + superscript.value;
        ++count;
        found = true;
        break;
      }
    }
    if (count == 0) return sign > 0 ? tl::expected<int, QuantityError>(6) : power_failure();
    if (value > most_power) return power_failure();
    return sign * value * 6;
  }
};

}  // namespace

tl::expected<Quantity, QuantityError> parse_quantity(std::string_view text) {
  return Reader(text).quantity();
}

}  // namespace quell
