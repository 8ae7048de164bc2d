// Properties of the formulas that hold whatever the numbers: jump, sections, energy, friction. RapidCheck draws the numbers.
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <cmath>
#include <cstdlib>

#include "quell/hydraulics/energy.h"
#include "quell/hydraulics/friction.h"
#include "quell/hydraulics/jump.h"
#include "quell/hydraulics/jump_sections.h"
#include "quell/hydraulics/section.h"

namespace quell::hydraulics {
namespace {

/// RapidCheck's own hundred cases a property are few for formulas that take nanoseconds; RC_PARAMS still overrides.
class ManyCases : public testing::Environment {
 public:
  void SetUp() override { setenv("RC_PARAMS", "max_success=5000", 0); }
};
const testing::Environment* const many_cases = testing::AddGlobalTestEnvironment(new ManyCases);

/// A number between two positive ones, even in its logarithm, in a million steps: whole numbers shrink well.
double drawn(double low, double high) {
  const int step = *rc::gen::resize(rc::kNominalSize, rc::gen::inRange(0, 1000001));
  return low * std::pow(high / low, step * 1e-6);
}

void close(double a, double b, double relative) {
  RC_ASSERT(std::isfinite(a) && std::isfinite(b));
  RC_ASSERT(std::abs(a - b) <= relative * std::max(std::abs(a), std::abs(b)));
}

struct Inflow {
  double y1, V1, q;
};

Inflow supercritical_inflow() {
  const double y1 = drawn(0.005, 10.0);
  const double V1 = drawn(1.02, 25.0) * std::sqrt(gravity * y1);
  return {y1, V1, V1 * y1};
}

RC_GTEST_PROP(RectangularJump, TwiceIsTheStart, ()) {
  const auto in = supercritical_inflow();
  const double y2 = sequent_depth({.y1 = in.y1, .V1 = in.V1});
  RC_ASSERT(y2 > in.y1);
  close(sequent_depth({.y1 = y2, .V1 = in.q / y2}), in.y1, 1e-11);
}

RC_GTEST_PROP(RectangularJump, MomentumBalancesAndTheLossIsEnergyBeforeLessAfter, ()) {
  const auto in = supercritical_inflow();
  const double y2 = sequent_depth({.y1 = in.y1, .V1 = in.V1});
  const Trapezoid strip{1.0, 0.0};
  close(momentum_function(strip, in.q, in.y1), momentum_function(strip, in.q, y2), 1e-9);
  const double before = in.y1 + in.V1 * in.V1 / (2.0 * gravity);
  const double after = y2 + in.q * in.q / (2.0 * gravity * y2 * y2);
  const double loss = jump_energy_loss({.y1 = in.y1, .y2 = y2});
  RC_ASSERT(loss > 0.0);
  RC_ASSERT(std::abs(before - after - loss) < 1e-12 * before);
}

RC_GTEST_PROP(RectangularJump, SequentDepthGrowsWithDischargeAtOneDepth, ()) {
  const auto in = supercritical_inflow();
  const double more = drawn(1.0001, 3.0);
  RC_ASSERT(sequent_depth({.y1 = in.y1, .V1 = in.V1 * more}) > sequent_depth({.y1 = in.y1, .V1 = in.V1}));
}

RC_GTEST_PROP(RectangularJump, LengthsAreFiniteAndNotBelowZero, ()) {
  const auto in = supercritical_inflow();
  const double F1 = froude_number(in.V1, in.y1);
  const double y2 = sequent_depth({.y1 = in.y1, .V1 = in.V1});
  RC_ASSERT(jump_length({.F1 = F1, .y2 = y2}) > 0.0);
  RC_ASSERT(jump_length_hager({.F1 = F1, .y1 = in.y1}) > 0.0);
  RC_ASSERT(roller_length({.F1 = F1, .y1 = in.y1}) >= 0.0);
}

RC_GTEST_PROP(StepJump, BalancesMomentumAndMeetsBelangerWithoutAStep, ()) {
  const auto in = supercritical_inflow();
  const double y2 = sequent_depth({.y1 = in.y1, .V1 = in.V1});
  const auto flat = sequent_depth_over_step({.y1 = in.y1, .V1 = in.V1, .s = 0.0});
  RC_ASSERT(flat.has_value());
  close(*flat, y2, 1e-9);
  const double s = drawn(1e-4, 0.5) * y2;
  const auto over = sequent_depth_over_step({.y1 = in.y1, .V1 = in.V1, .s = s});
  if (!over) RC_DISCARD("choked");
  // Pressure on the face of the step by the level behind it.
  const double before = in.y1 * in.y1 / 2.0 + in.q * in.q / (gravity * in.y1);
  const double after = (*over + s) * (*over + s) / 2.0 + in.q * in.q / (gravity * *over);
  close(before, after, 1e-9);
  RC_ASSERT(*over < y2);
}

struct Channel {
  Trapezoid section;
  double discharge, y1;
};

Channel supercritical_channel(const Trapezoid& section) {
  const double discharge = drawn(0.05, 3000.0);
  const auto critical = critical_depth(section, discharge);
  RC_ASSERT(critical.has_value());
  return {section, discharge, *critical * drawn(0.08, 0.97)};
}

RC_GTEST_PROP(TrapezoidalJump, TwiceIsTheStartAndMomentumBalances, ()) {
  const auto in = supercritical_channel({drawn(0.05, 100.0), drawn(0.01, 5.0)});
  const auto y2 = sequent_depth(in.section, {.y1 = in.y1, .discharge = in.discharge});
  RC_ASSERT(y2.has_value());
  RC_ASSERT(*y2 > in.y1);
  close(momentum_function(in.section, in.discharge, in.y1), momentum_function(in.section, in.discharge, *y2), 1e-9);
  const auto back = sequent_depth(in.section, {.y1 = *y2, .discharge = in.discharge});
  RC_ASSERT(back.has_value());
  close(*back, in.y1, 1e-8);
}

RC_GTEST_PROP(TrapezoidalJump, BecomesTheRectangleAsTheSidesSteepen, ()) {
  const double b = drawn(0.5, 100.0);
  const auto in = supercritical_channel({b, 0.0});
  const auto nearly = sequent_depth(Trapezoid{b, 1e-9}, {.y1 = in.y1, .discharge = in.discharge});
  RC_ASSERT(nearly.has_value());
  close(*nearly, sequent_depth({.y1 = in.y1, .V1 = in.discharge / (b * in.y1)}), 1e-7 * std::max(1.0, *nearly / b));
}

RC_GTEST_PROP(TrapezoidalJump, BecomesTheTriangleAsTheBottomNarrows, ()) {
  const double m = drawn(0.2, 5.0);
  const auto in = supercritical_channel({0.0, m});
  const auto triangle = sequent_depth(in.section, {.y1 = in.y1, .discharge = in.discharge});
  const auto nearly = sequent_depth(Trapezoid{1e-9 * in.y1, m}, {.y1 = in.y1, .discharge = in.discharge});
  RC_ASSERT(triangle.has_value() && nearly.has_value());
  close(*triangle, *nearly, 1e-7);
}

RC_GTEST_PROP(CircularJump, TwiceIsTheStartWhereItDoesNotFill, ()) {
  const Circle pipe{drawn(0.3, 12.0)};
  const double discharge = drawn(0.02, 0.7) * std::sqrt(gravity * std::pow(pipe.D, 5));
  const auto critical = critical_depth(pipe, discharge);
  RC_ASSERT(critical.has_value());
  const double y1 = *critical * drawn(0.3, 0.95);
  const auto y2 = sequent_depth(pipe, {.y1 = y1, .discharge = discharge});
  RC_ASSERT(y2.has_value());
  RC_ASSERT(*y2 > y1);
  if (*y2 >= 0.999 * pipe.D) RC_DISCARD("fills");
  close(momentum_function(pipe, discharge, y1), momentum_function(pipe, discharge, *y2), 1e-9);
}

RC_GTEST_PROP(CriticalDepth, HasItsLimits, ()) {
  const double b = drawn(0.5, 100.0);
  const double m = drawn(0.2, 5.0);
  const double discharge = drawn(0.05, 3000.0);
  const double rectangle = critical_depth(discharge / b);
  const double triangle = std::pow(2.0 * discharge * discharge / (gravity * m * m), 0.2);
  const auto steep = critical_depth(Trapezoid{b, 1e-10}, discharge);
  const auto narrow = critical_depth(Trapezoid{1e-10 * triangle, m}, discharge);
  RC_ASSERT(steep.has_value() && narrow.has_value());
  close(*steep, rectangle, 1e-7);
  close(*narrow, triangle, 1e-7);
}

RC_GTEST_PROP(NormalDepth, CarriesTheDischargeAndGrowsWithIt, ()) {
  const Trapezoid section{drawn(0.1, 200.0), drawn(0.01, 4.0)};
  const double S = drawn(1e-5, 0.05);
  const double n = drawn(0.01, 0.1);
  const double discharge = drawn(0.05, 5000.0);
  const auto depth = normal_depth({section, S, n, discharge});
  const auto more = normal_depth({section, S, n, 1.01 * discharge});
  RC_ASSERT(depth.has_value() && more.has_value());
  const double A = section.area(*depth);
  close(A / n * std::pow(A / section.perimeter(*depth), 2.0 / 3.0) * std::sqrt(S), discharge, 1e-10);
  RC_ASSERT(*more > *depth);
}

RC_GTEST_PROP(DepthFromEnergy, SatisfiesTheEnergyEquationAndIsSupercritical, ()) {
  const double q = drawn(1e-3, 300.0);
  const double cosine = drawn(0.2, 1.0);
  const double E = least_energy(q, cosine) * drawn(1.0001, 2000.0);
  const auto depth = supercritical_depth({.q = q, .E = E, .cosine = cosine});
  RC_ASSERT(depth.has_value());
  RC_ASSERT(*depth < critical_depth_on_slope(q, cosine));
  close(*depth * cosine + q * q / (2.0 * gravity * *depth * *depth), E, 1e-9);
  RC_ASSERT(!supercritical_depth({.q = q, .E = least_energy(q, cosine) * drawn(0.01, 0.999), .cosine = cosine}).has_value());
}

RC_GTEST_PROP(FrictionFactor, SatisfiesColebrook, ()) {
  const double R = drawn(0.005, 10.0);
  const double ks = drawn(1e-6, 0.04) * 4.0 * R;
  const double V = drawn(5e3, 1e8) * water_viscosity / (4.0 * R);
  const double f = friction_factor({.ks = ks, .R = R, .V = V});
  const double right = -2.0 * std::log10(ks / (14.84 * R) + 2.51 * water_viscosity / (4.0 * R * V * std::sqrt(f)));
  close(1.0 / std::sqrt(f), right, 1e-11);
}

}  // namespace
}  // namespace quell::hydraulics
