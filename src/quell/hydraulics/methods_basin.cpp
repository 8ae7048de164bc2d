#include "quell/hydraulics/basin_rules.h"
#include "quell/hydraulics/basin_stability.h"
#include "quell/hydraulics/definitions.h"
#include "quell/hydraulics/jet.h"
#include "quell/hydraulics/methods.h"
#include "quell/hydraulics/river_protection.h"
#include "quell/hydraulics/slab_uplift.h"

namespace quell::hydraulics {

std::span<const Method* const> basin_methods() {
  static constexpr const Method* list[] = {
      &record::basin_freeboard,   &record::chute_freeboard,       &record::invert_curve_pressure,
      &record::baffle_pier_force, &record::stagnation_force,      &record::largest_flare,
      &record::jet_throw,         &record::jet_throw_depth,       &record::bucket_pressure_head,
      &record::scour_veronese,    &record::scour_mason_arumugam,  &record::scour_mason_arumugam_constant,
      &record::scour_head_factor, &record::riprap_escarameia_may, &record::riprap_maynord,
      &record::stone_mass,        &record::scour_schoklitsch,     &record::scour_jaeger,
      &record::scour_novak,       &record::scour_growth,          &record::launching_apron,
      &record::cutoff_depth,      &record::mean_jump_depth,       &record::uplift_head,
      &record::uplift_thickness,  &record::panel_coefficients,    &record::stagnation_head,
      &record::anchored_pressure, &record::rock_anchor_length,    &record::bond_length,
      &record::flotation_factor,  &record::water_on_wall,         &record::backfill_on_wall,
      &record::bearing_pressure,  &record::sliding_factor,        &record::tailwater_margin,
      &record::tailwater_ratio,   &record::level_difference,      &record::unit_discharge,
      &record::mean_velocity,     &record::crest_head_ratio,
  };
  return list;
}

}  // namespace quell::hydraulics
