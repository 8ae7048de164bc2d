#include "quell/hydraulics/chute_walls.h"

#include <algorithm>

#include "quell/hydraulics/chute_symbols.h"

namespace quell::hydraulics {

double aerated_wall_height(const AeratedWallInput& input) noexcept {
  const double mixture = bulked_depth({.d = input.d, .C = input.C});
  return std::max(mixture + input.margin, 1.2 * mixture);
}

namespace record {
namespace {
constexpr Symbol aerated_in[] = {{"d", "depth of the water alone", dimension::length, above_zero},
                                 {"C", "mean air content", dimension::none, {0.0, 0.75}, must_be_given, {0.0, 0.999}},
                                 {"m", "margin above the mixture", dimension::length, {0.5, 1.0}, 1.0}};
constexpr Symbol rapid_in[] = {{"d", "depth by the rougher friction", dimension::length, above_zero}};
constexpr Symbol height_out[] = {{"hw", "height of the wall normal to the floor", dimension::length, above_zero}};
}  // namespace

const Method aerated_wall_height{.id = "wall.height.aerated",
                                 .title = "Height of a wall beside aerated flow",
                                 .equation = "hw = max(d/(1 - C) + m, 1.2*d/(1 - C))",
                                 .inputs = aerated_in,
                                 .outputs = height_out,
                                 .source = "practice",
                                 .place = "high chutes",
                                 .provenance = Provenance::common_practice,
                                 .accuracy = "rule of practice",
                                 .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                   out[0] = hydraulics::aerated_wall_height({.d = in[0], .C = in[1], .margin = in[2]});
                                   return {};
                                 }};

const Method rapid_channel_wall_height{.id = "wall.height.em1601",
                                       .title = "Height of a wall beside rapid flow in a rectangular channel",
                                       .equation = "hw = d + 2*0.3048",
                                       .inputs = rapid_in,
                                       .outputs = height_out,
                                       .source = "em1601_1991",
                                       .place = "freeboard of rectangular sections, 2 ft",
                                       .provenance = Provenance::memory,
                                       .accuracy = "rule of practice",
                                       .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                         out[0] = hydraulics::rapid_channel_wall_height(in[0]);
                                         return {};
                                       }};

}  // namespace record
}  // namespace quell::hydraulics
