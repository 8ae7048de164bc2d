#include "quell/hydraulics/drop.h"

#include <cmath>
#include <numbers>

#include "quell/base/constants.h"

namespace quell::hydraulics {

double brink_depth(double unit_discharge) noexcept {
  return 0.715 * std::cbrt(unit_discharge * unit_discharge / gravity);
}

double brink_depth(const SupercriticalBrinkInput& input) noexcept {
  const double F2 = input.F0 * input.F0;
  return input.y0 * F2 / (F2 + 0.4);
}

DropGeometry straight_drop(const DropInput& input) noexcept {
  const double D = input.q * input.q / (gravity * std::pow(input.h, 3.0));
  return {.D = D,
          .Ld = 4.30 * std::pow(D, 0.27) * input.h,
          .yp = std::pow(D, 0.22) * input.h,
          .y1 = 0.54 * std::pow(D, 0.425) * input.h,
          .y2 = 1.66 * std::pow(D, 0.27) * input.h};
}

double drop_depth_white(const DropInput& input) noexcept {
  const double critical = std::cbrt(input.q * input.q / gravity);
  return critical * std::numbers::sqrt2 / (1.06 + std::sqrt(input.h / critical + 1.5));
}

namespace record {
namespace {
constexpr Symbol brink_in[] = {{"q", "discharge per width", dimension::unit_discharge, above_zero}};
constexpr Symbol approach_in[] = {{"y0", "depth of the approaching flow", dimension::length, above_zero},
                                  {"F0", "Froude number of the approaching flow", dimension::none, {1.0, 20.0}}};
constexpr Symbol brink_out[] = {{"yb", "depth at the brink", dimension::length, above_zero}};
constexpr Symbol drop_in[] = {{"q", "discharge per width", dimension::unit_discharge, above_zero},
                              {"h", "height of the drop", dimension::length, above_zero}};
constexpr Symbol rand_out[] = {{"D", "drop number", dimension::none, above_zero},
                               {"Ld", "length from the brink to the foot of the nappe", dimension::length, above_zero},
                               {"yp", "depth of the pool behind the nappe", dimension::length, above_zero},
                               {"y1", "depth at the foot of the drop", dimension::length, above_zero},
                               {"y2", "sequent depth", dimension::length, above_zero}};
constexpr Symbol foot_out[] = {{"y1", "depth at the foot of the drop", dimension::length, above_zero}};

/// The drop is measured from crest to apron and must exceed critical depth for the nappe to fall.
std::string_view drop_condition(std::span<const double> in) {
  return in[0] * in[0] <= gravity * std::pow(in[1], 3.0) ? std::string_view{}
                                                         : "the drop is lower than critical depth: there is no free nappe";
}
}  // namespace

const Method brink_depth_subcritical{.id = "overfall.brink_depth.rouse",
                                     .title = "Depth at the brink of a free overfall, subcritical approach",
                                     .equation = "yb = 0.715*(q^2/g)^(1/3)",
                                     .inputs = brink_in,
                                     .outputs = brink_out,
                                     .source = "rouse_1936",
                                     .place = "level rectangular channel, aerated nappe",
                                     .provenance = Provenance::memory,
                                     .accuracy = "about 1 %",
                                     .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                       out[0] = brink_depth(in[0]);
                                       return {};
                                     }};

const Method brink_depth_supercritical{.id = "overfall.brink_depth.hager",
                                       .title = "Depth at the brink of a free overfall, supercritical approach",
                                       .equation = "yb = y0*F0^2/(F0^2 + 0.4)",
                                       .inputs = approach_in,
                                       .outputs = brink_out,
                                       .source = "hager_1983",
                                       .place = "momentum balance at the brink",
                                       .provenance = Provenance::memory,
                                       .accuracy = "about 1 %; at F0 = 1 it gives 0.714 of critical depth",
                                       .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                         out[0] = brink_depth(SupercriticalBrinkInput{.y0 = in[0], .F0 = in[1]});
                                         return {};
                                       }};

const Method drop_geometry_rand{
    .id = "drop.geometry.rand",
    .title = "Straight drop: length, pool, depth at the foot and sequent depth",
    .equation = "D = q^2/(g*h^3); Ld = 4.3*D^0.27*h; yp = D^0.22*h; y1 = 0.54*D^0.425*h; y2 = 1.66*D^0.27*h",
    .inputs = drop_in,
    .outputs = rand_out,
    .source = "rand_1955",
    .place = "fits in the drop number; title and definitions seen, the numbers from memory",
    .provenance = Provenance::memory,
    .accuracy = "5 %",
    .remarks = "The jump after it starts from V1 = q/y1.",
    .condition = drop_condition,
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      const DropGeometry drop = straight_drop({.q = in[0], .h = in[1]});
      out[0] = drop.D;
      out[1] = drop.Ld;
      out[2] = drop.yp;
      out[3] = drop.y1;
      out[4] = drop.y2;
      return {};
    }};

const Method drop_foot_depth_white{.id = "drop.foot_depth.white",
                                   .title = "Depth at the foot of a straight drop from momentum",
                                   .equation = "yc = (q^2/g)^(1/3); y1 = yc*sqrt(2)/(1.06 + sqrt(h/yc + 1.5))",
                                   .inputs = drop_in,
                                   .outputs = foot_out,
                                   .source = "white_1943",
                                   .place = "discussion of Moore's measurements",
                                   .provenance = Provenance::memory,
                                   .accuracy = "about 13 % above Rand's fit at a drop number of 0.015",
                                   .condition = drop_condition,
                                   .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                     out[0] = drop_depth_white({.q = in[0], .h = in[1]});
                                     return {};
                                   }};

}  // namespace record
}  // namespace quell::hydraulics
