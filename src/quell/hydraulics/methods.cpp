#include "quell/hydraulics/methods.h"

#include "quell/hydraulics/aerated_flow.h"
#include "quell/hydraulics/aeration_fits.h"
#include "quell/hydraulics/aerators.h"
#include "quell/hydraulics/basin_rules.h"
#include "quell/hydraulics/bends.h"
#include "quell/hydraulics/boundary_layer.h"
#include "quell/hydraulics/boundary_layer_relations.h"
#include "quell/hydraulics/cavitation.h"
#include "quell/hydraulics/chute_profile.h"
#include "quell/hydraulics/chute_profile_manning.h"
#include "quell/hydraulics/chute_walls.h"
#include "quell/hydraulics/crest.h"
#include "quell/hydraulics/energy.h"
#include "quell/hydraulics/friction.h"
#include "quell/hydraulics/friction_formulas.h"
#include "quell/hydraulics/invert_curve.h"
#include "quell/hydraulics/jump.h"
#include "quell/hydraulics/jump_sections.h"
#include "quell/hydraulics/protection.h"
#include "quell/hydraulics/roll_waves.h"
#include "quell/hydraulics/section.h"
#include "quell/hydraulics/self_aeration.h"
#include "quell/hydraulics/shock_waves.h"
#include "quell/hydraulics/stepped_chute.h"
#include "quell/hydraulics/toe_velocity.h"

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
      &record::skimming_onset_chanson,
      &record::skimming_onset_boes_hager,
      &record::stepped_inception_chanson,
      &record::stepped_inception_boes_hager,
      &record::stepped_inception_hunt_kadavy,
      &record::stepped_uniform_boes_hager,
      &record::stepped_friction_factor_boes_hager,
      &record::stepped_residual_boes_hager,
      &record::stepped_residual_hunt_kadavy,
      &record::stepped_depth_hunt_kadavy,
      &record::stepped_uniform_chanson,
      &record::stepped_wall_height_boes_hager,
      &record::stepped_toe,
      &record::critical_depth_steep,
      &record::ideal_velocity,
      &record::toe_velocity_novak,
      &record::toe_velocity_jsce,
      &record::toe_velocity_em25,
      &record::atmospheric_pressure,
      &record::vapour_pressure,
      &record::chute_cavitation_index,
      &record::cavitation_velocity,
      &record::cavitation_class,
      &record::surface_tolerance,
      &record::smooth_inception,
      &record::equilibrium_air,
      &record::air_drag_reduction,
      &record::developing_air,
      &record::air_diffusivity,
      &record::local_air,
      &record::aerated_uniform_flow,
      &record::bulked_depth,
      &record::equilibrium_air_sine,
      &record::equilibrium_air_power,
      &record::equilibrium_air_linear,
      &record::bed_air,
      &record::mean_air_rough,
      &record::mean_air_smooth,
      &record::mean_air_falvey,
      &record::friction_factor_haaland,
      &record::friction_factor_swamee_jain,
      &record::friction_factor_manning,
      &record::manning_darcy,
      &record::manning_strickler,
      &record::chezy_em1601,
      &record::boundary_layer_bauer,
      &record::boundary_layer_wood,
      &record::chute_profile_manning,
      &record::chute_profile_taper,
      &record::aerated_wall_height,
      &record::rapid_channel_wall_height,
      &record::shock_angle,
      &record::shock_depth_ratio,
      &record::shock_approximate,
      &record::shock_small_turn,
      &record::contraction_length,
      &record::pier_line_distance,
      &record::bend_rise,
      &record::bend_waves,
      &record::bend_wall_depth,
      &record::vedernikov_manning,
      &record::vedernikov_chezy,
      &record::aerator_air_flow,
      &record::air_flow_for_content,
      &record::invert_radius_pressure,
      &record::invert_radius_total_pressure,
      &record::invert_radius_depth,
      &record::curved_bed_pressure,
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
