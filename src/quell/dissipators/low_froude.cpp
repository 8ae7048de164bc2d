// The short basin for low Froude numbers with chute blocks, baffle piers and a dentated sill. Its proportions are chart values
// that could not be read: it is screened, set and given its length, and no element is sized.
//
// Source: George (1978), abstract; Design of small dams (1987), pages 391 and 392.
#include "quell/dissipators/parts.h"

namespace quell::dissipators {

const Dissipator& low_froude();

namespace {

constexpr double largest_share = 1.2;

constexpr Symbol y2_in[] = {{"y2", "sequent depth", dimension::length, above_zero}};
constexpr Symbol required_out[] = {{"T", "tailwater depth required above the apron", dimension::length, above_zero}};
constexpr Symbol length_out[] = {{"L", "length of the basin", dimension::length, above_zero}};

const Method tailwater_method{.id = "basin.tailwater.low_froude",
                              .title = "Tailwater that the low-Froude basin requires",
                              .equation = "T = y2",
                              .inputs = y2_in,
                              .outputs = required_out,
                              .source = "george_1978",
                              .place = "recalled as at or slightly above the sequent depth",
                              .provenance = Provenance::memory,
                              .accuracy = "not verified: for screening only",
                              .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                out[0] = in[0];
                                return {};
                              }};

const Method length_method{.id = "basin.length.low_froude",
                           .title = "Length of the low-Froude basin",
                           .equation = "L = 3*y2",
                           .inputs = y2_in,
                           .outputs = length_out,
                           .source = "george_1978",
                           .place = "recalled as about three sequent depths",
                           .provenance = Provenance::memory,
                           .accuracy = "not verified: for screening only",
                           .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                             out[0] = 3.0 * in[0];
                             return {};
                           }};

constexpr Limit limits[] = {
    {.id = "low_froude.froude_lowest",
     .title = "Inflow Froude number at every discharge",
     .measure = Measure::froude_number,
     .sense = LimitSense::at_least,
     .limit = 2.5,
     .otherwise = Status::fails,
     .advice = "Below 2.5 use a plain apron or a SAF basin.",
     .source = "george_1978",
     .place = "abstract",
     .provenance = Provenance::seen},
    {.id = "low_froude.froude_highest",
     .title = "Inflow Froude number at the largest discharge",
     .measure = Measure::froude_number,
     .sense = LimitSense::at_most,
     .limit = 5.0,
     .otherwise = Status::fails,
     .advice = "Above 5 use Type II or III.",
     .source = "george_1978",
     .place = "abstract",
     .provenance = Provenance::seen,
     .largest_only = true},
    {.id = "low_froude.velocity",
     .title = "Velocity at the toe without a physical model",
     .measure = Measure::velocity,
     .sense = LimitSense::at_most,
     .limit = 15.24,
     .otherwise = Status::caution,
     .advice = "Above {{15.24|6,0,-6|3}} a physical model is required, over the whole range of discharges.",
     .source = "dsd_1987",
     .place = "pp. 391-392",
     .provenance = Provenance::seen,
     .of_tests = true},
};

class LowFroude final : public Dissipator {
 public:
  const TypeRecord& record() const override {
    static constexpr std::string_view approach[] = {"even flow over the whole width"};
    static constexpr std::string_view failures[] = {"stones that move upstream over the sill and grind the basin",
                                                    "cavitation of the piers above {{15.24|6,0,-6|3}}",
                                                    "erosion below the sill"};
    static const Method* const methods[] = {&tailwater_method, &length_method};
    static const TypeRecord record{
        .id = "low_froude",
        .name = "Low-Froude basin",
        .summary = "Short basin with chute blocks, baffle piers and a dentated end sill for Froude numbers of 2.5 to 5.",
        .source = "george_1978",
        .place = "design criteria and charts",
        .provenance = Provenance::seen,
        .limits = limits,
        .approach = approach,
        .failure_modes = failures,
        .model =
            "velocities above {{15.24|6,0,-6|3}}: then over the full range of discharges, with bed material below the sill",
        .withheld =
            "Height, width and position of blocks, piers and sill are chart values of George, R.L. (1978), Low Froude number "
            "stilling basin design, REC-ERC-78-8, which could not be read here: level and length are for screening, and no "
            "element is given.",
        .methods = methods};
    return record;
  }

  TailwaterNeed tailwater_need(const site::ToeFlow& flow, const Setting&) const noexcept override {
    return {flow.y2, flow.y2, 1.05 * flow.y2, largest_share * flow.y2};
  }

  double length(const site::ToeFlow& flow, const Setting&) const noexcept override { return 3.0 * flow.y2; }

  Structure size(const SizingInput& input, Working* working) const override {
    const auto& longest = longest_flow(*this, input);
    trace(working, length_method, {told(longest.y2, of_longest)}, {length(longest, input.setting)},
          "length of the basin, for screening");
    return jump_basin(*this, input, working);
  }

  void trace_tailwater_need(const site::ToeFlow& flow, const Setting&, Working& working) const override {
    working.add(tailwater_method, {flow.y2}, {flow.y2}, "tailwater that the type requires");
  }
};

}  // namespace

const Dissipator& low_froude() {
  static const LowFroude type;
  return type;
}

}  // namespace quell::dissipators
