// Properties of self-aeration and of cavitation that hold whatever the numbers.
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <cmath>

#include "quell/hydraulics/aerated_flow.h"
#include "quell/hydraulics/aeration_fits.h"
#include "quell/hydraulics/cavitation.h"
#include "quell/hydraulics/chute_symbols.h"
#include "quell/hydraulics/self_aeration.h"

namespace quell::hydraulics {
namespace {

double drawn(double low, double high) {
  const int step = *rc::gen::resize(rc::kNominalSize, rc::gen::inRange(0, 1000001));
  return low * std::pow(high / low, step * 1e-6);
}

RC_GTEST_PROP(DevelopingAir, GrowsFromNoneToTheContentOfUniformFlowAndSatisfiesItsEquation, ()) {
  DevelopingAirInput at{.q = drawn(0.5, 100.0), .theta = drawn(8.0, 74.0) * degree, .Ce = drawn(0.05, 0.74), .x = 0.0};
  RC_ASSERT(std::abs(*developing_air(at)) < 1e-14);
  const double scale = at.q / (at.ur * std::cos(at.theta));
  at.x = scale * drawn(1e-3, 5.0);
  const double step = 1e-5 * at.x;
  const double here = *developing_air(at);
  RC_ASSERT(here > 0.0 && here < at.Ce);
  auto before = at;
  auto after = at;
  before.x -= step;
  after.x += step;
  const double slope = (*developing_air(after) - *developing_air(before)) / (2.0 * step);
  const double equation = (1.0 - here) * (1.0 - here) * (at.Ce - here) / scale;
  RC_ASSERT(std::abs(slope - equation) < 1e-5 * equation + 1e-9 / scale);
  at.x = scale * 1e4;
  RC_ASSERT(std::abs(*developing_air(at) - at.Ce) < 1e-12);
}

RC_GTEST_PROP(DevelopingAir, RefusesWhatIsImpossible, ()) {
  const DevelopingAirInput good{.q = 10.0, .theta = 0.5, .Ce = 0.4, .x = 10.0};
  auto bad = good;
  bad.Ce = drawn(1.0, 5.0);
  RC_ASSERT(developing_air(bad).error().symbol == "Ce");
  bad = good;
  bad.x = -drawn(0.01, 10.0);
  RC_ASSERT(developing_air(bad).error().symbol == "x");
}

RC_GTEST_PROP(AirDragReduction, IsNoneWithoutAirAndFallsWithTheContent, ()) {
  const double C = drawn(1e-3, 0.8);
  RC_ASSERT(std::abs(air_drag_reduction(0.0) - air_drag_reduction(1e-6)) < 1e-12);
  RC_ASSERT(air_drag_reduction(C) <= 1.0);
  RC_ASSERT(air_drag_reduction(C * drawn(1.001, 1.2)) <= air_drag_reduction(C));
}

RC_GTEST_PROP(AirProfile, HasTheMeanItWasMadeFor, ()) {
  const double C = drawn(0.02, 0.85);
  const auto D = air_diffusivity(C);
  RC_ASSERT(D.has_value());
  // Simpson's rule over the depth.
  constexpr int parts = 400;
  double sum = 0.0;
  double last = 0.0;
  for (int i = 0; i <= parts; ++i) {
    const double content = local_air({.Y = static_cast<double>(i) / parts, .D = *D});
    RC_ASSERT(content >= last);
    last = content;
    sum += content * (i == 0 || i == parts ? 1.0 : i % 2 == 1 ? 4.0 : 2.0);
  }
  RC_ASSERT(std::abs(sum / (3.0 * parts) - C) < 1e-6);
  RC_ASSERT(std::abs(last - 0.9) < 1e-12);
  RC_ASSERT(std::abs(air_profile_constant(*D) - 0.5 / *D - std::atanh(std::sqrt(0.1))) < 1e-12 * (1.0 + 0.5 / *D));
}

RC_GTEST_PROP(AeratedUniformFlow, IsClearFlowWithoutAirAndFasterWithIt, ()) {
  AeratedUniformInput in{.q = drawn(0.5, 60.0), .theta = drawn(8.0, 70.0) * degree, .f = drawn(0.006, 0.05), .C = 0.0};
  const auto clear = aerated_uniform_flow(in);
  const double Sf = in.f * clear.velocity * clear.velocity / (8.0 * gravity * clear.depth);
  RC_ASSERT(std::abs(Sf / std::sin(in.theta) - 1.0) < 1e-12);
  RC_ASSERT(clear.Y90 == clear.depth);
  in.C = drawn(0.15, 0.74);
  const auto aerated = aerated_uniform_flow(in);
  RC_ASSERT(aerated.velocity > clear.velocity);
  RC_ASSERT(std::abs(aerated.Y90 * (1.0 - in.C) - aerated.depth) < 1e-12 * aerated.Y90);
}

RC_GTEST_PROP(EquilibriumAir, RisesWithTheSlopeAndTheShortRelationsStayNear, ()) {
  const double theta = drawn(10.0, 48.0) * degree;
  RC_ASSERT(equilibrium_air(theta * 1.01) > equilibrium_air(theta));
  // The curve lies below the straight relations about 30 degrees and above them about 40.
  for (const double other : {equilibrium_air_sine(theta), equilibrium_air_power(theta), equilibrium_air_linear(theta)})
    RC_ASSERT(std::abs(other - equilibrium_air(theta)) < 0.09);
}

RC_GTEST_PROP(ShortAirRelations, AreContinuousWhereTheLinesChange, ()) {
  const double theta = drawn(39.0, 40.5) * degree;
  RC_ASSERT(std::abs(equilibrium_air_linear(theta * (1.0 + 1e-9)) - equilibrium_air_linear(theta)) < 1e-8);
  RC_ASSERT(std::abs(bed_air(theta * (1.0 + 1e-9)) - bed_air(theta)) < 1e-8);
}

RC_GTEST_PROP(CavitationIndex, AndItsVelocityAreInverse, ()) {
  const IndexVelocityInput in{.sigma = drawn(0.05, 3.0),
                              .d = drawn(0.05, 10.0),
                              .theta = drawn(1.0, 70.0) * degree,
                              .z = drawn(1.0, 4000.0),
                              .T = drawn(1.0, 35.0)};
  const double V = velocity_at_cavitation_index(in);
  const ChuteCavitationInput flow{.V = V, .d = in.d, .theta = in.theta, .z = in.z, .T = in.T};
  RC_ASSERT(std::abs(chute_cavitation_index(flow) / in.sigma - 1.0) < 1e-12);
  auto faster = flow;
  faster.V *= 1.01;
  RC_ASSERT(chute_cavitation_index(faster) < chute_cavitation_index(flow));
  auto concave = flow;
  concave.kappa = drawn(1e-4, 0.1);
  RC_ASSERT(std::abs(chute_cavitation_index(concave) - chute_cavitation_index(flow) - 2.0 * in.d * concave.kappa) < 1e-12);
}

RC_GTEST_PROP(CavitationTable, AsksForMoreAsTheIndexFalls, ()) {
  const double sigma = drawn(0.01, 3.0);
  const double lower = sigma * drawn(0.5, 1.0);
  RC_ASSERT(cavitation_row(lower).of >= cavitation_row(sigma).of);
  RC_ASSERT(sigma >= cavitation_row(sigma).least_sigma);
  for (const bool aerated : {false, true})
    RC_ASSERT(surface_tolerance(lower, aerated).number >= surface_tolerance(sigma, aerated).number);
  RC_ASSERT(surface_tolerance(sigma, true).number <= surface_tolerance(sigma, false).number);
}

RC_GTEST_PROP(Pressures, FallWithTheLevelAndRiseWithTheTemperature, ()) {
  const double z = drawn(1.0, 4000.0);
  const double T = drawn(0.5, 45.0);
  RC_ASSERT(atmospheric_pressure(z * 1.01) < atmospheric_pressure(z));
  RC_ASSERT(vapour_pressure(T * 1.01) > vapour_pressure(T));
}

}  // namespace
}  // namespace quell::hydraulics
