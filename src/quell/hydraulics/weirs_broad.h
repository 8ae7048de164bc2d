// Broad crests and chute entrances: free discharge, modular limit, drowned flow.
//
// He is the total head above the crest, h the water level above it, Lw the length of the crest along the flow, b its width
// across the flow, all m. Q in m3/s.
#pragma once

#include "quell/base/method.h"

namespace quell::hydraulics {

struct BroadCrestInput {
  double H;   ///< total head, or water level with a coefficient that allows for it, m, > 0
  double b;   ///< m, > 0
  double Cd;  ///< over the discharge of critical flow, > 0
};
/// Q = (2/3)^1.5 sqrt(g) Cd b H^1.5: critical flow on the crest where Cd is 1.
double broad_crest_discharge(const BroadCrestInput& input) noexcept;

struct BroadWeirInput {
  double He;  ///< m, > 0
  double Lw;  ///< m, > 0
  double b;   ///< m, > 0
};
struct BroadWeirFlow {
  double Cd;  ///< the definition differs: see the function
  double Q;   ///< m3/s
};
/// Square-edged crest after Hager and Schwalt, Q = Cd b sqrt(2 g He^3); He/Lw from 0.1 to 1.5.
BroadWeirFlow square_edged_discharge(const BroadWeirInput& input) noexcept;
/// Rounded entrance and long throat after Bos, Q = (2/3)^1.5 sqrt(g) Cd b He^1.5; He/Lw from 0.1 to 1.
BroadWeirFlow long_throated_discharge(const BroadWeirInput& input) noexcept;

struct ChuteEntranceInput {
  double H;  ///< m, > 0
  double W;  ///< width, m, > 0
};
/// Small drop or chute entrance with rounded abutments: Q = 3.1 W H^1.5 in feet, 1.71 in SI.
double chute_entrance_discharge(const ChuteEntranceInput& input) noexcept;

struct DrownedCrestInput {
  double h;   ///< fall from the upstream to the downstream level, m, >= 0
  double d;   ///< downstream level above the crest, m, >= 0
  double L;   ///< crest length, m, > 0
  double C1;  ///< coefficient of the free part, 0.557 to 0.62
  double C2;  ///< coefficient of the drowned part, 0.6 to 0.9
};
/// Q = L [(2/3) C1 sqrt(2g) h^1.5 + C2 d sqrt(2 g h)]: a weir above an orifice.
double drowned_crest_discharge(const DrownedCrestInput& input) noexcept;

namespace record {
extern const Method weir_broad_crest;
extern const Method weir_square_edged;
extern const Method weir_long_throated;
extern const Method weir_chute_entrance;
extern const Method weir_submergence_broad;
extern const Method weir_drowned_crest;
}  // namespace record

}  // namespace quell::hydraulics
