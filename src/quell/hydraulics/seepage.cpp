#include "quell/hydraulics/seepage.h"

#include <cmath>
#include <numbers>

namespace quell::hydraulics {

double creep_head(const CreepPoint& point) noexcept {
  return point.H * (1.0 - point.l / point.L);
}

double floor_thickness(const FloorInput& input) noexcept {
  return input.k * input.h / (input.G - 1.0);
}

CutoffSeepage cutoff_seepage(const CutoffInput& input) noexcept {
  const double alpha = input.b / input.d;
  const double lambda = (1.0 + std::sqrt(1.0 + alpha * alpha)) / 2.0;
  return {.exit_gradient = input.H / (std::numbers::pi * input.d * std::sqrt(lambda)),
          .at_floor = std::acos((lambda - 2.0) / lambda) / std::numbers::pi,
          .at_tip = std::acos((lambda - 1.0) / lambda) / std::numbers::pi};
}

double critical_gradient(double G, double porosity) noexcept {
  return (G - 1.0) * (1.0 - porosity);
}

ApronLengths apron_lengths_bligh(const BlighApronInput& input) noexcept {
  return {.floor = 2.21 * input.C * std::sqrt(input.H / 13.0),
          .in_all = 18.0 * input.C * std::sqrt(input.H / 13.0 * input.q / 75.0)};
}

namespace record {
namespace {
constexpr Range not_negative{0.0, no_limit};
constexpr Symbol head{"H", "head difference between the pools", dimension::length, not_negative};
constexpr Symbol creep_in[] = {head,
                               {"L", "whole length of creep", dimension::length, above_zero},
                               {"l", "creep up to the point", dimension::length, not_negative}};
constexpr Symbol floor_in[] = {{"h", "head above the top of the floor", dimension::length, not_negative},
                               {.name = "G",
                                .meaning = "specific gravity of the floor",
                                .dimension = dimension::none,
                                .range = {2.0, 2.6},
                                .possible = {1.0, no_limit}},
                               {"k", "factor of safety", dimension::none, {1.0, 2.0}, 4.0 / 3.0}};
constexpr Symbol cutoff_in[] = {{"b", "length of the floor", dimension::length, above_zero},
                                {"d", "depth of the cut-off at its downstream end", dimension::length, above_zero},
                                head};
constexpr Symbol soil_in[] = {
    {.name = "G",
     .meaning = "specific gravity of the grains",
     .dimension = dimension::none,
     .range = {2.4, 2.9},
     .possible = {1.0, no_limit}},
    {.name = "n", .meaning = "porosity", .dimension = dimension::none, .range = {0.2, 0.6}, .possible = {0.0, 1.0}}};
constexpr Symbol apron_in[] = {{"C", "Bligh's coefficient of creep", dimension::none, {4.0, 18.0}},
                               head,
                               {"q", "flood discharge per unit width", dimension::unit_discharge, above_zero}};
constexpr Symbol creep_out[] = {{"h", "head left", dimension::length, not_negative},
                                {"p", "pressure of that head", dimension::pressure, not_negative}};
constexpr Symbol floor_out[] = {{"t", "thickness of the floor", dimension::length, not_negative}};
constexpr Symbol cutoff_out[] = {
    {"GE", "exit gradient", dimension::none, not_negative},
    {"phiE", "share of the head left at the floor before the cut-off", dimension::none, {0.0, 1.0}},
    {"phiD", "share of the head left at the tip of the cut-off", dimension::none, {0.0, 1.0}}};
constexpr Symbol gradient_out[] = {{"ic", "critical gradient", dimension::none, not_negative}};
constexpr Symbol apron_out[] = {{"Lf", "impervious floor downstream", dimension::length, not_negative},
                                {"La", "floor and loose protection downstream", dimension::length, not_negative}};
}  // namespace

const Method uplift_bligh{.id = "seepage.uplift.bligh",
                          .title = "Uplift under a floor along the path of creep (Bligh)",
                          .equation = "h = H*(1 - l/L); p = gamma_w*h",
                          .inputs = creep_in,
                          .outputs = creep_out,
                          .source = "bligh_1910",
                          .place = "creep theory: head is lost evenly along the contact of floor and soil",
                          .provenance = Provenance::memory,
                          .accuracy = "rough: vertical and horizontal contact count alike",
                          .condition = [](std::span<const double> in) -> std::string_view {
                            return in[2] <= in[1] ? std::string_view{} : "the point lies beyond the end of the creep";
                          },
                          .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                            if (in[2] > in[1])
                              return bad_input("l", in[2], 0.0, in[1], "creep up to the point, not longer than the whole");
                            out[0] = creep_head({.H = in[0], .L = in[1], .l = in[2]});
                            out[1] = water_unit_weight * out[0];
                            return {};
                          }};

const Method floor_thickness_uplift{
    .id = "seepage.floor_thickness",
    .title = "Thickness of a floor that its own weight holds against uplift",
    .equation = "t = k*h/(G - 1)",
    .inputs = floor_in,
    .outputs = floor_out,
    .source = "momentum",
    .place = "weight under water against the head on its base; the factor 4/3 is common practice",
    .provenance = Provenance::derived,
    .accuracy = "exact for the head given",
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      out[0] = floor_thickness({.h = in[0], .G = in[1], .k = in[2]});
      return {};
    }};

const Method exit_gradient_khosla{
    .id = "seepage.exit_gradient.khosla",
    .title = "Exit gradient and pressures at a cut-off at the downstream end of a floor",
    .equation =
        "lam = (1 + sqrt(1 + (b/d)^2))/2; GE = H/(pi*d*sqrt(lam)); phiE = acos((lam - 2)/lam)/pi; "
        "phiD = acos((lam - 1)/lam)/pi",
    .inputs = cutoff_in,
    .outputs = cutoff_out,
    .source = "khosla_1936",
    .place = "floor with one cut-off at its end; follows from potential flow",
    .provenance = Provenance::derived,
    .accuracy = "exact for deep even soil",
    .remarks =
        "Without a cut-off the exit gradient has no limit. Safe values: 1/4 to 1/5 shingle, 1/5 to 1/6 coarse sand, 1/6 to "
        "1/7 fine sand.",
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      const auto seepage = cutoff_seepage({.b = in[0], .d = in[1], .H = in[2]});
      out[0] = seepage.exit_gradient;
      out[1] = seepage.at_floor;
      out[2] = seepage.at_tip;
      return {};
    }};

const Method critical_gradient{.id = "seepage.critical_gradient",
                               .title = "Gradient at which upward seepage lifts the soil",
                               .equation = "ic = (G - 1)*(1 - n)",
                               .inputs = soil_in,
                               .outputs = gradient_out,
                               .source = "momentum",
                               .place = "weight of the grains under water against the upward seepage force",
                               .provenance = Provenance::derived,
                               .accuracy = "exact for even soil without cohesion",
                               .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                 out[0] = hydraulics::critical_gradient(in[0], in[1]);
                                 return {};
                               }};

const Method apron_lengths_bligh{.id = "seepage.apron_lengths.bligh",
                                 .title = "Lengths of floor and loose apron below a weir with crest shutters (Bligh)",
                                 .equation = "Lf = 2.21*C*sqrt(H/13); La = 18*C*sqrt(H/13*q/75)",
                                 .inputs = apron_in,
                                 .outputs = apron_out,
                                 .source = "bligh_1910",
                                 .place = "weirs on sand with crest shutters, in SI",
                                 .provenance = Provenance::memory,
                                 .accuracy = "empirical",
                                 .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                   const auto lengths = hydraulics::apron_lengths_bligh({.C = in[0], .H = in[1], .q = in[2]});
                                   out[0] = lengths.floor;
                                   out[1] = lengths.in_all;
                                   return {};
                                 }};

}  // namespace record
}  // namespace quell::hydraulics
