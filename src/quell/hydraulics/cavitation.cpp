#include "quell/hydraulics/cavitation.h"

#include <cmath>
#include <limits>

#include "quell/hydraulics/chute_symbols.h"
#include "quell/hydraulics/protection.h"

namespace quell::hydraulics {
namespace {

constexpr CavitationRow classes[] = {
    {CavitationClass::nothing, 1.8, "no protection is needed"},
    {CavitationClass::surface_finish, 0.25, "control the finish of the surface"},
    {CavitationClass::profile_or_finish, 0.17, "change the profile, or finish the surface to a finer tolerance"},
    {CavitationClass::aeration, 0.12, "aerate by grooves, ramps or steps"},
    {CavitationClass::other_layout, -std::numeric_limits<double>::infinity(),
     "the surface cannot be protected: change the layout"},
};

constexpr SurfaceTolerance tolerances[] = {
    {1, 0.025, 1.0 / 4.0, "offsets up to 25 mm, gradual changes up to 1 to 4"},
    {2, 0.012, 1.0 / 8.0, "offsets up to 12 mm, gradual changes up to 1 to 8"},
    {3, 0.006, 1.0 / 16.0, "offsets up to 6 mm, gradual changes up to 1 to 16"},
    {4, 0.0, 0.0, "no tolerance is enough: aerate or revise the design"},
};

}  // namespace

double atmospheric_pressure(double z) noexcept {
  return 101325.0 * std::pow(1.0 - 2.25577e-5 * z, 5.25588);
}

double vapour_pressure(double T) noexcept {
  return 610.78 * std::exp(17.27 * T / (T + 237.3));
}

double chute_cavitation_index(const ChuteCavitationInput& input) noexcept {
  const double on_bed =
      water_unit_weight * input.d * std::cos(input.theta) + water_density * input.d * input.V * input.V * input.kappa;
  return cavitation_index({.p0 = atmospheric_pressure(input.z) + on_bed, .pv = vapour_pressure(input.T), .V = input.V});
}

double velocity_at_cavitation_index(const IndexVelocityInput& input) noexcept {
  const double pressure = atmospheric_pressure(input.z) + water_unit_weight * input.d * std::cos(input.theta);
  return std::sqrt(2.0 * (pressure - vapour_pressure(input.T)) / (water_density * input.sigma));
}

std::span<const CavitationRow> cavitation_table() noexcept {
  return classes;
}

const CavitationRow& cavitation_row(double sigma) noexcept {
  for (const CavitationRow& row : classes)
    if (sigma >= row.least_sigma) return row;
  return classes[std::size(classes) - 1];
}

const SurfaceTolerance& surface_tolerance(double sigma, bool aerated) noexcept {
  if (aerated) return tolerances[sigma > 0.20 ? 0 : sigma > 0.10 ? 1 : 3];
  return tolerances[sigma > 0.60 ? 0 : sigma > 0.40 ? 1 : sigma > 0.20 ? 2 : 3];
}

namespace record {
namespace {
constexpr Symbol level{"z", "level above the sea", dimension::length, {-500.0, 5000.0}, must_be_given, {-1000.0, 11000.0}};
constexpr Symbol temperature{"T", "temperature of the water in degrees Celsius", dimension::none, {0.0, 50.0}};
constexpr Symbol depth{"d", "depth normal to the bed", dimension::length, {0.0, 50.0}};
constexpr Symbol index{"sigma", "cavitation index", dimension::none, {0.0, 20.0}, must_be_given, any_value};

constexpr Symbol level_in[] = {level};
constexpr Symbol atmosphere_out[] = {{"pa", "pressure of the atmosphere", dimension::pressure, above_zero}};
constexpr Symbol temperature_in[] = {temperature};
constexpr Symbol vapour_out[] = {{"pv", "vapour pressure", dimension::pressure, above_zero}};
constexpr Symbol index_in[] = {
    {"V", "mean velocity", dimension::velocity, above_zero},
    depth,
    bed_angle("theta", 0.0, 1.4),
    level,
    temperature,
    {"kappa", "curvature of the bed, above zero where concave", per_length, {-0.2, 0.2}, 0.0, any_value}};
constexpr Symbol index_out[] = {{"sigma", "cavitation index", dimension::none, any_value}};
constexpr Symbol velocity_in[] = {
    {"sigma", "cavitation index", dimension::none, {0.05, 5.0}}, depth, bed_angle("theta", 0.0, 1.4), level, temperature};
constexpr Symbol velocity_out[] = {{"V", "mean velocity at which the bed has this index", dimension::velocity, above_zero}};
constexpr Symbol class_in[] = {index};
constexpr Symbol class_out[] = {
    {"c", "1 nothing, 2 finish, 3 profile or finer finish, 4 aerate, 5 another layout", dimension::none, {1.0, 5.0}}};
constexpr Symbol tolerance_in[] = {index, {"a", "1 where the flow is aerated, else 0", dimension::none, {0.0, 1.0}, 0.0}};
constexpr Symbol tolerance_out[] = {
    {"T", "number of the tolerance, 3 the finest; 4: none is enough", dimension::none, {1.0, 4.0}},
    {"h", "largest abrupt offset", dimension::length, {0.0, no_limit}},
    {"m", "steepest gradual change, height over length", dimension::none, {0.0, no_limit}}};
}  // namespace

const Method atmospheric_pressure{.id = "cavitation.atmosphere.standard",
                                  .title = "Pressure of the atmosphere at a level",
                                  .equation = "pa = 101325*(1 - 2.25577e-5*z)^5.25588",
                                  .inputs = level_in,
                                  .outputs = atmosphere_out,
                                  .source = "iso_2533_1975",
                                  .place = "standard atmosphere, troposphere; z in m, pa in Pa",
                                  .provenance = Provenance::memory,
                                  .accuracy = "weather moves it by about 3 %",
                                  .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                    out[0] = hydraulics::atmospheric_pressure(in[0]);
                                    return {};
                                  }};

const Method vapour_pressure{.id = "cavitation.vapour_pressure.murray",
                             .title = "Vapour pressure of water",
                             .equation = "pv = 610.78*exp(17.27*T/(T + 237.3))",
                             .inputs = temperature_in,
                             .outputs = vapour_out,
                             .source = "murray_1967",
                             .place = "Tetens' formula over water; T in degrees Celsius, pv in Pa",
                             .provenance = Provenance::memory,
                             .accuracy = "within 0.3 % from 0 to 50 degrees",
                             .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                               out[0] = hydraulics::vapour_pressure(in[0]);
                               return {};
                             }};

const Method chute_cavitation_index{
    .id = "cavitation.index.chute",
    .title = "Cavitation index of flow on a bed",
    .equation =
        "pa = 101325*(1 - 2.25577e-5*z)^5.25588; pv = 610.78*exp(17.27*T/(T + 237.3)); "
        "pb = rho*g*d*cos(theta) + rho*d*V^2*kappa; sigma = (pa + pb - pv)/(rho*V^2/2)",
    .inputs = index_in,
    .outputs = index_out,
    .source = "falvey_1990",
    .place = "definition, with the pressure that the curve of the bed adds",
    .provenance = Provenance::memory,
    .accuracy = "about 5 %, from the velocity",
    .condition = [](std::span<const double> in) -> std::string_view {
      return gravity * std::cos(in[2]) + in[0] * in[0] * in[5] > 0.0 ? std::string_view{}
                                                                     : "the flow would leave the convex bed";
    },
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      out[0] =
          hydraulics::chute_cavitation_index({.V = in[0], .d = in[1], .theta = in[2], .z = in[3], .T = in[4], .kappa = in[5]});
      return {};
    }};

const Method cavitation_velocity{
    .id = "cavitation.velocity.index",
    .title = "Velocity at which a straight bed has a given cavitation index",
    .equation =
        "pa = 101325*(1 - 2.25577e-5*z)^5.25588; pv = 610.78*exp(17.27*T/(T + 237.3)); "
        "V = sqrt(2*(pa + rho*g*d*cos(theta) - pv)/(rho*sigma))",
    .inputs = velocity_in,
    .outputs = velocity_out,
    .source = "falvey_1990",
    .place = "definition, solved for the velocity",
    .provenance = Provenance::memory,
    .accuracy = "exact for the pressures",
    .remarks = "An index of 0.20 is where the first aerator is looked for: 30 to 35 m/s on most chutes.",
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      out[0] = velocity_at_cavitation_index({.sigma = in[0], .d = in[1], .theta = in[2], .z = in[3], .T = in[4]});
      return {};
    }};

const Method cavitation_class{.id = "cavitation.class.falvey",
                              .title = "What the cavitation index asks for",
                              .kind = EquationKind::procedure,
                              .equation =
                                  "1 from 1.8 up: nothing; 2 from 0.25: finish of the surface; 3 from 0.17: change the "
                                  "profile or finish finer; 4 from 0.12: aerate; 5 below: change the layout.",
                              .inputs = class_in,
                              .outputs = class_out,
                              .source = "falvey_1990",
                              .place = "ch. on design, criteria for preventing damage",
                              .provenance = Provenance::memory,
                              .accuracy = "guidance; damage also needs a long exposure",
                              .remarks = "The upper limit of class 2 is sometimes printed as 1.7.",
                              .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                out[0] = 1.0 + static_cast<double>(cavitation_row(in[0]).of);
                                return {};
                              }};

const Method surface_tolerance{.id = "cavitation.tolerance.falvey",
                               .title = "Tolerance of the flow surface that the cavitation index asks for",
                               .kind = EquationKind::procedure,
                               .equation =
                                   "Not aerated: 1 above 0.60, 2 above 0.40, 3 above 0.20, else 4. Aerated: 1 above 0.20, "
                                   "2 above 0.10, else 4. Offsets 25, 12 and 6 mm; gradual changes 1 to 4, 8 and 16.",
                               .inputs = tolerance_in,
                               .outputs = tolerance_out,
                               .source = "falvey_1990",
                               .place = "ch. on design, specification of tolerances",
                               .provenance = Provenance::memory,
                               .accuracy = "guidance",
                               .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                 const SurfaceTolerance& tolerance = hydraulics::surface_tolerance(in[0], in[1] >= 0.5);
                                 out[0] = tolerance.number;
                                 out[1] = tolerance.offset;
                                 out[2] = tolerance.slope;
                                 return {};
                               }};

}  // namespace record
}  // namespace quell::hydraulics
