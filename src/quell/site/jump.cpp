#include "quell/site/jump.h"

#include "quell/hydraulics/jump.h"

namespace quell::site {

FreeJump free_jump(const ToeFlow& flow, Working* working) {
  const auto jump_class = hydraulics::classify_jump(flow.F1);
  const FreeJump jump{.energy_loss = hydraulics::jump_energy_loss({.y1 = flow.y1, .y2 = flow.y2}),
                      .jump_length = hydraulics::jump_length({.F1 = flow.F1, .y2 = flow.y2}),
                      .roller_length = hydraulics::roller_length({.F1 = flow.F1, .y1 = flow.y1}),
                      .class_name = hydraulics::name_of(jump_class),
                      .meaning = hydraulics::meaning_of(jump_class)};
  trace(working, hydraulics::record::energy_loss_rectangular, {flow.y1, flow.y2}, {jump.energy_loss},
        "energy lost in the jump");
  trace(working, hydraulics::record::jump_length_em25, {flow.F1, flow.y2}, {jump.jump_length}, "length of the free jump");
  trace(working, hydraulics::record::jump_length_hager_1992, {flow.F1, flow.y1},
        {hydraulics::jump_length_hager({.F1 = flow.F1, .y1 = flow.y1})}, "the same by a second formula, for comparison");
  trace(working, hydraulics::record::roller_length_hager_1990, {flow.F1, flow.y1}, {jump.roller_length},
        "length of the roller");
  return jump;
}

}  // namespace quell::site
