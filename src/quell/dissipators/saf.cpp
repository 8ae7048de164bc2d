// SAF basin with parallel walls: chute blocks, floor blocks and a low sill on a very short floor, for small structures.
#include <algorithm>

#include "quell/dissipators/saf_rules.h"

namespace quell::dissipators {

const Dissipator& saf();

namespace {

constexpr double largest_share = 1.4;  ///< of the published tailwater

constexpr Limit limits[] = {
    {.id = "saf.froude_lowest",
     .title = "Inflow Froude number at every discharge",
     .measure = Measure::froude_number,
     .sense = LimitSense::at_least,
     .limit = 1.7,
     .otherwise = Status::fails,
     .advice = "Below 1.7 the jump is undular: line the bed instead of building a basin.",
     .source = "blaisdell_1959",
     .place = "range of the tests",
     .provenance = Provenance::memory},
    {.id = "saf.froude_largest_discharge",
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
    {.id = "saf.froude_highest",
     .title = "Highest inflow Froude number",
     .measure = Measure::froude_number,
     .sense = LimitSense::at_most,
     .limit = 17.0,
     .otherwise = Status::caution,
     .advice = "Check that small discharges above the tested range are served.",
     .source = "blaisdell_1959",
     .place = "range of the tests",
     .provenance = Provenance::memory},
    {.id = "saf.velocity",
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

double level_width(double, const Structure&, double width) {
  return width;
}

class Saf final : public Dissipator {
 public:
  const TypeRecord& record() const override {
    static constexpr std::string_view approach[] = {"walls of the transition flare at most 1 on 8; parallel inside the basin",
                                                    "wing walls at 45 degrees, as high as the walls, tops falling 1:1"};
    static constexpr std::string_view failures[] = {"swept out where a little tailwater is lost: there is hardly a reserve",
                                                    "blocks damaged by debris or cavitation", "scour below the short floor"};
    static const TypeRecord record{.id = "saf",
                                   .name = "SAF basin",
                                   .summary =
                                       "Chute blocks, floor blocks and a low end sill on a very short floor with parallel "
                                       "walls, for small structures.",
                                   .source = "blaisdell_1959",
                                   .place = "rectangular basin",
                                   .provenance = Provenance::memory,
                                   .limits = limits,
                                   .approach = approach,
                                   .failure_modes = failures,
                                   .model = "large structures, uneven inflow, tailwater below the published depth",
                                   .walls_from_tailwater = true,
                                   .methods = saf_rules::methods()};
    return record;
  }

  TailwaterNeed tailwater_need(const site::ToeFlow& flow, const Setting& setting) const noexcept override {
    const double least = saf_rules::tailwater_factor(flow.F1) * flow.y2;
    const double required = saf_rules::required_depth(flow.F1, flow.y2, setting.choices);
    return {least, required, required, std::max(required, largest_share * least)};
  }

  double length(const site::ToeFlow& flow, const Setting&) const noexcept override {
    return saf_rules::basin_length(flow.F1, flow.y2);
  }

  Structure size(const SizingInput& input, Working* working) const override {
    Structure structure = jump_basin(*this, input, nullptr);
    const auto& longest = longest_flow(*this, input);
    trace(working, saf_rules::length_record(), {told(longest.F1, of_longest), told(longest.y2, of_longest)},
          {structure.required_length}, "length of the basin");
    structure.freeboard = saf_rules::wall_freeboard(input.flows, working);
    saf_rules::add_elements(structure, input, level_width, working);
    return structure;
  }

  Findings findings(const SizingInput& input, const Structure& structure) const override {
    return saf_rules::findings("saf", input, structure);
  }

  void trace_tailwater_need(const site::ToeFlow& flow, const Setting& setting, Working& working) const override {
    const auto need = tailwater_need(flow, setting);
    working.add(saf_rules::tailwater_record(), {flow.F1, flow.y2}, {need.sweep_out / flow.y2, need.sweep_out},
                "published tailwater");
    if (setting.choices.saf_reserve)
      working.add(saf_rules::reserve_record(), {need.sweep_out, flow.y2}, {need.required}, "tailwater that the type requires");
  }
};

}  // namespace

const Dissipator& saf() {
  static const Saf type;
  return type;
}

}  // namespace quell::dissipators
