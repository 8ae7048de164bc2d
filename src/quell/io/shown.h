// Quantities in messages about input files: plain units, as the user types them.
#pragma once

#include <fmt/format.h>

#include <string>

#include "quell/base/units.h"

namespace quell::io {

/// "412.5 m": `si` in the printed unit of the system, up to six digits.
inline std::string shown(double si, Dimension dimension, UnitSystem system) {
  const std::string unit = unit_symbol(dimension, system);
  return fmt::format("{:.6g}{}{}", to_unit(si, dimension, system), unit.empty() ? "" : " ", unit);
}

}  // namespace quell::io
