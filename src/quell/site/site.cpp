#include "quell/site/site.h"

namespace quell::site {

std::string_view name_of(CrestShape shape) {
  switch (shape) {
    case CrestShape::ogee: return "ogee";
    case CrestShape::broad: return "broad";
    case CrestShape::sharp: return "sharp";
    case CrestShape::labyrinth: return "labyrinth";
  }
  return "ogee";
}

std::string_view name_of(TailwaterCase tailwater_case) {
  switch (tailwater_case) {
    case TailwaterCase::low: return "low";
    case TailwaterCase::expected: return "expected";
    case TailwaterCase::high: return "high";
  }
  return "low";
}

}  // namespace quell::site
