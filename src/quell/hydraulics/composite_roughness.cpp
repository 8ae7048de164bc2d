#include "quell/hydraulics/composite_roughness.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace quell::hydraulics {
namespace {
template <class Term>
double sum(std::span<const RoughStrip> strips, Term&& term) {
  double total = 0.0;
  for (const RoughStrip& strip : strips) total += term(strip);
  return total;
}
double area(const RoughStrip& strip) {
  return strip.A;
}
double perimeter(const RoughStrip& strip) {
  return strip.P;
}
double roughness_equal_velocity(std::span<const RoughStrip> strips) {
  return std::pow(sum(strips, [](const auto& s) { return s.P * std::pow(s.n, 1.5); }) / sum(strips, perimeter), 2.0 / 3.0);
}
}  // namespace

double roughness_pavlovskii(std::span<const RoughStrip> strips) noexcept {
  return std::sqrt(sum(strips, [](const auto& s) { return s.P * s.n * s.n; }) / sum(strips, perimeter));
}

double roughness_lotter(std::span<const RoughStrip> strips) noexcept {
  const double P = sum(strips, perimeter);
  const double whole = P * std::pow(sum(strips, area) / P, 5.0 / 3.0);
  return whole / sum(strips, [](const auto& s) { return s.P * std::pow(s.A / s.P, 5.0 / 3.0) / s.n; });
}

double roughness_felkel(std::span<const RoughStrip> strips) noexcept {
  return sum(strips, perimeter) / sum(strips, [](const auto& s) { return s.P / s.n; });
}

double roughness_krishnamurthy_christensen(std::span<const RoughStrip> strips) noexcept {
  const auto weight = [](const RoughStrip& s) { return s.P * std::pow(s.y, 1.5); };
  return std::exp(sum(strips, [&](const auto& s) { return weight(s) * std::log(s.n); }) / sum(strips, weight));
}

double roughness_colebatch(std::span<const RoughStrip> strips) noexcept {
  return std::pow(sum(strips, [](const auto& s) { return s.A * std::pow(s.n, 1.5); }) / sum(strips, area), 2.0 / 3.0);
}

double roughness_cox(std::span<const RoughStrip> strips) noexcept {
  return sum(strips, [](const auto& s) { return s.A * s.n; }) / sum(strips, area);
}

RoughnessSpread roughness_spread(std::span<const RoughStrip> strips) noexcept {
  const std::array all{roughness_equal_velocity(strips),
                       roughness_pavlovskii(strips),
                       roughness_lotter(strips),
                       roughness_felkel(strips),
                       roughness_colebatch(strips),
                       roughness_krishnamurthy_christensen(strips),
                       roughness_cox(strips)};
  double total = 0.0;
  for (const double n : all) total += n;
  const auto [lowest, highest] = std::ranges::minmax(all);
  return {.lowest = lowest, .highest = highest, .mean = total / static_cast<double>(all.size())};
}

namespace record {
namespace {
constexpr Range usual_n{0.008, 0.2};
constexpr Symbol A1{"A1", "area over the first part", dimension::area, above_zero};
constexpr Symbol A2{"A2", "area over the second part", dimension::area, above_zero};
constexpr Symbol A3{"A3", "area over the third part", dimension::area, above_zero};
constexpr Symbol P1{"P1", "wetted perimeter of the first part", dimension::length, above_zero};
constexpr Symbol P2{"P2", "wetted perimeter of the second part", dimension::length, above_zero};
constexpr Symbol P3{"P3", "wetted perimeter of the third part", dimension::length, above_zero};
constexpr Symbol y1{"y1", "mean depth over the first part", dimension::length, above_zero};
constexpr Symbol y2{"y2", "mean depth over the second part", dimension::length, above_zero};
constexpr Symbol y3{"y3", "mean depth over the third part", dimension::length, above_zero};
constexpr Symbol n1{"n1", "Manning's roughness of the first part", dimension::manning, usual_n};
constexpr Symbol n2{"n2", "Manning's roughness of the second part", dimension::manning, usual_n};
constexpr Symbol n3{"n3", "Manning's roughness of the third part", dimension::manning, usual_n};
constexpr Symbol by_perimeter[] = {P1, P2, P3, n1, n2, n3};
constexpr Symbol by_area[] = {A1, A2, A3, n1, n2, n3};
constexpr Symbol by_both[] = {A1, A2, A3, P1, P2, P3, n1, n2, n3};
constexpr Symbol by_depth[] = {P1, P2, P3, y1, y2, y3, n1, n2, n3};
constexpr Symbol by_all[] = {A1, A2, A3, P1, P2, P3, y1, y2, y3, n1, n2, n3};
constexpr Symbol n_out[] = {{"n", "roughness of the whole section", dimension::manning, above_zero}};
constexpr Symbol spread_out[] = {{"nmin", "lowest of the seven rules", dimension::manning, above_zero},
                                 {"nmax", "highest of the seven rules", dimension::manning, above_zero},
                                 {"nmean", "mean of the seven rules", dimension::manning, above_zero}};
constexpr Text accuracy = "the seven rules for the same section differ by up to 30 %";
constexpr std::string_view simple_channel =
    "For a simple channel. On a section with flood plains add the conveyances of the parts.";

using Strips = std::array<RoughStrip, 3>;
using Rule = double (*)(std::span<const RoughStrip>) noexcept;

template <Rule rule>
Outcome<void> from_perimeter(std::span<const double> in, std::span<double> out) {
  Strips strips;
  for (std::size_t i = 0; i < 3; ++i) strips[i] = {.A = 1.0, .P = in[i], .y = 1.0, .n = in[i + 3]};
  out[0] = rule(strips);
  return {};
}
template <Rule rule>
Outcome<void> from_area(std::span<const double> in, std::span<double> out) {
  Strips strips;
  for (std::size_t i = 0; i < 3; ++i) strips[i] = {.A = in[i], .P = 1.0, .y = 1.0, .n = in[i + 3]};
  out[0] = rule(strips);
  return {};
}
Outcome<void> lotter(std::span<const double> in, std::span<double> out) {
  Strips strips;
  for (std::size_t i = 0; i < 3; ++i) strips[i] = {.A = in[i], .P = in[i + 3], .y = 1.0, .n = in[i + 6]};
  out[0] = roughness_lotter(strips);
  return {};
}
Outcome<void> krishnamurthy_christensen(std::span<const double> in, std::span<double> out) {
  Strips strips;
  for (std::size_t i = 0; i < 3; ++i) strips[i] = {.A = 1.0, .P = in[i], .y = in[i + 3], .n = in[i + 6]};
  out[0] = roughness_krishnamurthy_christensen(strips);
  return {};
}
Outcome<void> spread(std::span<const double> in, std::span<double> out) {
  Strips strips;
  for (std::size_t i = 0; i < 3; ++i) strips[i] = {.A = in[i], .P = in[i + 3], .y = in[i + 6], .n = in[i + 9]};
  const auto found = roughness_spread(strips);
  out[0] = found.lowest;
  out[1] = found.highest;
  out[2] = found.mean;
  return {};
}
}  // namespace

const Method composite_pavlovskii{.id = "section.roughness.pavlovskii",
                                  .title = "Roughness of a section of three parts whose resisting forces add up (Pavlovskii)",
                                  .equation = "n = sqrt((P1*n1^2 + P2*n2^2 + P3*n3^2)/(P1 + P2 + P3))",
                                  .inputs = by_perimeter,
                                  .outputs = n_out,
                                  .source = "chow_1959",
                                  .place = "sec. 6-5, sum of the forces resisting the flow",
                                  .provenance = Provenance::memory,
                                  .accuracy = accuracy,
                                  .remarks = simple_channel,
                                  .evaluate = from_perimeter<roughness_pavlovskii>};

const Method composite_lotter{.id = "section.roughness.lotter",
                              .title = "Roughness of a section of three parts whose discharges add up (Lotter)",
                              .equation =
                                  "P = P1 + P2 + P3; n = P*((A1 + A2 + A3)/P)^(5/3)/(P1*(A1/P1)^(5/3)/n1 + "
                                  "P2*(A2/P2)^(5/3)/n2 + P3*(A3/P3)^(5/3)/n3)",
                              .inputs = by_both,
                              .outputs = n_out,
                              .source = "chow_1959",
                              .place = "sec. 6-5, sum of the discharges",
                              .provenance = Provenance::memory,
                              .accuracy = accuracy,
                              .remarks = simple_channel,
                              .evaluate = lotter};

const Method composite_felkel{.id = "section.roughness.felkel",
                              .title = "Roughness of a section of three parts with one hydraulic radius (Felkel)",
                              .equation = "n = (P1 + P2 + P3)/(P1/n1 + P2/n2 + P3/n3)",
                              .inputs = by_perimeter,
                              .outputs = n_out,
                              .source = "yen_2002",
                              .place = "composite roughness: sum of discharges with equal hydraulic radius",
                              .provenance = Provenance::memory,
                              .accuracy = accuracy,
                              .remarks = simple_channel,
                              .evaluate = from_perimeter<roughness_felkel>};

const Method composite_krishnamurthy_christensen{
    .id = "section.roughness.krishnamurthy_christensen",
    .title = "Roughness of a section of three parts with logarithmic velocity (Krishnamurthy and Christensen)",
    .equation = "n = exp((P1*y1^1.5*ln(n1) + P2*y2^1.5*ln(n2) + P3*y3^1.5*ln(n3))/(P1*y1^1.5 + P2*y2^1.5 + P3*y3^1.5))",
    .inputs = by_depth,
    .outputs = n_out,
    .source = "yen_2002",
    .place = "composite roughness: logarithmic velocity",
    .provenance = Provenance::memory,
    .accuracy = accuracy,
    .remarks = simple_channel,
    .evaluate = krishnamurthy_christensen};

const Method composite_colebatch{.id = "section.roughness.colebatch",
                                 .title = "Roughness of a section of three parts weighted by area (Colebatch)",
                                 .equation = "n = ((A1*n1^1.5 + A2*n2^1.5 + A3*n3^1.5)/(A1 + A2 + A3))^(2/3)",
                                 .inputs = by_area,
                                 .outputs = n_out,
                                 .source = "yen_2002",
                                 .place = "composite roughness: Colebatch",
                                 .provenance = Provenance::memory,
                                 .accuracy = accuracy,
                                 .remarks = simple_channel,
                                 .evaluate = from_area<roughness_colebatch>};

const Method composite_cox{.id = "section.roughness.cox",
                           .title = "Roughness of a section of three parts as their mean by area (Cox)",
                           .equation = "n = (A1*n1 + A2*n2 + A3*n3)/(A1 + A2 + A3)",
                           .inputs = by_area,
                           .outputs = n_out,
                           .source = "yen_2002",
                           .place = "composite roughness: Cox",
                           .provenance = Provenance::memory,
                           .accuracy = accuracy,
                           .remarks = simple_channel,
                           .evaluate = from_area<roughness_cox>};

const Method composite_spread{
    .id = "section.roughness.spread",
    .title = "Lowest, highest and mean roughness of a section of three parts by seven rules",
    .kind = EquationKind::procedure,
    .equation =
        "The least, the greatest and the mean of the roughness by Horton, Pavlovskii, Lotter, Felkel, Krishnamurthy and "
        "Christensen, Colebatch, and Cox.",
    .inputs = by_all,
    .outputs = spread_out,
    .source = "yen_2002",
    .place = "the rules side by side",
    .provenance = Provenance::memory,
    .accuracy = "the spread is what is known",
    .remarks = simple_channel,
    .evaluate = spread};

}  // namespace record
}  // namespace quell::hydraulics
