// The numbers that a method is called with, gathered symbol by symbol: a symbol takes one number or, where it says so, a list.
#pragma once

#include <string>
#include <tl/expected.hpp>
#include <vector>

#include "quell/base/method.h"

namespace quell::app {

/// One entry for each input of the method, in its order, written out into one row. The error is a sentence: lists that are not
/// equally long, or empty.
tl::expected<std::vector<double>, std::string> written_out(const Method& method,
                                                           const std::vector<std::vector<double>>& values);

}  // namespace quell::app
