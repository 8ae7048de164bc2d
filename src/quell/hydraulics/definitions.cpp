#include "quell/hydraulics/definitions.h"

namespace quell::hydraulics::record {
namespace {

constexpr Symbol margin_in[] = {{"zw", "level of the tailwater", dimension::length, any_value},
                                {"za", "level of the apron", dimension::length, any_value},
                                {"T", "depth asked for above the apron", dimension::length, {0.0, no_limit}}};
constexpr Symbol margin_out[] = {{"m", "margin, negative where tailwater is missing", dimension::length, any_value}};
constexpr Symbol ratio_in[] = {{"zw", "level of the tailwater", dimension::length, any_value},
                               {"za", "level of the apron", dimension::length, any_value},
                               {"y2", "sequent depth", dimension::length, above_zero}};
constexpr Symbol ratio_out[] = {{"r", "depth of tailwater over the sequent depth", dimension::none, any_value},
                                {"S", "submergence", dimension::none, any_value}};
constexpr Symbol levels_in[] = {{"za", "upper level", dimension::length, any_value},
                                {"zb", "lower level", dimension::length, any_value}};
constexpr Symbol levels_out[] = {
    {"h", "difference, negative where the first lies below the second", dimension::length, any_value}};
constexpr Symbol left_in[] = {{"z0", "energy level at the start of the chute", dimension::length, any_value},
                              {"hL", "head lost on the way", dimension::length, {0.0, no_limit}},
                              {"za", "level of the apron", dimension::length, any_value}};
constexpr Symbol left_out[] = {{"E1", "energy head above the apron", dimension::length, any_value}};
constexpr Symbol unit_in[] = {{"Q", "discharge", dimension::discharge, above_zero},
                              {"W", "width", dimension::length, above_zero}};
constexpr Symbol unit_out[] = {{"q", "discharge per unit width", dimension::unit_discharge, above_zero}};
constexpr Symbol velocity_in[] = {{"q", "discharge per unit width", dimension::unit_discharge, above_zero},
                                  {"y", "depth", dimension::length, above_zero}};
constexpr Symbol velocity_out[] = {{"V", "mean velocity", dimension::velocity, above_zero}};
constexpr Symbol head_in[] = {{"H", "head on the crest", dimension::length, {0.0, no_limit}},
                              {"L", "design head, height of the weir or length of the crest", dimension::length, above_zero}};
constexpr Symbol head_out[] = {{"r", "ratio", dimension::none, {0.0, no_limit}}};

}  // namespace

const Method tailwater_margin{.id = "tailwater.margin.levels",
                              .title = "Margin of tailwater over the depth asked for",
                              .equation = "m = zw - za - T",
                              .inputs = margin_in,
                              .outputs = margin_out,
                              .source = "momentum",
                              .place = "a definition: depth there is less depth asked for",
                              .provenance = Provenance::derived,
                              .accuracy = "exact",
                              .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                out[0] = in[0] - in[1] - in[2];
                                return {};
                              }};

const Method tailwater_ratio{.id = "tailwater.ratio.levels",
                             .title = "Tailwater over the sequent depth, and submergence",
                             .equation = "r = (zw - za)/y2; S = r - 1",
                             .inputs = ratio_in,
                             .outputs = ratio_out,
                             .source = "momentum",
                             .place = "a definition",
                             .provenance = Provenance::derived,
                             .accuracy = "exact",
                             .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                               out[0] = (in[0] - in[1]) / in[2];
                               out[1] = out[0] - 1.0;
                               return {};
                             }};

const Method level_difference{.id = "level.difference.definition",
                              .title = "Difference of two levels",
                              .equation = "h = za - zb",
                              .inputs = levels_in,
                              .outputs = levels_out,
                              .source = "momentum",
                              .place = "a definition",
                              .provenance = Provenance::derived,
                              .accuracy = "exact",
                              .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                out[0] = in[0] - in[1];
                                return {};
                              }};

const Method energy_head_left{.id = "chute.energy_head.levels",
                              .title = "Energy head that reaches the apron",
                              .equation = "E1 = z0 - hL - za",
                              .inputs = left_in,
                              .outputs = left_out,
                              .source = "momentum",
                              .place = "balance of energy between two sections",
                              .provenance = Provenance::derived,
                              .accuracy = "exact",
                              .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                out[0] = in[0] - in[1] - in[2];
                                return {};
                              }};

const Method unit_discharge{.id = "flow.unit_discharge.continuity",
                            .title = "Discharge per unit width",
                            .equation = "q = Q/W",
                            .inputs = unit_in,
                            .outputs = unit_out,
                            .source = "momentum",
                            .place = "balance of mass over a uniform width",
                            .provenance = Provenance::derived,
                            .accuracy = "exact where the flow is alike over the width",
                            .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                              out[0] = in[0] / in[1];
                              return {};
                            }};

const Method mean_velocity{.id = "flow.velocity.continuity",
                           .title = "Mean velocity from discharge per unit width and depth",
                           .equation = "V = q/y",
                           .inputs = velocity_in,
                           .outputs = velocity_out,
                           .source = "momentum",
                           .place = "balance of mass",
                           .provenance = Provenance::derived,
                           .accuracy = "exact",
                           .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                             out[0] = in[0] / in[1];
                             return {};
                           }};

const Method crest_head_ratio{.id = "crest.head_ratio.definition",
                              .title = "Head on the crest over the length that its rating goes by",
                              .equation = "r = H/L",
                              .inputs = head_in,
                              .outputs = head_out,
                              .source = "momentum",
                              .place = "a definition",
                              .provenance = Provenance::derived,
                              .accuracy = "exact",
                              .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                out[0] = in[0] / in[1];
                                return {};
                              }};

}  // namespace quell::hydraulics::record
