// Whether the elements of a structure are buildable: they close across the width, stand on the floor and end inside the basin.
#pragma once

#include <string>

#include "quell/dissipators/catalogue.h"

namespace quell::test {

/// Says what is broken, or nothing. `width` is that of the toe, `slope` of the chute's last reach.
std::string broken_elements(const dissipators::Structure& structure, double width, double slope);

}  // namespace quell::test
