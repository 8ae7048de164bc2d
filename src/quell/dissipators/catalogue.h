// The one interface behind which every energy dissipator stands. A type is one file beside this one and one line in
// list.cpp; command line, comparison, report, drawing and tests find it by iteration.
//
// What fixes a dimension lives in the type. What judges a result is a check, except the limits of use that are the type's own.
#pragma once

#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "quell/base/finding.h"
#include "quell/base/method.h"
#include "quell/base/working.h"
#include "quell/site/toe.h"

namespace quell::dissipators {

/// What is known of a type before any number: printed by the comparison, the report and the docs.
struct TypeRecord {
  Text id;       ///< "type_2"
  Text name;     ///< the trade's name: "Type II basin"
  Text summary;  ///< one sentence: what it consists of and what it is for
  Text source;   ///< key in data/sources.bib
  Text place;
  Provenance provenance;
  std::span<const std::string_view> failure_modes;  ///< known ways to fail
  std::span<const Method* const> methods;           ///< the methods that are the type's own
};

/// Depths of tailwater above the apron (m) that a type asks for at one discharge. sweep_out <= required <= best_highest <=
/// largest.
struct TailwaterNeed {
  double sweep_out = 0.0;     ///< below this the jump leaves the basin
  double required = 0.0;      ///< what design must provide
  double best_highest = 0.0;  ///< above this the front climbs the chute
  double largest = 0.0;       ///< above this the jump is drowned
};

/// Point in the long section, m: x from the toe of the basin downstream, z above the apron.
struct SectionPoint {
  double x = 0.0;
  double z = 0.0;
};

/// A row of like elements across the basin, or a single one over its whole width (count 1, width = basin width).
/// Across the width: wall_clearance + count*width + (count-1)*spacing + wall_clearance = basin width, to rounding.
struct Element {
  std::string kind{};  ///< "chute_block", "baffle_pier", "dentate", "end_sill"
  std::string name{};  ///< for people: "Chute blocks"
  int count = 0;
  double height = 0.0;                  ///< m, top above the apron
  double width = 0.0;                   ///< m, across the flow
  double spacing = 0.0;                 ///< m, clear between neighbours
  double wall_clearance = 0.0;          ///< m, clear between the outer element and the wall
  double length = 0.0;                  ///< m, along the flow at its base
  double station = 0.0;                 ///< m, upstream edge at its base, from the toe; negative on the chute's foot
  std::vector<SectionPoint> profile{};  ///< outline in the long section, closed, no repeated end point
  std::string remark{};                 ///< what the reader of the drawing must know; may be empty
};

/// What sizing starts from. `flows` holds the toe flow of every discharge of the range at the chosen apron level.
struct SizingInput {
  std::span<const site::ToeFlow> flows;  ///< in order of discharge, at least one; all share the width
  double width = 0.0;                    ///< W, m
  double chute_slope = 0.0;              ///< tan(theta) of the last reach
  double fall = 0.0;                     ///< m, crest level minus apron level
  double upstream_head = 0.0;            ///< m, largest reservoir level minus apron level
};

/// The structure that a type asks for.
struct Structure {
  double length = 0.0;                      ///< m, toe to the downstream end of the end sill
  double governing_length_discharge = 0.0;  ///< m3/s, whose jump fixes the length
  double invert_radius = 0.0;               ///< m, smallest radius of the curve between chute and apron; 0: none needed
  double end_sill_height = 0.0;             ///< m above the apron; 0: none
  double freeboard = 0.0;                   ///< m above the higher of tailwater and sequent depth
  std::vector<Element> elements{};
  Findings findings{};  ///< what sizing itself has to say, under "<id>.…": a block wider than its rule, a count of one
};

class Dissipator {
 public:
  virtual ~Dissipator() = default;
  virtual const TypeRecord& record() const = 0;

  /// Called in the hot loop: no allocation, no exception.
  virtual TailwaterNeed tailwater_need(const site::ToeFlow& flow) const noexcept = 0;

  /// Basin length that this discharge asks for, m.
  virtual double length(const site::ToeFlow& flow) const noexcept = 0;

  /// Limits of use over all discharges, as findings under "<id>.…". A `fails` among them makes the type not applicable.
  virtual Findings limits(const SizingInput& input) const = 0;

  /// Elements, length, curve and freeboard. With `working` also the steps that led to them.
  virtual Structure size(const SizingInput& input, Working* working) const = 0;

  /// Adds the steps behind tailwater_need for one discharge.
  virtual void trace_tailwater_need(const site::ToeFlow& flow, Working& working) const = 0;
};

/// Every type, in the order of the handbook.
std::span<const Dissipator* const> catalogue();

/// Null where there is none of that id.
const Dissipator* find_dissipator(std::string_view id);

}  // namespace quell::dissipators
