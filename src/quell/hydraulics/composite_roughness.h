// One Manning roughness for a section whose perimeter has parts of different roughness: six rules beside Horton and Einstein's
// of roughness_parts.h. They differ by up to 30 % on the same section, which is what is known about it: report the spread.
//
// For a simple channel with a different bed and banks. On a section with flood plains add the conveyances of the parts instead.
#pragma once

#include <span>

#include "quell/base/method.h"

namespace quell::hydraulics {

struct RoughStrip {
  double A;  ///< area over the part of the perimeter, m2, >= 0
  double P;  ///< its wetted perimeter, m, > 0
  double y;  ///< mean depth of water over it, m, > 0
  double n;  ///< Manning's roughness, s/m^(1/3), > 0
};

/// (sum(P n^2)/sum(P))^(1/2): the resisting forces add up.
double roughness_pavlovskii(std::span<const RoughStrip> strips) noexcept;
/// P R^(5/3)/sum(p r^(5/3)/n): the discharges add up.
double roughness_lotter(std::span<const RoughStrip> strips) noexcept;
/// P/sum(p/n): the discharges add up, with one hydraulic radius.
double roughness_felkel(std::span<const RoughStrip> strips) noexcept;
/// exp(sum(p y^1.5 ln n)/sum(p y^1.5)): logarithmic velocity.
double roughness_krishnamurthy_christensen(std::span<const RoughStrip> strips) noexcept;
/// (sum(A n^1.5)/sum(A))^(2/3).
double roughness_colebatch(std::span<const RoughStrip> strips) noexcept;
/// sum(A n)/sum(A).
double roughness_cox(std::span<const RoughStrip> strips) noexcept;

struct RoughnessSpread {
  double lowest;
  double highest;
  double mean;  ///< of the seven
};
/// Of all seven rules, Horton and Einstein's among them.
RoughnessSpread roughness_spread(std::span<const RoughStrip> strips) noexcept;

namespace record {
extern const Method composite_pavlovskii;
extern const Method composite_lotter;
extern const Method composite_felkel;
extern const Method composite_krishnamurthy_christensen;
extern const Method composite_colebatch;
extern const Method composite_cox;
extern const Method composite_spread;
}  // namespace record

}  // namespace quell::hydraulics
