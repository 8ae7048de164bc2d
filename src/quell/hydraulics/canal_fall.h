// Canal falls of Indian practice: head on the crest of a Sarda-type (vertical) fall, cisterns of vertical and glacis falls.
//
// Empirical, SI. H head over the crest, D height from the downstream bed of the wall to the upstream water level, E head of
// energy over the crest, HL fall of the water level.
#pragma once

#include "quell/base/method.h"

namespace quell::hydraulics {

struct SardaInput {
  double Q;  ///< m3/s, > 0
  double L;  ///< length of the crest, m, > 0
  double D;  ///< height of the upstream water level above the downstream bed, m, > 0
};
struct SardaCrest {
  double H;  ///< head over the crest, m
  double B;  ///< width of the crest's top, m: 0.55 sqrt(D)
};
/// Trapezoidal crest: Q = 1.99 L H^1.5 (H/B)^(1/6), solved for H.
SardaCrest sarda_crest(const SardaInput& input) noexcept;

struct Cistern {
  double length;  ///< m
  double depth;   ///< m: below the downstream bed (vertical fall), below the downstream energy level (glacis)
};
/// Vertical fall: length 5 sqrt(E HL), depth (E HL)^(2/3)/4.
Cistern vertical_fall_cistern(double E, double HL) noexcept;
/// Straight glacis: length 6 E2, floor 1.25 E2 below the downstream energy level; E2 energy head after the jump, m.
Cistern glacis_cistern(double E2) noexcept;

namespace record {
extern const Method fall_crest_sarda;
extern const Method fall_cistern_vertical;
extern const Method fall_cistern_glacis;
}  // namespace record

}  // namespace quell::hydraulics
