#include "quell/site/jump.h"

#include <algorithm>

#include "quell/hydraulics/jump.h"
#include "quell/hydraulics/jump_inside.h"
#include "quell/hydraulics/jump_lengths.h"
#include "quell/hydraulics/jump_undular.h"

namespace quell::site {

FreeJump free_jump(const ToeFlow& flow, Working* working) {
  const auto jump_class = hydraulics::classify_jump(flow.F1);
  FreeJump jump{.energy_loss = hydraulics::jump_energy_loss({.y1 = flow.y1, .y2 = flow.y2}),
                .jump_length = hydraulics::jump_length({.F1 = flow.F1, .y2 = flow.y2}),
                .roller_length = hydraulics::roller_length({.F1 = flow.F1, .y1 = flow.y1}),
                .class_name = hydraulics::name_of(jump_class),
                .meaning = hydraulics::meaning_of(jump_class)};
  const auto band = hydraulics::jump_length_band({.F1 = flow.F1, .y1 = flow.y1, .y2 = flow.y2});
  if (band) {
    jump.shortest_length = band->lowest;
    jump.longest_length = band->highest;
  }
  jump.crest_depth = flow.y2;
  if (jump_class == hydraulics::JumpClass::undular) {
    const double rise = hydraulics::undular_crest_rise({.F1 = flow.F1, .y1 = flow.y1});
    jump.crest_depth = std::max(flow.y2, flow.y1 + rise);
  }
  trace(working, hydraulics::record::energy_loss_rectangular, {flow.y1, flow.y2}, {jump.energy_loss},
        "energy lost in the jump");
  trace(working, hydraulics::record::jump_length_em25, {flow.F1, flow.y2}, {jump.jump_length}, "length of the free jump");
  trace(working, hydraulics::record::jump_length_hager_1992, {flow.F1, flow.y1},
        {hydraulics::jump_length_hager({.F1 = flow.F1, .y1 = flow.y1})}, "the same by a second formula, for comparison");
  if (band)
    trace(working, hydraulics::record::jump_length_band, {flow.F1, flow.y1, flow.y2},
          {band->lowest, band->highest, static_cast<double>(band->count)}, "spread of the published lengths");
  trace(working, hydraulics::record::roller_length_hager_1990, {flow.F1, flow.y1}, {jump.roller_length},
        "length of the roller");
  return jump;
}

double surface_depth(const FreeJump& jump, double y1, double end_depth, double x) {
  return hydraulics::roller_surface({.x = x,
                                     .y1 = y1,
                                     .y2 = std::max(end_depth, y1),
                                     .Lr = std::max(jump.roller_length, 0.25 * jump.jump_length),
                                     .Lj = jump.jump_length});
}

}  // namespace quell::site
