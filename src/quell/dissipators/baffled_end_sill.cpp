// Basin with a solid end sill and two rows of baffles, or one, or none, in the manner of the US Army Corps of Engineers'
// spillway manual: for outlet works and low to medium spillways.
//
// Source: EM 1110-2-1602 and -1603, recalled.
#include <algorithm>

#include "quell/dissipators/parts.h"
#include "quell/hydraulics/basin_rules.h"
#include "quell/hydraulics/definitions.h"

namespace quell::dissipators {

const Dissipator& baffled_end_sill();

namespace {

constexpr double reduced_share = 0.85;  ///< accepted with two rows of baffles and an end sill
constexpr double bare_sweep_out = 0.96;
constexpr double largest_share = 1.2;
constexpr double first_row = 1.5;  ///< station over y2
constexpr double second_row = 2.0;
constexpr Rule manual{"em1603_1990", "stilling basins, with EM 1110-2-1602, sec. 5", Provenance::memory};

constexpr Symbol tailwater_in[] = {{"y2", "sequent depth", dimension::length, above_zero},
                                   {"c", "share of it: 1, or 0.85 with two rows of baffles", dimension::none, {0.85, 1.0}}};
constexpr Symbol length_in[] = {{"y2", "sequent depth", dimension::length, above_zero},
                                {"n", "rows of baffles", dimension::none, {0.0, 2.0}}};
constexpr Symbol baffles_in[] = {{"W", "basin width", dimension::length, above_zero},
                                 {"y1", "depth at the toe", dimension::length, above_zero},
                                 {"y2", "sequent depth", dimension::length, above_zero}};
constexpr Symbol sill_in[] = {{"y1", "depth at the toe", dimension::length, above_zero},
                              {"y2", "sequent depth", dimension::length, above_zero}};
constexpr Symbol required_out[] = {{"T", "tailwater depth required above the apron", dimension::length, above_zero}};
constexpr Symbol length_out[] = {{"L", "length of the basin", dimension::length, above_zero}};
constexpr Symbol baffles_out[] = {
    {"h3", "height of the baffles", dimension::length, above_zero},
    {"N3", "number of baffles in the first row", dimension::none, {1.0, no_limit}},
    {"w3", "width of baffles and spaces, half a space at each wall", dimension::length, above_zero},
    {"x3", "station of the first row's upstream face", dimension::length, above_zero},
    {"x4", "station of the second row's upstream face", dimension::length, above_zero}};
constexpr Symbol sill_out[] = {{"h4", "height of the end sill", dimension::length, above_zero}};

double baffle_height(double y1, double y2) noexcept {
  return std::min(y1, y2 / 6.0);
}
double sill_height(double y1, double y2) noexcept {
  return std::min(y1 / 2.0, y2 / 12.0);
}

const Method tailwater_method{.id = "basin.tailwater.baffled_end_sill",
                              .title = "Tailwater that the end-sill basin requires",
                              .equation = "T = c*y2",
                              .inputs = tailwater_in,
                              .outputs = required_out,
                              .source = "em1603_1990",
                              .place = "between 0.85 and 1.0 of the sequent depth with baffles, 1.0 without",
                              .provenance = Provenance::memory,
                              .accuracy = "rule of practice",
                              .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                out[0] = in[1] * in[0];
                                return {};
                              }};

const Method length_method{.id = "basin.length.baffled_end_sill",
                           .title = "Length of the end-sill basin",
                           .equation = "L = (4 - min(1, n))*y2",
                           .inputs = length_in,
                           .outputs = length_out,
                           .source = "em1603_1990",
                           .place = "three sequent depths with baffles and end sill, four with the end sill alone",
                           .provenance = Provenance::memory,
                           .accuracy = "rule of practice; another form with F1 needs a factor that could not be read",
                           .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                             out[0] = (4.0 - std::min(1.0, in[1])) * in[0];
                             return {};
                           }};

const Method baffles_method{
    .id = "basin.baffles.baffled_end_sill",
    .title = "Baffles of the end-sill basin",
    .equation = "h3 = min(y1, y2/6); N3 = max(1, round(W/(2*h3))); w3 = W/(2*N3); x3 = 1.5*y2; x4 = 2*y2",
    .inputs = baffles_in,
    .outputs = baffles_out,
    .source = "em1603_1990",
    .place = "height, width and spacing alike; rows at 1.5 and 2.0 sequent depths, staggered",
    .provenance = Provenance::memory,
    .accuracy = "that the lesser of the two heights is meant is recalled with moderate certainty",
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      if (!(in[0] > 0.0 && in[1] > 0.0 && in[2] > 0.0)) return no_answer("W, y1 and y2 must be above zero");
      out[0] = baffle_height(in[1], in[2]);
      const Row row = half_space_row(in[0], out[0]);
      out[1] = row.count;
      out[2] = row.width;
      out[3] = first_row * in[2];
      out[4] = second_row * in[2];
      return {};
    }};

const Method sill_method{.id = "basin.end_sill.baffled_end_sill",
                         .title = "End sill of the end-sill basin",
                         .equation = "h4 = min(y1/2, y2/12)",
                         .inputs = sill_in,
                         .outputs = sill_out,
                         .source = "em1603_1990",
                         .place = "half the height of the baffles, face 1V:1H",
                         .provenance = Provenance::memory,
                         .accuracy = "rule of practice",
                         .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                           out[0] = sill_height(in[0], in[1]);
                           return {};
                         }};

constexpr Limit limits[] = {
    {.id = "baffled_end_sill.froude_lowest",
     .title = "Inflow Froude number at every discharge",
     .measure = Measure::froude_number,
     .sense = LimitSense::at_least,
     .limit = 2.5,
     .otherwise = Status::fails,
     .advice = "Below 2.5 use a plain apron or a SAF basin.",
     .source = "em1603_1990",
     .place = "usual range",
     .provenance = Provenance::memory},
    {.id = "baffled_end_sill.froude_highest",
     .title = "Highest inflow Froude number of usual practice",
     .measure = Measure::froude_number,
     .sense = LimitSense::at_most,
     .limit = 9.0,
     .otherwise = Status::caution,
     .advice = "Check that the governing discharge lies inside the range, or compare Types II and III.",
     .source = "em1603_1990",
     .place = "usual range",
     .provenance = Provenance::memory},
    {.id = "baffled_end_sill.velocity_usual",
     .title = "Velocity at the toe without a check of cavitation",
     .measure = Measure::velocity,
     .sense = LimitSense::at_most,
     .limit = 15.24,
     .otherwise = Status::caution,
     .advice = "Above {{15.24|6,0,-6|3}} check the cavitation of the baffles and armour them.",
     .source = "em1603_1990",
     .place = "baffles",
     .provenance = Provenance::memory},
    {.id = "baffled_end_sill.velocity",
     .title = "Velocity at the toe without a physical model",
     .measure = Measure::velocity,
     .sense = LimitSense::at_most,
     .limit = 18.288,
     .otherwise = Status::caution,
     .advice = "Above {{18.288|6,0,-6|3}} a physical model and a study of cavitation are required.",
     .source = "em1603_1990",
     .place = "baffles",
     .provenance = Provenance::memory,
     .of_tests = true},
};

Element baffle_row(const Row& row, double width, double height, double face, std::string_view name) {
  Element element = baffle_piers(row, width, height, face);
  element.kind = "baffle_pier";
  element.name = name;
  element.remark = "upstream face vertical; the two rows stand staggered";
  return element;
}

class BaffledEndSill final : public Dissipator {
 public:
  const TypeRecord& record() const override {
    static constexpr std::string_view approach[] = {
        "rectangular section, parallel walls, even flow",
        "below outlet works no eddy at the transition at low flow: it traps stones and grinds the basin"};
    static constexpr std::string_view failures[] = {"cavitation of the baffles at high velocity",
                                                    "stones trapped by an eddy at low flow, or drawn in from downstream",
                                                    "swept out where the tailwater is taken below the sequent depth"};
    static const Method* const methods[] = {&tailwater_method, &length_method, &baffles_method, &sill_method};
    static const TypeRecord record{
        .id = "baffled_end_sill",
        .name = "End-sill basin with baffles",
        .summary =
            "Solid end sill with two staggered rows of baffles, or one, or none: for outlet works "
            "and low to medium spillways.",
        .source = "em1603_1990",
        .place = "with EM 1110-2-1602, sec. 5",
        .provenance = Provenance::memory,
        .limits = limits,
        .approach = approach,
        .failure_modes = failures,
        .model = "velocities above {{18.288|6,0,-6|3}}, tailwater below 0.85 of the sequent depth, uneven inflow",
        .methods = methods};
    return record;
  }

  TailwaterNeed tailwater_need(const site::ToeFlow& flow, const Setting& setting) const noexcept override {
    const bool two_rows = setting.choices.baffle_rows == 2;
    return {(two_rows ? reduced_share : bare_sweep_out) * flow.y2, required_share(setting) * flow.y2, 1.05 * flow.y2,
            largest_share * flow.y2};
  }

  double length(const site::ToeFlow& flow, const Setting& setting) const noexcept override {
    return (setting.choices.baffle_rows > 0 ? 3.0 : 4.0) * flow.y2;
  }

  Structure size(const SizingInput& input, Working* working) const override {
    const auto& flow = sizing_flow(input);
    const int rows = input.setting.choices.baffle_rows;
    const double width = input.setting.width;
    Structure structure = jump_basin(*this, input, working);
    trace(working, length_method,
          {told(longest_flow(*this, input).y2, of_longest), given(static_cast<double>(rows), "basin.choices.baffle_rows")},
          {structure.required_length}, "length of the basin");
    if (rows > 0) add_baffles(structure, flow, width, rows, working);
    structure.end_sill_height = sill_height(flow.y1, flow.y2);
    structure.elements.push_back(solid_sill(width, structure.end_sill_height, 1.0, structure.length));
    structure.elements.back().remark = "face 1V:1H";
    trace(working, sill_method, {flow.y1, flow.y2}, {structure.end_sill_height}, "end sill");
    add_face_load(structure, "end_sill", "Force on the end sill, whole width", width * structure.end_sill_height, flow.V1,
                  working);
    return structure;
  }

  Findings findings(const SizingInput& input, const Structure& structure) const override {
    const auto& flow = sizing_flow(input);
    const int rows = input.setting.choices.baffle_rows;
    Findings findings{
        counted(keyed(
            "basin.choices.baffle_rows",
            worked(length_method,
                   choice_note(
                       "baffled_end_sill.rows", "Rows of baffles", rows, dimension::none,
                       rows == 0 ? "The basin has its end sill alone and is four sequent depths long."
                                 : "The height is the lesser of the depth at the toe and a sixth of the sequent depth: taller "
                                   "baffles destroy more and cavitate sooner.",
                       manual)))),
        keyed(
            "basin.choices.baffled_tailwater",
            worked(tailwater_method,
                   choice_note("baffled_end_sill.tailwater_rule", "Tailwater required over the sequent depth",
                               required_share(input.setting), dimension::none,
                               required_share(input.setting) < 1.0
                                   ? "The least depth accepted with two rows is used; the full sequent depth is the safe rule."
                                   : "The full sequent depth is asked for; 0.85 of it is accepted with two rows of baffles.",
                               manual)))};
    if (rows == 0) return findings;
    const auto velocity = largest(input.flows, &site::ToeFlow::V1);
    const auto& fastest = *std::max_element(input.flows.begin(), input.flows.end(),
                                            [](const site::ToeFlow& a, const site::ToeFlow& b) { return a.V1 < b.V1; });
    findings.push_back(worked(
        hydraulics::record::mean_velocity, {fastest.unit_discharge, fastest.y1},
        limit_finding("baffled_end_sill.baffle_velocity", "Velocity at the toe, for the baffles", velocity.value,
                      LimitSense::at_most, 18.288, dimension::velocity, Status::fails,
                      "The highest velocity stands " + at_discharge(velocity.discharge) + ".",
                      "Above {{18.288|6,0,-6|3}} leave the baffles out (baffle_rows = 0) or study cavitation.", manual)));
    findings.push_back(worked(baffles_method, width_finding("baffled_end_sill", "baffle", structure.elements[0].width,
                                                            baffle_height(flow.y1, flow.y2), manual)));
    return findings;
  }

  void trace_tailwater_need(const site::ToeFlow& flow, const Setting& setting, Working& working) const override {
    working.add(tailwater_method, {flow.y2, given(required_share(setting), "basin.choices.baffled_tailwater")},
                {tailwater_need(flow, setting).required}, "tailwater that the type requires");
  }

 private:
  static double required_share(const Setting& setting) noexcept {
    return !setting.choices.baffled_full && setting.choices.baffle_rows == 2 ? reduced_share : 1.0;
  }

  static void add_baffles(Structure& structure, const site::ToeFlow& flow, double width, int rows, Working* working) {
    const double height = baffle_height(flow.y1, flow.y2);
    const Row row = half_space_row(width, height);
    structure.elements.push_back(baffle_row(row, width, height, first_row * flow.y2, "Baffles, first row"));
    if (rows == 2 && row.count > 1)
      structure.elements.push_back(baffle_row({row.count - 1, row.width, row.count > 2 ? row.width : 0.0, 1.5 * row.width},
                                              width, height, second_row * flow.y2, "Baffles, second row"));
    trace(working, baffles_method, {given(width, "basin.width"), flow.y1, flow.y2},
          {height, static_cast<double>(row.count), row.width, first_row * flow.y2, second_row * flow.y2}, "baffles");
    const double force = hydraulics::baffle_pier_force({.A = row.width * height, .y1 = flow.y1, .V1 = flow.V1});
    trace(working, hydraulics::record::baffle_pier_force,
          {told(row.width * height, "height times width of the face"), flow.y1, flow.V1}, {force},
          "force on one baffle of the first row");
    structure.loads.push_back({"baffle_pier", "Force on one baffle of the first row", force, dimension::force,
                               "rule for baffle piers of Type III, suction behind left out"});
  }
};

}  // namespace

const Dissipator& baffled_end_sill() {
  static const BaffledEndSill type;
  return type;
}

}  // namespace quell::dissipators
