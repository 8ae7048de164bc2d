// Baffled apron drop (Type IX): rows of blocks on a slope keep the water slow all the way down, so that no basin and no
// tailwater are needed. It takes the place of the chute: x is measured from the crest, the level is that of its lower end.
//
// Source: Peterka (1984), section 9, recalled; course notes on Design of small canal structures, read.
#include <algorithm>
#include <cmath>

#include "quell/base/constants.h"
#include "quell/dissipators/parts.h"
#include "quell/hydraulics/section.h"

namespace quell::dissipators {

const Dissipator& baffled_apron();

namespace {

using hydraulics::critical_depth;

constexpr double steepest = 0.5;             ///< 2:1
constexpr double first_row_drop = 0.3;       ///< m, first row below the crest at most
constexpr double nominal_width = 4.0 / 3.0;  ///< of the height: the half blocks at the walls are then two thirds of it
constexpr Rule notes{"canal_structures_notes_2010", "baffled apron drops, pp. 299-308 summarised", Provenance::seen};

constexpr Symbol blocks_in[] = {{"q", "discharge per width", dimension::unit_discharge, above_zero},
                                {"W", "width of the apron", dimension::length, above_zero},
                                {"k", "block height over critical depth: 0.8 or 0.9", dimension::none, {0.8, 0.9}}};
constexpr Symbol entrance_in[] = {{"q", "discharge per width", dimension::unit_discharge, above_zero}};
constexpr Symbol blocks_out[] = {{"yc", "critical depth", dimension::length, above_zero},
                                 {"H", "height of the blocks", dimension::length, above_zero},
                                 {"N", "blocks of a full row", dimension::none, {1.0, no_limit}},
                                 {"w", "width of blocks and spaces", dimension::length, above_zero},
                                 {"sr", "spacing of the rows along the slope", dimension::length, above_zero},
                                 {"hw", "height of the walls normal to the floor", dimension::length, above_zero}};
constexpr Symbol entrance_out[] = {{"Va", "largest velocity of approach", dimension::velocity, above_zero}};

/// At least as many blocks as keep them no wider than 4/3 of their height.
Row full_row(double width, double height) {
  const int count = std::max(1, static_cast<int>(std::ceil(width / (2.0 * nominal_width * height) - 1e-9)));
  const double block = width / (2.0 * count);
  return {count, block, block, block / 2.0};
}

const Method blocks_method{
    .id = "basin.blocks.baffled_apron",
    .title = "Blocks, rows and walls of the baffled apron",
    .equation = "yc = (q^2/g)^(1/3); H = k*yc; N = max(1, ceil(W/(8/3*H) - 1e-9)); w = W/(2*N); sr = 2*H; hw = 3*H",
    .inputs = blocks_in,
    .outputs = blocks_out,
    .source = "peterka_1984",
    .place =
        "sec. 9: height 0.8 of critical depth, 0.9 in the notes on canal structures; width and spaces from one to one and a "
        "half heights, rows two heights apart, walls three heights",
    .provenance = Provenance::memory,
    .accuracy = "height not critical; width adjusted to whole blocks, at most 4/3 of the height",
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      if (!(in[0] > 0.0 && in[1] > 0.0 && in[2] > 0.0)) return no_answer("q, W and k must be above zero");
      out[0] = critical_depth(in[0]);
      out[1] = in[2] * out[0];
      const Row row = full_row(in[1], out[1]);
      out[2] = row.count;
      out[3] = row.width;
      out[4] = 2.0 * out[1];
      out[5] = 3.0 * out[1];
      return {};
    }};

const Method entrance_method{.id = "basin.entrance_velocity.baffled_apron",
                             .title = "Velocity of approach to a baffled apron",
                             .equation = "Va = max((g*q)^(1/3) - 1.524, (g*q)^(1/3)/2)",
                             .inputs = entrance_in,
                             .outputs = entrance_out,
                             .source = "peterka_1984",
                             .place =
                                 "sec. 9: critical velocity less 5 ft/s; half of it where that is less, from the notes on "
                                 "canal structures",
                             .provenance = Provenance::memory,
                             .accuracy = "rule of practice",
                             .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                               const double critical = std::cbrt(gravity * in[0]);
                               out[0] = std::max(critical - 1.524, critical / 2.0);
                               return {};
                             }};

constexpr Limit limits[] = {
    {.id = "baffled_apron.unit_discharge",
     .title = "Unit discharge",
     .measure = Measure::unit_discharge,
     .sense = LimitSense::at_most,
     .limit = 5.574182,
     .otherwise = Status::caution,
     .advice = "Above {{5.574182|12,0,-6|3}} a physical model is required; widen the apron.",
     .source = "peterka_1984",
     .place = "sec. 9",
     .provenance = Provenance::memory,
     .of_tests = true},
    {.id = "baffled_apron.unit_discharge_proven",
     .title = "Unit discharge proven by a model",
     .measure = Measure::unit_discharge,
     .sense = LimitSense::at_most,
     .limit = 7.218563,
     .otherwise = Status::fails,
     .advice = "{{7.218563|12,0,-6|3}} is the largest that a model has proven among the sources read: widen the apron.",
     .source = "rhone_1971",
     .place = "abstract",
     .provenance = Provenance::seen,
     .of_tests = true},
};

struct Slope {
  double tangent, sine, cosine;
};
Slope slope_of(const Setting& setting) noexcept {
  const double tangent = std::min(setting.chute_slope, steepest);
  const double cosine = 1.0 / std::sqrt(1.0 + tangent * tangent);
  return {tangent, tangent * cosine, cosine};
}

double block_height(double q, const Setting& setting) noexcept {
  return setting.choices.drop_block_height * critical_depth(q);
}

class BaffledApron final : public Dissipator {
 public:
  const TypeRecord& record() const override {
    static constexpr std::string_view approach[] = {
        "slow approach: at most the critical velocity less {{1.524|6,0,-6|3}}, better half of it",
        "crest rounded with about {{1.8288|6,0,0|3}} radius, a slot in it for drainage"};
    static constexpr std::string_view failures[] = {"weeds, branches or ice that clog the blocks", "splash over the walls",
                                                    "a bed that sinks below the last row"};
    static const Method* const methods[] = {&blocks_method, &entrance_method};
    static const TypeRecord record{
        .id = "baffled_apron",
        .name = "Baffled apron drop (Type IX)",
        .summary = "Rows of blocks on a slope of 2:1 or flatter, which keep the water slow over any fall without a basin.",
        .source = "peterka_1984",
        .place = "sec. 9",
        .provenance = Provenance::memory,
        .action = Action::blocks,
        .level_rule = LevelRule::river_bed,
        .limits = limits,
        .approach = approach,
        .failure_modes = failures,
        .model = "more than {{5.574182|12,0,-6|3}}, or an entrance that must not raise the water upstream",
        .not_similar = "the first row lies at most {{0.3048|6,0,0|3}} below the crest",
        .walls_from_tailwater = true,
        .methods = methods};
    return record;
  }

  /// Water at critical depth at the crest: the blocks let it grow no faster.
  site::ToeFlow from_crest(const site::ToeFlow& bare, const Setting&) const noexcept override {
    site::ToeFlow flow = bare;
    flow.y1 = flow.y2 = critical_depth(bare.unit_discharge);
    flow.V1 = bare.unit_discharge / flow.y1;
    flow.F1 = 1.0;
    flow.energy_head = 1.5 * flow.y1;
    return flow;
  }

  TailwaterNeed tailwater_need(const site::ToeFlow&, const Setting&) const noexcept override { return {}; }

  double length(const site::ToeFlow& flow, const Setting& setting) const noexcept override {
    return std::max(0.0, setting.crest_level - flow.apron_level) / slope_of(setting).tangent;
  }

  /// Two rows below the lowest bed, so that one is always buried.
  double level_offset(const site::ToeFlow& flow, const Setting& setting) const noexcept override {
    return -4.0 * block_height(flow.unit_discharge, setting) * slope_of(setting).sine;
  }

  Structure size(const SizingInput& input, Working* working) const override {
    const auto& flow = sizing_flow(input);
    const auto& setting = input.setting;
    const Slope slope = slope_of(setting);
    const double height = block_height(flow.unit_discharge, setting);
    Structure structure;
    structure.length = length(flow, setting);
    structure.governing_length_discharge = flow.discharge;
    structure.end_width = setting.width;
    structure.least_wall_height = 3.0 * height / slope.cosine;
    structure.floor = {{0.0, structure.length * slope.tangent}, {structure.length, 0.0}};
    const Row row = full_row(setting.width, height);
    add_rows(structure, row, height, slope, setting.width);
    const double critical = critical_depth(flow.unit_discharge);
    trace(working, blocks_method,
          {told(flow.unit_discharge, of_largest), given(setting.width, "basin.width"),
           given(setting.choices.drop_block_height, "basin.choices.drop_block_height")},
          {critical, height, static_cast<double>(row.count), row.width, 2.0 * height, 3.0 * height}, "blocks, rows and walls");
    trace(working, entrance_method, {told(flow.unit_discharge, of_largest)}, {approach_velocity(flow.unit_discharge)},
          "velocity of approach");
    add_face_load(structure, "apron_block", "Force on one block", row.width * height,
                  told(flow.unit_discharge / critical, "critical velocity at the largest discharge"), working);
    return structure;
  }

  Findings findings(const SizingInput& input, const Structure& structure) const override {
    const auto& flow = sizing_flow(input);
    const double height = block_height(flow.unit_discharge, input.setting);
    const double width = full_row(input.setting.width, height).width;
    return {
        counted(
            worked(blocks_method,
                   limit_finding("baffled_apron.rows", "Rows of blocks", rows_of(structure), LimitSense::at_least, 4.0,
                                 dimension::none, Status::fails, "Rows from the crest to the lower end, one of them buried.",
                                 "The fall is too small for a baffled apron: compare a straight drop.", notes))),
        worked(blocks_method,
               limit_finding("baffled_apron.block_width", "Width of blocks and spaces over their height, least", width / height,
                             LimitSense::at_least, 1.0, dimension::none, Status::caution, "From one to one and a half heights.",
                             "Change the width of the apron by half a block.", notes)),
        keyed(
            "basin.choices.drop_block_height",
            worked(blocks_method,
                   choice_note("baffled_apron.height_rule", "Height of the blocks over critical depth",
                               input.setting.choices.drop_block_height, dimension::none,
                               "0.9 is the rule for canals and the larger; 0.8 is published for spillways. It is not critical.",
                               notes))),
        worked(entrance_method,
               choice_note("baffled_apron.approach", "Largest velocity of approach", approach_velocity(flow.unit_discharge),
                           dimension::velocity, "A faster approach throws water over the first rows.",
                           {"peterka_1984", "sec. 9", Provenance::memory})),
        worked(blocks_method,
               choice_note("baffled_apron.concrete", "Horizontal length of the apron", structure.length, dimension::length,
                           "It takes the place of the chute, whose concrete the other candidates do not count.",
                           common_practice))};
  }

  void trace_tailwater_need(const site::ToeFlow&, const Setting&, Working&) const override {}

 private:
  static double approach_velocity(double q) noexcept {
    const double critical = std::cbrt(gravity * q);
    return std::max(critical - 1.524, critical / 2.0);
  }

  static int rows_of(const Structure& structure) {
    int rows = 0;
    for (const auto& element : structure.elements)
      if (element.kind == "apron_block") rows += element.rows;
    return rows;
  }

  /// Rows 1, 3, 5, … stand between half blocks at the walls, rows 2, 4, … have half a space there.
  static void add_rows(Structure& structure, const Row& row, double height, const Slope& slope, double width) {
    const double step = 2.0 * height * slope.cosine;
    const double first = std::min(first_row_drop, height) / slope.tangent;
    const int total = std::max(1, 1 + static_cast<int>(std::floor((structure.length - first - 0.5 * step) / step)));
    const auto add = [&](Row across, std::string_view kind, std::string_view name, int first_row, int rows) {
      if (rows < 1 || across.count < 1) return;
      Element element = element_of(across, width, height);
      element.kind = kind;
      element.name = name;
      element.station = first + step * first_row;
      element.length = 0.5 * height * slope.cosine;
      element.rows = rows;
      element.row_step = 2.0 * step;
      element.row_drop = 2.0 * step * slope.tangent;
      const double base = (structure.length - element.station) * slope.tangent;
      const double run = element.length, fall = run * slope.tangent;
      element.profile = {{element.station, base},
                         {element.station + height * slope.sine, base + height * slope.cosine},
                         {element.station + run + height * slope.sine, base - fall + height * slope.cosine},
                         {element.station + run, base - fall}};
      element.remark = "faces normal to the floor; thickness along the slope indicative";
      structure.elements.push_back(element);
    };
    const Row staggered{row.count - 1, row.width, row.count > 2 ? row.width : 0.0, 1.5 * row.width};
    const Row halves{2, row.width / 2.0, width - row.width, 0.0};
    const int odd = (total + 1) / 2;
    add(halves, "wall_block", "Half blocks at the walls, rows 1, 3, …", 0, odd);
    add(staggered, "apron_block", "Blocks, rows 1, 3, …", 0, odd);
    add(row, "apron_block", "Blocks, rows 2, 4, …", 1, total / 2);
  }
};

}  // namespace

const Dissipator& baffled_apron() {
  static const BaffledApron type;
  return type;
}

}  // namespace quell::dissipators
