// Type IV basin: large deflector blocks at the chute's foot and a solid sill, for the low Froude numbers of canals and low
// dams, where the jump oscillates. It lessens the waves at their source and does not end them.
//
// Source: Peterka (1984), section 4, recalled; the sill by the fit of Hydraulic Engineering Circular 14.
#include <algorithm>
#include <cmath>

#include "quell/dissipators/parts.h"
#include "quell/hydraulics/jump.h"

namespace quell::dissipators {

const Dissipator& type_4();

namespace {

constexpr double required_share = 1.10;
constexpr double largest_share = 1.2;
constexpr double top_fall = 0.0874886635;  ///< tan 5 degrees
constexpr double lowest_of_sill_fit = 2.5;
constexpr Rule published{"peterka_1984", "sec. 4", Provenance::memory};

constexpr Symbol y2_in[] = {{"y2", "sequent depth", dimension::length, above_zero}};
constexpr Symbol blocks_in[] = {{"W", "basin width", dimension::length, above_zero},
                                {"y1", "depth at the toe", dimension::length, above_zero}};
constexpr Symbol sill_in[] = {{"F1", "Froude number at the toe", dimension::none, {2.5, 4.5}},
                              {"y1", "depth at the toe", dimension::length, above_zero}};
constexpr Symbol required_out[] = {{"T", "tailwater depth required above the apron", dimension::length, above_zero}};
constexpr Symbol blocks_out[] = {{"h1", "height of the deflector blocks", dimension::length, above_zero},
                                 {"N1", "number of blocks", dimension::none, {1.0, no_limit}},
                                 {"w1", "width of a block", dimension::length, above_zero},
                                 {"s1", "clear space between blocks, half of it at each wall", dimension::length, above_zero},
                                 {"l1", "length of a block's top along the flow", dimension::length, above_zero}};
constexpr Symbol sill_out[] = {{"h4", "height of the end sill", dimension::length, above_zero}};

/// Blocks 0.75 y1 wide where that comes out whole, never wider than y1, with spaces of 2.5 widths.
Row deflector_row(double width, double y1) {
  const auto nearest = std::lround(width / (3.5 * 0.75 * y1));
  const auto least = static_cast<long>(std::ceil(width / (3.5 * y1) - 1e-9));
  const int count = static_cast<int>(std::max({1L, nearest, least}));
  const double block = width / (3.5 * count);
  return {count, block, 2.5 * block, 1.25 * block};
}

const Method tailwater_method{.id = "basin.tailwater.type_4",
                              .title = "Tailwater that the Type IV basin requires",
                              .equation = "T = 1.1*y2",
                              .inputs = y2_in,
                              .outputs = required_out,
                              .source = "peterka_1984",
                              .place = "sec. 4: 5 to 10 % above the sequent depth; the larger is taken",
                              .provenance = Provenance::memory,
                              .accuracy = "rule of practice; the jump is very sensitive to tailwater",
                              .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                out[0] = required_share * in[0];
                                return {};
                              }};

const Method blocks_method{
    .id = "basin.chute_blocks.type_4",
    .title = "Deflector blocks of the Type IV basin",
    .equation =
        "h1 = 2*y1; N1 = max(1, max(round(W/(3.5*0.75*y1)), ceil(W/(3.5*y1) - 1e-9))); w1 = W/(3.5*N1); s1 = 2.5*w1; "
        "l1 = 2*y1",
    .inputs = blocks_in,
    .outputs = blocks_out,
    .source = "peterka_1984",
    .place = "sec. 4: width 0.75 of the depth preferred and at most the depth, spaces of 2.5 widths, top falling 5 degrees",
    .provenance = Provenance::memory,
    .accuracy = "width adjusted to whole blocks",
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      if (!(in[0] > 0.0 && in[1] > 0.0)) return no_answer("W and y1 must be above zero");
      const Row row = deflector_row(in[0], in[1]);
      out[0] = 2.0 * in[1];
      out[1] = row.count;
      out[2] = row.width;
      out[3] = row.spacing;
      out[4] = 2.0 * in[1];
      return {};
    }};

const Method sill_method{.id = "basin.end_sill.type_4",
                         .title = "Solid end sill of the Type IV basin",
                         .equation = "h4 = y1*(0.0536*min(17, max(2.5, F1)) + 1.04)",
                         .inputs = sill_in,
                         .outputs = sill_out,
                         .source = "hec14_2006",
                         .place = "ch. 8, as for Type III",
                         .provenance = Provenance::memory,
                         .accuracy = "the sill is optional in the source",
                         .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                           out[0] = solid_sill_height(in[0], in[1], lowest_of_sill_fit);
                           return {};
                         }};

constexpr Limit limits[] = {
    {.id = "type_4.froude_lowest",
     .title = "Inflow Froude number at every discharge",
     .measure = Measure::froude_number,
     .sense = LimitSense::at_least,
     .limit = 2.5,
     .otherwise = Status::fails,
     .advice = "Below 2.5 use a plain apron, a SAF basin, or no basin.",
     .source = "peterka_1984",
     .place = "sec. 4",
     .provenance = Provenance::memory},
    {.id = "type_4.froude_highest",
     .title = "Inflow Froude number at the largest discharge",
     .measure = Measure::froude_number,
     .sense = LimitSense::at_most,
     .limit = 4.5,
     .otherwise = Status::fails,
     .advice = "Above 4.5 the jump is steady: use Type II or III, which are shorter.",
     .source = "peterka_1984",
     .place = "sec. 4",
     .provenance = Provenance::memory,
     .largest_only = true},
    {.id = "type_4.froude_small_discharge",
     .title = "Highest inflow Froude number",
     .measure = Measure::froude_number,
     .sense = LimitSense::at_most,
     .limit = 4.5,
     .otherwise = Status::caution,
     .advice = "Check that small discharges above the tested range are served by the tailwater.",
     .source = "peterka_1984",
     .place = "sec. 4",
     .provenance = Provenance::memory,
     .text = "Small discharges run above the tested range."},
    {.id = "type_4.velocity",
     .title = "Velocity at the toe without a physical model",
     .measure = Measure::velocity,
     .sense = LimitSense::at_most,
     .limit = 15.24,
     .otherwise = Status::caution,
     .advice = "Above {{15.24|6,0,-6|3}} a basin for low Froude numbers needs a physical model.",
     .source = "dsd_1987",
     .place = "p. 391",
     .provenance = Provenance::seen,
     .of_tests = true},
};

Element deflector_blocks(double width, double y1, double slope) {
  const double height = 2.0 * y1;
  const double foot = height / slope;
  const double face = std::max(0.0, height - foot);  // the top is at least two depths long, also on a steep chute
  Element element = element_of(deflector_row(width, y1), width, height);
  element.kind = "chute_block";
  element.name = "Deflector blocks";
  element.length = foot + face;
  element.station = -foot;
  element.profile = {{-foot, height}, {face, height - top_fall * (foot + face)}, {face, 0.0}, {0.0, 0.0}};
  element.remark =
      "top at least two depths long, falling 5 degrees with the flow, its highest edge two depths above the apron; compare "
      "with "
      "the figure of the source where the height is measured";
  return element;
}

class TypeFour final : public Dissipator {
 public:
  const TypeRecord& record() const override {
    static constexpr std::string_view approach[] = {"rectangular section, even flow", "small unit discharges, as of canals"};
    static constexpr std::string_view failures[] = {"waves that travel far downstream and attack the banks",
                                                    "swept out by a small lack of tailwater",
                                                    "uplift under the long slab as the jump swings"};
    static const Method* const methods[] = {&tailwater_method, &blocks_method, &sill_method};
    static const TypeRecord record{
        .id = "type_4",
        .name = "Type IV basin",
        .summary =
            "Large deflector blocks at the foot of the chute and a solid sill, for the low Froude "
            "numbers at which the jump oscillates.",
        .source = "peterka_1984",
        .place = "sec. 4",
        .provenance = Provenance::memory,
        .limits = limits,
        .approach = approach,
        .failure_modes = failures,
        .model = "velocities above {{15.24|6,0,-6|3}}, a section that is not rectangular, strict limits on waves",
        .methods = methods};
    return record;
  }

  TailwaterNeed tailwater_need(const site::ToeFlow& flow, const Setting&) const noexcept override {
    // No lower depth than the sequent depth is published for it.
    return {flow.y2, required_share * flow.y2, required_share * flow.y2, largest_share * flow.y2};
  }

  double length(const site::ToeFlow& flow, const Setting&) const noexcept override {
    return hydraulics::jump_length({.F1 = flow.F1, .y2 = flow.y2});
  }

  Structure size(const SizingInput& input, Working* working) const override {
    const auto& flow = sizing_flow(input);
    const auto& longest = longest_flow(*this, input);
    const double width = input.setting.width;
    Structure structure = jump_basin(*this, input, working);
    trace(working, hydraulics::record::jump_length_em25, {told(longest.F1, of_longest), told(longest.y2, of_longest)},
          {structure.required_length}, "length of the basin");
    const auto blocks = deflector_blocks(width, flow.y1, input.setting.chute_slope);
    set_length(structure,
               structure.required_length + (blocks.station + blocks.length),  // it counts from the face of the blocks
               input.setting);
    structure.end_sill_height = solid_sill_height(flow.F1, flow.y1, lowest_of_sill_fit);
    structure.elements = {blocks, solid_sill(width, structure.end_sill_height, 2.0, structure.length)};
    structure.elements[1].remark = "optional in the source; upstream face 2H:1V";
    trace(working, blocks_method, {given(width, "basin.width"), flow.y1},
          {blocks.height, static_cast<double>(blocks.count), blocks.width, blocks.spacing, 2.0 * flow.y1}, "deflector blocks");
    trace(working, sill_method, {flow.F1, flow.y1}, {structure.end_sill_height}, "end sill");
    add_face_load(structure, "end_sill", "Force on the end sill, whole width", width * structure.end_sill_height, flow.V1,
                  working);
    return structure;
  }

  Findings findings(const SizingInput& input, const Structure& structure) const override {
    const auto& flow = sizing_flow(input);
    return {worked(blocks_method,
                   limit_finding("type_4.chute_block_width", "Width of each deflector block over the depth at the toe",
                                 structure.elements[0].width / flow.y1, LimitSense::at_most, 1.0, dimension::none,
                                 Status::caution, "Blocks wider than the depth do not lift the jet as tested.",
                                 "Change the basin width, or settle the width of the blocks with the designer.", published)),
            worked(hydraulics::record::energy_loss_rectangular, {flow.y1, flow.y2},
                   choice_note(
                       "type_4.waves", "Share of the energy that a jump destroys here",
                       hydraulics::jump_energy_loss({.y1 = flow.y1, .y2 = flow.y2}) / flow.energy_head, dimension::none,
                       "The rest leaves as flow and waves: where the banks matter add a wave suppressor, or compare a baffled "
                       "apron.",
                       {"dsd_1987", "p. 391", Provenance::seen}))};
  }

  void trace_tailwater_need(const site::ToeFlow& flow, const Setting&, Working& working) const override {
    working.add(tailwater_method, {flow.y2}, {required_share * flow.y2}, "tailwater that the type requires");
  }
};

}  // namespace

const Dissipator& type_4() {
  static const TypeFour type;
  return type;
}

}  // namespace quell::dissipators
