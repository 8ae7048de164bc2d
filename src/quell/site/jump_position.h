// Where the jump stands for one depth of tailwater: on the chute, on the apron, or past the basin.
//
// Above the sequent depth the front climbs the chute until momentum balances (hydraulics/jump_front.h). Below it, friction on
// the apron must take the excess of momentum: the front moves down to where the flow left by friction needs no more than the
// tailwater. Where that leaves no room for the jump, only blocks or sill can hold it, as far down as the type's tests allow.
#pragma once

#include "quell/base/working.h"
#include "quell/site/chute_flow.h"
#include "quell/site/toe.h"

namespace quell::site {

struct JumpPositionInput {
  const ToeFlow& toe;
  const ChuteFlow& chute;
  const ChuteGeometry& geometry;
  double tailwater_depth = 0.0;  ///< T, m above the apron
  double sweep_out_depth = 0.0;  ///< m, below it the jump leaves the basin by the tests of its type
  double jump_length = 0.0;      ///< Lj of the free jump, m
  double basin_length = 0.0;     ///< m
  double hold_station =
      0.0;  ///< m from the toe, first row of blocks or the sill: the front is held above it; 0: nothing to hold it
};

struct JumpPosition {
  double front = 0.0;      ///< m, horizontal from the toe of the basin: positive downstream, negative up the chute
  double z1 = 0.0;         ///< m, height of the front above the apron; 0 on it
  double d1 = 0.0;         ///< m, depth before the front, normal to the bed
  bool held = false;       ///< blocks or sill hold it, friction alone would not
  bool swept_out = false;  ///< it stands past the basin
};

/// Front of the jump, with the apron as rough as the chute. The answer moves steadily with the tailwater, down to where the
/// jump is swept out.
JumpPosition jump_position(const JumpPositionInput& input, Working* working = nullptr);

}  // namespace quell::site
