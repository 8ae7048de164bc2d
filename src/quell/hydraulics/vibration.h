// Whether the pulses of a jump can shake slender parts: the frequency that carries their energy, and the first natural
// frequencies of a wall and of an anchored panel. Dry: the water that moves with them is left out and lowers the true
// frequency.
#pragma once

#include "quell/base/method.h"

namespace quell::hydraulics {

struct PulseFrequencyInput {
  double St;  ///< Strouhal number, of order 0.01: uncertain
  double V1;  ///< m/s
  double d1;  ///< m, > 0
};
/// f (s^-1) = St V1/d1.
double pulse_frequency(const PulseFrequencyInput& input) noexcept;

struct CantileverInput {
  double H;        ///< height above the floor, m, > 0
  double t;        ///< thickness, m
  double E;        ///< Young's modulus, Pa
  double gamma_c;  ///< unit weight of the concrete, N/m3
};
/// f (s^-1) of the first bending of a wall held at its foot.
double cantilever_frequency(const CantileverInput& input) noexcept;

struct AnchoredPanelInput {
  double s;        ///< thickness of the slab, m
  double gamma_c;  ///< N/m3
  double spacing;  ///< of the bars, square grid, m
  double D;        ///< diameter of a bar, m
  double Es;       ///< Young's modulus of the steel, Pa
  double Lf;       ///< length over which a bar stretches, m
};
/// f (s^-1) of a panel that rides on its bars alone.
double anchored_panel_frequency(const AnchoredPanelInput& input) noexcept;

namespace record {
extern const Method pulse_frequency;
extern const Method cantilever_frequency;
extern const Method anchored_panel_frequency;
}  // namespace record

}  // namespace quell::hydraulics
