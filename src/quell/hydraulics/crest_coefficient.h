// Other published coefficients of the ogee crest, as cross-checks, and the relations between the forms a coefficient takes.
//
// C (m^0.5/s) belongs to Q = C L He^1.5. He is the total head above the crest, Hd the design head, P the height of the crest
// above the approach floor, m.
#pragma once

#include "quell/hydraulics/crest.h"

namespace quell::hydraulics {

/// C at the design head after the Waterways Experiment Station, 4.03 ft^0.5/s, for P/Hd of 1.33 and more.
double upper_crest_coefficient() noexcept;

/// Q (m3/s) with that coefficient, changing with the head as in crest.h: 2 % above `crest_discharge`. The larger flow is
/// the safe one for the basin. P and the face are not used.
double crest_discharge_upper(const CrestDischargeInput& input) noexcept;

struct HeadRatioInput {
  double He;  ///< m, >= 0
  double Hd;  ///< m, > 0
};
/// Cd' in Q = Cd' b sqrt(2 g) He^1.5 for a deep approach, from the curvature of the flow: 0.385 to 0.495 at the design head.
double crest_coefficient_hager(const HeadRatioInput& input) noexcept;

struct CrestHeightInput {
  double Hd;  ///< m, > 0
  double P;   ///< m, >= 0.2 Hd
};
/// C (m^0.5/s) at the design head after Iwasaki: 0.2 to 1.6 % above the table of crest.h.
double crest_coefficient_iwasaki(const CrestHeightInput& input) noexcept;

struct HeadInput {
  double discharge;  ///< m3/s, > 0
  double C;          ///< m^0.5/s, > 0
  double L;          ///< m, > 0
};
/// He (m) = (Q/(C L))^(2/3).
double crest_head(const HeadInput& input) noexcept;

namespace record {
extern const Method crest_discharge_ogee_upper;
extern const Method crest_coefficient_castro_orgaz;
extern const Method crest_coefficient_jsce;
extern const Method crest_coefficient_conversion;
extern const Method crest_head_constant;
}  // namespace record

}  // namespace quell::hydraulics
