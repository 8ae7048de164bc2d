// Invented rivers that the property tests of profiles share.
#pragma once

#include <gtest/gtest.h>

#include <memory>
#include <vector>

#include "quell/hydraulics/river_profile.h"

namespace quell::hydraulics::river_models {

/// Sections that stations can point to.
struct River {
  std::vector<std::unique_ptr<RiverSection>> sections;
  std::vector<RiverStation> stations;
  void add(double station, const SurveyedSection& survey) {
    auto section = RiverSection::of(survey);
    ASSERT_TRUE(section.has_value());
    sections.emplace_back(std::make_unique<RiverSection>(std::move(*section)));
    const double length = stations.empty() ? 0.0 : station - stations.back().station;
    stations.emplace_back(RiverStation{sections.back().get(), station, {length, length, length}});
  }
};

inline SurveyedSection trapezoid(double b, double m, double z, double n) {
  const double reach = b / 2.0 + 40.0 * m;
  return {.x = {-reach, -b / 2.0, b / 2.0, reach},
          .z = {z + 40.0, z, z, z + 40.0},
          .left_bank = -reach,
          .right_bank = reach,
          .manning_n = {n, n, n}};
}

inline SurveyedSection compound(double widening, double z) {
  return {.x = {0, 20, 60, 70, 90 + widening, 100 + widening, 150 + widening, 170 + widening},
          .z = {z + 6, z + 4, z + 3.5, z, z, z + 3.6, z + 4.2, z + 6},
          .left_bank = 60,
          .right_bank = 100 + widening,
          .manning_n = {0.06, 0.035, 0.05}};
}

inline RiverBoundary at_level(double level) {
  return {.kind = RiverBoundary::Kind::known_level, .value = level};
}

}  // namespace quell::hydraulics::river_models
