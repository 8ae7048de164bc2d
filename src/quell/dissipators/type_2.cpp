// Type II basin: chute blocks and a dentated end sill, for high spillways. No baffle piers, because of the velocity.
//
// Source: Peterka (1984), section 2, recalled; its curves are data. Rules of practice without a published source stand beside
// the published ones under ids that end in ".practice".
#include <algorithm>

#include "quell/base/curve.h"
#include "quell/dissipators/parts.h"

namespace quell::dissipators {

const Dissipator& type_2();

namespace {

constexpr double required_share = 1.05;
constexpr double largest_share = 1.2;
constexpr Rule published{"peterka_1984", "sec. 2", Provenance::memory};

constexpr Symbol y2_in[] = {{"y2", "sequent depth", dimension::length, above_zero}};
constexpr Symbol F1_y2_in[] = {{"F1", "Froude number at the toe", dimension::none, {4.0, 16.0}},
                               {"y2", "sequent depth", dimension::length, above_zero}};
constexpr Symbol blocks_in[] = {{"W", "basin width", dimension::length, above_zero},
                                {"y1", "depth at the toe", dimension::length, above_zero}};
constexpr Symbol sill_in[] = {{"W", "basin width", dimension::length, above_zero},
                              {"y2", "sequent depth", dimension::length, above_zero}};
constexpr Symbol required_out[] = {{"T", "tailwater depth required above the apron", dimension::length, above_zero}};
constexpr Symbol sweep_out[] = {{"Ts", "tailwater depth at which the jump is swept out", dimension::length, above_zero}};
constexpr Symbol length_out[] = {{"L", "length of the basin", dimension::length, above_zero}};
constexpr Symbol blocks_out[] = {
    {"h1", "height of the chute blocks", dimension::length, above_zero},
    {"N1", "number of chute blocks", dimension::none, {1.0, no_limit}},
    {"w1", "width of blocks and spaces, half a space at each wall", dimension::length, above_zero}};
constexpr Symbol sill_out[] = {{"h4", "height of the dentated sill", dimension::length, above_zero},
                               {"N4", "number of dentates, one against each wall", dimension::none, {1.0, no_limit}},
                               {"w4", "width of dentates and spaces", dimension::length, above_zero}};

double sweep_out_depth(double F1, double y2) noexcept {
  static const Curve& margin = curve("em25_type_2_sweep_out");
  return (1.0 - margin.at(F1)) * y2;
}

double basin_length(double F1, double y2) noexcept {
  static const Curve& lengths = curve("em25_type_2_length");
  return lengths.at(F1) * y2;
}

const Method tailwater_method{
    .id = "basin.tailwater.type_2",
    .title = "Tailwater that the Type II basin requires",
    .equation = "T = 1.05*y2",
    .inputs = y2_in,
    .outputs = required_out,
    .source = "peterka_1984",
    .place = "sec. 2: sequent depth with a margin of 5 %; another reading takes 5 % above sweep-out, which is less",
    .provenance = Provenance::memory,
    .accuracy = "rule of practice",
    .remarks = "Tailwater is that of the natural channel below the basin.",
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      out[0] = required_share * in[0];
      return {};
    }};

const Method sweep_out_method{
    .id = "basin.sweep_out.type_2",
    .title = "Tailwater at which a Type II basin is swept out",
    .equation = "Ts = (1 - em25_type_2_sweep_out(F1))*y2",
    .inputs = F1_y2_in,
    .outputs = sweep_out,
    .source = "peterka_1984",
    .place = "sec. 2, text to fig. 11",
    .provenance = Provenance::memory,
    .accuracy = "0.8 % of y2 at the one point that could be compared; a warning level, never a design level",
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      out[0] = sweep_out_depth(in[0], in[1]);
      return {};
    }};

const Method length_method{.id = "basin.length.type_2",
                           .title = "Length of the Type II basin",
                           .equation = "L = em25_type_2_length(F1)*y2",
                           .inputs = F1_y2_in,
                           .outputs = length_out,
                           .source = "peterka_1984",
                           .place = "sec. 2, fig. 12, middle curve",
                           .provenance = Provenance::memory,
                           .accuracy = "reading 4 %",
                           .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                             out[0] = basin_length(in[0], in[1]);
                             return {};
                           }};

const Method blocks_method{.id = "basin.chute_blocks.type_2",
                           .title = "Chute blocks of the Type II basin",
                           .equation = "h1 = y1; N1 = max(1, round(W/(2*y1))); w1 = W/(2*N1)",
                           .inputs = blocks_in,
                           .outputs = blocks_out,
                           .source = "peterka_1984",
                           .place = "sec. 2, fig. 14: height, width and spacing equal to the depth at the toe",
                           .provenance = Provenance::memory,
                           .accuracy = "width adjusted to whole blocks",
                           .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                             if (!(in[0] > 0.0 && in[1] > 0.0)) return no_answer("W and y1 must be above zero");
                             const Row row = half_space_row(in[0], in[1]);
                             out[0] = in[1];
                             out[1] = row.count;
                             out[2] = row.width;
                             return {};
                           }};

const Method sill_method{.id = "basin.dentated_sill.type_2",
                         .title = "Dentated end sill of the Type II basin",
                         .equation = "h4 = 0.2*y2; N4 = max(1, ceil((W/(0.15*y2) + 1)/2)); w4 = W/(2*N4 - 1)",
                         .inputs = sill_in,
                         .outputs = sill_out,
                         .source = "peterka_1984",
                         .place = "sec. 2, fig. 14: height 0.2 y2, dentates and spaces up to 0.15 y2",
                         .provenance = Provenance::memory,
                         .accuracy = "width adjusted to whole dentates, never wider than the rule",
                         .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                           if (!(in[0] > 0.0 && in[1] > 0.0)) return no_answer("W and y2 must be above zero");
                           const Row row = dentate_row(in[0], 0.15 * in[1]);
                           out[0] = 0.2 * in[1];
                           out[1] = row.count;
                           out[2] = row.width;
                           return {};
                         }};

constexpr Symbol shallow_in[] = {{"Ts", "tailwater depth at which the jump is swept out", dimension::length, above_zero},
                                 {"y2", "sequent depth", dimension::length, above_zero}};

const Method shallow_method{.id = "basin.tailwater.type_2_sweep_out",
                            .title = "Tailwater of the Type II basin, 5 % above sweep-out",
                            .equation = "T = max(y2, Ts + 0.05*y2)",
                            .inputs = shallow_in,
                            .outputs = required_out,
                            .source = "peterka_1984",
                            .place = "sec. 2: the other reading of the margin of 5 %, as the worked example goes about it",
                            .provenance = Provenance::memory,
                            .accuracy = "up to 5 % of the sequent depth below the usual reading",
                            .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                              out[0] = std::max(in[1], in[0] + 0.05 * in[1]);
                              return {};
                            }};

constexpr Limit limits[] = {
    {.id = "type_2.froude_lowest",
     .title = "Inflow Froude number at every discharge",
     .measure = Measure::froude_number,
     .sense = LimitSense::at_least,
     .limit = 4.5,
     .otherwise = Status::fails,
     .advice = "Below 4.5 the jump oscillates: compare Type IV, a narrower chute or a lower apron.",
     .source = "peterka_1984",
     .place = "sec. 2",
     .provenance = Provenance::memory},
    {.id = "type_2.froude_highest",
     .title = "Highest inflow Froude number",
     .measure = Measure::froude_number,
     .sense = LimitSense::at_most,
     .limit = 14.0,
     .otherwise = Status::caution,
     .advice = "Check that the governing discharge lies inside the range; beyond the curves their last value is held.",
     .source = "hec14_2006",
     .place = "screening table of 1975, as reproduced",
     .provenance = Provenance::seen,
     .text = "Small discharges run above the tested range and do not govern the size."},
    {.id = "type_2.unit_discharge",
     .title = "Unit discharge without a physical model",
     .measure = Measure::unit_discharge,
     .sense = LimitSense::at_most,
     .limit = 46.4515,
     .otherwise = Status::caution,
     .advice = "A physical model is required: the unit discharge is above the tested range ({{46.4515|12,0,-6|3}}).",
     .source = "peterka_1984",
     .place = "sec. 2",
     .provenance = Provenance::memory,
     .of_tests = true},
    {.id = "type_2.fall",
     .title = "Fall from crest to apron without a physical model",
     .measure = Measure::fall,
     .sense = LimitSense::at_most,
     .limit = 60.96,
     .otherwise = Status::caution,
     .advice = "A physical model is required: the fall is above the tested range ({{60.96|6,0,0|3}}).",
     .source = "peterka_1984",
     .place = "sec. 2",
     .provenance = Provenance::memory,
     .of_tests = true},
    // What practitioners state without a published source.
    {.id = "type_2.unit_discharge.practice",
     .title = "Unit discharge of usual practice",
     .measure = Measure::unit_discharge,
     .sense = LimitSense::at_most,
     .limit = 46.0,
     .otherwise = Status::caution,
     .advice = "A physical model is required beyond this unit discharge.",
     .source = "practice",
     .place = {},
     .provenance = Provenance::common_practice,
     .of_tests = true},
    {.id = "type_2.upstream_head.practice",
     .title = "Upstream head of usual practice",
     .measure = Measure::head,
     .sense = LimitSense::at_most,
     .limit = 61.0,
     .otherwise = Status::caution,
     .advice = "A physical model is required beyond this head.",
     .source = "practice",
     .place = {},
     .provenance = Provenance::common_practice,
     .of_tests = true,
     .text = "Head of the reservoir above the apron."},
    {.id = "type_2.chute_slope.practice",
     .title = "Chute of 31 degrees or steeper has no effect on the jump",
     .measure = Measure::chute_slope,
     .sense = LimitSense::at_least,
     .limit = 0.600860619,  // tan 31 degrees
     .otherwise = Status::caution,
     .advice = "On a flatter chute the uniformity of the inflow must be shown; steepen it before the basin.",
     .source = "practice",
     .place = {},
     .provenance = Provenance::common_practice},
    {.id = "type_2.chute_slope_steep.practice",
     .title = "Chute of 63 degrees or flatter has no effect on the jump",
     .measure = Measure::chute_slope,
     .sense = LimitSense::at_most,
     .limit = 1.962610506,  // tan 63 degrees
     .otherwise = Status::caution,
     .advice = "On a steeper chute the uniformity of the inflow must be shown.",
     .source = "practice",
     .place = {},
     .provenance = Provenance::common_practice},
};

class TypeTwo final : public Dissipator {
 public:
  const TypeRecord& record() const override {
    static constexpr std::string_view failures[] = {
        "stones drawn in over the sill by the return current, which grind the floor",
        "cavitation at the dentates and block edges at high velocity", "swept out when the river bed has degraded"};
    static const Method* const methods[] = {&tailwater_method, &sweep_out_method, &length_method,
                                            &blocks_method,    &sill_method,      &shallow_method};
    static constexpr std::string_view approach[] = {"even flow over the whole width; a flat chute steepened before the basin",
                                                    "no baffle piers: the velocity forbids them"};
    static const TypeRecord record{
        .id = "type_2",
        .name = "Type II basin",
        .summary =
            "Chute blocks and a dentated end sill on a horizontal apron, without baffle piers: "
            "for high spillways and large unit discharges.",
        .source = "peterka_1984",
        .place = "sec. 2",
        .provenance = Provenance::memory,
        .limits = limits,
        .approach = approach,
        .failure_modes = failures,
        .model = "a fall above {{60.96|6,0,0|3}}, more than {{46.4515|12,0,-6|3}}, uneven or converging inflow, any major dam",
        .methods = methods};
    return record;
  }

  TailwaterNeed tailwater_need(const site::ToeFlow& flow, const Setting& setting) const noexcept override {
    const double swept = sweep_out_depth(flow.F1, flow.y2);
    const double required = setting.choices.type_2_full ? required_share * flow.y2 : std::max(flow.y2, swept + 0.05 * flow.y2);
    return {swept, required, required_share * flow.y2, largest_share * flow.y2};
  }

  double length(const site::ToeFlow& flow, const Setting&) const noexcept override { return basin_length(flow.F1, flow.y2); }

  Structure size(const SizingInput& input, Working* working) const override {
    const auto& flow = sizing_flow(input);
    const double width = input.setting.width;
    Structure structure = jump_basin(*this, input, working);
    const auto& longest = longest_flow(*this, input);
    trace(working, length_method, {told(longest.F1, of_longest), told(longest.y2, of_longest)}, {structure.required_length},
          "length of the basin");
    const auto blocks = chute_blocks(half_space_row(width, flow.y1), width, flow.y1, input.setting.chute_slope);
    const auto sill = dentated_sill(width, flow.y2, structure.length);
    structure.elements = {blocks, sill};
    structure.end_sill_height = sill.height;
    trace(working, blocks_method, {given(width, "basin.width"), flow.y1},
          {blocks.height, static_cast<double>(blocks.count), blocks.width}, "chute blocks");
    trace(working, sill_method, {given(width, "basin.width"), flow.y2},
          {sill.height, static_cast<double>(sill.count), sill.width}, "dentated end sill");
    add_face_load(structure, "dentate", "Force on one dentate", sill.width * sill.height, flow.V1, working);
    return structure;
  }

  Findings findings(const SizingInput& input, const Structure& structure) const override {
    const auto& flow = sizing_flow(input);
    const bool full = input.setting.choices.type_2_full;
    return {
        worked(blocks_method, width_finding("type_2", "chute_block", structure.elements[0].width, flow.y1, published)),
        worked(full ? tailwater_method : shallow_method,
               choice_note(
                   "type_2.tailwater_rule", "Tailwater required over the sequent depth at the largest discharge",
                   tailwater_need(flow, input.setting).required / flow.y2, dimension::none,
                   full ? "The margin of 5 % is taken on the sequent depth; reading it as 5 % above sweep-out would ask for "
                          "less."
                        : "The margin of 5 % is taken above the sweep-out depth, never below the sequent depth; the usual "
                          "reading asks for 1.05 sequent depths.",
                   published)),
        worked(length_method,
               choice_note("type_2.length.practice", "Length over sequent depth against the usual 4.4",
                           basin_length(flow.F1, flow.y2) / flow.y2, dimension::none,
                           "Practitioners take about 4.4 sequent depths; the published curve is used here.", common_practice))};
  }

  void trace_tailwater_need(const site::ToeFlow& flow, const Setting& setting, Working& working) const override {
    const auto need = tailwater_need(flow, setting);
    working.add(sweep_out_method, {flow.F1, flow.y2}, {need.sweep_out}, "tailwater at sweep-out");
    if (setting.choices.type_2_full)
      working.add(tailwater_method, {flow.y2}, {need.required}, "tailwater that the type requires");
    else
      working.add(shallow_method, {need.sweep_out, flow.y2}, {need.required}, "tailwater that the type requires");
  }
};

}  // namespace

const Dissipator& type_2() {
  static const TypeTwo type;
  return type;
}

}  // namespace quell::dissipators
