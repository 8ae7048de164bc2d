// The checks that judge a result: one function a rule, each yielding one finding. Limits of use that belong to a type stay in
// the type; everything here is asked of every jump basin.
#pragma once

#include <span>

#include "quell/base/finding.h"
#include "quell/dissipators/catalogue.h"
#include "quell/site/chute_flow.h"
#include "quell/site/site.h"
#include "quell/site/study.h"
#include "quell/site/toe.h"

namespace quell::checks {

/// One discharge in one tailwater case, as the checks see it. Depths above the apron, m.
struct TailwaterState {
  const site::ToeFlow* toe = nullptr;
  site::TailwaterCase tailwater_case = site::TailwaterCase::low;
  double tailwater_level = 0.0;
  dissipators::TailwaterNeed need{};
  double required_depth = 0.0;
  double available_depth = 0.0;
};

/// One gate pattern at one reservoir level, in the low tailwater case.
struct PatternState {
  std::string_view name;
  const site::ToeFlow* toe = nullptr;  ///< of the most loaded bay, or of the whole width where all bays are alike
  double discharge = 0.0;              ///< m3/s, all bays
  double tailwater_level = 0.0;        ///< m
  double margin = 0.0;                 ///< m, tailwater less what the basin requires
  double sweep_out_reserve = 0.0;      ///< m
  double required_depth = 0.0;         ///< m above the apron, with the margin asked for
  double sweep_out_depth = 0.0;        ///< m above the apron
  double largest_step = 0.0;           ///< m, largest difference of opening between neighbours
  bool is_check = false;               ///< the apron is not set for it
};

/// What the checks look at. Spans stay valid during the call.
struct BasinView {
  const site::Site& site;
  const dissipators::TypeRecord& type;
  const site::ChuteGeometry& geometry;
  std::span<const TailwaterState> states;     ///< all discharges in all tailwater cases
  std::span<const site::ChutePoint> wettest;  ///< profile of the check flood on the chute
  const dissipators::Structure& structure;
  double apron_level = 0.0;
  double width = 0.0;
  double largest_crest_head = 0.0;  ///< m
  double slab_thickness = 0.0;      ///< m
  double wall_height = 0.0;         ///< m above the apron
  double wall_thickness = 0.0;      ///< m, mean
  bool level_exists = true;         ///< some level down to the end of the search meets it
  double level_wanted = 0.0;  ///< m, the level that would within no limit; below apron_level where a limit stands in its way
  bool model_asked_by_type = false;  ///< a limit of the type asks for a physical model
  const site::Study& study;
  std::span<const PatternState> patterns;
};

// Tailwater and level (tailwater.cpp)
Finding tailwater_margin(const BasinView& view);
Finding sweep_out(const BasinView& view);
Finding sequent_depth_met(const BasinView& view);
Finding drowned(const BasinView& view);
Finding tailwater_spread(const BasinView& view);
Finding bed_degradation(const BasinView& view);
Finding apron_limits(const BasinView& view);
Finding apron_against_bed(const BasinView& view);
Finding founding(const BasinView& view);
Finding sill_control(const BasinView& view);

// Crest (crest.cpp)
Finding crest_overload(const BasinView& view);   ///< ogee only
Finding crest_pressure(const BasinView& view);   ///< ogee only
Finding crest_proximity(const BasinView& view);  ///< ogee only
Finding crest_submergence(const BasinView& view);
Finding weir_largest_head(const BasinView& view);   ///< broad, sharp, labyrinth
Finding weir_smallest_head(const BasinView& view);  ///< broad, sharp, labyrinth
Finding labyrinth_model(const BasinView& view);     ///< labyrinth only

// Chute (chute.cpp)
Finding chute_walls(const BasinView& view);
Finding chute_width_change(const BasinView& view);
Finding basin_width_change(const BasinView& view);
Finding invert_curve(const BasinView& view);

// Flow on the chute (chute_flow.cpp)
Finding chute_air(const BasinView& view);
Finding chute_cavitation(const BasinView& view);
Finding chute_walls_air(const BasinView& view);
Finding chute_steps(const BasinView& view);
Finding toe_velocity_second(const BasinView& view);

// What the site's data gave (site_data.cpp): one finding or none
Findings flood_record_length(const BasinView& view);
Findings flood_freeboard(const BasinView& view);
Findings flood_storage_range(const BasinView& view);
Findings river_rating_range(const BasinView& view);
Findings river_profile_control(const BasinView& view);
Findings river_profile_start(const BasinView& view);
Findings river_profile_spacing(const BasinView& view);
Findings river_degradation_estimate(const BasinView& view);

// Gates (gates.cpp): only where there are any
Findings gate_patterns(const BasinView& view);
Findings gate_mishaps(const BasinView& view);
Findings gate_unequal(const BasinView& view);
Findings gate_lag(const BasinView& view);
Findings gate_flood_made(const BasinView& view);
Findings gate_unjudged(const BasinView& view);

// Jump, river, people (basin.cpp)
Finding jump_waves(const BasinView& view);
Finding toe_velocity(const BasinView& view);
Finding roller_hazard(const BasinView& view);
Finding physical_model(const BasinView& view);

/// Why nothing may be built without a physical model; empty where no rule asks for one.
std::string why_model(const BasinView& view);

/// All that the shape of the crest asks for, in this order.
Findings judge_basin(const BasinView& view);

}  // namespace quell::checks
