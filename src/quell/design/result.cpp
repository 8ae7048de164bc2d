#include "quell/design/result.h"

namespace quell::design {

std::string_view name_of(JumpPlace place) {
  switch (place) {
    case JumpPlace::on_apron: return "on_apron";
    case JumpPlace::on_chute: return "on_chute";
    case JumpPlace::past_sill: return "past_sill";
    case JumpPlace::drowned: return "drowned";
  }
  return "on_apron";
}

}  // namespace quell::design
