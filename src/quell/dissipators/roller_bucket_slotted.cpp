// Slotted roller bucket: teeth and an apron behind them, self-cleaning and at ease over a wider range of tailwater than the
// solid bucket. Its radius and its least and largest tailwater are chart values that could not be read: it is screened only.
//
// Source: Beichley and Peterka, slotted bucket tests; Peterka (1984), section 7.
#include <utility>

#include "quell/dissipators/parts.h"

namespace quell::dissipators {

const Dissipator& roller_bucket_slotted();

namespace {

constexpr double required_share = 1.1;  ///< lower end of what selection tables give for roller buckets
constexpr double largest_share = 1.4;

constexpr Symbol y2_in[] = {{"y2", "sequent depth", dimension::length, above_zero}};
constexpr Symbol required_out[] = {{"T", "tailwater depth for screening, above the invert", dimension::length, above_zero}};

const Method tailwater_method{.id = "bucket.tailwater.roller_slotted",
                              .title = "Tailwater of roller buckets, for screening",
                              .equation = "T = 1.1*y2",
                              .inputs = y2_in,
                              .outputs = required_out,
                              .source = "practice",
                              .place = "selection tables: 1.1 to 1.4 of the sequent depth, and more",
                              .provenance = Provenance::common_practice,
                              .accuracy = "not the charts of the tests: for screening only",
                              .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                out[0] = required_share * in[0];
                                return {};
                              }};

constexpr Limit limits[] = {
    {.id = "roller_bucket_slotted.froude_lowest",
     .title = "Froude number of the entering jet at every discharge",
     .measure = Measure::froude_number,
     .sense = LimitSense::at_least,
     .limit = 2.0,
     .otherwise = Status::fails,
     .advice = "Below 2 no roller forms: compare a jump basin.",
     .source = "peterka_1984",
     .place = "sec. 7",
     .provenance = Provenance::memory},
    {.id = "roller_bucket_slotted.froude_highest",
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

class RollerBucketSlotted final : public Dissipator {
 public:
  const TypeRecord& record() const override {
    static constexpr std::string_view approach[] = {"all gates alike: side rollers carry stones into the bucket"};
    static constexpr std::string_view failures[] = {"jet swept out below the least tailwater",
                                                    "jet that dives and scours the bed above the largest tailwater",
                                                    "rough water that attacks the banks at low tailwater"};
    static const Method* const methods[] = {&tailwater_method};
    static const TypeRecord record{
        .id = "roller_bucket_slotted",
        .name = "Slotted roller bucket",
        .summary = "Type VII: roller bucket with teeth, which sweeps stones out again, under high tailwater.",
        .source = "beichley_peterka_1959",
        .place = "charts of least radius, least and largest tailwater",
        .provenance = Provenance::seen,
        .action = Action::roller,
        .limits = limits,
        .approach = approach,
        .failure_modes = failures,
        .model = "any bucket whose discharges do not all lie between the charted least and largest tailwater",
        .withheld =
            "Radius, teeth and the least and largest tailwater are chart values of Beichley, G.L. and Peterka, A.J., slotted "
            "bucket energy dissipators (HYD-415), which could not be read here; two readings of the apron's slope disagree. "
            "The "
            "level is for screening, and no element is given.",
        .walls_from_tailwater = true,
        .methods = methods};
    return record;
  }

  double front_rise(const site::ToeFlow& flow, const Setting&) const noexcept override { return required_share * flow.y2; }

  TailwaterNeed tailwater_need(const site::ToeFlow& flow, const Setting&) const noexcept override {
    return {required_share * flow.y2, required_share * flow.y2, largest_share * flow.y2, largest_share * flow.y2};
  }

  /// The bucket's length follows from a radius that is not known: the sequent depth stands for its size.
  double length(const site::ToeFlow& flow, const Setting&) const noexcept override { return flow.y2; }

  Structure size(const SizingInput& input, Working* working) const override {
    Structure structure = jump_basin(*this, input, working);
    structure.invert_radius = 0.0;
    structure.length = std::exchange(structure.required_length, 0.0);  // a bucket's end does not move
    set_level_floor(structure);
    return structure;
  }

  void trace_tailwater_need(const site::ToeFlow& flow, const Setting& setting, Working& working) const override {
    working.add(tailwater_method, {flow.y2}, {tailwater_need(flow, setting).required}, "tailwater for screening");
  }
};

}  // namespace

const Dissipator& roller_bucket_slotted() {
  static const RollerBucketSlotted type;
  return type;
}

}  // namespace quell::dissipators
