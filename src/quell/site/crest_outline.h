// Outline of the crest in the long section, from the approach floor over the crest to the start of the chute: for drawings.
#pragma once

#include <vector>

#include "quell/hydraulics/crest_shape.h"
#include "quell/site/site.h"

namespace quell::site {

struct OutlinePoint {
  double station = 0.0;  ///< m, as those of the chute
  double level = 0.0;    ///< m
};

/// Points downstream one after the other; the first stands on the approach floor or above it, the last is the start of the
/// chute. Ogee: upstream face, elliptical quadrant and profile down to the tangent point with a chute of `chute_slope`. Broad:
/// a block. Sharp: a thin plate. Labyrinth: one wall. Thicknesses of plate and wall and the radius of a rounded edge are
/// indicative.
std::vector<OutlinePoint> crest_outline(const Crest& crest, double chute_slope);

/// The upstream face in the terms of the crest's formulas.
hydraulics::FaceSlope face_slope(UpstreamFace face);

}  // namespace quell::site
