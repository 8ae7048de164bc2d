// The list of the methods on this floor. A new method is one line in methods.cpp or, for rules of basins and jets, in
// methods_basin.cpp, or, for floods, reservoir and river, in methods_site.cpp.
#pragma once

#include <span>

#include "quell/base/method.h"

namespace quell::hydraulics {

std::span<const Method* const> methods();

/// The part of them in methods_basin.cpp.
std::span<const Method* const> basin_methods();

/// The part of them in methods_site.cpp.
std::span<const Method* const> site_methods();

}  // namespace quell::hydraulics
