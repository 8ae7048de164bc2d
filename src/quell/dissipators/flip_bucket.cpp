// Flip bucket and plunge pool: the jet leaves the structure clear of the tailwater and its energy is destroyed in the river, by
// scour that the rock must bear. The level of the option is that of the bucket's invert, above the highest tailwater.
#include <algorithm>
#include <cmath>

#include "quell/base/constants.h"
#include "quell/base/quantity_text.h"
#include "quell/dissipators/bucket_shape.h"
#include "quell/hydraulics/basin_rules.h"
#include "quell/hydraulics/jet.h"

namespace quell::dissipators {

const Dissipator& flip_bucket();

namespace {

constexpr double radius_factor = 5.0;
constexpr Rule small_dams{"dsd_1987", "ch. 9, flip buckets", Provenance::memory};

constexpr Symbol radius_in[] = {{"y1", "largest depth entering the bucket", dimension::length, above_zero}};
constexpr Symbol radius_out[] = {{"R", "radius of the bucket", dimension::length, above_zero}};

const Method radius_method{.id = "bucket.radius.flip",
                           .title = "Radius of a flip bucket",
                           .equation = "R = 5*y1",
                           .inputs = radius_in,
                           .outputs = radius_out,
                           .source = "dsd_1987",
                           .place = "ch. 9, at least five depths; another rule allows three",
                           .provenance = Provenance::memory,
                           .accuracy = "rule of practice, the larger of two",
                           .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                             out[0] = radius_factor * in[0];
                             return {};
                           }};

constexpr Limit limits[] = {
    {.id = "flip_bucket.velocity",
     .title = "Velocity at the lip at the largest discharge",
     .measure = Measure::velocity,
     .sense = LimitSense::at_least,
     .limit = 15.0,
     .otherwise = Status::fails,
     .advice = "A slower jet does not fly clear: use a basin for a jump.",
     .source = "practice",
     .place = "ski jumps from 15 to 20 m/s",
     .provenance = Provenance::common_practice,
     .largest_only = true},
    {.id = "flip_bucket.velocity_usual",
     .title = "Velocity at the lip of usual flip buckets",
     .measure = Measure::velocity,
     .sense = LimitSense::at_least,
     .limit = 20.0,
     .otherwise = Status::caution,
     .advice = "Between {{15|6,0,-6|3}} and {{20|6,0,-6|3}} compare a basin for a jump.",
     .source = "practice",
     .place = "ski jumps from 15 to 20 m/s",
     .provenance = Provenance::common_practice,
     .largest_only = true},
};

/// What the jet does in the river at one discharge and one tailwater.
struct Landing {
  double far_throw = 0.0, near_throw = 0.0;  ///< m from the lip
  double scour = 0.0, least_scour = 0.0;     ///< m below the tailwater, largest and smallest of the formulas
  double discharge = 0.0;
};

Landing landing_of(const site::ToeFlow& flow, double tailwater_level, const SizingInput& input, double lip_level) {
  const auto& choices = input.setting.choices;
  const double drop = std::max(0.0, lip_level - tailwater_level);
  const hydraulics::ScourInput scour{.q = flow.unit_discharge,
                                     .H = std::max(0.1, flow.reservoir_level - tailwater_level),
                                     .h = std::max(0.1, tailwater_level - input.setting.bed_level),
                                     .d_m = choices.rock_block_size};
  const double depths[] = {hydraulics::scour_veronese(scour), hydraulics::scour_mason_arumugam(scour),
                           hydraulics::scour_mason_arumugam_constant(scour)};
  return {.far_throw =
              hydraulics::jet_throw_depth({.V = flow.V1, .theta = choices.flip_lip_angle, .Y = drop, .d = flow.y1, .K = 1.0}),
          .near_throw =
              hydraulics::jet_throw_depth({.V = flow.V1, .theta = choices.flip_lip_angle, .Y = drop, .d = flow.y1, .K = 0.9}),
          .scour = *std::max_element(std::begin(depths), std::end(depths)),
          .least_scour = *std::min_element(std::begin(depths), std::end(depths)),
          .discharge = flow.discharge};
}

/// The landing with the deepest scour over all discharges and tailwater cases.
Landing deepest(const SizingInput& input, double lip_level) {
  Landing worst;
  for (std::size_t i = 0; i < input.flows.size(); ++i)
    for (const double level : input.tailwater_levels[i]) {
      const auto landing = landing_of(input.flows[i], level, input, lip_level);
      if (landing.scour > worst.scour) worst = landing;
    }
  return worst;
}

class FlipBucket final : public Dissipator {
 public:
  const TypeRecord& record() const override {
    static constexpr std::string_view approach[] = {"even flow over the width of the bucket",
                                                    "a drain, and protection for small flows that do not leave the bucket"};
    static constexpr std::string_view failures[] = {
        "scour that reaches back to the structure or into the banks", "small flows that fall at the foot of the bucket",
        "spray that wets slopes, roads and switchyards", "a bar below the pool that raises the tailwater",
        "cavitation at the lip and its joints"};
    static const Method* const methods[] = {&radius_method};
    static const TypeRecord record{
        .id = "flip_bucket",
        .name = "Flip bucket and plunge pool",
        .summary = "Bucket that throws the jet clear of the structure into a pool that it scours in sound rock.",
        .source = "dsd_1987",
        .place = "ch. 9, flip buckets",
        .provenance = Provenance::memory,
        .action = Action::jet,
        .level_rule = LevelRule::above_tailwater,
        .limits = limits,
        .approach = approach,
        .failure_modes = failures,
        .model = "always before the design is final: throw, spray, scour and banks",
        .walls_from_tailwater = true,
        .methods = methods};
    return record;
  }

  /// A tailwater above the invert begins to drown the bucket.
  TailwaterNeed tailwater_need(const site::ToeFlow&, const Setting&) const noexcept override { return {0.0, 0.0, 0.0, 0.0}; }

  double length(const site::ToeFlow& flow, const Setting& setting) const noexcept override {
    return radius_factor * flow.y1 *
           (std::tan(std::atan(setting.chute_slope) / 2.0) + std::sin(setting.choices.flip_lip_angle));
  }

  double level_offset(const site::ToeFlow&, const Setting& setting) const noexcept override {
    return setting.choices.flip_clearance;
  }

  Structure size(const SizingInput& input, Working* working) const override {
    const auto depth = largest(input.flows, &site::ToeFlow::y1);
    const auto& flow = sizing_flow(input);
    const double radius = radius_factor * depth.value;
    Structure structure;
    structure.governing_length_discharge = depth.discharge;
    trace(working, radius_method, {told(depth.value, "largest over the discharges")}, {radius}, "radius of the bucket");
    const auto arc = bucket_arc(radius, input.setting.chute_slope, input.setting.choices.flip_lip_angle);
    set_bucket(structure, arc, radius, input.setting.width);
    // The walls carry the flow, with the freeboard of a chute, up to the lip.
    structure.freeboard = hydraulics::chute_freeboard({.V = flow.V1, .d = flow.y1});
    trace(working, hydraulics::record::chute_freeboard, {told(flow.V1, of_largest), told(flow.y1, of_largest)},
          {structure.freeboard}, "freeboard of the walls");
    structure.least_wall_height = arc.lip_z + depth.value + structure.freeboard;
    const double head = hydraulics::bucket_pressure_head({.V = flow.V1, .R = radius, .d1 = flow.y1});
    trace(working, hydraulics::record::bucket_pressure_head, {told(flow.V1, of_largest), radius, told(flow.y1, of_largest)},
          {head}, "pressure on the invert");
    structure.loads.push_back({"bucket_lip", "Pressure on the bucket's invert", water_unit_weight * head, dimension::pressure,
                               "water over it and its change of direction, at the largest discharge"});
    if (working != nullptr) trace_landing(input, structure, *working);
    return structure;
  }

  Findings findings(const SizingInput& input, const Structure& structure) const override {
    const double lip_level = input.apron_level + structure.end_sill_height;
    const auto worst = deepest(input, lip_level);
    const auto least = landing_of(input.flows.front(), input.tailwater_levels.front()[0], input, lip_level);
    const bool sound = input.setting.choices.is_sound_rock;
    return {
        worked(hydraulics::record::jet_throw,
               choice_note("flip_bucket.throw", "Throw of the jet, longest estimate", worst.far_throw, dimension::length,
                           "From the lip, " + at_discharge(worst.discharge) + "; prototype jets fall nearer, about " +
                               quantity_token(worst.near_throw, dimension::length) + ".",
                           small_dams)),
        worked(hydraulics::record::scour_mason_arumugam,
               choice_note("flip_bucket.scour", "Depth of scour below the tailwater, largest of three formulas", worst.scour,
                           dimension::length,
                           "At " + quantity_token(worst.discharge, dimension::discharge) +
                               "; the smallest of the formulas gives " + quantity_token(worst.least_scour, dimension::length) +
                               ".",
                           {"mason_arumugam_1985", "beside Veronese", Provenance::memory})),
        worked(hydraulics::record::scour_mason_arumugam,
               limit_finding("flip_bucket.scour_reach", "Throw over the depth of scour", worst.near_throw / worst.scour,
                             LimitSense::at_least, 1.5, dimension::none, Status::caution,
                             "A scour hole with sides of 1.5:1 must not reach the structure.",
                             "Throw the jet farther, dig the pool in advance, or line it.", common_practice)),
        limit_finding("flip_bucket.low_flow", "Throw of the smallest discharge over the length of the bucket",
                      least.near_throw / structure.length, LimitSense::at_least, 1.0, dimension::none, Status::caution,
                      "Small discharges fall at the foot of the bucket or do not leave it.",
                      "Protect the foot by an apron and give the bucket a drain.", common_practice),
        counted(keyed("basin.choices.sound_rock",
                      limit_finding("flip_bucket.rock", "River bed below shown to be sound rock", sound ? 1.0 : 0.0,
                                    LimitSense::at_least, 1.0, dimension::none, Status::fails,
                                    sound ? "The site file says that it is." : "The site file does not say that it is.",
                                    "A plunge pool needs competent rock: have it shown by a specialist, then set sound_rock in "
                                    "[basin.choices].",
                                    common_practice))),
        worked(radius_method,
               choice_note("flip_bucket.radius_rule", "Radius of the bucket over the depth", radius_factor, dimension::none,
                           "Five depths are used; three are allowed by another rule.", small_dams))};
  }

  void trace_tailwater_need(const site::ToeFlow&, const Setting&, Working&) const override {}

 private:
  static void trace_landing(const SizingInput& input, const Structure& structure, Working& working) {
    const auto& flow = sizing_flow(input);
    const auto& choices = input.setting.choices;
    const double tailwater = input.tailwater_levels.back()[0];
    const double drop = std::max(0.0, input.apron_level + structure.end_sill_height - tailwater);
    const double fall = std::max(0.1, flow.reservoir_level - tailwater);
    const double depth = std::max(0.1, tailwater - input.setting.bed_level);
    const hydraulics::ScourInput scour{.q = flow.unit_discharge, .H = fall, .h = depth, .d_m = choices.rock_block_size};
    const StepInput q = told(scour.q, of_largest), fall_of_head = told(scour.H, "reservoir above the low tailwater"),
                    water = told(scour.h, "low tailwater above the river bed");
    working.add(hydraulics::record::jet_throw,
                {told(flow.V1, of_largest), given(choices.flip_lip_angle, "basin.choices.flip_lip_angle"),
                 told(drop, "the lip above the low tailwater")},
                {hydraulics::jet_throw({.V = flow.V1, .theta = choices.flip_lip_angle, .Y = drop})}, "throw of the jet");
    for (const double K : {1.0, 0.9})
      working.add(
          hydraulics::record::jet_throw_depth,
          {told(flow.V1, of_largest), given(choices.flip_lip_angle, "basin.choices.flip_lip_angle"),
           told(drop, "the lip above the low tailwater"), told(flow.y1, of_largest),
           told(K, "1 in vacuum, 0.9 with the air's drag")},
          {hydraulics::jet_throw_depth({.V = flow.V1, .theta = choices.flip_lip_angle, .Y = drop, .d = flow.y1, .K = K})},
          "throw of the jet");
    working.add(hydraulics::record::scour_veronese, {q, fall_of_head}, {hydraulics::scour_veronese(scour)}, "scour");
    working.add(hydraulics::record::scour_mason_arumugam,
                {q, fall_of_head, water, given(scour.d_m, "basin.choices.rock_block_size")},
                {hydraulics::scour_mason_arumugam(scour)}, "scour");
    working.add(hydraulics::record::scour_mason_arumugam_constant,
                {q, fall_of_head, water, given(scour.d_m, "basin.choices.rock_block_size")},
                {hydraulics::scour_mason_arumugam_constant(scour)}, "scour");
  }
};

}  // namespace

const Dissipator& flip_bucket() {
  static const FlipBucket type;
  return type;
}

}  // namespace quell::dissipators
