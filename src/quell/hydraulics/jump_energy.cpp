#include "quell/hydraulics/jump_energy.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "quell/hydraulics/specific_energy.h"

namespace quell::hydraulics {
namespace {

Outcome<double> loss_between(double before, double after) {
  if (after > before) return no_answer("the flow would gain energy: these are not the depths of a jump");
  return before - after;
}

Outcome<void> deeper_after(double y1, double y2) {
  if (y2 < y1) return bad_input("y2", y2, y1, no_limit, "a jump from y1 to a lesser depth would gain energy");
  return {};
}
}  // namespace

double sequent_ratio(double F1) {
  return (std::sqrt(1.0 + 8.0 * F1 * F1) - 1.0) / 2.0;
}

double jump_efficiency(double F1) {
  const double eight = 8.0 * F1 * F1;
  return ((eight + 1.0) * std::sqrt(eight + 1.0) - eight / 2.0 + 1.0) / (eight * (2.0 + F1 * F1));
}

double relative_jump_loss(double F1) {
  return jump_energy_loss(SequentDepths{.y1 = 1.0, .y2 = sequent_ratio(F1)}) / (1.0 + F1 * F1 / 2.0);
}

double relative_jump_height(double F1) {
  return (std::sqrt(1.0 + 8.0 * F1 * F1) - 3.0) / (F1 * F1 + 2.0);
}

double froude_number_after_jump(double F1) {
  const double Y = sequent_ratio(F1);
  return F1 / (Y * std::sqrt(Y));
}

Outcome<double> jump_energy_loss(const Trapezoid& section, const SectionLossInput& input) {
  const auto& [depths, discharge] = input;
  return loss_between(specific_energy(section, discharge, depths.y1), specific_energy(section, discharge, depths.y2));
}

Outcome<double> jump_energy_loss(const Circle& section, const SectionLossInput& input) {
  const auto& [depths, discharge] = input;
  if (!(depths.y1 < section.D))
    return bad_input("y1", depths.y1, above_zero.lowest, section.D, "the depth before the jump lies inside the conduit");
  const double velocity_after = discharge / section.area(std::min(depths.y2, section.D));
  return loss_between(specific_energy(section, discharge, depths.y1),
                      depths.y2 + velocity_after * velocity_after / (2.0 * gravity));
}

double power_lost(double discharge, double loss) {
  return water_unit_weight * discharge * loss;
}

namespace record {
namespace {
constexpr Range supercritical{1.0, no_limit};
constexpr Symbol froude_in[] = {{"F1", "Froude number before the jump", dimension::none, supercritical}};
constexpr Symbol efficiency_out[] = {{"eff", "energy after the jump over the energy before it", dimension::none, {0.0, 1.0}},
                                     {"eta", "loss over the energy before the jump", dimension::none, {0.0, 1.0}}};
constexpr Symbol height_out[] = {{"hE", "height of the jump y2 - y1 over the energy before it", dimension::none, {0.0, 1.0}},
                                 {"yE", "sequent depth over the energy before the jump", dimension::none, {0.0, 1.0}}};
constexpr Symbol after_out[] = {{"F2", "Froude number after the jump", dimension::none, above_zero}};
constexpr Symbol critical_out[] = {{"r1", "depth before the jump over critical depth", dimension::none, above_zero},
                                   {"r2", "sequent depth over critical depth", dimension::none, above_zero},
                                   {"rE", "energy loss over critical depth", dimension::none, {0.0, no_limit}}};
constexpr Symbol sensitivity_out[] = {
    {"sy", "relative change of y2 per relative change of y1, at one discharge", dimension::none, {-1.0, 0.0}}};
constexpr Symbol trapezoid_in[] = {{"b", "bottom width", dimension::length, {0.0, no_limit}},
                                   {"m", "side slope, horizontal to 1 vertical", dimension::none, {0.0, no_limit}},
                                   {"y1", "depth before the jump", dimension::length, above_zero},
                                   {"y2", "sequent depth", dimension::length, above_zero},
                                   {"Q", "discharge", dimension::discharge, above_zero}};
constexpr Symbol triangle_in[] = {{"m", "side slope, horizontal to 1 vertical", dimension::none, above_zero},
                                  trapezoid_in[2],
                                  trapezoid_in[3],
                                  trapezoid_in[4]};
constexpr Symbol circle_in[] = {
    {"D", "diameter", dimension::length, above_zero},
    trapezoid_in[2],
    {"y2", "sequent depth, or piezometric head above the invert where the conduit fills", dimension::length, above_zero},
    trapezoid_in[4]};
constexpr Symbol loss_out[] = {{"dE", "energy loss", dimension::length, {0.0, no_limit}}};
constexpr Symbol power_in[] = {{"Q", "discharge", dimension::discharge, above_zero},
                               {"dE", "energy loss", dimension::length, {0.0, no_limit}}};
constexpr Symbol power_out[] = {{"P", "power lost", dimension::power, {0.0, no_limit}}};

constexpr Text place_of_ratio = "momentum and energy of the classical jump, rectangular section, horizontal bed";
constexpr Text place_of_loss = "specific energy before less specific energy after, energy coefficient 1";
constexpr Text exact = "exact under its assumptions";

/// F1 < 1 makes no jump.
Outcome<void> jump_at(double F1) {
  if (F1 < 1.0) return bad_input("F1", F1, 1.0, no_limit, "flow that is not supercritical makes no jump");
  return {};
}
}  // namespace

const Method efficiency_rectangular{
    .id = "jump.efficiency.rectangular",
    .title = "Efficiency and relative loss of the classical jump",
    .equation =
        "eff = ((8*F1^2 + 1)^(3/2) - 4*F1^2 + 1)/(8*F1^2*(2 + F1^2)); Y = (sqrt(1 + 8*F1^2) - 1)/2; "
        "eta = (Y - 1)^3/(2*Y*(2 + F1^2))",
    .inputs = froude_in,
    .outputs = efficiency_out,
    .source = "momentum",
    .place = place_of_ratio,
    .provenance = Provenance::derived,
    .accuracy = exact,
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      if (auto done = jump_at(in[0]); !done) return done;
      out[0] = jump_efficiency(in[0]);
      out[1] = relative_jump_loss(in[0]);
      return {};
    }};

const Method relative_height_rectangular{
    .id = "jump.relative_height.rectangular",
    .title = "Height of the classical jump and sequent depth over the energy before it",
    .equation = "hE = (sqrt(1 + 8*F1^2) - 3)/(F1^2 + 2); yE = (sqrt(1 + 8*F1^2) - 1)/(F1^2 + 2)",
    .inputs = froude_in,
    .outputs = height_out,
    .source = "momentum",
    .place = place_of_ratio,
    .provenance = Provenance::derived,
    .accuracy = exact,
    .remarks = "hE is 0.506395 at most, at F1 = 2.770240; yE is 0.8 at most, at F1 = sqrt(3).",
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      if (auto done = jump_at(in[0]); !done) return done;
      out[0] = relative_jump_height(in[0]);
      out[1] = 2.0 * sequent_ratio(in[0]) / (in[0] * in[0] + 2.0);
      return {};
    }};

const Method froude_number_after_jump{.id = "jump.froude_number_after.rectangular",
                                      .title = "Froude number after the classical jump",
                                      .equation = "Y = (sqrt(1 + 8*F1^2) - 1)/2; F2 = F1*Y^(-3/2)",
                                      .inputs = froude_in,
                                      .outputs = after_out,
                                      .source = "momentum",
                                      .place = place_of_ratio,
                                      .provenance = Provenance::derived,
                                      .accuracy = exact,
                                      .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                        if (auto done = jump_at(in[0]); !done) return done;
                                        out[0] = hydraulics::froude_number_after_jump(in[0]);
                                        return {};
                                      }};

const Method depths_over_critical{
    .id = "jump.depths_over_critical.rectangular",
    .title = "Depths and loss of the classical jump over critical depth",
    .equation = "Y = (sqrt(1 + 8*F1^2) - 1)/2; r1 = F1^(-2/3); r2 = Y*F1^(-2/3); rE = (Y - 1)^3/(4*Y)*F1^(-2/3)",
    .inputs = froude_in,
    .outputs = critical_out,
    .source = "momentum",
    .place = place_of_ratio,
    .provenance = Provenance::derived,
    .accuracy = exact,
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      if (auto done = jump_at(in[0]); !done) return done;
      const double Y = sequent_ratio(in[0]);
      out[0] = 1.0 / std::cbrt(in[0] * in[0]);
      out[1] = Y * out[0];
      out[2] = hydraulics::jump_energy_loss(SequentDepths{.y1 = 1.0, .y2 = Y}) * out[0];
      return {};
    }};

const Method sequent_depth_sensitivity{
    .id = "jump.sequent_depth_sensitivity.rectangular",
    .title = "How an error of the depth before the jump passes into the sequent depth",
    .equation = "Y = (sqrt(1 + 8*F1^2) - 1)/2; sy = -(2 + Y)/(1 + 2*Y)",
    .inputs = froude_in,
    .outputs = sensitivity_out,
    .source = "momentum",
    .place = "derivative of ln y2 by ln y1 at one discharge per unit width, from y1 y2 (y1 + y2)/2 = q^2/g",
    .provenance = Provenance::derived,
    .accuracy = exact,
    .remarks = "A depth before the jump that is estimated too large makes the sequent depth too small: unsafe.",
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      if (auto done = jump_at(in[0]); !done) return done;
      const double Y = sequent_ratio(in[0]);
      out[0] = -(2.0 + Y) / (1.0 + 2.0 * Y);
      return {};
    }};

const Method energy_loss_trapezoidal{
    .id = "jump.energy_loss.trapezoidal",
    .title = "Energy loss in the jump, trapezoidal section",
    .equation = "dE = y1 + Q^2/(2*g*((b + m*y1)*y1)^2) - (y2 + Q^2/(2*g*((b + m*y2)*y2)^2))",
    .inputs = trapezoid_in,
    .outputs = loss_out,
    .source = "momentum",
    .place = place_of_loss,
    .provenance = Provenance::derived,
    .accuracy = exact,
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      if (!(in[0] + in[1] > 0.0)) return no_answer("a section without width or slope holds no water");
      if (auto done = deeper_after(in[2], in[3]); !done) return done;
      return store(jump_energy_loss(Trapezoid{in[0], in[1]}, {.depths = {.y1 = in[2], .y2 = in[3]}, .discharge = in[4]}), out);
    }};

const Method energy_loss_triangular{
    .id = "jump.energy_loss.triangular",
    .title = "Energy loss in the jump, triangular section",
    .equation = "dE = y1 + Q^2/(2*g*m^2*y1^4) - (y2 + Q^2/(2*g*m^2*y2^4))",
    .inputs = triangle_in,
    .outputs = loss_out,
    .source = "momentum",
    .place = place_of_loss,
    .provenance = Provenance::derived,
    .accuracy = exact,
    .remarks = "More is lost than in a rectangle at the same Froude number, but the jump is less steady.",
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      if (auto done = deeper_after(in[1], in[2]); !done) return done;
      return store(jump_energy_loss(Trapezoid{0.0, in[0]}, {.depths = {.y1 = in[1], .y2 = in[2]}, .discharge = in[3]}), out);
    }};

const Method energy_loss_circular{
    .id = "jump.energy_loss.circular",
    .title = "Energy loss in the jump, circular conduit",
    .equation =
        "phi1 = acos(1 - 2*y1/D); phi2 = acos(1 - 2*min(y2, D)/D); A1 = D^2*(phi1 - sin(phi1)*cos(phi1))/4; "
        "A2 = D^2*(phi2 - sin(phi2)*cos(phi2))/4; dE = y1 + Q^2/(2*g*A1^2) - (y2 + Q^2/(2*g*A2^2))",
    .inputs = circle_in,
    .outputs = loss_out,
    .source = "momentum",
    .place = place_of_loss,
    .provenance = Provenance::derived,
    .accuracy = exact,
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      if (auto done = deeper_after(in[1], in[2]); !done) return done;
      return store(jump_energy_loss(Circle{in[0]}, {.depths = {.y1 = in[1], .y2 = in[2]}, .discharge = in[3]}), out);
    }};

const Method power_lost{.id = "jump.power_lost",
                        .title = "Power lost in the jump",
                        .equation = "P = rho*g*Q*dE",
                        .inputs = power_in,
                        .outputs = power_out,
                        .source = "momentum",
                        .place = "weight of water per second times the head lost",
                        .provenance = Provenance::derived,
                        .accuracy = "exact",
                        .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                          out[0] = hydraulics::power_lost(in[0], in[1]);
                          return {};
                        }};

}  // namespace record
}  // namespace quell::hydraulics
