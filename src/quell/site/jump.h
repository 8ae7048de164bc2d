// The free jump of a toe flow: lengths, loss and class, for the results table.
#pragma once

#include <string_view>

#include "quell/base/working.h"
#include "quell/site/toe.h"

namespace quell::site {

struct FreeJump {
  double energy_loss = 0.0;     ///< dE, m
  double jump_length = 0.0;     ///< m
  double roller_length = 0.0;   ///< m
  std::string_view class_name;  ///< "steady"
  std::string_view meaning;     ///< what the class means for the design
};

FreeJump free_jump(const ToeFlow& flow, Working* working = nullptr);

}  // namespace quell::site
