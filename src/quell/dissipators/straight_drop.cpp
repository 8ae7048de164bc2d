// Straight drop basin: a free nappe falls from the crest into a basin with floor blocks and a sill. High tailwater carries the
// nappe farther, so that the length is looked at for every tailwater. It takes the place of the chute: x is measured from the
// drop wall.
//
// Source: Donnelly and Blaisdell (1954) by Hydraulic Engineering Circular 14, recalled; nappe by Rand (1955).
#include <algorithm>
#include <cmath>

#include "quell/base/constants.h"
#include "quell/dissipators/parts.h"
#include "quell/hydraulics/drop.h"
#include "quell/hydraulics/section.h"

namespace quell::dissipators {

const Dissipator& straight_drop();

namespace {

using hydraulics::critical_depth;

constexpr double tailwater_factor = 2.15;
constexpr Rule published{"donnelly_blaisdell_1954", "as in HEC-14, ch. 11", Provenance::memory};

constexpr Symbol need_in[] = {{"yc", "critical depth", dimension::length, above_zero}};
constexpr Symbol nappe_in[] = {{"yc", "critical depth", dimension::length, above_zero},
                               {"h", "crest above the floor", dimension::length, above_zero},
                               {"T", "tailwater above the floor", dimension::length, above_zero}};
constexpr Symbol parts_in[] = {{"W", "width of the basin", dimension::length, above_zero},
                               {"yc", "critical depth", dimension::length, above_zero}};
constexpr Symbol need_out[] = {{"T", "tailwater depth required above the floor", dimension::length, above_zero}};
constexpr Symbol nappe_out[] = {{"xf", "free nappe to the floor", dimension::length, above_zero},
                                {"xt", "nappe to the tailwater's surface", dimension::length, above_zero},
                                {"xs", "tangent of the nappe there to the floor", dimension::length, above_zero},
                                {"xa", "where the nappe hits the floor", dimension::length, above_zero},
                                {"L", "length of the basin", dimension::length, above_zero}};
constexpr Symbol parts_out[] = {{"h3", "height of the floor blocks", dimension::length, above_zero},
                                {"N3", "number of floor blocks", dimension::none, {1.0, no_limit}},
                                {"w3", "width of blocks and spaces", dimension::length, above_zero},
                                {"h4", "height of the end sill", dimension::length, above_zero},
                                {"FB", "walls above the tailwater", dimension::length, above_zero}};

struct Nappe {
  double xf, xt, xs, xa, L;
  bool drowned;  ///< the tailwater is so high that the nappe does not reach its surface freely
};
/// `drop` is the crest above the floor, `tailwater` the depth above it, m.
Nappe nappe_of(double yc, double drop, double tailwater) noexcept {
  const double h0 = -drop / yc;
  const double h2 = -(drop - tailwater) / yc;
  const double inside = 3.195 - 4.368 * h2;
  const double xf = -0.406 + std::sqrt(3.195 - 4.368 * h0);
  const double xt = -0.406 + std::sqrt(std::max(0.0, inside));
  const bool drowned = !(inside > 0.0 && xt > 0.0);
  // A drowned nappe has no tangent at the surface: the free fall to the floor stands for it.
  const double xs = drowned ? xf : (0.691 + 0.228 * xt * xt - h0) / (0.185 + 0.456 * xt);
  const double xa = 0.5 * (xf + xs);
  return {xf * yc, xt * yc, xs * yc, xa * yc, (xa + 0.8 + 1.75) * yc, drowned};
}

const Method need_method{.id = "basin.tailwater.straight_drop",
                         .title = "Tailwater that the straight drop basin requires",
                         .equation = "T = 2.15*yc",
                         .inputs = need_in,
                         .outputs = need_out,
                         .source = "donnelly_blaisdell_1954",
                         .place = "as in HEC-14, ch. 11",
                         .provenance = Provenance::memory,
                         .accuracy = "least value of the tests",
                         .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                           out[0] = tailwater_factor * in[0];
                           return {};
                         }};

const Method nappe_method{
    .id = "basin.length.straight_drop",
    .title = "Nappe and length of the straight drop basin",
    .equation =
        "xf = yc*(-0.406 + sqrt(3.195 + 4.368*h/yc)); xt = yc*(-0.406 + sqrt(3.195 + 4.368*(h - T)/yc)); "
        "xs = yc*(0.691 + 0.228*(xt/yc)^2 + h/yc)/(0.185 + 0.456*xt/yc); xa = (xf + xs)/2; L = xa + 0.8*yc + 1.75*yc",
    .inputs = nappe_in,
    .outputs = nappe_out,
    .source = "donnelly_blaisdell_1954",
    .place = "as in HEC-14, ch. 11; the tangent re-derived, agrees within rounding",
    .provenance = Provenance::memory,
    .accuracy = "a fit to tests for falls of 1 to 15 critical depths",
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      const Nappe nappe = nappe_of(in[0], in[1], in[2]);
      if (nappe.drowned) return no_answer("the tailwater stands so high that the nappe is drowned");
      const double values[] = {nappe.xf, nappe.xt, nappe.xs, nappe.xa, nappe.L};
      std::copy(std::begin(values), std::end(values), out.begin());
      return {};
    }};

const Method parts_method{.id = "basin.elements.straight_drop",
                          .title = "Floor blocks, sill and walls of the straight drop basin",
                          .equation = "h3 = 0.8*yc; N3 = max(1, round(W/(0.8*yc))); w3 = W/(2*N3); h4 = 0.4*yc; FB = 0.85*yc",
                          .inputs = parts_in,
                          .outputs = parts_out,
                          .source = "donnelly_blaisdell_1954",
                          .place = "as in HEC-14, ch. 11: blocks 0.4 of critical depth wide and square, over half of the width",
                          .provenance = Provenance::memory,
                          .accuracy = "width adjusted to whole blocks",
                          .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                            if (!(in[0] > 0.0 && in[1] > 0.0)) return no_answer("W and yc must be above zero");
                            const Row row = half_space_row(in[0], 0.4 * in[1]);
                            const double values[] = {0.8 * in[1], static_cast<double>(row.count), row.width, 0.4 * in[1],
                                                     0.85 * in[1]};
                            std::copy(std::begin(values), std::end(values), out.begin());
                            return {};
                          }};

constexpr Limit limits[] = {
    {.id = "straight_drop.fall",
     .title = "Fall from crest to floor",
     .measure = Measure::fall,
     .sense = LimitSense::at_most,
     .limit = 4.572,
     .otherwise = Status::fails,
     .advice = "Above {{4.572|6,0,0|3}} use a chute with a basin, or a baffled apron.",
     .source = "hec14_2006",
     .place = "screening table of 1975, as reproduced",
     .provenance = Provenance::seen},
    {.id = "straight_drop.fall_ratio_least",
     .title = "Fall over critical depth, least",
     .measure = Measure::fall_ratio,
     .sense = LimitSense::at_least,
     .limit = 1.0,
     .otherwise = Status::fails,
     .advice = "Low drops need other criteria, with a plate or piers.",
     .source = "donnelly_blaisdell_1954",
     .place = "range of the tests",
     .provenance = Provenance::memory},
    {.id = "straight_drop.fall_ratio_largest",
     .title = "Fall over critical depth, largest",
     .measure = Measure::fall_ratio,
     .sense = LimitSense::at_most,
     .limit = 15.0,
     .otherwise = Status::caution,
     .advice = "Check that the largest discharge lies inside the tested range.",
     .source = "donnelly_blaisdell_1954",
     .place = "range of the tests",
     .provenance = Provenance::memory,
     .largest_only = true},
};

class StraightDrop final : public Dissipator {
 public:
  const TypeRecord& record() const override {
    static constexpr std::string_view approach[] = {"approach level with the crest, subcritical, nappe aerated at its ends",
                                                    "wing walls at 45 degrees"};
    static constexpr std::string_view failures[] = {"nappe carried past the basin by high tailwater",
                                                    "water that runs back over the walls behind the nappe",
                                                    "scour of the banks where the floor blocks are left out"};
    static const Method* const methods[] = {&need_method, &nappe_method, &parts_method};
    static const TypeRecord record{.id = "straight_drop",
                                   .name = "Straight drop basin",
                                   .summary =
                                       "A free fall from the crest into a short basin with floor blocks and an end sill, for "
                                       "low falls in channels.",
                                   .source = "donnelly_blaisdell_1954",
                                   .place = "as in HEC-14, ch. 11",
                                   .provenance = Provenance::memory,
                                   .action = Action::fall,
                                   .limits = limits,
                                   .approach = approach,
                                   .failure_modes = failures,
                                   .model = "a fall above {{4.572|6,0,0|3}}, or an approach that is not even",
                                   .walls_from_tailwater = true,
                                   .methods = methods};
    return record;
  }

  /// The flow at the foot of the nappe.
  site::ToeFlow from_crest(const site::ToeFlow& bare, const Setting& setting) const noexcept override {
    site::ToeFlow flow = bare;
    const double drop = std::max(1e-3, setting.crest_level - bare.apron_level);
    const auto foot = hydraulics::straight_drop({.q = bare.unit_discharge, .h = drop});
    flow.y1 = foot.y1;
    flow.V1 = bare.unit_discharge / foot.y1;
    flow.F1 = flow.V1 / std::sqrt(gravity * foot.y1);
    flow.y2 = foot.y2;
    flow.energy_head = flow.y1 + flow.V1 * flow.V1 / (2.0 * gravity);
    return flow;
  }

  TailwaterNeed tailwater_need(const site::ToeFlow& flow, const Setting& setting) const noexcept override {
    const double critical = critical_depth(flow.unit_discharge);
    const double required = tailwater_factor * critical;
    // Above this the nappe no longer falls freely onto the surface (x_t = 0 in the source's formula).
    const double largest = std::max(required, setting.crest_level - flow.apron_level + 0.6937 * critical);
    return {required, required, largest, largest};
  }

  double length(const site::ToeFlow& flow, const Setting& setting) const noexcept override {
    const double critical = critical_depth(flow.unit_discharge);
    return nappe_of(critical, std::max(1e-3, setting.crest_level - flow.apron_level), tailwater_factor * critical).L;
  }

  Structure size(const SizingInput& input, Working* working) const override {
    const auto& setting = input.setting;
    const double drop = setting.crest_level - input.apron_level;
    const double critical = critical_depth(sizing_flow(input).unit_discharge);
    Structure structure;
    const Longest longest = longest_of(input);
    structure.length = longest.length;
    structure.governing_length_discharge = longest.discharge;
    structure.end_width = setting.width;
    structure.freeboard = 0.85 * critical;
    structure.end_sill_height = 0.4 * critical;
    set_level_floor(structure);
    const Row row = half_space_row(setting.width, 0.4 * critical);
    const double face = structure.length - 1.75 * critical;
    Element blocks = element_of(row, setting.width, 0.8 * critical);
    blocks.kind = "floor_block";
    blocks.name = "Floor blocks";
    blocks.length = row.width;
    blocks.station = face;
    blocks.profile = {{face, 0.0}, {face, blocks.height}, {face + row.width, blocks.height}, {face + row.width, 0.0}};
    blocks.remark = "square in plan";
    Element sill = solid_sill(setting.width, structure.end_sill_height, 1.0, structure.length);
    sill.remark = "thickness indicative";
    structure.elements = {blocks, sill};
    if (working != nullptr) {
      const double yc = critical_depth(longest.unit_discharge);
      const Nappe nappe = nappe_of(yc, drop, longest.tailwater);
      working->add(nappe_method,
                   {told(yc, "of the discharge that asks for the most"), told(drop, "crest above the floor"),
                    told(longest.tailwater, "of the case that asks for the most")},
                   {nappe.xf, nappe.xt, nappe.xs, nappe.xa, nappe.L},
                   "length of the basin, at the discharge and tailwater that ask for the most");
      working->add(parts_method, {given(setting.width, "basin.width"), told(critical, "of the largest discharge")},
                   {blocks.height, static_cast<double>(row.count), row.width, structure.end_sill_height, structure.freeboard},
                   "floor blocks, sill and walls");
    }
    const auto& flow = sizing_flow(input);
    add_face_load(structure, "floor_block", "Force on one floor block", row.width * blocks.height, flow.V1, working);
    return structure;
  }

  Findings findings(const SizingInput& input, const Structure& structure) const override {
    const double drop = input.setting.crest_level - input.apron_level;
    const double critical = critical_depth(sizing_flow(input).unit_discharge);
    double worst = -no_limit;
    double at = 0.0;
    double deciding = 0.0;  // its discharge per unit width
    for (std::size_t i = 0; i < input.flows.size(); ++i) {
      const double yc = critical_depth(input.flows[i].unit_discharge);
      const double height = (input.tailwater_levels[i][2] - input.apron_level - drop) / yc;
      if (height > worst) {
        worst = height;
        at = input.flows[i].discharge;
        deciding = input.flows[i].unit_discharge;
      }
    }
    return {
        worked(hydraulics::record::critical_depth_rectangular, {told(deciding, "of the discharge that decides")},
               limit_finding(
                   "straight_drop.nappe", "Tailwater above the crest over critical depth", worst, LimitSense::at_most, 0.6937,
                   dimension::none, Status::fails,
                   "Highest in the high tailwater case, " + at_discharge(at) + "; beyond the limit the nappe is drowned.",
                   "Raise the crest, or accept that the drop does nothing at these discharges.", published)),
        worked(hydraulics::record::critical_depth_rectangular, {told(sizing_flow(input).unit_discharge, of_largest)},
               limit_finding("straight_drop.crest_length", "Width of the drop over critical depth",
                             input.setting.width / critical, LimitSense::at_least, 1.5, dimension::none, Status::fails,
                             "Narrower drops were not tested.", "Widen the drop.", published)),
        worked(parts_method, width_finding("straight_drop", "block", structure.elements[0].width, 0.4 * critical, published))};
  }

  void trace_tailwater_need(const site::ToeFlow& flow, const Setting& setting, Working& working) const override {
    working.add(need_method, {told(critical_depth(flow.unit_discharge), "of the discharge per unit width")},
                {tailwater_need(flow, setting).required}, "tailwater that the type requires");
  }

 private:
  struct Longest {
    double length = 0.0, discharge = 0.0, unit_discharge = 0.0, tailwater = 0.0;
  };

  /// Over all discharges and tailwater cases, and the least tailwater that the type asks for.
  static Longest longest_of(const SizingInput& input) {
    const double drop = std::max(1e-3, input.setting.crest_level - input.apron_level);
    Longest longest;
    const auto look = [&](const site::ToeFlow& flow, double tailwater) {
      const Nappe nappe = nappe_of(critical_depth(flow.unit_discharge), drop, tailwater);
      if (nappe.L > longest.length) longest = {nappe.L, flow.discharge, flow.unit_discharge, tailwater};
    };
    for (std::size_t i = 0; i < input.flows.size(); ++i) {
      look(input.flows[i], tailwater_factor * critical_depth(input.flows[i].unit_discharge));
      for (const double level : input.tailwater_levels[i]) look(input.flows[i], std::max(0.0, level - input.apron_level));
    }
    return longest;
  }
};

}  // namespace

const Dissipator& straight_drop() {
  static const StraightDrop type;
  return type;
}

}  // namespace quell::dissipators
