// Properties of surveyed river sections: the table of layers against the polygon itself, the parts against the whole, critical
// and normal level, and sections between two others.
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cmath>
#include <vector>

#include "draws.h"
#include "quell/hydraulics/composite_roughness.h"
#include "quell/hydraulics/river_section.h"
#include "quell/hydraulics/roughness_parts.h"
#include "quell/hydraulics/section.h"
#include "quell/hydraulics/section_tabulated.h"

namespace quell::hydraulics {
namespace {
using draws::close;
using draws::drawn;

double between(double low, double high) {
  return low + (high - low) * *rc::gen::resize(rc::kNominalSize, rc::gen::inRange(0, 1000001)) * 1e-6;
}

/// A river of 8 to 30 points with vertical steps and, unless refused, level berms; ends above all, banks anywhere.
SurveyedSection river(bool berms = true) {
  const int points = *rc::gen::inRange(8, 31);
  SurveyedSection survey{.manning_n = {drawn(0.03, 0.1), drawn(0.02, 0.05), drawn(0.03, 0.1)}};
  survey.x = {0.0};
  survey.z = {112.0};
  bool upright = true;  // no two steps in a row: they would be a slot without width
  for (int i = 1; i < points; ++i) {
    const int kind = *rc::gen::inRange(0, 6);
    upright = kind == 0 && i > 1 && !upright;
    survey.x.emplace_back(survey.x.back() + (upright ? 0.0 : drawn(0.5, 20.0)));
    survey.z.emplace_back(berms && kind == 1 && i > 1 ? survey.z.back() : between(100.0, 108.0));
  }
  survey.x.emplace_back(survey.x.back() + 1.0);
  survey.z.emplace_back(112.0);
  survey.left_bank = survey.x.back() * between(0.0, 0.45);
  survey.right_bank = survey.x.back() * between(0.55, 1.0);
  return survey;
}

RC_GTEST_PROP(RiverSection, HoldsTheWaterOfThePolygon, ()) {
  const SurveyedSection survey = river();
  const auto section = RiverSection::of(survey);
  const auto polygon = TabulatedSection::of(survey.x, survey.z);
  RC_ASSERT(section.has_value() && polygon.has_value());
  const double depth = drawn(0.01, 20.0);
  const auto water = section->at_level(section->lowest_level() + depth);
  const auto wetted = polygon->wetted(depth);
  close(water.area, wetted.area, 1e-9);
  close(water.top_width, wetted.top_width, 1e-9);
  close(water.perimeter, wetted.perimeter, 1e-9);
  close(water.first_moment, wetted.first_moment, 1e-9);
  close(water.part_area[0] + water.part_area[1] + water.part_area[2], water.area, 1e-12);
  close(water.part_conveyance[0] + water.part_conveyance[1] + water.part_conveyance[2], water.conveyance, 1e-12);
  RC_ASSERT(water.alpha >= 1.0 - 1e-12 && water.beta >= 1.0 - 1e-12 && water.alpha >= water.beta - 1e-12);
}

RC_GTEST_PROP(RiverSection, IsOneSectionWithoutPlains, ()) {
  SurveyedSection survey = river();
  survey.left_bank = survey.x.front();
  survey.right_bank = survey.x.back();
  const auto section = RiverSection::of(survey, 1.3);
  RC_ASSERT(section.has_value());
  const double level = section->lowest_level() + drawn(0.01, 20.0);
  const double Q = drawn(1.0, 3000.0);
  const auto water = section->at_level(level);
  close(water.conveyance, conveyance(water.area, water.perimeter, 1.3 * survey.manning_n[1]), 1e-9);
  close(water.alpha, 1.0, 1e-12);
  close(section->froude_squared(level, Q), Q * Q * water.top_width / (gravity * std::pow(water.area, 3)), 1e-9);
}

RC_GTEST_PROP(RiverSection, PartsTheChannelByHortonAndThePlainsByDischarge, ()) {
  // A level bed under vertical walls: the parts are rectangles.
  const double depth = drawn(0.1, 10.0);
  const double n[] = {drawn(0.02, 0.1), drawn(0.02, 0.1), drawn(0.02, 0.1), drawn(0.02, 0.1)};
  SurveyedSection survey{.x = {0.0, 0.0, 80.0, 80.0},
                         .z = {20.0, 0.0, 0.0, 20.0},
                         .left_bank = 40.0,
                         .right_bank = 80.0,
                         .zone_start = {0.0, 10.0, 40.0, 65.0},
                         .zone_n = {n[0], n[1], n[2], n[3]}};
  const auto section = RiverSection::of(survey);
  RC_ASSERT(section.has_value());
  const auto water = section->at_level(depth);
  const RoughPart channel[] = {{25.0, n[2]}, {15.0 + depth, n[3]}};
  close(water.part_conveyance[0], conveyance(10.0 * depth, 10.0 + depth, n[0]) + conveyance(30.0 * depth, 30.0, n[1]), 1e-9);
  close(water.part_conveyance[1], conveyance(40.0 * depth, 40.0 + depth, composite_roughness(channel)), 1e-9);
}

RC_GTEST_PROP(RiverSection, HasTheSlopeOfItsEnergy, ()) {
  const auto section = RiverSection::of(river());
  RC_ASSERT(section.has_value());
  const double level = section->lowest_level() + drawn(0.5, 12.0);
  const double Q = drawn(10.0, 3000.0);
  const double h = 1e-5;
  for (const double z : section->z()) RC_PRE(std::abs(z - level) > 2.0 * h);
  const double slope = (section->energy_level(level + h, Q) - section->energy_level(level - h, Q)) / (2.0 * h);
  RC_ASSERT(std::abs(1.0 - section->froude_squared(level, Q) - slope) <= 2e-4 * std::max(1.0, std::abs(slope)));
}

RC_GTEST_PROP(CriticalLevel, HasTheLeastEnergyOfAll, ()) {
  const auto section = RiverSection::of(river(false));  // where a level berm is wetted, the energy leaps
  RC_ASSERT(section.has_value());
  const double Q = drawn(1.0, 5000.0);
  const auto level = section->critical_level(Q);
  const auto levels = section->critical_levels(Q);
  RC_ASSERT(level.has_value() && levels.has_value());
  RC_ASSERT(*level == levels->level && levels->count >= 1);
  const double least = section->energy_level(*level, Q);
  for (int i = 1; i <= 400; ++i) {
    const double other = section->lowest_level() + 0.05 * i;
    RC_ASSERT(section->energy_level(other, Q) >= least - 1e-6);
  }
}

RC_GTEST_PROP(NormalLevel, CarriesTheDischargeAndRisesWithRoughness, ()) {
  const SurveyedSection survey = river();
  const auto section = RiverSection::of(survey);
  const auto rougher = RiverSection::of(survey, 1.2);
  RC_ASSERT(section.has_value() && rougher.has_value());
  const double Q = drawn(1.0, 3000.0);
  const double slope = drawn(1e-4, 0.02);
  const auto level = section->normal_level(Q, slope);
  const auto higher = rougher->normal_level(Q, slope);
  RC_ASSERT(level.has_value() && higher.has_value());
  close(section->at_level(*level).conveyance * std::sqrt(slope), Q, 1e-7);
  RC_ASSERT(*higher > *level);
}

RC_GTEST_PROP(Lowering, MovesOnlyTheChannel, ()) {
  const SurveyedSection survey{.x = {0, 20, 60, 70, 90, 100, 150, 170},
                               .z = {105, 103, 102.5, 99, 99, 102.6, 103.2, 105},
                               .left_bank = 60,
                               .right_bank = 100,
                               .manning_n = {0.06, 0.035, 0.05}};
  const double lowering = drawn(0.01, 2.0);
  const auto section = RiverSection::of(survey);
  const auto lower = RiverSection::of(survey, 1.0, lowering);
  RC_ASSERT(section.has_value() && lower.has_value());
  close(lower->lowest_level(), 99.0 - lowering, 1e-12);
  const auto before = section->at_level(104.0);
  const auto after = lower->at_level(104.0);
  close(before.part_area[0], after.part_area[0], 1e-9);
  close(before.part_area[2], after.part_area[2], 1e-9);
  // Between the toes the whole, along the banks the half.
  close(after.part_area[1] - before.part_area[1], lowering * (20.0 + 0.5 * 20.0), 1e-9);
}

RC_GTEST_PROP(Interpolation, ReturnsTheEndsAndTheTrapezoidBetweenTwo, ()) {
  const auto first = RiverSection::of(river());
  const auto second = RiverSection::of(river());
  RC_ASSERT(first.has_value() && second.has_value());
  const auto start = RiverSection::interpolated(*first, *second, 0.0);
  const auto end = RiverSection::interpolated(*first, *second, 1.0);
  const auto middle = RiverSection::interpolated(*first, *second, 0.5);
  RC_ASSERT(start.has_value() && end.has_value() && middle.has_value());
  const double level = drawn(101.0, 111.0);
  RC_PRE(level > first->lowest_level() && level > second->lowest_level());
  close(start->at_level(level).area, first->at_level(level).area, 1e-9);
  close(end->at_level(level).area, second->at_level(level).area, 1e-9);
  close(start->at_level(level).first_moment, first->at_level(level).first_moment, 1e-9);

  const auto trapezoid = [](double b, double m, double z) {
    return RiverSection::of({.x = {-b / 2 - 20 * m, -b / 2, b / 2, b / 2 + 20 * m},
                             .z = {z + 20, z, z, z + 20},
                             .left_bank = -b / 2 - 20 * m,
                             .right_bank = b / 2 + 20 * m,
                             .manning_n = {0.03, 0.03, 0.03}});
  };
  const double y = drawn(0.1, 15.0);
  const auto between_two = RiverSection::interpolated(*trapezoid(10, 1, 100), *trapezoid(30, 3, 104), 0.25);
  RC_ASSERT(between_two.has_value());
  close(between_two->at_level(101.0 + y).area, Trapezoid{15.0, 1.5}.area(y), 1e-9);
  RC_ASSERT(!RiverSection::interpolated(*first, *second, 1.5).has_value());
}

RC_GTEST_PROP(CompositeRoughness, AgreesInAllRulesWhereThePartsAgree, ()) {
  const double n = drawn(0.01, 0.15);
  const double y = drawn(0.1, 10.0);
  RoughStrip strips[3];
  for (RoughStrip& strip : strips) {
    const double P = drawn(0.5, 50.0);
    strip = {.A = P * y, .P = P, .y = y, .n = n};
  }
  const auto same = roughness_spread(strips);
  close(same.lowest, n, 1e-12);
  close(same.highest, n, 1e-12);
  strips[1].n *= 1.5;
  const auto apart = roughness_spread(strips);
  RC_ASSERT(apart.lowest >= n && apart.highest <= 1.5 * n && apart.lowest <= apart.mean && apart.mean <= apart.highest);
  // Means of growing power over the same weights: the discharges, the velocities, the forces.
  RC_ASSERT(roughness_felkel(strips) <= roughness_pavlovskii(strips));
}

RC_GTEST_PROP(RiverSection, RefusesWhatIsNoSection, ()) {
  SurveyedSection survey = river();
  RC_ASSERT(!RiverSection::of(survey, -drawn(0.1, 10.0)).has_value());
  std::swap(survey.left_bank, survey.right_bank);
  const auto turned = RiverSection::of(survey);
  RC_ASSERT(!turned.has_value());
  RC_ASSERT(turned.error().symbol == "xl" || turned.error().symbol == "xr");
  const auto section = RiverSection::of(river());
  RC_ASSERT(section->normal_level(10.0, -1e-3).error().symbol == "S");
  RC_ASSERT(section->critical_level(-1.0).error().symbol == "Q");
  RC_ASSERT(section->at_level(section->lowest_level()).area == 0.0);
}

}  // namespace
}  // namespace quell::hydraulics
