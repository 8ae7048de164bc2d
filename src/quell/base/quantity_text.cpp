#include "quell/base/quantity_text.h"

#include <fmt/format.h>

#include <cmath>
#include <cstdlib>

namespace quell {

std::string quantity_token(double value, Dimension dimension) {
  return fmt::format("{{{{{}|{},{},{}}}}}", value, dimension.length, dimension.mass, dimension.time);
}

std::string round_token(double value, Dimension dimension) {
  return fmt::format("{{{{{}|{},{},{}|3}}}}", value, dimension.length, dimension.mass, dimension.time);
}

std::string without_zeros(std::string number) {
  if (number.find('.') == std::string::npos || number.find('e') != std::string::npos) return number;
  number.erase(number.find_last_not_of('0') + 1);
  if (number.back() == '.') number.pop_back();
  return number;
}

NumberAndUnit round_figure(const ToldQuantity& quantity, UnitSystem system) {
  const bool metric = system == UnitSystem::si;
  const bool is_small = quantity.dimension == dimension::length && std::abs(quantity.value) < 0.3;
  constexpr double millimetre = 0.001, inch = 0.0254;
  const std::string text =
      is_small ? format_number(quantity.value / (metric ? millimetre : inch), dimension::none, system, quantity.significant)
               : format_number(quantity.value, quantity.dimension, system, quantity.significant);
  return {without_zeros(text), is_small ? (metric ? "mm" : "in") : unit_label(quantity.dimension, system)};
}

std::string with_units(std::string_view text, UnitSystem system, int significant) {
  return with_units(text, [=](const ToldQuantity& one) {
    if (one.significant == 0) return format_quantity(one.value, one.dimension, system, significant);
    const auto [number, unit] = round_figure(one, system);
    return unit.empty() ? number : number + " " + unit;
  });
}

std::string with_units(std::string_view text, const std::function<std::string(const ToldQuantity&)>& print) {
  std::string result;
  while (true) {
    const auto open = text.find("{{");
    const auto close = open == std::string_view::npos ? open : text.find("}}", open);
    result.append(text.substr(0, close == std::string_view::npos ? close : open));
    if (close == std::string_view::npos) return result;
    const std::string token(text.substr(open + 2, close - open - 2));
    char* rest = nullptr;
    const double value = std::strtod(token.c_str(), &rest);
    int fields[4] = {0, 0, 0, 0};  // of length, mass, time; digits
    for (int& field : fields)
      if (*rest != '\0') field = static_cast<int>(std::strtol(rest + 1, &rest, 10));
    result += print({value, {fields[0], fields[1], fields[2]}, fields[3]});
    text.remove_prefix(close + 2);
  }
}

}  // namespace quell
