// Every method of the program, from all floors, sorted by id.
#pragma once

#include <span>
#include <string_view>

#include "quell/base/method.h"

namespace quell::app {

std::span<const Method* const> all_methods();

/// Null where there is none.
const Method* find_method(std::string_view id);

/// The id that is nearest to a mistyped one.
std::string_view nearest_method(std::string_view id);

}  // namespace quell::app
