#include <cmath>
#include <vector>

#include "quell/hydraulics/river_profile.h"
#include "quell/hydraulics/river_symbols.h"

namespace quell::hydraulics::record {
namespace {
constexpr double wall_height = 1e4;  // m: no water is deeper
constexpr Symbol step_in[] = {
    {"Q", "discharge", dimension::discharge, above_zero},
    {"w1", "level downstream, subcritical", dimension::length, any_value},
    {"z1", "bed level downstream", dimension::length, any_value},
    {"b1", "bottom width downstream", dimension::length, above_zero},
    {"m1", "side slope downstream, horizontal over vertical", dimension::none, {0.0, 10.0}},
    {"z2", "bed level upstream", dimension::length, any_value},
    {"b2", "bottom width upstream", dimension::length, above_zero},
    {"m2", "side slope upstream, horizontal over vertical", dimension::none, {0.0, 10.0}},
    {"n", "Manning's roughness", dimension::manning, {0.008, 0.2}},
    {"L", "length of the reach", dimension::length, above_zero},
    {"Cc", "coefficient of contraction", dimension::none, {0.0, 0.6}, 0.1, {0.0, 1.0}},
    {"Ce", "coefficient of expansion", dimension::none, {0.0, 0.8}, 0.3, {0.0, 1.0}},
    {"alpha", "energy coefficient of both sections", dimension::none, {1.0, 2.0}, 1.0, {1.0, no_limit}}};
constexpr Symbol reach_in[] = {{"Q", "discharge", dimension::discharge, above_zero},
                               {"w1", "level at the downstream end, subcritical", dimension::length, any_value},
                               {"S", "slope of the bed, falling downstream", dimension::none, {-0.01, 0.05}},
                               {"L", "length of the reach", dimension::length, above_zero},
                               {"N", "number of equal steps", dimension::none, {10.0, 2000.0}, 100.0, {1.0, 10000.0}},
                               left_symbol,
                               right_symbol,
                               n_left,
                               n_channel,
                               n_right,
                               x_list,
                               z_list};
constexpr Symbol reach_out[] = {{"w2", "level at the upstream end", dimension::length, any_value}};
constexpr Symbol step_out[] = {{"w2", "level upstream", dimension::length, any_value},
                               {"h1", "velocity head downstream", dimension::length, above_zero},
                               {"h2", "velocity head upstream", dimension::length, above_zero},
                               {"K1", "conveyance downstream", dimension::discharge, above_zero},
                               {"K2", "conveyance upstream", dimension::discharge, above_zero}};
constexpr Text place = "sec. 10-4, standard step; losses of expansion and contraction by common practice";
constexpr Text accuracy = "solved to 1e-12 m; the error of the step falls with the square of its length";
constexpr std::string_view remarks = "Trustworthy where the conveyance of one section is 0.7 to 1.4 times that of the other.";

Outcome<RiverSection> trapezoid(double b, double m, double z, std::span<const double> in) {
  const double reach = b / 2.0 + m * wall_height;
  const double n = in[8];
  return RiverSection::of({.x = {-reach, -b / 2.0, b / 2.0, reach},
                           .z = {z + wall_height, z, z, z + wall_height},
                           .left_bank = -reach,
                           .right_bank = reach,
                           .manning_n = {n, n, n},
                           .alpha_part = in[12]});
}

template <FrictionAverage average>
Outcome<void> step(std::span<const double> in, std::span<double> out) {
  const double Q = in[0];
  const auto downstream = trapezoid(in[3], in[4], in[2], in);
  const auto upstream = trapezoid(in[6], in[7], in[5], in);
  if (!downstream) return tl::unexpected(downstream.error());
  if (!upstream) return tl::unexpected(upstream.error());
  const auto least = downstream->critical_level(Q);
  const auto critical = upstream->critical_level(Q);
  if (!least) return tl::unexpected(least.error());
  if (!critical) return tl::unexpected(critical.error());
  if (!(in[1] >= *least && in[1] - in[2] < wall_height))
    return bad_input("w1", in[1], *least, in[2] + wall_height, "the step upstream starts at or above the critical level");
  const StandardStep reach{.downstream = &*downstream,
                           .upstream = &*upstream,
                           .length = {in[9], in[9], in[9]},
                           .discharge = Q,
                           .loss = {.contraction = in[10], .expansion = in[11]},
                           .average = average};
  const auto level = step_upstream(reach, in[1], *critical);
  if (!level) return tl::unexpected(level.error());
  if (level->held_at_critical)
    return no_answer("there is no subcritical level upstream: the flow passes critical depth in the reach");
  if (!(level->level - in[5] < wall_height)) return no_answer("the level upstream is beyond any river");
  out[0] = level->level;
  out[1] = downstream->velocity_head(in[1], Q);
  out[2] = upstream->velocity_head(level->level, Q);
  out[3] = downstream->at_level(in[1]).conveyance;
  out[4] = upstream->at_level(level->level).conveyance;
  return {};
}

Outcome<double> level_above_reach(std::span<const double> in) {
  const double steps = std::round(in[4]);
  const auto section = section_from(in, 5);
  if (!section) return tl::unexpected(section.error());
  const auto count = static_cast<std::size_t>(steps) + 1;
  std::vector<RiverSection> sections;
  std::vector<RiverStation> stations;
  sections.reserve(count);
  stations.reserve(count);
  for (std::size_t i = 0; i < count; ++i) {
    const double station = in[3] * static_cast<double>(i) / steps;
    sections.emplace_back(section->raised(in[2] * station));
    const double length = i == 0 ? 0.0 : in[3] / steps;
    stations.emplace_back(RiverStation{.section = &sections.back(), .station = station, .length = {length, length, length}});
  }
  const auto profile = river_profile({.stations = stations,
                                      .discharge = in[0],
                                      .downstream = {.kind = RiverBoundary::Kind::known_level, .value = in[1]},
                                      .contraction = 0.0,
                                      .expansion = 0.0});
  if (!profile) return tl::unexpected(profile.error());
  for (const RiverNode& node : profile->nodes)
    if (node.held_at_critical) return no_answer("there is no subcritical flow all along the reach");
  return profile->nodes.back().level;
}
}  // namespace

const Method river_level_surveyed{.id = "river.level.surveyed",
                                  .title = "Level upstream of a reach of one surveyed section, by many standard steps",
                                  .kind = EquationKind::procedure,
                                  .equation =
                                      "N steps w2 + h2 = w1 + h1 + (L/N) (2 Q/(K1 + K2))^2, h = alpha Q^2/(2 g A^2), the "
                                      "section raised by S L/N from each to "
                                      "the next.",
                                  .inputs = reach_in,
                                  .outputs = reach_out,
                                  .source = "chow_1959",
                                  .place = place,
                                  .provenance = Provenance::memory,
                                  .accuracy = "the error falls with the square of L/N",
                                  .remarks = "Subcritical flow. x and z are the section at the downstream end.",
                                  .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                    return store(level_above_reach(in), out);
                                  }};

const Method river_level_conveyance{.id = "river.level.standard_step",
                                    .title = "Level one section upstream by the standard step, average of the conveyances",
                                    .kind = EquationKind::residual,
                                    .equation = "w2 + h2 = w1 + h1 + L*(2*Q/(K1 + K2))^2 + max(Cc*(h1 - h2), Ce*(h2 - h1))",
                                    .inputs = step_in,
                                    .outputs = step_out,
                                    .source = "chow_1959",
                                    .place = place,
                                    .provenance = Provenance::memory,
                                    .accuracy = accuracy,
                                    .remarks = remarks,
                                    .evaluate = step<FrictionAverage::conveyance>};

const Method river_level_arithmetic{
    .id = "river.level.standard_step_arithmetic",
    .title = "Level one section upstream by the standard step, arithmetic mean of the friction slopes",
    .kind = EquationKind::residual,
    .equation = "w2 + h2 = w1 + h1 + L*Q^2*(1/K1^2 + 1/K2^2)/2 + max(Cc*(h1 - h2), Ce*(h2 - h1))",
    .inputs = step_in,
    .outputs = step_out,
    .source = "chow_1959",
    .place = place,
    .provenance = Provenance::memory,
    .accuracy = accuracy,
    .remarks = remarks,
    .evaluate = step<FrictionAverage::arithmetic>};

const Method river_level_geometric{
    .id = "river.level.standard_step_geometric",
    .title = "Level one section upstream by the standard step, geometric mean of the friction slopes",
    .kind = EquationKind::residual,
    .equation = "w2 + h2 = w1 + h1 + L*Q^2/(K1*K2) + max(Cc*(h1 - h2), Ce*(h2 - h1))",
    .inputs = step_in,
    .outputs = step_out,
    .source = "chow_1959",
    .place = place,
    .provenance = Provenance::memory,
    .accuracy = accuracy,
    .remarks = remarks,
    .evaluate = step<FrictionAverage::geometric>};

const Method river_level_harmonic{
    .id = "river.level.standard_step_harmonic",
    .title = "Level one section upstream by the standard step, harmonic mean of the friction slopes",
    .kind = EquationKind::residual,
    .equation = "w2 + h2 = w1 + h1 + L*2*Q^2/(K1^2 + K2^2) + max(Cc*(h1 - h2), Ce*(h2 - h1))",
    .inputs = step_in,
    .outputs = step_out,
    .source = "chow_1959",
    .place = place,
    .provenance = Provenance::memory,
    .accuracy = accuracy,
    .remarks = remarks,
    .evaluate = step<FrictionAverage::harmonic>};

}  // namespace quell::hydraulics::record
