#include "quell/io/slope.h"

#include <cmath>
#include <string>

#include "quell/base/units.h"

namespace quell::io {
namespace {

constexpr const char* advice = "a slope is written like \"0.7H:1V\" (0.7 horizontal to 1 vertical), \"35 deg\" or \"25 %\"";

tl::unexpected<std::string> refused() {
  return tl::unexpected<std::string>(advice);
}

std::string_view trimmed(std::string_view text) {
  while (!text.empty() && text.front() == ' ') text.remove_prefix(1);
  while (!text.empty() && text.back() == ' ') text.remove_suffix(1);
  return text;
}

/// "0.7H": number and letter, false where it is not that.
bool read_side(std::string_view text, double& number, char& letter) {
  text = trimmed(text);
  if (text.size() < 2) return false;
  letter = text.back() == 'h' || text.back() == 'H' ? 'H' : text.back() == 'v' || text.back() == 'V' ? 'V' : ' ';
  const auto quantity = parse_quantity(trimmed(text.substr(0, text.size() - 1)));
  if (letter == ' ' || !quantity || quantity->has_unit || quantity->value < 0.0) return false;
  number = quantity->value;
  return true;
}

}  // namespace

tl::expected<Slope, std::string> parse_slope(std::string_view text) {
  const std::size_t colon = text.find(':');
  if (colon != std::string_view::npos) {
    double first = 0.0, second = 0.0;
    char first_letter = ' ', second_letter = ' ';
    if (!read_side(text.substr(0, colon), first, first_letter) || !read_side(text.substr(colon + 1), second, second_letter) ||
        first_letter == second_letter || (first == 0.0 && second == 0.0))
      return refused();
    return first_letter == 'V' ? Slope{first, second} : Slope{second, first};
  }
  const auto quantity = parse_quantity(text);
  if (!quantity || quantity->dimension != dimension::none) return refused();
  const bool is_percent = text.find('%') != std::string_view::npos;
  if (quantity->has_unit && !is_percent) {
    if (quantity->value < 0.0 || quantity->value > 1.5708)
      return tl::unexpected<std::string>("the angle of a slope lies between 0 and 90 deg");
    return Slope{std::sin(quantity->value), std::cos(quantity->value)};
  }
  return Slope{quantity->value, 1.0};
}

}  // namespace quell::io
