// Type I basin: plain horizontal apron. The jump alone does the work, so that the full length of the jump is paved.
//
// Source: Peterka (1984), section 1. Allowance on tailwater for F1 above 9 and the depths at which the front moves: section 5
// as reproduced in teaching notes (Jamal 2017).
#include <algorithm>

#include "quell/dissipators/parts.h"
#include "quell/hydraulics/jump.h"

namespace quell::dissipators {

const Dissipator& type_1();

namespace {

constexpr double sweep_out_share = 0.96;  ///< at F1 = 10 the jump has probably left the basin
constexpr double largest_share = 1.2;

/// 1.05 up to F1 = 8, rising to 1.10 at F1 = 9 and above: the published step at 9, ramped below it so that lowering the apron
/// cannot lose margin at the step.
double tailwater_factor(double F1) noexcept {
  return 1.05 + 0.05 * std::clamp(F1 - 8.0, 0.0, 1.0);
}

constexpr Symbol need_in[] = {{"F1", "Froude number at the toe", dimension::none, {1.7, 18.0}},
                              {"y2", "sequent depth", dimension::length, above_zero}};
constexpr Symbol need_out[] = {{"T", "tailwater depth required above the apron", dimension::length, above_zero}};

const Method tailwater_method{
    .id = "basin.tailwater.type_1",
    .title = "Tailwater that the Type I basin requires",
    .equation = "T = (1.05 + 0.05*min(1, max(0, F1 - 8)))*y2",
    .inputs = need_in,
    .outputs = need_out,
    .source = "jamal_2017",
    .place = "allowance of 10 % for F1 above 9, read there; 5 % below: common practice; the ramp from 8 to 9 is quell's",
    .provenance = Provenance::seen,
    .accuracy = "rule of practice",
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      out[0] = tailwater_factor(in[0]) * in[1];
      return {};
    }};

class TypeOne final : public Dissipator {
 public:
  const TypeRecord& record() const override {
    static constexpr std::string_view failures[] = {"swept out by a small lack of tailwater",
                                                    "uplift on long slabs under the front of the jump",
                                                    "waves that travel downstream at low Froude numbers"};
    static const Method* const methods[] = {&tailwater_method};
    static const TypeRecord record{.id = "type_1",
                                   .name = "Type I basin",
                                   .summary =
                                       "Plain horizontal apron with parallel walls; nothing for debris to break, and the "
                                       "longest of the jump basins.",
                                   .source = "peterka_1984",
                                   .place = "sec. 1",
                                   .provenance = Provenance::memory,
                                   .failure_modes = failures,
                                   .methods = methods};
    return record;
  }

  TailwaterNeed tailwater_need(const site::ToeFlow& flow) const noexcept override {
    const double required = tailwater_factor(flow.F1) * flow.y2;
    return {sweep_out_share * flow.y2, required, required, largest_share * flow.y2};
  }

  double length(const site::ToeFlow& flow) const noexcept override {
    return hydraulics::jump_length({.F1 = flow.F1, .y2 = flow.y2});
  }

  Findings limits(const SizingInput& input) const override {
    const Rule rule{"peterka_1984", "sec. 1", Provenance::memory};
    const auto lowest = smallest(input.flows, &site::ToeFlow::F1);
    const auto highest = largest(input.flows, &site::ToeFlow::F1);
    return {
        limit_finding("type_1.froude_lowest", "Lowest inflow Froude number", lowest.value, LimitSense::at_least, 1.7,
                      dimension::none, Status::caution,
                      "The lowest Froude number of the range stands " + at_discharge(lowest.discharge) +
                          "; below 1.7 the jump is undular and needs no basin.",
                      "Line the bed over at least four sequent depths instead of building a basin for these discharges.", rule),
        limit_finding("type_1.froude_usual", "Froude number up to which a plain apron is usual", sizing_flow(input).F1,
                      LimitSense::at_most, 2.5, dimension::none, Status::caution,
                      "At the largest discharge the Froude number is above the usual range of a plain apron.",
                      "Use it only where its full length is affordable and the tailwater is certain; compare Types II to IV.",
                      rule),
        limit_finding("type_1.froude_table", "Froude number within the table of jump lengths", highest.value,
                      LimitSense::at_most, 18.0, dimension::none, Status::caution,
                      "The highest Froude number stands " + at_discharge(highest.discharge) +
                          "; beyond the table its last value is held.",
                      "Small discharges do not govern the length; check that none of them does here.", rule)};
  }

  Structure size(const SizingInput& input, Working* working) const override {
    return common_structure(*this, input, hydraulics::record::jump_length_em25, working);
  }

  void trace_tailwater_need(const site::ToeFlow& flow, Working& working) const override {
    working.add(tailwater_method, {flow.F1, flow.y2}, {tailwater_need(flow).required}, "tailwater that the type requires");
  }
};

}  // namespace

const Dissipator& type_1() {
  static const TypeOne type;
  return type;
}

}  // namespace quell::dissipators
