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
constexpr double stepped_factor = 1.17;  ///< the jump below a stepped chute is longer by this

/// 1.05 up to F1 = 8, rising to 1.10 at F1 = 9 and above: the published step at 9, ramped below it so that lowering the apron
/// cannot lose margin at the step.
double tailwater_factor(double F1) noexcept {
  return 1.05 + 0.05 * std::clamp(F1 - 8.0, 0.0, 1.0);
}

/// Six sequent depths up to F1 = 2.5, the free jump from F1 = 3, straight between: the ramp is quell's, so that a small change
/// of the flow cannot change the length by a fifth.
double long_length(double F1, double y2) noexcept {
  const double jump = hydraulics::jump_length({.F1 = F1, .y2 = y2});
  return 6.0 * y2 + (jump - 6.0 * y2) * std::clamp(2.0 * (F1 - 2.5), 0.0, 1.0);
}

constexpr Symbol need_in[] = {{"F1", "Froude number at the toe", dimension::none, {1.7, 18.0}},
                              {"y2", "sequent depth", dimension::length, above_zero}};
constexpr Symbol need_out[] = {{"T", "tailwater depth required above the apron", dimension::length, above_zero}};
constexpr Symbol long_in[] = {{"F1", "Froude number at the toe", dimension::none, {1.0, 18.0}},
                              {"y2", "sequent depth", dimension::length, above_zero}};
constexpr Symbol stepped_in[] = {{"Lj", "length on the same flow from a smooth chute", dimension::length, above_zero}};
constexpr Symbol long_out[] = {{"L", "length of the apron", dimension::length, above_zero}};

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

const Method length_method{
    .id = "basin.length.type_1",
    .title = "Length of the Type I basin, six sequent depths at low Froude numbers",
    .equation = "L = 6*y2 + (em25_jump_length(F1)*y2 - 6*y2)*min(1, max(0, 2*(F1 - 2.5)))",
    .inputs = long_in,
    .outputs = long_out,
    .source = "bee_473_2006",
    .place = "lined length of six sequent depths for F1 below 2.5; the free jump from 3, the ramp between is quell's",
    .provenance = Provenance::seen,
    .accuracy = "up to half again the length of the free jump at F1 = 1.7",
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      out[0] = long_length(in[0], in[1]);
      return {};
    }};

const Method stepped_method{.id = "basin.length.stepped_chute",
                            .title = "Length of a plain apron below a stepped chute",
                            .equation = "L = 1.17*Lj",
                            .inputs = stepped_in,
                            .outputs = long_out,
                            .source = "stojnic_2021",
                            .place = "jump about 17 % longer than below smooth chutes",
                            .provenance = Provenance::memory,
                            .accuracy = "the figure is recalled and uncertain; kept as the longer of two",
                            .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                              out[0] = stepped_factor * in[0];
                              return {};
                            }};

constexpr Limit limits[] = {
    {.id = "type_1.froude_lowest",
     .title = "Lowest inflow Froude number",
     .measure = Measure::froude_number,
     .sense = LimitSense::at_least,
     .limit = 1.7,
     .otherwise = Status::caution,
     .advice = "Line the bed over at least four sequent depths instead of building a basin for these discharges.",
     .source = "peterka_1984",
     .place = "sec. 1",
     .provenance = Provenance::memory,
     .text = "Below 1.7 the jump is undular and needs no basin."},
    {.id = "type_1.froude_usual",
     .title = "Froude number up to which a plain apron is usual",
     .measure = Measure::froude_number,
     .sense = LimitSense::at_most,
     .limit = 2.5,
     .otherwise = Status::caution,
     .advice = "Use it only where its full length is affordable and the tailwater is certain; compare Types II to IV.",
     .source = "peterka_1984",
     .place = "sec. 1",
     .provenance = Provenance::memory,
     .largest_only = true},
    {.id = "type_1.froude_table",
     .title = "Froude number within the table of jump lengths",
     .measure = Measure::froude_number,
     .sense = LimitSense::at_most,
     .limit = 18.0,
     .otherwise = Status::caution,
     .advice = "Small discharges do not govern the length; check that none of them does here.",
     .source = "peterka_1984",
     .place = "sec. 1",
     .provenance = Provenance::memory,
     .text = "Beyond the table its last value is held."},
};

class TypeOne final : public Dissipator {
 public:
  const TypeRecord& record() const override {
    static constexpr std::string_view approach[] = {"even flow over the whole width, parallel walls"};
    static constexpr std::string_view failures[] = {"swept out by a small lack of tailwater",
                                                    "uplift on long slabs under the front of the jump",
                                                    "waves that travel downstream at low Froude numbers"};
    static const Method* const methods[] = {&tailwater_method, &length_method, &stepped_method};
    static const TypeRecord record{.id = "type_1",
                                   .name = "Type I basin",
                                   .summary =
                                       "Plain horizontal apron with parallel walls; nothing for debris to break, and the "
                                       "longest of the jump basins.",
                                   .source = "peterka_1984",
                                   .place = "sec. 1",
                                   .provenance = Provenance::memory,
                                   .limits = limits,
                                   .approach = approach,
                                   .failure_modes = failures,
                                   .model = "uneven inflow, or a length shorter than the jump",
                                   .methods = methods};
    return record;
  }

  TailwaterNeed tailwater_need(const site::ToeFlow& flow, const Setting&) const noexcept override {
    const double required = tailwater_factor(flow.F1) * flow.y2;
    return {sweep_out_share * flow.y2, required, required, largest_share * flow.y2};
  }

  double length(const site::ToeFlow& flow, const Setting& setting) const noexcept override {
    return smooth_length(flow, setting) * (setting.is_stepped ? stepped_factor : 1.0);
  }

  Structure size(const SizingInput& input, Working* working) const override {
    const auto& flow = longest_flow(*this, input);
    const double smooth = smooth_length(flow, input.setting);
    trace(working, input.setting.choices.type_1_long ? length_method : hydraulics::record::jump_length_em25,
          {told(flow.F1, of_longest), told(flow.y2, of_longest)}, {smooth}, "length of the basin");
    if (input.setting.is_stepped) trace(working, stepped_method, {smooth}, {stepped_factor * smooth}, "length below the steps");
    return jump_basin(*this, input, working);
  }

  Findings findings(const SizingInput& input, const Structure&) const override {
    const auto& flow = longest_flow(*this, input);
    const bool is_long = input.setting.choices.type_1_long;
    Findings findings{worked(
        is_long ? length_method : hydraulics::record::jump_length_em25,
        choice_note(
            "type_1.length_rule", "Length of the apron over the sequent depth", length(flow, input.setting) / flow.y2,
            dimension::none,
            is_long
                ? "Below F1 = 2.5 the longer rule of six sequent depths is used; the free jump would be shorter there."
                : "The length of the free jump is used at every Froude number; six sequent depths are usual below F1 = 2.5.",
            {"bee_473_2006", "beside the curve of Engineering Monograph 25", Provenance::seen}))};
    if (input.setting.is_stepped)
      findings.push_back(
          worked(stepped_method, choice_note("type_1.stepped_length", "Lengthening of the jump below steps", stepped_factor,
                                             dimension::none, "The apron is this many times as long as below a smooth chute.",
                                             {"stojnic_2021", "figure recalled, uncertain", Provenance::memory})));
    return findings;
  }

  void trace_tailwater_need(const site::ToeFlow& flow, const Setting& setting, Working& working) const override {
    working.add(tailwater_method, {flow.F1, flow.y2}, {tailwater_need(flow, setting).required},
                "tailwater that the type requires");
  }

 private:
  static double smooth_length(const site::ToeFlow& flow, const Setting& setting) noexcept {
    return setting.choices.type_1_long ? long_length(flow.F1, flow.y2)
                                       : hydraulics::jump_length({.F1 = flow.F1, .y2 = flow.y2});
  }
};

}  // namespace

const Dissipator& type_1() {
  static const TypeOne type;
  return type;
}

}  // namespace quell::dissipators
