#include "quell/app/validation_text.h"

#include <fmt/format.h>

#include <cmath>

namespace quell::app {
namespace {

bool is_digit(char c) {
  return c >= '0' && c <= '9';
}

/// Where the number ends and its unit begins: "1e3 ft" has an exponent, "3 ft" has not.
std::string_view unit_part(std::string_view text) {
  for (std::size_t i = 0; i < text.size(); ++i) {
    const char c = text[i];
    if (is_digit(c) || c == '.' || c == '+' || c == '-' || c == ' ' || c == '_') continue;
    const bool exponent = (c == 'e' || c == 'E') && i > 0 && is_digit(text[i - 1]) && i + 1 < text.size() &&
                          (is_digit(text[i + 1]) || text[i + 1] == '-' || text[i + 1] == '+');
    if (!exponent) return text.substr(i);
  }
  return {};
}

}  // namespace

tl::expected<BookNumber, std::string> read_book_number(std::string_view text, Dimension dimension) {
  const auto quantity = parse_quantity(text);
  if (!quantity) return tl::unexpected(fmt::format("'{}': {}", text, quantity.error().message));
  const std::string unit(unit_part(text));
  if (!unit.empty() && quantity->dimension != dimension)
    return tl::unexpected(fmt::format("'{}' is a {}, the symbol a {}", text, name_of(quantity->dimension), name_of(dimension)));
  if (unit.empty()) return BookNumber{quantity->value, 1.0, {}};
  const auto one = parse_quantity("1 " + unit);
  if (!one) return tl::unexpected(fmt::format("'{}': {}", text, one.error().message));
  return BookNumber{quantity->value, one->value, unit};
}

tl::expected<double, std::string> read_tolerance(std::string_view text, Dimension dimension, double expected) {
  if (!text.empty() && text.back() == '%') {
    const auto share = parse_quantity(text);
    if (!share) return tl::unexpected(fmt::format("tolerance '{}': {}", text, share.error().message));
    return share->value * std::abs(expected);
  }
  const auto number = read_book_number(text, dimension);
  if (!number) return tl::unexpected("tolerance " + number.error());
  return number->value;
}

std::string text_like(double value, const BookNumber& like) {
  const std::string number = fmt::format("{:.6g}", value / like.factor);
  return like.unit.empty() ? number : number + " " + like.unit;
}

}  // namespace quell::app
