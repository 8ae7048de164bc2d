// Sloping apron (Basin V): the jump stands on a slope, under deep tailwater. The level of the option is that of the apron's
// downstream end; the flow enters at the front of the jump, higher up, so that each discharge has its own front.
//
// Source: Peterka (1984), section 5, recalled; tailwater and length by the fits that Subramanya gives.
#include <cmath>

#include "quell/dissipators/parts.h"
#include "quell/hydraulics/jump_slope.h"

namespace quell::dissipators {

const Dissipator& sloping_apron();

namespace {

constexpr double sill_share = 0.1;
constexpr double largest_share = 1.3;  ///< of the required depth

constexpr Symbol y2_in[] = {{"y2", "sequent depth on a level apron", dimension::length, above_zero}};
constexpr Symbol y2_t_in[] = {{"y2", "sequent depth on a level apron", dimension::length, above_zero},
                              {"t", "slope of the apron, fall per horizontal length", dimension::none, {0.02, 0.30}}};
constexpr Symbol share_in[] = {{"Lj", "horizontal length of the jump", dimension::length, above_zero},
                               {"c", "share of it that is paved", dimension::none, {0.6, 1.0}}};
constexpr Symbol required_out[] = {
    {"T", "tailwater depth required above the apron's downstream end", dimension::length, above_zero}};
constexpr Symbol length_out[] = {{"L", "horizontal length of the apron", dimension::length, above_zero}};
constexpr Symbol sill_out[] = {{"h4", "height of the end sill", dimension::length, above_zero}};

const Method tailwater_method{.id = "basin.tailwater.sloping_apron",
                              .title = "Tailwater that the sloping apron requires",
                              .equation = "T = 1.0071*exp(3.2386*t)*y2",
                              .inputs = y2_t_in,
                              .outputs = required_out,
                              .source = "subramanya_2009",
                              .place = "fit of the tests of Bradley and Peterka",
                              .provenance = Provenance::memory,
                              .accuracy = "another fit asks for 2 to 15 % more",
                              .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                out[0] = hydraulics::sloping_ratio(in[1]) * in[0];
                                return {};
                              }};

const Method length_method{.id = "basin.length.sloping_apron",
                           .title = "Length of the sloping apron",
                           .equation = "L = c*Lj",
                           .inputs = share_in,
                           .outputs = length_out,
                           .source = "peterka_1984",
                           .place = "sec. 5: built aprons average about 60 % of the jump; the whole jump on an erodible bed",
                           .provenance = Provenance::memory,
                           .accuracy = "rule of practice",
                           .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                             out[0] = in[1] * in[0];
                             return {};
                           }};

const Method sill_method{.id = "basin.end_sill.sloping_apron",
                         .title = "End sill of the sloping apron",
                         .equation = "h4 = 0.1*y2",
                         .inputs = y2_in,
                         .outputs = sill_out,
                         .source = "peterka_1984",
                         .place = "sec. 5: solid triangular sill of 0.05 to 0.10 of the sequent depth; the higher is taken",
                         .provenance = Provenance::memory,
                         .accuracy = "rule of practice",
                         .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                           out[0] = sill_share * in[0];
                           return {};
                         }};

constexpr Limit limits[] = {
    {.id = "sloping_apron.froude_lowest",
     .title = "Inflow Froude number at every discharge",
     .measure = Measure::froude_number,
     .sense = LimitSense::at_least,
     .limit = 2.5,
     .otherwise = Status::fails,
     .advice = "Below 2.5 the tests say nothing; compare a plain level apron.",
     .source = "peterka_1984",
     .place = "sec. 5",
     .provenance = Provenance::memory},
    {.id = "sloping_apron.froude_usual",
     .title = "Inflow Froude number within the tests, lower end",
     .measure = Measure::froude_number,
     .sense = LimitSense::at_least,
     .limit = 4.0,
     .otherwise = Status::caution,
     .advice = "Below 4 the fit of the tailwater is extrapolated: leave more margin.",
     .source = "subramanya_2009",
     .place = "fit for F1 of 4 to 14",
     .provenance = Provenance::memory},
    {.id = "sloping_apron.froude_highest",
     .title = "Inflow Froude number within the tests, upper end",
     .measure = Measure::froude_number,
     .sense = LimitSense::at_most,
     .limit = 13.0,
     .otherwise = Status::caution,
     .advice = "Small discharges above the tested range do not govern the length; check that none does here.",
     .source = "subramanya_2009",
     .place = "length for F1 of 4.5 to 13",
     .provenance = Provenance::memory},
    {.id = "sloping_apron.unit_discharge",
     .title = "Unit discharge without a physical model",
     .measure = Measure::unit_discharge,
     .sense = LimitSense::at_most,
     .limit = 46.4515,
     .otherwise = Status::caution,
     .advice = "A physical model is required: the unit discharge is above the tested range ({{46.4515|12,0,-6|3}}).",
     .source = "peterka_1984",
     .place = "sec. 5",
     .provenance = Provenance::memory,
     .of_tests = true},
};

double jump_length(const site::ToeFlow& flow, const Setting& setting) noexcept {
  return hydraulics::jump_length_sloping({.y2s = flow.y2, .t = setting.choices.apron_slope});
}

class SlopingApron final : public Dissipator {
 public:
  const TypeRecord& record() const override {
    static constexpr std::string_view approach[] = {"even flow over the whole width",
                                                    "chute of any slope, unless it is long and flat"};
    static constexpr std::string_view failures[] = {"swept out at a middle discharge whose tailwater was not looked at",
                                                    "jump that slides down the apron when the river bed has degraded",
                                                    "stones drawn onto the apron by one-sided operation"};
    static const Method* const methods[] = {&tailwater_method, &length_method, &sill_method};
    static const TypeRecord record{.id = "sloping_apron",
                                   .name = "Sloping apron (Basin V)",
                                   .summary =
                                       "Apron on a slope with a small solid sill, for large dams under deep tailwater or on "
                                       "sloping rock.",
                                   .source = "peterka_1984",
                                   .place = "sec. 5",
                                   .provenance = Provenance::memory,
                                   .action = Action::sloping_jump,
                                   .limits = limits,
                                   .approach = approach,
                                   .failure_modes = failures,
                                   .model = "more than {{46.4515|12,0,-6|3}}, unequal gates, any major dam",
                                   .methods = methods};
    return record;
  }

  double front_rise(const site::ToeFlow& flow, const Setting& setting) const noexcept override {
    const double wanted = length(flow, setting);
    return setting.choices.apron_slope * (setting.length > 0.0 ? std::min(wanted, setting.length) : wanted);
  }

  TailwaterNeed tailwater_need(const site::ToeFlow& flow, const Setting& setting) const noexcept override {
    const double required = hydraulics::sloping_ratio(setting.choices.apron_slope) * flow.y2;
    return {required, required, largest_share * required, largest_share * required};
  }

  double length(const site::ToeFlow& flow, const Setting& setting) const noexcept override {
    return setting.choices.apron_share * jump_length(flow, setting);
  }

  Structure size(const SizingInput& input, Working* working) const override {
    const auto& flow = sizing_flow(input);
    const auto& longest = longest_flow(*this, input);
    const double slope = input.setting.choices.apron_slope;
    Structure structure = jump_basin(*this, input, working);
    structure.floor = {{0.0, slope * structure.length}, {structure.length, 0.0}};
    structure.end_sill_height = sill_share * flow.y2;
    auto sill = solid_sill(input.setting.width, structure.end_sill_height, 3.0, structure.length);
    sill.profile.front().z = slope * sill.length;
    sill.remark = "triangular, upstream face 3H:1V; half this height is published too";
    structure.elements = {sill};
    trace(working, hydraulics::record::jump_length_sloping,
          {told(longest.y2, of_longest), given(slope, "basin.choices.apron_slope"), told(longest.F1, of_longest)},
          {jump_length(longest, input.setting)}, "horizontal length of the jump");
    trace(working, length_method,
          {jump_length(longest, input.setting), given(input.setting.choices.apron_share, "basin.choices.apron_share")},
          {structure.required_length}, "length of the apron");
    trace(working, sill_method, {flow.y2}, {structure.end_sill_height}, "end sill");
    add_face_load(structure, "end_sill", "Force on the end sill, whole width", input.setting.width * structure.end_sill_height,
                  flow.V1, working);
    return structure;
  }

  Findings findings(const SizingInput& input, const Structure&) const override {
    const auto& flow = sizing_flow(input);
    const auto& choices = input.setting.choices;
    const double upper = hydraulics::sequent_depth_rajaratnam({flow.y1, flow.V1, std::atan(choices.apron_slope)});
    const double required = tailwater_need(flow, input.setting).required;
    return {
        keyed("basin.choices.apron_share",
              worked(length_method, limit_finding("sloping_apron.length_rule", "Paved share of the jump", choices.apron_share,
                                                  LimitSense::at_least, 1.0, dimension::none, Status::caution,
                                                  choices.apron_share < 1.0
                                                      ? "Part of the jump stands on the river bed."
                                                      : "The whole jump stands on the apron; on rock about 0.6 of it is usual.",
                                                  "Show that the rock behind the apron withstands the end of the jump.",
                                                  {"peterka_1984", "sec. 5", Provenance::memory}))),
        worked(tailwater_method,
               choice_note("sloping_apron.tailwater_second", "Tailwater by the second published fit over the one used",
                           upper / required, dimension::none,
                           "The first is used for the level; the second bounds it from above at the largest discharge.",
                           {"rajaratnam_1967", "G = 10^(0.027 theta) F1 in the formula for level aprons", Provenance::memory})),
        keyed("basin.choices.apron_slope",
              limit_finding("sloping_apron.slope", "Slope of the apron within the tests", choices.apron_slope,
                            LimitSense::at_least, 0.05, dimension::none, Status::caution, "Fall per horizontal length.",
                            "On a slope flatter than 0.05 a level apron does the same with less tailwater.",
                            {"peterka_1984", "sec. 5", Provenance::memory}))};
  }

  void trace_tailwater_need(const site::ToeFlow& flow, const Setting& setting, Working& working) const override {
    working.add(tailwater_method, {flow.y2, given(setting.choices.apron_slope, "basin.choices.apron_slope")},
                {tailwater_need(flow, setting).required}, "tailwater that the type requires");
  }
};

}  // namespace

const Dissipator& sloping_apron() {
  static const SlopingApron type;
  return type;
}

}  // namespace quell::dissipators
