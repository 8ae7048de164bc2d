// Private to the expressions: how a name such as "y1", "dE" or "sigma" is split into a symbol.
#pragma once

#include <string>
#include <string_view>

namespace quell::syntax {

/// Base and subscript as MathML elements; the subscript may be empty.
struct SymbolParts {
  std::string base;
  std::string subscript;
};

SymbolParts symbol_parts(std::string_view name);

/// For use as MathML text.
std::string escaped(std::string_view text);

std::string element(std::string_view tag, std::string_view content);

}  // namespace quell::syntax
