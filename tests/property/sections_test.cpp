// Properties of sections: geometry against integration of the width, energy and momentum least at critical depth, surveyed
// sections against those with a formula.
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <array>
#include <boost/math/quadrature/gauss_kronrod.hpp>
#include <cmath>
#include <vector>

#include "property/draws.h"
#include "quell/hydraulics/jump_tabulated.h"
#include "quell/hydraulics/section_shapes.h"
#include "quell/hydraulics/section_tabulated.h"
#include "quell/hydraulics/specific_energy.h"

namespace quell::hydraulics {
namespace {

using draws::close;
using draws::drawn;

double quadrature(const auto& f, double from, double to) {
  return boost::math::quadrature::gauss_kronrod<double, 61>::integrate(f, from, to, 15, 1e-13);
}

/// Area and first moment are the integrals of width and area.
void integrates(const auto& section, double y, double relative) {
  close(section.area(y), quadrature([&](double z) { return section.top_width(z); }, 0.0, y), relative);
  close(section.first_moment(y), quadrature([&](double z) { return section.area(z); }, 0.0, y), relative);
}

RC_GTEST_PROP(SectionGeometry, IsTheIntegralOfTheWidth, ()) {
  const double y = drawn(0.05, 20.0);
  integrates(Trapezoid{drawn(0.05, 100.0), drawn(0.01, 5.0)}, y, 1e-10);
  integrates(Circle{y * drawn(1.001, 10.0)}, y, 1e-7);  // the width starts with a root
  integrates(PowerSection{.a = drawn(1.0, 3.0), .Tr = drawn(0.1, 50.0), .yr = drawn(0.1, 10.0)}, y, 1e-6);
}

/// F = 1 there, and energy and momentum are greater on both sides.
void is_critical(const auto& section, double discharge, double yc) {
  close(froude_number(section, discharge, yc), 1.0, 1e-9);
  for (const double y : {0.98 * yc, 1.02 * yc}) {
    RC_ASSERT(specific_energy(section, discharge, y) > specific_energy(section, discharge, yc));
    RC_ASSERT(momentum_function(section, discharge, y) > momentum_function(section, discharge, yc));
  }
}

RC_GTEST_PROP(CriticalDepth, MakesEnergyAndMomentumLeast, ()) {
  const double discharge = drawn(0.05, 3000.0);
  const Trapezoid trapezoid{drawn(0.05, 100.0), drawn(0.01, 5.0)};
  is_critical(trapezoid, discharge, critical_depth(trapezoid, discharge).value());
  const PowerSection power{.a = drawn(1.0, 3.0), .Tr = drawn(0.1, 50.0), .yr = drawn(0.1, 10.0)};
  is_critical(power, discharge, critical_depth(power, discharge).value());
  const Circle pipe{drawn(0.3, 12.0)};
  const double in_pipe = drawn(0.02, 0.7) * std::sqrt(gravity * std::pow(pipe.D, 5));
  is_critical(pipe, in_pipe, critical_depth(pipe, in_pipe).value());
}

RC_GTEST_PROP(CriticalDepth, OfAPowerSectionMeetsRectangleAndTriangle, ()) {
  const double discharge = drawn(0.05, 3000.0);
  const double size = drawn(0.2, 50.0);
  close(critical_depth(PowerSection{.a = 1.0, .Tr = size}, discharge).value(), critical_depth(discharge / size), 1e-12);
  close(critical_depth(PowerSection{.a = 2.0, .Tr = 2.0 * size}, discharge).value(),
        critical_depth(Trapezoid{0.0, size}, discharge).value(), 1e-11);
}

RC_GTEST_PROP(AlternateDepths, HaveOneEnergyOnEitherSideOfCriticalDepth, ()) {
  const double q = drawn(1e-3, 300.0);
  const double yc = critical_depth(q);
  const double E = 1.5 * yc * drawn(1.0001, 2000.0);
  const auto depths = alternate_depths(q, E);
  RC_ASSERT(depths.has_value());
  RC_ASSERT(depths->supercritical < yc && yc < depths->subcritical);
  const Trapezoid strip{1.0, 0.0};
  close(specific_energy(strip, q, depths->subcritical), E, 1e-12);
  close(specific_energy(strip, q, depths->supercritical), E, 1e-10);
  RC_ASSERT(!alternate_depths(q, 1.5 * yc * drawn(0.01, 0.999)).has_value());
}

RC_GTEST_PROP(TabulatedSection, IsTheTrapezoidWhereItIsOne, ()) {
  const double b = drawn(0.5, 100.0);
  const double m = drawn(0.05, 5.0);
  const double discharge = drawn(0.05, 3000.0);
  const Trapezoid trapezoid{b, m};
  const double yc = critical_depth(trapezoid, discharge).value();
  const double y1 = yc * drawn(0.08, 0.97);
  const double y2 = sequent_depth(trapezoid, {.y1 = y1, .discharge = discharge}).value();
  const double high = 1.5 * y2;
  const double base = drawn(1.0, 1000.0);
  const std::array x{0.0, m * high, m * high + b, 2.0 * m * high + b};
  const std::array z{base + high, base, base, base + high};
  const auto section = TabulatedSection::of(x, z);
  RC_ASSERT(section.has_value());
  const double slack = 1e-9 + 1e-14 * base / y1;  // levels on a high datum lose digits
  close(section->area(y1), trapezoid.area(y1), slack);
  close(section->wetted(y1).perimeter, trapezoid.perimeter(y1), slack);
  const auto critical = critical_depths(*section, discharge);
  RC_ASSERT(critical.has_value() && critical->count == 1);
  close(critical->least_energy, yc, slack);
  const auto found = sequent_depth(*section, {.y1 = y1, .discharge = discharge});
  RC_ASSERT(found.has_value() && found->count == 1);
  close(found->y2, y2, 10.0 * slack);
}

/// Random banks: points from left to right with any levels, vertical steps and level berms among them.
struct Survey {
  std::vector<double> x, z;
};

Survey random_survey() {
  Survey survey;
  const int points = *rc::gen::inRange(3, 12);
  double x = 0.0;
  for (int i = 0; i < points; ++i) {
    survey.x.emplace_back(x);
    survey.z.emplace_back(0.5 * *rc::gen::inRange(0, 12));  // half metres: level panels come often
    if (i == 0 || *rc::gen::inRange(0, 4) > 0) x += drawn(0.1, 20.0);
  }
  return survey;
}

RC_GTEST_PROP(TabulatedSection, HasItsCriticalDepthAtTheLeastEnergy, ()) {
  const Survey survey = random_survey();
  const double discharge = drawn(0.1, 2000.0);
  const auto section = TabulatedSection::of(survey.x, survey.z);
  RC_ASSERT(section.has_value());
  const auto critical = critical_depths(*section, discharge);
  RC_ASSERT(critical.has_value());
  close(froude_number(*section, discharge, critical->least_energy), 1.0, 1e-6);
  const double least = specific_energy(*section, discharge, critical->least_energy);
  for (double y = 0.05 * critical->least_energy; y < 20.0 * critical->least_energy; y *= 1.01)
    RC_ASSERT(specific_energy(*section, discharge, y) > least * (1.0 - 1e-12));
}

RC_GTEST_PROP(TabulatedSection, JumpsToTheFirstDepthOfEqualMomentumAndLosesEnergy, ()) {
  const Survey survey = random_survey();
  const double discharge = drawn(0.1, 2000.0);
  const auto section = TabulatedSection::of(survey.x, survey.z);
  RC_ASSERT(section.has_value());
  const double y1 = critical_depths(*section, discharge).value().least_energy * drawn(0.1, 2.0);
  const auto found = sequent_depth(*section, {.y1 = y1, .discharge = discharge});
  RC_ASSERT(found.has_value() == (froude_number(*section, discharge, y1) > 1.0));
  if (!found) return;
  const double target = momentum_function(*section, discharge, y1);
  close(momentum_function(*section, discharge, found->y2), target, 1e-9);
  RC_ASSERT(specific_energy(*section, discharge, found->y2) < specific_energy(*section, discharge, y1));
  for (int i = 1; i < 200; ++i) {
    const double y = y1 + (found->y2 - y1) * i / 200.0;
    RC_ASSERT(momentum_function(*section, discharge, y) < target);
  }
}

/// Channel 4 m wide and 1 m deep between flood plains of 20 m.
const std::array compound_x{0.0, 0.0, 20.0, 20.0, 24.0, 24.0, 44.0, 44.0};
const std::array compound_z{3.0, 1.0, 1.0, 0.0, 0.0, 1.0, 1.0, 3.0};

TEST(CompoundSection, HasTwoCriticalDepthsForSomeDischarges) {
  const auto section = TabulatedSection::of(compound_x, compound_z);
  ASSERT_TRUE(section.has_value());
  // In the channel (Q/4)^(2/3)/g^(1/3), least energy 1.5 times that; over the plains more, by a scan outside the program.
  EXPECT_EQ(critical_depths(*section, 8.0)->count, 2);
  EXPECT_NEAR(critical_depths(*section, 8.0)->least_energy, critical_depth(2.0), 1e-12);
  EXPECT_EQ(critical_depths(*section, 12.0)->count, 2);
  EXPECT_NEAR(critical_depths(*section, 12.0)->least_energy, 1.10554, 2e-5);
  EXPECT_EQ(critical_depths(*section, 40.0)->count, 1);
}

TEST(CompoundSection, MayHaveTwoSequentDepths) {
  const auto section = TabulatedSection::of(compound_x, compound_z);
  ASSERT_TRUE(section.has_value());
  const double y1 = 0.70;
  const auto found = sequent_depth(*section, {.y1 = y1, .discharge = 8.0});
  ASSERT_TRUE(found.has_value());
  // Below the berm it is the rectangular channel.
  EXPECT_NEAR(found->y2, sequent_depth(Trapezoid{4.0, 0.0}, {.y1 = y1, .discharge = 8.0}).value(), 1e-9);
  EXPECT_EQ(found->count, 2);
}

TEST(TabulatedSectionPoints, AreRefusedWhereTheyMakeNoSection) {
  const std::array forth{0.0, 1.0, 2.0};
  const std::array back{0.0, 2.0, 1.0};
  const std::array still{1.0, 1.0, 1.0};
  const std::array levels{1.0, 0.0, 1.0};
  EXPECT_TRUE(TabulatedSection::of(forth, levels).has_value());
  EXPECT_FALSE(TabulatedSection::of(back, levels).has_value());
  EXPECT_FALSE(TabulatedSection::of(still, levels).has_value());
  EXPECT_FALSE(TabulatedSection::of(std::span(forth).first(2), levels).has_value());
  EXPECT_FALSE(TabulatedSection::of(std::span(forth).first(1), std::span(levels).first(1)).has_value());
}

}  // namespace
}  // namespace quell::hydraulics
