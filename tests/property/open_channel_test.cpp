// Properties of open-channel flow that hold whatever the numbers: energy, transitions, uniform flow, best sections, the jump
// asked the other way round, bodies in the flow, surges.
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cmath>

#include "quell/hydraulics/best_sections.h"
#include "quell/hydraulics/drag.h"
#include "quell/hydraulics/energy_depths.h"
#include "quell/hydraulics/flow_state.h"
#include "quell/hydraulics/jump.h"
#include "quell/hydraulics/roughness_parts.h"
#include "quell/hydraulics/surge.h"
#include "quell/hydraulics/transitions.h"
#include "quell/hydraulics/uniform_flow.h"

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

double energy(double q, double y) {
  return specific_energy({.y = y, .V = q / y});
}

Trapezoid channel() {
  return {drawn(0.5, 100.0), drawn(0.01, 4.0)};
}

/// Refused by name, or not at all.
template <class T>
void refused(const Outcome<T>& answer, std::string_view symbol) {
  RC_ASSERT(!answer.has_value());
  RC_ASSERT(answer.error().symbol == symbol);
}

RC_GTEST_PROP(SpecificEnergy, HasAnAlternateDepthThatLeadsBack, ()) {
  const double q = drawn(0.01, 200.0);
  const double yc = critical_depth(q);
  const double y = yc * drawn(0.05, 20.0);
  const double other = alternate_depth(q, y);
  close(energy(q, other), energy(q, y), 1e-11);
  close(alternate_depth(q, other), y, 1e-9);
  RC_ASSERT((y - yc) * (other - yc) <= 1e-12 * yc * yc);
}

RC_GTEST_PROP(SpecificEnergy, HasASubcriticalDepthAboveTheLeast, ()) {
  const double q = drawn(0.01, 200.0);
  const double E = least_energy(q) * drawn(1.0001, 100.0);
  const auto y = subcritical_depth(q, E);
  RC_ASSERT(y.has_value());
  RC_ASSERT(*y > critical_depth(q));
  close(energy(q, *y), E, 1e-11);
  RC_ASSERT(!subcritical_depth(q, least_energy(q) * drawn(0.01, 0.999)).has_value());
}

RC_GTEST_PROP(Hump, KeepsTheEnergyAndTheRegimeUpToTheHighest, ()) {
  const double q = drawn(0.01, 200.0);
  const double y1 = critical_depth(q) * (*rc::gen::arbitrary<bool>() ? drawn(0.1, 0.95) : drawn(1.05, 10.0));
  const double highest = highest_hump(y1, q / y1);
  RC_ASSERT(highest > 0.0);
  const double dz = highest * drawn(0.001, 0.999);
  const auto y2 = depth_over_hump({.y1 = y1, .V1 = q / y1, .dz = dz});
  RC_ASSERT(y2.has_value());
  close(energy(q, *y2) + dz, energy(q, y1), 1e-9);
  RC_ASSERT((*y2 < critical_depth(q)) == (y1 < critical_depth(q)));
  const auto flat = depth_over_hump({.y1 = y1, .V1 = q / y1, .dz = 0.0});
  RC_ASSERT(flat.has_value());
  close(*flat, y1, 1e-8);
  refused(depth_over_hump({.y1 = y1, .V1 = q / y1, .dz = highest * 1.001}), "dz");
}

RC_GTEST_PROP(Narrowing, IsCriticalAtItsLeastWidth, ()) {
  const double Q = drawn(0.1, 5000.0);
  const double E = drawn(0.1, 30.0);
  close(least_energy(Q / least_width(Q, E)), E, 1e-12);
}

RC_GTEST_PROP(SectionChange, BalancesEnergyAndVanishesBetweenEqualSections, ()) {
  const auto section = channel();
  const double Q = drawn(0.1, 3000.0);
  const auto critical = critical_depth(section, Q);
  RC_ASSERT(critical.has_value());
  const double y2 = *critical * drawn(1.05, 20.0);
  const double K = drawn(0.01, 1.0);
  const auto same = depth_before_transition({section, section, y2, Q, 0.0, K});
  RC_ASSERT(same.has_value());
  close(*same, y2, 1e-8);
}

RC_GTEST_PROP(SectionChange, IsSubcriticalAndLosesItsShare, ()) {
  const Trapezoid upstream = channel();
  const Trapezoid downstream = channel();
  const double Q = drawn(0.1, 3000.0);
  const auto critical = critical_depth(downstream, Q);
  RC_ASSERT(critical.has_value());
  const double y2 = *critical * drawn(1.05, 20.0);
  const double K = drawn(0.01, 1.0);
  const double drop = drawn(0.001, 0.2) * y2;
  const auto y1 = depth_before_transition({upstream, downstream, y2, Q, drop, K});
  if (!y1) RC_DISCARD("a control");
  const double V1 = Q / upstream.area(*y1);
  const double V2 = Q / downstream.area(y2);
  const double lost = K * std::abs(V1 * V1 - V2 * V2) / (2.0 * gravity);
  close(drop + specific_energy({.y = *y1, .V = V1}), specific_energy({.y = y2, .V = V2}) + lost, 1e-10);
  RC_ASSERT(froude_number({.Q = Q, .A = upstream.area(*y1), .T = upstream.top_width(*y1)}) <= 1.0 + 1e-9);
}

RC_GTEST_PROP(LakeInlet, IsUniformWhereMildAndCarriesLessThanCritical, ()) {
  const auto section = channel();
  const double S = drawn(1e-5, 0.02);
  const double n = drawn(0.01, 0.1);
  const double H = drawn(0.2, 15.0);
  const auto yc = critical_depth_from_head(section, H);
  RC_ASSERT(yc.has_value());
  const double Ac = section.area(*yc);
  const double Qc = Ac * std::sqrt(gravity * Ac / section.top_width(*yc));
  const auto again = critical_depth(section, Qc);
  RC_ASSERT(again.has_value());
  close(*again, *yc, 1e-9);
  const bool mild = S < critical_slope({.section = section, .yc = *yc, .manning_n = n});
  const auto y = depth_at_lake_inlet({section, S, n, H});
  RC_ASSERT(y.has_value() == mild);
  if (!y) return;
  const double Q = manning_discharge({section, *y, S, n});
  RC_ASSERT(Q <= Qc * (1.0 + 1e-9));
  close(specific_energy({.y = *y, .V = Q / section.area(*y)}), H, 1e-10);
}

RC_GTEST_PROP(UniformFlow, SlopeAndRoughnessAreTheInversesOfTheDischarge, ()) {
  const auto section = channel();
  const double y = drawn(0.05, 20.0);
  const double S = drawn(1e-6, 0.1);
  const double n = drawn(0.008, 0.2);
  const double Q = manning_discharge({section, y, S, n});
  close(manning_slope({section, y, n, Q}), S, 1e-12);
  close(manning_roughness({section, y, S, Q}), n, 1e-12);
}

RC_GTEST_PROP(UniformFlow, ByChezyCarriesTheDischargeAndMeetsManning, ()) {
  const auto section = channel();
  const double S = drawn(1e-6, 0.1);
  const double C = drawn(20.0, 100.0);
  const double Q = drawn(0.05, 5000.0);
  const auto yn = normal_depth_chezy({section, S, C, Q});
  RC_ASSERT(yn.has_value());
  close(chezy_discharge({section, *yn, S, C}), Q, 1e-10);
  // C = R^(1/6)/n makes both the same.
  const double R = section.area(*yn) / section.perimeter(*yn);
  close(manning_discharge({section, *yn, S, std::pow(R, 1.0 / 6.0) / C}), Q, 1e-10);
}

RC_GTEST_PROP(LimitSlope, IsNeverExceededByTheCriticalSlopeAndReachedAtASixthOfTheWidth, ()) {
  const double b = drawn(0.3, 100.0);
  const double n = drawn(0.008, 0.1);
  const double limit = limit_slope({.b = b, .manning_n = n, .F = 1.0});
  RC_ASSERT(critical_slope({{b, 0.0}, b * drawn(1e-3, 1e3), n}) >= limit * (1.0 - 1e-12));
  close(critical_slope({{b, 0.0}, b / 6.0, n}), limit, 1e-12);
}

RC_GTEST_PROP(WideBackwater, RisesOnAMildSlopeAboveNormalDepthAndIsLevelFarAbove, ()) {
  const double S = drawn(1e-5, 0.01);
  const double yc = drawn(0.1, 5.0);
  const double yn = yc * drawn(1.01, 5.0);
  const double y = yn * drawn(1.001, 1000.0);
  const double slope = surface_slope_chezy_wide({S, yn, yc, y});
  RC_ASSERT(slope > 0.0 && slope < S);
  close(surface_slope_chezy_wide({S, yn, yc, 1e5 * yn}), S, 1e-12);
  RC_ASSERT(surface_slope_chezy_wide({S, yn, yc, yn}) == 0.0);
}

RC_GTEST_PROP(Roughness, OfPartsLiesBetweenThem, ()) {
  const RoughPart parts[] = {{drawn(0.1, 50.0), drawn(0.01, 0.1)}, {drawn(0.1, 50.0), drawn(0.01, 0.1)}};
  const double n = composite_roughness(parts);
  RC_ASSERT(n >= std::min(parts[0].n, parts[1].n) * (1.0 - 1e-12));
  RC_ASSERT(n <= std::max(parts[0].n, parts[1].n) * (1.0 + 1e-12));
}

RC_GTEST_PROP(Conveyance, OfEqualPartsHasCoefficientsOfOne, ()) {
  const FlowPart part{drawn(0.1, 500.0), drawn(0.5, 100.0), drawn(0.01, 0.1)};
  const FlowPart other{drawn(0.1, 500.0), drawn(0.5, 100.0), drawn(0.01, 0.1)};
  const FlowPart same[] = {part, part, part};
  const auto whole = compound_conveyance(same);
  close(whole.K, 3.0 * conveyance(part.A, part.P, part.n), 1e-12);
  close(whole.alpha, 1.0, 1e-12);
  const FlowPart mixed[] = {part, other};
  const auto two = compound_conveyance(mixed);
  RC_ASSERT(two.beta >= 1.0 - 1e-12 && two.alpha >= two.beta - 1e-12);
}

RC_GTEST_PROP(BestSection, HasNoShorterNeighbour, ()) {
  const double A = drawn(0.1, 1000.0);
  const double m = drawn(0.01, 4.0);
  const auto best = best_trapezoid(A, m);
  close(Trapezoid{best.b, m}.area(best.y), A, 1e-12);
  close(Trapezoid{best.b, m}.perimeter(best.y), best.P, 1e-12);
  const double y = best.y * drawn(0.5, 2.0);
  const double b = A / y - m * y;
  if (b < 0.0) RC_DISCARD("no trapezoid");
  RC_ASSERT((Trapezoid{b, m}.perimeter(y) >= best.P * (1.0 - 1e-12)));
  RC_ASSERT(best.P >= best_trapezoid(A, 1.0 / std::sqrt(3.0)).P * (1.0 - 1e-12));
  RC_ASSERT(best_triangle(A).P >= best_trapezoid(A, 1.0 / std::sqrt(3.0)).P);
}

RC_GTEST_PROP(BestSection, IsFoundFromAreaAndPerimeter, ()) {
  const auto section = channel();
  const double y = drawn(0.01, 20.0);
  const double k = 2.0 * std::sqrt(1.0 + section.m * section.m) - section.m;
  if (section.perimeter(y) < 2.0 * k * y) RC_DISCARD("the narrow one of the two");
  const double A = section.area(y);
  const auto found = trapezoid_of({.A = A, .P = section.perimeter(y), .m = section.m});
  if (!found) RC_DISCARD("rounding at the double root");
  close(Trapezoid{found->b, section.m}.area(found->y), A, 1e-10);
  close(Trapezoid{found->b, section.m}.perimeter(found->y), section.perimeter(y), 1e-7);
  refused(trapezoid_of({.A = A, .P = 1.99 * std::sqrt(k * A), .m = section.m}), "P");
}

RC_GTEST_PROP(FullestCircle, HasNoBetterNeighbour, ()) {
  const double D = drawn(0.2, 12.0);
  const double p = drawn(0.4, 0.8);
  const Circle pipe{D};
  const auto most = fullest_discharge_depth(D, p);
  RC_ASSERT(most.has_value());
  const auto carried = [&](double y) { return pipe.area(y) * std::pow(pipe.area(y) / pipe.perimeter(y), p); };
  const double y = D * drawn(0.02, 0.9999);
  RC_ASSERT(carried(y) <= carried(*most) * (1.0 + 1e-12));
  const double fastest = fullest_velocity_depth(D);
  RC_ASSERT(pipe.area(y) / pipe.perimeter(y) <= pipe.area(fastest) / pipe.perimeter(fastest) * (1.0 + 1e-12));
  RC_ASSERT(fastest < *most);
}

RC_GTEST_PROP(JumpOnBlocks, IsFreeWithoutDragAndLowerWithIt, ()) {
  const double y1 = drawn(0.02, 5.0);
  const double V1 = drawn(1.2, 15.0) * std::sqrt(gravity * y1);
  const double q = V1 * y1;
  const double y2 = sequent_depth({.y1 = y1, .V1 = V1});
  const auto free = sequent_depth_with_drag({.y1 = y1, .V1 = V1, .f = 0.0});
  RC_ASSERT(free.has_value());
  close(*free, y2, 1e-9);
  const Trapezoid strip{1.0, 0.0};
  const double spare = momentum_function(strip, q, y1) - momentum_function(strip, q, critical_depth(q));
  const double share = drawn(0.001, 0.99);
  const auto lower = sequent_depth_with_drag({.y1 = y1, .V1 = V1, .f = share * spare * water_unit_weight});
  RC_ASSERT(lower.has_value());
  RC_ASSERT(*lower < y2 && *lower > critical_depth(q));
  close(momentum_function(strip, q, *lower) + share * spare, momentum_function(strip, q, y1), 1e-10);
  RC_ASSERT(!sequent_depth_with_drag({.y1 = y1, .V1 = V1, .f = 1.01 * spare * water_unit_weight}).has_value());
}

RC_GTEST_PROP(Piers, RaiseTheWaterByTheirDrag, ()) {
  const double y2 = drawn(0.2, 15.0);
  const double V2 = drawn(0.02, 0.9) * std::sqrt(gravity * y2);
  const double s = drawn(2.0, 50.0);
  const double a = s * drawn(0.01, 0.4);
  const double CD = drawn(0.1, 2.5);
  const auto y1 = depth_above_piers({y2, V2, a, s, CD});
  RC_ASSERT(y1.has_value());
  RC_ASSERT(*y1 > y2);
  const double q = V2 * y2;
  const double drag = drag_force({.CD = CD, .A = a * *y1, .V = q / *y1}) / (s * water_unit_weight);
  const Trapezoid strip{1.0, 0.0};
  close(momentum_function(strip, q, *y1), momentum_function(strip, q, y2) + drag, 1e-10);
  const auto none = depth_above_piers({y2, V2, 0.0, s, CD});
  RC_ASSERT(none.has_value());
  close(*none, y2, 1e-9);
}

/// Seen from the front, a surge is a jump: the same momentum balance with the velocities relative to it.
RC_GTEST_PROP(Surge, IsAJumpThatMoves, ()) {
  const double y1 = drawn(0.1, 10.0);
  const double V1 = drawn(0.01, 0.9) * std::sqrt(gravity * y1);
  const double left = drawn(0.001, 0.99);
  const auto up = surge_from_closure({.y1 = y1, .V1 = V1, .q2 = left * V1 * y1});
  RC_ASSERT(up.has_value());
  RC_ASSERT(up->y2 > y1);
  close(sequent_depth({.y1 = y1, .V1 = V1 + up->c}), up->y2, 1e-9);
  close(V1 * y1 - left * V1 * y1, up->c * (up->y2 - y1), 1e-9);
  refused(surge_from_closure({.y1 = y1, .V1 = V1, .q2 = V1 * y1 * 1.01}), "q2");

  const double q2 = V1 * y1 * drawn(1.01, 20.0);
  const auto down = surge_from_opening({.y1 = y1, .V1 = V1, .q2 = q2});
  RC_ASSERT(down.has_value());
  close(sequent_depth({.y1 = y1, .V1 = down->c - V1}), down->y2, 1e-9);
  close(V1 * y1 + down->c * (down->y2 - y1), q2, 1e-11);
  refused(surge_from_opening({.y1 = y1, .V1 = V1, .q2 = V1 * y1 * 0.99}), "q2");
}

/// The smallest surge runs with the speed of a small wave.
RC_GTEST_PROP(Surge, BecomesASmallWave, ()) {
  const double y1 = drawn(0.1, 10.0);
  const double V1 = drawn(0.01, 0.9) * std::sqrt(gravity * y1);
  const auto up = surge_from_closure({.y1 = y1, .V1 = V1, .q2 = V1 * y1 * (1.0 - 1e-6)});
  RC_ASSERT(up.has_value());
  RC_ASSERT(std::abs(up->c - (std::sqrt(gravity * y1) - V1)) < 1e-4 * std::sqrt(gravity * y1));
}

}  // namespace
}  // namespace quell::hydraulics
