#include "quell/hydraulics/basin_rules.h"
#include "quell/hydraulics/jet.h"
#include "quell/hydraulics/methods.h"

namespace quell::hydraulics {

std::span<const Method* const> basin_methods() {
  static constexpr const Method* list[] = {
      &record::basin_freeboard,
      &record::chute_freeboard,
      &record::invert_curve_pressure,
      &record::baffle_pier_force,
      &record::stagnation_force,
      &record::largest_flare,
      &record::jet_throw,
      &record::jet_throw_depth,
      &record::bucket_pressure_head,
      &record::scour_veronese,
      &record::scour_mason_arumugam,
      &record::scour_mason_arumugam_constant,
      &record::scour_head_factor,
  };
  return list;
}

}  // namespace quell::hydraulics
