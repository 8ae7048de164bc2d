// Air for a chute that cavitates: what a ramp draws in, and what a content needs.
#pragma once

#include "quell/base/constants.h"
#include "quell/base/method.h"

namespace quell::hydraulics {

struct AeratorInput {
  double K;   ///< 0.01 to 0.03
  double V;   ///< m/s, > 0
  double Lj;  ///< length of the jet from the ramp to where it strikes, m, > 0
};
/// qa (m2/s), air per unit width: K V Lj.
constexpr double aerator_air_flow(const AeratorInput& input) noexcept {
  return input.K * input.V * input.Lj;
}

struct AirContentInput {
  double q;  ///< m2/s, > 0
  double C;  ///< mean content, in [0, 1)
};
/// qa (m2/s), air per unit width that gives the mean content where air and water move together: q C/(1 - C).
constexpr double air_flow_for_content(const AirContentInput& input) noexcept {
  return input.q * input.C / (1.0 - input.C);
}

namespace record {
extern const Method aerator_air_flow;
extern const Method air_flow_for_content;
}  // namespace record

}  // namespace quell::hydraulics
