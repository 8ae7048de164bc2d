// Sharp-crested weirs: free discharge in four published forms, and the part that passes when drowned.
//
// h is the water level above the crest measured upstream of the drawdown, P the height of the crest above the approach floor,
// b the crest length, B the width of the approach channel, all m. Q in m3/s. The nappe is aerated.
#pragma once

#include "quell/base/method.h"

namespace quell::hydraulics {

struct SharpWeirInput {
  double h;  ///< m, > 0
  double P;  ///< m, > 0
  double b;  ///< m, > 0
};
/// Rehbock's form, weir as wide as the channel: h from 0.03 to 0.75 m, h/P <= 1.
double rehbock_discharge(const SharpWeirInput& input) noexcept;
/// C = 3.27 + 0.40 h/P in ft^0.5/s, h/P <= 5.
double textbook_weir_discharge(const SharpWeirInput& input) noexcept;
/// A sill so low (h/P above 15) that the depth above the floor is critical.
double sill_discharge(const SharpWeirInput& input) noexcept;

struct ContractedWeirInput {
  double h;  ///< m, > 0
  double P;  ///< m, > 0
  double b;  ///< m, > 0
  double B;  ///< m, >= b
};
struct ContractedWeirFlow {
  double Ce;  ///< without unit
  double Q;   ///< m3/s
};
/// Kindsvater and Carter: weirs narrower than the channel. Q = (2/3) Ce sqrt(2g) (b + kb) (h + 0.001 m)^1.5.
ContractedWeirFlow kindsvater_carter_discharge(const ContractedWeirInput& input) noexcept;

struct HeadsInput {
  double h1;  ///< upstream level above the crest, m, > 0
  double h2;  ///< downstream level above the crest, m; at or below 0 the weir is free
};
/// Q/Q_free of a sharp-crested weir after Villemonte.
double villemonte_factor(const HeadsInput& input) noexcept;

namespace record {
extern const Method weir_rehbock;
extern const Method weir_textbook;
extern const Method weir_sill;
extern const Method weir_kindsvater_carter;
extern const Method weir_submergence_villemonte;
}  // namespace record

}  // namespace quell::hydraulics
