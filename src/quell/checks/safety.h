// What makes the basin stand and the river hold: slab, anchors, flotation, walls, foundation, protection of the bed, physical
// model, operation. Plain numbers for the report and the JSON, and the findings that judge them.
//
// All of it is a first check: structural numbers are preliminary and a structural engineer must design them. Coefficients that
// no source could give are inputs with an envelope for default, and the results say how much they depend on them.
#pragma once

#include <algorithm>
#include <array>
#include <string>
#include <vector>

#include "quell/checks/checks.h"
#include "quell/hydraulics/filters.h"
#include "quell/hydraulics/khosla.h"
#include "quell/hydraulics/wall_loads.h"

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
  FindingMethod unit_discharge_by{}, velocity_by{};  ///< what leads to the velocity
  FindingMethod em25_by{}, isbash_by{};
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

/// One layer of a filter: between which curves it lies, and how thick it is placed.
struct FilterLayer {
  hydraulics::LayerBand band;  ///< m
  double thickness = 0.0;      ///< m
  double volume = 0.0;         ///< m3; 0 where it is not laid over the river
};

/// The stone as delivered, the filter below it, and the stone that settles where the bed is washed out.
struct StoneLayers {
  hydraulics::LayerBand stone;                 ///< m
  hydraulics::SizeBand largest;                ///< D100, m
  std::array<hydraulics::SizeBand, 4> mass{};  ///< kg of a sphere of D15, D50, D85, D100
  hydraulics::BaseInput bed{};                 ///< m, as given or derived
  bool bed_known = false;
  bool bed_derived = false;           ///< d15 or d85 of the bed is not given
  bool closes = false;                ///< granular layers, or none, hold the bed
  double stone_on_bed = 0.0;          ///< D15 of the stone over d85 of the bed; above 5 a filter is needed
  std::vector<FilterLayer> filter{};  ///< from the bed upward
  double launch_scour = 0.0;          ///< m below the stone; 0: the bed's material is not given
  double launch_length = 0.0;         ///< m at the end of the stone
  double launch_thickness = 0.0;      ///< m in place over that length
  double launch_volume = 0.0;         ///< m3 per m of width
  bool drain_known = false;           ///< the soil's grading is given
  std::vector<FilterLayer> drain{};   ///< of the slab's underdrains, from the soil upward
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
  FindingMethod unit_discharge_by{}, head_by{}, depth_by{};  ///< what leads to the depth behind a working basin
};

/// Share of the head that is left at one place below the floor, by three methods.
struct UpliftPoint {
  std::string_view cutoff{};  ///< "upstream", "middle", "downstream"; "toe" of the basin
  char point = ' ';           ///< E before, D tip, C behind; ' ' on the floor
  double distance = 0.0;      ///< m from the upstream face
  double alone = 0.0;         ///< Khosla without corrections, and the corrections
  double thickness = 0.0, interference = 0.0, slope = 0.0;
  double khosla = 0.0, lane = 0.0, bligh = 0.0;
  double largest() const { return std::max(khosla, std::max(lane, bligh)); }
};

/// Creep and exit gradient for the worst head difference.
struct Seepage {
  bool on_soil = false;
  double head = 0.0;          ///< m, worst difference of the pools
  double no_flow_head = 0.0;  ///< m, reservoir full and the river without flow
  std::string head_case;      ///< "no flow", "check flood"
  FindingMethod head_by{};
  double vertical = 0.0;    ///< m, vertical creep
  double horizontal = 0.0;  ///< m
  double creep_ratio = 0.0, creep_needed = 0.0;
  double exit_gradient = 0.0;  ///< 0: no cutoff at the end
  double gradient_allowed = 0.0;
  double cutoff_for_gradient = 0.0;              ///< m, for the gradient
  double bligh_ratio = 0.0, bligh_needed = 0.0;  ///< needed 0: no table value
  std::array<hydraulics::CutoffPressures, 3> cutoffs{};
  std::vector<UpliftPoint> points{};  ///< going downstream; on soil only
  double toe_head = 0.0;  ///< m below the toe of the basin without flow, above the tailwater: largest of the methods
  double toe_thickness = 0.0, toe_thickness_drained = 0.0;  ///< m that hold it, drains failed and working
};

/// Share of the head between the pools below the floor `distance` m from the upstream face, by Khosla with its corrections; 0
/// on rock, where it is not judged.
double khosla_share_at(const Seepage& seepage, double distance);

/// The largest share of the head between the pools that Lane, Bligh and Khosla leave below the floor `distance` m from the
/// upstream face; on rock Lane's alone.
double head_share_at(const BasinView& view, const Seepage& seepage, double distance);

/// Cutoff at the end sill, each need by itself and the depth chosen.
struct EndCutoff {
  double for_gradient = 0.0, for_scour = 0.0, practical = 2.0, degradation = 0.0;  ///< m below the underside of the slab or bed
  double depth = 0.0;
};

/// One run of the physical model.
struct ModelRun {
  std::string name{};
  double discharge = 0.0, model_discharge = 0.0;  ///< m3/s, prototype and model
  std::array<double, 3> tailwater_level{};        ///< m, low, expected, high; the first alone where `one_tailwater`
  std::array<double, 3> model_depth{};            ///< m above the floor in the model
  bool one_tailwater = false;
  double y1 = 0.0, V1 = 0.0, F1 = 0.0;  ///< prototype
  double model_y1 = 0.0, model_V1 = 0.0, model_F1 = 0.0;
  double reynolds = 0.0, weber_root = 0.0;  ///< model
  std::string_view measure{};
  std::string effects{};  ///< what the scale distorts
};

/// What the instruments must span, in the model.
struct ModelRanges {
  double least_pressure = 0.0, largest_pressure = 0.0;  ///< Pa on the floor, with a quarter to spare
  double frequency = 0.0;                               ///< Hz, least rate of the transducers; 0 where no jump shakes the floor
  double least_discharge = 0.0, largest_discharge = 0.0;  ///< m3/s
  double deepest = 0.0;                                   ///< m above the floor
  double fastest = 0.0;                                   ///< m/s
};

struct ModelAdvice {
  std::string rule{};  ///< by which a model is asked for, or that none does
  bool required = false;
  int reasons = 0;             ///< circumstances in which one is advised
  double least_scale = 0.0;    ///< prototype over model: what laboratory discharge, floor and head ask for
  double largest_scale = 0.0;  ///< what depth and Reynolds number allow
  double scale = 0.0;          ///< chosen; 0: no full-width model fits
  bool is_section = false;     ///< a section model in a flume
  double section_width = 0.0;  ///< m in the model
  double discharge = 0.0;      ///< m3/s in the model, at the check flood
  double depth = 0.0;          ///< m, y1 in the model at the check flood
  double velocity = 0.0;       ///< m/s
  double reynolds = 0.0;       ///< at the check flood; `runs` has it for the others
  double weber_root = 0.0;     ///< sqrt(rho V^2 y1/sigma)
  double time_scale = 1.0;     ///< prototype over model
  double length = 0.0;         ///< m, of the modelled reach
  std::vector<ModelRun> runs{};
  ModelRanges ranges{};
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
  double from = 0.0, to = 0.0;    ///< m from the toe
  double discharge = 0.0;         ///< m3/s, of the governing operating case
  double depth = 0.0;             ///< m, mean depth in the jump over it, in that case
  double pressure_range = 0.0;    ///< of the fluctuation, over the velocity head, in that case
  bool suction_is_bound = false;  ///< by the pressure of vapour
  double seepage_head = 0.0;      ///< without drains
  double uplift_working = 0.0, uplift_failed = 0.0;
  double dynamic_sealed = 0.0;     ///< head of the fluctuation, joints sealed
  double dynamic_open = 0.0;       ///< all joints open
  double dynamic_failed = 0.0;     ///< one joint failed
  double thickness_working = 0.0;  ///< m without anchors: drains working, joints sealed
  double thickness_failed = 0.0;   ///< drains failed
  double thickness_open = 0.0;     ///< joints open on four sides
  double thickness_one = 0.0;      ///< one joint failed, the others hold
  double thickness_empty = 0.0;    ///< dewatered, the reservoir full
  double net_pressure = 0.0;       ///< Pa on the anchors, governing design case, with the slab's thickness
  double bar_force = 0.0;          ///< N
  double bar_stress = 0.0;         ///< Pa
  double bar_use = 0.0;            ///< stress over the stress allowed
  double use_sealed = 0.0, use_open = 0.0, use_failed = 0.0;  ///< the same by the worst state of the joints that counts
  double range_growth = 0.0;                                  ///< of the pressure with a tenth more range of the fluctuation
  double grid_needed = 0.0;                                   ///< m, spacing at which the stress is the one allowed
  double bar_length = 0.0;                                    ///< m in rock
  int bars = 0;                                               ///< in the panel
  FindingMethod thickness_by{};  ///< the largest thickness, drains failed, joints open or basin empty
  FindingMethod pressure_by{};   ///< the pressure that governs the steel: the worst case, 0.625 of it where it is unusual
  FindingMethod depth_by{}, uplift_by{}, pulses_by{};  ///< what leads to it
};

struct Flotation {
  double groundwater_level = 0.0;
  double weight = 0.0, uplift = 0.0, anchors = 0.0;  ///< N per m of basin
  double factor = 0.0;                               ///< without anchors
  double factor_anchored = 0.0;
};

/// One load case of a wall, per metre, in its worst state. A factor is infinite where nothing drives that way.
struct WallLoadCase {
  std::string_view id;                      ///< "empty", "drawdown", "operating_inward", "operating_outward", "earthquake"
  std::string_view name;                    ///< for people
  bool is_inward = true;                    ///< the wall is driven into the basin
  double discharge = 0.0;                   ///< m3/s, of the worst state; 0: no flow
  double outside = 0.0, inside = 0.0;       ///< water behind and before the wall, m above the apron
  double pulse = 0.0;                       ///< Pa, peak of the fluctuation that acts
  double force = 0.0, moment = 0.0;         ///< N, N m on the stem about the floor, the way it is driven
  double overturning = 0.0, sliding = 0.0;  ///< factors
  double overturning_needed = 0.0, sliding_needed = 0.0;
  double largest_bearing = 0.0, smallest_bearing = 0.0;  ///< Pa; 0 where the force leaves the base
  bool leaves_base = false;
  hydraulics::WallStabilityInput balance{};
  double normal = 0.0, eccentricity = 0.0;  ///< N; m from the middle of the base
};

struct WallCheck {
  double height = 0.0, thickness = 0.0, base = 0.0;  ///< m, of a first L-shaped section
  double fluctuation = 0.0;                          ///< Pa, peak on the inner face, local
  std::vector<WallLoadCase> cases;
  FindingMethod bearing_by{};  ///< balance of the load case that presses most on the ground
};

/// Frequencies, s^-1. 0: not judged.
struct Vibration {
  double jump = 0.0;   ///< pulses that carry the energy, largest over the states
  double wall = 0.0;   ///< first natural frequency of the wall, dry
  double panel = 0.0;  ///< lowest of the anchored panels
};

/// Force of the flow on one block, pier or sill.
struct ElementForce {
  std::string_view kind, name;
  double mean = 0.0, peak = 0.0;  ///< N
};

/// Pressure on the lowest point of the curve between chute and apron, at the flow that presses most. Radius 0: no curve.
struct InvertCurve {
  double radius = 0.0, discharge = 0.0;
  double pressure = 0.0, added = 0.0;  ///< Pa: in all, and the part that the curve adds
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
  StoneLayers layers{};
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
  Vibration vibration;
  std::vector<ElementForce> elements;
  InvertCurve invert;
  Findings findings;
};

/// Runs all of it over the states of the view.
Safety judge_safety(const BasinView& view);

/// The ways to fail that the trade knows, each with the findings that look at it.
std::vector<FailureMode> failure_modes(const Findings& findings);

// Its parts, one file each.
void judge_river(const BasinView& view, Safety& safety);
hydraulics::Gradation graded_stone(const RiverProtection& river);
FindingMethod graded_by(const RiverProtection& river);
void judge_stone_layers(const BasinView& view, Safety& safety);
void judge_drain_filter(const BasinView& view, Safety& safety);
void judge_uplift(const BasinView& view, Safety& safety);
void judge_foundation(const BasinView& view, Safety& safety);
void judge_model(const BasinView& view, Safety& safety);
void plan_model_runs(const BasinView& view, ModelAdvice& model);
void judge_operation(const BasinView& view, Safety& safety);
void judge_elements(const BasinView& view, Safety& safety);
void judge_slab(const BasinView& view, Safety& safety);
void judge_walls(const BasinView& view, Safety& safety);
void judge_vibration(const BasinView& view, Safety& safety);  ///< after slab and walls
void judge_invert(const BasinView& view, Safety& safety);

void judge_forces(const BasinView& view, Safety& safety);

/// Length (m) of the roller, over which the mean depth rises and the fluctuation acts.
double roller_length(const TailwaterState& state);

/// Mean depth (m) in the jump over a stretch of the basin, m from the toe.
double jump_depth_over(const TailwaterState& state, double from, double to);

}  // namespace quell::checks
