#include "quell/hydraulics/vibration.h"

#include <cmath>
#include <numbers>

#include "quell/base/constants.h"

namespace quell::hydraulics {
namespace {
constexpr double first_bending = 3.5160152685;  // square of the least x > 0 with cos(x) cosh(x) = -1
}

double pulse_frequency(const PulseFrequencyInput& input) noexcept {
  return input.St * input.V1 / input.d1;
}

double cantilever_frequency(const CantileverInput& input) noexcept {
  return first_bending / (2.0 * std::numbers::pi) * input.t / (input.H * input.H) *
         std::sqrt(input.E * gravity / (12.0 * input.gamma_c));
}

double anchored_panel_frequency(const AnchoredPanelInput& input) noexcept {
  const double stiffness = 0.25 * std::numbers::pi * input.D * input.D * input.Es / input.Lf;
  const double mass = input.gamma_c / gravity * input.s * input.spacing * input.spacing;
  return std::sqrt(stiffness / mass) / (2.0 * std::numbers::pi);
}

namespace record {
namespace {
constexpr Dimension frequency{0, 0, -6};
constexpr Symbol concrete{"gamma_c", "unit weight of the concrete", dimension::unit_weight, {20.0e3, 28.0e3}, 24.0e3};
constexpr Symbol pulse_in[] = {{"St", "Strouhal number of the pulses", dimension::none, {0.001, 0.2}, 0.01},
                               {"V1", "velocity at the toe", dimension::velocity, above_zero},
                               {"d1", "depth at the toe", dimension::length, above_zero}};
constexpr Symbol cantilever_in[] = {{"H", "height of the wall", dimension::length, above_zero},
                                    {"t", "its mean thickness, less than a fifth of the height", dimension::length, above_zero},
                                    {"E", "Young's modulus", dimension::pressure, {10.0e9, 50.0e9}, 30.0e9},
                                    concrete};
constexpr Symbol panel_in[] = {{"s", "thickness of the slab", dimension::length, above_zero},
                               concrete,
                               {"sp", "spacing of the bars, square grid", dimension::length, above_zero},
                               {"D", "diameter of a bar", dimension::length, above_zero},
                               {"Es", "Young's modulus of the steel", dimension::pressure, {190.0e9, 215.0e9}, 200.0e9},
                               {"Lf", "length over which a bar stretches", dimension::length, above_zero}};
constexpr Symbol pulse_out[] = {{"f", "frequency of the pulses that carry the energy", frequency, above_zero}};
constexpr Symbol natural_out[] = {{"f", "first natural frequency", frequency, above_zero}};
}  // namespace

const Method pulse_frequency{.id = "jump.pulse_frequency.strouhal",
                             .title = "Frequency of the pulses that carry the energy of a jump",
                             .equation = "f = St*V1/d1",
                             .inputs = pulse_in,
                             .outputs = pulse_out,
                             .source = "practice",
                             .place = "spectra of laboratory jumps; the Strouhal number is of order 0.01",
                             .provenance = Provenance::memory,
                             .accuracy = "order of size",
                             .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                               out[0] = hydraulics::pulse_frequency({in[0], in[1], in[2]});
                               return {};
                             }};

const Method cantilever_frequency{
    .id = "wall.natural_frequency.cantilever",
    .title = "First natural frequency of a wall held at its foot",
    .equation = "f = 3.5160152685/(2*pi)*t/H^2*sqrt(E*g/(12*gamma_c))",
    .inputs = cantilever_in,
    .outputs = natural_out,
    .source = "momentum",
    .place = "bending of an even beam, cos(x) cosh(x) = -1, x = 1.8751",
    .provenance = Provenance::derived,
    .accuracy = "exact for a slender dry wall of even thickness on a rigid foot; lower with water and fill beside it",
    .condition = [](std::span<const double> in) -> std::string_view {
      return in[1] <= 0.2 * in[0] ? std::string_view{} : "too stout for bending alone";
    },
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      out[0] = hydraulics::cantilever_frequency({in[0], in[1], in[2], in[3]});
      return {};
    }};

const Method anchored_panel_frequency{
    .id = "slab.natural_frequency.anchors",
    .title = "Natural frequency of a slab that rides on its anchors",
    .equation = "k = pi/4*D^2*Es/Lf; m = gamma_c/g*s*sp^2; f = sqrt(k/m)/(2*pi)",
    .inputs = panel_in,
    .outputs = natural_out,
    .source = "momentum",
    .place = "one mass on one spring",
    .provenance = Provenance::derived,
    .accuracy = "exact for a rigid panel; lower with the water over it, higher while it rests on rock",
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      out[0] = hydraulics::anchored_panel_frequency({in[0], in[1], in[2], in[3], in[4], in[5]});
      return {};
    }};

}  // namespace record
}  // namespace quell::hydraulics
