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
  const int count = std::max(1, static_cast<int>(std::ceil((basin_width / widest + 1.0) / 2.0)));
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

const site::ToeFlow& sizing_flow(const SizingInput& input) {
  return input.flows.back();
}

namespace {

double largest_freeboard(std::span<const site::ToeFlow> flows, Working* working) {
  const auto freeboard = [](const site::ToeFlow& flow) { return hydraulics::basin_freeboard({.V1 = flow.V1, .y2 = flow.y2}); };
  const auto& governing = *std::max_element(
      flows.begin(), flows.end(), [&](const site::ToeFlow& a, const site::ToeFlow& b) { return freeboard(a) < freeboard(b); });
  trace(working, hydraulics::record::basin_freeboard, {governing.V1, governing.y2}, {freeboard(governing)},
        "freeboard of the walls");
  return freeboard(governing);
}

}  // namespace

Structure common_structure(const Dissipator& type, const SizingInput& input, const Method& length_method, Working* working) {
  const site::ToeFlow* governing = &input.flows.front();
  for (const auto& flow : input.flows)
    if (type.length(flow) >= type.length(*governing)) governing = &flow;
  Structure structure;
  structure.length = type.length(*governing);
  structure.governing_length_discharge = governing->discharge;
  structure.invert_radius = invert_radius(input.chute_slope, sizing_flow(input).y1);
  structure.freeboard = largest_freeboard(input.flows, working);
  trace(working, length_method, {governing->F1, governing->y2}, {structure.length}, "length of the basin");
  return structure;
}

Findings froude_limits(std::string_view type_id, const SizingInput& input, const Rule& lowest_rule, double highest,
                       const Rule& highest_rule) {
  const auto least = smallest(input.flows, &site::ToeFlow::F1);
  const auto most = largest(input.flows, &site::ToeFlow::F1);
  const std::string id(type_id);
  return {limit_finding(id + ".froude_lowest", "Inflow Froude number at every discharge", least.value, LimitSense::at_least,
                        4.5, dimension::none, Status::fails,
                        "The lowest Froude number of the range stands " + at_discharge(least.discharge) + ".",
                        "Below 4.5 the jump oscillates: compare Type IV, a narrower chute or a lower apron.", lowest_rule),
          limit_finding(id + ".froude_highest", "Highest inflow Froude number", most.value, LimitSense::at_most, highest,
                        dimension::none, Status::caution,
                        "The highest Froude number of the range stands " + at_discharge(most.discharge) +
                            "; small discharges run above the tested range and do not govern the size.",
                        "Check that the governing discharge lies inside the range; beyond the curves their last value is held.",
                        highest_rule)};
}

double invert_radius(double chute_slope, double largest_depth) {
  return chute_slope >= 1.0 ? 5.0 * largest_depth : 0.0;
}

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

Finding tested_limit(Finding finding) {
  finding.asks_for_model = finding.status != Status::ok;
  return finding;
}

std::string at_discharge(double discharge) {
  return "at " + quantity_token(discharge, dimension::discharge);
}

}  // namespace quell::dissipators
