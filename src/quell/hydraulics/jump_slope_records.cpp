#include <cmath>
#include <limits>

#include "quell/base/constants.h"
#include "quell/hydraulics/jump.h"
#include "quell/hydraulics/jump_slope.h"

namespace quell::hydraulics::record {
namespace {
constexpr Symbol d1_symbol{"d1", "depth before the jump, perpendicular to the bed", dimension::length, above_zero};
constexpr Symbol V1_symbol{"V1", "mean velocity before the jump", dimension::velocity, above_zero};
constexpr double not_given = std::numeric_limits<double>::quiet_NaN();
constexpr Range less_than_a_wall{-1.5, 1.5};
constexpr Symbol theta_symbol{
    "theta", "angle of the bed, falling downstream above zero", dimension::none, {0.0, 0.2915}, not_given, less_than_a_wall};
constexpr Symbol y2s_symbol{"y2s", "sequent depth of d1 and V1 on a level bed", dimension::length, above_zero};

constexpr Symbol sloping_in[] = {
    d1_symbol,
    V1_symbol,
    {"theta", "angle of the bed, falling downstream above zero", dimension::none, {-0.1, 0.5}, not_given, less_than_a_wall},
    {"Lj", "length of the jump along the bed", dimension::length, {0.0, no_limit}},
    {"Kv", "weight of the jump over that under a straight surface", dimension::none, {0.5, 1.5}, 1.0}};
constexpr Symbol kindsvater_in[] = {
    d1_symbol, V1_symbol, theta_symbol, {"K", "shape factor of the jump", dimension::none, {0.0, 4.0}}};
constexpr Symbol fit_in[] = {d1_symbol, V1_symbol, theta_symbol};
constexpr Symbol length_in[] = {y2s_symbol,
                                {"t", "slope of the bed, vertical over horizontal", dimension::none, {0.0, 0.3}},
                                {"F1", "Froude number before the jump", dimension::none, {4.5, 13.0}}};
constexpr Symbol loss_in[] = {
    d1_symbol,
    V1_symbol,
    {"theta", "angle of the bed, falling downstream above zero", dimension::none, {-0.1, 0.5}, not_given, less_than_a_wall},
    {"Lh", "horizontal length of the jump", dimension::length, {0.0, no_limit}},
    {"y2", "vertical depth behind the jump", dimension::length, above_zero}};
constexpr Symbol break_in[] = {d1_symbol,
                               V1_symbol,
                               {"theta", "angle of the slope", dimension::none, {0.01, 0.35}, not_given, {0.0, 1.5}},
                               {"z1", "height of the toe above the level apron", dimension::length, {0.0, 20.0}},
                               {"Lj", "horizontal length of the jump", dimension::length, {0.5, 400.0}}};
constexpr Symbol break_length_in[] = {y2s_symbol,
                                      {"z1", "height of the toe above the level apron", dimension::length, {0.0, no_limit}}};
constexpr Symbol y2_out[] = {{"y2", "vertical depth behind the jump", dimension::length, above_zero}};
constexpr Symbol length_out[] = {{"Lj", "horizontal length of the jump", dimension::length, above_zero}};
constexpr Symbol loss_out[] = {{"dE", "energy loss", dimension::length, any_value}};

double froude(std::span<const double> in) {
  return hydraulics::froude_number(in[1], in[0]);
}

/// A fit of y2 to tests: supercritical inflow, and a bed that is not adverse.
template <double (*fit)(const SlopeInflow&) noexcept>
Outcome<void> from_fit(std::span<const double> in, std::span<double> out) {
  if (!(froude(in) > 1.0)) return bad_input("F1", froude(in), 1.0, no_limit, "flow that is not supercritical makes no jump");
  out[0] = fit({.d1 = in[0], .V1 = in[1], .theta = in[2]});
  return {};
}

std::string_view tested_froude(std::span<const double> in) {
  return froude(in) >= 4.0 && froude(in) <= 14.0 ? std::string_view{} : "F1 lies outside 4 to 14, the range of the tests";
}
}  // namespace

const Method sequent_depth_sloping{
    .id = "jump.sequent_depth.sloping_apron",
    .title = "Depth behind a jump on a sloping apron, by momentum",
    .kind = EquationKind::residual,
    .equation =
        "cos(theta)*(y2*cos(theta))^2/2 + V1^2*d1/g*d1/(y2*cos(theta)) = "
        "cos(theta)*d1^2/2 + V1^2*d1/g + Kv*Lj*sin(theta)*(d1 + y2*cos(theta))/2",
    .inputs = sloping_in,
    .outputs = y2_out,
    .source = "momentum",
    .place = "momentum along the bed with the weight of the jump, hydrostatic pressure, no bed friction; largest root",
    .provenance = Provenance::derived,
    .accuracy = "exact under its assumptions; length and shape of the jump are uncertain by 10 %",
    .remarks = "On an adverse bed tests could hardly hold the jump in place: do not rely on one.",
    .condition = [](std::span<const double> in) -> std::string_view {
      return in[2] >= 0.0 ? std::string_view{} : "a jump on an adverse bed is unstable";
    },
    .evaluate =
        [](std::span<const double> in, std::span<double> out) {
          return store(hydraulics::sequent_depth_sloping({{in[0], in[1], in[2]}, in[3], in[4]}), out);
        }};

const Method sequent_depth_kindsvater{
    .id = "jump.sequent_depth.kindsvater_1944",
    .title = "Depth behind a jump on a sloping apron with a given shape factor",
    .equation = "F1 = V1/sqrt(g*d1); y2 = d1/(2*cos(theta))*(sqrt(8*F1^2*cos(theta)^3/(1 - 2*K*tan(theta)) + 1) - 1)",
    .inputs = kindsvater_in,
    .outputs = y2_out,
    .source = "kindsvater_1944",
    .place = "sequent depth on a sloping floor",
    .provenance = Provenance::memory,
    .accuracy = "as good as K, which is not constant",
    .remarks =
        "At F1 = 8 the fit to the tests of Engineering Monograph 25 means K = 2.8 at a slope of 0.05, 2.4 at 0.1, 1.8 at 0.2, "
        "1.4 "
        "at 0.3.",
    .evaluate = [](std::span<const double> in, std::span<double> out) {
      return store(hydraulics::sequent_depth_kindsvater({{in[0], in[1], in[2]}, in[3]}), out);
    }};

const Method sequent_depth_subramanya{
    .id = "jump.sequent_depth.sloping_fit",
    .title = "Depth behind a jump on a sloping apron, fit to tests",
    .equation =
        "F1 = V1/sqrt(g*d1); t = tan(theta); y2s = d1/2*(sqrt(1 + 8*F1^2) - 1); "
        "y2 = y2s*(1.0071*exp(3.2386*max(t, 0.02)) - (1.0071*exp(3.2386*0.02) - 1)*(1 - min(t, 0.02)/0.02))",
    .inputs = fit_in,
    .outputs = y2_out,
    .source = "subramanya_2009",
    .place = "ch. 6, fit to the tests of Bradley and Peterka; below a slope of 0.02 straight to the level bed (added here)",
    .provenance = Provenance::memory,
    .accuracy = "about 5 %; 2 to 13 % below the other fits",
    .condition = tested_froude,
    .evaluate = from_fit<hydraulics::sequent_depth_subramanya>};

const Method sequent_depth_rajaratnam{
    .id = "jump.sequent_depth.rajaratnam_1967",
    .title = "Depth behind a jump on a sloping apron, upper band",
    .equation = "F1 = V1/sqrt(g*d1); G = 10^(0.027*theta*180/pi); y2 = d1/2*(sqrt(1 + 8*(G*F1)^2) - 1)/cos(theta)",
    .inputs = fit_in,
    .outputs = y2_out,
    .source = "rajaratnam_1967",
    .place = "jump on sloping floors, to 17 degrees",
    .provenance = Provenance::memory,
    .accuracy = "about 5 %",
    .condition = tested_froude,
    .evaluate = from_fit<hydraulics::sequent_depth_rajaratnam>};

const Method sequent_depth_chow{.id = "jump.sequent_depth.sloping_exponential",
                                .title = "Depth behind a jump on a sloping apron, exponential fit",
                                .equation = "F1 = V1/sqrt(g*d1); y2 = d1/2*(sqrt(1 + 8*F1^2) - 1)*exp(3.5*tan(theta))",
                                .inputs = fit_in,
                                .outputs = y2_out,
                                .source = "white_fluid_mechanics",
                                .place = "ch. 10, problem 10.91: fit to fig. 15-20 of Chow 1959",
                                .provenance = Provenance::seen,
                                .accuracy = "reading of a chart, about 5 %",
                                .condition = tested_froude,
                                .evaluate = from_fit<hydraulics::sequent_depth_chow>};

const Method jump_length_sloping{.id = "jump.length.sloping_apron",
                                 .title = "Length of the jump on a sloping apron",
                                 .equation = "Lj = y2s*(6.1 + 4*t)",
                                 .inputs = length_in,
                                 .outputs = length_out,
                                 .source = "subramanya_2009",
                                 .place = "ch. 6, fit to the tests of Bradley and Peterka, horizontal length",
                                 .provenance = Provenance::memory,
                                 .accuracy = "about 10 %",
                                 .remarks = "F1 does not enter: it is asked for to tell whether the fit holds.",
                                 .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                   out[0] = hydraulics::jump_length_sloping({.y2s = in[0], .t = in[1]});
                                   return {};
                                 }};

const Method energy_loss_sloping{
    .id = "jump.energy_loss.sloping_apron",
    .title = "Energy loss in a jump on a sloping apron",
    .equation = "V2 = d1*V1/y2; dE = d1*cos(theta) + V1^2/(2*g) + Lh*tan(theta) - (y2 + V2^2/(2*g))",
    .inputs = loss_in,
    .outputs = loss_out,
    .source = "momentum",
    .place = "energy at the toe less energy at the end, bed at the end for datum, horizontal outflow",
    .provenance = Provenance::derived,
    .accuracy = "exact under its assumptions; below zero means depths that do not belong together",
    .condition = [](std::span<const double> in) -> std::string_view {
      return hydraulics::energy_loss_sloping({{in[0], in[1], in[2]}, in[3], in[4]}) >= 0.0
                 ? std::string_view{}
                 : "a jump cannot gain energy: the depths do not belong together";
    },
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      out[0] = hydraulics::energy_loss_sloping({{in[0], in[1], in[2]}, in[3], in[4]});
      return {};
    }};

const Method sequent_depth_slope_break{
    .id = "jump.sequent_depth.slope_break",
    .title = "Depth on a level apron behind a jump that begins on the slope above it",
    .kind = EquationKind::residual,
    .equation =
        "d1^2*cos(theta)^2/2 + V1^2*d1/g*cos(theta) + z1/2*(d1/cos(theta) + z1 + d1/cos(theta) + "
        "(y2 - z1 - d1/cos(theta))*z1/(tan(theta)*Lj)) = y2^2/2 + V1^2*d1^2/(g*y2)",
    .inputs = break_in,
    .outputs = y2_out,
    .source = "momentum",
    .place =
        "momentum along the apron; the slope under the jump pressed by a straight surface from toe to y2 (B-jump); largest "
        "root",
    .provenance = Provenance::derived,
    .accuracy = "exact under its assumptions; 3 % from the fit to tests where the whole jump lies on the slope",
    .evaluate = [](std::span<const double> in, std::span<double> out) {
      return store(hydraulics::sequent_depth_slope_break({{in[0], in[1], in[2]}, in[3], in[4]}), out);
    }};

const Method jump_length_slope_break{
    .id = "jump.length.slope_break",
    .title = "Length of a jump that begins on the slope above a level apron",
    .kind = EquationKind::residual,
    .equation = "Lj = y2s*(6.1 + 4*z1/Lj)",
    .inputs = break_length_in,
    .outputs = length_out,
    .source = "subramanya_2009",
    .place =
        "ch. 6, lengths on level and sloping aprons; weighted here by the share z1/(Lj tan(theta)) of the jump on the slope",
    .provenance = Provenance::memory,
    .accuracy = "about 10 %",
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      out[0] = hydraulics::jump_length_slope_break({.y2s = in[0], .z1 = in[1]});
      return {};
    }};

}  // namespace quell::hydraulics::record
