// Properties of the crest's shape and rating that hold whatever the numbers.
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <array>
#include <cmath>
#include <numbers>
#include <vector>

#include "quell/hydraulics/crest.h"
#include "quell/hydraulics/crest_approach.h"
#include "quell/hydraulics/crest_coefficient.h"
#include "quell/hydraulics/crest_effects.h"
#include "quell/hydraulics/crest_gates.h"
#include "quell/hydraulics/crest_upstream.h"

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

FaceSlope any_face() {
  return *rc::gen::element(FaceSlope::vertical, FaceSlope::slope_3_to_1, FaceSlope::slope_3_to_2, FaceSlope::slope_3_to_3);
}

RC_GTEST_PROP(CrestShape, TheTangentPointLiesOnTheProfileWithTheSlopeOfTheChute, ()) {
  const double Hd = drawn(0.5, 20.0);
  const double slope = drawn(0.1, 3.0);
  const auto face = any_face();
  const auto tangent = crest_tangent_point(Hd, slope, face);
  close(tangent.y, crest_profile({.x = tangent.x, .Hd = Hd, .face = face}), 1e-12);
  const double step = 1e-5 * tangent.x;
  const double before = crest_profile({.x = tangent.x - step, .Hd = Hd, .face = face});
  const double after = crest_profile({.x = tangent.x + step, .Hd = Hd, .face = face});
  close((after - before) / (2.0 * step), slope, 1e-6);
  RC_ASSERT(tangent.arc_length > std::hypot(tangent.x, tangent.y));
  RC_ASSERT(tangent.arc_length < tangent.x + tangent.y);
}

RC_GTEST_PROP(CrestShape, GrowsWithTheDesignHeadWithoutChangingForm, ()) {
  const double Hd = drawn(0.5, 20.0);
  const double times = drawn(1.1, 4.0);
  const double x = drawn(0.01, 2.0);
  const auto face = any_face();
  const double y = crest_profile({.x = x * Hd, .Hd = Hd, .face = face});
  close(crest_profile({.x = x * Hd * times, .Hd = Hd * times, .face = face}), y * times, 1e-12);
}

RC_GTEST_PROP(UpstreamQuadrant, TheThreeArcsMeetWithoutStepOrBreak, ()) {
  const double Hd = drawn(0.5, 20.0);
  const auto y = [Hd](double share) { return *upstream_arcs({.xu = share * Hd, .Hd = Hd}); };
  for (const double joint : {0.175, 0.276}) {
    const double step = 1e-7;
    close(y(joint - step), y(joint + step), 1e-4);
    close((y(joint) - y(joint - step)) / step, (y(joint + step) - y(joint)) / step, 1e-2);
  }
}

RC_GTEST_PROP(UpstreamQuadrant, TheThreeFormsLieCloseTogether, ()) {
  const double share = drawn(0.005, 0.26);
  const QuadrantInput at{.xu = share, .Hd = 1.0};
  RC_ASSERT(std::abs(*upstream_arcs(at) - *upstream_ellipse(at)) < 0.012);
  RC_ASSERT(std::abs(*upstream_arcs(at) - *upstream_single_equation(at)) < 0.012);
}

TEST(UpstreamQuadrant, LengthOfTheBoundaryLayersStartIsThatOfTheArcs) {
  double length = 0.0;
  std::vector<CrestPoint> outline(20001);
  crest_upstream_arcs_outline(1.0, outline);
  for (std::size_t i = 1; i < outline.size(); ++i)
    length += std::hypot(outline[i].x - outline[i - 1].x, outline[i].y - outline[i - 1].y);
  EXPECT_NEAR(length, upstream_quadrant_length, 5e-5);
}

RC_GTEST_PROP(UpstreamOutline, RunsFromTheFaceToTheAxisAlongTheEllipse, ()) {
  const double Hd = drawn(0.5, 20.0);
  const auto face = any_face();
  std::array<CrestPoint, 41> outline{};
  crest_upstream_outline(Hd, face, outline);
  const auto tangent = upstream_face_tangent(Hd, face_inclination(face));
  close(-outline.front().x, tangent.xu, 1e-12);
  close(outline.front().y, tangent.y, 1e-12);
  RC_ASSERT(outline.back().x == 0.0 && outline.back().y == 0.0);
  double length = 0.0;
  for (std::size_t i = 1; i < outline.size(); ++i) {
    RC_ASSERT(outline[i].x > outline[i - 1].x);
    RC_ASSERT(outline[i].y < outline[i - 1].y);
    length += std::hypot(outline[i].x - outline[i - 1].x, outline[i].y - outline[i - 1].y);
    if (-outline[i].x < 0.27 * Hd) {
      const auto y = upstream_ellipse({.xu = -outline[i].x, .Hd = Hd});
      RC_ASSERT(std::abs(*y - outline[i].y) < 1e-12 * Hd);
    }
  }
  close(length, tangent.arc_length, 1e-3);
}

RC_GTEST_PROP(UpstreamOutline, TheFaceTouchesTheEllipseWithItsOwnSlope, ()) {
  const double inclination = drawn(0.3, 1.45);
  const auto tangent = upstream_face_tangent(1.0, inclination);
  const double step = 1e-6;
  const double before = *upstream_ellipse({.xu = tangent.xu - step, .Hd = 1.0});
  const double after = *upstream_ellipse({.xu = tangent.xu + step, .Hd = 1.0});
  close((after - before) / (2.0 * step), std::tan(inclination), 1e-3);
}

RC_GTEST_PROP(CrestApproach, BecomesTheReservoirAsTheApproachDeepens, ()) {
  const double Hd = drawn(1.0, 15.0);
  const double h = Hd * drawn(0.1, 1.5);
  const double length = drawn(5.0, 200.0);
  const auto flow =
      crest_discharge_with_approach({.h = h, .Hd = Hd, .P = 1e6 * Hd, .net_length = length, .contraction = 0.0, .B = length});
  RC_ASSERT(flow.has_value());
  close(flow->discharge, crest_discharge({.He = h, .Hd = Hd, .P = 1e6 * Hd, .L = length}), 1e-9);
}

RC_GTEST_PROP(CrestApproach, EnergyAndContinuityHoldAndTheApproachIsSubcritical, ()) {
  const double Hd = drawn(1.0, 15.0);
  const double length = drawn(5.0, 200.0);
  const CrestApproachInput in{.h = Hd * drawn(0.1, 1.5),
                              .Hd = Hd,
                              .P = Hd * drawn(0.1, 10.0),
                              .net_length = length,
                              .contraction = 0.05,
                              .B = length * drawn(1.0, 3.0),
                              .face = any_face()};
  const auto flow = crest_discharge_with_approach(in);
  if (!flow) RC_DISCARD("no control at the crest");
  const double L = effective_crest_length({.net_length = length, .piers = 0.0, .Kp = 0.0, .Ka = 0.05, .He = flow->He});
  close(flow->discharge, crest_discharge({.He = flow->He, .Hd = Hd, .P = in.P, .L = L, .face = in.face}), 1e-11);
  close(flow->velocity * in.B * (in.h + in.P), flow->discharge, 1e-12);
  close(flow->He, in.h + flow->velocity * flow->velocity / (2.0 * gravity), 1e-11);
  RC_ASSERT(flow->velocity <= std::sqrt(gravity * (in.h + in.P)) * (1.0 + 1e-9));
}

RC_GTEST_PROP(CrestApproach, PassesMoreThanWithoutVelocityHeadAndMoreAtHigherLevels, ()) {
  const WeirApproachInput low{.h = drawn(0.2, 5.0), .C = 2.0, .L = 10.0, .P = drawn(2.0, 20.0), .B = 12.0};
  WeirApproachInput high = low;
  high.h *= 1.05;
  const auto a = discharge_with_approach(low);
  const auto b = discharge_with_approach(high);
  if (!a || !b) RC_DISCARD("no control at the crest");
  RC_ASSERT(a->discharge > 2.0 * 10.0 * std::pow(low.h, 1.5));
  RC_ASSERT(b->discharge > a->discharge);
}

RC_GTEST_PROP(CrestTailwater, FactorFallsWithTheTailwaterAndNeverRisesAboveOne, ()) {
  const double He = drawn(0.2, 10.0);
  const double above = He * drawn(0.01, 3.0);
  const auto factor = [&](double depth, FlowBelowCrest flow) {
    return crest_tailwater_factor({.He = He, .crest_above_apron = above, .tailwater_depth = depth, .flow = flow});
  };
  const double depth = (He + above) * drawn(0.01, 1.0);
  const double drowned = factor(depth, FlowBelowCrest::drowned_jump);
  RC_ASSERT(drowned >= 0.0 && drowned <= 1.0);
  RC_ASSERT(factor(1.02 * depth, FlowBelowCrest::drowned_jump) <= drowned);
  RC_ASSERT(drowned <= factor(depth, FlowBelowCrest::free_jump));
  RC_ASSERT(factor(depth, FlowBelowCrest::free_jump) == factor(0.0, FlowBelowCrest::supercritical));
  RC_ASSERT(factor(1.5 * (He + above), FlowBelowCrest::drowned_crest) == 0.0);
}

RC_GTEST_PROP(CrestHeadLimit, AtTheLimitThePressureIsTheOneAllowed, ()) {
  const double Hd = drawn(1.0, 40.0);
  const double hlim = drawn(0.1, 7.0);
  const double chi = crest_head_ratio_limit({.Hd = Hd, .hlim = hlim});
  close(crest_least_pressure_head({.He = chi * Hd, .Hd = Hd}), -hlim, 1e-10);
}

RC_GTEST_PROP(CrestCoefficient, TheUpperPracticeIsTwoPerCentAboveTheLower, ()) {
  const double Hd = drawn(1.0, 20.0);
  const CrestDischargeInput in{.He = Hd * drawn(0.1, 1.5), .Hd = Hd, .P = 5.0 * Hd, .L = 10.0};
  close(crest_discharge_upper(in), crest_discharge(in) * 4.03 / 3.95, 2e-4);
}

RC_GTEST_PROP(CrestCoefficient, HeadAndDischargeAreInverse, ()) {
  const double C = drawn(1.5, 2.4);
  const double L = drawn(1.0, 300.0);
  const double He = drawn(0.1, 20.0);
  close(crest_head({.discharge = C * L * std::pow(He, 1.5), .C = C, .L = L}), He, 1e-12);
}

RC_GTEST_PROP(MultiBay, OneWideBayHasNoContractionAndMorePiersMore, ()) {
  MultiBayInput in{.n = 1.0, .B = 1e15, .H = 5.0, .Hd = 5.0, .t = 2.0, .Sp = 4.0, .xi = std::pow(0.5, 1.85) / 2.0};
  RC_ASSERT(multi_bay_discharge(in).Md < 1e-6);
  in.B = drawn(3.0, 30.0);
  in.n = 4.0;
  const double slim = multi_bay_discharge(in).C;
  in.t = drawn(2.1, 4.0);
  RC_ASSERT(multi_bay_discharge(in).C < slim);
}

RC_GTEST_PROP(Gates, TheBlendIsContinuousAndNeverAboveTheFreeCrest, ()) {
  const double He = drawn(1.0, 15.0);
  const double free = drawn(10.0, 1000.0);
  const double orifice = free * drawn(0.3, 1.5);
  const auto at = [&](double ratio) {
    return gate_or_free_discharge({.orifice = orifice, .free = free, .G0 = ratio * He, .He = He});
  };
  for (const double end : {0.6, 0.75}) RC_ASSERT(std::abs(at(end - 1e-9) - at(end + 1e-9)) < 1e-6 * free);
  const double anywhere = at(drawn(0.01, 2.0));
  RC_ASSERT(anywhere <= free && anywhere >= std::min(orifice, free) * (1.0 - 1e-12));
}

RC_GTEST_PROP(Gates, AGateLiftedOutGivesTheWeir, ()) {
  const double H = drawn(1.0, 15.0);
  close(gate_discharge_by_heads({.b = 10.0, .H = H, .H1 = 0.0, .Cd = 0.6}),
        2.0 / 3.0 * 0.6 * std::sqrt(2.0 * gravity) * 10.0 * std::pow(H, 1.5), 1e-12);
}

}  // namespace
}  // namespace quell::hydraulics
