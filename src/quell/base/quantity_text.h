// Sentences that hold quantities, before the unit system of the reader is known: the engine writes a token, and whoever prints
// puts the number in.
#pragma once

#include <functional>
#include <string>
#include <string_view>

#include "quell/base/units.h"

namespace quell {

/// A token for a quantity in SI: "{{433.2|18,0,-6}}", value and sixths of powers of length, mass and time.
std::string quantity_token(double value, Dimension dimension);

/// The same for a round figure, "about 60 m": printed to three significant digits without zeros at their end. In texts that are
/// fixed it is written out: "{{60.96|6,0,0|3}}" prints "61 m" and "200 ft".
std::string round_token(double value, Dimension dimension);

struct ToldQuantity {
  double value = 0.0;  ///< SI
  Dimension dimension{};
  int significant = 0;  ///< digits of a round figure; 0: as the printer prints such a quantity
};

/// A number as text without the zeros at its end that say nothing: "61.0" as "61".
std::string without_zeros(std::string number);

struct NumberAndUnit {
  std::string number;
  std::string unit;  ///< may be empty
};

/// A round figure to its digits, without zeros behind the point that say nothing; lengths below 0.3 m in mm or inches.
NumberAndUnit round_figure(const ToldQuantity& quantity, UnitSystem system);

/// The sentence with every token as number and unit label in `system`, to `significant` digits.
std::string with_units(std::string_view text, UnitSystem system, int significant = 4);

/// The same with a printer of the caller's, who may want other digits for a level than for a discharge.
std::string with_units(std::string_view text, const std::function<std::string(const ToldQuantity&)>& print);

}  // namespace quell
