// Properties of weirs, labyrinths, drops, troughs, gates on a level bed and outlets that hold whatever the numbers.
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cmath>
#include <numbers>
#include <vector>

#include "quell/hydraulics/drop.h"
#include "quell/hydraulics/labyrinth.h"
#include "quell/hydraulics/outlets.h"
#include "quell/hydraulics/side_channel.h"
#include "quell/hydraulics/sluice.h"
#include "quell/hydraulics/weirs.h"
#include "quell/hydraulics/weirs_broad.h"

namespace quell::hydraulics {
namespace {

constexpr double degree = std::numbers::pi / 180.0;

double drawn(double low, double high) {
  const int step = *rc::gen::resize(rc::kNominalSize, rc::gen::inRange(0, 1000001));
  return low * std::pow(high / low, step * 1e-6);
}

void close(double a, double b, double relative) {
  RC_ASSERT(std::isfinite(a) && std::isfinite(b));
  RC_ASSERT(std::abs(a - b) <= relative * std::max(std::abs(a), std::abs(b)));
}

RC_GTEST_PROP(SharpWeirs, ThreePublishedFormsAgreeAtFullWidth, ()) {
  const double P = drawn(0.3, 3.0);
  const double h = std::min(0.7, P * drawn(0.1, 0.9));
  const double rehbock = rehbock_discharge({.h = h, .P = P, .b = 5.0});
  close(kindsvater_carter_discharge({.h = h, .P = P, .b = 5.0, .B = 5.0}).Q, rehbock, 0.03);
  close(textbook_weir_discharge({.h = h, .P = P, .b = 5.0}), rehbock, 0.06);
}

RC_GTEST_PROP(SharpWeirs, ContractionTakesDischargePerWidth, ()) {
  const double b = drawn(0.5, 5.0);
  const double h = drawn(0.05, 1.0);
  const double narrow = kindsvater_carter_discharge({.h = h, .P = 1.0, .b = b, .B = b * drawn(1.2, 5.0)}).Q;
  RC_ASSERT(narrow < kindsvater_carter_discharge({.h = h, .P = 1.0, .b = b, .B = b}).Q * 1.012);
}

RC_GTEST_PROP(SharpWeirs, SubmergenceFallsFromOneToZero, ()) {
  const double h1 = drawn(0.1, 5.0);
  const double h2 = h1 * drawn(0.01, 0.98);
  const double k = villemonte_factor({.h1 = h1, .h2 = h2});
  RC_ASSERT(k > 0.0 && k < 1.0);
  RC_ASSERT(villemonte_factor({.h1 = h1, .h2 = 1.01 * h2}) < k);
  RC_ASSERT(villemonte_factor({.h1 = h1, .h2 = 0.0}) == 1.0);
  RC_ASSERT(villemonte_factor({.h1 = h1, .h2 = -1.0}) == 1.0);
  RC_ASSERT(villemonte_factor({.h1 = h1, .h2 = h1}) == 0.0);
}

RC_GTEST_PROP(BroadCrests, CriticalDepthStandsOnThem, ()) {
  const double H = drawn(0.1, 10.0);
  const double q = broad_crest_discharge({.H = H, .b = 1.0, .Cd = 1.0});
  close(critical_depth(q), 2.0 / 3.0 * H, 1e-12);
  close(sill_discharge({.h = 0.9 * H, .P = 0.1 * H, .b = 1.0}), std::sqrt(gravity) * std::pow(H, 1.5), 1e-12);
}

RC_GTEST_PROP(BroadCrests, SquareEdgesGoFromLongToSharpCrest, ()) {
  const auto Cd = [](double ratio) { return square_edged_discharge({.He = ratio, .Lw = 1.0, .b = 1.0}).Cd; };
  close(Cd(1e-3), 0.42 * 7.0 / 9.0, 1e-9);
  close(Cd(1e4), 0.42, 1e-9);
  const double ratio = drawn(0.05, 3.0);
  RC_ASSERT(Cd(1.01 * ratio) > Cd(ratio));
}

RC_GTEST_PROP(BroadCrests, ADrownedCrestAtCrestLevelIsTheWeirAlone, ()) {
  const double h = drawn(0.05, 5.0);
  close(drowned_crest_discharge({.h = h, .d = 0.0, .L = 3.0, .C1 = 0.577, .C2 = 0.8}),
        2.0 / 3.0 * 0.577 * std::sqrt(2.0 * gravity) * 3.0 * std::pow(h, 1.5), 1e-12);
}

RC_GTEST_PROP(Labyrinth, IsContinuousInTheAngle, ()) {
  const double HT = 4.0 * drawn(0.05, 0.9);
  for (const double angle : {8.0, 10.0, 12.0, 15.0, 18.0, 20.0, 25.0}) {
    const auto Cd = [&](auto function, double degrees) {
      return function({.HT = HT, .P = 4.0, .alpha = degrees * degree, .L = 10.0})->Cd;
    };
    close(Cd(labyrinth_half_round, angle - 1e-9), Cd(labyrinth_half_round, angle + 1e-9), 1e-8);
    close(Cd(labyrinth_quarter_round, angle - 1e-9), Cd(labyrinth_quarter_round, angle + 1e-9), 1e-8);
  }
}

RC_GTEST_PROP(Labyrinth, WiderAnglesHaveLargerCoefficients, ()) {
  const double HT = 4.0 * drawn(0.1, 0.9);
  const double angle = drawn(6.0, 34.0);
  const auto Cd = [&](double degrees) {
    return labyrinth_half_round({.HT = HT, .P = 4.0, .alpha = degrees * degree, .L = 10.0})->Cd;
  };
  RC_ASSERT(Cd(angle + 1.0) > Cd(angle));
  RC_ASSERT(!labyrinth_half_round({.HT = HT, .P = 4.0, .alpha = 5.0 * degree, .L = 10.0}).has_value());
  RC_ASSERT(labyrinth_half_round({.HT = HT, .P = 4.0, .alpha = 5.0 * degree, .L = 10.0}).error().symbol == "alpha");
}

RC_GTEST_PROP(Drop, TheFitsAreNearMomentum, ()) {
  const double h = drawn(0.5, 10.0);
  const double q = std::sqrt(gravity * h * h * h * drawn(0.005, 0.5));
  const DropGeometry drop = straight_drop({.q = q, .h = h});
  const double V1 = q / drop.y1;
  const double sequent = drop.y1 / 2.0 * (std::sqrt(1.0 + 8.0 * V1 * V1 / (gravity * drop.y1)) - 1.0);
  close(sequent, drop.y2, 0.12);
  RC_ASSERT(drop.y1 < critical_depth(q) && critical_depth(q) < drop.y2);
  close(drop_depth_white({.q = q, .h = h}), drop.y1, 0.25);
}

RC_GTEST_PROP(Trough, TheLevelTroughSolvesItsDifferentialEquation, ()) {
  const double b = drawn(2.0, 20.0);
  const double Q = drawn(10.0, 500.0);
  const double L = drawn(20.0, 200.0);
  const double x = L * drawn(0.05, 0.95);
  const auto y = [&](double at) { return *level_trough_depth({.x = at, .L = L, .discharge = Q, .b = b}); };
  const auto gradient = trough_depth_gradient(
      {.discharge = Q * x / L, .lateral = Q / L, .area = b * y(x), .top_width = b, .bed_slope = 0.0, .loss_slope = 0.0});
  RC_ASSERT(gradient.has_value());
  const double step = 1e-5 * L;
  close((y(x + step) - y(x - step)) / (2.0 * step), *gradient, 1e-4);
}

RC_GTEST_PROP(Trough, TheMarchMeetsTheClosedFormAndFrictionRaisesIt, ()) {
  const Trapezoid section{drawn(2.0, 20.0), 0.0};
  const double Q = section.b * drawn(1.0, 30.0);
  const double L = drawn(10.0, 150.0);
  std::vector<double> depths(101);
  RC_ASSERT(trough_profile({section, L, Q, 0.0, 0.0}, depths).has_value());
  for (const std::size_t i : {std::size_t{0}, std::size_t{25}, std::size_t{50}, std::size_t{75}})
    close(depths[i], *level_trough_depth({.x = L * 0.01 * static_cast<double>(i), .L = L, .discharge = Q, .b = section.b}),
          2e-3);
  std::vector<double> rough(101);
  RC_ASSERT(trough_profile({section, L, Q, 0.0, 0.02}, rough).has_value());
  RC_ASSERT(rough.front() > depths.front());
}

TEST(Trough, TooSteepIsRefused) {
  std::vector<double> depths(101);
  const auto done = trough_profile({{10.0, 0.0}, 100.0, 200.0, 0.2, 0.014}, depths);
  ASSERT_FALSE(done.has_value());
  EXPECT_NE(done.error().reason.find("steep"), std::string_view::npos);
}

RC_GTEST_PROP(Trough, AtTheControlTheGradientIsZeroOverZero, ()) {
  const double lateral = drawn(0.2, 10.0);
  const double B = drawn(2.0, 20.0);
  const double friction = drawn(0.001, 0.01);
  const double S0 = friction + drawn(0.005, 0.1);
  const auto x = trough_control_distance({.bed_slope = S0, .lateral = lateral, .top_width = B, .loss_slope = friction});
  RC_ASSERT(x.has_value());
  const double Q = lateral * *x;
  const double area = B * critical_depth(Q / B);
  close(S0 - friction, 2.0 * Q * lateral / (gravity * area * area), 1e-9);
}

RC_GTEST_PROP(Sluice, EnergyHoldsAndTheTailwaterLimitIsTheSequentDepth, ()) {
  const double y0 = drawn(0.5, 20.0);
  const double a = y0 * drawn(0.01, 0.5);
  const auto flow = sluice_free({.a = a, .y0 = y0});
  RC_ASSERT(flow.has_value());
  const auto energy = [&](double y) { return y + flow->q * flow->q / (2.0 * gravity * y * y); };
  close(energy(y0), energy(flow->y1), 1e-11);
  RC_ASSERT(flow->F1 > 1.0);
  const auto momentum = [&](double y) { return y * y / 2.0 + flow->q * flow->q / (gravity * y); };
  close(momentum(flow->y1), momentum(flow->y2), 1e-10);
}

RC_GTEST_PROP(Sluice, ADrownedGateBalancesEnergyAndMomentumAndPassesLess, ()) {
  const double y0 = drawn(0.5, 20.0);
  const double a = y0 * drawn(0.01, 0.4);
  const auto free = sluice_free({.a = a, .y0 = y0});
  const double ytw = free->y2 + (y0 - free->y2) * drawn(0.01, 0.99);
  const auto flow = sluice_drowned({.a = a, .y0 = y0, .ytw = ytw});
  RC_ASSERT(flow.has_value());
  const double head = flow->q * flow->q / (2.0 * gravity);
  close(y0 + head / (y0 * y0), flow->y3 + head / (free->y1 * free->y1), 1e-9);
  close(flow->y3 * flow->y3 / 2.0 + 2.0 * head / free->y1, ytw * ytw / 2.0 + 2.0 * head / ytw, 1e-9);
  RC_ASSERT(flow->q < free->q);
  RC_ASSERT(flow->y3 > free->y1 && flow->y3 < ytw);
  const auto below = sluice_drowned({.a = a, .y0 = y0, .ytw = 0.99 * free->y2});
  RC_ASSERT(!below.has_value() && below.error().symbol == "ytw");
}

RC_GTEST_PROP(Outlets, PartlyFullFlowIsNeverDeeperThanCritical, ()) {
  const double D = drawn(0.3, 6.0);
  const double Q = drawn(0.02, 0.6) * std::sqrt(gravity * std::pow(D, 5));
  const auto flow = circular_outlet({.D = D, .bed_slope = drawn(1e-4, 0.1), .manning_n = 0.013, .discharge = Q});
  RC_ASSERT(flow.has_value());
  close(flow->V * (flow->y < D ? Circle{D}.area(flow->y) : std::numbers::pi * D * D / 4.0), Q, 1e-9);
  if (flow->y < D) RC_ASSERT(flow->y <= *critical_depth(Circle{D}, Q) * (1.0 + 1e-12));
}

RC_GTEST_PROP(Outlets, WithoutLossTheTransitionKeepsEnergyAndLossCostsVelocity, ()) {
  const double y = drawn(0.2, 4.0);
  const double V = std::sqrt(gravity * y) * drawn(1.5, 6.0);
  const double q = y * V * drawn(0.2, 1.0);
  const double fall = drawn(0.1, 20.0);
  const auto ideal = outlet_transition({.y = y, .V = V, .fall = fall, .q = q, .K = 0.0});
  RC_ASSERT(ideal.has_value());
  close(y + V * V / (2.0 * gravity) + fall, ideal->y1 + ideal->V1 * ideal->V1 / (2.0 * gravity), 1e-10);
  const auto real = outlet_transition({.y = y, .V = V, .fall = fall, .q = q, .K = 0.2});
  RC_ASSERT(real.has_value());
  RC_ASSERT(real->V1 <= ideal->V1 && real->V1 > 0.8 * ideal->V1);
  RC_ASSERT(ideal->V1 > std::sqrt(gravity * ideal->y1) * (1.0 - 1e-9));
}

RC_GTEST_PROP(Outlets, ReachIsTheInverseOfThePath, ()) {
  const double V = drawn(1.0, 40.0);
  const double theta = drawn(0.001, 1.2);
  const double x = drawn(0.1, 50.0);
  close(jet_reach({.distance = jet_fall({.distance = x, .V = V, .theta = theta}), .V = V, .theta = theta}), x, 1e-9);
}

}  // namespace
}  // namespace quell::hydraulics
