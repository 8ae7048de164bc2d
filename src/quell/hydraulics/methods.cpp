#include "quell/hydraulics/methods.h"

#include "quell/hydraulics/basin_rules.h"
#include "quell/hydraulics/boundary_layer.h"
#include "quell/hydraulics/chute_profile.h"
#include "quell/hydraulics/crest.h"
#include "quell/hydraulics/energy.h"
#include "quell/hydraulics/friction.h"
#include "quell/hydraulics/jump.h"
#include "quell/hydraulics/jump_location.h"
#include "quell/hydraulics/jump_sections.h"
#include "quell/hydraulics/open_channel_profile.h"
#include "quell/hydraulics/protection.h"
#include "quell/hydraulics/section.h"

namespace quell::hydraulics {

std::span<const Method* const> methods() {
  static constexpr const Method* list[] = {
      &record::crest_discharge_ogee,
      &record::crest_discharge_ogee_3_to_1,
      &record::crest_discharge_ogee_3_to_2,
      &record::crest_discharge_ogee_3_to_3,
      &record::effective_length,
      &record::crest_profile_ogee,
      &record::crest_tangent_x,
      &record::crest_least_pressure,
      &record::depth_from_energy_on_slope,
      &record::boundary_layer_em1603,
      &record::boundary_layer_head_loss,
      &record::roughness_height_manning,
      &record::friction_factor_colebrook,
      &record::friction_slope_darcy,
      &record::chute_profile_darcy,
      &record::chute_freeboard,
      &record::largest_flare,
      &record::cavitation_index,
      &record::depth_from_energy,
      &record::froude_number,
      &record::sequent_depth_rectangular,
      &record::energy_loss_rectangular,
      &record::jump_length_em25,
      &record::jump_length_hager_1992,
      &record::roller_length_hager_1990,
      &record::sequent_depth_trapezoidal,
      &record::sequent_depth_circular,
      &record::sequent_depth_positive_step,
      &record::jump_profile_horizontal,
      &record::jump_location_horizontal_apron,
      &record::jump_location_channel,
      &record::jump_sweep_out_depth_friction,
      &record::jump_drowning_depth_friction,
      &record::channel_profile_depth,
      &record::channel_profile_distance,
      &record::channel_profile_direct_step,
      &record::basin_freeboard,
      &record::invert_curve_pressure,
      &record::baffle_pier_force,
      &record::critical_depth_rectangular,
      &record::critical_depth_trapezoidal,
      &record::critical_depth_circular,
      &record::normal_depth_trapezoidal,
      &record::riprap_isbash,
      &record::riprap_em25,
      &record::creep_ratio_lane,
      &record::model_scale_froude,
  };
  return list;
}

}  // namespace quell::hydraulics
