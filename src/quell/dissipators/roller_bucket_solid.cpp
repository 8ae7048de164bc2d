// Solid roller bucket: a deep bucket under high tailwater, in which one roller stands while another works on the river bed. The
// level of the option is that of the bucket's invert; the jet enters at the surface of the tailwater.
//
// Source: IS 7365 as quoted in a design annex that could be read. Its radii are numbers in metres.
#include <algorithm>
#include <cmath>

#include "quell/base/constants.h"
#include "quell/dissipators/bucket_shape.h"
#include "quell/hydraulics/short_rules.h"

namespace quell::dissipators {

const Dissipator& roller_bucket_solid();

namespace {

constexpr double required_share = 1.1;
constexpr double largest_share = 1.4;
constexpr Rule published{"is_7365", "solid roller bucket, read in a design annex that quotes it", Provenance::seen};

constexpr Symbol y2_in[] = {{"y2", "sequent depth", dimension::length, above_zero}};
constexpr Symbol head_in[] = {{"vt", "ideal velocity of the fall to the tailwater's surface", dimension::velocity, above_zero},
                              {"H", "reservoir level above the crest", dimension::length, above_zero}};
constexpr Symbol F1_in[] = {{"F1", "Froude number of the entering jet", dimension::none, {2.0, 15.0}}};
constexpr Symbol required_out[] = {{"T", "tailwater depth required above the invert", dimension::length, above_zero}};
constexpr Symbol radius_out[] = {{"R", "radius of the bucket", dimension::length, above_zero}};

double radius_of_head(double vt, double H) noexcept {
  return 0.305 * std::pow(10.0, (vt + 6.4 * H + 4.88) / (3.6 * H + 19.5));
}
double radius_of_froude(double F1) noexcept {
  return std::pow((F1 + 19.5) / 13.0, 4.0);
}

const Method tailwater_method{.id = "bucket.tailwater.roller_solid",
                              .title = "Tailwater that the solid roller bucket requires",
                              .equation = "T = 1.1*y2",
                              .inputs = y2_in,
                              .outputs = required_out,
                              .source = "is_7365",
                              .place = "between 1.1 and 1.4 of the sequent depth",
                              .provenance = Provenance::seen,
                              .accuracy = "rule of the standard",
                              .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                out[0] = required_share * in[0];
                                return {};
                              }};

const Method head_method{.id = "bucket.radius.head",
                         .title = "Radius of a solid roller bucket from velocity and head",
                         .equation = "R = 0.305*10^((vt + 6.4*H + 4.88)/(3.6*H + 19.5))",
                         .inputs = head_in,
                         .outputs = radius_out,
                         .source = "is_7365",
                         .place = "read in a design annex that quotes it",
                         .provenance = Provenance::seen,
                         .accuracy = "empirical; numbers in m and m/s",
                         .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                           out[0] = radius_of_head(in[0], in[1]);
                           return {};
                         }};

const Method froude_method{.id = "bucket.radius.froude",
                           .title = "Radius of a solid roller bucket from the Froude number",
                           .equation = "R = ((F1 + 19.5)/13)^4",
                           .inputs = F1_in,
                           .outputs = radius_out,
                           .source = "is_7365",
                           .place = "read in a design annex that quotes it",
                           .provenance = Provenance::seen,
                           .accuracy = "empirical; numbers in m",
                           .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                             out[0] = radius_of_froude(in[0]);
                             return {};
                           }};

constexpr Limit limits[] = {
    {.id = "roller_bucket_solid.froude_lowest",
     .title = "Froude number of the entering jet at every discharge",
     .measure = Measure::froude_number,
     .sense = LimitSense::at_least,
     .limit = 2.0,
     .otherwise = Status::fails,
     .advice = "Below 2 no roller forms: compare a jump basin.",
     .source = "peterka_1984",
     .place = "sec. 7",
     .provenance = Provenance::memory},
    {.id = "roller_bucket_solid.froude_highest",
     .title = "Highest Froude number of the entering jet",
     .measure = Measure::froude_number,
     .sense = LimitSense::at_most,
     .limit = 15.0,
     .otherwise = Status::caution,
     .advice = "Check that small discharges above the tested range are served.",
     .source = "peterka_1984",
     .place = "sec. 7",
     .provenance = Provenance::memory},
};

/// Ideal velocity of the fall from the reservoir to the tailwater's surface, which stands at the flow's own level.
double ideal_velocity(const site::ToeFlow& flow) noexcept {
  return hydraulics::velocity_from_head(1.0, flow.reservoir_level - flow.apron_level);
}

struct Radii {
  double parameter, head, froude;
  double largest() const { return std::max({parameter, head, froude}); }
};

Radii radii_of(const site::ToeFlow& flow, const SizingInput& input) noexcept {
  const double crest_head = std::max(flow.reservoir_level - input.setting.crest_level, 1e-3);
  return {hydraulics::roller_bucket_radius(flow.unit_discharge, flow.reservoir_level - input.apron_level),
          radius_of_head(ideal_velocity(flow), crest_head), radius_of_froude(flow.F1)};
}

class RollerBucketSolid final : public Dissipator {
 public:
  const TypeRecord& record() const override {
    static constexpr std::string_view approach[] = {"all gates alike: side rollers carry stones into the bucket",
                                                    "sound rock below the lip"};
    static constexpr std::string_view failures[] = {"stones moved in and out over the lip, which grind the concrete",
                                                    "jet swept out where the tailwater is low",
                                                    "scour of the banks by the second roller"};
    static const Method* const methods[] = {&tailwater_method, &head_method, &froude_method};
    static const TypeRecord record{
        .id = "roller_bucket_solid",
        .name = "Solid roller bucket",
        .summary = "Type VII: deep circular bucket with a solid lip under high tailwater, where a jump basin would be drowned.",
        .source = "is_7365",
        .place = "solid roller bucket, as quoted",
        .provenance = Provenance::seen,
        .action = Action::roller,
        .limits = limits,
        .approach = approach,
        .failure_modes = failures,
        .model = "any bucket but a small one: height of the rollers and attack of the bed are chart values",
        .not_similar = "two of the three published radii are numbers in metres",
        .walls_from_tailwater = true,
        .methods = methods};
    return record;
  }

  /// The jet enters at the tailwater's surface, which stands at least at the required depth.
  double front_rise(const site::ToeFlow& flow, const Setting&) const noexcept override { return required_share * flow.y2; }

  TailwaterNeed tailwater_need(const site::ToeFlow& flow, const Setting&) const noexcept override {
    return {required_share * flow.y2, required_share * flow.y2, largest_share * flow.y2, largest_share * flow.y2};
  }

  double length(const site::ToeFlow& flow, const Setting& setting) const noexcept override {
    return bucket_length(radius_of_froude(flow.F1), setting);
  }

  Structure size(const SizingInput& input, Working* working) const override {
    const site::ToeFlow* governing = &input.flows.front();
    for (const auto& flow : input.flows)
      if (radii_of(flow, input).largest() >= radii_of(*governing, input).largest()) governing = &flow;
    const Radii radii = radii_of(*governing, input);
    Structure structure;
    structure.governing_length_discharge = governing->discharge;
    structure.freeboard = largest_freeboard(input.flows, working);
    const auto& setting = input.setting;
    set_bucket(structure, bucket_arc(radii.largest(), setting.chute_slope, setting.choices.roller_lip_angle), radii.largest(),
               setting.width);
    if (working != nullptr) trace_radii(*governing, input, radii, *working);
    const auto& flow = sizing_flow(input);
    structure.loads.push_back({"bucket_lip", "Pressure on the bucket's invert, above that of the water over it",
                               water_density * flow.unit_discharge * flow.V1 / structure.invert_radius, dimension::pressure,
                               "centripetal, at the largest discharge"});
    return structure;
  }

  Findings findings(const SizingInput& input, const Structure& structure) const override {
    double least = no_limit;
    for (std::size_t i = 0; i < input.flows.size(); ++i)
      least = std::min(least, input.flows[i].reservoir_level - input.apron_level);
    return {
        worked(hydraulics::record::roller_bucket_radius,
               choice_note("roller_bucket_solid.radius_rule", "Radius of the bucket, the largest of three rules",
                           structure.invert_radius, dimension::length,
                           "By the discharge parameter, by velocity and head, and by the Froude number, over all discharges; a "
                           "fourth published rule is left out below F1 = 3.84, where it turns negative.",
                           published)),
        worked(hydraulics::record::roller_bucket_radius,
               limit_finding("roller_bucket_solid.radius_head", "Radius of the bucket over the least head on its invert",
                             structure.invert_radius / least, LimitSense::at_most, 1.0, dimension::none, Status::fails,
                             "A bucket deeper than the fall has no place.", "Compare a jump basin.", common_practice))};
  }

  void trace_tailwater_need(const site::ToeFlow& flow, const Setting& setting, Working& working) const override {
    working.add(tailwater_method, {flow.y2}, {tailwater_need(flow, setting).required}, "tailwater that the type requires");
  }

 private:
  static double bucket_length(double radius, const Setting& setting) noexcept {
    return radius * (std::tan(std::atan(setting.chute_slope) / 2.0) + std::sin(setting.choices.roller_lip_angle));
  }

  static void trace_radii(const site::ToeFlow& flow, const SizingInput& input, const Radii& radii, Working& working) {
    const double head = flow.reservoir_level - input.apron_level;
    const double crest_head = std::max(flow.reservoir_level - input.setting.crest_level, 1e-3);
    constexpr std::string_view deciding = "of the discharge that asks for the largest radius";
    working.add(hydraulics::record::roller_bucket_radius,
                {told(flow.unit_discharge, deciding), told(head, "reservoir above the invert")},
                {1000.0 * flow.unit_discharge / std::sqrt(gravity * head * head * head), radii.parameter},
                "radius by the discharge parameter");
    working.add(head_method,
                {told(ideal_velocity(flow), "of the fall from the reservoir without loss"),
                 told(crest_head, "reservoir above the crest")},
                {radii.head}, "radius by velocity and head");
    working.add(froude_method, {told(flow.F1, deciding)}, {radii.froude}, "radius by the Froude number");
  }
};

}  // namespace

const Dissipator& roller_bucket_solid() {
  static const RollerBucketSolid type;
  return type;
}

}  // namespace quell::dissipators
