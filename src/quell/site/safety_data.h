// What the safety checks of the structure, the foundation and the river need beside the hydraulics. Every value has a stated
// default; those that no source could give are envelopes, and a finding says so.
#pragma once

#include <string_view>

namespace quell::site {

/// Slab of the basin and its anchors.
struct Slab {
  double thickness = 0.0;                ///< m; 0: the first measure of the quantities
  double concrete_unit_weight = 24.0e3;  ///< N/m3
  double panel_length = 10.0;            ///< m along the flow
  double panel_width = 10.0;             ///< m across
  double drain_efficiency = 0.5;         ///< E, 0 to 1, with the drains working; they count as 0 where they fail
  double pressure_range = 1.6;           ///< Cp+ + Cp-, extremes of the fluctuation over V1^2/2g: an envelope
  double suction = 0.8;                  ///< Cp-, the part of it below the mean: an envelope
  double pulse_length = 2.0;             ///< length over which the fluctuation hangs together, in depths at the toe
  bool has_groundwater = false;
  double groundwater_level = 0.0;  ///< m beside the basin when it is empty; the highest tailwater where it is not given

  bool is_anchored = true;
  double bar_diameter = 0.032;       ///< m
  double bar_spacing = 2.0;          ///< m, square grid
  double bar_yield = 500.0e6;        ///< Pa
  double hole_diameter = 0.09;       ///< m
  double rock_bond = 0.5e6;          ///< Pa, grout to rock, allowable
  double bar_bond = 1.0e6;           ///< Pa, bar to grout, allowable
  double rock_unit_weight = 16.2e3;  ///< N/m3, submerged
};

/// What crest and basin stand on, in the order of the site file's words.
enum class Soil {
  rock,
  very_fine_sand,
  fine_sand,
  medium_sand,
  coarse_sand,
  fine_gravel,
  medium_gravel,
  coarse_gravel,
  boulders,
  soft_clay,
  medium_clay,
  hard_clay,
  hardpan
};

struct Foundation {
  Soil soil = Soil::rock;
  double upstream_cutoff = 0.0;         ///< m below the base, at the upstream face
  double downstream_cutoff = 0.0;       ///< m below the base, at the end of the basin
  double middle_cutoff = 0.0;           ///< m below the base, between the two; 0: none
  double middle_cutoff_distance = 0.0;  ///< m from the upstream face
  double underside_slope = 0.0;         ///< m horizontal per m that the underside falls from the upstream cutoff; 0: level
  double underside_slope_length = 0.0;  ///< m horizontal
  double soil_fine_size = 0.0;          ///< d15 of the soil, m; 0: not given
  double soil_mean_size = 0.0;          ///< d50, m
  double soil_upper_size = 0.0;         ///< d85, m
};

/// The laboratory in which a model could be built.
struct Laboratory {
  double discharge = 0.25;  ///< m3/s
  double length = 25.0;     ///< m of floor
  double width = 6.0;       ///< m of floor
  double head = 3.0;        ///< m from tank to floor
};

}  // namespace quell::site
