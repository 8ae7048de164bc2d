// The records of the published lengths; the formulas stand in jump_length_fits.h.
#include "quell/hydraulics/jump_length_fits.h"

namespace quell::hydraulics::record {
namespace {
constexpr std::string_view no_range = "No range is known; it is kept to Froude numbers from 1.7, where a roller begins, to 20.";
constexpr Symbol depths_in[] = {{"y1", "depth before the jump", dimension::length, above_zero},
                                {"y2", "sequent depth", dimension::length, above_zero}};
constexpr Symbol froude_in[] = {{"F1", "Froude number before the jump", dimension::none, fit::unpublished},
                                {"y1", "depth before the jump", dimension::length, above_zero}};
constexpr Symbol froude_depths_in[] = {{"F1", "Froude number before the jump", dimension::none, fit::unpublished},
                                       {"y1", "depth before the jump", dimension::length, above_zero},
                                       {"y2", "sequent depth", dimension::length, above_zero}};
constexpr Symbol hager_in[] = {{"F1", "Froude number before the jump", dimension::none, {2.5, 8.0}},
                               {"y1", "depth before the jump", dimension::length, above_zero}};
constexpr Symbol narrow_in[] = {{"F1", "Froude number before the jump", dimension::none, {2.5, 16.0}},
                                {"y1", "depth before the jump", dimension::length, above_zero}};
constexpr Symbol wang_in[] = {{"F1", "Froude number before the jump", dimension::none, {1.5, 8.5}},
                              {"y1", "depth before the jump", dimension::length, above_zero}};
constexpr Symbol six_in[] = {{"F1", "Froude number before the jump", dimension::none, {4.0, 12.0}},
                             {"y2", "sequent depth", dimension::length, above_zero}};
constexpr Symbol length_out[] = {{"Lj", "length of the jump", dimension::length, {0.0, no_limit}}};
constexpr Symbol roller_out[] = {{"Lr", "length of the roller", dimension::length, {0.0, no_limit}}};
constexpr Range carollo_range{2.0, 9.0};
}  // namespace

const Method jump_length_elevatorski_1959{
    .id = "jump.length.elevatorski_1959",
    .title = "Length of the free jump, a multiple of the rise",
    .equation = "Lj = 6.9*(y2 - y1)",
    .inputs = depths_in,
    .outputs = length_out,
    .source = "elevatorski_1959",
    .place = "length of the jump",
    .provenance = Provenance::memory,
    .accuracy = "within 4 % of the tabulated curve for F1 3 to 8, 5 % above it at 10, 8 % below it at 2",
    .remarks = no_range,
    .condition = fit::froude_within<fit::unpublished>,
    .evaluate = fit::from_depths<fit::elevatorski>};

const Method jump_length_smetana_1934{.id = "jump.length.smetana_1934",
                                      .title = "Length of the free jump, six times the rise",
                                      .equation = "Lj = 6*(y2 - y1)",
                                      .inputs = depths_in,
                                      .outputs = length_out,
                                      .source = "smetana_1934",
                                      .place = "length of the jump",
                                      .provenance = Provenance::memory,
                                      .accuracy = "about 15 %",
                                      .remarks = no_range,
                                      .condition = fit::froude_within<fit::unpublished>,
                                      .evaluate = fit::from_depths<fit::smetana>};

const Method jump_length_bakhmeteff_1936{
    .id = "jump.length.bakhmeteff_matzke_1936",
    .title = "Length of the free jump, five times the rise",
    .equation = "Lj = 5*(y2 - y1)",
    .inputs = depths_in,
    .outputs = length_out,
    .source = "bakhmeteff_matzke_1936",
    .place = "length of the jump",
    .provenance = Provenance::memory,
    .accuracy = "about 20 %, short",
    .remarks = "Also given to Riegel and Beebe 1917. A review lists it for Froude numbers from 2.5 to 4.5.",
    .condition = fit::froude_within<fit::bakhmeteff_range>,
    .evaluate = fit::from_depths<fit::bakhmeteff>};

const Method jump_length_kinney_1935{.id = "jump.length.kinney_1935",
                                     .title = "Length of the free jump, a multiple of the rise",
                                     .equation = "Lj = 6.02*(y2 - y1)",
                                     .inputs = depths_in,
                                     .outputs = length_out,
                                     .source = "kinney_1935",
                                     .place = "length of the jump",
                                     .provenance = Provenance::memory,
                                     .accuracy = "about 15 %",
                                     .remarks = no_range,
                                     .condition = fit::froude_within<fit::unpublished>,
                                     .evaluate = fit::from_depths<fit::kinney>};

const Method jump_length_aravin_1935{.id = "jump.length.aravin_1935",
                                     .title = "Length of the free jump, a multiple of the rise",
                                     .equation = "Lj = 5.4*(y2 - y1)",
                                     .inputs = depths_in,
                                     .outputs = length_out,
                                     .source = "aravin_1935",
                                     .place = "length of the jump",
                                     .provenance = Provenance::memory,
                                     .accuracy = "about 20 %, short",
                                     .remarks = no_range,
                                     .condition = fit::froude_within<fit::unpublished>,
                                     .evaluate = fit::from_depths<fit::aravin>};

const Method jump_length_pavlovski_1940{.id = "jump.length.pavlovski_1940",
                                        .title = "Length of the free jump, by both depths",
                                        .equation = "Lj = 2.5*(1.9*y2 - y1)",
                                        .inputs = depths_in,
                                        .outputs = length_out,
                                        .source = "pavlovski_1940",
                                        .place = "length of the jump",
                                        .provenance = Provenance::memory,
                                        .accuracy = "about 20 %, short",
                                        .remarks = no_range,
                                        .condition = fit::froude_within<fit::unpublished>,
                                        .evaluate = fit::from_depths<fit::pavlovski>};

const Method jump_length_chertousov_1935{.id = "jump.length.chertousov_1935",
                                         .title = "Length of the free jump, a power of the Froude number",
                                         .equation = "Lj = 10.3*y1*(F1 - 1)^0.81",
                                         .inputs = froude_in,
                                         .outputs = length_out,
                                         .source = "chertousov_1935",
                                         .place = "length of the jump",
                                         .provenance = Provenance::memory,
                                         .accuracy = "about 25 %, short above F1 = 5",
                                         .remarks = no_range,
                                         .evaluate = fit::from_froude<fit::chertousov>};

const Method jump_length_silvester_1964{.id = "jump.length.silvester_1964",
                                        .title = "Length of the free jump, a power of the Froude number",
                                        .equation = "Lj = 9.75*y1*(F1 - 1)^1.01",
                                        .inputs = froude_in,
                                        .outputs = length_out,
                                        .source = "silvester_1964",
                                        .place = "rectangular section",
                                        .provenance = Provenance::memory,
                                        .accuracy = "within 5 % of the tabulated curve for F1 2.5 to 8, 8 % above it at 10",
                                        .remarks = no_range,
                                        .evaluate = fit::from_froude<fit::silvester>};

const Method jump_length_ivanchenko_1936{
    .id = "jump.length.ivanchenko_1936",
    .title = "Length of the free jump, by the rise and the Froude number",
    .equation = "Lj = 10.6*(y2 - y1)*F1^(-0.37)",
    .inputs = froude_depths_in,
    .outputs = length_out,
    .source = "ivanchenko_1936",
    .place = "length of the jump",
    .provenance = Provenance::memory,
    .accuracy = "about 25 %, short above F1 = 5",
    .remarks = no_range,
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      if (in[2] < in[1]) return bad_input("y2", in[2], in[1], no_limit, "the depth after a jump is above that before it");
      if (!(in[0] > 1.0)) return bad_input("F1", in[0], 1.0, no_limit, "flow that is not supercritical makes no jump");
      out[0] = fit::ivanchenko({.F1 = in[0], .y1 = in[1], .y2 = in[2]});
      return {};
    }};

const Method jump_length_woycicki_1931{.id = "jump.length.woycicki_1931",
                                       .title = "Length of the free jump, by the rise and the ratio of depths",
                                       .equation = "Lj = max(0, (y2 - y1)*(8 - 0.05*y2/y1))",
                                       .inputs = depths_in,
                                       .outputs = length_out,
                                       .source = "woycicki_1931",
                                       .place = "length of the jump",
                                       .provenance = Provenance::memory,
                                       .accuracy = "about 10 %",
                                       .remarks = no_range,
                                       .condition = fit::froude_within<fit::unpublished>,
                                       .evaluate = fit::from_depths<fit::woycicki>};

const Method jump_length_marques_1997{.id = "jump.length.marques_1997",
                                      .title = "Length of the free jump, to the end of the bed's pressure fluctuation",
                                      .equation = "Lj = 8.5*(y2 - y1)",
                                      .inputs = depths_in,
                                      .outputs = length_out,
                                      .source = "marques_1997",
                                      .place = "last of the four stations on the bed",
                                      .provenance = Provenance::memory,
                                      .accuracy = "about 15 %",
                                      .remarks =
                                          "Ends where the fluctuation of pressure has become that of the channel, hence longer "
                                          "than other lengths. Tests from F1 = 4.5 to 10.",
                                      .condition = fit::froude_within<fit::marques_range>,
                                      .evaluate = fit::from_depths<fit::marques>};

const Method jump_length_six_depths{.id = "jump.length.six_depths",
                                    .title = "Length of the free jump, six sequent depths",
                                    .equation = "Lj = 6*y2",
                                    .inputs = six_in,
                                    .outputs = length_out,
                                    .source = "hager_1992",
                                    .place = "classical jump, rule for design",
                                    .provenance = Provenance::memory,
                                    .accuracy = "within 4 % of the tabulated curve",
                                    .remarks = "A rule for the first sketch of a basin.",
                                    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                      out[0] = 6.0 * in[1];
                                      return {};
                                    }};

const Method roller_length_narrow{.id = "jump.roller_length.hager_1990_narrow",
                                  .title = "Length of the roller, narrow flume",
                                  .equation = "Lr = max(0, y1*(100*tanh(F1/12.5) - 12))",
                                  .inputs = narrow_in,
                                  .outputs = roller_out,
                                  .source = "hager_1990",
                                  .place = "roller length for y1/b from 0.1 to 0.7",
                                  .provenance = Provenance::memory,
                                  .accuracy = "about 10 %",
                                  .remarks = "For flumes whose side walls matter, 0.1 < y1/b < 0.7; basins are wider.",
                                  .evaluate = fit::from_froude<fit::narrow_roller>};

const Method roller_length_hager_1992{.id = "jump.roller_length.hager_1992",
                                      .title = "Length of the roller, linear form",
                                      .equation = "Lr = max(0, 8*y1*(F1 - 1.5))",
                                      .inputs = hager_in,
                                      .outputs = roller_out,
                                      .source = "hager_1992",
                                      .place = "classical jump, length of the roller",
                                      .provenance = Provenance::memory,
                                      .accuracy = "within 7 % of the hyperbolic form of 1990 in its range",
                                      .evaluate = fit::from_froude<fit::hager_roller>};

const Method roller_length_wang_2015{.id = "jump.roller_length.wang_chanson_2015",
                                     .title = "Length of the roller, linear form from aerated jumps",
                                     .equation = "Lr = 6*y1*(F1 - 1)",
                                     .inputs = wang_in,
                                     .outputs = roller_out,
                                     .source = "wang_chanson_2015",
                                     .place = "roller length, to F1 of 8.5 to 10",
                                     .provenance = Provenance::memory,
                                     .accuracy = "about 15 %",
                                     .remarks = "The upper end of its range is given as 8.5 to 10.",
                                     .evaluate = fit::from_froude<fit::wang_roller>};

const Method roller_length_safranez_1929{.id = "jump.roller_length.safranez_1929",
                                         .title = "Length of the roller, proportional to the Froude number",
                                         .equation = "Lr = 5.9*y1*F1",
                                         .inputs = froude_in,
                                         .outputs = roller_out,
                                         .source = "safranez_1929",
                                         .place = "length of the roller",
                                         .provenance = Provenance::memory,
                                         .accuracy = "about 25 %",
                                         .remarks = no_range,
                                         .evaluate = fit::from_froude<fit::safranez_roller>};

const Method roller_length_marques_1997{.id = "jump.roller_length.marques_1997",
                                        .title = "Length of the roller, from the pressure on the bed",
                                        .equation = "Lr = 6*(y2 - y1)",
                                        .inputs = depths_in,
                                        .outputs = roller_out,
                                        .source = "marques_1997",
                                        .place = "third of the four stations on the bed",
                                        .provenance = Provenance::memory,
                                        .accuracy = "about 15 %",
                                        .remarks = "Tests from F1 = 4.5 to 10.",
                                        .condition = fit::froude_within<fit::marques_range>,
                                        .evaluate = fit::from_depths<fit::marques_roller>};

const Method roller_length_carollo_2007{.id = "jump.roller_length.carollo_2007",
                                        .title = "Length of the roller, smooth bed, by the rise",
                                        .equation = "Lr = 4.62*(y2 - y1)",
                                        .inputs = depths_in,
                                        .outputs = roller_out,
                                        .source = "carollo_2007",
                                        .place = "smooth bed",
                                        .provenance = Provenance::memory,
                                        .accuracy = "about 10 %",
                                        .remarks = "Three digits of the coefficient are sure. Tests from F1 = 2 to 9.",
                                        .condition = fit::froude_within<carollo_range>,
                                        .evaluate = fit::from_depths<fit::carollo_roller>};

}  // namespace quell::hydraulics::record
