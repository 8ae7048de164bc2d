#include "quell/dissipators/parts.h"

#include <algorithm>
#include <cmath>

#include "quell/base/quantity_text.h"
#include "quell/hydraulics/basin_rules.h"

namespace quell::dissipators {

Row half_space_row(double basin_width, double nominal) {
  const int count = std::max(1, static_cast<int>(std::lround(basin_width / (2.0 * nominal))));
  const double width = basin_width / (2.0 * count);
  return {count, width, width, width / 2.0};
}

Row dentate_row(double basin_width, double widest) {
  const int count = std::max(1, static_cast<int>(std::ceil((basin_width / widest + 1.0) / 2.0 - 1e-9)));
  const double width = basin_width / (2.0 * count - 1.0);
  return {count, width, count == 1 ? 0.0 : width, 0.0};
}

Element chute_blocks(double basin_width, double height, double nominal_width, double slope) {
  const Row row = half_space_row(basin_width, nominal_width);
  const double length = height / slope;
  return {.kind = "chute_block",
          .name = "Chute blocks",
          .count = row.count,
          .height = height,
          .width = row.width,
          .spacing = row.spacing,
          .wall_clearance = row.clearance,
          .length = length,
          .station = -length,
          .profile = {{-length, height}, {0.0, height}, {0.0, 0.0}},
          .remark = "level top, vertical downstream face at the toe, sharp edges"};
}

const site::ToeFlow& sizing_flow(const SizingInput& input) { return input.flows.back(); }

GoverningLength longest(const Dissipator& type, std::span<const site::ToeFlow> flows) {
  GoverningLength governing{0.0, flows.back().discharge};
  for (const auto& flow : flows)
    if (const double length = type.length(flow); length >= governing.length) governing = {length, flow.discharge};
  return governing;
}

double largest_freeboard(std::span<const site::ToeFlow> flows, Working* working) {
  const auto freeboard = [](const site::ToeFlow& flow) { return hydraulics::basin_freeboard({.V1 = flow.V1, .y2 = flow.y2}); };
  const auto& governing = *std::max_element(flows.begin(), flows.end(), [&](const site::ToeFlow& a, const site::ToeFlow& b) {
    return freeboard(a) < freeboard(b);
  });
  trace(working, hydraulics::record::basin_freeboard, {governing.V1, governing.y2}, {freeboard(governing)}, "freeboard of the walls");
  return freeboard(governing);
}

double invert_radius(double chute_slope, double largest_depth) { return chute_slope >= 1.0 ? 5.0 * largest_depth : 0.0; }

Extreme largest(std::span<const site::ToeFlow> flows, double site::ToeFlow::* member) {
  Extreme extreme{flows.front().*member, flows.front().discharge};
  for (const auto& flow : flows)
    if (flow.*member > extreme.value) extreme = {flow.*member, flow.discharge};
  return extreme;
}

Extreme smallest(std::span<const site::ToeFlow> flows, double site::ToeFlow::* member) {
  Extreme extreme{flows.front().*member, flows.front().discharge};
  for (const auto& flow : flows)
    if (flow.*member < extreme.value) extreme = {flow.*member, flow.discharge};
  return extreme;
}

Finding limit_finding(std::string id, std::string title, double value, LimitSense sense, double limit, Dimension dimension,
                      Status otherwise, std::string text, std::string advice, const Rule& rule) {
  Finding finding{.id = std::move(id),
                  .status = judge(value, sense, limit, otherwise),
                  .title = std::move(title),
                  .value = value,
                  .limit = limit,
                  .sense = sense,
                  .dimension = dimension,
                  .text = std::move(text),
                  .advice = std::move(advice),
                  .source = rule.source,
                  .place = rule.place,
                  .provenance = rule.provenance};
  if (finding.status == Status::ok) finding.advice.clear();
  return finding;
}

std::string at_discharge(double discharge) { return "at " + quantity_token(discharge, dimension::discharge); }

}  // namespace quell::dissipators
