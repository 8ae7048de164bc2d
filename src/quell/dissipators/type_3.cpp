// Type III basin: chute blocks, one row of baffle piers and a solid end sill; the shortest of the three, for smaller
// structures.
//
// Source: Peterka (1984), section 3, recalled; pier and sill heights by the fits of Hydraulic Engineering Circular 14.
#include <algorithm>

#include "quell/base/curve.h"
#include "quell/dissipators/parts.h"
#include "quell/hydraulics/basin_rules.h"

namespace quell::dissipators {

const Dissipator& type_3();

namespace {

constexpr double sweep_out_share = 0.83;  ///< margin to sweep-out of 15 to 18 %: a warning level only
constexpr double best_share = 1.05;
constexpr double largest_share = 1.2;
constexpr double least_block_height = 0.2032;  ///< 8 in
constexpr Rule published{"peterka_1984", "sec. 3", Provenance::memory};

constexpr Symbol y2_in[] = {{"y2", "sequent depth", dimension::length, above_zero}};
constexpr Symbol F1_y2_in[] = {{"F1", "Froude number at the toe", dimension::none, {4.0, 16.0}},
                               {"y2", "sequent depth", dimension::length, above_zero}};
constexpr Symbol blocks_in[] = {{"W", "basin width", dimension::length, above_zero},
                                {"y1", "depth at the toe", dimension::length, above_zero}};
constexpr Symbol piers_in[] = {{"W", "basin width", dimension::length, above_zero},
                               {"F1", "Froude number at the toe", dimension::none, {4.0, 17.0}},
                               {"y1", "depth at the toe", dimension::length, above_zero}};
constexpr Symbol sill_in[] = {{"F1", "Froude number at the toe", dimension::none, {4.0, 17.0}},
                              {"y1", "depth at the toe", dimension::length, above_zero}};
constexpr Symbol required_out[] = {{"T", "tailwater depth required above the apron", dimension::length, above_zero}};
constexpr Symbol length_out[] = {{"L", "length of the basin", dimension::length, above_zero}};
constexpr Symbol blocks_out[] = {
    {"h1", "height of the chute blocks", dimension::length, above_zero},
    {"N1", "number of chute blocks", dimension::none, {1.0, no_limit}},
    {"w1", "width of blocks and spaces, half a space at each wall", dimension::length, above_zero}};
constexpr Symbol piers_out[] = {{"h3", "height of the baffle piers", dimension::length, above_zero},
                                {"N3", "number of baffle piers", dimension::none, {1.0, no_limit}},
                                {"w3", "width of piers and spaces, half a space at each wall", dimension::length, above_zero}};
constexpr Symbol sill_out[] = {{"h4", "height of the end sill", dimension::length, above_zero}};

double basin_length(double F1, double y2) noexcept {
  static const Curve& lengths = curve("em25_type_3_length");
  return lengths.at(F1) * y2;
}

// Outside the range of the fits the Froude number is held at their ends; the limits of the type say so.
double pier_height(double F1, double y1) noexcept {
  return y1 * (0.168 * std::clamp(F1, 4.0, 17.0) + 0.58);
}
double block_height(double y1) noexcept {
  return std::max(y1, least_block_height);
}

const Method tailwater_method{.id = "basin.tailwater.type_3",
                              .title = "Tailwater that the Type III basin requires",
                              .equation = "T = y2",
                              .inputs = y2_in,
                              .outputs = required_out,
                              .source = "peterka_1984",
                              .place = "sec. 3: full sequent depth; the reserve of 15 to 18 % to sweep-out must not be spent",
                              .provenance = Provenance::memory,
                              .accuracy = "rule of practice",
                              .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                out[0] = in[0];
                                return {};
                              }};

const Method length_method{.id = "basin.length.type_3",
                           .title = "Length of the Type III basin",
                           .equation = "L = em25_type_3_length(F1)*y2",
                           .inputs = F1_y2_in,
                           .outputs = length_out,
                           .source = "peterka_1984",
                           .place = "sec. 3, fig. 12, lower curve",
                           .provenance = Provenance::memory,
                           .accuracy = "reading 4 %",
                           .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                             out[0] = basin_length(in[0], in[1]);
                             return {};
                           }};

const Method blocks_method{.id = "basin.chute_blocks.type_3",
                           .title = "Chute blocks of the Type III basin",
                           .equation = "h1 = max(y1, 0.2032); N1 = max(1, round(W/(2*h1))); w1 = W/(2*N1)",
                           .inputs = blocks_in,
                           .outputs = blocks_out,
                           .source = "peterka_1984",
                           .place = "sec. 3: height, width and spacing equal to the depth at the toe, at least 8 in high",
                           .provenance = Provenance::memory,
                           .accuracy = "width adjusted to whole blocks",
                           .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                             if (!(in[0] > 0.0 && in[1] > 0.0)) return no_answer("W and y1 must be above zero");
                             out[0] = block_height(in[1]);
                             const Row row = half_space_row(in[0], out[0]);
                             out[1] = row.count;
                             out[2] = row.width;
                             return {};
                           }};

const Method piers_method{
    .id = "basin.baffle_piers.type_3",
    .title = "Baffle piers of the Type III basin",
    .equation = "h3 = y1*(0.168*min(17, max(4, F1)) + 0.58); N3 = max(1, round(W/(1.5*h3))); w3 = W/(2*N3)",
    .inputs = piers_in,
    .outputs = piers_out,
    .source = "hec14_2006",
    .place = "ch. 8, fit of the curve of Engineering Monograph 25, fig. 17; width and spacing 0.75 of the height",
    .provenance = Provenance::memory,
    .accuracy = "agrees with the worked example of the monograph to 0.1 %",
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      if (!(in[0] > 0.0 && in[2] > 0.0)) return no_answer("W and y1 must be above zero");
      out[0] = pier_height(in[1], in[2]);
      const Row row = half_space_row(in[0], 0.75 * out[0]);
      out[1] = row.count;
      out[2] = row.width;
      return {};
    }};

const Method sill_method{.id = "basin.end_sill.type_3",
                         .title = "Solid end sill of the Type III basin",
                         .equation = "h4 = y1*(0.0536*min(17, max(4, F1)) + 1.04)",
                         .inputs = sill_in,
                         .outputs = sill_out,
                         .source = "hec14_2006",
                         .place = "ch. 8, fit of the curve of Engineering Monograph 25, fig. 17",
                         .provenance = Provenance::memory,
                         .accuracy = "3 % above the value read in the worked example of the monograph",
                         .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                           out[0] = solid_sill_height(in[0], in[1], 4.0);
                           return {};
                         }};

constexpr Limit limits[] = {
    {.id = "type_3.froude_lowest",
     .title = "Inflow Froude number at every discharge",
     .measure = Measure::froude_number,
     .sense = LimitSense::at_least,
     .limit = 4.5,
     .otherwise = Status::fails,
     .advice = "Below 4.5 the jump oscillates: compare Type IV, a narrower chute or a lower apron.",
     .source = "peterka_1984",
     .place = "sec. 3",
     .provenance = Provenance::memory},
    {.id = "type_3.froude_highest",
     .title = "Highest inflow Froude number",
     .measure = Measure::froude_number,
     .sense = LimitSense::at_most,
     .limit = 17.0,
     .otherwise = Status::caution,
     .advice = "Check that the governing discharge lies inside the range; beyond the curves their last value is held.",
     .source = "peterka_1984",
     .place = "sec. 3",
     .provenance = Provenance::memory,
     .text = "Small discharges run above the tested range and do not govern the size."},
    {.id = "type_3.unit_discharge",
     .title = "Unit discharge",
     .measure = Measure::unit_discharge,
     .sense = LimitSense::at_most,
     .limit = 18.5806,
     .otherwise = Status::fails,
     .advice = "Above {{18.5806|12,0,-6|3}} use Type II, a wider basin, or a physical model.",
     .source = "peterka_1984",
     .place = "sec. 3",
     .provenance = Provenance::memory,
     .of_tests = true},
    {.id = "type_3.velocity",
     .title = "Velocity at the toe, for the piers",
     .measure = Measure::velocity,
     .sense = LimitSense::at_most,
     .limit = 18.288,
     .otherwise = Status::fails,
     .advice = "Above {{18.288|6,0,-6|3}} baffle piers cavitate: use Type II, or a physical model with armoured piers.",
     .source = "peterka_1984",
     .place = "sec. 3",
     .provenance = Provenance::memory,
     .of_tests = true},
    {.id = "type_3.velocity_usual",
     .title = "Velocity at the toe without a check of cavitation",
     .measure = Measure::velocity,
     .sense = LimitSense::at_most,
     .limit = 15.24,
     .otherwise = Status::caution,
     .advice = "Between {{15.24|6,0,-6|3}} and {{18.288|6,0,-6|3}} check the cavitation of the piers and armour them, or use "
               "Type II.",
     .source = "peterka_1984",
     .place = "sec. 3",
     .provenance = Provenance::memory},
};

class TypeThree final : public Dissipator {
 public:
  const TypeRecord& record() const override {
    static constexpr std::string_view approach[] = {"even flow over the whole width; the piers right some unevenness",
                                                    "no boulders, ice or heavy debris"};
    static constexpr std::string_view failures[] = {"cavitation and wear of the piers above about {{15.24|6,0,-6|3}}",
                                                    "piers broken by boulders, ice or heavy debris",
                                                    "scour and wear where the reserve against sweep-out has been spent"};
    static const Method* const methods[] = {&tailwater_method, &length_method, &blocks_method, &piers_method, &sill_method};
    static const TypeRecord record{
        .id = "type_3",
        .name = "Type III basin",
        .summary =
            "Chute blocks, one row of baffle piers and a solid end sill: the shortest jump basin, "
            "for moderate velocities and unit discharges.",
        .source = "peterka_1984",
        .place = "sec. 3",
        .provenance = Provenance::memory,
        .limits = limits,
        .approach = approach,
        .failure_modes = failures,
        .model = "more than {{18.5806|12,0,-6|3}} or {{18.288|6,0,-6|3}}, uneven inflow, blocks other than those of the source",
        .methods = methods};
    return record;
  }

  TailwaterNeed tailwater_need(const site::ToeFlow& flow, const Setting&) const noexcept override {
    return {sweep_out_share * flow.y2, flow.y2, best_share * flow.y2, largest_share * flow.y2};
  }

  double length(const site::ToeFlow& flow, const Setting&) const noexcept override { return basin_length(flow.F1, flow.y2); }

  Structure size(const SizingInput& input, Working* working) const override {
    const auto& flow = sizing_flow(input);
    const double width = input.setting.width;
    Structure structure = jump_basin(*this, input, working);
    const double height = block_height(flow.y1);
    const double pier = pier_height(flow.F1, flow.y1);
    structure.end_sill_height = solid_sill_height(flow.F1, flow.y1, 4.0);
    structure.elements = {chute_blocks(half_space_row(width, height), width, height, input.setting.chute_slope),
                          baffle_piers(half_space_row(width, 0.75 * pier), width, pier, 0.8 * flow.y2),
                          solid_sill(width, structure.end_sill_height, 2.0, structure.length)};
    structure.elements[2].remark = "upstream face 2H:1V";
    const auto& piers = structure.elements[1];
    const double area = piers.height * piers.width;
    structure.loads.push_back({"baffle_pier", "Force on one baffle pier",
                               hydraulics::baffle_pier_force({.A = area, .y1 = flow.y1, .V1 = flow.V1}), dimension::force,
                               "on the plane upstream face, suction behind left out"});
    trace_elements(input, structure, working);
    add_face_load(structure, "end_sill", "Force on the end sill, whole width", width * structure.end_sill_height, flow.V1,
                  working);
    return structure;
  }

  Findings findings(const SizingInput&, const Structure& structure) const override {
    const auto& piers = structure.elements[1];
    const double room = structure.elements[2].station - (piers.station + piers.length);
    return {worked(length_method,
                   limit_finding("type_3.pier_room", "Clear floor between piers and end sill", room, LimitSense::at_least, 0.0,
                                 dimension::length, Status::fails, "Piers and end sill must not run into each other.",
                                 "Lengthen the basin or settle the position of the piers in a physical model.", published)),
            worked(piers_method, width_finding("type_3", "pier", piers.width, 0.75 * piers.height, published)),
            worked(hydraulics::record::baffle_pier_force,
                   choice_note("type_3.pier_force", "Design force on one baffle pier", structure.loads[0].value,
                               dimension::force, "Force on the plane upstream face, for the structural design.", published))};
  }

  void trace_tailwater_need(const site::ToeFlow& flow, const Setting&, Working& working) const override {
    working.add(tailwater_method, {flow.y2}, {flow.y2}, "tailwater that the type requires");
  }

 private:
  void trace_elements(const SizingInput& input, const Structure& structure, Working* working) const {
    if (working == nullptr) return;
    const auto& flow = sizing_flow(input);
    const auto& longest = longest_flow(*this, input);
    const auto& blocks = structure.elements[0];
    const auto& piers = structure.elements[1];
    const double width = input.setting.width;
    working->add(length_method, {told(longest.F1, of_longest), told(longest.y2, of_longest)}, {structure.required_length},
                 "length of the basin");
    working->add(blocks_method, {given(width, "basin.width"), flow.y1},
                 {blocks.height, static_cast<double>(blocks.count), blocks.width}, "chute blocks");
    working->add(piers_method, {given(width, "basin.width"), flow.F1, flow.y1},
                 {piers.height, static_cast<double>(piers.count), piers.width}, "baffle piers");
    working->add(sill_method, {flow.F1, flow.y1}, {structure.end_sill_height}, "end sill");
    working->add(hydraulics::record::baffle_pier_force,
                 {told(piers.height * piers.width, "height times width of the face"), flow.y1, flow.V1},
                 {structure.loads[0].value}, "force on one pier");
  }
};

}  // namespace

const Dissipator& type_3() {
  static const TypeThree type;
  return type;
}

}  // namespace quell::dissipators
