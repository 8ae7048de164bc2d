// Type II basin: chute blocks and a dentated end sill, for high spillways. No baffle piers, because of the velocity.
//
// Source: Peterka (1984), section 2, recalled; its curves are data. Rules of practice without a published source stand beside
// the published ones under ids that end in ".practice".
#include "quell/base/curve.h"
#include "quell/base/quantity_text.h"
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

Element dentated_sill(double width, double y2, double basin_end) {
  const Row row = dentate_row(width, 0.15 * y2);
  const double height = 0.2 * y2;
  const double top = 0.02 * y2;
  const double start = basin_end - top - 2.0 * height;
  return {.kind = "dentate",
          .name = "Dentated end sill",
          .count = row.count,
          .height = height,
          .width = row.width,
          .spacing = row.spacing,
          .wall_clearance = row.clearance,
          .length = basin_end - start,
          .station = start,
          .profile = {{start, 0.0}, {basin_end - top, height}, {basin_end, height}, {basin_end, 0.0}},
          .remark =
              "upstream face 2H:1V, vertical downstream face, one dentate against each wall, sharp edges; take the floor "
              "between the dentates from fig. 14 of the source"};
}

class TypeTwo final : public Dissipator {
 public:
  const TypeRecord& record() const override {
    static constexpr std::string_view failures[] = {
        "stones drawn in over the sill by the return current, which grind the floor",
        "cavitation at the dentates and block edges at high velocity", "swept out when the river bed has degraded"};
    static const Method* const methods[] = {&tailwater_method, &sweep_out_method, &length_method, &blocks_method, &sill_method};
    static const TypeRecord record{.id = "type_2",
                                   .name = "Type II basin",
                                   .summary =
                                       "Chute blocks and a dentated end sill on a horizontal apron, without baffle piers: "
                                       "for high spillways and large unit discharges.",
                                   .source = "peterka_1984",
                                   .place = "sec. 2",
                                   .provenance = Provenance::memory,
                                   .failure_modes = failures,
                                   .methods = methods};
    return record;
  }

  TailwaterNeed tailwater_need(const site::ToeFlow& flow) const noexcept override {
    return {sweep_out_depth(flow.F1, flow.y2), required_share * flow.y2, required_share * flow.y2, largest_share * flow.y2};
  }

  double length(const site::ToeFlow& flow) const noexcept override { return basin_length(flow.F1, flow.y2); }

  Findings limits(const SizingInput& input) const override {
    Findings findings = published_limits(input);
    for (auto& finding : practice_limits(input)) findings.push_back(std::move(finding));
    return findings;
  }

  Structure size(const SizingInput& input, Working* working) const override {
    const auto& flow = sizing_flow(input);
    Structure structure = common_structure(*this, input, length_method, working);
    structure.elements = {chute_blocks(input.width, flow.y1, flow.y1, input.chute_slope),
                          dentated_sill(input.width, flow.y2, structure.length)};
    const auto& blocks = structure.elements[0];
    const auto& sill = structure.elements[1];
    structure.end_sill_height = sill.height;
    trace(working, blocks_method, {input.width, flow.y1}, {blocks.height, static_cast<double>(blocks.count), blocks.width},
          "chute blocks");
    trace(working, sill_method, {input.width, flow.y2}, {sill.height, static_cast<double>(sill.count), sill.width},
          "dentated end sill");
    structure.findings.push_back(
        limit_finding("type_2.chute_block_width", "Width of chute blocks over the depth at the toe", blocks.width / flow.y1,
                      LimitSense::at_most, 1.5, dimension::none, Status::caution,
                      "Whole blocks make the blocks wider than the published proportion.",
                      "Change the basin width, or settle the block width with the designer.", published));
    return structure;
  }

  void trace_tailwater_need(const site::ToeFlow& flow, Working& working) const override {
    working.add(tailwater_method, {flow.y2}, {tailwater_need(flow).required}, "tailwater that the type requires");
    working.add(sweep_out_method, {flow.F1, flow.y2}, {tailwater_need(flow).sweep_out}, "tailwater at sweep-out");
  }

 private:
  static Findings published_limits(const SizingInput& input) {
    const auto unit = largest(input.flows, &site::ToeFlow::unit_discharge);
    Findings findings = froude_limits("type_2", input, published, 14.0,
                                      {"hec14_2006", "screening table of 1975, as reproduced", Provenance::seen});
    findings.push_back(tested_limit(limit_finding(
        "type_2.unit_discharge", "Unit discharge without a physical model", unit.value, LimitSense::at_most, 46.4515,
        dimension::unit_discharge, Status::caution, "The largest unit discharge stands " + at_discharge(unit.discharge) + ".",
        "A physical model is required: the unit discharge is above the tested range (500 ft3/s per ft).", published)));
    findings.push_back(tested_limit(
        limit_finding("type_2.fall", "Fall from crest to apron without a physical model", input.fall, LimitSense::at_most,
                      60.96, dimension::length, Status::caution, "The fall is measured from the crest to the apron.",
                      "A physical model is required: the fall is above the tested range (200 ft).", published)));
    return findings;
  }

  /// What practitioners state without a published source.
  static Findings practice_limits(const SizingInput& input) {
    const auto& flow = sizing_flow(input);
    const auto unit = largest(input.flows, &site::ToeFlow::unit_discharge);
    const bool slope_usual = input.chute_slope >= 0.6 && input.chute_slope <= 1.97;  // 31 and 63 degrees
    return {
        tested_limit(limit_finding(
            "type_2.unit_discharge.practice", "Unit discharge of usual practice", unit.value, LimitSense::at_most, 46.0,
            dimension::unit_discharge, Status::caution,
            "The largest unit discharge stands " + at_discharge(unit.discharge) + ".",
            "A physical model is required beyond " + quantity_token(46.0, dimension::unit_discharge) + ".", common_practice)),
        tested_limit(limit_finding(
            "type_2.upstream_head.practice", "Upstream head of usual practice", input.upstream_head, LimitSense::at_most, 61.0,
            dimension::length, Status::caution, "Head of the highest reservoir level above the apron.",
            "A physical model is required beyond " + quantity_token(61.0, dimension::length) + ".", common_practice)),
        limit_finding(
            "type_2.chute_slope.practice", "Chute slope between 31 and 63 degrees has no effect on the jump", input.chute_slope,
            LimitSense::note, slope_usual ? input.chute_slope : 0.6, dimension::none,
            slope_usual ? Status::ok : Status::caution, "Slope of the last reach of the chute, fall per horizontal length.",
            slope_usual
                ? ""
                : "Outside 31 to 63 degrees the uniformity of the inflow must be shown; steepen a flat chute before the basin.",
            common_practice),
        limit_finding("type_2.length.practice", "Length over sequent depth against the usual 4.4",
                      basin_length(flow.F1, flow.y2) / flow.y2, LimitSense::note, 4.4, dimension::none, Status::ok,
                      "Practitioners take about 4.4 sequent depths; the published curve is used here.", "", common_practice)};
  }
};

}  // namespace

const Dissipator& type_2() {
  static const TypeTwo type;
  return type;
}

}  // namespace quell::dissipators
