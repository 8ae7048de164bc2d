// SAF basin with walls that diverge. The flow is that of the toe's width; the sequent depth follows from the balance of
// momentum between rays, and by default the larger of it and the rectangular one sets the tailwater.
#include <algorithm>

#include "quell/dissipators/saf_rules.h"
#include "quell/hydraulics/basin_rules.h"
#include "quell/hydraulics/jump_expanding.h"

namespace quell::dissipators {

const Dissipator& saf_flared();

namespace {

constexpr double largest_share = 1.4;  ///< of the published tailwater

constexpr Limit limits[] = {
    {.id = "saf_flared.froude_lowest",
     .title = "Inflow Froude number at every discharge",
     .measure = Measure::froude_number,
     .sense = LimitSense::at_least,
     .limit = 1.7,
     .otherwise = Status::fails,
     .advice = "Below 1.7 the jump is undular: line the bed instead of building a basin.",
     .source = "blaisdell_1959",
     .place = "range of the tests",
     .provenance = Provenance::memory},
    {.id = "saf_flared.froude_largest_discharge",
     .title = "Inflow Froude number at the largest discharge",
     .measure = Measure::froude_number,
     .sense = LimitSense::at_most,
     .limit = 17.0,
     .otherwise = Status::fails,
     .advice = "Above 17 use Type II, or a physical model.",
     .source = "blaisdell_1959",
     .place = "range of the tests",
     .provenance = Provenance::memory,
     .largest_only = true},
    {.id = "saf_flared.froude_highest",
     .title = "Highest inflow Froude number",
     .measure = Measure::froude_number,
     .sense = LimitSense::at_most,
     .limit = 17.0,
     .otherwise = Status::caution,
     .advice = "Check that small discharges above the tested range are served.",
     .source = "blaisdell_1959",
     .place = "range of the tests",
     .provenance = Provenance::memory},
    {.id = "saf_flared.velocity",
     .title = "Velocity at the toe, for the blocks",
     .measure = Measure::velocity,
     .sense = LimitSense::at_most,
     .limit = 18.288,
     .otherwise = Status::fails,
     .advice = "Above {{18.288|6,0,-6|3}} chute blocks are not used: Type II, or a physical model.",
     .source = "tm_5_820_3",
     .place = "par. 5-4",
     .provenance = Provenance::seen,
     .of_tests = true},
};

double flare_of(const site::ToeFlow& flow, const Setting& setting) noexcept {
  const double largest = hydraulics::largest_flare({.F = flow.F1});
  return setting.choices.saf_flare > 0.0 ? setting.choices.saf_flare : largest;
}

/// Sequent depth at the end of the diverging jump; the rectangular one where the balance has no answer.
double sequent_depth(const site::ToeFlow& flow, const Setting& setting) noexcept {
  const double length = saf_rules::basin_length(flow.F1, flow.y2);
  const double ratio = hydraulics::radius_ratio({.b1 = setting.width, .t = flare_of(flow, setting), .Lj = length});
  const auto radial = hydraulics::sequent_depth_radial({.y1 = flow.y1, .V1 = flow.V1, .r = ratio});
  if (!radial) return flow.y2;
  return setting.choices.flared_larger ? std::max(*radial, flow.y2) : *radial;
}

double widened(double x, const Structure& structure, double width) {
  return width + (structure.end_width - width) * x / structure.length;
}

class SafFlared final : public Dissipator {
 public:
  const TypeRecord& record() const override {
    static constexpr std::string_view approach[] = {"flow that fills the width of the toe evenly",
                                                    "walls that diverge alike, no more than the flow follows"};
    static constexpr std::string_view failures[] = {"flow that leaves a wall and runs down the middle, with side eddies",
                                                    "swept out where a little tailwater is lost",
                                                    "blocks damaged by debris or cavitation"};
    static const TypeRecord record{.id = "saf_flared",
                                   .name = "SAF basin, flared",
                                   .summary =
                                       "SAF basin with diverging walls: more width at the river, at the price of a less "
                                       "certain jump.",
                                   .source = "blaisdell_1959",
                                   .place = "flared basin",
                                   .provenance = Provenance::memory,
                                   .limits = limits,
                                   .approach = approach,
                                   .failure_modes = failures,
                                   .model = "a flare beyond 1/(3 F1) per side, large structures, uneven inflow",
                                   .walls_from_tailwater = true,
                                   .methods = {}};
    return record;
  }

  TailwaterNeed tailwater_need(const site::ToeFlow& flow, const Setting& setting) const noexcept override {
    const double depth = sequent_depth(flow, setting);
    const double least = saf_rules::tailwater_factor(flow.F1) * depth;
    const double required = saf_rules::required_depth(flow.F1, depth, setting.choices);
    return {least, required, required, std::max(required, largest_share * least)};
  }

  double length(const site::ToeFlow& flow, const Setting&) const noexcept override {
    return saf_rules::basin_length(flow.F1, flow.y2);
  }

  Structure size(const SizingInput& input, Working* working) const override {
    const auto& flow = sizing_flow(input);
    Structure structure = jump_basin(*this, input, nullptr);
    const auto& longest = longest_flow(*this, input);
    trace(working, saf_rules::length_record(), {told(longest.F1, of_longest), told(longest.y2, of_longest)},
          {structure.required_length}, "length of the basin");
    const double flare = flare_of(flow, input.setting);
    trace(working, hydraulics::record::largest_flare, {flow.F1}, {hydraulics::largest_flare({.F = flow.F1})},
          "largest flare of each wall");
    structure.end_width = input.setting.width + 2.0 * flare * structure.length;
    structure.freeboard = saf_rules::wall_freeboard(input.flows, working);
    saf_rules::add_elements(structure, input, widened, working);
    return structure;
  }

  Findings findings(const SizingInput& input, const Structure& structure) const override {
    const auto& flow = sizing_flow(input);
    const double flare = (structure.end_width - input.setting.width) / (2.0 * structure.length);
    const bool larger = input.setting.choices.flared_larger;
    Findings findings = saf_rules::findings("saf_flared", input, structure);
    findings.push_back(keyed("basin.choices.saf_flare",
                             worked(hydraulics::record::largest_flare, {flow.F1},
                                    limit_finding("saf_flared.flare", "Flare of each wall at the largest discharge", flare,
                                                  LimitSense::at_most, hydraulics::largest_flare({.F = flow.F1}) * (1.0 + 1e-9),
                                                  dimension::none, Status::fails, "Lateral per longitudinal, against 1/(3 F1).",
                                                  "Reduce the flare: the flow does not follow the walls.",
                                                  {"hec14_2006", "ch. 4, errata", Provenance::seen}))));
    findings.push_back(
        keyed("basin.choices.flared_sequent_depth",
              choice_note("saf_flared.sequent_depth_rule", "Sequent depth used over that of a rectangular basin",
                          sequent_depth(flow, input.setting) / flow.y2, dimension::none,
                          larger ? "The larger of the rectangular and the radial sequent depth is used."
                                 : "The radial sequent depth is used; the rectangular one is larger above F1 = 2.26.",
                          {"blaisdell_1959", "flared basin; radial balance of momentum", Provenance::memory})));
    return findings;
  }

  void trace_tailwater_need(const site::ToeFlow& flow, const Setting& setting, Working& working) const override {
    const auto need = tailwater_need(flow, setting);
    const double depth = sequent_depth(flow, setting);
    working.add(saf_rules::tailwater_record(), {flow.F1, depth}, {need.sweep_out / depth, need.sweep_out},
                "published tailwater");
    if (setting.choices.saf_reserve)
      working.add(saf_rules::reserve_record(), {need.sweep_out, depth}, {need.required}, "tailwater that the type requires");
  }
};

}  // namespace

const Dissipator& saf_flared() {
  static const SafFlared type;
  return type;
}

}  // namespace quell::dissipators
