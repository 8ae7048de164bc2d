#include "quell/hydraulics/methods.h"

#include <vector>

#include "quell/hydraulics/aerated_flow.h"
#include "quell/hydraulics/aeration_fits.h"
#include "quell/hydraulics/aerators.h"
#include "quell/hydraulics/bends.h"
#include "quell/hydraulics/best_sections.h"
#include "quell/hydraulics/boundary_layer.h"
#include "quell/hydraulics/boundary_layer_relations.h"
#include "quell/hydraulics/canal_fall.h"
#include "quell/hydraulics/cavitation.h"
#include "quell/hydraulics/chute_profile.h"
#include "quell/hydraulics/chute_profile_manning.h"
#include "quell/hydraulics/chute_walls.h"
#include "quell/hydraulics/crest.h"
#include "quell/hydraulics/crest_approach.h"
#include "quell/hydraulics/crest_coefficient.h"
#include "quell/hydraulics/crest_effects.h"
#include "quell/hydraulics/crest_gates.h"
#include "quell/hydraulics/crest_shape.h"
#include "quell/hydraulics/crest_upstream.h"
#include "quell/hydraulics/drag.h"
#include "quell/hydraulics/drop.h"
#include "quell/hydraulics/energy.h"
#include "quell/hydraulics/energy_depths.h"
#include "quell/hydraulics/flat_plate.h"
#include "quell/hydraulics/flow_state.h"
#include "quell/hydraulics/friction.h"
#include "quell/hydraulics/friction_formulas.h"
#include "quell/hydraulics/invert_curve.h"
#include "quell/hydraulics/jump.h"
#include "quell/hydraulics/jump_energy.h"
#include "quell/hydraulics/jump_expanding.h"
#include "quell/hydraulics/jump_forced.h"
#include "quell/hydraulics/jump_friction.h"
#include "quell/hydraulics/jump_front.h"
#include "quell/hydraulics/jump_inside.h"
#include "quell/hydraulics/jump_inverse.h"
#include "quell/hydraulics/jump_lengths.h"
#include "quell/hydraulics/jump_location.h"
#include "quell/hydraulics/jump_power_section.h"
#include "quell/hydraulics/jump_sections.h"
#include "quell/hydraulics/jump_slope.h"
#include "quell/hydraulics/jump_steps.h"
#include "quell/hydraulics/jump_submerged.h"
#include "quell/hydraulics/jump_tabulated.h"
#include "quell/hydraulics/jump_turbulence.h"
#include "quell/hydraulics/jump_undular.h"
#include "quell/hydraulics/labyrinth.h"
#include "quell/hydraulics/model_rules.h"
#include "quell/hydraulics/momentum.h"
#include "quell/hydraulics/open_channel_profile.h"
#include "quell/hydraulics/outlets.h"
#include "quell/hydraulics/protection.h"
#include "quell/hydraulics/regime.h"
#include "quell/hydraulics/roll_waves.h"
#include "quell/hydraulics/roughness_parts.h"
#include "quell/hydraulics/section.h"
#include "quell/hydraulics/section_shapes.h"
#include "quell/hydraulics/section_tabulated.h"
#include "quell/hydraulics/seepage.h"
#include "quell/hydraulics/self_aeration.h"
#include "quell/hydraulics/shock_waves.h"
#include "quell/hydraulics/short_rules.h"
#include "quell/hydraulics/side_channel.h"
#include "quell/hydraulics/sluice.h"
#include "quell/hydraulics/specific_energy.h"
#include "quell/hydraulics/stepped_chute.h"
#include "quell/hydraulics/surge.h"
#include "quell/hydraulics/toe_velocity.h"
#include "quell/hydraulics/transitions.h"
#include "quell/hydraulics/uniform_flow.h"
#include "quell/hydraulics/weirs.h"
#include "quell/hydraulics/weirs_broad.h"

namespace quell::hydraulics {

namespace {
constexpr const Method* structure_methods[] = {
    &record::crest_discharge_ogee,
    &record::crest_discharge_ogee_3_to_1,
    &record::crest_discharge_ogee_3_to_2,
    &record::crest_discharge_ogee_3_to_3,
    &record::effective_length,
    &record::crest_profile_ogee,
    &record::crest_profile_ogee_3_to_1,
    &record::crest_profile_ogee_3_to_2,
    &record::crest_profile_ogee_3_to_3,
    &record::crest_tangent_x,
    &record::crest_tangent_x_3_to_1,
    &record::crest_tangent_x_3_to_2,
    &record::crest_tangent_x_3_to_3,
    &record::crest_arc_length,
    &record::upstream_arcs_radii,
    &record::upstream_quadrant_arcs,
    &record::upstream_quadrant_ellipse,
    &record::upstream_quadrant_equation,
    &record::upstream_tangent_ellipse,
    &record::upstream_length_arcs,
    &record::upstream_length_ellipse,
    &record::crest_apron_factor,
    &record::crest_submergence_factor,
    &record::effective_length_novak,
    &record::crest_head_limit,
    &record::crest_discharge_multi_bay,
    &record::crest_discharge_ogee_upper,
    &record::crest_coefficient_castro_orgaz,
    &record::crest_coefficient_jsce,
    &record::crest_coefficient_conversion,
    &record::crest_head_constant,
    &record::crest_discharge_approach,
    &record::discharge_approach,
    &record::weir_rehbock,
    &record::weir_textbook,
    &record::weir_sill,
    &record::weir_kindsvater_carter,
    &record::weir_submergence_villemonte,
    &record::weir_broad_crest,
    &record::weir_square_edged,
    &record::weir_long_throated,
    &record::weir_chute_entrance,
    &record::weir_submergence_broad,
    &record::weir_drowned_crest,
    &record::labyrinth_discharge_half_round,
    &record::labyrinth_discharge_quarter_round,
    &record::gate_radial,
    &record::gate_by_heads,
    &record::gate_blend,
    &record::brink_depth_subcritical,
    &record::brink_depth_supercritical,
    &record::drop_geometry_rand,
    &record::drop_foot_depth_white,
    &record::side_channel_gradient,
    &record::side_channel_level_depth,
    &record::side_channel_fall,
    &record::side_channel_profile,
    &record::side_channel_control,
    &record::sluice_contraction_radial,
    &record::sluice_discharge_free,
    &record::sluice_discharge_drowned,
    &record::outlet_depth_circular,
    &record::outlet_depth_box,
    &record::outlet_discharge_orifice,
    &record::outlet_inflow_transition,
    &record::outlet_jet_fall,
    &record::outlet_jet_reach,
    &record::crest_least_pressure,
    &record::depth_from_energy_on_slope,
    &record::boundary_layer_em1603,
    &record::boundary_layer_head_loss,
    &record::roughness_height_manning,
    &record::friction_factor_colebrook,
    &record::friction_slope_darcy,
    &record::chute_profile_darcy,
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
    &record::jump_class_em25,
    &record::jump_length_smetana_1934,
    &record::jump_length_bakhmeteff_1936,
    &record::jump_length_kinney_1935,
    &record::jump_length_aravin_1935,
    &record::jump_length_pavlovski_1940,
    &record::jump_length_chertousov_1935,
    &record::jump_length_silvester_1964,
    &record::jump_length_ivanchenko_1936,
    &record::jump_length_woycicki_1931,
    &record::jump_length_elevatorski_1959,
    &record::jump_length_marques_1997,
    &record::jump_length_six_depths,
    &record::jump_length_band,
    &record::jump_length_triangular,
    &record::jump_length_trapezoidal,
    &record::jump_length_circular,
    &record::roller_length_circular,
    &record::roller_length_narrow,
    &record::roller_length_hager_1992,
    &record::roller_length_wang_2015,
    &record::roller_length_safranez_1929,
    &record::roller_length_marques_1997,
    &record::roller_length_carollo_2007,
    &record::surface_hager_1992,
    &record::surface_chanson_2011,
    &record::surface_wang_2015,
    &record::surface_rajaratnam_1968,
    &record::wall_jet_profile,
    &record::wall_jet_decay,
    &record::air_kalinske_1943,
    &record::air_rajaratnam_1967,
    &record::air_wisner_1965,
    &record::air_rabben_1983,
    &record::air_band,
    &record::surface_fluctuation,
    &record::surface_period,
    &record::pressure_fluctuation_marques_1997,
    &record::pressure_stations_marques_1997,
    &record::slab_thickness,
    &record::undular_first_crest,
    &record::undular_wave_length,
    &record::submerged_jump,
    &record::submerged_jump_length,
    &record::front_position,
    &record::jump_reynolds_number,
    &record::largest_model_scale,
    &record::sequent_depth_trapezoidal,
    &record::sequent_depth_circular,
    &record::sequent_depth_triangular,
    &record::sequent_depth_power_law,
    &record::sequent_depth_tabulated,
    &record::sequent_depth_positive_step,
    &record::sequent_depth_drop_a,
    &record::sequent_depth_drop_b,
    &record::froude_number_drop_a,
    &record::froude_number_drop_b,
    &record::sequent_depth_rise_momentum,
    &record::sequent_depth_rise_energy,
    &record::largest_rise,
    &record::sequent_depth_baffles,
    &record::sequent_depth_end_sill,
    &record::sequent_depth_smooth_shear,
    &record::sequent_depth_corrugated,
    &record::sequent_depth_gravel,
    &record::sequent_depth_radial,
    &record::sequent_depth_diverging,
    &record::sequent_depth_expansion,
    &record::sequent_depth_herbrand,
    &record::sequent_depth_sloping,
    &record::sequent_depth_kindsvater,
    &record::sequent_depth_subramanya,
    &record::sequent_depth_rajaratnam,
    &record::sequent_depth_chow,
    &record::jump_length_sloping,
    &record::energy_loss_sloping,
    &record::sequent_depth_slope_break,
    &record::jump_length_slope_break,
    &record::jump_profile_horizontal,
    &record::jump_location_horizontal_apron,
    &record::jump_location_channel,
    &record::jump_sweep_out_depth_friction,
    &record::jump_drowning_depth_friction,
    &record::channel_profile_depth,
    &record::channel_profile_distance,
    &record::channel_profile_direct_step,
    &record::jump_front_on_chute,
    &record::sequent_depth_momentum_coefficients,
    &record::smooth_bed_friction,
    &record::sequent_depth_bed_friction,
    &record::sequent_depth_viscous,
    &record::sequent_depth_weight_and_drag,
    &record::initial_depth_rectangular,
    &record::jump_discharge_from_depths,
    &record::jump_depths_from_loss_and_discharge,
    &record::jump_depths_from_loss_and_froude_number,
    &record::jump_depths_from_discharge_and_froude_number,
    &record::energy_loss_trapezoidal,
    &record::energy_loss_triangular,
    &record::energy_loss_circular,
    &record::power_lost,
    &record::efficiency_rectangular,
    &record::relative_height_rectangular,
    &record::froude_number_after_jump,
    &record::depths_over_critical,
    &record::sequent_depth_sensitivity,
    &record::critical_depth_rectangular,
    &record::critical_depth_trapezoidal,
    &record::critical_depth_circular,
    &record::critical_depth_triangular,
    &record::critical_depth_power_law,
    &record::critical_depth_tabulated,
    &record::normal_depth_trapezoidal,
    &record::section_geometry_trapezoidal,
    &record::section_geometry_circular,
    &record::section_geometry_power_law,
    &record::section_geometry_tabulated,
    &record::specific_energy_rectangular,
    &record::specific_energy_trapezoidal,
    &record::specific_energy_circular,
    &record::momentum_function_rectangular,
    &record::momentum_function_trapezoidal,
    &record::momentum_function_circular,
    &record::froude_number_trapezoidal,
    &record::froude_number_circular,
    &record::alternate_depths_rectangular,
    &record::riprap_isbash,
    &record::riprap_em25,
    &record::creep_ratio_lane,
    &record::model_scale_froude,
    &record::froude_number_section,
    &record::depth_from_froude_number,
    &record::froude_number_from_slopes,
    &record::specific_energy,
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
    &record::drag_force,
    &record::sequent_depth_with_drag,
    &record::depth_above_piers,
    &record::surge_closure,
    &record::surge_opening,
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
    &record::roller_bucket_radius,
    &record::apron_length_rise,
    &record::bank_riprap,
};
}  // namespace

std::span<const Method* const> methods() {
  static const std::vector<const Method*> all = [] {
    std::vector<const Method*> joined;
    for (const auto part : {std::span<const Method* const>(structure_methods), basin_methods(), site_methods()})
      joined.insert(joined.end(), part.begin(), part.end());
    return joined;
  }();
  return all;
}

}  // namespace quell::hydraulics
