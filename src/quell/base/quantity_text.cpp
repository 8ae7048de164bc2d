#include "quell/base/quantity_text.h"

#include <fmt/format.h>

#include <cstdlib>

namespace quell {

std::string quantity_token(double value, Dimension dimension) {
  return fmt::format("{{{{{}|{},{},{}}}}}", value, dimension.length, dimension.mass, dimension.time);
}

std::string with_units(std::string_view text, UnitSystem system, int significant) {
  return with_units(text,
                    [=](double value, Dimension dimension) { return format_quantity(value, dimension, system, significant); });
}

std::string with_units(std::string_view text, const std::function<std::string(double, Dimension)>& print) {
  std::string result;
  while (true) {
    const auto open = text.find("{{");
    const auto close = open == std::string_view::npos ? open : text.find("}}", open);
    result.append(text.substr(0, close == std::string_view::npos ? close : open));
    if (close == std::string_view::npos) return result;
    const std::string token(text.substr(open + 2, close - open - 2));
    char* rest = nullptr;
    const double value = std::strtod(token.c_str(), &rest);
    int exponents[3] = {0, 0, 0};
    for (int& exponent : exponents)
      if (*rest != '\0') exponent = static_cast<int>(std::strtol(rest + 1, &rest, 10));
    result += print(value, {exponents[0], exponents[1], exponents[2]});
    text.remove_prefix(close + 2);
  }
}

}  // namespace quell
