#include <limits>

#include "quell/base/constants.h"
#include "quell/hydraulics/river_bed.h"

namespace quell::hydraulics::record {
namespace {
constexpr double must_be_given = std::numeric_limits<double>::quiet_NaN();
constexpr Range river_slope{1e-5, 0.05};
constexpr Range gravel{1e-4, 0.5};
constexpr double none = 1.0;  // for the numbers that the rule of the method does not read
constexpr Symbol Q{"Q", "discharge that shapes the bed", dimension::discharge, above_zero};
constexpr Symbol B{"B", "width of the bed", dimension::length, above_zero};
constexpr Symbol d{"d", "mean depth", dimension::length, above_zero};
constexpr Symbol V{"V", "mean velocity", dimension::velocity, above_zero};
constexpr Symbol S{"S", "slope", dimension::none, river_slope, must_be_given, above_zero};
constexpr Symbol ns{"ns", "Manning's roughness of the bed", dimension::manning, {0.01, 0.1}};
constexpr Symbol D90{"D90", "size that 90 % of the bed are below", dimension::length, gravel};
constexpr Symbol D{"D", "size of the bed material at rest", dimension::length, gravel};
constexpr Symbol tau{"taus", "critical Shields number", dimension::none, {0.03, 0.06}, 0.047, above_zero};
constexpr Symbol S0{"S0", "slope of the bed", dimension::none, river_slope};
constexpr Symbol SL{"SL", "stable slope", dimension::none, {0.0, 0.05}};
constexpr Symbol armour_in[] = {
    {"ya", "thickness of the armour", dimension::length, above_zero},
    {"dp", "share of the bed coarser than the armouring size", dimension::none, {0.1, 1.0}, must_be_given, {1e-12, 1.0}}};
constexpr Symbol velocity_in[] = {V};
constexpr Symbol meyer_in[] = {S, d, ns, D90};
constexpr Symbol schoklitsch_in[] = {S, Q, B};
constexpr Symbol shields_in[] = {S, d, tau};
constexpr Symbol spread_in[] = {Q, B, d, V, S, ns, D90, tau};
constexpr Symbol slope_schoklitsch_in[] = {D, Q, B};
constexpr Symbol slope_meyer_in[] = {
    D,
    d,
    ns,
    D90,
    {"r", "discharge over the part of it above the bed, Q/QB", dimension::none, {1.0, 2.0}, 1.0, {1.0, no_limit}}};
constexpr Symbol slope_shields_in[] = {D, d, tau};
constexpr Symbol slope_lane_in[] = {{"tauc", "critical tractive stress of the bed", dimension::pressure, above_zero}, d};
constexpr Symbol control_in[] = {S0, SL, {"L", "distance to the control", dimension::length, above_zero}};
constexpr Symbol wedge_in[] = {{"dg", "depth of degradation at the dam", dimension::length, above_zero}, S0, SL};
constexpr Symbol depth_out[] = {{"yd", "depth to which the bed falls", dimension::length, {0.0, no_limit}}};
constexpr Symbol size_out[] = {{"Dc", "smallest size that does not move", dimension::length, above_zero}};
constexpr Symbol spread_out[] = {{"Dmin", "least of the five rules", dimension::length, above_zero},
                                 {"Dmax", "greatest of the five rules", dimension::length, above_zero},
                                 {"Dmean", "mean of the five rules", dimension::length, above_zero}};
constexpr Symbol slope_out[] = {{"SL", "stable slope", dimension::none, above_zero}};
constexpr Symbol control_out[] = {{"dg", "depth of degradation at the dam", dimension::length, {0.0, no_limit}}};
constexpr Symbol wedge_out[] = {{"av", "volume eroded per unit width", dimension::area, {0.0, no_limit}},
                                {"Lg", "length of the wedge", dimension::length, {0.0, no_limit}}};
constexpr Text size_accuracy = "the rules differ by a factor of three; take their mean and report the spread";
constexpr Text slope_accuracy = "a factor of two";
constexpr std::string_view flatter = "the bed is no steeper than the stable slope: it does not degrade";
}  // namespace

const Method armour_depth{.id = "river.armour.depth",
                          .title = "Depth to which clear water lowers a bed until stones armour it",
                          .equation = "yd = ya*(1/dp - 1)",
                          .inputs = armour_in,
                          .outputs = depth_out,
                          .source = "pemberton_lara_1984",
                          .place = "armouring",
                          .provenance = Provenance::memory,
                          .accuracy = "as the share of coarse grains: 20 to 30 %",
                          .remarks = "The thickness is the choice of the designer.",
                          .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                            return store(armouring_depth({.thickness = in[0], .share = in[1]}), out);
                          }};

const Method armour_size_competent{
    .id = "river.armour.size_competent_velocity",
    .title = "Smallest grain that a flow does not move by its competent velocity (Mavis and Laushey)",
    .equation = "Dc = 0.0202*V^2",
    .inputs = velocity_in,
    .outputs = size_out,
    .source = "pemberton_lara_1984",
    .place = "armouring size, competent bottom velocity, 1.88 V^2 in ft/s and mm",
    .provenance = Provenance::memory,
    .accuracy = size_accuracy,
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      out[0] = armour_sizes({none, none, none, in[0], none, none, none, none}).competent_velocity;
      return {};
    }};

const Method armour_size_meyer_peter{
    .id = "river.armour.size_meyer_peter_muller",
    .title = "Smallest grain that a flow does not move by Meyer-Peter and Muller",
    .equation = "Dc = 0.001*S*d/(0.058*(ns/(1000*D90)^(1/6))^1.5)",
    .inputs = meyer_in,
    .outputs = size_out,
    .source = "pemberton_lara_1984",
    .place = "armouring size; 0.19 in ft and mm",
    .provenance = Provenance::memory,
    .accuracy = size_accuracy,
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      out[0] = armour_sizes({none, none, in[1], none, in[0], in[2], in[3], none}).meyer_peter_muller;
      return {};
    }};

const Method armour_size_schoklitsch{.id = "river.armour.size_schoklitsch",
                                     .title = "Smallest grain that a flow does not move by Schoklitsch",
                                     .equation = "Dc = 0.001*(S/0.000293)^(4/3)*Q/B",
                                     .inputs = schoklitsch_in,
                                     .outputs = size_out,
                                     .source = "pemberton_lara_1984",
                                     .place = "armouring size; 0.00174 in ft and mm",
                                     .provenance = Provenance::memory,
                                     .accuracy = size_accuracy,
                                     .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                       out[0] = armour_sizes({in[1], in[2], none, none, in[0], none, none, none}).schoklitsch;
                                       return {};
                                     }};

const Method armour_size_shields{.id = "river.armour.size_shields",
                                 .title = "Smallest grain that a flow does not move by Shields",
                                 .equation = "Dc = S*d/(1.65*taus)",
                                 .inputs = shields_in,
                                 .outputs = size_out,
                                 .source = "pemberton_lara_1984",
                                 .place = "armouring size",
                                 .provenance = Provenance::memory,
                                 .accuracy = size_accuracy,
                                 .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                   out[0] = armour_sizes({none, none, in[1], none, in[0], none, none, in[2]}).shields;
                                   return {};
                                 }};

const Method armour_size_yang{.id = "river.armour.size_yang",
                              .title = "Smallest grain that a flow does not move by Yang",
                              .equation = "Dc = 0.0216*V^2",
                              .inputs = velocity_in,
                              .outputs = size_out,
                              .source = "pemberton_lara_1984",
                              .place = "armouring size; 0.00659 V^2 in ft; grains in turbulent flow",
                              .provenance = Provenance::memory,
                              .accuracy = size_accuracy,
                              .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                out[0] = armour_sizes({none, none, none, in[0], none, none, none, none}).yang;
                                return {};
                              }};

const Method armour_size_spread{
    .id = "river.armour.size_spread",
    .title = "Smallest grain that a flow does not move by five rules: least, greatest, mean",
    .equation =
        "D1 = 0.0202*V^2; D2 = 0.001*S*d/(0.058*(ns/(1000*D90)^(1/6))^1.5); D3 = 0.001*(S/0.000293)^(4/3)*Q/B; D4 = "
        "S*d/(1.65*taus); D5 = 0.0216*V^2; Dmin = min(D1, min(D2, min(D3, min(D4, D5)))); Dmax = max(D1, max(D2, max(D3, "
        "max(D4, D5)))); Dmean = (D1 + D2 + D3 + D4 + D5)/5",
    .inputs = spread_in,
    .outputs = spread_out,
    .source = "pemberton_lara_1984",
    .place = "armouring size, the methods side by side",
    .provenance = Provenance::memory,
    .accuracy = "the spread is what is known",
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      const auto sizes = armour_sizes(
          {.Q = in[0], .B = in[1], .d = in[2], .V = in[3], .slope = in[4], .manning_n = in[5], .d90 = in[6], .shields = in[7]});
      out[0] = sizes.least();
      out[1] = sizes.most();
      out[2] = sizes.mean();
      return {};
    }};

const Method stable_slope_schoklitsch{.id = "river.stable_slope.schoklitsch",
                                      .title = "Slope on which a bed comes to rest by Schoklitsch",
                                      .equation = "SL = 0.000293*(1000*D*B/Q)^0.75",
                                      .inputs = slope_schoklitsch_in,
                                      .outputs = slope_out,
                                      .source = "pemberton_lara_1984",
                                      .place = "limiting slope; 0.00174 in ft and mm",
                                      .provenance = Provenance::memory,
                                      .accuracy = slope_accuracy,
                                      .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                        out[0] = stable_slopes({in[0], in[1], in[2], none, none, none, none}).schoklitsch;
                                        return {};
                                      }};

const Method stable_slope_meyer_peter{
    .id = "river.stable_slope.meyer_peter_muller",
    .title = "Slope on which a bed comes to rest by Meyer-Peter and Muller",
    .equation = "SL = 0.058*r*(ns/(1000*D90)^(1/6))^1.5*1000*D/d",
    .inputs = slope_meyer_in,
    .outputs = slope_out,
    .source = "pemberton_lara_1984",
    .place = "limiting slope; 0.19 in ft and mm",
    .provenance = Provenance::memory,
    .accuracy = slope_accuracy,
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      out[0] = in[4] * stable_slopes({in[0], none, none, in[1], in[2], in[3], none}).meyer_peter_muller;
      return {};
    }};

const Method stable_slope_shields{.id = "river.stable_slope.shields",
                                  .title = "Slope on which a bed comes to rest by Shields",
                                  .equation = "SL = 1.65*taus*D/d",
                                  .inputs = slope_shields_in,
                                  .outputs = slope_out,
                                  .source = "pemberton_lara_1984",
                                  .place = "limiting slope",
                                  .provenance = Provenance::memory,
                                  .accuracy = slope_accuracy,
                                  .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                    out[0] = stable_slopes({in[0], none, none, in[1], none, none, in[2]}).shields;
                                    return {};
                                  }};

const Method stable_slope_lane{.id = "river.stable_slope.lane",
                               .title = "Slope on which a bed comes to rest from its critical tractive stress (Lane)",
                               .equation = "SL = tauc/(gamma_w*d)",
                               .inputs = slope_lane_in,
                               .outputs = slope_out,
                               .source = "pemberton_lara_1984",
                               .place = "limiting slope; the critical stress is read from a curve",
                               .provenance = Provenance::memory,
                               .accuracy = slope_accuracy,
                               .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                 out[0] = in[0] / (water_unit_weight * in[1]);
                                 return {};
                               }};

const Method degradation_control{
    .id = "river.degradation.fixed_control",
    .title = "Degradation at a dam above a fixed control",
    .equation = "dg = (S0 - SL)*L",
    .inputs = control_in,
    .outputs = control_out,
    .source = "momentum",
    .place = "geometry: the bed turns about the control",
    .provenance = Provenance::derived,
    .accuracy = "as good as the stable slope",
    .condition = [](std::span<const double> in) -> std::string_view { return in[1] <= in[0] ? std::string_view{} : flatter; },
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      return store(degradation_above_control({.bed_slope = in[0], .stable_slope = in[1]}, in[2]), out);
    }};

const Method degradation_wedge{
    .id = "river.degradation.wedge",
    .title = "Wedge of bed that a depth of degradation empties where no control stops it",
    .equation = "Lg = dg/(S0 - SL); av = dg*Lg/2",
    .inputs = wedge_in,
    .outputs = wedge_out,
    .source = "momentum",
    .place = "geometry: a wedge of one slope",
    .provenance = Provenance::derived,
    .accuracy = "as good as the stable slope",
    .condition = [](std::span<const double> in) -> std::string_view { return in[2] < in[1] ? std::string_view{} : flatter; },
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      const auto wedge = hydraulics::degradation_wedge({.bed_slope = in[1], .stable_slope = in[2]}, in[0]);
      if (!wedge) return tl::unexpected(wedge.error());
      out[0] = wedge->volume;
      out[1] = wedge->length;
      return {};
    }};

}  // namespace quell::hydraulics::record
