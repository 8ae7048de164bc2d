#include "quell/hydraulics/jump.h"

#include <algorithm>
#include <cmath>

#include "quell/base/curve.h"

namespace quell::hydraulics {

double froude_number(double velocity, double depth) {
  return velocity / std::sqrt(gravity * depth);
}

double sequent_depth(const JumpInflow& inflow) {
  const double froude_squared = inflow.V1 * inflow.V1 / (gravity * inflow.y1);
  // The same as y1/2 (sqrt(1 + 8 F1^2) - 1), without the cancellation at small F1.
  return inflow.y1 * 4.0 * froude_squared / (std::sqrt(1.0 + 8.0 * froude_squared) + 1.0);
}

double jump_energy_loss(const SequentDepths& depths) {
  const double rise = depths.y2 - depths.y1;
  return rise * rise * rise / (4.0 * depths.y1 * depths.y2);
}

double jump_length(const JumpLengthInput& input) {
  static const Curve& lengths = curve("em25_jump_length");
  return lengths.at(input.F1) * input.y2;
}

double roller_length(const RollerInput& input) {
  return std::max(0.0, input.y1 * (160.0 * std::tanh(input.F1 / 20.0) - 12.0));
}

double jump_length_hager(const RollerInput& input) {
  return 220.0 * input.y1 * std::tanh((input.F1 - 1.0) / 22.0);
}

JumpClass classify_jump(double F1) {
  if (F1 <= 1.0) return JumpClass::none;
  if (F1 < 1.7) return JumpClass::undular;
  if (F1 < 2.5) return JumpClass::weak;
  if (F1 < 4.5) return JumpClass::oscillating;
  if (F1 <= 9.0) return JumpClass::steady;
  return JumpClass::strong;
}

std::string_view name_of(JumpClass jump_class) {
  switch (jump_class) {
    case JumpClass::none: return "none";
    case JumpClass::undular: return "undular";
    case JumpClass::weak: return "weak";
    case JumpClass::oscillating: return "oscillating";
    case JumpClass::steady: return "steady";
    case JumpClass::strong: return "strong";
  }
  return "none";
}

std::string_view meaning_of(JumpClass jump_class) {
  switch (jump_class) {
    case JumpClass::none: return "The flow is not supercritical: there is no jump.";
    case JumpClass::undular:
      return "Standing waves without a roller, hardly any loss: set walls by the first crest and protect the banks from the "
             "waves; blocks and sills do nothing.";
    case JumpClass::weak:
      return "Small rollers and a smooth surface after them, low loss: a plain apron of the length of the jump is enough.";
    case JumpClass::oscillating:
      return "The jet flips between bed and surface; its waves travel for kilometres and attack banks and riprap. Leave the "
             "range by another drop or unit discharge, or take a low-Froude basin with wave suppressors and a tailwater 5 to "
             "10 % above y2.";
    case JumpClass::steady: return "A well-formed jump, least sensitive to tailwater: the best range for a basin.";
    case JumpClass::strong:
      return "High loss with a rough surface and spray: raise the walls, secure the floor against pressure fluctuation, and "
             "review cavitation at blocks.";
  }
  return "";
}

namespace record {
namespace {
constexpr Symbol depth_velocity_in[] = {{"V", "mean velocity", dimension::velocity, above_zero},
                                        {"y", "depth", dimension::length, above_zero}};
constexpr Symbol froude_out[] = {{"F", "Froude number", dimension::none, above_zero}};
constexpr Symbol inflow_in[] = {{"y1", "depth before the jump", dimension::length, above_zero},
                                {"V1", "mean velocity before the jump", dimension::velocity, above_zero}};
constexpr Symbol y2_out[] = {{"y2", "sequent depth", dimension::length, above_zero}};
constexpr Symbol depths_in[] = {{"y1", "depth before the jump", dimension::length, above_zero},
                                {"y2", "sequent depth", dimension::length, above_zero}};
constexpr Symbol loss_out[] = {{"dE", "energy loss", dimension::length, {0.0, no_limit}}};
constexpr Symbol length_in[] = {{"F1", "Froude number before the jump", dimension::none, {1.7, 18.0}},
                                {"y2", "sequent depth", dimension::length, above_zero}};
constexpr Symbol length_out[] = {{"Lj", "length of the free jump", dimension::length, above_zero}};
constexpr Symbol roller_in[] = {{"F1", "Froude number before the jump", dimension::none, {2.5, 16.0}},
                                {"y1", "depth before the jump", dimension::length, above_zero}};
constexpr Symbol hager_in[] = {{"F1", "Froude number before the jump", dimension::none, {1.0, 20.0}},
                               {"y1", "depth before the jump", dimension::length, above_zero}};
constexpr Symbol roller_out[] = {{"Lr", "length of the roller", dimension::length, {0.0, no_limit}}};

constexpr Symbol class_in[] = {{"F1", "Froude number before the jump", dimension::none, {0.0, 20.0}}};
constexpr Symbol class_out[] = {
    {"class", "0 no jump, 1 undular, 2 weak, 3 oscillating, 4 steady, 5 strong", dimension::none, {0.0, 5.0}}};
}  // namespace

const Method froude_number{.id = "flow.froude_number.rectangular",
                           .title = "Froude number of flow in a rectangular section",
                           .equation = "F = V/sqrt(g*y)",
                           .inputs = depth_velocity_in,
                           .outputs = froude_out,
                           .source = "momentum",
                           .place = "definition with the depth and without the cosine of the bed slope",
                           .provenance = Provenance::derived,
                           .accuracy = "exact",
                           .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                             out[0] = hydraulics::froude_number(in[0], in[1]);
                             return {};
                           }};

const Method sequent_depth_rectangular{
    .id = "jump.sequent_depth.rectangular",
    .title = "Sequent depth of the jump on a smooth horizontal apron, rectangular section (Belanger)",
    .equation = "F1 = V1/sqrt(g*y1); y2 = y1/2*(sqrt(1 + 8*F1^2) - 1)",
    .inputs = inflow_in,
    .outputs = y2_out,
    .source = "momentum",
    .place = "momentum over the jump, hydrostatic pressure and uniform velocity at both ends, no bed friction",
    .provenance = Provenance::derived,
    .accuracy = "exact under its assumptions; laboratory depths lie 1 to 6 % lower",
    .remarks = "Below F1 = 1.7 it gives the mean level downstream of an undular jump only.",
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      const double F1 = hydraulics::froude_number(in[1], in[0]);
      if (!(F1 > 1.0)) return bad_input("F1", F1, 1.0, no_limit, "flow that is not supercritical makes no jump");
      out[0] = sequent_depth({.y1 = in[0], .V1 = in[1]});
      return {};
    }};

const Method energy_loss_rectangular{.id = "jump.energy_loss.rectangular",
                                     .title = "Energy loss in the jump, rectangular section",
                                     .equation = "dE = (y2 - y1)^3/(4*y1*y2)",
                                     .inputs = depths_in,
                                     .outputs = loss_out,
                                     .source = "momentum",
                                     .place = "energy before less energy after, with the depths tied by momentum",
                                     .provenance = Provenance::derived,
                                     .accuracy = "exact under its assumptions",
                                     .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                       if (in[1] < in[0])
                                         return bad_input("y2", in[1], in[0], no_limit,
                                                          "a jump from y1 to a lesser depth would gain energy");
                                       out[0] = jump_energy_loss({.y1 = in[0], .y2 = in[1]});
                                       return {};
                                     }};

const Method jump_length_em25{
    .id = "jump.length.em25",
    .title = "Length of the free jump on a horizontal apron",
    .equation = "Lj = em25_jump_length(F1)*y2",
    .inputs = length_in,
    .outputs = length_out,
    .source = "peterka_1984",
    .place = "sec. 1, fig. 12, upper curve, as tabulated in later handbooks",
    .provenance = Provenance::memory,
    .accuracy = "reading 3 %; jumps themselves scatter by 10 %",
    .remarks = "Toe to the section where the jet leaves the floor or the surface is level, whichever is farther.",
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      out[0] = jump_length({.F1 = in[0], .y2 = in[1]});
      return {};
    }};

const Method roller_length_hager_1990{.id = "jump.roller_length.hager_1990",
                                      .title = "Length of the roller",
                                      .equation = "Lr = max(0, y1*(160*tanh(F1/20) - 12))",
                                      .inputs = roller_in,
                                      .outputs = roller_out,
                                      .source = "hager_1990",
                                      .place = "roller length for y1/b below 0.1",
                                      .provenance = Provenance::memory,
                                      .accuracy = "about 10 %",
                                      .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                        out[0] = roller_length({.F1 = in[0], .y1 = in[1]});
                                        return {};
                                      }};

const Method jump_length_hager_1992{.id = "jump.length.hager_1992",
                                    .title = "Length of the free jump, closed form",
                                    .equation = "Lj = 220*y1*tanh((F1 - 1)/22)",
                                    .inputs = hager_in,
                                    .outputs = length_out,
                                    .source = "hager_1992",
                                    .place = "classical jump, length",
                                    .provenance = Provenance::memory,
                                    .accuracy = "within 3.2 % of the tabulated curve for F1 2 to 10",
                                    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                      out[0] = jump_length_hager({.F1 = in[0], .y1 = in[1]});
                                      return {};
                                    }};

const Method jump_class_em25{
    .id = "jump.class.em25",
    .title = "Class of the jump by the Froude number before it",
    .kind = EquationKind::procedure,
    .equation = "No jump up to 1, undular below 1.7, weak below 2.5, oscillating below 4.5, steady up to 9, strong above.",
    .inputs = class_in,
    .outputs = class_out,
    .source = "peterka_1984",
    .place = "sec. 1, forms of the jump, as repeated in later handbooks",
    .provenance = Provenance::seen,
    .accuracy = "the limits are not sharp; they move with inflow, width and Reynolds number",
    .remarks =
        "1 undular: set walls by the first crest, protect the banks. 2 weak: a plain apron is enough. 3 oscillating: waves "
        "travel for kilometres and attack banks and riprap; leave the range by another drop or unit discharge, or take a "
        "low-Froude basin, wave suppressors and a tailwater 5 to 10 % above y2. 4 steady: the best range. 5 strong: spray, "
        "high walls, pressure fluctuation. Wide shallow models at low Reynolds number were undular even at F1 = 3.",
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      out[0] = static_cast<double>(classify_jump(in[0]));
      return {};
    }};

}  // namespace record
}  // namespace quell::hydraulics
