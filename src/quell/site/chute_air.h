// Air and cavitation along a computed profile of the chute, section by section.
#pragma once

#include <span>

#include "quell/site/chute_flow.h"

namespace quell::site {

/// Mean air content from which a self-aerated flow protects its bed, as Novak et al. (2007), p. 219, have it.
inline constexpr double protecting_air = 0.35;

/// Fills air content, bulked depth and cavitation index of every section. Smooth chute: air enters where the boundary layer reaches
/// the surface, and grows by the balance of air from there. Stepped chute: the depth of the mixture in uniform flow, below inception.
void add_air_and_cavitation(const Site& site, const ChuteFlow& flow, std::span<ChutePoint> profile);

}  // namespace quell::site
