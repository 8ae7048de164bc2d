#include <cmath>
#include <limits>
#include <vector>

#include "quell/hydraulics/stage_discharge.h"

namespace quell::hydraulics::record {
namespace {
constexpr double must_be_given = std::numeric_limits<double>::quiet_NaN();
constexpr Symbol a_symbol{"a", "factor of the power law, in m and s", dimension::none, above_zero};
constexpr Symbol h0_symbol{"h0", "level of no flow", dimension::length, any_value};
constexpr Symbol b_symbol{"b", "exponent of the power law", dimension::none, {1.3, 3.5}, must_be_given, above_zero};
constexpr Symbol discharge_in[] = {{"h", "level, above h0", dimension::length, any_value}, a_symbol, h0_symbol, b_symbol};
constexpr Symbol level_in[] = {{"Q", "discharge", dimension::discharge, {0.0, no_limit}}, a_symbol, h0_symbol, b_symbol};
constexpr Symbol fit_in[] = {{"h", "levels gauged", dimension::length, any_value, must_be_given, {}, true},
                             {"Q", "discharges gauged", dimension::discharge, above_zero, must_be_given, {}, true}};
constexpr Symbol zero_in[] = {{"h1", "level at the discharge Q1", dimension::length, any_value},
                              {"h2", "level at the discharge sqrt(Q1 Q3)", dimension::length, any_value},
                              {"h3", "level at the discharge Q3", dimension::length, any_value}};
constexpr Symbol fall_in[] = {{"Qr", "discharge of the rating at the same level", dimension::discharge, {0.0, no_limit}},
                              {"F", "fall to the second gauge", dimension::length, {0.0, no_limit}},
                              {"Fr", "fall for which the rating holds", dimension::length, above_zero}};
constexpr Symbol loop_in[] = {{"r", "rise of the level per time, falling below zero", dimension::velocity, {-0.001, 0.001}},
                              {"c", "speed of the flood wave", dimension::velocity, above_zero},
                              {"S0", "slope of the bed", dimension::none, {1e-5, 0.01}, must_be_given, above_zero}};
constexpr Symbol conveyance_in[] = {{"Qg", "highest discharge gauged", dimension::discharge, above_zero},
                                    {"Kg", "conveyance of the section at its level", dimension::discharge, above_zero},
                                    {"K", "conveyance at the level sought", dimension::discharge, above_zero}};
constexpr Symbol Q_out[] = {{"Q", "discharge", dimension::discharge, {0.0, no_limit}}};
constexpr Symbol h_out[] = {{"h", "level", dimension::length, any_value}};
constexpr Symbol h0_out[] = {h0_symbol};
constexpr Symbol factor_out[] = {
    {"f", "discharge over that of steady flow at the same level", dimension::none, {0.0, no_limit}}};
constexpr Symbol fit_out[] = {a_symbol,
                              h0_symbol,
                              {"b", "exponent of the power law", dimension::none, above_zero},
                              {"s", "standard error of ln Q", dimension::none, {0.0, no_limit}}};
constexpr Text held = "as good as the gaugings within their range; 10 to 20 % of Q beyond";

Outcome<RatingFit> fit_of(std::span<const double> in) {
  const std::size_t count = in.size() / 2;
  std::vector<GaugedPoint> points;
  points.reserve(count);
  for (std::size_t i = 0; i < count; ++i) points.emplace_back(GaugedPoint{.level = in[i], .discharge = in[count + i]});
  return fit_rating(points);
}
}  // namespace

const Method rating_discharge{.id = "river.rating.discharge",
                              .title = "Discharge of a rating curve at a level",
                              .equation = "Q = a*(h - h0)^b",
                              .inputs = discharge_in,
                              .outputs = Q_out,
                              .source = "wmo_2010",
                              .place = "stage-discharge relation, power law",
                              .provenance = Provenance::common_practice,
                              .accuracy = held,
                              .condition = [](std::span<const double> in) -> std::string_view {
                                return in[0] > in[2] ? std::string_view{} : "the level is not above that of no flow";
                              },
                              .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                out[0] = StageRating{.a = in[1], .h0 = in[2], .b = in[3]}.discharge(in[0]);
                                return {};
                              }};

const Method rating_level{.id = "river.rating.level",
                          .title = "Level of a rating curve at a discharge",
                          .equation = "h = h0 + (Q/a)^(1/b)",
                          .inputs = level_in,
                          .outputs = h_out,
                          .source = "wmo_2010",
                          .place = "stage-discharge relation, power law solved for the level",
                          .provenance = Provenance::common_practice,
                          .accuracy = held,
                          .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                            out[0] = StageRating{.a = in[1], .h0 = in[2], .b = in[3]}.level(in[0]);
                            return {};
                          }};

const Method rating_fit{
    .id = "river.rating.fit",
    .title = "Power law through gauged levels and discharges",
    .kind = EquationKind::procedure,
    .equation =
        "Least sum of (ln Q - ln a - b ln(h - h0))^2 over a, b and h0; s^2 is that sum over the number of gaugings less 3.",
    .inputs = fit_in,
    .outputs = fit_out,
    .source = "wmo_2010",
    .place = "fitting of stage-discharge relations",
    .provenance = Provenance::common_practice,
    .accuracy = "h0 to 1e-8 of the range of levels, about",
    .remarks = "Fit the river within its banks and above them apart.",
    .condition = [](std::span<const double> in) -> std::string_view {
      const auto fit = fit_of(in);
      if (!fit) return fit.error().reason;
      return fit->doubt(fit->highest.discharge);
    },
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      const auto fit = fit_of(in);
      if (!fit) return tl::unexpected(fit.error());
      out[0] = fit->rating.a;
      out[1] = fit->rating.h0;
      out[2] = fit->rating.b;
      out[3] = fit->standard_error;
      return {};
    }};

const Method rating_zero{.id = "river.rating.zero_level",
                         .title = "Level of no flow from three points of a rating curve",
                         .equation = "h0 = (h1*h3 - h2^2)/(h1 + h3 - 2*h2)",
                         .inputs = zero_in,
                         .outputs = h0_out,
                         .source = "wmo_2010",
                         .place = "three discharges in geometric progression on one power law",
                         .provenance = Provenance::derived,
                         .accuracy = "exact; 1 mm in the levels is some 10 mm in h0",
                         .condition = [](std::span<const double> in) -> std::string_view {
                           const bool curved = in[1] > in[0] && in[2] - in[1] > in[1] - in[0];
                           return curved ? std::string_view{} : "the three levels lie on no power law";
                         },
                         .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                           return store(hydraulics::rating_zero({.h1 = in[0], .h2 = in[1], .h3 = in[2]}), out);
                         }};

const Method rating_fall{.id = "river.rating.fall",
                         .title = "Discharge at a gauge in backwater from the fall to a second gauge",
                         .equation = "Q = Qr*sqrt(F/Fr)",
                         .inputs = fall_in,
                         .outputs = Q_out,
                         .source = "wmo_2010",
                         .place = "complex ratings, fall between two gauges",
                         .provenance = Provenance::memory,
                         .accuracy = "the exponent is 0.4 to 0.6 at gauges",
                         .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                           out[0] = fall_discharge({.Qr = in[0], .F = in[1], .Fr = in[2]});
                           return {};
                         }};

const Method rating_loop{
    .id = "river.rating.loop",
    .title = "Discharge over that of steady flow while the level rises or falls (Jones)",
    .equation = "f = sqrt(1 + r/(c*S0))",
    .inputs = loop_in,
    .outputs = factor_out,
    .source = "perumal_2004",
    .place = "Jones's formula and its limit",
    .provenance = Provenance::memory,
    .accuracy = "where the slope of the surface differs from that of the bed by less than half",
    .remarks = "On the rise the same discharge comes at a lower level than the steady rating says: less tailwater.",
    .condition = [](std::span<const double> in) -> std::string_view {
      return std::abs(in[0]) < 0.5 * in[1] * in[2] ? std::string_view{}
                                                   : "the surface slope differs from the bed's by half or more";
    },
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      return store(loop_factor({.rise = in[0], .c = in[1], .slope = in[2]}), out);
    }};

const Method rating_conveyance{.id = "river.rating.conveyance_slope",
                               .title = "Discharge above the gaugings from the conveyance, the friction slope held",
                               .equation = "Q = Qg*K/Kg",
                               .inputs = conveyance_in,
                               .outputs = Q_out,
                               .source = "wmo_2010",
                               .place = "extrapolation by conveyance and slope: the slope tends to a constant",
                               .provenance = Provenance::common_practice,
                               .accuracy = "10 to 20 % of Q",
                               .remarks = "Only where the control does not change.",
                               .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                 out[0] = in[0] * in[2] / in[1];
                                 return {};
                               }};

}  // namespace quell::hydraulics::record
