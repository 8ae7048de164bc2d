#include "quell/hydraulics/methods.h"

#include "quell/hydraulics/basin_rules.h"
#include "quell/hydraulics/best_sections.h"
#include "quell/hydraulics/boundary_layer.h"
#include "quell/hydraulics/canal_fall.h"
#include "quell/hydraulics/chute_profile.h"
#include "quell/hydraulics/crest.h"
#include "quell/hydraulics/drag.h"
#include "quell/hydraulics/energy.h"
#include "quell/hydraulics/energy_depths.h"
#include "quell/hydraulics/flat_plate.h"
#include "quell/hydraulics/flood_frequency.h"
#include "quell/hydraulics/flood_routing.h"
#include "quell/hydraulics/flow_state.h"
#include "quell/hydraulics/friction.h"
#include "quell/hydraulics/jump.h"
#include "quell/hydraulics/jump_inverse.h"
#include "quell/hydraulics/jump_sections.h"
#include "quell/hydraulics/protection.h"
#include "quell/hydraulics/regime.h"
#include "quell/hydraulics/roughness_parts.h"
#include "quell/hydraulics/section.h"
#include "quell/hydraulics/seepage.h"
#include "quell/hydraulics/short_rules.h"
#include "quell/hydraulics/surge.h"
#include "quell/hydraulics/transitions.h"
#include "quell/hydraulics/uniform_flow.h"

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
      &record::froude_number_section,
      &record::depth_from_froude_number,
      &record::froude_number_from_slopes,
      &record::specific_energy,
      &record::geometry_trapezoidal,
      &record::geometry_circular,
      &record::depth_from_energy_subcritical,
      &record::alternate_depth,
      &record::depth_over_hump,
      &record::highest_hump,
      &record::least_width,
      &record::depth_before_transition,
      &record::lake_inlet_critical,
      &record::lake_inlet_uniform,
      &record::discharge_manning,
      &record::slope_manning,
      &record::roughness_manning,
      &record::discharge_chezy,
      &record::unit_discharge_chezy_wide,
      &record::normal_depth_chezy,
      &record::critical_slope_manning,
      &record::limit_slope_manning,
      &record::surface_slope_chezy_wide,
      &record::roughness_horton,
      &record::conveyance_manning,
      &record::conveyance_compound,
      &record::best_rectangle,
      &record::best_triangle,
      &record::best_trapezoid,
      &record::best_semicircle,
      &record::fullest_velocity,
      &record::fullest_discharge,
      &record::trapezoid_size,
      &record::jump_unit_discharge,
      &record::jump_depths_froude_loss,
      &record::jump_depths_discharge_loss,
      &record::depth_before_jump,
      &record::drag_force,
      &record::sequent_depth_with_drag,
      &record::depth_above_piers,
      &record::surge_closure,
      &record::surge_opening,
      &record::flood_gumbel,
      &record::frequency_factor_pearson_3,
      &record::risk_at_least_once,
      &record::risk_exactly,
      &record::excess_rain,
      &record::direct_flow,
      &record::unit_ordinate,
      &record::muskingum_step,
      &record::plate_laminar,
      &record::plate_turbulent,
      &record::plate_rough,
      &record::silt_factor_lacey,
      &record::regime_channel_lacey,
      &record::scour_depth_lacey,
      &record::uplift_bligh,
      &record::floor_thickness_uplift,
      &record::exit_gradient_khosla,
      &record::critical_gradient,
      &record::apron_lengths_bligh,
      &record::fall_crest_sarda,
      &record::fall_cistern_vertical,
      &record::fall_cistern_glacis,
      &record::velocity_from_head,
      &record::weir_head,
      &record::straight_drop,
      &record::roller_bucket_radius,
      &record::apron_length_rise,
      &record::bank_riprap,
  };
  return list;
}

}  // namespace quell::hydraulics
