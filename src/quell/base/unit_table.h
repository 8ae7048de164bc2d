// Private to the units: the names that can be read, and the units in which dimensions are printed.
#pragma once

#include <span>
#include <string>
#include <string_view>

#include "quell/base/units.h"

namespace quell::unit_table {

/// A unit name as it is typed. The factor is exact in decimals; it is kept longer than a double so that ft3 made of three
/// feet is the double nearest to the exact value.
struct NamedUnit {
  std::string_view name;
  long double factor;  ///< SI per unit
  Dimension dimension;
};

/// How one dimension is printed.
struct PrintedUnit {
  Dimension dimension;
  std::string_view name;
  std::string_view si_symbol;
  std::string_view si_label;
  long double si_factor;
  std::string_view us_symbol;
  std::string_view us_label;
  long double us_factor;
  std::string_view examples;
};

/// Null where the name is not known.
const NamedUnit* find(std::string_view name);

/// The known name that is spelled most alike.
std::string_view nearest(std::string_view name);

/// Null for a dimension that the trade has no unit for.
const PrintedUnit* printed(Dimension dimension);

std::span<const NamedUnit> all_names();
std::span<const PrintedUnit> all_printed();

/// `base` to the power of `sixths`/6; whole powers by multiplication, so that they stay exact.
long double power_of(long double base, int sixths);

inline constexpr long double foot = 0.3048L;
inline constexpr long double pound = 0.45359237L;
inline constexpr long double pound_force = 4.4482216152605L;  ///< 0.45359237 kg times 9.80665 m/s2, exact
inline constexpr long double horsepower = 550.0L * foot * pound_force;

}  // namespace quell::unit_table
