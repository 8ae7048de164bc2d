#include "quell/hydraulics/jump_turbulence.h"

#include <algorithm>
#include <cmath>

namespace quell::hydraulics {

double air_ratio_kalinske(double F1) noexcept {
  return 0.0066 * std::pow(F1 - 1.0, 1.4);
}

double air_ratio_rajaratnam(double F1) noexcept {
  return 0.018 * std::pow(F1 - 1.0, 1.245);
}

double air_ratio_wisner(double F1) noexcept {
  return 0.014 * std::pow(F1 - 1.0, 1.4);
}

double air_ratio_rabben(double F1) noexcept {
  return 0.03 * std::pow(F1 - 1.0, 0.76);
}

AirBand air_ratio_band(double F1) noexcept {
  const auto [lowest, highest] =
      std::minmax({air_ratio_kalinske(F1), air_ratio_rajaratnam(F1), air_ratio_wisner(F1), air_ratio_rabben(F1)});
  return {lowest, highest};
}

double surface_fluctuation(const RollerInput& input) noexcept {
  return 0.116 * input.y1 * std::pow(input.F1 - 1.0, 1.235);
}

double surface_period(const RollerInput& input) noexcept {
  const double velocity = input.F1 * std::sqrt(gravity * input.y1);
  return input.y1 / (velocity * 0.143 * std::exp(-0.27 * input.F1));
}

PressureFluctuation pressure_fluctuation(const RollerInput& input) noexcept {
  const double y2 = sequent_depth({.y1 = input.y1, .V1 = input.F1 * std::sqrt(gravity * input.y1)});
  const double sigma = 0.70 * jump_energy_loss({.y1 = input.y1, .y2 = y2}) * input.y1 / y2;
  const double velocity_head = 0.5 * input.F1 * input.F1 * input.y1;
  return {.sigma = sigma, .station = 1.75 * (y2 - input.y1), .Cp_prime = sigma / velocity_head};
}

double slab_thickness(const SlabInput& input) noexcept {
  return input.Omega * input.Cp * input.V1 * input.V1 / (2.0 * gravity) * water_unit_weight /
         (input.gamma_c - water_unit_weight);
}

namespace record {
namespace {
constexpr std::string_view no_jump = "flow that is not supercritical makes no jump";

constexpr Symbol air_in[] = {{"F1", "Froude number before the jump", dimension::none, {1.7, 20.0}}};
constexpr Symbol air_out[] = {{"beta", "discharge of air over that of water", dimension::none, {0.0, no_limit}}};
constexpr Symbol air_band_out[] = {{"beta_low", "lowest ratio of air to water", dimension::none, {0.0, no_limit}},
                                   {"beta_high", "highest ratio of air to water", dimension::none, {0.0, no_limit}}};
constexpr Symbol surface_in[] = {{"F1", "Froude number before the jump", dimension::none, {1.7, 8.5}},
                                 {"y1", "depth before the jump", dimension::length, above_zero}};
constexpr Symbol surface_out[] = {{"eta", "largest rms of the surface level", dimension::length, {0.0, no_limit}}};
constexpr Symbol period_out[] = {{"St", "dominant frequency times y1/V1", dimension::none, above_zero},
                                 {"Tp", "dominant period", dimension::time, above_zero}};
constexpr Symbol pressure_in[] = {{"F1", "Froude number before the jump", dimension::none, {4.5, 10.0}},
                                  {"y1", "depth before the jump", dimension::length, above_zero}};
constexpr Symbol pressure_out[] = {
    {"sigma", "largest rms of the pressure head on the floor", dimension::length, {0.0, no_limit}},
    {"x", "its distance from the toe", dimension::length, {0.0, no_limit}},
    {"Cp", "the same rms over the velocity head before the jump", dimension::none, {0.0, no_limit}}};
constexpr Symbol stations_in[] = {{"y1", "depth before the jump", dimension::length, above_zero},
                                  {"y2", "sequent depth", dimension::length, above_zero}};
constexpr Symbol stations_out[] = {{"xm", "largest fluctuation, from the toe", dimension::length, {0.0, no_limit}},
                                   {"xd", "the jet leaves the floor", dimension::length, {0.0, no_limit}},
                                   {"xr", "end of the roller", dimension::length, {0.0, no_limit}},
                                   {"xj", "end of the jump", dimension::length, {0.0, no_limit}}};
constexpr Symbol slab_in[] = {
    {"Omega", "share of the slab that one pulse covers", dimension::none, {0.0, 1.0}},
    {"Cp", "sum of both pressure extremes over the velocity head", dimension::none, {0.0, 2.0}},
    {"V1", "mean velocity before the jump", dimension::velocity, above_zero},
    {"gamma_c", "unit weight of the concrete", dimension::unit_weight, {20000.0, 26000.0}},
};
constexpr Symbol slab_out[] = {{"s", "thickness of the slab", dimension::length, {0.0, no_limit}}};

template <double (*ratio)(double) noexcept>
Outcome<void> evaluate_air(std::span<const double> in, std::span<double> out) {
  if (!(in[0] > 1.0)) return bad_input("F1", in[0], 1.0, no_limit, no_jump);
  out[0] = ratio(in[0]);
  return {};
}
constexpr std::string_view air_remark =
    "The four published ratios differ by a factor of two; models below a Reynolds number of 100 000 carry less air.";
}  // namespace

const Method air_kalinske_1943{.id = "jump.air.kalinske_robertson_1943",
                               .title = "Air carried by a jump in a closed conduit",
                               .equation = "beta = 0.0066*(F1 - 1)^1.4",
                               .inputs = air_in,
                               .outputs = air_out,
                               .source = "kalinske_robertson_1943",
                               .place = "air pumped by the jump that fills the conduit",
                               .provenance = Provenance::memory,
                               .accuracy = "a factor of two",
                               .remarks = air_remark,
                               .evaluate = evaluate_air<air_ratio_kalinske>};

const Method air_rajaratnam_1967{.id = "jump.air.rajaratnam_1967",
                                 .title = "Air entrained by an open jump",
                                 .equation = "beta = 0.018*(F1 - 1)^1.245",
                                 .inputs = air_in,
                                 .outputs = air_out,
                                 .source = "rajaratnam_1967",
                                 .place = "air entrainment of the jump",
                                 .provenance = Provenance::memory,
                                 .accuracy = "a factor of two",
                                 .remarks = air_remark,
                                 .evaluate = evaluate_air<air_ratio_rajaratnam>};

const Method air_wisner_1965{.id = "jump.air.wisner_1965",
                             .title = "Air entrained by a jump, a steeper power",
                             .equation = "beta = 0.014*(F1 - 1)^1.4",
                             .inputs = air_in,
                             .outputs = air_out,
                             .source = "wisner_1965",
                             .place = "air demand of the jump",
                             .provenance = Provenance::memory,
                             .accuracy = "a factor of two",
                             .remarks = air_remark,
                             .evaluate = evaluate_air<air_ratio_wisner>};

const Method air_rabben_1983{.id = "jump.air.rabben_1983",
                             .title = "Air entrained by a jump, a flatter power",
                             .equation = "beta = 0.03*(F1 - 1)^0.76",
                             .inputs = air_in,
                             .outputs = air_out,
                             .source = "rabben_1983",
                             .place = "air entrainment of the jump",
                             .provenance = Provenance::memory,
                             .accuracy = "a factor of two",
                             .remarks = air_remark,
                             .evaluate = evaluate_air<air_ratio_rabben>};

const Method air_band{.id = "jump.air.band",
                      .title = "Spread of the published ratios of air to water",
                      .equation =
                          "a = 0.0066*(F1 - 1)^1.4; b = 0.018*(F1 - 1)^1.245; c = 0.014*(F1 - 1)^1.4; d = 0.03*(F1 - 1)^0.76; "
                          "beta_low = min(a, min(b, min(c, d))); beta_high = max(a, max(b, max(c, d)))",
                      .inputs = air_in,
                      .outputs = air_band_out,
                      .source = "rajaratnam_1967",
                      .place = "with Kalinske and Robertson 1943, Wisner 1965 and Rabben 1983",
                      .provenance = Provenance::memory,
                      .accuracy = "the band is the uncertainty itself",
                      .remarks = "Allow for it in wall heights and vents; it enters no balance of momentum.",
                      .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                        if (!(in[0] > 1.0)) return bad_input("F1", in[0], 1.0, no_limit, no_jump);
                        const AirBand band = air_ratio_band(in[0]);
                        out[0] = band.lowest;
                        out[1] = band.highest;
                        return {};
                      }};

const Method surface_fluctuation{.id = "jump.surface_fluctuation.murzyn_chanson_2009",
                                 .title = "Largest fluctuation of the surface over the jump",
                                 .equation = "eta = 0.116*y1*(F1 - 1)^1.235",
                                 .inputs = surface_in,
                                 .outputs = surface_out,
                                 .source = "murzyn_chanson_2009",
                                 .place = "largest rms of the surface over the roller",
                                 .provenance = Provenance::memory,
                                 .accuracy = "about 20 %",
                                 .remarks = "Amplitudes follow Froude similarity. It is an rms, not the height of a crest.",
                                 .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                   if (!(in[0] > 1.0)) return bad_input("F1", in[0], 1.0, no_limit, no_jump);
                                   out[0] = hydraulics::surface_fluctuation({.F1 = in[0], .y1 = in[1]});
                                   return {};
                                 }};

const Method surface_period{.id = "jump.surface_period.murzyn_chanson_2009",
                            .title = "Dominant period of the surface over the jump",
                            .equation = "St = 0.143*exp(-0.27*F1); Tp = y1/(F1*sqrt(g*y1)*St)",
                            .inputs = surface_in,
                            .outputs = period_out,
                            .source = "murzyn_chanson_2009",
                            .place = "dominant frequency of the surface; the period follows from it",
                            .provenance = Provenance::memory,
                            .accuracy = "about 30 %; frequencies do not wholly follow Froude similarity",
                            .remarks = "The toe itself wanders more slowly, at 0.005 to 0.015 V1/y1.",
                            .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                              if (!(in[0] > 1.0)) return bad_input("F1", in[0], 1.0, no_limit, no_jump);
                              out[0] = 0.143 * std::exp(-0.27 * in[0]);
                              out[1] = hydraulics::surface_period({.F1 = in[0], .y1 = in[1]});
                              return {};
                            }};

const Method pressure_fluctuation_marques_1997{
    .id = "jump.pressure_fluctuation.marques_1997",
    .title = "Largest fluctuation of pressure on the floor below the jump",
    .equation = "Y = (sqrt(1 + 8*F1^2) - 1)/2; sigma = 0.70*y1*(Y - 1)^3/(4*Y^2); x = 1.75*y1*(Y - 1); Cp = sigma/(y1*F1^2/2)",
    .inputs = pressure_in,
    .outputs = pressure_out,
    .source = "marques_1997",
    .place = "largest of sigma y2/(dE y1) over x/(y2 - y1)",
    .provenance = Provenance::memory,
    .accuracy = "15 % in its maximum, 30 % with the influence of the inflow",
    .remarks =
        "The fluctuation is not Gaussian: no multiple of the rms gives its extremes. Sources disagree on whether an "
        "undeveloped "
        "inflow raises or lowers it; take the larger.",
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      if (!(in[0] > 1.0)) return bad_input("F1", in[0], 1.0, no_limit, no_jump);
      const auto largest = pressure_fluctuation({.F1 = in[0], .y1 = in[1]});
      out[0] = largest.sigma;
      out[1] = largest.station;
      out[2] = largest.Cp_prime;
      return {};
    }};

const Method pressure_stations_marques_1997{
    .id = "jump.pressure_stations.marques_1997",
    .title = "Stations of the floor below the jump by its pressure fluctuation",
    .equation = "xm = 1.75*(y2 - y1); xd = 4*(y2 - y1); xr = 6*(y2 - y1); xj = 8.5*(y2 - y1)",
    .inputs = stations_in,
    .outputs = stations_out,
    .source = "marques_1997",
    .place = "largest fluctuation, detachment, end of the roller, end of the jump",
    .provenance = Provenance::memory,
    .accuracy = "about 15 %",
    .remarks =
        "Skewness is largest at the first station, near zero at the second, least at the third and near zero again at the "
        "last.",
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      if (in[1] < in[0]) return bad_input("y2", in[1], in[0], no_limit, "the depth after a jump is above that before it");
      constexpr double multiples[] = {1.75, 4.0, 6.0, 8.5};
      for (std::size_t i = 0; i < 4; ++i) out[i] = multiples[i] * (in[1] - in[0]);
      return {};
    }};

const Method slab_thickness{
    .id = "basin.slab_thickness.fiorotto_rinaldo_1992",
    .title = "Thickness of an unanchored floor slab under the jump",
    .equation = "s = Omega*Cp*V1^2/(2*g)*gamma_w/(gamma_c - gamma_w)",
    .inputs = slab_in,
    .outputs = slab_out,
    .source = "fiorotto_rinaldo_1992",
    .place = "balance of weight against the pressure that enters the joints",
    .provenance = Provenance::memory,
    .accuracy = "that of Omega and Cp, which must come from measurements",
    .remarks =
        "Omega and Cp have no default: both depend on slab size, joints and inflow. Omega = 1 is the "
        "Omega and Cp have no default: both depend on slab size, joints and inflow. Omega = 1 is the upper bound. "
        "Anchors are left out.",
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      if (!(in[3] > water_unit_weight))
        return bad_input("gamma_c", in[3], water_unit_weight, no_limit, "a slab no heavier than water cannot lie still");
      out[0] = hydraulics::slab_thickness({.Omega = in[0], .Cp = in[1], .V1 = in[2], .gamma_c = in[3]});
      return {};
    }};

}  // namespace record
}  // namespace quell::hydraulics
