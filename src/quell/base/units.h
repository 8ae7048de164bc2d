// Units at the edges. Everywhere inside quell a quantity is a plain double in SI; this header is the only
// place where text with a unit becomes such a double, and where a double becomes text again.
//
// Factors are exact by definition: the international foot is 0.3048 m, the pound 0.45359237 kg, standard gravity
// (for pound-force) 9.80665 m/s2.
#pragma once

#include <string>
#include <string_view>
#include <tl/expected.hpp>
#include <vector>

namespace quell {

/// Exponents of length, mass and time, counted in sixths so that m^(1/2) (weir coefficient) and s/m^(1/3)
/// (Manning's n) are whole numbers.
struct Dimension {
  int length = 0;
  int mass = 0;
  int time = 0;
  constexpr bool operator==(const Dimension&) const = default;
};

namespace dimension {
inline constexpr Dimension none{};
inline constexpr Dimension length{6, 0, 0};
inline constexpr Dimension area{12, 0, 0};
inline constexpr Dimension volume{18, 0, 0};
inline constexpr Dimension time{0, 0, 6};
inline constexpr Dimension mass{0, 6, 0};
inline constexpr Dimension velocity{6, 0, -6};
inline constexpr Dimension acceleration{6, 0, -12};
inline constexpr Dimension discharge{18, 0, -6};
inline constexpr Dimension unit_discharge{12, 0, -6};
inline constexpr Dimension kinematic_viscosity{12, 0, -6};
inline constexpr Dimension weir_coefficient{3, 0, -6};
inline constexpr Dimension manning{-2, 0, 6};
inline constexpr Dimension density{-18, 6, 0};
inline constexpr Dimension pressure{-6, 6, -12};
inline constexpr Dimension force{6, 6, -12};
inline constexpr Dimension unit_weight{-12, 6, -12};
inline constexpr Dimension power{12, 6, -18};
inline constexpr Dimension momentum_function{18, 0, 0};  ///< specific force, m3
}  // namespace dimension

/// The system in which bare numbers of a site file stand, and in which results are printed.
enum class UnitSystem { si, us };

/// A number read from text. `has_unit` is false for a bare number, whose dimension is then `none`.
struct Quantity {
  double value = 0.0;  ///< in SI; for a bare number the number itself
  Dimension dimension;
  bool has_unit = false;
};

/// Why a text is not a quantity. `position` is the 0-based byte at which reading stopped.
struct QuantityError {
  std::size_t position = 0;
  std::string message;  ///< a whole sentence that says what would be right
};

/// Reads "412.5 m", "18 500 ft3/s", "3.2e2 m^3/s", "0.6 mm", "45 deg", "12 %", "65 ft/s".
/// Thousands may be grouped by single spaces or underscores in threes; a comma is refused, because it means
/// different things in different countries. Non-finite numbers are refused. Units multiply by '*', '·' or a space, divide by
/// '/', powers by '^', a digit ("ft3") or a superscript. Percent gives hundredths; degrees give radians.
tl::expected<Quantity, QuantityError> parse_quantity(std::string_view text);

/// "length", "discharge", "velocity" …: the trade's name of a dimension, for messages. Never empty: an
/// unnamed dimension is spelled by its exponents.
std::string name_of(Dimension dimension);

/// The unit in which a dimension is printed: "m3/s" or "ft3/s". `none` gives "".
std::string unit_symbol(Dimension dimension, UnitSystem system);

/// The unit in which the engine's own numbers stand, for JSON: "m3/s", "N", "Pa"; never a multiple such as "kN".
std::string coherent_symbol(Dimension dimension);

/// The printed unit with superscripts for people: "m³/s".
std::string unit_label(Dimension dimension, UnitSystem system);

/// SI to the printed unit, and back.
double to_unit(double value_si, Dimension dimension, UnitSystem system);
double from_unit(double value, Dimension dimension, UnitSystem system);

/// `value` (SI) as text in `system` with `significant` digits, no unit, no exponent between 1e-4 and 1e7.
std::string format_number(double value_si, Dimension dimension, UnitSystem system, int significant = 4);

/// `value` (SI) as text in `system` with `decimals` places, no unit (for tables and levels).
std::string format_fixed(double value_si, Dimension dimension, UnitSystem system, int decimals);

/// Number and unit label: "412.5 m". Dimensionless quantities get no unit.
std::string format_quantity(double value_si, Dimension dimension, UnitSystem system, int significant = 4);

/// Units of a dimension that a person may choose from in that system: the printed one first, then the others that have a name
/// of their own, each once ("m", "cm", "mm", "hm", "km"; "ft", "in", "yd", "mi"). `parse_quantity` reads all of them. Empty for
/// `none`.
std::vector<std::string> offered_units(Dimension dimension, UnitSystem system);

/// Example units for a dimension, for messages: "m, ft".
std::string example_units(Dimension dimension);

}  // namespace quell
