// The water on the chute for one discharge: from its start below the crest down to any apron level.
//
// Below an ogee and a broad crest the flow brings the reservoir's energy; below a fall (sharp crest, labyrinth) that of
// critical flow on the floor (site/crest_foot.h). While the turbulent boundary layer is thinner than the flow: potential flow
// on the steep slope (cos theta kept), boundary layer of Campbell, Cox and Boyd, head loss by its energy thickness. Below the
// critical point, where the layer reaches the surface: Darcy-Weisbach with Colebrook's factor, integrated for the energy level
// from the residual energy there, so that energy and toe velocity stay continuous over discharge. Clear water: air is left out,
// which is right for the jump.
//
// On a stepped chute the energy that is left follows from the published relations for skimming flow
// (hydraulics/stepped_chute.h); they hold the same role down to the toe, and never give more than the energy level at the
// start.
#pragma once

#include <vector>

#include "quell/base/outcome.h"
#include "quell/base/working.h"
#include "quell/hydraulics/chute_profile.h"
#include "quell/site/crest_outline.h"
#include "quell/site/site.h"

namespace quell::site {

/// One section of the water-surface profile.
struct ChutePoint {
  double station = 0.0;          ///< m, horizontal from the crest: axis of an ogee, else the start of the chute
  double path = 0.0;             ///< m along the bed from where the layer starts: the crest's curvature, else the chute
  double bed_level = 0.0;        ///< m
  double width = 0.0;            ///< m
  double slope_angle = 0.0;      ///< theta, rad
  double depth = 0.0;            ///< d, m, normal to the bed
  double velocity = 0.0;         ///< q/d, m/s
  double boundary_layer = 0.0;   ///< delta, m; equal to depth once it has reached the surface
  double energy_level = 0.0;     ///< m
  bool fully_turbulent = false;  ///< the layer has reached the surface
  double air_content = 0.0;      ///< mean, up to the depth of 90 % air; these three by add_air_and_cavitation
  double bulked_depth = 0.0;     ///< m, of the mixture, normal to the bed
  double cavitation_index = 0.0;
};

/// A straight piece of the bed with linearly changing width. A reach of the site is one piece, or two where its width stops
/// changing.
struct ChutePiece {
  double start_station = 0.0;
  double start_path = 0.0;
  double start_level = 0.0;
  double angle = 0.0;  ///< rad
  double sine = 0.0;
  double cosine = 0.0;
  double length = 0.0;  ///< m along the bed; the last piece's is to the lowest level
  double start_width = 0.0;
  double width_change = 0.0;  ///< m per m along the bed
};

/// Bed geometry of the chute, derived once from the site. It starts at the tangent point of an ogee, at the downstream edge of
/// a broad crest, on the floor below a sharp crest or a labyrinth.
struct ChuteGeometry {
  double start_station = 0.0;               ///< m from the crest axis of an ogee; 0 for the others
  double start_level = 0.0;                 ///< m
  double start_path = 0.0;                  ///< m: upstream quadrant plus arc of an ogee; 0 for the others
  std::vector<OutlinePoint> crest_outline;  ///< approach floor to the start of the chute
  std::vector<ChutePiece> pieces;
  double last_reach_level = 0.0;   ///< m: the apron must lie below it
  double lowest_level = 0.0;       ///< m: the last reach is followed down to here
  double roughness_height = 0.0;   ///< ks, m, converted from Manning's n where that was given
  double manning_n = 0.0;          ///< s/m^(1/3), as given; 0 where ks was given
  double conversion_radius = 0.0;  ///< m, hydraulic radius of that conversion; 0 where none was made
  double crest_level = 0.0;        ///< m, where the fall over the steps is counted from: crest, or floor below a weir
  double step_height = 0.0;        ///< m; 0: the chute is smooth

  const ChutePiece& piece_at_level(double bed_level) const noexcept;
  const ChutePiece& piece_at_path(double path) const noexcept;
  double station_at_level(double bed_level) const noexcept;
};

/// Geometry down to `lowest_level`. No answer where the levels do not fall from the start down.
Outcome<ChuteGeometry> chute_geometry(const Site& site, double lowest_level);

/// Where the numbers of a chute's flow come from, for the workings.
struct ChuteOrigins {
  std::string_view start;      ///< what the energy level at the start is, in words
  std::string_view width_key;  ///< of the site file: the width at the chute's end
  std::string_view discharge;  ///< what flows, in words
};

/// The flow of one discharge on that chute. Immutable once made; keeps a reference to the geometry.
class ChuteFlow {
 public:
  /// `start_energy_level` (m) is that of the flow at the start of the chute. No answer where the flow would not stay
  /// supercritical.
  static Outcome<ChuteFlow> compute(const ChuteGeometry& geometry, double discharge, double start_energy_level);

  /// Energy level (m) where the chute meets `bed_level`, which must lie on the last reach. Allocates nothing.
  double energy_level_at(double bed_level) const noexcept;

  /// The profile from where it starts to `apron_level`, for figures: about `points` sections.
  std::vector<ChutePoint> profile(double apron_level, int points) const;

  /// The section at one bed level.
  ChutePoint section_at(double bed_level) const;

  /// Path length at which the layer reaches the surface and air begins to enter; negative where it does not above the lowest
  /// level.
  double critical_point_path() const { return critical_path_; }
  double discharge() const { return discharge_; }
  double start_energy_level() const { return start_energy_level_; }

  /// Adds the steps that lead to the energy level at `bed_level`; `from` says where its numbers come from.
  void trace_energy(double bed_level, const ChuteOrigins& from, Working& working) const;

 private:
  /// Potential flow and layer at one place.
  struct Layer {
    double unit_discharge, potential_depth, potential_velocity;
    double grown;      ///< thickness of the layer, m, as if there were no surface
    double full;       ///< thickness that fills the flow, m
    double thickness;  ///< the lesser of both, m
    double loss;       ///< head lost up to here, m
  };
  struct LossNode {
    double path, loss;
  };

  Layer layer_at(const ChutePiece& piece, double path) const noexcept;
  double energy_level_at_path(const ChutePiece& piece, double path) const noexcept;
  Outcome<void> follow_layer();
  Outcome<void> follow_steps();
  double energy_level_on_steps(double bed_level) const noexcept;
  double add_loss_node(const ChutePiece& piece, double from, const LossNode& here, double largest);
  Outcome<void> follow_friction(std::size_t first_piece);

  const ChuteGeometry* geometry_ = nullptr;
  double discharge_ = 0.0;
  double start_energy_level_ = 0.0;
  double start_path_ = 0.0;  ///< above it the flow is still the crest's
  double critical_path_ = -1.0;
  std::vector<LossNode> losses_;                  ///< running largest loss above the critical point
  std::vector<hydraulics::EnergyNode> friction_;  ///< energy level over path below it
};

}  // namespace quell::site
