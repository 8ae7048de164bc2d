#include "quell/hydraulics/river_roughness.h"

#include <cmath>
#include <limits>

namespace quell::hydraulics {
namespace {
constexpr double steepest_data = 0.052;  // slope of the steepest reach that Jarrett's formula was ever compared with
constexpr ManningRow table[] = {
    {"Concrete, trowel finish", 0.011, 0.013, 0.015, Provenance::memory},
    {"Concrete, float finish", 0.013, 0.015, 0.016, Provenance::memory},
    {"Concrete, unfinished", 0.014, 0.017, 0.020, Provenance::memory},
    {"Gunite, good section", 0.016, 0.019, 0.023, Provenance::memory},
    {"Gravel bottom, riprap sides", 0.023, 0.033, 0.036, Provenance::memory},
    {"Earth, straight, uniform, clean, weathered", 0.018, 0.022, 0.025, Provenance::memory},
    {"Gravel, uniform, clean", 0.022, 0.025, 0.030, Provenance::memory},
    {"Rock cut, smooth and uniform", 0.025, 0.035, 0.040, Provenance::memory},
    {"Rock cut, jagged and irregular", 0.035, 0.040, 0.050, Provenance::memory},
    {"Stream, clean, straight, full stage, no rifts or deep pools", 0.025, 0.030, 0.033, Provenance::seen},
    {"Stream, straight, more stones and weeds", 0.030, 0.035, 0.040, Provenance::seen},
    {"Stream, clean, winding, some pools and shoals", 0.033, 0.040, 0.045, Provenance::seen},
    {"Stream, winding, some weeds and stones", 0.035, 0.045, 0.050, Provenance::seen},
    {"Stream, winding, lower stages, more ineffective slopes", 0.040, 0.048, 0.055, Provenance::seen},
    {"Stream, winding, more stones", 0.045, 0.050, 0.060, Provenance::seen},
    {"Stream, sluggish, weedy, deep pools", 0.050, 0.070, 0.080, Provenance::seen},
    {"Stream, very weedy, or floodway with heavy timber", 0.075, 0.100, 0.150, Provenance::seen},
    {"Mountain stream, gravel, cobbles, few boulders", 0.030, 0.040, 0.050, Provenance::seen},
    {"Mountain stream, cobbles with large boulders", 0.040, 0.050, 0.070, Provenance::seen},
    {"River wider than 30 m, regular, no boulders", 0.025, 0, 0.060, Provenance::seen},
    {"River wider than 30 m, irregular and rough", 0.035, 0, 0.100, Provenance::seen},
    {"Flood plain, short grass", 0.025, 0.030, 0.035, Provenance::seen},
    {"Flood plain, high grass", 0.030, 0.035, 0.050, Provenance::seen},
    {"Flood plain, mature field crops", 0.030, 0.040, 0.050, Provenance::seen},
    {"Flood plain, scattered brush, heavy weeds", 0.035, 0.050, 0.070, Provenance::seen},
    {"Flood plain, light brush and trees, summer", 0.040, 0.060, 0.080, Provenance::seen},
    {"Flood plain, medium to dense brush, summer", 0.070, 0.100, 0.160, Provenance::seen},
    {"Flood plain, dense willows, summer", 0.110, 0.150, 0.200, Provenance::seen},
    {"Flood plain, heavy timber, flood below the branches", 0.080, 0.100, 0.120, Provenance::seen},
};
}  // namespace

double roughness_of_grains(double d, double C) noexcept {
  return std::pow(d, 1.0 / 6.0) / C;
}

Outcome<double> roughness_limerinos(const LimerinosInput& input) {
  const double resistance = input.c + 2.0 * std::log10(input.R / input.d);
  if (!(resistance > 0.0))
    return bad_input("R", input.R, input.d * std::pow(10.0, -input.c / 2.0), no_limit,
                     "the water is too shallow over the stones");
  return 0.113 * std::pow(input.R, 1.0 / 6.0) / resistance;
}

Outcome<double> roughness_jarrett(const JarrettInput& input) {
  if (!(input.slope <= steepest_data))
    return bad_input("S", input.slope, 0.0, steepest_data, "no river so steep stands behind the formula");
  return 0.32 * std::pow(input.slope, 0.38) * std::pow(input.R, -0.16);
}

double discharge_dingman_sharma(const DingmanSharmaInput& input) noexcept {
  return 1.564 * std::pow(input.A, 1.173) * std::pow(input.R, 0.4) * std::pow(input.slope, -0.0543 * std::log10(input.slope));
}

double roughness_cowan(const CowanInput& input) noexcept {
  return (input.n0 + input.n1 + input.n2 + input.n3 + input.n4) * input.m5;
}

std::span<const ManningRow> manning_table() noexcept {
  return table;
}

namespace record {
namespace {
constexpr double must_be_given = std::numeric_limits<double>::quiet_NaN();
constexpr Range gravel{0.001, 1.0};
constexpr Symbol strickler_in[] = {
    {"d", "size of the grains, d50 or as C requires", dimension::length, gravel},
    {"C", "constant: 21.1 for d50, 26 for d90", dimension::none, {20.0, 27.0}, strickler_d50, above_zero}};
constexpr Symbol limerinos_in[] = {
    {"R", "hydraulic radius", dimension::length, above_zero},
    {"d", "d84, or 0.6 d84 + 0.3 d50 + 0.1 d16", dimension::length, gravel},
    {"c", "constant: 1.16 for d84, 0.90 for the weighted size", dimension::none, {0.9, 1.16}, 1.16, {0.0, no_limit}}};
constexpr Symbol jarrett_in[] = {{"R", "hydraulic radius", dimension::length, {0.15, 2.13}},
                                 {"S", "slope of the energy line", dimension::none, {0.002, 0.04}, must_be_given, above_zero}};
constexpr Symbol dingman_in[] = {{"A", "area of flow", dimension::area, above_zero},
                                 {"R", "hydraulic radius", dimension::length, above_zero},
                                 {"S", "slope of the surface", dimension::none, {1e-5, 0.05}, must_be_given, {1e-12, 1.0}}};
constexpr Symbol cowan_in[] = {{"n0", "of the bed material", dimension::manning, {0.02, 0.028}},
                               {"n1", "for irregularity", dimension::manning, {0.0, 0.02}, 0.0},
                               {"n2", "for changes of the section", dimension::manning, {0.0, 0.015}, 0.0},
                               {"n3", "for obstructions", dimension::manning, {0.0, 0.06}, 0.0},
                               {"n4", "for vegetation", dimension::manning, {0.0, 0.1}, 0.0},
                               {"m5", "factor of meandering", dimension::none, {1.0, 1.3}, 1.0, {1.0, no_limit}}};
constexpr Symbol riprap_in[] = {{"d50", "median size of the stones", dimension::length, {0.05, 1.5}}};
constexpr Symbol em1601_in[] = {
    {"d90", "size that 90 % of the stones are below", dimension::length, {0.05, 2.0}},
    {"K", "0.046 for capacity and freeboard, 0.041 for stability", dimension::none, {0.041, 0.046}, 0.046, above_zero}};
constexpr Symbol n_out[] = {{"n", "Manning's roughness", dimension::manning, above_zero}};
constexpr Symbol Q_out[] = {{"Q", "discharge", dimension::discharge, above_zero}};
}  // namespace

const Method river_roughness_strickler{
    .id = "river.roughness.strickler",
    .title = "Manning's n of the grains of a river bed (Strickler)",
    .equation = "n = d^(1/6)/C",
    .inputs = strickler_in,
    .outputs = n_out,
    .source = "strickler_1923",
    .place = "grain roughness; other constants circulate: 21.1, 24 and 26 on d50, d75 and d90",
    .provenance = Provenance::memory,
    .accuracy = "15 %; the grains alone, the lower bound of n at flood stage",
    .remarks = "For rivers more than ten times as wide as deep, without dunes.",
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      out[0] = roughness_of_grains(in[0], in[1]);
      return {};
    }};

const Method river_roughness_limerinos{
    .id = "river.roughness.limerinos",
    .title = "Manning's n of a gravel stream from hydraulic radius and grain size (Limerinos)",
    .equation = "n = 0.113*R^(1/6)/(c + 2*log10(R/d))",
    .inputs = limerinos_in,
    .outputs = n_out,
    .source = "limerinos_1970",
    .place = "50 measurements in 11 gravel streams, in metres",
    .provenance = Provenance::seen,
    .accuracy = "about 20 %",
    .remarks = "High flow within the banks of straight reaches, below critical velocity, over a bed at rest.",
    .condition = [](std::span<const double> in) -> std::string_view {
      return in[0] >= in[1] ? std::string_view{} : "the hydraulic radius is below the size of the stones";
    },
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      return store(roughness_limerinos({.R = in[0], .d = in[1], .c = in[2]}), out);
    }};

const Method river_roughness_jarrett{.id = "river.roughness.jarrett",
                                     .title = "Manning's n of a mountain stream from slope and hydraulic radius (Jarrett)",
                                     .equation = "n = 0.32*S^0.38*R^(-0.16)",
                                     .inputs = jarrett_in,
                                     .outputs = n_out,
                                     .source = "jarrett_1984",
                                     .place = "75 measurements at 21 sites, in metres",
                                     .provenance = Provenance::memory,
                                     .accuracy = "about 30 %",
                                     .remarks = "The slope stands in n: a depth must be found with n by iteration.",
                                     .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                       return store(roughness_jarrett({.R = in[0], .slope = in[1]}), out);
                                     }};

const Method river_discharge_dingman_sharma{
    .id = "river.discharge.dingman_sharma",
    .title = "Discharge of a natural reach from area, radius and slope (Dingman and Sharma)",
    .equation = "Q = 1.564*A^1.173*R^0.400*S^(-0.0543*log10(S))",
    .inputs = dingman_in,
    .outputs = Q_out,
    .source = "dingman_sharma_1997",
    .place = "abstract, in metres and seconds",
    .provenance = Provenance::seen,
    .accuracy = "too high where Q is below 3 m3/s and the Froude number below 0.2",
    .remarks = "Flow within the banks.",
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      out[0] = discharge_dingman_sharma({.A = in[0], .R = in[1], .slope = in[2]});
      return {};
    }};

const Method river_roughness_cowan{
    .id = "river.roughness.cowan",
    .title = "Manning's n as the sum of what disturbs the flow (Cowan)",
    .equation = "n = (n0 + n1 + n2 + n3 + n4)*m5",
    .inputs = cowan_in,
    .outputs = n_out,
    .source = "cowan_1956",
    .place = "the procedure and its values",
    .provenance = Provenance::memory,
    .accuracy = "20 %",
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      out[0] = roughness_cowan({.n0 = in[0], .n1 = in[1], .n2 = in[2], .n3 = in[3], .n4 = in[4], .m5 = in[5]});
      return {};
    }};

const Method river_roughness_riprap{.id = "river.roughness.riprap",
                                    .title = "Manning's n of riprap from its median size",
                                    .equation = "n = 0.0481*d50^(1/6)",
                                    .inputs = riprap_in,
                                    .outputs = n_out,
                                    .source = "brown_clyde_1989",
                                    .place = "0.0395 d50^(1/6) in ft",
                                    .provenance = Provenance::memory,
                                    .accuracy = "15 %",
                                    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                      out[0] = 0.0481 * std::pow(in[0], 1.0 / 6.0);
                                      return {};
                                    }};

const Method river_roughness_riprap_em1601{.id = "river.roughness.riprap_em1601",
                                           .title = "Manning's n of riprap from its upper size",
                                           .equation = "n = K*d90^(1/6)",
                                           .inputs = em1601_in,
                                           .outputs = n_out,
                                           .source = "em1601_1991",
                                           .place = "riprap, 0.038 and 0.034 in ft",
                                           .provenance = Provenance::memory,
                                           .accuracy = "15 %",
                                           .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                             out[0] = in[1] * std::pow(in[0], 1.0 / 6.0);
                                             return {};
                                           }};

}  // namespace record
}  // namespace quell::hydraulics
