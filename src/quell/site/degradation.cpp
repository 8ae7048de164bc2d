// How far the bed may sink below the dam.
#include <algorithm>

#include "quell/hydraulics/river_bed.h"
#include "quell/site/river_study.h"

namespace quell::site {

DegradationEstimate estimate_degradation(const RiverBed& bed) {
  DegradationEstimate estimate;
  if (!bed.given) return estimate;
  constexpr double shields_number = 0.047;
  const auto sizes = hydraulics::armour_sizes({.Q = bed.dominant_discharge,
                                               .B = bed.bed_width,
                                               .d = bed.mean_depth,
                                               .V = bed.dominant_discharge / (bed.bed_width * bed.mean_depth),
                                               .slope = bed.bed_slope,
                                               .manning_n = bed.manning_n,
                                               .d90 = bed.coarse_size,
                                               .shields = shields_number});
  estimate.sizes = {{"competent velocity", sizes.competent_velocity},
                    {"Meyer-Peter and Mueller", sizes.meyer_peter_muller},
                    {"Schoklitsch", sizes.schoklitsch},
                    {"Shields", sizes.shields},
                    {"Yang", sizes.yang}};
  estimate.armour_size = bed.armour_size > 0.0 ? bed.armour_size : sizes.mean();
  if (bed.armour_thickness > 0.0 && bed.coarser_share > 0.0)
    if (const auto depth = hydraulics::armouring_depth({bed.armour_thickness, bed.coarser_share})) estimate.to_armour = *depth;
  const auto slopes = hydraulics::stable_slopes({.D = bed.mean_size,
                                                 .Q = bed.dominant_discharge,
                                                 .B = bed.bed_width,
                                                 .d = bed.mean_depth,
                                                 .manning_n = bed.manning_n,
                                                 .d90 = bed.coarse_size,
                                                 .shields = shields_number});
  estimate.slopes = {
      {"Schoklitsch", slopes.schoklitsch}, {"Meyer-Peter and Mueller", slopes.meyer_peter_muller}, {"Shields", slopes.shields}};
  const double flattest = std::min({slopes.schoklitsch, slopes.meyer_peter_muller, slopes.shields});
  if (bed.control_distance > 0.0 && flattest < bed.bed_slope)
    if (const auto depth = hydraulics::degradation_above_control({bed.bed_slope, flattest}, bed.control_distance))
      estimate.to_slope = *depth;
  estimate.depth = estimate.to_armour > 0.0 && estimate.to_slope > 0.0 ? std::min(estimate.to_armour, estimate.to_slope)
                                                                       : std::max(estimate.to_armour, estimate.to_slope);
  return estimate;
}

}  // namespace quell::site
