// What the safety checks of the structure, the foundation and the river need beside the hydraulics. Every value has a stated
// default; those that no source could give are envelopes, and a finding says so.
#pragma once

#include <vector>

namespace quell::site {

/// Pressure fluctuation on the floor as a model measured it, at one Froude number and one place.
struct PressurePoint {
  double froude = 0.0;   ///< F1
  double place = 0.0;    ///< from the toe, in sequent depths
  double range = 0.0;    ///< Cp+ + Cp-
  double suction = 0.0;  ///< Cp-, no more than the range
};

/// Which states of the joints the anchors must withstand; each includes those before it.
enum class JointState { sealed, open, one_failed };

/// Slab of the basin and its anchors.
struct Slab {
  double thickness = 0.0;                ///< m; 0: the first measure of the quantities
  double concrete_unit_weight = 24.0e3;  ///< N/m3
  double panel_length = 10.0;            ///< m along the flow
  double panel_width = 10.0;             ///< m across
  double drain_efficiency = 0.5;         ///< E, 0 to 1, with the drains working; they count as 0 where they fail
  double pressure_range = 1.6;           ///< Cp+ + Cp-, extremes of the fluctuation over V1^2/2g: an envelope
  double suction = 0.8;                  ///< Cp-, the part of it below the mean: an envelope
  std::vector<PressurePoint> pressure;   ///< instead of the two above; by Froude number, then by place
  JointState joints = JointState::one_failed;
  double pulse_length = 2.0;     ///< length over which the fluctuation hangs together, in depths at the toe
  double pulse_strouhal = 0.01;  ///< St = f d1/V1 of the pulses that carry the energy: uncertain
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

/// Walls of the basin and the fill behind them. Common practice for usual fill where nothing else is said.
struct Walls {
  double thickness = 0.0;                 ///< m, mean; 0: the first measure of the quantities
  double base_width = 0.0;                ///< m, of the L-shaped base; 0: 0.65 of the height
  double moist_weight = 19.0e3;           ///< N/m3, fill above the water table
  double submerged_weight = 11.0e3;       ///< N/m3, fill below it
  double earth_pressure = 0.5;            ///< K0, at rest
  double fill_friction = 0.523598775598;  ///< rad, of the fill; the earthquake asks for it
  double base_friction = 0.523598775598;  ///< rad, base on its ground
  double drawdown_lag = 1.0;              ///< share of the tailwater's fall that stays behind the wall
  double fluctuation_rms = 0.07;          ///< Cp', rms of the pressure on the wall over V1^2/2g: uncertain
  double fluctuation_peak = 4.0;          ///< peak over rms, 3 to 5: uncertain
  bool has_bearing = false;
  double bearing_allowed = 0.0;  ///< Pa
  bool has_seismic = false;
  double seismic_coefficient = 0.0;  ///< kh, horizontal acceleration over g
  double concrete_modulus = 30.0e9;  ///< Pa
};

/// Blocks, piers and sills.
struct ElementForces {
  double peak_factor = 1.5;  ///< peak over mean force: an envelope
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
  bool has_toe_head_share = false;
  double toe_head_share = 0.0;  ///< of the head between the pools, left under the toe; by creep where it is not given
};

/// The laboratory in which a model could be built.
struct Laboratory {
  double discharge = 0.25;  ///< m3/s
  double length = 25.0;     ///< m of floor
  double width = 6.0;       ///< m of floor
  double head = 3.0;        ///< m from tank to floor
};

}  // namespace quell::site
