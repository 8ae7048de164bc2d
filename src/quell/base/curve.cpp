#include "quell/base/curve.h"

#include <algorithm>
#include <cstdio>
#include <cstdlib>

namespace quell {

double Curve::at(double value) const noexcept {
  if (!(value > x.front())) return y.front();
  if (value >= x.back()) return y.back();
  const auto upper = static_cast<std::size_t>(std::upper_bound(x.begin(), x.end(), value) - x.begin());
  const std::size_t lower = upper - 1;
  const double share = (value - x[lower]) / (x[upper] - x[lower]);
  return y[lower] + share * (y[upper] - y[lower]);
}

const Curve* find_curve(std::string_view id) {
  for (const auto& candidate : all_curves())
    if (candidate.id == id) return &candidate;
  return nullptr;
}

const Curve& curve(std::string_view id) {
  const Curve* found = find_curve(id);
  if (found == nullptr) {
    std::fprintf(stderr, "quell: no curve '%.*s' in data/curves\n", static_cast<int>(id.size()), id.data());
    std::abort();
  }
  return *found;
}

}  // namespace quell
