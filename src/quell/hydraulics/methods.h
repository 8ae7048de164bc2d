// The list of the methods on this floor. A new method is one line in methods.cpp.
#pragma once

#include <span>

#include "quell/base/method.h"

namespace quell::hydraulics {

std::span<const Method* const> methods();

}  // namespace quell::hydraulics
