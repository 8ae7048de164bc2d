#include <string_view>

#include "quell/hydraulics/river_section.h"
#include "quell/hydraulics/river_symbols.h"

namespace quell::hydraulics::record {

Outcome<RiverSection> section_from(std::span<const double> in, std::size_t before) {
  const auto own = in.subspan(before);
  const std::size_t points = (own.size() - 5) / 2;
  SurveyedSection survey{.left_bank = own[0], .right_bank = own[1], .manning_n = {own[2], own[3], own[4]}};
  const auto lists = own.subspan(5);
  survey.x.assign(lists.begin(), lists.begin() + static_cast<std::ptrdiff_t>(points));
  survey.z.assign(lists.begin() + static_cast<std::ptrdiff_t>(points), lists.end());
  return RiverSection::of(survey);
}

namespace {
constexpr Symbol conveyance_in[] = {{"w", "level of the water", dimension::length, any_value},
                                    left_symbol,
                                    right_symbol,
                                    n_left,
                                    n_channel,
                                    n_right,
                                    x_list,
                                    z_list};
constexpr Symbol normal_in[] = {{"Q", "discharge", dimension::discharge, above_zero},
                                {"S", "slope of the bed", dimension::none, {1e-6, 0.1}},
                                left_symbol,
                                right_symbol,
                                n_left,
                                n_channel,
                                n_right,
                                x_list,
                                z_list};
constexpr Symbol critical_in[] = {{"Q", "discharge", dimension::discharge, above_zero},
                                  left_symbol,
                                  right_symbol,
                                  n_left,
                                  n_channel,
                                  n_right,
                                  x_list,
                                  z_list};
constexpr Symbol excess_in[] = {
    {"eps", "highest velocity over the mean, less 1", dimension::none, {0.0, 1.0}, must_be_given, {0.0, no_limit}}};

constexpr Symbol conveyance_out[] = {
    {"A", "area", dimension::area, above_zero},
    {"P", "wetted perimeter, without the lines between the parts", dimension::length, above_zero},
    {"T", "surface width", dimension::length, above_zero},
    {"K", "conveyance: discharge over the root of the slope", dimension::discharge, above_zero},
    {"alpha", "energy coefficient", dimension::none, above_zero},
    {"beta", "momentum coefficient", dimension::none, above_zero},
    {"Aybar", "first moment: area times depth of its centroid", dimension::volume, above_zero}};
constexpr Symbol normal_out[] = {{"wn", "level of uniform flow", dimension::length, any_value}};
constexpr Symbol critical_out[] = {{"wc", "critical level", dimension::length, any_value},
                                   {"E", "energy level there", dimension::length, any_value}};
constexpr Symbol excess_out[] = {{"alpha", "energy coefficient", dimension::none, above_zero},
                                 {"beta", "momentum coefficient", dimension::none, above_zero}};

std::string_view conveyance_condition(std::span<const double> in) {
  const auto section = section_from(in, 1);
  return section && in[0] > section->bank_level() ? above_the_bank : std::string_view{};
}
std::string_view normal_condition(std::span<const double> in) {
  const auto section = section_from(in, 2);
  if (!section) return section.error().reason;
  const auto level = section->normal_level(in[0], in[1]);
  if (!level) return level.error().reason;
  return *level > section->bank_level() ? above_the_bank : std::string_view{};
}
std::string_view critical_condition(std::span<const double> in) {
  const auto section = section_from(in, 1);
  if (!section) return section.error().reason;
  const auto levels = section->critical_levels(in[0]);
  if (!levels) return levels.error().reason;
  if (levels->count > 1) return "the section has several critical levels: the one of the least energy is given";
  return levels->level > section->bank_level() ? above_the_bank : std::string_view{};
}
}  // namespace

const Method river_conveyance_surveyed{
    .id = "river.conveyance.surveyed",
    .title = "Conveyance and velocity coefficients of a surveyed river section with flood plains",
    .kind = EquationKind::procedure,
    .equation =
        "The section is parted by vertical lines at the banks, which are not wetted. In each part k = a (a/p)^(2/3)/n; K = sum "
        "k, "
        "alpha = sum(k^3/a^2) A^2/K^3, beta = sum(k^2/a) A/K^2.",
    .inputs = conveyance_in,
    .outputs = conveyance_out,
    .source = "chow_1959",
    .place = "sec. 6-5 and 2-7, divided channel",
    .provenance = Provenance::memory,
    .accuracy = "about 10 % too much flow while the water on the plains is shallow; n is rarely known better than 15 %",
    .remarks = "All water below the level counts, behind a ridge too.",
    .condition = conveyance_condition,
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      const auto section = section_from(in, 1);
      if (!section) return tl::unexpected(section.error());
      if (!(in[0] > section->lowest_level()))
        return bad_input("w", in[0], section->lowest_level(), no_limit, "there is no water below the lowest point");
      const auto water = section->at_level(in[0]);
      out[0] = water.area;
      out[1] = water.perimeter;
      out[2] = water.top_width;
      out[3] = water.conveyance;
      out[4] = water.alpha;
      out[5] = water.beta;
      out[6] = water.first_moment;
      return {};
    }};

const Method river_normal_level_surveyed{
    .id = "river.normal_level.surveyed",
    .title = "Level of uniform flow in a surveyed river section with flood plains",
    .kind = EquationKind::procedure,
    .equation = "The lowest level at which the conveyance of the divided section is Q/sqrt(S).",
    .inputs = normal_in,
    .outputs = normal_out,
    .source = "chow_1959",
    .place = "sec. 6-5, divided channel",
    .provenance = Provenance::memory,
    .accuracy = "solved to 1e-10 m; 10 % of n is about 6 % of the depth",
    .remarks = "As the tailwater of a basin only where the river is uniform over 0.7 times depth over slope downstream.",
    .condition = normal_condition,
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      const auto section = section_from(in, 2);
      if (!section) return tl::unexpected(section.error());
      return store(section->normal_level(in[0], in[1]), out);
    }};

const Method river_critical_level_surveyed{
    .id = "river.critical_level.surveyed",
    .title = "Critical level in a surveyed river section with flood plains",
    .kind = EquationKind::procedure,
    .equation =
        "The level w at which w + alpha Q^2/(2 g A^2) is least of all, alpha of the divided section; every minimum is looked "
        "for.",
    .inputs = critical_in,
    .outputs = critical_out,
    .source = "blalock_sturm_1981",
    .place = "least specific energy with an energy coefficient that changes with the level",
    .provenance = Provenance::memory,
    .accuracy = "solved to 1e-9 m",
    .condition = critical_condition,
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      const auto section = section_from(in, 1);
      if (!section) return tl::unexpected(section.error());
      const auto level = section->critical_level(in[0]);
      if (!level) return tl::unexpected(level.error());
      out[0] = *level;
      out[1] = section->energy_level(*level, in[0]);
      return {};
    }};

const Method velocity_coefficients_excess{.id = "section.velocity_coefficients.excess",
                                          .title = "Energy and momentum coefficients from the highest velocity",
                                          .equation = "alpha = 1 + 3*eps^2 - 2*eps^3; beta = 1 + eps^2",
                                          .inputs = excess_in,
                                          .outputs = excess_out,
                                          .source = "chow_1959",
                                          .place = "sec. 2-7, logarithmic distribution of velocity",
                                          .provenance = Provenance::memory,
                                          .accuracy = "for regular channels",
                                          .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                            const double eps = in[0];
                                            out[0] = 1.0 + 3.0 * eps * eps - 2.0 * eps * eps * eps;
                                            out[1] = 1.0 + eps * eps;
                                            return {};
                                          }};

}  // namespace quell::hydraulics::record
