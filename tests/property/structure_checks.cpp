#include "property/structure_checks.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace quell::test {
namespace {

using dissipators::Element;
using dissipators::Structure;

double floor_at(const Structure& structure, double x) {
  const auto& floor = structure.floor;
  for (std::size_t i = 1; i < floor.size(); ++i)
    if (x <= floor[i].x) {
      const double share = (x - floor[i - 1].x) / std::max(1e-12, floor[i].x - floor[i - 1].x);
      return floor[i - 1].z + std::max(0.0, share) * (floor[i].z - floor[i - 1].z);
    }
  return floor.back().z;
}

std::string broken_row(const Element& e, double width, double end_width) {
  if (e.kind.empty() || e.name.empty()) return "an element without kind or name";
  const std::string name(e.name);
  if (e.count < 1 || e.rows < 1) return name + ": none of it";
  if (!(e.height > 0.0 && e.width > 0.0 && e.length > 0.0)) return name + ": a dimension is not above zero";
  if (e.spacing < 0.0 || e.wall_clearance < -1e-12) return name + ": overlaps";
  const double across = 2.0 * e.wall_clearance + e.count * e.width + (e.count - 1) * e.spacing;
  if (std::abs(across - e.across) > 1e-9 * e.across) return fmt::format("{}: {} across {}", name, across, e.across);
  if (e.across < width * (1.0 - 1e-12) || e.across > end_width * (1.0 + 1e-12)) return name + ": wider than the basin";
  if (e.rows > 1 && !(e.row_step > 0.0)) return name + ": rows on top of each other";
  return {};
}

/// Outline inside the length, standing on the floor, and no higher than it says.
std::string broken_outline(const Element& e, const Structure& structure, double slope) {
  const std::string name(e.name);
  if (e.profile.size() < 3) return name + ": no outline";
  const double steepest = std::hypot(1.0, std::max(slope, 0.5));
  for (const auto& p : e.profile) {
    if (!std::isfinite(p.x) || !std::isfinite(p.z)) return name + ": not finite";
    if (p.x > structure.length + 1e-9 * structure.length) return name + ": past the end";
    if (p.x < -e.height / slope - 1e-9 - structure.length && e.kind != "chute_block") return name + ": before the toe";
    const double base = floor_at(structure, p.x);
    if (p.x >= 0.0 && p.z < base - 1e-9 * (1.0 + structure.length) && e.kind != "bucket_lip")
      return fmt::format("{}: {} below the floor at {}", name, base - p.z, p.x);
    if (p.x >= 0.0 && p.z > base + e.height * steepest + 1e-9) return name + ": above its height";
  }
  return {};
}

}  // namespace

std::string broken_elements(const Structure& structure, double width, double slope) {
  for (const auto& e : structure.elements) {
    if (auto broken = broken_row(e, width, structure.end_width); !broken.empty()) return broken;
    if (auto broken = broken_outline(e, structure, slope); !broken.empty()) return broken;
  }
  return {};
}

}  // namespace quell::test
