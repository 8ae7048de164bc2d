#include "quell/checks/checks.h"

namespace quell::checks {

Findings judge_basin(const BasinView& view) {
  using Check = Finding (*)(const BasinView&);
  static constexpr Check list[] = {
      tailwater_margin,
      sweep_out,
      sequent_depth_met,
      drowned,
      tailwater_spread,
      bed_degradation,
      apron_limits,
      apron_against_bed,
      founding,
      sill_control,
      crest_overload,
      crest_pressure,
      crest_submergence,
      crest_proximity,
      chute_walls,
      chute_air,
      chute_walls_air,
      chute_cavitation,
      chute_steps,
      chute_width_change,
      basin_width_change,
      invert_curve,
      jump_waves,
      toe_velocity,
      toe_velocity_second,
      riprap,
      roller_hazard,
      physical_model,
  };
  Findings findings;
  for (const Check check : list) findings.push_back(check(view));
  return findings;
}

}  // namespace quell::checks
