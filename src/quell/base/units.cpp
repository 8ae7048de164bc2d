#include "quell/base/units.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <numeric>

#include "quell/base/unit_table.h"

namespace quell {
namespace {

constexpr std::array<std::string_view, 10> superscripts = {"⁰", "¹", "²", "³", "⁴", "⁵", "⁶", "⁷", "⁸", "⁹"};

std::string plain_power(int sixths) {
  if (sixths == 6) return "";
  if (sixths % 6 == 0) return fmt::format("^{}", sixths / 6);
  const int divisor = std::gcd(sixths, 6);
  return fmt::format("^({}/{})", sixths / divisor, 6 / divisor);
}

std::string raised_power(int sixths) {
  if (sixths % 6 != 0) return plain_power(sixths);
  if (sixths == 6) return "";
  std::string raised;
  for (const char c : fmt::format("{}", sixths / 6)) raised += c == '-' ? "⁻" : superscripts[static_cast<std::size_t>(c - '0')];
  return raised;
}

// For dimensions without a unit of their own: "kg m^-1 s^-1".
std::string spelled(Dimension dimension, UnitSystem system, bool raised) {
  const bool si = system == UnitSystem::si;
  std::string text;
  const auto add = [&](std::string_view base, int sixths) {
    if (sixths == 0) return;
    if (!text.empty()) text += raised ? "·" : " ";
    text += base;
    text += raised ? raised_power(sixths) : plain_power(sixths);
  };
  add(si ? "kg" : "lb", dimension.mass);
  add(si ? "m" : "ft", dimension.length);
  add("s", dimension.time);
  return text;
}

long double factor_of(Dimension dimension, UnitSystem system) {
  if (const auto* unit = unit_table::printed(dimension)) return system == UnitSystem::si ? unit->si_factor : unit->us_factor;
  if (system == UnitSystem::si) return 1.0L;
  return unit_table::power_of(unit_table::foot, dimension.length) * unit_table::power_of(unit_table::pound, dimension.mass);
}

std::string fixed(double value, int decimals) {
  std::string text = fmt::format("{:.{}f}", value, std::clamp(decimals, 0, 17));
  if (text.front() == '-' && text.find_first_of("123456789") == std::string::npos) text.erase(0, 1);
  return text;
}

bool is_power_of_ten(long double factor) {
  const long double exponent = std::round(std::log10(factor));
  return std::abs(factor / std::pow(10.0L, exponent) - 1.0L) < 1e-12L;
}

constexpr std::string_view no_value = "n/a";

}  // namespace

std::string name_of(Dimension dimension) {
  if (const auto* unit = unit_table::printed(dimension)) return std::string(unit->name);
  return spelled(dimension, UnitSystem::si, false);
}

std::string unit_symbol(Dimension dimension, UnitSystem system) {
  const auto* unit = unit_table::printed(dimension);
  if (unit == nullptr) return spelled(dimension, system, false);
  return std::string(system == UnitSystem::si ? unit->si_symbol : unit->us_symbol);
}

std::string unit_label(Dimension dimension, UnitSystem system) {
  const auto* unit = unit_table::printed(dimension);
  if (unit == nullptr) return spelled(dimension, system, true);
  return std::string(system == UnitSystem::si ? unit->si_label : unit->us_label);
}

std::vector<std::string> offered_units(Dimension dimension, UnitSystem system) {
  if (dimension == dimension::none || unit_symbol(dimension, system).empty()) return {};
  std::vector<std::string> units{unit_symbol(dimension, system)};
  std::vector<long double> factors{factor_of(dimension, system)};
  // Minutes and hours belong to both systems; of the rest, decimal multiples are SI.
  const bool shared = factor_of(dimension, UnitSystem::si) == factor_of(dimension, UnitSystem::us);
  for (const auto& unit : unit_table::all_names()) {
    const auto same = [&](long double factor) { return std::abs(unit.factor / factor - 1.0L) < 1e-12L; };
    if (unit.dimension != dimension || std::any_of(factors.begin(), factors.end(), same)) continue;
    if (!shared && is_power_of_ten(unit.factor) != (system == UnitSystem::si)) continue;
    units.emplace_back(unit.name);
    factors.push_back(unit.factor);
  }
  return units;
}

std::string example_units(Dimension dimension) {
  if (const auto* unit = unit_table::printed(dimension)) return std::string(unit->examples);
  return spelled(dimension, UnitSystem::si, false) + ", " + spelled(dimension, UnitSystem::us, false);
}

double to_unit(double value_si, Dimension dimension, UnitSystem system) {
  return static_cast<double>(value_si / factor_of(dimension, system));
}

double from_unit(double value, Dimension dimension, UnitSystem system) {
  return static_cast<double>(value * factor_of(dimension, system));
}

std::string format_number(double value_si, Dimension dimension, UnitSystem system, int significant) {
  const double value = to_unit(value_si, dimension, system);
  if (!std::isfinite(value)) return std::string(no_value);
  if (value == 0.0) return "0";
  const int digits = std::clamp(significant, 1, 17);
  const std::string scientific = fmt::format("{:.{}e}", value, digits - 1);
  const int exponent = std::atoi(scientific.c_str() + scientific.find('e') + 1);  // after rounding: 9.9999 has the exponent 1
  if (exponent < -4 || exponent >= 7) return scientific;
  return fmt::format("{:.{}f}", value, std::max(0, digits - 1 - exponent));
}

std::string format_fixed(double value_si, Dimension dimension, UnitSystem system, int decimals) {
  const double value = to_unit(value_si, dimension, system);
  return std::isfinite(value) ? fixed(value, decimals) : std::string(no_value);
}

std::string format_quantity(double value_si, Dimension dimension, UnitSystem system, int significant) {
  const std::string label = unit_label(dimension, system);
  const std::string number = format_number(value_si, dimension, system, significant);
  return label.empty() || number == no_value ? number : number + " " + label;
}

}  // namespace quell
