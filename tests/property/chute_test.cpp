// Properties of friction formulas, profiles, standing waves, bends and invert curves of chutes that hold whatever the numbers.
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <cmath>
#include <numbers>

#include "quell/hydraulics/aerators.h"
#include "quell/hydraulics/basin_rules.h"
#include "quell/hydraulics/bends.h"
#include "quell/hydraulics/boundary_layer_relations.h"
#include "quell/hydraulics/chute_profile_manning.h"
#include "quell/hydraulics/chute_symbols.h"
#include "quell/hydraulics/chute_walls.h"
#include "quell/hydraulics/energy.h"
#include "quell/hydraulics/friction_formulas.h"
#include "quell/hydraulics/invert_curve.h"
#include "quell/hydraulics/roll_waves.h"
#include "quell/hydraulics/shock_waves.h"

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

RC_GTEST_PROP(FrictionFormulas, StayNearColebrook, ()) {
  const double R = drawn(0.05, 10.0);
  const FrictionInput in{.ks = drawn(1e-5, 0.02) * R, .R = R, .V = drawn(1e5, 1e8) * water_viscosity / (4.0 * R)};
  const double f = friction_factor(in);
  close(friction_factor_haaland(in), f, 0.02);
  close(friction_factor_swamee_jain(in), f, 0.03);
}

RC_GTEST_PROP(FrictionFormulas, ConvertThereAndBack, ()) {
  const double R = drawn(0.01, 20.0);
  const double n = drawn(0.008, 0.05);
  const double f = friction_factor_from_manning({.n = n, .R = R});
  close(manning_from_friction_factor({.f = f, .R = R}), n, 1e-13);
  // Chezy's coefficient of a rough bed is that of Colebrook's rough limit within 1.5 % where R is from 10 to 5000 ks.
  const double ks = R / drawn(10.0, 5000.0);
  const double rough = std::sqrt(8.0 * gravity) * 2.0 * std::log10(14.84 * R / ks);
  close(chezy_rough({.R = R, .ks = ks}), rough, 0.025);
}

RC_GTEST_PROP(BoundaryLayers, ThickenDownstreamAndWithRoughness, ()) {
  const BoundaryLayerInput in{.L = drawn(5.0, 300.0), .ks = drawn(1e-4, 5e-3)};
  const double more = drawn(1.001, 2.0);
  RC_ASSERT(boundary_layer_bauer({.L = in.L * more, .ks = in.ks}) > boundary_layer_bauer(in));
  RC_ASSERT(boundary_layer_bauer({.L = in.L, .ks = in.ks * more}) > boundary_layer_bauer(in));
  const WoodLayerInput wood{.L = in.L, .Hs = in.L * drawn(0.1, 0.95), .ks = in.ks};
  RC_ASSERT(boundary_layer_wood({.L = wood.L, .Hs = wood.Hs, .ks = wood.ks * more}) > boundary_layer_wood(wood));
}

RC_GTEST_PROP(ManningProfile, TendsToUniformFlowAndLosesHead, ()) {
  const double theta = drawn(8.0, 50.0) * degree;
  const double q = drawn(0.5, 40.0);
  ManningChute chute{.Q = q * 1e6, .b = 1e6, .theta = theta, .n = drawn(0.01, 0.02), .d0 = 0.0, .x = 0.0};
  // Very wide: R is the depth, and uniform flow has d = (n q/sqrt(sin))^(3/5).
  const double uniform = std::pow(chute.n * q / std::sqrt(std::sin(theta)), 0.6);
  const double critical = critical_depth_on_slope(q, std::cos(theta));
  if (uniform > 0.8 * critical) RC_DISCARD("too flat");
  chute.d0 = critical * 0.9;
  const auto start = manning_profile(chute);
  RC_ASSERT(start.has_value());
  close(start->d, chute.d0, 1e-9);
  RC_ASSERT(std::abs(start->dH) < 1e-12);
  chute.x = 20.0 * critical;
  const auto near = manning_profile(chute);
  chute.x = 3000.0 * critical;
  const auto far = manning_profile(chute);
  RC_ASSERT(near.has_value() && far.has_value());
  RC_ASSERT(near->dH > 0.0 && near->d < chute.d0 && near->d >= far->d * (1.0 - 1e-6));
  close(far->d, uniform, 2e-3);
}

RC_GTEST_PROP(TaperedProfile, WithoutFrictionKeepsTheHead, ()) {
  const double theta = drawn(8.0, 45.0) * degree;
  const double b0 = drawn(5.0, 40.0);
  const TaperedChute chute{.Q = b0 * drawn(1.0, 30.0),
                           .b0 = b0,
                           .b1 = b0 * drawn(0.8, 1.2),
                           .theta = theta,
                           .ks = 1e-4,
                           .d0 = 0.0,
                           .length = drawn(5.0, 60.0)};
  auto start = chute;
  start.d0 = 0.8 * critical_depth_on_slope(chute.Q / b0, std::cos(theta));
  const auto end = tapered_profile(start);
  if (!end) RC_DISCARD("chokes");
  const double q0 = chute.Q / b0;
  const double before = start.d0 * std::cos(theta) + q0 * q0 / (2.0 * gravity * start.d0 * start.d0);
  const double after = end->d * std::cos(theta) + end->V * end->V / (2.0 * gravity);
  close(before + chute.length * std::sin(theta) - end->dH, after, 1e-9);
  close(end->d * end->V * chute.b1, chute.Q, 1e-12);
}

RC_GTEST_PROP(ObliqueShock, BalancesMassAndMomentumAcrossTheFront, ()) {
  const double F1 = drawn(1.2, 15.0);
  const double theta = largest_turn(F1) * drawn(0.01, 0.999);
  const auto shock = oblique_shock({.F1 = F1, .theta = theta});
  RC_ASSERT(shock.has_value());
  // Depth 1, g 1: the speed before is F1. Normal to the front mass and momentum, along it the speed.
  const double normal1 = F1 * std::sin(shock->beta);
  const double along = F1 * std::cos(shock->beta);
  const double speed2 = shock->F2 * std::sqrt(shock->r);
  const double normal2 = speed2 * std::sin(shock->beta - theta);
  close(normal1, normal2 * shock->r, 1e-8);
  close(along, speed2 * std::cos(shock->beta - theta), 1e-6);
  close(0.5 + normal1 * normal1, 0.5 * shock->r * shock->r + normal2 * normal2 * shock->r, 1e-8);
  RC_ASSERT(shock->r > 1.0 && shock->F2 < F1 && shock->beta > theta);
}

RC_GTEST_PROP(ObliqueShock, IsTheWeakOneAndBecomesAWaveAsTheTurnVanishes, ()) {
  const double F1 = drawn(1.5, 15.0);
  const double greatest = largest_turn(F1);
  const auto small = oblique_shock({.F1 = F1, .theta = 1e-7});
  RC_ASSERT(small.has_value());
  RC_ASSERT(std::abs(small->beta - std::asin(1.0 / F1)) < 1e-6);
  const double theta = greatest * drawn(0.02, 0.9);
  const auto less = oblique_shock({.F1 = F1, .theta = theta});
  const auto more = oblique_shock({.F1 = F1, .theta = theta * 1.05});
  RC_ASSERT(more->beta > less->beta && more->r > less->r);
  const auto beyond = oblique_shock({.F1 = F1, .theta = greatest * 1.001});
  RC_ASSERT(!beyond.has_value() && beyond.error().symbol == "theta");
  RC_ASSERT(oblique_shock({.F1 = 0.9, .theta = 0.1}).error().symbol == "F1");
}

RC_GTEST_PROP(ObliqueShock, ShortRelationsLieOnTheSafeSideAtSmallTurns, ()) {
  const double F1 = drawn(4.0, 12.0);
  const ShockInput in{.F1 = F1, .theta = drawn(0.05, 0.5) / F1};
  const auto shock = oblique_shock(in);
  RC_ASSERT(shock.has_value());
  RC_ASSERT(shock_ratio_small_turn(in) > shock->r);
  RC_ASSERT(approximate_shock(in).beta > shock->beta);
}

RC_GTEST_PROP(PierLines, LieWhereASmallWaveRuns, ()) {
  const PierLineInput in{.b = drawn(2.0, 30.0), .F = drawn(1.1, 15.0)};
  const auto shock = oblique_shock({.F1 = in.F, .theta = 1e-8});
  RC_ASSERT(shock.has_value());
  close(pier_line_distance(in), in.b / 2.0 / std::tan(shock->beta), 1e-5);
}

RC_GTEST_PROP(Bends, ReturnTheApproachDepthWhenStraight, ()) {
  const double d = drawn(0.1, 5.0);
  const double V = drawn(1.1, 4.0) * std::sqrt(gravity * d);
  const BendFlow straight{.V = V, .d = d, .B = 10.0, .r = 1e9};
  const auto waves = bend_waves(straight);
  RC_ASSERT(waves.has_value());
  close(waves->outer, d, 1e-6);
  close(waves->inner, d, 1e-6);
  auto bend = straight;
  bend.r = drawn(200.0, 5000.0);
  const auto curved = bend_waves(bend);
  if (!curved) RC_DISCARD("too sharp");
  RC_ASSERT(curved->outer > d && curved->inner < d);
  const auto wall = bend_wall_depth(bend);
  RC_ASSERT(*wall >= curved->outer && *wall >= d + bend_rise({.V = V, .B = 10.0, .r = bend.r}));
  RC_ASSERT(bend_waves({.V = 0.9 * std::sqrt(gravity * d), .d = d, .B = 10.0, .r = 500.0}).error().symbol == "F");
  RC_ASSERT(bend_waves({.V = V, .d = d, .B = 10.0, .r = 4.0}).error().symbol == "r");
}

RC_GTEST_PROP(RollWaves, BeginInWideChannelsAtFroudeNumbersOfOneAndAHalfAndTwo, ()) {
  const double d = drawn(0.01, 3.0);
  const double theta = drawn(0.5, 60.0) * degree;
  const double wave = std::sqrt(gravity * d * std::cos(theta));
  close(vedernikov_manning({.V = 1.5 * wave, .d = d, .b = 1e9, .theta = theta}), 1.0, 1e-6);
  close(vedernikov_chezy({.V = 2.0 * wave, .d = d, .b = 1e9, .theta = theta}), 1.0, 1e-6);
  RC_ASSERT(vedernikov_manning({.V = wave, .d = d, .b = 2.0, .theta = theta}) <
            vedernikov_manning({.V = wave, .d = d, .b = 4.0, .theta = theta}));
}

RC_GTEST_PROP(InvertCurve, RadiusAndPressureAreInverse, ()) {
  const double d = drawn(0.1, 4.0);
  const double V = drawn(5.0, 45.0);
  const double p = drawn(2e3, 6e4);
  const double R = invert_radius_by_pressure({.q = d * V, .V = V, .p = p});
  close(invert_curve_pressure({.q = d * V, .V = V, .R = R}), p, 1e-12);
  const double PT = water_unit_weight * d + p;
  const auto total = invert_radius_by_total_pressure({.d = d, .V = V, .PT = PT});
  RC_ASSERT(total.has_value());
  close(water_unit_weight * curved_bed_pressure_head({.d = d, .V = V, .R = *total, .phi = 0.0}), PT, 1e-9);
  RC_ASSERT(invert_radius_by_total_pressure({.d = d, .V = V, .PT = water_unit_weight * d * 0.99}).error().symbol == "PT");
  RC_ASSERT(invert_radius_by_depth({.d = d, .theta = 0.3, .ogee = false}) ==
            2.0 * invert_radius_by_depth({.d = d, .theta = 0.3, .ogee = true}));
}

RC_GTEST_PROP(ChuteWalls, StandAboveTheMixtureByEitherRule, ()) {
  const AeratedWallInput in{.d = drawn(0.1, 5.0), .C = drawn(0.01, 0.74), .margin = drawn(0.5, 1.0)};
  const double mixture = in.d / (1.0 - in.C);
  const double height = aerated_wall_height(in);
  RC_ASSERT(height >= mixture + in.margin && height >= 1.2 * mixture);
  RC_ASSERT(height == mixture + in.margin || height == 1.2 * mixture);
}

RC_GTEST_PROP(Aerators, GiveTheContentThatTheirAirMakes, ()) {
  const AirContentInput in{.q = drawn(1.0, 100.0), .C = drawn(0.01, 0.7)};
  const double air = air_flow_for_content(in);
  close(air / (air + in.q), in.C, 1e-12);
}

}  // namespace
}  // namespace quell::hydraulics
