// A surveyed section: a polygon of points (x, z) from bank to bank. Compound sections, with a berm or a flood plain, may have
// more than one critical depth; all are found.
//
// Depths y are vertical, m, above the lowest point of the section. All water below the level counts, behind a ridge too. Above
// the lower of the two ends of the polygon the walls are taken as vertical.
#pragma once

#include <optional>
#include <span>
#include <string_view>

#include "quell/base/constants.h"
#include "quell/base/method.h"

namespace quell::hydraulics {

/// The water between two levels of the polygon at which no point lies in between: its width grows evenly.
struct Layer {
  double bottom;  ///< depth above the lowest point, m
  double top;     ///< m; infinite for the water above the highest point
  double area;    ///< below the layer, m2
  double width;   ///< just above its bottom, m
  double spread;  ///< growth of the width per depth
  double area_at(double y) const { return area + (width + spread * (y - bottom) / 2.0) * (y - bottom); }
  double width_at(double y) const { return width + spread * (y - bottom); }

  /// Depths inside the layer at which Q^2 T = g A^3. Going up, F can rise above 1 once, where the section widens, and then fall
  /// below it once.
  struct Crossings {
    std::optional<double> to_supercritical;
    std::optional<double> to_subcritical;  ///< least specific energy and least momentum nearby
  };
  Crossings critical_depths(double discharge) const;
};

/// Views the points; they must outlive it.
class TabulatedSection {
 public:
  /// x and z (m) in equal number, two at least, x never falling from one point to the next.
  static Outcome<TabulatedSection> of(std::span<const double> x, std::span<const double> z);

  /// From the values of a method: the single numbers, then all x, then all z.
  static Outcome<TabulatedSection> after(std::span<const double> values, std::size_t singles);

  struct Wetted {
    double area = 0.0;          ///< m2
    double top_width = 0.0;     ///< m
    double perimeter = 0.0;     ///< m
    double first_moment = 0.0;  ///< m3
  };
  /// The water below the level; y > 0, m.
  Wetted wetted(double y) const;
  double area(double y) const { return wetted(y).area; }
  double top_width(double y) const { return wetted(y).top_width; }
  double first_moment(double y) const { return wetted(y).first_moment; }

  /// Depth at which the lower end of the polygon is reached, m.
  double bank_depth() const;

  /// The layer whose bottom is at or below y and whose top is above it.
  Layer layer_at(double y) const;

 private:
  TabulatedSection(std::span<const double> x, std::span<const double> z, double lowest) : x_(x), z_(z), lowest_(lowest) {}
  std::span<const double> x_;
  std::span<const double> z_;
  double lowest_;
};

inline constexpr std::string_view water_above_the_bank =
    "the water stands above the lower end of the section, where the walls are taken as vertical";

struct CriticalDepths {
  double least_energy;  ///< the one with the least specific energy, m
  int count = 0;        ///< how many minima of the specific energy there are
};
/// Q > 0, m3/s. To 1e-12 relative.
Outcome<CriticalDepths> critical_depths(const TabulatedSection& section, double discharge);

namespace record {
extern const Method section_geometry_tabulated;
extern const Method critical_depth_tabulated;
}  // namespace record

}  // namespace quell::hydraulics
