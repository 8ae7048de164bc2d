#include "quell/checks/checks.h"

namespace quell::checks {
namespace {

using Check = Finding (*)(const BasinView&);
using SiteCheck = Findings (*)(const BasinView&);  ///< of data that a site may lack

constexpr Check of_level[] = {tailwater_margin, sweep_out,    sequent_depth_met, drowned,  tailwater_spread,
                              bed_degradation,  apron_limits, apron_against_bed, founding, sill_control};
constexpr Check of_ogee[] = {crest_overload, crest_pressure, crest_submergence, crest_proximity};
constexpr Check of_weir[] = {weir_largest_head, weir_smallest_head, crest_submergence};
constexpr Check of_labyrinth[] = {weir_largest_head, weir_smallest_head, crest_submergence, labyrinth_model};
constexpr Check of_rest[] = {
    chute_walls,  chute_air,  chute_walls_air, chute_cavitation,    chute_steps, chute_width_change, basin_width_change,
    invert_curve, jump_waves, toe_velocity,    toe_velocity_second, riprap,      roller_hazard,      physical_model};

constexpr SiteCheck of_site_data[] = {
    flood_record_length,   flood_freeboard,     flood_storage_range,   river_rating_range,
    river_profile_control, river_profile_start, river_profile_spacing, river_degradation_estimate,
    gate_patterns,         gate_mishaps,        gate_unequal,          gate_lag,
    gate_flood_made,       gate_unjudged};

std::span<const Check> of_crest(site::CrestShape shape) {
  switch (shape) {
    case site::CrestShape::ogee: return of_ogee;
    case site::CrestShape::broad:
    case site::CrestShape::sharp: return of_weir;
    case site::CrestShape::labyrinth: return of_labyrinth;
  }
  return of_ogee;
}

}  // namespace

Findings judge_basin(const BasinView& view) {
  Findings findings;
  for (const auto& list : {std::span<const Check>(of_level), of_crest(view.site.crest.shape), std::span<const Check>(of_rest)})
    for (const Check check : list) findings.push_back(check(view));
  for (const SiteCheck check : of_site_data)
    for (auto& finding : check(view)) findings.push_back(std::move(finding));
  return findings;
}

}  // namespace quell::checks
