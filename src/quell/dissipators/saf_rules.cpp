#include "quell/dissipators/saf_rules.h"

#include <algorithm>
#include <cmath>

namespace quell::dissipators::saf_rules {
namespace {

constexpr double reserve_share = 0.05;
constexpr double sill_share = 0.07;
constexpr Rule published{"blaisdell_1959", "design rules, as in HEC-14", Provenance::memory};

constexpr Symbol F1_y2_in[] = {{"F1", "Froude number at the toe", dimension::none, {1.7, 17.0}},
                               {"y2", "sequent depth", dimension::length, above_zero}};
constexpr Symbol published_in[] = {{"Tp", "published tailwater depth", dimension::length, above_zero},
                                   {"y2", "sequent depth", dimension::length, above_zero}};
constexpr Symbol blocks_in[] = {{"W", "basin width", dimension::length, above_zero},
                                {"y1", "depth at the toe", dimension::length, above_zero}};
constexpr Symbol y2_in[] = {{"y2", "sequent depth", dimension::length, above_zero}};
constexpr Symbol tailwater_out[] = {{"C", "tailwater over the sequent depth", dimension::none, above_zero},
                                    {"T", "tailwater depth above the floor", dimension::length, above_zero}};
constexpr Symbol required_out[] = {{"T", "tailwater depth required above the floor", dimension::length, above_zero}};
constexpr Symbol length_out[] = {{"L", "length of the basin", dimension::length, above_zero}};
constexpr Symbol blocks_out[] = {
    {"N1", "number of blocks, the two halves at the walls counted as one", dimension::none, {1.0, no_limit}},
    {"w1", "width of blocks and spaces", dimension::length, above_zero}};
constexpr Symbol sill_out[] = {{"h4", "height of the end sill", dimension::length, above_zero}};
constexpr Symbol wall_out[] = {{"FB", "freeboard of the walls above the tailwater", dimension::length, above_zero}};

const Method tailwater_method{.id = "basin.tailwater.saf",
                              .title = "Published tailwater of the SAF basin",
                              .equation = "C = max(1.1 - F1^2/120, min(0.85, 1 - min(F1, 17)^2/800)); T = C*y2",
                              .inputs = F1_y2_in,
                              .outputs = tailwater_out,
                              .source = "blaisdell_1959",
                              .place = "three branches that meet at F1 = 5.5 and 11 within 0.3 %; the larger at the joints",
                              .provenance = Provenance::memory,
                              .accuracy = "a fit to tests, with little reserve",
                              .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                out[0] = tailwater_factor(in[0]);
                                out[1] = out[0] * in[1];
                                return {};
                              }};

const Method reserve_method{.id = "basin.tailwater.saf_reserve",
                            .title = "Tailwater of the SAF basin with a reserve",
                            .equation = "T = max(Tp, 0.85*y2) + 0.05*y2",
                            .inputs = published_in,
                            .outputs = required_out,
                            .source = "practice",
                            .place = "5 % of the sequent depth on the published depth, which is not taken below 0.85 of it",
                            .provenance = Provenance::common_practice,
                            .accuracy = "rule of practice",
                            .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                              out[0] = std::max(in[0], 0.85 * in[1]) + reserve_share * in[1];
                              return {};
                            }};

const Method length_method{.id = "basin.length.saf",
                           .title = "Length of the SAF basin",
                           .equation = "L = 4.5*y2/F1^0.76",
                           .inputs = F1_y2_in,
                           .outputs = length_out,
                           .source = "blaisdell_1959",
                           .place = "4.5 y2/F^0.38 with F = F1^2",
                           .provenance = Provenance::memory,
                           .accuracy = "a fit to tests",
                           .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                             out[0] = basin_length(in[0], in[1]);
                             return {};
                           }};

const Method blocks_method{.id = "basin.blocks.saf",
                           .title = "Chute and floor blocks of the SAF basin",
                           .equation = "N1 = max(1, floor(W/(1.5*y1))); w1 = W/(2*N1)",
                           .inputs = blocks_in,
                           .outputs = blocks_out,
                           .source = "blaisdell_1959",
                           .place =
                               "width and spacing about 0.75 of the depth; HEC-14 rounds, the lower whole number keeps the "
                               "clearance of 3/8 of the depth at the walls",
                           .provenance = Provenance::memory,
                           .accuracy = "width adjusted to whole blocks; half of the width is blocked, within 40 to 55 %",
                           .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                             if (!(in[0] > 0.0 && in[1] > 0.0)) return no_answer("W and y1 must be above zero");
                             const Row row = chute_row(in[0], in[1]);
                             out[0] = row.count;
                             out[1] = row.width;
                             return {};
                           }};

const Method sill_method{.id = "basin.end_sill.saf",
                         .title = "End sill of the SAF basin",
                         .equation = "h4 = 0.07*y2",
                         .inputs = y2_in,
                         .outputs = sill_out,
                         .source = "blaisdell_1959",
                         .place = "design rules",
                         .provenance = Provenance::memory,
                         .accuracy = "rule of the tests",
                         .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                           out[0] = sill_share * in[0];
                           return {};
                         }};

const Method wall_method{.id = "wall.freeboard.saf",
                         .title = "Walls of the SAF basin above the highest tailwater",
                         .equation = "FB = y2/3",
                         .inputs = y2_in,
                         .outputs = wall_out,
                         .source = "blaisdell_1959",
                         .place = "design rules",
                         .provenance = Provenance::memory,
                         .accuracy = "least value",
                         .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                           out[0] = in[0] / 3.0;
                           return {};
                         }};

/// Whole chute blocks between the halves at the walls; none where there is one block only.
Element whole_chute_blocks(const Row& row, double width, double y1, double slope) {
  const Row inner{row.count - 1, row.width, row.count > 2 ? row.width : 0.0, row.count > 1 ? 1.5 * row.width : 0.0};
  return chute_blocks(inner, width, y1, slope);
}

Element half_chute_blocks(const Row& row, double width, double y1, double slope) {
  Element element = chute_blocks({2, row.width / 2.0, width - row.width, 0.0}, width, y1, slope);
  element.name = "Half chute blocks at the walls";
  element.remark = "half a block against each wall";
  return element;
}

Element floor_blocks(int count, double width, double y1, double face) {
  const double block = width / (2.0 * count);
  Element element = baffle_piers({count, block, block, block / 2.0}, width, y1, face);
  element.kind = "floor_block";
  element.name = "Floor blocks";
  element.remark = "opposite the openings between the chute blocks; shape along the flow indicative";
  return element;
}

}  // namespace

double tailwater_factor(double F1) noexcept {
  const double held = std::min(F1, 17.0);
  return std::max(1.1 - F1 * F1 / 120.0, std::min(0.85, 1.0 - held * held / 800.0));
}

double required_depth(double F1, double y2, const site::BasinChoices& choices) noexcept {
  const double factor = tailwater_factor(F1);
  return choices.saf_reserve ? std::max(factor, 0.85) * y2 + reserve_share * y2 : factor * y2;
}

double basin_length(double F1, double y2) noexcept {
  return 4.5 * y2 / std::pow(F1, 0.76);
}

Row chute_row(double width, double y1) {
  const int count = std::max(1, static_cast<int>(std::floor(width / (1.5 * y1) + 1e-9)));
  const double block = width / (2.0 * count);
  return {count, block, block, 0.0};
}

void add_elements(Structure& structure, const SizingInput& input, double (*width_at)(double, const Structure&, double),
                  Working* working) {
  const auto& flow = sizing_flow(input);
  const double width = input.setting.width;
  const double slope = input.setting.chute_slope;
  const Row row = chute_row(width, flow.y1);
  if (row.count > 1) structure.elements.push_back(whole_chute_blocks(row, width, flow.y1, slope));
  structure.elements.push_back(half_chute_blocks(row, width, flow.y1, slope));
  const double face = structure.required_length / 3.0;
  structure.elements.push_back(floor_blocks(row.count, width_at(face, structure, width), flow.y1, face));
  structure.end_sill_height = sill_share * flow.y2;
  structure.elements.push_back(
      solid_sill(width_at(structure.length, structure, width), structure.end_sill_height, 1.0, structure.length));
  structure.elements.back().remark = "upstream face indicative; cutoff wall below it";
  trace(working, blocks_method, {given(width, "basin.width"), flow.y1}, {static_cast<double>(row.count), row.width},
        "chute and floor blocks");
  trace(working, sill_method, {flow.y2}, {structure.end_sill_height}, "end sill");
  const auto& blocks = structure.elements[structure.elements.size() - 2];
  add_face_load(structure, "floor_block", "Force on one floor block", blocks.width * blocks.height, flow.V1, working);
}

double wall_freeboard(std::span<const site::ToeFlow> flows, Working* working) {
  const double depth = largest(flows, &site::ToeFlow::y2).value;
  trace(working, wall_method, {told(depth, "largest over the discharges")}, {depth / 3.0},
        "freeboard of the walls above the tailwater");
  return depth / 3.0;
}

Findings findings(std::string_view type_id, const SizingInput& input, const Structure& structure) {
  const std::string id(type_id);
  const auto& flow = sizing_flow(input);
  const bool reserve = input.setting.choices.saf_reserve;
  const auto& blocks = structure.elements[structure.elements.size() - 2];
  return {
      keyed("basin.choices.saf_tailwater",
            worked(reserve ? reserve_method : tailwater_method,
                   choice_note(
                       id + ".tailwater_rule", "Tailwater required over the sequent depth at the largest discharge",
                       required_depth(flow.F1, flow.y2, input.setting.choices) / flow.y2, dimension::none,
                       reserve ? "A reserve of 5 % of the sequent depth stands on the published tailwater, which has little."
                               : "The published tailwater is used without a reserve: the blocks do the work, and little "
                                 "tailwater may be lost.",
                       published))),
      worked(blocks_method,
             limit_finding(id + ".wall_clearance", "Clearance of floor blocks to the wall over the depth at the toe",
                           blocks.wall_clearance / flow.y1, LimitSense::at_least, 0.375, dimension::none, Status::caution,
                           "Narrow basins leave too little room beside the blocks.", "Widen the basin, or leave a block out.",
                           published)),
      worked(blocks_method,
             width_finding(type_id, "block", blocks.width, 0.75 * flow.y1 * blocks.across / input.setting.width, published))};
}

std::span<const Method* const> methods() {
  static const Method* const list[] = {&tailwater_method, &reserve_method, &length_method,
                                       &blocks_method,    &sill_method,    &wall_method};
  return list;
}
const Method& tailwater_record() {
  return tailwater_method;
}
const Method& reserve_record() {
  return reserve_method;
}
const Method& length_record() {
  return length_method;
}

}  // namespace quell::dissipators::saf_rules
