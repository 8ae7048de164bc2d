// A reservoir: its storage and its area over the level, and short rules about them.
//
// The curve is a table of levels with areas (the area straight between the points, the storage its exact integral) or with
// storages (the storage straight between the points, the area its slope). One of the two is always derived from the other, so
// that they never disagree.
#pragma once

#include <cmath>
#include <cstddef>
#include <span>
#include <vector>

#include "quell/base/method.h"

namespace quell::hydraulics {

class StorageCurve {
 public:
  /// Two points at least; level (m) strictly rising; area (m2) not negative, above zero in the last point and nowhere zero over
  /// a whole panel. `lowest_storage` (m3) is what lies below the first level.
  static Outcome<StorageCurve> from_areas(std::span<const double> level, std::span<const double> area,
                                          double lowest_storage = 0.0);

  /// Two points at least; level (m) and storage (m3) strictly rising.
  static Outcome<StorageCurve> from_storages(std::span<const double> level, std::span<const double> storage);

  /// m3. Below the first level that of the first, so ask `lowest_level` before; above the last the area goes on as `area` says.
  double storage(double level) const noexcept;

  /// m2, at a level (m). Above the last level the line of the last two areas goes on (held where they fall). Where it leaps,
  /// between two panels of a table of storages, the upper one.
  double area(double level) const noexcept;

  /// m, the inverse of `storage`.
  double level_at(double storage) const noexcept;
  /// The same for values that move little from call to call: the search begins at `panel`, any number at first.
  double level_at(double storage, std::size_t& panel) const noexcept;

  double lowest_level() const noexcept { return panels_.front().level; }
  double highest_level() const noexcept { return panels_.back().level; }
  double lowest_storage() const noexcept { return panels_.front().storage; }
  /// Points of the table, from the lowest up, and the storage (m3) at one of them: there the area has a kink or leaps.
  std::size_t points() const noexcept { return panels_.size(); }
  double point_storage(std::size_t point) const noexcept { return panels_[point].storage; }
  /// True where the level lies above the last point.
  bool extrapolated(double level) const noexcept { return level > highest_level(); }

 private:
  /// From its bottom up: area + slope (h - level).
  struct Panel {
    double level;
    double storage;
    double area;
    double slope;
  };
  StorageCurve() = default;
  std::size_t panel_of(double level) const noexcept;
  std::vector<Panel> panels_;  ///< the last is the one above the table
};

inline double StorageCurve::level_at(double storage, std::size_t& panel) const noexcept {
  const std::size_t last = panels_.size() - 1;
  if (panel > last) panel = last;
  while (panel > 0 && storage < panels_[panel].storage) --panel;
  while (panel < last && storage >= panels_[panel + 1].storage) ++panel;
  const Panel& p = panels_[panel];
  const double more = storage - p.storage;
  if (!(more > 0.0)) return p.level;
  // The root of area h + slope h^2/2 = more that keeps its digits where the slope vanishes, or the area does.
  if (p.slope == 0.0) return p.level + more / p.area;
  const double root = p.area * p.area + 2.0 * p.slope * more;
  return p.level + 2.0 * more / (p.area + std::sqrt(root > 0.0 ? root : 0.0));
}

struct ContourPair {
  double A1, A2;  ///< areas of two contours, m2, >= 0
  double h;       ///< their distance, m, >= 0
};
/// m3 between the contours as the frustum of a pyramid.
double conic_volume(const ContourPair& contours) noexcept;
/// m3 with the mean of the two areas.
double end_area_volume(const ContourPair& contours) noexcept;

struct Recession {
  double Q1;  ///< inflow now, m3/s, falling as Q1 exp(-t/Ts)
  double Q2;  ///< outflow held from now on, m3/s, above zero and at most Q1
  double Ts;  ///< s
};
/// Storage (m3) that fills until the inflow has fallen to the outflow.
double recession_storage(const Recession& recession) noexcept;

/// Peak outflow (m3/s) of a triangular flood of peak Qi (m3/s) and volume V (m3) of which S (m3, at most V) is stored.
/// Screening.
struct AttenuationInput {
  double Qi, S, V;
};
double triangular_attenuation(const AttenuationInput& input) noexcept;

/// (1 + p)^dT: factor on rain, and with it on the flows of a flood, for a rise p per degree and dT degrees (K).
double climate_factor(double p, double dT) noexcept;

namespace record {
extern const Method reservoir_storage_tabulated;
extern const Method reservoir_volume_conic;
extern const Method reservoir_volume_end_area;
extern const Method reservoir_surcharge_recession;
extern const Method reservoir_attenuation_triangular;
extern const Method flood_climate_factor;
}  // namespace record

}  // namespace quell::hydraulics
