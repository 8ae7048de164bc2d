#include "quell/hydraulics/weirs_broad.h"

#include <cmath>

#include "quell/base/constants.h"

namespace quell::hydraulics {

double broad_crest_discharge(const BroadCrestInput& input) noexcept {
  return std::pow(2.0 / 3.0, 1.5) * std::sqrt(gravity) * input.Cd * input.b * std::pow(input.H, 1.5);
}

BroadWeirFlow square_edged_discharge(const BroadWeirInput& input) noexcept {
  const double Cd = 0.42 * (1.0 - 2.0 / 9.0 / (1.0 + std::pow(input.He / input.Lw, 4.0)));
  return {Cd, Cd * input.b * std::sqrt(2.0 * gravity) * std::pow(input.He, 1.5)};
}

BroadWeirFlow long_throated_discharge(const BroadWeirInput& input) noexcept {
  const double Cd = 0.93 + 0.10 * input.He / input.Lw;
  return {Cd, broad_crest_discharge({.H = input.He, .b = input.b, .Cd = Cd})};
}

double chute_entrance_discharge(const ChuteEntranceInput& input) noexcept {
  return 3.1 * std::sqrt(0.3048) * input.W * std::pow(input.H, 1.5);
}

double drowned_crest_discharge(const DrownedCrestInput& input) noexcept {
  const double velocity = std::sqrt(2.0 * gravity * input.h);
  return input.L * (2.0 / 3.0 * input.C1 * velocity * input.h + input.C2 * input.d * velocity);
}

namespace record {
namespace {
constexpr Symbol discharge_out[] = {{"Q", "discharge", dimension::discharge, {0.0, no_limit}}};
constexpr Symbol coefficient_out[] = {{"Cd", "discharge coefficient", dimension::none, {0.0, 1.5}},
                                      {"Q", "discharge", dimension::discharge, {0.0, no_limit}}};
constexpr Symbol crest_in[] = {
    {"H", "total head above the crest", dimension::length, above_zero},
    {"b", "crest length across the flow", dimension::length, above_zero},
    {"Cd", "discharge over that of critical flow without loss", dimension::none, {0.8, 1.3}, 1.0, above_zero}};
constexpr Symbol square_in[] = {{"He", "total head above the crest", dimension::length, {0.03, no_limit}},
                                {"Lw", "length of the crest along the flow", dimension::length, above_zero},
                                {"b", "crest length across the flow", dimension::length, above_zero}};
constexpr Symbol throat_in[] = {
    {"He", "total head above the crest", dimension::length, {0.03, no_limit}},
    {"Lw", "length of the crest along the flow", dimension::length, above_zero},
    {"b", "crest length across the flow", dimension::length, above_zero},
    {"r", "tailwater level above the crest over He, 0 where it is below the crest", dimension::none, {0.0, 1.0}, 0.0},
    {"ML",
     "modular limit: 0.66 behind a vertical back, 0.85 to 0.95 behind a sloping one",
     dimension::none,
     {0.66, 0.95},
     0.66}};
constexpr Symbol entrance_in[] = {{"H", "head above the floor of the entrance", dimension::length, above_zero},
                                  {"W", "width of the entrance", dimension::length, above_zero}};
constexpr Symbol heads_in[] = {
    {"h1", "upstream level above the crest", dimension::length, above_zero},
    {"h2", "downstream level above the crest, 0 where it is below", dimension::length, {0.0, no_limit}}};
constexpr Symbol factor_out[] = {{"k", "discharge over that of the free crest", dimension::none, {0.0, 1.0}}};
constexpr Symbol drowned_in[] = {{"h", "upstream level above the downstream level", dimension::length, {0.0, no_limit}},
                                 {"d", "downstream level above the crest", dimension::length, {0.0, no_limit}},
                                 {"L", "crest length", dimension::length, above_zero},
                                 {"C1", "coefficient of the free part", dimension::none, {0.5, 0.7}, 0.557},
                                 {"C2", "coefficient of the drowned part", dimension::none, {0.5, 0.9}, 0.8}};

std::string_view square_condition(std::span<const double> in) {
  const double ratio = in[0] / in[1];
  return ratio > 0.1 && ratio < 1.5 ? std::string_view{} : "He/Lw lies outside 0.1 to 1.5, where it was measured";
}
std::string_view throat_condition(std::span<const double> in) {
  const double ratio = in[0] / in[1];
  if (!(ratio >= 0.1 && ratio <= 1.0)) return "He/Lw lies outside 0.1 to 1, where it was measured";
  return in[3] <= in[4] ? std::string_view{} : "the tailwater is above the modular limit: the crest is drowned";
}
BroadWeirInput broad_weir(std::span<const double> in) {
  return {.He = in[0], .Lw = in[1], .b = in[2]};
}
Outcome<void> store_flow(const BroadWeirFlow& flow, std::span<double> out) {
  out[0] = flow.Cd;
  out[1] = flow.Q;
  return {};
}
}  // namespace

const Method weir_broad_crest{.id = "weir.discharge.broad_crest",
                              .title = "Broad crest: critical flow on the crest",
                              .equation = "Q = (2/3)^1.5*sqrt(g)*Cd*b*H^1.5",
                              .inputs = crest_in,
                              .outputs = discharge_out,
                              .source = "momentum",
                              .place = "critical depth on the crest, energy without loss for Cd = 1",
                              .provenance = Provenance::derived,
                              .accuracy = "exact without friction; the coefficient brings its own error",
                              .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                out[0] = broad_crest_discharge({.H = in[0], .b = in[1], .Cd = in[2]});
                                return {};
                              }};

const Method weir_square_edged{.id = "weir.discharge.hager_schwalt",
                               .title = "Broad crest with square edges",
                               .equation = "Cd = 0.42*(1 - 2/9/(1 + (He/Lw)^4)); Q = Cd*b*sqrt(2*g)*He^1.5",
                               .inputs = square_in,
                               .outputs = coefficient_out,
                               .source = "hager_schwalt_1994",
                               .place = "discharge equation",
                               .provenance = Provenance::memory,
                               .accuracy = "about 2 %",
                               .condition = square_condition,
                               .evaluate = [](std::span<const double> in, std::span<double> out) {
                                 return store_flow(square_edged_discharge(broad_weir(in)), out);
                               }};

const Method weir_long_throated{.id = "weir.discharge.long_throated",
                                .title = "Broad crest with rounded entrance and long throat",
                                .equation = "Cd = 0.93 + 0.1*He/Lw; Q = (2/3)^1.5*sqrt(g)*Cd*b*He^1.5",
                                .inputs = throat_in,
                                .outputs = coefficient_out,
                                .source = "bos_1989",
                                .place = "long-throated flumes and broad-crested weirs",
                                .provenance = Provenance::memory,
                                .accuracy = "about 3 to 5 %",
                                .condition = throat_condition,
                                .evaluate = [](std::span<const double> in, std::span<double> out) {
                                  return store_flow(long_throated_discharge(broad_weir(in)), out);
                                }};

const Method weir_chute_entrance{.id = "weir.discharge.chute_entrance",
                                 .title = "Entrance of a small drop or chute with rounded abutments",
                                 .equation = "Q = 3.1*0.3048^0.5*W*H^1.5",
                                 .inputs = entrance_in,
                                 .outputs = discharge_out,
                                 .source = "tm_5_820_3",
                                 .place = "eq. 7-1, 3.1 in ft^0.5/s",
                                 .provenance = Provenance::seen,
                                 .accuracy = "not stated; 0.4 % above critical flow without loss",
                                 .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                   out[0] = chute_entrance_discharge({.H = in[0], .W = in[1]});
                                   return {};
                                 }};

const Method weir_submergence_broad{.id = "weir.submergence.broad_crest",
                                    .title = "Drowned broad crest: part of the free discharge that passes",
                                    .equation = "k = (1 - (h2/h1)^10)^0.95",
                                    .inputs = heads_in,
                                    .outputs = factor_out,
                                    .source = "sturm_2001",
                                    .place = "ex. 2.5, quoted in a published lesson",
                                    .provenance = Provenance::seen,
                                    .accuracy = "not stated",
                                    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                      if (in[1] > in[0])
                                        return bad_input("h2", in[1], 0.0, in[0], "the water would flow back: h2 is above h1");
                                      out[0] = std::pow(1.0 - std::pow(in[1] / in[0], 10.0), 0.95);
                                      return {};
                                    }};

const Method weir_drowned_crest{.id = "weir.discharge.drowned_crest",
                                .title = "Drowned crest of a regulator: free part above, orifice below the tailwater",
                                .equation = "Q = L*(2/3*C1*sqrt(2*g*h)*h + C2*d*sqrt(2*g*h))",
                                .inputs = drowned_in,
                                .outputs = discharge_out,
                                .source = "punmia",
                                .place = "ex. 18.3 (p. 831)",
                                .provenance = Provenance::seen,
                                .accuracy = "not stated",
                                .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                  out[0] =
                                      drowned_crest_discharge({.h = in[0], .d = in[1], .L = in[2], .C1 = in[3], .C2 = in[4]});
                                  return {};
                                }};

}  // namespace record
}  // namespace quell::hydraulics
