// The site as plain numbers: what a site file says, in SI, after io has read and judged it. No behaviour.
//
// Levels (m, in the project's datum) end in _level, heads in _head, depths in _depth.
#pragma once

#include <array>
#include <string>
#include <vector>

#include "quell/base/units.h"
#include "quell/site/basin_choices.h"
#include "quell/site/flood_data.h"
#include "quell/site/gate_data.h"
#include "quell/site/river_data.h"
#include "quell/site/safety_data.h"
#include "quell/site/uncertainty.h"

namespace quell::site {

struct Project {
  std::string name;
  std::string author;
  std::string datum;
  std::string notes;
  std::string status;  ///< status of the work, such as "preliminary"
  bool has_altitude = false;
  double altitude = 0.0;            ///< m above sea level, for the pressure of the atmosphere; sea level where it is not given
  double water_temperature = 15.0;  ///< degrees Celsius, for the pressure of vapour
};

/// Shape of the ungated crest, which decides its rating and where the chute begins below it.
enum class CrestShape {
  ogee,      ///< shaped for a design head; the chute begins at its tangent point
  broad,     ///< level crest along the flow; the chute begins at its downstream edge
  sharp,     ///< thin plate over the full width of the approach; the nappe falls onto a floor
  labyrinth  ///< folded wall with a half-round crest; the nappes fall onto a floor
};
std::string_view name_of(CrestShape shape);  ///< "ogee", as in the site file

/// Upstream face of the ogee crest, vertical : horizontal.
enum class UpstreamFace { vertical, slope_3_to_1, slope_3_to_2, slope_3_to_3 };

/// Upstream edge of the broad crest.
enum class CrestEdge { square, rounded };

/// Ungated crest. What belongs to one shape is left at its default for the others.
struct Crest {
  CrestShape shape = CrestShape::ogee;
  double crest_level = 0.0;     ///< m
  double design_head = 0.0;     ///< Hd, m, total head that fixes the shape, > 0; ogee
  double net_width = 0.0;       ///< L', m, clear of piers, > 0; for the labyrinth the width that it spans
  double approach_depth = 0.0;  ///< P, m, crest above the approach floor, >= 0; > 0 for sharp and labyrinth
  UpstreamFace upstream_face = UpstreamFace::vertical;  ///< ogee
  int piers = 0;                                        ///< ogee
  double pier_contraction = 0.0;                        ///< Kp, each pier; ogee
  double abutment_contraction = 0.0;                    ///< Ka, each abutment; ogee
  double crest_length = 0.0;                            ///< Lw, m along the flow, > 0; broad
  CrestEdge edge = CrestEdge::square;                   ///< broad
  double sidewall_angle = 0.0;                          ///< alpha, rad from the direction of flow, 6 to 35 degrees; labyrinth
  double developed_length = 0.0;                        ///< Lc, m, centreline length of all cycles, > net_width; labyrinth
  double floor_level = 0.0;                             ///< m, bed on which the chute begins below a sharp crest or a labyrinth

  /// The nappe falls freely onto a floor, and the height of its fall is lost to the chute.
  bool has_fall() const { return shape == CrestShape::sharp || shape == CrestShape::labyrinth; }
};

/// One straight piece of the chute. The last one runs down to the apron, wherever that comes to lie.
struct ChuteReach {
  double slope = 0.0;      ///< tan(theta), fall per horizontal length, > 0
  double end_level = 0.0;  ///< m, bed level at its lower end; not used for the last reach
};

/// From its start below the crest (tangent point of the ogee, edge of the broad crest, floor below a fall) to the apron. The
/// width changes linearly with bed level from there to `end_width_level`, and is `end_width` below it.
struct Chute {
  std::vector<ChuteReach> reaches;  ///< at least one, going down
  double width = 0.0;               ///< m at its start, between the walls, > 0
  double end_width = 0.0;           ///< m at the apron, > 0
  double end_width_level = 0.0;     ///< m, bed level at which end_width is reached; unused where the widths are equal
  double roughness_height = 0.0;    ///< ks, m; 0 where manning_n is given
  double manning_n = 0.0;           ///< s/m^(1/3); 0 where roughness_height is given
  double wall_height = 0.0;         ///< m above the chute floor, normal to it; 0: not given
  bool is_stepped = false;          ///< steps from the tangent point down; the chute then has one reach
  double step_height = 0.0;         ///< s, m, vertical; 0 where the chute is smooth
};

struct NamedFlood {
  std::string name;
  double discharge = 0.0;      ///< m3/s, over the spillway
  double return_period = 0.0;  ///< years; 0: none given
  bool is_routed = false;      ///< from an inflow through the reservoir
};

struct Discharges {
  double smallest = 0.0;      ///< m3/s, > 0
  double design_flood = 0.0;  ///< m3/s
  double check_flood = 0.0;   ///< m3/s, the largest of the range
  std::string design_inflow;  ///< name of the inflow whose routed outflow is the design flood; empty: design_flood is given
  std::string check_inflow;   ///< the same for the check flood
  int steps = 40;             ///< discharges from smallest to check_flood, both included
  std::vector<NamedFlood> floods;
};

struct BasinWishes {
  std::vector<std::string> types;  ///< type ids in the order of the site file
  bool width_is_free = false;
  double width = 0.0;             ///< m; unused where free
  double largest_width = 0.0;     ///< m; where the width is free; 0: no limit of the user's
  double length = 0.0;            ///< m, toe to the end of the end sill, held; 0: as the type asks
  double tailwater_margin = 0.0;  ///< m, on top of what the type requires, >= 0
  double apron_step = 0.01;       ///< m, the apron level is rounded down to a multiple of it, > 0
  bool has_highest_apron = false;
  double highest_apron_level = 0.0;
  bool has_lowest_apron = false;
  double lowest_apron_level = 0.0;
  BasinChoices choices;
};

struct Ground {
  bool has_level = false;
  double ground_level = 0.0;  ///< m, beside the basin
  bool has_foundation = false;
  double foundation_level = 0.0;  ///< m, sound foundation below the basin
};

/// A finding that somebody accepts with a reason. It changes no verdict; it is printed beside the finding.
struct Acceptance {
  std::string finding;  ///< id, "tailwater.drowned"
  std::string by;
  std::string reason;
};

struct Site {
  Project project;
  UnitSystem units = UnitSystem::si;  ///< the file's declared system: how results are printed by default
  Crest crest;
  Chute chute;
  River river;
  Floods floods;
  Reservoir reservoir;
  Gates gates;
  std::vector<Outlet> outlets;
  Discharges discharges;
  BasinWishes basin;
  Ground ground;
  Slab slab;
  Walls walls;
  ElementForces elements;
  Foundation foundation;
  Laboratory laboratory;
  std::vector<Acceptance> accepted;
  std::vector<UncertainInput> uncertain;
};

}  // namespace quell::site
