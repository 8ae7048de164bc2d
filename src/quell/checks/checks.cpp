#include "quell/checks/checks.h"

namespace quell::checks {
namespace {

using Check = Finding (*)(const BasinView&);
using SiteCheck = Findings (*)(const BasinView&);  ///< of data that a site may lack

using Action = dissipators::Action;

/// A check with the question whether it has anything to say of a type.
struct TypeCheck {
  Check check;
  bool (*applies)(const BasinView&);
};

bool always(const BasinView&) {
  return true;
}
bool needs_tailwater(const BasinView& view) {
  return view.type.level_rule == dissipators::LevelRule::tailwater;
}
bool jumps(const BasinView& view) {
  return dissipators::makes_jump(view.type.action);
}
bool jumps_on_level(const BasinView& view) {
  return view.type.action == Action::level_jump;
}
/// The rule asks for the sequent depth; a type whose blocks do with less is judged by its own depth alone.
bool asks_sequent_depth(const BasinView& view) {
  if (!jumps_on_level(view)) return false;
  for (const auto& state : view.states)
    if (state.need.required < state.toe->y2 * (1.0 - 1e-9)) return false;
  return true;
}
/// A largest tailwater that is told as a share of the sequent depth.
bool can_drown(const BasinView& view) {
  return needs_tailwater(view);
}
bool is_paved(const BasinView& view) {
  return view.structure.is_paved;
}
bool has_chute(const BasinView& view) {
  return !dissipators::replaces_chute(view.type.action);
}
bool takes_chute_width(const BasinView& view) {
  return has_chute(view) && view.type.action != Action::impact;
}
bool holds_swimmers(const BasinView& view) {
  return jumps_on_level(view) || view.type.action == Action::roller || view.type.action == Action::fall;
}

constexpr TypeCheck of_level[] = {{tailwater_margin, needs_tailwater},
                                  {sweep_out, needs_tailwater},
                                  {sequent_depth_met, asks_sequent_depth},
                                  {drowned, can_drown},
                                  {tailwater_spread, always},
                                  {bed_degradation, always},
                                  {apron_limits, needs_tailwater},
                                  {apron_against_bed, needs_tailwater},
                                  {founding, is_paved},
                                  {sill_control, jumps}};
constexpr Check of_ogee[] = {crest_overload, crest_pressure, crest_submergence, crest_proximity};
constexpr Check of_weir[] = {weir_largest_head, weir_smallest_head, crest_submergence};
constexpr Check of_labyrinth[] = {weir_largest_head, weir_smallest_head, crest_submergence, labyrinth_model};
constexpr TypeCheck of_rest[] = {{chute_walls, has_chute},
                                 {chute_air, has_chute},
                                 {chute_walls_air, has_chute},
                                 {chute_cavitation, has_chute},
                                 {chute_steps, has_chute},
                                 {chute_width_change, has_chute},
                                 {basin_width_change, takes_chute_width},
                                 {invert_curve, jumps},
                                 {jump_waves, jumps},
                                 {toe_velocity, has_chute},
                                 {toe_velocity_second, has_chute},
                                 {roller_hazard, holds_swimmers},
                                 {physical_model, always}};

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
  findings.reserve(40);
  const auto judge_all = [&](std::span<const TypeCheck> list) {
    for (const auto& entry : list)
      if (entry.applies(view)) findings.push_back(entry.check(view));
  };
  judge_all(of_level);
  for (const Check check : of_crest(view.site.crest.shape)) findings.push_back(check(view));
  judge_all(of_rest);
  for (const SiteCheck check : of_site_data)
    for (auto& finding : check(view)) findings.push_back(std::move(finding));
  return findings;
}

}  // namespace quell::checks
