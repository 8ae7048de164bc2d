// Impact basin (Type VI): the jet of a pipe or a small channel hits a hanging wall. It needs no tailwater, and its width
// follows from the jet alone.
//
// Source: Peterka (1984), section 6, recalled; limits and proportions as reproduced from Hydraulic Engineering Circular 14 and
// in course notes on canal structures, read.
#include <algorithm>
#include <cmath>

#include "quell/base/constants.h"
#include "quell/base/curve.h"
#include "quell/base/quantity_text.h"
#include "quell/dissipators/parts.h"

namespace quell::dissipators {

const Dissipator& impact();

namespace {

constexpr Rule notes{"canal_structures_notes_2010", "baffled outlets", Provenance::seen};

constexpr Symbol jet_in[] = {{"Q", "discharge", dimension::discharge, above_zero},
                             {"V", "velocity entering", dimension::velocity, above_zero}};
constexpr Symbol jet_out[] = {{"d", "side of the jet taken as square", dimension::length, above_zero},
                              {"F", "Froude number of the square jet", dimension::none, above_zero}};
constexpr Symbol width_in[] = {{"d", "side of the jet taken as square", dimension::length, above_zero},
                               {"F", "Froude number of the square jet", dimension::none, {0.9, 9.0}}};
constexpr Symbol width_out[] = {{"W", "width of the basin", dimension::length, above_zero}};
constexpr Symbol depth_in[] = {{"Q", "discharge", dimension::discharge, above_zero},
                               {"V", "velocity entering", dimension::velocity, above_zero}};
constexpr Symbol depth_out[] = {{"ye", "equivalent depth", dimension::length, above_zero},
                                {"F", "Froude number with the equivalent depth", dimension::none, above_zero},
                                {"Ho", "energy head entering", dimension::length, above_zero}};
constexpr Symbol size_in[] = {{"W", "width of the basin", dimension::length, {1.2, 6.1}}};
constexpr Symbol size_out[] = {{"h1", "height of the walls", dimension::length, above_zero},
                               {"h2", "height of the hanging wall", dimension::length, above_zero},
                               {"h3", "gap below it, and height of the end sill", dimension::length, above_zero},
                               {"h4", "height of the walls at the downstream end", dimension::length, above_zero},
                               {"L", "length of the basin", dimension::length, above_zero},
                               {"L1", "entrance to hanging wall", dimension::length, above_zero}};
constexpr Symbol force_in[] = {{"Q", "discharge", dimension::discharge, above_zero},
                               {"V", "velocity entering", dimension::velocity, above_zero}};
constexpr Symbol force_out[] = {{"Fi", "force on the hanging wall", dimension::force, above_zero}};

struct Jet {
  double d, F;
};
Jet square_jet(double Q, double V) noexcept {
  const double d = std::sqrt(Q / V);
  return {d, V / std::sqrt(gravity * d)};
}

double read_ratio(double F) noexcept {
  static const Curve& ratio = curve("impact_width");
  return ratio.at(F);
}
double wide_ratio(double F) noexcept {
  return std::max(3.0 * std::pow(F, 0.55), read_ratio(F));
}

const Method jet_method{.id = "basin.jet.impact",
                        .title = "Square jet of the impact basin",
                        .equation = "d = sqrt(Q/V); F = V/sqrt(g*d)",
                        .inputs = jet_in,
                        .outputs = jet_out,
                        .source = "canal_structures_notes_2010",
                        .place = "baffled outlets",
                        .provenance = Provenance::seen,
                        .accuracy = "definition",
                        .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                          const Jet jet = square_jet(in[0], in[1]);
                          out[0] = jet.d;
                          out[1] = jet.F;
                          return {};
                        }};

const Method wide_method{.id = "basin.width.impact",
                         .title = "Width of the impact basin, the wider rule",
                         .equation = "W = max(3*F^0.55, impact_width(F))*d",
                         .inputs = width_in,
                         .outputs = width_out,
                         .source = "peterka_1984",
                         .place = "sec. 6, fit over few recalled points of the chart, and the points",
                         .provenance = Provenance::memory,
                         .accuracy = "0 to 6 % above the points recalled: for first sizing",
                         .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                           out[0] = wide_ratio(in[1]) * in[0];
                           return {};
                         }};

const Method read_method{.id = "basin.width.impact_points",
                         .title = "Width of the impact basin, straight between the points recalled",
                         .equation = "W = impact_width(F)*d",
                         .inputs = width_in,
                         .outputs = width_out,
                         .source = "peterka_1984",
                         .place = "sec. 6, chart of width over jet",
                         .provenance = Provenance::memory,
                         .accuracy = "8 %: few points",
                         .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                           out[0] = read_ratio(in[1]) * in[0];
                           return {};
                         }};

const Method depth_method{.id = "basin.equivalent_depth.impact",
                          .title = "Equivalent depth, Froude number and energy of the impact basin's inflow",
                          .equation = "ye = sqrt(Q/(2*V)); F = V/sqrt(g*ye); Ho = ye + V^2/(2*g)",
                          .inputs = depth_in,
                          .outputs = depth_out,
                          .source = "hec14_2006",
                          .place = "sec. 9.4; this Froude number is 1.189 times that of the square jet",
                          .provenance = Provenance::memory,
                          .accuracy = "definition",
                          .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                            out[0] = std::sqrt(in[0] / (2.0 * in[1]));
                            out[1] = in[1] / std::sqrt(gravity * out[0]);
                            out[2] = out[0] + in[1] * in[1] / (2.0 * gravity);
                            return {};
                          }};

struct Proportions {
  double h1, h2, h3, h4, L, L1;
};
Proportions proportions(double W) noexcept {
  return {0.767 * W, 0.375 * W, W / 6.0, 5.0 * W / 12.0, 4.0 * W / 3.0, 0.572 * W};
}

const Method size_method{.id = "basin.dimensions.impact",
                         .title = "Dimensions of the impact basin from its width",
                         .equation = "h1 = 0.767*W; h2 = 0.375*W; h3 = W/6; h4 = 5*W/12; L = 4*W/3; L1 = 0.572*W",
                         .inputs = size_in,
                         .outputs = size_out,
                         .source = "hec14_2006",
                         .place = "table 9.2 as reproduced in a municipal code, as ratios",
                         .provenance = Provenance::seen,
                         .accuracy = "2.5 % of the table, which is rounded to inches; two cells of it are misprints",
                         .remarks = "Which letter of the table names which dimension is recalled: compare with the figure.",
                         .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                           const Proportions p = proportions(in[0]);
                           const double values[] = {p.h1, p.h2, p.h3, p.h4, p.L, p.L1};
                           std::copy(std::begin(values), std::end(values), out.begin());
                           return {};
                         }};

const Method force_method{.id = "basin.force.impact",
                          .title = "Force of the jet on the hanging wall",
                          .equation = "Fi = rho*Q*V",
                          .inputs = force_in,
                          .outputs = force_out,
                          .source = "momentum",
                          .place = "the jet loses its momentum at the wall",
                          .provenance = Provenance::derived,
                          .accuracy = "mean force; fluctuation not included",
                          .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                            out[0] = water_density * in[0] * in[1];
                            return {};
                          }};

constexpr Limit limits[] = {
    {.id = "impact.discharge",
     .title = "Discharge of one basin",
     .measure = Measure::discharge,
     .sense = LimitSense::at_most,
     .limit = 11.326739,
     .otherwise = Status::fails,
     .advice = "Above {{11.326739|18,0,-6|3}} divide the flow between basins, or use a basin for a jump.",
     .source = "hec14_2006",
     .place = "screening table of 1975, as reproduced",
     .provenance = Provenance::seen,
     .of_tests = true},
    {.id = "impact.velocity",
     .title = "Velocity entering",
     .measure = Measure::velocity,
     .sense = LimitSense::at_most,
     .limit = 15.24,
     .otherwise = Status::fails,
     .advice = "Above {{15.24|6,0,-6|3}} use a basin for a jump.",
     .source = "hec14_2006",
     .place = "screening table of 1975, as reproduced",
     .provenance = Provenance::seen,
     .of_tests = true},
    {.id = "impact.discharge_tested",
     .title = "Discharge within the tests",
     .measure = Measure::discharge,
     .sense = LimitSense::at_most,
     .limit = 9.599411,
     .otherwise = Status::caution,
     .advice = "The tests themselves ended at {{9.599411|18,0,-6|3}}: have the design checked.",
     .source = "peterka_1984",
     .place = "sec. 6",
     .provenance = Provenance::memory},
    {.id = "impact.velocity_tested",
     .title = "Velocity within the tests",
     .measure = Measure::velocity,
     .sense = LimitSense::at_most,
     .limit = 9.144,
     .otherwise = Status::caution,
     .advice = "The tests themselves ended at {{9.144|6,0,-6|3}}: have the design checked.",
     .source = "peterka_1984",
     .place = "sec. 6",
     .provenance = Provenance::memory},
};

double width_of(const site::ToeFlow& flow, const Setting& setting) noexcept {
  const Jet jet = square_jet(flow.discharge, flow.V1);
  return (setting.choices.impact_wide ? wide_ratio(jet.F) : read_ratio(jet.F)) * jet.d;
}

class Impact final : public Dissipator {
 public:
  const TypeRecord& record() const override {
    static constexpr std::string_view approach[] = {
        "pipe horizontal over at least three diameters before the basin, sized for about {{3.6576|6,0,-6|3}}",
        "air vent of a sixth of the pipe's diameter near its upstream end", "little floating debris"};
    static constexpr std::string_view failures[] = {
        "clogged by debris: all the water then runs over the hanging wall", "high tailwater that runs over the wall",
        "a jet that passes under the wall of a basin that is too wide", "cracks in the hanging wall from the force of the jet"};
    static const Method* const methods[] = {&jet_method,   &wide_method, &read_method,
                                            &depth_method, &size_method, &force_method};
    static const TypeRecord record{
        .id = "impact",
        .name = "Impact basin (Type VI)",
        .summary =
            "Small box with a hanging wall that the jet of a pipe or small channel hits; no "
            "tailwater is needed.",
        .source = "peterka_1984",
        .place = "sec. 6",
        .provenance = Provenance::memory,
        .action = Action::impact,
        .level_rule = LevelRule::river_bed,
        .limits = limits,
        .approach = approach,
        .failure_modes = failures,
        .model = "more than {{11.3267|18,0,-6|3}} or {{15.24|6,0,-6|3}}, and where debris is certain",
        .walls_from_tailwater = true,
        .methods = methods};
    return record;
  }

  TailwaterNeed tailwater_need(const site::ToeFlow&, const Setting& setting) const noexcept override {
    const Proportions p = proportions(setting.width);
    return {0.0, 0.0, p.h3 + p.h2 / 2.0, p.h3 + p.h2};
  }

  double length(const site::ToeFlow&, const Setting& setting) const noexcept override { return proportions(setting.width).L; }

  /// The end sill's crest lies on the river bed.
  double level_offset(const site::ToeFlow& flow, const Setting& setting) const noexcept override {
    return -proportions(width_of(flow, setting)).h3;
  }

  double own_width(const site::ToeFlow& flow, const Setting& setting) const noexcept override {
    return width_of(flow, setting);
  }

  Structure size(const SizingInput& input, Working* working) const override {
    const auto& flow = sizing_flow(input);
    const double width = input.setting.width;
    const Proportions p = proportions(width);
    Structure structure;
    structure.length = p.L;
    structure.governing_length_discharge = flow.discharge;
    structure.end_width = width;
    structure.least_wall_height = p.h1;
    structure.end_sill_height = p.h3;
    set_level_floor(structure);
    const double thickness = 0.07 * width;
    Element wall = element_of({1, width, 0.0, 0.0}, width, p.h3 + p.h2);
    wall.kind = "hanging_wall";
    wall.name = "Hanging wall";
    wall.length = thickness;
    wall.station = p.L1;
    wall.profile = {{p.L1, p.h3}, {p.L1, p.h3 + p.h2}, {p.L1 + thickness, p.h3 + p.h2}, {p.L1 + thickness, p.h3}};
    wall.remark = "from wall to wall with a gap below it; notches at its ends clean the basin; thickness indicative";
    Element sill = solid_sill(width, p.h3, 0.5, p.L);
    sill.remark = "thickness indicative; side walls fall from the hanging wall to the height of the downstream end";
    structure.elements = {wall, sill};
    const double force = water_density * flow.discharge * flow.V1;
    structure.loads.push_back({"hanging_wall", "Force of the jet on the hanging wall", force, dimension::force,
                               "mean, at the largest discharge; fluctuation not included"});
    if (working != nullptr) trace_size(flow, input.setting, p, force, *working);
    return structure;
  }

  Findings findings(const SizingInput& input, const Structure& structure) const override {
    const auto& flow = sizing_flow(input);
    const double width = input.setting.width;
    const Jet jet = square_jet(flow.discharge, flow.V1);
    const Proportions p = proportions(width);
    double deepest = -no_limit;
    for (const auto& levels : input.tailwater_levels) deepest = std::max(deepest, levels[2] - input.apron_level);
    return {
        worked(jet_method, limit_finding("impact.width_ratio", "Width over the side of the jet, least", width / jet.d,
                                         LimitSense::at_least, 3.0, dimension::none, Status::fails,
                                         "Narrower basins are impractical.", "Use another type.", notes)),
        worked(read_method, {jet.d, jet.F},
               limit_finding("impact.width_spread", "Width over the width by the points of the chart",
                             width / jet.d / read_ratio(jet.F), LimitSense::at_most, 1.10, dimension::none, Status::caution,
                             "In a basin that is too wide the jet passes below the wall; the chart is known at few points.",
                             "Take the chart of the source in hand before the width is fixed.", notes)),
        worked(size_method, limit_finding("impact.tailwater", "Highest tailwater over the top of the hanging wall",
                                          deepest / (p.h3 + p.h2), LimitSense::at_most, 1.0, dimension::none, Status::caution,
                                          "Depth above the floor in the high case; best at the wall's mid-height.",
                                          "Raise the basin: higher tailwater runs over the wall.",
                                          {"tm_5_820_3", "impact basins", Provenance::seen})),
        worked(size_method, choice_note("impact.riprap", "Stone below the basin", width / 20.0, dimension::length,
                                        "Most stones of a twentieth of the width, over a length of one width, " +
                                            quantity_token(structure.end_sill_height, dimension::length) + " thick.",
                                        notes)),
        keyed("basin.choices.impact_width",
              worked(input.setting.choices.impact_wide ? wide_method : read_method,
                     choice_note("impact.width_rule", "Width of the basin", width, dimension::length,
                                 input.setting.choices.impact_wide ? "The wider of two readings of the chart is used."
                                                                   : "The narrower reading of the chart is used.",
                                 {"peterka_1984", "sec. 6", Provenance::memory})))};
  }

  void trace_tailwater_need(const site::ToeFlow&, const Setting&, Working&) const override {}

 private:
  static void trace_size(const site::ToeFlow& flow, const Setting& setting, const Proportions& p, double force,
                         Working& working) {
    const Jet jet = square_jet(flow.discharge, flow.V1);
    const StepInput Q = told(flow.discharge, "the largest"), V = told(flow.V1, of_largest);
    working.add(jet_method, {Q, V}, {jet.d, jet.F}, "square jet");
    working.add(setting.choices.impact_wide ? wide_method : read_method, {jet.d, jet.F}, {width_of(flow, setting)},
                "width of the basin at the largest discharge");
    working.add(size_method, {told(setting.width, "the rule's, at the level of this option")},
                {p.h1, p.h2, p.h3, p.h4, p.L, p.L1}, "dimensions from the width");
    working.add(force_method, {Q, V}, {force}, "force on the hanging wall");
  }
};

}  // namespace

const Dissipator& impact() {
  static const Impact type;
  return type;
}

}  // namespace quell::dissipators
