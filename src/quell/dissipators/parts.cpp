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

Element element_of(const Row& row, double basin_width, double height) {
  Element element;
  element.count = row.count;
  element.height = height;
  element.width = row.width;
  element.spacing = row.spacing;
  element.wall_clearance = row.clearance;
  element.across = basin_width;
  return element;
}

Element chute_blocks(const Row& row, double basin_width, double height, double slope) {
  Element element = element_of(row, basin_width, height);
  element.kind = "chute_block";
  element.name = "Chute blocks";
  element.length = height / slope;
  element.station = -element.length;
  element.profile = {{-element.length, height}, {0.0, height}, {0.0, 0.0}};
  element.remark = "level top, vertical downstream face at the toe, sharp edges";
  return element;
}

Element baffle_piers(const Row& row, double basin_width, double height, double face) {
  Element element = element_of(row, basin_width, height);
  element.kind = "baffle_pier";
  element.name = "Baffle piers";
  element.length = 1.2 * height;
  element.station = face;
  element.profile = {{face, 0.0}, {face, height}, {face + 0.2 * height, height}, {face + 1.2 * height, 0.0}};
  element.remark = "upstream face vertical and in one plane, downstream face 1:1, edges not rounded";
  return element;
}

Element solid_sill(double basin_width, double height, double run, double basin_end) {
  Element element = element_of({1, basin_width, 0.0, 0.0}, basin_width, height);
  element.kind = "end_sill";
  element.name = "Solid end sill";
  element.length = run * height;
  element.station = basin_end - element.length;
  element.profile = {{element.station, 0.0}, {basin_end, height}, {basin_end, 0.0}};
  return element;
}

Element dentated_sill(double basin_width, double y2, double basin_end) {
  Element element = element_of(dentate_row(basin_width, 0.15 * y2), basin_width, 0.2 * y2);
  const double top = 0.02 * y2;
  element.kind = "dentate";
  element.name = "Dentated end sill";
  element.length = top + 2.0 * element.height;
  element.station = basin_end - element.length;
  element.profile = {{element.station, 0.0}, {basin_end - top, element.height}, {basin_end, element.height}, {basin_end, 0.0}};
  element.remark =
      "upstream face 2H:1V, vertical downstream face, one dentate against each wall, sharp edges; take the floor between the "
      "dentates from fig. 14 of the source";
  return element;
}

double solid_sill_height(double F1, double y1, double lowest) noexcept {
  return y1 * (0.0536 * std::clamp(F1, lowest, 17.0) + 1.04);
}

const site::ToeFlow& sizing_flow(const SizingInput& input) {
  return input.flows.back();
}

const site::ToeFlow& longest_flow(const Dissipator& type, const SizingInput& input) {
  const site::ToeFlow* longest = &input.flows.front();
  double length = 0.0;
  for (const auto& flow : input.flows)
    if (const double wanted = type.length(flow, input.setting); wanted >= length) {
      longest = &flow;
      length = wanted;
    }
  return *longest;
}

double largest_freeboard(std::span<const site::ToeFlow> flows, Working* working) {
  const auto freeboard = [](const site::ToeFlow& flow) { return hydraulics::basin_freeboard({.V1 = flow.V1, .y2 = flow.y2}); };
  const auto& governing = *std::max_element(
      flows.begin(), flows.end(), [&](const site::ToeFlow& a, const site::ToeFlow& b) { return freeboard(a) < freeboard(b); });
  constexpr std::string_view deciding = "of the discharge that asks for the most";
  trace(working, hydraulics::record::basin_freeboard, {told(governing.V1, deciding), told(governing.y2, deciding)},
        {freeboard(governing)}, "freeboard of the walls");
  return freeboard(governing);
}

Structure jump_basin(const Dissipator& type, const SizingInput& input, Working* working) {
  const auto& governing = longest_flow(type, input);
  Structure structure;
  set_length(structure, type.length(governing, input.setting), input.setting);
  structure.governing_length_discharge = governing.discharge;
  structure.invert_radius = invert_radius(input.setting, sizing_flow(input).y1);
  structure.freeboard = largest_freeboard(input.flows, working);
  structure.end_width = input.setting.width;
  return structure;
}

double invert_radius(const Setting& setting, double largest_depth) {
  return setting.chute_slope >= 1.0 ? setting.choices.invert_curve * largest_depth : 0.0;
}

void set_length(Structure& structure, double required, const Setting& setting) {
  structure.required_length = required;
  structure.length = setting.length > 0.0 ? setting.length : required;
  set_level_floor(structure);
}

void set_level_floor(Structure& structure) {
  structure.floor = {{0.0, 0.0}, {structure.length, 0.0}};
}

void add_face_load(Structure& structure, std::string_view kind, std::string_view name, double area, const StepInput& V1,
                   Working* working) {
  const double force = hydraulics::stagnation_force(area, V1.value);
  trace(working, hydraulics::record::stagnation_force,
        {told(area, "height times width of the face"),
         V1.words.empty() ? told(V1.value, "of the jet, at the largest discharge") : V1},
        {force}, name);
  structure.loads.push_back({kind, name, force, dimension::force, "the entering jet meets the face whole, as when swept out"});
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
                  .source = std::string(rule.source),
                  .place = std::string(rule.place),
                  .provenance = rule.provenance};
  if (finding.status == Status::ok) finding.advice.clear();
  return finding;
}

Finding choice_note(std::string id, std::string title, double value, Dimension dimension, std::string text, const Rule& rule) {
  return limit_finding(std::move(id), std::move(title), value, LimitSense::note, value, dimension, Status::ok, std::move(text),
                       "", rule);
}

Finding width_finding(std::string_view type_id, std::string_view what, double width, double nominal, const Rule& rule) {
  return limit_finding(std::string(type_id) + "." + std::string(what) + "_width",
                       "Width of each " + std::string(what) + " over the width of its rule", width / nominal,
                       LimitSense::at_most, 1.5, dimension::none, Status::caution,
                       "Whole blocks make them wider than the published proportion where the basin is narrow.",
                       "Change the basin width, or settle the width of the blocks with the designer.", rule);
}

std::string at_discharge(double discharge) {
  return "at " + quantity_token(discharge, dimension::discharge);
}

}  // namespace quell::dissipators
