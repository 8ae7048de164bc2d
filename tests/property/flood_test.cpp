// Properties of floods, seepage and regime that hold whatever the numbers.
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cmath>
#include <numbers>
#include <vector>

#include "quell/hydraulics/canal_fall.h"
#include "quell/hydraulics/flat_plate.h"
#include "quell/hydraulics/flood_frequency.h"
#include "quell/hydraulics/flood_routing.h"
#include "quell/hydraulics/regime.h"
#include "quell/hydraulics/seepage.h"
#include "quell/hydraulics/short_rules.h"

namespace quell::hydraulics {
namespace {

double drawn(double low, double high) {
  const int step = *rc::gen::resize(rc::kNominalSize, rc::gen::inRange(0, 1000001));
  return low * std::pow(high / low, step * 1e-6);
}

void close(double a, double b, double relative) {
  RC_ASSERT(std::isfinite(a) && std::isfinite(b));
  RC_ASSERT(std::abs(a - b) <= relative * std::max(std::abs(a), std::abs(b)));
}

RC_GTEST_PROP(Pearson, IsMirroredBySkewAndGrowsWithProbability, ()) {
  const double G = drawn(1e-6, 4.0);
  const double P = drawn(0.001, 0.999);
  const double K = pearson_3_frequency_factor(G, P);
  RC_ASSERT(std::isfinite(K));
  RC_ASSERT(std::abs(pearson_3_frequency_factor(-G, 1.0 - P) + K) < 1e-8 * (1.0 + std::abs(K)));
  RC_ASSERT(pearson_3_frequency_factor(G, P + 0.5 * (1.0 - P)) > K);
}

/// Skew 2 is the exponential law, which has a closed form.
RC_GTEST_PROP(Pearson, IsExponentialAtASkewOfTwo, ()) {
  const double P = drawn(0.001, 0.9999);
  RC_ASSERT(std::abs(pearson_3_frequency_factor(2.0, P) - (-std::log(1.0 - P) - 1.0)) < 1e-10);
}

/// The expansion about no skew joins the inversion of the gamma function.
RC_GTEST_PROP(Pearson, IsContinuousAtNoSkew, ()) {
  const double P = drawn(0.001, 0.999);
  const double below = pearson_3_frequency_factor(0.999999e-4, P);
  const double above = pearson_3_frequency_factor(1.000001e-4, P);
  RC_ASSERT(std::abs(above - below) < 1e-7);
}

RC_GTEST_PROP(Gumbel, GivesTheProbabilityBack, ()) {
  const double T = drawn(1.01, 10000.0);
  const double K = gumbel_frequency_factor({.T = T, .yn = gumbel_mean, .Sn = gumbel_deviation});
  const double y = K * std::numbers::pi / std::sqrt(6.0) + gumbel_mean;
  close(1.0 - std::exp(-std::exp(-y)), 1.0 / T, 1e-9);
  RC_ASSERT(gumbel_frequency_factor({.T = 1.1 * T, .yn = gumbel_mean, .Sn = gumbel_deviation}) > K);
}

RC_GTEST_PROP(Risk, AddsToOne, ()) {
  const double T = drawn(1.05, 1000.0);
  const int n = *rc::gen::inRange(1, 40);
  double sum = 0.0;
  for (int k = 0; k <= n; ++k) sum += risk_exactly(T, n, k);
  close(sum, 1.0, 1e-10);
  RC_ASSERT(std::abs(1.0 - risk_exactly(T, n, 0) - risk_at_least_once(T, n)) < 1e-12);
  close(risk_at_least_once(T, 1.0), 1.0 / T, 1e-12);
}

RC_GTEST_PROP(UnitHydrograph, KeepsTheVolumeAndAdds, ()) {
  std::vector<double> unit;
  std::vector<double> excess;
  for (int i = 0; i < 12; ++i) unit.push_back(drawn(0.01, 100.0));
  for (int i = 0; i < 4; ++i) excess.push_back(drawn(0.001, 0.1));
  double out = 0.0;
  double rain = 0.0;
  double shape = 0.0;
  for (std::size_t i = 0; i < unit.size() + excess.size(); ++i) out += direct_flow(excess, unit, i);
  for (const double e : excess) rain += e;
  for (const double u : unit) shape += u;
  close(out, rain * shape, 1e-12);
  const std::vector<double> one{1.0};
  for (std::size_t i = 0; i < unit.size(); ++i) RC_ASSERT(direct_flow(one, unit, i) == unit[i]);
}

RC_GTEST_PROP(ExcessRain, IsNeitherBelowZeroNorAboveTheRain, ()) {
  const RainBlock block{drawn(1e-4, 0.3), drawn(600.0, 86400.0)};
  const double excess = excess_rain(block, drawn(1e-6, 0.05), drawn(1e-9, 1e-5));
  RC_ASSERT(excess >= 0.0 && excess < block.P);
}

RC_GTEST_PROP(Muskingum, KeepsTheVolumeAndASteadyFlow, ()) {
  const double K = drawn(3600.0, 3e5);
  const double x = drawn(0.01, 0.45);
  const MuskingumReach reach{K, x, K * drawn(2.0 * x, 2.0 * (1.0 - x))};
  const auto weights = muskingum_weights(reach);
  close(weights.C0 + weights.C1 + weights.C2, 1.0, 1e-12);
  const double steady = drawn(1.0, 1000.0);
  close(muskingum_step(reach, {steady, steady, steady}), steady, 1e-12);
  // Storage K (x I + (1 - x) O) grows by what flows in less what flows out.
  const MuskingumFlows flows{drawn(1.0, 1000.0), drawn(1.0, 1000.0), drawn(1.0, 1000.0)};
  const double O2 = muskingum_step(reach, flows);
  RC_ASSERT(O2 >= 0.0);
  const double stored = K * (x * (flows.I2 - flows.I1) + (1.0 - x) * (O2 - flows.O1));
  const double passed = 0.5 * reach.dt * (flows.I1 + flows.I2 - flows.O1 - O2);
  RC_ASSERT(std::abs(stored - passed) < 1e-9 * K * (flows.I1 + flows.I2 + flows.O1));
}

RC_GTEST_PROP(Cutoff, PressureFallsTowardsTheExit, ()) {
  const CutoffInput input{drawn(1.0, 200.0), drawn(0.5, 20.0), drawn(0.1, 30.0)};
  const auto seepage = cutoff_seepage(input);
  RC_ASSERT(0.0 < seepage.at_tip && seepage.at_tip < seepage.at_floor && seepage.at_floor < 1.0);
  RC_ASSERT(cutoff_seepage({input.b, 1.1 * input.d, input.H}).exit_gradient < seepage.exit_gradient);
  // Without a floor, on both sides of a sheet, the gradient is H/(pi d).
  const auto sheet = cutoff_seepage({1e-9 * input.d, input.d, input.H});
  close(sheet.exit_gradient, input.H / (std::numbers::pi * input.d), 1e-12);
  close(sheet.at_tip, 0.5, 1e-9);
}

RC_GTEST_PROP(Creep, LosesAllTheHeadAtItsEnd, ()) {
  const double H = drawn(0.1, 30.0);
  const double L = drawn(1.0, 300.0);
  RC_ASSERT(creep_head({H, L, 0.0}) == H);
  RC_ASSERT(creep_head({H, L, L}) == 0.0);
  const double h = creep_head({H, L, L * drawn(0.01, 0.99)});
  RC_ASSERT(h > 0.0 && h < H);
  const double G = drawn(2.0, 2.6);
  const double t = floor_thickness({.h = h, .G = G, .k = 1.0});
  close(G * t, h + t, 1e-12);  // weight of the floor against the head on its base
}

RC_GTEST_PROP(Regime, BalancesDischargeAndAcceptsItsOwnWidth, ()) {
  const double Q = drawn(1.0, 30000.0);
  const double f = drawn(0.4, 2.5);
  const auto channel = regime_channel(Q, f);
  close(channel.V * channel.A, Q, 1e-12);
  // 1.35 (q^2/f)^(1/3) with the regime width is 0.48 (Q/f)^(1/3), which Lacey gives as 0.47.
  close(regime_scour_depth(Q / channel.P, f), 0.473 * std::cbrt(Q / f), 0.015);
}

RC_GTEST_PROP(SardaCrest, SatisfiesItsDischarge, ()) {
  const double Q = drawn(14.0, 500.0);
  const double L = drawn(5.0, 200.0);
  const auto crest = sarda_crest({Q, L, drawn(1.0, 10.0)});
  close(1.99 * L * std::pow(crest.H, 1.5) * std::pow(crest.H / crest.B, 1.0 / 6.0), Q, 1e-12);
}

RC_GTEST_PROP(Plate, HasItsLayerGrowAndItsFrictionFall, ()) {
  const PlateFlow flow{drawn(0.5, 20.0), drawn(0.5, 50.0), 1e-6};
  const PlateFlow farther{flow.U, 2.0 * flow.x, flow.nu};
  RC_ASSERT(laminar_layer(farther).delta > laminar_layer(flow).delta);
  RC_ASSERT(turbulent_layer(farther).delta > turbulent_layer(flow).delta);
  RC_ASSERT(turbulent_layer(farther).cf < turbulent_layer(flow).cf);
  RC_ASSERT(rough_plate_coefficient(2.0 * flow.x, 0.001) < rough_plate_coefficient(flow.x, 0.001));
}

RC_GTEST_PROP(BankRiprap, GrowsWithTheBankAndIsPlainOnALevelBed, ()) {
  const double V = drawn(0.1, 6.0);
  const double d = drawn(0.1, 10.0);
  const double phi = drawn(0.6, 0.8);
  const double flat = bank_riprap({V, d, 0.0, phi});
  close(flat, 0.00594 * V * V * V / std::sqrt(d), 1e-12);
  RC_ASSERT(bank_riprap({V, d, 0.9 * phi, phi}) > bank_riprap({V, d, 0.5 * phi, phi}));
  RC_ASSERT(bank_riprap({V, d, 0.5 * phi, phi}) > flat);
}

}  // namespace
}  // namespace quell::hydraulics
