// The one interface behind which every energy dissipator stands. A type is one file beside this one and one line in
// list.cpp; command line, comparison, report, drawing and tests find it by iteration.
//
// What fixes a dimension lives in the type. What judges a result is a check, except the limits of use that are the type's own:
// they are data in its record, so that the finding, the figure of the fields of application and the tests read the same
// numbers.
#pragma once

#include <array>
#include <boost/container/static_vector.hpp>
#include <span>
#include <string>
#include <string_view>

#include "quell/base/finding.h"
#include "quell/base/method.h"
#include "quell/base/working.h"
#include "quell/site/basin_choices.h"
#include "quell/site/toe.h"

namespace quell::dissipators {

/// What destroys the energy.
enum class Action {
  level_jump,    ///< hydraulic jump on a level apron
  sloping_jump,  ///< hydraulic jump on a sloping apron
  roller,        ///< roller in a bucket under deep tailwater
  blocks,        ///< rows of blocks on the way down
  impact,        ///< the jet hits a wall
  fall,          ///< a free nappe into a pool
  pool,          ///< a pool lined with stone
  jet            ///< a jet thrown clear of the structure
};
std::string_view name_of(Action action);  ///< "level_jump", …, as in result.json
constexpr bool makes_jump(Action action) {
  return action == Action::level_jump || action == Action::sloping_jump;
}
/// It takes the water from the crest itself: there is no chute above it.
constexpr bool replaces_chute(Action action) {
  return action == Action::blocks || action == Action::fall;
}

/// What the level of the apron (or floor, or invert of a bucket) follows from.
enum class LevelRule {
  tailwater,       ///< as high as the required tailwater allows at every discharge
  river_bed,       ///< from the lowest river bed to be expected
  above_tailwater  ///< clear of the highest tailwater
};

/// What a limit of use looks at.
enum class Measure {
  froude_number,   ///< F1 of each discharge
  unit_discharge,  ///< q of each discharge, m2/s
  velocity,        ///< V1 of each discharge, m/s
  discharge,       ///< Q of each discharge, m3/s
  fall,            ///< crest level less apron level, m
  head,            ///< highest reservoir level less apron level, m
  fall_ratio,      ///< fall over critical depth, of each discharge
  chute_slope      ///< tan(theta) of the last reach of the chute
};
inline constexpr std::size_t measure_count = 8;
std::string_view name_of(Measure measure);  ///< "Froude number at the toe"
Dimension dimension_of(Measure measure);

/// One limit of use, one-sided. With `at_least` the smallest value over all discharges is judged, with `at_most` the largest.
struct Limit {
  Text id;  ///< id of its finding, "type_2.unit_discharge"
  Text title;
  Measure measure;
  LimitSense sense;
  double limit;      ///< SI
  Status otherwise;  ///< `fails`: the type is not applicable beyond it
  Text advice;       ///< what to do where it is not met
  Text source;       ///< key in data/sources.bib
  std::string_view place;
  Provenance provenance;
  bool of_tests = false;       ///< the end of what was tested: beyond it a physical model is required
  bool largest_only = false;   ///< judged at the largest discharge alone
  std::string_view text = {};  ///< a sentence more for the finding
};

/// What is known of a type before any number: printed by the comparison, the report and the docs.
struct TypeRecord {
  Text id;       ///< "type_2"
  Text name;     ///< the trade's name: "Type II basin"
  Text summary;  ///< one sentence: what it consists of and what it is for
  Text source;   ///< key in data/sources.bib
  Text place;
  Provenance provenance;
  Action action = Action::level_jump;
  LevelRule level_rule = LevelRule::tailwater;
  std::span<const Limit> limits{};                    ///< fields of application
  std::span<const std::string_view> approach{};       ///< what it asks of the flow that enters it; quantities as tokens
  std::span<const std::string_view> failure_modes{};  ///< known ways to fail
  std::string_view model{};                           ///< when a physical model is required, beyond the limits
  std::string_view withheld = {};            ///< why no element is given although the type is listed; empty where it is sized
  std::string_view not_similar = {};         ///< why its dimensions do not scale by Froude's law; empty where they do
  bool walls_from_tailwater = false;         ///< freeboard stands on the tailwater alone, not on the sequent depth
  std::span<const Method* const> methods{};  ///< the methods that are the type's own
};

/// Depths of tailwater above the apron (m) that a type asks for at one discharge. sweep_out <= required <= best_highest <=
/// largest. A type whose level does not follow from tailwater requires none: sweep_out and required are 0.
struct TailwaterNeed {
  double sweep_out = 0.0;          ///< below this the jump leaves the basin
  double required = 0.0;           ///< what design must provide
  double best_highest = no_limit;  ///< above this the front climbs the chute
  double largest = no_limit;       ///< above this the flow is drowned
};

/// Point in the long section, m: x from the toe of the basin downstream, z above the apron.
struct SectionPoint {
  double x = 0.0;
  double z = 0.0;
};
using Outline = boost::container::static_vector<SectionPoint, 16>;
using FloorLine = boost::container::static_vector<SectionPoint, 40>;

/// A row of like elements across the basin, or a single one over its whole width (count 1). Across the width:
/// wall_clearance + count*width + (count-1)*spacing + wall_clearance = across, to rounding. Texts are literals.
struct Element {
  std::string_view kind{};  ///< "chute_block", "baffle_pier", "dentate", "end_sill"
  std::string_view name{};  ///< for people: "Chute blocks"
  int count = 0;
  double height = 0.0;          ///< m, top above the floor that it stands on
  double width = 0.0;           ///< m, across the flow
  double spacing = 0.0;         ///< m, clear between neighbours
  double wall_clearance = 0.0;  ///< m, clear between the outer element and the wall
  double length = 0.0;          ///< m, along the flow at its base
  double station = 0.0;         ///< m, upstream edge at its base, from the toe; negative on the chute's foot
  double across = 0.0;          ///< m, clear width of the basin there
  Outline profile{};            ///< outline in the long section, closed, no repeated end point
  int rows = 1;                 ///< rows alike, one behind the other; `station` and `profile` are of the first
  double row_step = 0.0;        ///< m, horizontal from row to row
  double row_drop = 0.0;        ///< m, vertical from row to row, downward positive
  std::string_view remark{};    ///< what the reader of the drawing must know; may be empty
};
using Elements = boost::container::static_vector<Element, 8>;

/// A load that the flow puts on an element, for its design.
struct Load {
  std::string_view kind{};  ///< kind of the element
  std::string_view name{};  ///< "Force on one baffle pier"
  double value = 0.0;       ///< N or Pa
  Dimension dimension{};
  std::string_view remark{};  ///< load case
};
using Loads = boost::container::static_vector<Load, 8>;

/// What a type may know of the site beside the flow. Levels in m.
struct Setting {
  const site::BasinChoices& choices;
  double width = 0.0;        ///< W, m, at the toe
  double length = 0.0;       ///< m, toe to the end, where the site file holds it; 0: as the type asks
  double chute_slope = 1.0;  ///< tan(theta) of the last reach
  bool is_stepped = false;   ///< the chute has steps
  double crest_level = 0.0;
  double bed_level = 0.0;         ///< river bed today
  double lowest_bed_level = 0.0;  ///< with the degradation allowed for
};

/// What sizing starts from. `flows` holds the flow that enters the basin for every discharge of the range at the chosen level.
struct SizingInput {
  const Setting& setting;
  std::span<const site::ToeFlow> flows;                     ///< in order of discharge, at least one; the last is the largest
  std::span<const std::array<double, 3>> tailwater_levels;  ///< of the flows, low, expected, high
  double apron_level = 0.0;
};

/// The structure that a type asks for: plain geometry, for report, drawing and solids alike. Nothing here is allocated.
struct Structure {
  double length = 0.0;                      ///< m, toe to the downstream end of the end sill
  double required_length = 0.0;             ///< m, that the type asks for; 0: its form fixes the length
  double governing_length_discharge = 0.0;  ///< m3/s, whose flow fixes the length
  double invert_radius = 0.0;               ///< m, smallest radius of the curve between chute and apron; 0: none needed
  double end_sill_height = 0.0;             ///< m above the apron; 0: none
  double freeboard = 0.0;                   ///< m above the higher of tailwater and sequent depth
  double least_wall_height = 0.0;           ///< m above the apron, where the type fixes it; 0: freeboard alone
  double end_width = 0.0;                   ///< m, clear width at the downstream end
  double riprap_volume = 0.0;               ///< m3 of stone that is part of the dissipator
  bool is_paved = true;                     ///< false: no slab and no walls, the bed is lined with stone
  FloorLine floor{};                        ///< surface of the floor from its upstream to its downstream end
  Elements elements{};
  Loads loads{};
};

class Dissipator {
 public:
  virtual ~Dissipator() = default;
  virtual const TypeRecord& record() const = 0;

  // Called in the hot loop: no allocation, no exception.

  /// Height (m above the apron) at which the flow enters: a front on a sloping apron, a jet at the tailwater's surface.
  virtual double front_rise(const site::ToeFlow&, const Setting&) const noexcept { return 0.0; }

  /// The flow that enters, for a type that takes the water from the crest: from discharge, width and levels alone.
  virtual site::ToeFlow from_crest(const site::ToeFlow& bare, const Setting&) const noexcept { return bare; }

  virtual TailwaterNeed tailwater_need(const site::ToeFlow& flow, const Setting& setting) const noexcept = 0;

  /// Length that this discharge asks for, m.
  virtual double length(const site::ToeFlow& flow, const Setting& setting) const noexcept = 0;

  /// Height (m, positive up) of the level over what LevelRule names; unused where tailwater sets it.
  virtual double level_offset(const site::ToeFlow& /*largest*/, const Setting&) const noexcept { return 0.0; }

  /// Width (m) that the type fixes itself from the largest discharge; 0: as wished.
  virtual double own_width(const site::ToeFlow&, const Setting&) const noexcept { return 0.0; }

  /// Elements, length, curve, freeboard, loads. With `working` also the steps that led to them.
  virtual Structure size(const SizingInput& input, Working* working) const = 0;

  /// What the type has to say of its own structure, under "<id>.…".
  virtual Findings findings(const SizingInput&, const Structure&) const { return {}; }

  /// Adds the steps behind tailwater_need for one discharge.
  virtual void trace_tailwater_need(const site::ToeFlow& flow, const Setting& setting, Working& working) const = 0;
};

/// Value of the measure for one discharge.
double value_of(Measure measure, const site::ToeFlow& flow, const SizingInput& input);

/// A length that the site file holds against the length that the type asks for; nothing where none is held.
Findings judge_length(const Dissipator& type, const SizingInput& input, const Structure& structure);

/// Length (m) by which the elements run into each other along the flow; 0 where they stand clear.
double overlap_of(const Structure& structure);

/// Judges the limits of the record, one finding each. A `fails` among them makes the type not applicable.
Findings judge_limits(const TypeRecord& record, const SizingInput& input);

/// Every type, in the order of the methods sheet.
std::span<const Dissipator* const> catalogue();

/// Null where there is none of that id.
const Dissipator* find_dissipator(std::string_view id);

}  // namespace quell::dissipators
