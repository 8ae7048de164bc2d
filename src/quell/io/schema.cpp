#include "quell/io/schema.h"

#include "quell/io/schema_rows.h"

namespace quell::io {

std::span<const Key> schema() {
  static const std::vector<Key> all = [] {
    std::vector<Key> keys;
    for (const auto rows : {head_rows(), structure_rows(), gate_rows(), river_rows(), survey_rows(), flood_rows(), basin_rows(),
                            choice_rows(), ground_rows(), safety_rows(), wall_rows()})
      keys.insert(keys.end(), rows.begin(), rows.end());
    return keys;
  }();
  return all;
}

bool may_be_uncertain(const Key& key) {
  switch (key.kind) {
    case Kind::quantity:
    case Kind::number:
    case Kind::angle:
    case Kind::slope:
    case Kind::side_slope:
    case Kind::spread: return true;
    default: return false;
  }
}

}  // namespace quell::io
