#include "quell/hydraulics/river_bed.h"

#include <algorithm>
#include <cmath>

namespace quell::hydraulics {
namespace {
constexpr double submerged_gravity = 1.65;  // of quartz, over that of water

/// 0.058 (n/d90^(1/6))^1.5 of Meyer-Peter and Muller, d90 in mm.
double grain_resistance(double n, double d90) {
  return 0.058 * std::pow(n / std::pow(1000.0 * d90, 1.0 / 6.0), 1.5);
}
}  // namespace

Outcome<double> armouring_depth(const ArmourInput& input) {
  if (!(input.share > 0.0 && input.share <= 1.0))
    return bad_input("dp", input.share, 0.0, 1.0, "a share of the bed lies above 0 and at most at 1");
  return input.thickness * (1.0 / input.share - 1.0);
}

double ArmourSizes::least() const noexcept {
  return std::min({competent_velocity, meyer_peter_muller, schoklitsch, shields, yang});
}

double ArmourSizes::most() const noexcept {
  return std::max({competent_velocity, meyer_peter_muller, schoklitsch, shields, yang});
}

double ArmourSizes::mean() const noexcept {
  return (competent_velocity + meyer_peter_muller + schoklitsch + shields + yang) / 5.0;
}

ArmourSizes armour_sizes(const BedFlow& flow) noexcept {
  return {.competent_velocity = 0.0202 * flow.V * flow.V,
          .meyer_peter_muller = 0.001 * flow.slope * flow.d / grain_resistance(flow.manning_n, flow.d90),
          .schoklitsch = 0.001 * std::pow(flow.slope / 0.000293, 4.0 / 3.0) * flow.Q / flow.B,
          .shields = flow.slope * flow.d / (submerged_gravity * flow.shields),
          .yang = 0.0216 * flow.V * flow.V};
}

StableSlopes stable_slopes(const StableSlopeInput& input) noexcept {
  return {.schoklitsch = 0.000293 * std::pow(1000.0 * input.D * input.B / input.Q, 0.75),
          .meyer_peter_muller = grain_resistance(input.manning_n, input.d90) * 1000.0 * input.D / input.d,
          .shields = submerged_gravity * input.shields * input.D / input.d};
}

Outcome<double> degradation_above_control(const DegradationInput& slopes, double length) {
  if (!(slopes.stable_slope <= slopes.bed_slope))
    return bad_input("SL", slopes.stable_slope, 0.0, slopes.bed_slope, "a bed flatter than the stable slope does not degrade");
  return (slopes.bed_slope - slopes.stable_slope) * length;
}

Outcome<DegradationWedge> degradation_wedge(const DegradationInput& slopes, double depth) {
  if (!(slopes.stable_slope < slopes.bed_slope))
    return bad_input("SL", slopes.stable_slope, 0.0, slopes.bed_slope, "a bed flatter than the stable slope does not degrade");
  const double length = depth / (slopes.bed_slope - slopes.stable_slope);
  return DegradationWedge{.volume = 0.5 * depth * length, .length = length};
}

}  // namespace quell::hydraulics
