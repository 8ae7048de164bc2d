#include "quell/hydraulics/methods.h"

#include "quell/hydraulics/basin_rules.h"
#include "quell/hydraulics/boundary_layer.h"
#include "quell/hydraulics/chute_profile.h"
#include "quell/hydraulics/crest.h"
#include "quell/hydraulics/crest_approach.h"
#include "quell/hydraulics/crest_coefficient.h"
#include "quell/hydraulics/crest_effects.h"
#include "quell/hydraulics/crest_gates.h"
#include "quell/hydraulics/crest_shape.h"
#include "quell/hydraulics/crest_upstream.h"
#include "quell/hydraulics/drop.h"
#include "quell/hydraulics/energy.h"
#include "quell/hydraulics/friction.h"
#include "quell/hydraulics/jump.h"
#include "quell/hydraulics/jump_sections.h"
#include "quell/hydraulics/labyrinth.h"
#include "quell/hydraulics/outlets.h"
#include "quell/hydraulics/protection.h"
#include "quell/hydraulics/section.h"
#include "quell/hydraulics/side_channel.h"
#include "quell/hydraulics/sluice.h"
#include "quell/hydraulics/weirs.h"
#include "quell/hydraulics/weirs_broad.h"

namespace quell::hydraulics {

std::span<const Method* const> methods() {
  static constexpr const Method* list[] = {
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
  };
  return list;
}

}  // namespace quell::hydraulics
