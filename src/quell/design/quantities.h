// Concrete as a first measure, to compare candidates: not a structural design.
#pragma once

#include <span>

#include "quell/base/method.h"
#include "quell/base/working.h"
#include "quell/design/result.h"

namespace quell::design {

struct QuantityInput {
  double length = 0.0;       ///< m
  double width = 0.0;        ///< m
  double wall_height = 0.0;  ///< m above the apron
  double largest_y2 = 0.0;   ///< m
};

/// What an option that has its level, length and walls puts into the take-off.
QuantityInput quantity_input(const Option& option, std::span<const site::ToeFlow> flows);

/// Slab, walls and elements (m3) from first-measure thicknesses; the stone where there is no pavement.
Quantities concrete(const QuantityInput& input, const dissipators::Structure& structure, Working* working);

/// Methods of this floor.
std::span<const Method* const> methods();

}  // namespace quell::design
