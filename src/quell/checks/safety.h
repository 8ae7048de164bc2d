// What makes the basin stand and the river hold: slab, anchors, flotation, walls, foundation, protection of the bed, physical
// model, operation. Plain numbers for the report and the JSON, and the findings that judge them.
//
// All of it is a first check: structural numbers are preliminary and a structural engineer must design them. Coefficients that
// no source could give are inputs with an envelope for default, and the results say how much they depend on them.
#pragma once

#include <string>
#include <vector>

#include "quell/checks/checks.h"

namespace quell::checks {

/// Velocity over the end sill and the stone that it asks for.
struct RiverProtection {
  double discharge = 0.0;  ///< m3/s, that governs
  site::TailwaterCase tailwater_case = site::TailwaterCase::low;
  double depth = 0.0;          ///< m over the sill
  double mean_velocity = 0.0;  ///< m/s
  double bed_velocity = 0.0;   ///< m/s, for design
  double residual_head = 0.0;  ///< m, energy over the sill above that of the river
  double stone_em25 = 0.0;     ///< m, the rules side by side
  double stone_isbash_high = 0.0;
  double stone_isbash_low = 0.0;
  double stone_escarameia_may = 0.0;
  double stone_maynord_30 = 0.0;  ///< D30; for comparison, not meant for the place
  double stone = 0.0;             ///< median chosen: the larger of the first two
  double stone_mass = 0.0;        ///< kg
  double largest_stone = 0.0;     ///< m
  double thickness = 0.0;         ///< m
  double length = 0.0;            ///< m beyond the sill
  double volume = 0.0;            ///< m3 over the width
};

/// Scour of the bed beyond the protection, or without one; only where the bed's material is given.
struct BedScour {
  bool known = false;
  double working = 0.0;          ///< m below the bed, behind a working basin
  double swept_out = 0.0;        ///< m below the bed, largest of the jet formulas at the check flood
  double swept_out_least = 0.0;  ///< m, smallest of them
  double grown = 0.0;            ///< m below the bed after a day, behind the protection
  double grown_days = 1.0;
  double critical_velocity = 0.0;  ///< m/s
  FindingMethod working_by{}, grown_by{};
};

/// Creep and exit gradient for the worst head difference.
struct Seepage {
  bool on_soil = false;
  double head = 0.0;      ///< m, worst difference of the pools
  std::string head_case;  ///< "no flow", "check flood"
  FindingMethod head_by{};
  double vertical = 0.0;    ///< m, vertical creep
  double horizontal = 0.0;  ///< m
  double creep_ratio = 0.0, creep_needed = 0.0;
  double exit_gradient = 0.0;  ///< 0: no cutoff at the end
  double gradient_allowed = 0.0;
  double cutoff_for_gradient = 0.0;  ///< m, for the gradient
};

/// Cutoff at the end sill, each need by itself and the depth chosen.
struct EndCutoff {
  double for_gradient = 0.0, for_scour = 0.0, practical = 2.0, degradation = 0.0;  ///< m below the underside of the slab or bed
  double depth = 0.0;
};

struct ModelAdvice {
  bool required = false;
  double least_scale = 0.0;    ///< prototype over model: what laboratory discharge, floor and head ask for
  double largest_scale = 0.0;  ///< what depth and Reynolds number allow
  double scale = 0.0;          ///< chosen; 0: no full-width model fits
  bool is_section = false;     ///< a section model in a flume
  double section_width = 0.0;  ///< m in the model
  double discharge = 0.0;      ///< m3/s in the model, at the check flood
  double depth = 0.0;          ///< m, y1 in the model at the check flood
  double velocity = 0.0;       ///< m/s
  double reynolds = 0.0;       ///< at the smallest discharge that must be believed
  double weber_root = 0.0;     ///< sqrt(rho V^2 y1/sigma)
  double time_scale = 1.0;     ///< prototype over model
  double length = 0.0;         ///< m, of the modelled reach
};

/// One opening of the gates at one level of the reservoir, for the operator.
struct OperationRow {
  std::string pattern;
  double reservoir_level = 0.0;
  double discharge = 0.0;
  double tailwater_needed = 0.0;  ///< level, m
  double tailwater_low = 0.0;     ///< level that the river gives, low case, m
  bool allowed = false;
};

/// One stretch of slab along the basin under its worst load cases. Heads above the top of the floor, m.
struct SlabPanel {
  double from = 0.0, to = 0.0;  ///< m from the toe
  double discharge = 0.0;       ///< m3/s, of the governing operating case
  double depth = 0.0;           ///< m, mean depth in the jump over it, in that case
  double seepage_head = 0.0;    ///< without drains
  double uplift_working = 0.0, uplift_failed = 0.0;
  double dynamic_sealed = 0.0;     ///< head of the fluctuation, joints sealed
  double dynamic_open = 0.0;       ///< all joints open
  double dynamic_failed = 0.0;     ///< one joint failed
  double thickness_working = 0.0;  ///< m without anchors: drains working, joints sealed
  double thickness_failed = 0.0;   ///< drains failed
  double thickness_open = 0.0;     ///< joints open on four sides
  double thickness_empty = 0.0;    ///< dewatered
  double net_pressure = 0.0;       ///< Pa on the anchors, governing design case, with the slab's thickness
  double bar_force = 0.0;          ///< N
  double bar_stress = 0.0;         ///< Pa
  double bar_use = 0.0;            ///< stress over the stress allowed
  double grid_needed = 0.0;        ///< m, spacing at which the stress is the one allowed
  double bar_length = 0.0;         ///< m in rock
  int bars = 0;                    ///< in the panel
  FindingMethod thickness_by{};    ///< the largest thickness, drains failed, joints open or basin empty
  FindingMethod pressure_by{};     ///< the pressure that governs the steel: the worst case, 0.625 of it where it is unusual
  FindingMethod depth_by{}, uplift_by{}, pulses_by{};  ///< what leads to it
};

struct Flotation {
  double groundwater_level = 0.0;
  double weight = 0.0, uplift = 0.0, anchors = 0.0;  ///< N per m of basin
  double factor = 0.0;                               ///< without anchors
  double factor_anchored = 0.0;
};

struct WallCheck {
  double height = 0.0, thickness = 0.0, base = 0.0;      ///< m, of a first L-shaped section
  double force = 0.0, moment = 0.0;                      ///< N, N m per m, worst case
  double overturning = 0.0, sliding = 0.0;               ///< factors
  double largest_bearing = 0.0, smallest_bearing = 0.0;  ///< Pa
  double fluctuation = 0.0;                              ///< Pa, peak on the inner face, local
};

struct FailureMode {
  std::string_view name;
  std::string_view mechanism;
  std::vector<std::size_t> findings;  ///< indices in the option's findings
  Status worst = Status::ok;
};

struct Safety {
  bool judged = false;
  RiverProtection river;
  BedScour scour;
  Seepage seepage;
  EndCutoff cutoff;
  ModelAdvice model;
  std::vector<OperationRow> operation;
  std::vector<SlabPanel> panels;
  double slab_thickness = 0.0;
  double range_share = 0.0;  ///< change of the bar force per 10 % of the pressure range
  Flotation flotation;
  WallCheck wall;
  Findings findings;
};

/// Runs all of it over the states of the view.
Safety judge_safety(const BasinView& view);

/// The ways to fail that the trade knows, each with the findings that look at it.
std::vector<FailureMode> failure_modes(const Findings& findings);

// Its parts, one file each.
void judge_river(const BasinView& view, Safety& safety);
void judge_foundation(const BasinView& view, Safety& safety);
void judge_model(const BasinView& view, Safety& safety);
void judge_operation(const BasinView& view, Safety& safety);
void judge_elements(const BasinView& view, Safety& safety);
void judge_slab(const BasinView& view, Safety& safety);
void judge_walls(const BasinView& view, Safety& safety);

}  // namespace quell::checks
