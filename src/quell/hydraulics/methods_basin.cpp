#include "quell/hydraulics/basin_rules.h"
#include "quell/hydraulics/basin_stability.h"
#include "quell/hydraulics/definitions.h"
#include "quell/hydraulics/filters.h"
#include "quell/hydraulics/jet.h"
#include "quell/hydraulics/khosla.h"
#include "quell/hydraulics/methods.h"
#include "quell/hydraulics/river_protection.h"
#include "quell/hydraulics/slab_uplift.h"
#include "quell/hydraulics/vibration.h"
#include "quell/hydraulics/wall_loads.h"

namespace quell::hydraulics {

std::span<const Method* const> basin_methods() {
  static constexpr const Method* list[] = {
      &record::basin_freeboard,    &record::chute_freeboard,       &record::invert_curve_pressure,
      &record::baffle_pier_force,  &record::stagnation_force,      &record::largest_flare,
      &record::jet_throw,          &record::jet_throw_depth,       &record::bucket_pressure_head,
      &record::scour_veronese,     &record::scour_mason_arumugam,  &record::scour_mason_arumugam_constant,
      &record::scour_head_factor,  &record::riprap_escarameia_may, &record::riprap_maynord,
      &record::stone_mass,         &record::scour_schoklitsch,     &record::scour_jaeger,
      &record::scour_novak,        &record::scour_growth,          &record::launching_apron,
      &record::cutoff_depth,       &record::mean_jump_depth,       &record::uplift_head,
      &record::suction_cap,        &record::uplift_thickness,      &record::panel_coefficients,
      &record::stagnation_head,    &record::anchored_pressure,     &record::rock_anchor_length,
      &record::bond_length,        &record::flotation_factor,      &record::water_on_wall,
      &record::backfill_on_wall,   &record::bearing_pressure,      &record::sliding_factor,
      &record::wall_pulse,         &record::even_pressure_on_wall, &record::earth_coefficient_in_earthquake,
      &record::earthquake_in_fill, &record::earthquake_in_water,   &record::wall_stability,
      &record::pulse_frequency,    &record::cantilever_frequency,  &record::anchored_panel_frequency,
      &record::riprap_gradation,   &record::filter_on_base,        &record::filter_under_cover,
      &record::filter_chain,       &record::launch_volume,         &record::creep_ratio_bligh,
      &record::khosla_end_cutoff,  &record::khosla_middle_cutoff,  &record::khosla_interference,
      &record::khosla_slope,       &record::khosla_thickness,      &record::tailwater_margin,
      &record::tailwater_ratio,    &record::level_difference,      &record::energy_head_left,
      &record::unit_discharge,     &record::mean_velocity,         &record::crest_head_ratio,
  };
  return list;
}

}  // namespace quell::hydraulics
