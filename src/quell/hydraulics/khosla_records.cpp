// Records of khosla.h.
#include "quell/hydraulics/khosla.h"

namespace quell::hydraulics::record {
namespace {
constexpr Range share{0.0, 1.0};
constexpr Range not_negative{0.0, no_limit};
constexpr Symbol floor_length{"b", "length of the floor", dimension::length, above_zero};
constexpr Symbol end_in[] = {floor_length,
                             {"d", "depth of the cutoff below the top of the floor", dimension::length, above_zero}};
constexpr Symbol end_out[] = {{"phiC", "share of the head left at the floor below an upstream cutoff", dimension::none, share},
                              {"phiD", "share left at its tip", dimension::none, share}};
constexpr Symbol middle_in[] = {{"b1", "floor upstream of the cutoff", dimension::length, above_zero},
                                {"b2", "floor downstream of it", dimension::length, above_zero},
                                {"d", "depth of the cutoff", dimension::length, above_zero}};
constexpr Symbol middle_out[] = {{"phiE", "share of the head left at the floor before the cutoff", dimension::none, share},
                                 {"phiD", "share left at its tip", dimension::none, share},
                                 {"phiC", "share left at the floor behind it", dimension::none, share}};
constexpr Symbol interference_in[] = {
    {"D", "depth of the neighbour's tip below the floor at the cutoff it changes", dimension::length, not_negative},
    {"d", "depth of the cutoff that it changes", dimension::length, above_zero},
    {"bs", "distance between the two", dimension::length, above_zero},
    floor_length};
constexpr Symbol interference_out[] = {
    {"C", "correction as a share of the head, upstream of the neighbour", dimension::none, not_negative}};
constexpr Symbol thickness_in[] = {
    {.name = "phi0", .meaning = "share at the top of the floor", .dimension = dimension::none, .range = share},
    {.name = "phiD", .meaning = "share at the tip", .dimension = dimension::none, .range = share},
    {"d", "depth of the tip below the top of the floor", dimension::length, above_zero},
    {"t", "thickness of the floor", dimension::length, not_negative}};
constexpr Symbol thickness_out[] = {{"C", "correction as a share of the head", dimension::none, {-1.0, 1.0}}};
constexpr Symbol slope_in[] = {{"m", "horizontal per vertical of the falling floor", dimension::none, {1.0, 8.0}},
                               {"ls", "horizontal length of the slope", dimension::length, not_negative},
                               {"bs", "distance between the cutoffs beside it", dimension::length, above_zero}};
constexpr Symbol slope_out[] = {{"C", "correction as a share of the head, at its upper end", dimension::none, not_negative}};
constexpr Symbol bligh_in[] = {{"Lv", "vertical creep length", dimension::length, not_negative},
                               {"Lh", "horizontal creep length", dimension::length, not_negative},
                               {"dH", "head difference", dimension::length, above_zero}};
constexpr Symbol bligh_out[] = {{"C", "creep ratio", dimension::none, not_negative}};
}  // namespace

const Method khosla_end_cutoff{.id = "seepage.cutoff.upstream",
                               .title = "Pressures at a cutoff at the upstream end of a floor",
                               .equation =
                                   "lam = (1 + sqrt(1 + (b/d)^2))/2; phiC = 1 - acos((lam - 2)/lam)/pi; "
                                   "phiD = 1 - acos((lam - 1)/lam)/pi",
                               .inputs = end_in,
                               .outputs = end_out,
                               .source = "khosla_1936",
                               .place = "mirror image of the floor with one cutoff at its end; follows from potential flow",
                               .provenance = Provenance::derived,
                               .accuracy = "exact for deep even soil",
                               .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                 const auto phi = khosla_upstream({.b = in[0], .d = in[1]});
                                 out[0] = phi.C;
                                 out[1] = phi.D;
                                 return {};
                               }};

const Method khosla_middle_cutoff{
    .id = "seepage.cutoff.middle",
    .title = "Pressures at a cutoff between the ends of a floor",
    .equation =
        "a1 = sqrt(1 + (b1/d)^2); a2 = sqrt(1 + (b2/d)^2); lam = (a1 + a2)/2; lam1 = (a1 - a2)/2; "
        "phiE = acos((lam1 - 1)/lam)/pi; phiD = acos(lam1/lam)/pi; phiC = acos((lam1 + 1)/lam)/pi",
    .inputs = middle_in,
    .outputs = middle_out,
    .source = "khosla_1936",
    .place = "floor with one cutoff between its ends; follows from potential flow",
    .provenance = Provenance::derived,
    .accuracy = "exact for deep even soil",
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      const auto phi = khosla_middle({.b1 = in[0], .b2 = in[1], .d = in[2]});
      out[0] = phi.E;
      out[1] = phi.D;
      out[2] = phi.C;
      return {};
    }};

const Method khosla_interference{
    .id = "seepage.interference.khosla",
    .title = "What a neighbouring cutoff changes",
    .equation = "C = 0.19*sqrt(D/bs)*(d + D)/b",
    .inputs = interference_in,
    .outputs = interference_out,
    .source = "khosla_1936",
    .place = "interference of cutoffs: added at points upstream of the neighbour, taken off downstream",
    .provenance = Provenance::memory,
    .accuracy = "empirical; from which levels D and d count should be looked up in the source before final design",
    .remarks = "Not for a middle cutoff that is shorter than an outer one nearer than twice the depth of that.",
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      out[0] = hydraulics::khosla_interference({.D = in[0], .d = in[1], .spacing = in[2], .b = in[3]});
      return {};
    }};

const Method khosla_thickness{.id = "seepage.floor_thickness_correction.khosla",
                              .title = "Pressure at the underside of a floor instead of its top",
                              .equation = "C = (phiD - phi0)*t/d",
                              .inputs = thickness_in,
                              .outputs = thickness_out,
                              .source = "khosla_1936",
                              .place = "straight along the face of the cutoff from floor to tip",
                              .provenance = Provenance::memory,
                              .accuracy = "linear between two exact values",
                              .condition = [](std::span<const double> in) -> std::string_view {
                                return in[3] <= in[2] ? std::string_view{} : "the floor is thicker than the cutoff is deep";
                              },
                              .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                if (in[3] > in[2]) return bad_input("t", in[3], 0.0, in[2], "the cutoff ends within the floor");
                                out[0] =
                                    hydraulics::khosla_thickness({.at_floor = in[0], .at_tip = in[1], .d = in[2], .t = in[3]});
                                return {};
                              }};

const Method khosla_slope{
    .id = "seepage.floor_slope_correction.khosla",
    .title = "What a falling underside adds at the cutoff at its upper end",
    .kind = EquationKind::procedure,
    .equation =
        "11.2, 6.5, 4.5, 3.3, 2.8, 2.5, 2.3 and 2.0 per cent for slopes of 1:1 to 1:8, straight between them, times ls/bs.",
    .inputs = slope_in,
    .outputs = slope_out,
    .source = "khosla_1936",
    .place = "table of the correction for slope, as textbooks repeat it",
    .provenance = Provenance::memory,
    .accuracy = "rounded to tenths of a per cent; steeper and flatter slopes take the nearest entry",
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      out[0] = hydraulics::khosla_slope({.m = in[0], .length = in[1], .spacing = in[2]});
      return {};
    }};

const Method creep_ratio_bligh{.id = "seepage.creep_ratio.bligh",
                               .title = "Creep ratio with all contact counted alike (Bligh)",
                               .equation = "C = (Lv + Lh)/dH",
                               .inputs = bligh_in,
                               .outputs = bligh_out,
                               .source = "bligh_1910",
                               .place = "definition",
                               .provenance = Provenance::memory,
                               .accuracy = "rough",
                               .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                 out[0] = hydraulics::creep_ratio_bligh({.Lv = in[0], .Lh = in[1], .dH = in[2]});
                                 return {};
                               }};

}  // namespace quell::hydraulics::record
