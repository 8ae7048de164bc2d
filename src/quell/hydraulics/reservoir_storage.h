// Storage of a reservoir over its level, from its area or its storage.
//
// Between two rows the area is straight and the storage its integral, a parabola, so that area and storage never disagree; from
// a table of storage the storage is straight and the area its slope. Above the last row the last piece is continued; below the
// first there is nothing.
#pragma once

#include <span>
#include <vector>

#include "quell/base/method.h"

namespace quell::hydraulics {

class StorageCurve {
 public:
  /// Levels (m) strictly increasing, two at least; areas (m2) as many, not decreasing and above zero from the second on.
  static Outcome<StorageCurve> from_area(std::span<const double> level, std::span<const double> area);
  /// Storage (m3) as many as levels, strictly increasing.
  static Outcome<StorageCurve> from_storage(std::span<const double> level, std::span<const double> storage);

  /// Storage (m3) above that of the first row of a table of areas, or as the table of storage has it.
  double storage(double level) const noexcept;
  double area(double level) const noexcept;        ///< m2
  double level_at(double storage) const noexcept;  ///< m; the first level below the first row
  /// The same, looked for first in the piece that `hint` names, which is moved along.
  double level_at(double storage, std::size_t& hint) const noexcept;

  double lowest_level() const { return level_.front(); }
  double highest_level() const { return level_.back(); }  ///< above it the last piece is continued

 private:
  std::size_t piece_of_level(double level) const noexcept;
  double level_in(std::size_t piece, double storage) const noexcept;
  std::vector<double> level_, storage_;
  std::vector<double> area_, spread_;  ///< at the bottom of each piece, and its growth per metre
};

struct PrismoidInput {
  double A1;  ///< area of the lower contour, m2, >= 0
  double A2;  ///< of the upper one, m2, >= 0
  double h;   ///< between them, m, > 0
};
/// Volume (m3) between two contours of a natural valley: h/3 (A1 + A2 + sqrt(A1 A2)).
double conic_volume(const PrismoidInput& input) noexcept;
/// h (A1 + A2)/2.
double end_area_volume(const PrismoidInput& input) noexcept;

struct SurchargeInput {
  double Q1;  ///< inflow when the outflow is first held, m3/s
  double Q2;  ///< outflow held, m3/s, > 0 and below Q1
  double Ts;  ///< time in which the inflow recedes to 1/e, s
};
/// Storage (m3) needed to hold the outflow at Q2 while the inflow recedes as Q1 exp(-t/Ts).
double surcharge_storage(const SurchargeInput& input) noexcept;

struct AttenuationInput {
  double Qi;  ///< peak inflow, m3/s
  double S;   ///< storage at the peak, m3
  double V;   ///< volume of the inflow, m3, above S
};
/// Peak outflow (m3/s) of triangular hydrographs, Qi (1 - S/V): a screening that may be 10 % low.
double attenuated_peak(const AttenuationInput& input) noexcept;

struct ClimateInput {
  double p;   ///< increase per degree
  double dT;  ///< warming, degrees
};
/// Factor on rain: (1 + p)^dT. Flood peaks grow by more, since the losses do not.
double climate_factor(const ClimateInput& input) noexcept;

namespace record {
extern const Method reservoir_volume_conic;
extern const Method reservoir_volume_end_area;
extern const Method reservoir_surcharge;
extern const Method reservoir_attenuation;
extern const Method flood_climate_factor;
}  // namespace record

}  // namespace quell::hydraulics
