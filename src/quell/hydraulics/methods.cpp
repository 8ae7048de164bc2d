#include "quell/hydraulics/methods.h"

#include "quell/hydraulics/basin_rules.h"
#include "quell/hydraulics/boundary_layer.h"
#include "quell/hydraulics/chute_profile.h"
#include "quell/hydraulics/crest.h"
#include "quell/hydraulics/energy.h"
#include "quell/hydraulics/friction.h"
#include "quell/hydraulics/jump.h"
#include "quell/hydraulics/jump_energy.h"
#include "quell/hydraulics/jump_friction.h"
#include "quell/hydraulics/jump_inverse.h"
#include "quell/hydraulics/jump_power_section.h"
#include "quell/hydraulics/jump_sections.h"
#include "quell/hydraulics/jump_tabulated.h"
#include "quell/hydraulics/momentum.h"
#include "quell/hydraulics/protection.h"
#include "quell/hydraulics/section.h"
#include "quell/hydraulics/section_shapes.h"
#include "quell/hydraulics/section_tabulated.h"
#include "quell/hydraulics/specific_energy.h"

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
      &record::sequent_depth_triangular,
      &record::sequent_depth_power_law,
      &record::sequent_depth_tabulated,
      &record::sequent_depth_positive_step,
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
      &record::basin_freeboard,
      &record::invert_curve_pressure,
      &record::baffle_pier_force,
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
  };
  return list;
}

}  // namespace quell::hydraulics
