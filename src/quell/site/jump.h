// The free jump of a toe flow: lengths, loss, class and surface, for the results table and the section.
#pragma once

#include <string_view>

#include "quell/base/working.h"
#include "quell/site/toe.h"

namespace quell::site {

struct FreeJump {
  double energy_loss = 0.0;      ///< dE, m
  double jump_length = 0.0;      ///< m
  double roller_length = 0.0;    ///< m
  double shortest_length = 0.0;  ///< m, of the published correlations that are meant for this Froude number; 0 where none is
  double longest_length = 0.0;   ///< m
  double crest_depth = 0.0;      ///< m, highest surface above the apron: y2, or the first wave of an undular jump
  std::string_view class_name;   ///< "steady"
  std::string_view meaning;      ///< what the class means for the design
};

FreeJump free_jump(const ToeFlow& flow, Working* working = nullptr);

/// Depth of the surface (m) at x from the front, from y1 to `end_depth`: the default profile of the roller, level behind the
/// jump.
double surface_depth(const FreeJump& jump, double y1, double end_depth, double x);

}  // namespace quell::site
