// Sections whose parts differ: one roughness for a simple channel, added conveyances for a compound one.
//
// One roughness (Horton, Einstein) suits a simple channel with a different bed and banks; a channel with flood plains is
// divided by vertical lines at its banks and the conveyances are added, which overestimates the flow by about 10 % while the
// water on the plains is shallow.
#pragma once

#include <span>

#include "quell/base/method.h"

namespace quell::hydraulics {

struct RoughPart {
  double P;  ///< wetted perimeter of the part, m, >= 0
  double n;  ///< Manning's roughness, s/m^(1/3), > 0
};
/// n = (sum(P n^1.5)/sum(P))^(2/3): equal mean velocity in all parts. At least one part has a perimeter.
double composite_roughness(std::span<const RoughPart> parts) noexcept;

/// K (m3/s) = A (A/P)^(2/3)/n: the discharge on a slope of 1.
double conveyance(double A, double P, double n) noexcept;

struct FlowPart {
  double A;  ///< area, m2, > 0
  double P;  ///< wetted perimeter, m, > 0
  double n;  ///< Manning's roughness, s/m^(1/3), > 0
};
struct CompoundConveyance {
  double K;      ///< m3/s: Q = K sqrt(Sf)
  double alpha;  ///< energy coefficient, >= 1
  double beta;   ///< momentum coefficient, >= 1
};
/// Sum of the conveyances, and the coefficients of a velocity that differs from part to part only.
CompoundConveyance compound_conveyance(std::span<const FlowPart> parts) noexcept;

namespace record {
extern const Method roughness_horton;
extern const Method conveyance_manning;
extern const Method conveyance_compound;
}  // namespace record

}  // namespace quell::hydraulics
