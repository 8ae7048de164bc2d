// A basin whose length the site file holds: what the type asks for beside it, and up to which discharge it is long enough.
#include <algorithm>

#include "quell/base/quantity_text.h"
#include "quell/dissipators/parts.h"

namespace quell::dissipators {

namespace {

constexpr double rounding = 1e-9;

/// "It suffices up to 120 m3/s." The flows are in order of discharge.
std::string reach_words(const Dissipator& type, const SizingInput& input, double added) {
  const site::ToeFlow* last = nullptr;
  for (const auto& flow : input.flows) {
    if (type.length(flow, input.setting) + added > input.setting.length * (1.0 + rounding)) break;
    last = &flow;
  }
  return last == nullptr ? "It suffices for no discharge of the range."
                         : "It suffices up to " + quantity_token(last->discharge, dimension::discharge) + ".";
}

}  // namespace

Findings judge_length(const Dissipator& type, const SizingInput& input, const Structure& structure) {
  const double held = input.setting.length;
  if (!(held > 0.0)) return {};
  const auto& record = type.record();
  const Rule rule{record.source, record.place, record.provenance};
  if (!(structure.required_length > 0.0)) {
    auto note = choice_note("basin.length", "Length held, which the form of this type does not follow", held, dimension::length,
                            "The form of this type fixes its length at " + quantity_token(structure.length, dimension::length) +
                                "; the length in [basin] is not used for it.",
                            rule);
    note.status = Status::caution;
    note.key = "basin.length";
    note.advice = "Compare types whose end can be moved, or take the length away.";
    return {note};
  }
  // What the type adds to the length of the jump, such as the blocks before it.
  const double added = structure.required_length - type.length(longest_flow(type, input), input.setting);
  return {keyed(
      "basin.length",
      limit_finding("basin.length", "Length of the basin against the length that the type asks for", held, LimitSense::at_least,
                    structure.required_length, dimension::length, Status::fails, reach_words(type, input, added),
                    "Take the length away or lengthen the basin; a shorter one is for a physical model to show.", rule))};
}

double overlap_of(const Structure& structure) {
  double overlap = 0.0;
  for (const auto& a : structure.elements) {
    const double end = a.station + a.length + (a.rows - 1) * a.row_step;
    overlap = std::max(overlap, end - structure.length * (1.0 + rounding));                   // out of the basin
    if (end >= structure.length * (1.0 - rounding)) overlap = std::max(overlap, -a.station);  // the sill, into the chute
    for (const auto& b : structure.elements)
      // Rows beside each other, such as blocks and half blocks at the walls, share a station.
      if (b.station > a.station) overlap = std::max(overlap, end - b.station);
  }
  return overlap;
}

}  // namespace quell::dissipators
