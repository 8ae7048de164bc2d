#include "quell/hydraulics/methods.h"

#include "quell/hydraulics/bresse.h"
#include "quell/hydraulics/composite_roughness.h"
#include "quell/hydraulics/flood_frequency.h"
#include "quell/hydraulics/flood_record.h"
#include "quell/hydraulics/flood_routing.h"
#include "quell/hydraulics/flood_shapes.h"
#include "quell/hydraulics/level_pool.h"
#include "quell/hydraulics/level_pool_steps.h"
#include "quell/hydraulics/reservoir_storage.h"
#include "quell/hydraulics/river_bed.h"
#include "quell/hydraulics/river_lag.h"
#include "quell/hydraulics/river_profile.h"
#include "quell/hydraulics/river_roughness.h"
#include "quell/hydraulics/river_section.h"
#include "quell/hydraulics/stage_discharge.h"

namespace quell::hydraulics {

namespace {
constexpr const Method* list[] = {
    &record::flood_gumbel,
    &record::frequency_factor_pearson_3,
    &record::risk_at_least_once,
    &record::risk_exactly,
    &record::excess_rain,
    &record::direct_flow,
    &record::unit_ordinate,
    &record::muskingum_step,
    &record::flood_plotting_position,
    &record::flood_record_moments,
    &record::flood_record_log_moments,
    &record::flood_skew_weighted,
    &record::flood_outlier_factor,
    &record::flood_confidence_factors,
    &record::flood_error_lognormal,
    &record::flood_error_gumbel,
    &record::flood_quantile_log_pearson_3,
    &record::lognormal_parameters,
    &record::flood_gamma_flow,
    &record::flood_gamma_volume,
    &record::flood_gamma_rate_factor,
    &record::flood_gamma_exponent_rate,
    &record::flood_gamma_exponent_volume,
    &record::flood_dimensionless_flow,
    &record::flood_triangular_flow,
    &record::flood_triangular_peak,
    &record::reservoir_storage_tabulated,
    &record::reservoir_volume_conic,
    &record::reservoir_volume_end_area,
    &record::reservoir_surcharge_recession,
    &record::reservoir_attenuation_triangular,
    &record::flood_climate_factor,
    &record::reservoir_flood_crest,
    &record::reservoir_flood_tabulated,
    &record::reservoir_flood_gamma,
    &record::reservoir_indicator,
    &record::reservoir_indication_step,
    &record::reservoir_indication_level,
    &record::reservoir_runge_kutta_3,
    &record::reservoir_linear_step,
    &record::reservoir_draining_crest,
    &record::river_conveyance_surveyed,
    &record::river_normal_level_surveyed,
    &record::river_critical_level_surveyed,
    &record::velocity_coefficients_excess,
    &record::channel_profile_bresse,
    &record::composite_pavlovskii,
    &record::composite_lotter,
    &record::composite_felkel,
    &record::composite_krishnamurthy_christensen,
    &record::composite_colebatch,
    &record::composite_cox,
    &record::composite_spread,
    &record::river_level_conveyance,
    &record::river_level_arithmetic,
    &record::river_level_geometric,
    &record::river_level_harmonic,
    &record::river_level_surveyed,
    &record::rating_discharge,
    &record::rating_level,
    &record::rating_fit,
    &record::rating_zero,
    &record::rating_fall,
    &record::rating_loop,
    &record::rating_conveyance,
    &record::river_roughness_strickler,
    &record::river_roughness_limerinos,
    &record::river_roughness_jarrett,
    &record::river_discharge_dingman_sharma,
    &record::river_roughness_cowan,
    &record::river_roughness_riprap,
    &record::river_roughness_riprap_em1601,
    &record::armour_depth,
    &record::armour_size_competent,
    &record::armour_size_meyer_peter,
    &record::armour_size_schoklitsch,
    &record::armour_size_shields,
    &record::armour_size_yang,
    &record::armour_size_spread,
    &record::stable_slope_schoklitsch,
    &record::stable_slope_meyer_peter,
    &record::stable_slope_shields,
    &record::stable_slope_lane,
    &record::degradation_control,
    &record::degradation_wedge,
    &record::river_influence_length,
    &record::river_pool_area,
    &record::lag_time_constant,
    &record::lag_step,
    &record::lag_ramp,
    &record::lag_permissible_ramp,
    &record::basin_exit_level,
};
}  // namespace

std::span<const Method* const> site_methods() {
  return list;
}

}  // namespace quell::hydraulics
