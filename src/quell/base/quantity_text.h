// Sentences that hold quantities, before the unit system of the reader is known: the engine writes a token, and whoever prints
// puts the number in.
#pragma once

#include <functional>
#include <string>
#include <string_view>

#include "quell/base/units.h"

namespace quell {

/// A token for a quantity in SI: "{{433.2|18,0,-6}}".
std::string quantity_token(double value, Dimension dimension);

/// The sentence with every token as number and unit label in `system`, to `significant` digits.
std::string with_units(std::string_view text, UnitSystem system, int significant = 4);

/// The same with a printer of the caller's, who may want other digits for a level than for a discharge.
std::string with_units(std::string_view text, const std::function<std::string(double, Dimension)>& print);

}  // namespace quell
