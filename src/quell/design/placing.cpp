#include "quell/design/placing.h"

#include <algorithm>

namespace quell::design {
namespace {

/// First row behind the chute blocks that can hold the front of a jump, m from the toe; 0 where the apron is bare.
double hold_station(const dissipators::Structure& structure) {
  double station = 0.0;
  for (const auto& element : structure.elements)
    if (element.station > 0.0 && element.kind != "chute_block")
      station = station > 0.0 ? std::min(station, element.station) : element.station;
  return station;
}

/// The discharge above `from` whose sweep-out level first exceeds `level`, straight between the cases; 0 where none does.
double discharge_swept_at(const Option& option, std::size_t from, double level) {
  constexpr std::size_t stride = site::tailwater_cases.size();
  const auto spare = [&](std::size_t i) { return level - option.apron_level - option.cases[i].need.sweep_out; };
  for (std::size_t i = from; i + stride < option.cases.size(); i += stride) {
    const double here = spare(i);
    const double next = spare(i + stride);
    if (here < 0.0) return option.cases[i].discharge;
    if (next >= 0.0) continue;
    const double share = here / (here - next);
    return option.cases[i].discharge + share * (option.cases[i + stride].discharge - option.cases[i].discharge);
  }
  return 0.0;
}

/// On a sloping apron the jump ends where the tailwater is as deep as it asks for; its front stands its own length higher up.
void place_on_slope(const PreparedSite& prepared, const Option& option, CaseResult& result) {
  const double slope = prepared.site.basin.choices.apron_slope;
  const double spare = std::max(0.0, result.available_depth - result.need.required);
  result.submergence = result.available_depth / result.need.required - 1.0;
  result.sweep_out_reserve = result.available_depth - result.need.sweep_out;
  const double reach = option.type->length(result.toe, setting_of(prepared.site, option.width));
  const double front = option.length - reach - spare / slope;
  const double above = front < 0.0 ? -front * prepared.site.chute.reaches.back().slope : 0.0;
  result.position = {.front = front,
                     .z1 = slope * (option.length - std::max(front, 0.0)) + above,
                     .d1 = result.toe.y1,
                     .held = false,
                     .swept_out = result.available_depth < result.need.sweep_out};
}

}  // namespace

void place_jump(const PreparedSite& prepared, const PreparedCase& entry, const Option& option, CaseResult& result,
                Working* working) {
  const auto action = option.type->record().action;
  if (!(result.toe.y2 > 0.0) || !dissipators::makes_jump(action)) return;  // no toe flow, no jump
  if (action == dissipators::Action::sloping_jump) return place_on_slope(prepared, option, result);
  result.submergence = result.available_depth / result.toe.y2 - 1.0;
  result.sweep_out_reserve = result.available_depth - result.need.sweep_out;
  result.position = site::jump_position({.toe = result.toe,
                                         .chute = entry.chute,
                                         .geometry = prepared.geometry,
                                         .tailwater_depth = result.available_depth,
                                         .sweep_out_depth = result.need.sweep_out,
                                         .jump_length = result.jump_length,
                                         .basin_length = option.length,
                                         .hold_station = hold_station(option.structure)},
                                        working);
}

void place_jumps(const PreparedSite& prepared, Option& option) {
  std::size_t index = 0;
  for (const auto& entry : prepared.cases) {
    if (!entry.reported) continue;
    for ([[maybe_unused]] const auto tailwater_case : site::tailwater_cases) {
      auto& result = option.cases[index];
      place_jump(prepared, entry, option, result);
      result.sweep_out_discharge = discharge_swept_at(option, index, option.apron_level + result.available_depth);
      ++index;
    }
  }
  for (std::size_t i = 0; i < option.pattern_cases.size(); ++i)
    place_jump(prepared, prepared.patterns[i / site::tailwater_cases.size()], option, option.pattern_cases[i]);
}

}  // namespace quell::design
