// Random sites with gates, outlets, a reservoir and an inflow: what the operation may not do, and what the design keeps.
#include <gtest/gtest.h>

#include <cmath>

#include "property/invariants.h"
#include "property/random_site.h"
#include "quell/design/design.h"
#include "quell/site/gates.h"
#include "quell/site/reservoir.h"

namespace quell::test {
namespace {

/// A random ogee with gates over its crest; a rule by level for half of them.
site::Site gated_site(Random& random, std::uint64_t seed) {
  auto site = random_site(seed, {.fewest_steps = 4, .most_steps = 5, .limits = false, .width_is_free = false});
  if (site.crest.shape != site::CrestShape::ogee) return site;
  auto& gates = site.gates;
  const double head = site.crest.design_head;
  gates.count = random.whole(1, 5);
  gates.bay_width = site.crest.net_width / gates.count;
  site.crest.piers = gates.count - 1;
  gates.full_opening = head * random.between(0.8, 1.3);
  gates.seat_level = site.crest.crest_level;
  gates.held_level = site.crest.crest_level + head * random.between(0.3, 1.0);
  gates.coefficient = random.between(0.55, 0.7);
  if (random.chance(0.5)) {
    const int steps = random.whole(1, 4);
    for (int i = 1; i <= steps; ++i) {
      const double opening = gates.full_opening * i / steps;
      gates.patterns.push_back({.name = "step " + std::to_string(i),
                                .opening = std::vector<double>(static_cast<std::size_t>(gates.count), opening)});
      const double level = gates.held_level + 0.1 * head * i / steps;
      gates.rules.push_back({static_cast<std::size_t>(i - 1), level, level - 0.15 * head});
    }
  }
  return site;
}

void give_inflow(site::Site& site, Random& random) {
  const double crest = site.crest.crest_level;
  const double area = random.log_between(1e5, 2e7);
  site.reservoir.level = {crest - 10.0, crest, crest + 20.0};
  site.reservoir.area = {0.6 * area, area, 1.5 * area};
  site.floods.inflows = {{.name = "flood",
                          .shape = site::InflowShape::gamma,
                          .peak = random.between(0.3, 0.95) * site.discharges.check_flood,
                          .time_to_peak = random.between(2.0, 20.0) * 3600.0,
                          .exponent = random.between(1.5, 8.0)}};
}

TEST(GatedSite, KeepsItsLevelItsBalanceAndItsInvariants) {
  int designs = 0;
  for (int i = 0; i < property_cases(1500); ++i) {
    const auto seed = static_cast<std::uint64_t>(910000 + i);
    Random random(seed);
    auto site = gated_site(random, seed);
    if (!site.gates.given()) continue;
    if (random.chance(0.5)) give_inflow(site, random);
    const auto types = dissipators::catalogue().first(1);
    const auto result = design::run_design(site, {.types = types});
    if (!result) continue;  // a random rating may not reach a pattern's discharge, or the apron finds no room
    ++designs;
    SCOPED_TRACE("seed " + std::to_string(seed));
    ASSERT_EQ(broken_invariant(result->resolved.site, *result), "");
    for (const auto& one : result->cases) ASSERT_GE(one.reservoir_level, site.gates.held_level - 1e-9);
    for (const auto& flood : result->resolved.study.inflows) {
      ASSERT_LT(std::abs(flood.balance_error), 1e-9);
      // Without a rule the gates hold the level: they never pass more than has flowed in at most. A step keeps 1e-5 m of level,
      // and over the band in which they open that is 1e-4 of the discharge.
      if (site.gates.rules.empty()) {
        ASSERT_LE(flood.peak_outflow, flood.peak_inflow * (1.0 + 1e-3));
      }
    }
    for (const auto& pattern : result->pattern_cases) {
      ASSERT_GT(pattern.discharge, 0.0);
      ASSERT_LE(pattern.discharge,
                site::crest_discharge(site.crest, pattern.reservoir_level - site.crest.crest_level) * (1.0 + 1e-9));
    }
    for (const auto& option : result->options)
      for (const auto& one : option.pattern_cases) {
        ASSERT_TRUE(std::isfinite(one.margin) && std::isfinite(one.toe.y2) && std::isfinite(one.position.front));
        ASSERT_GT(one.toe.F1, 1.0);
      }
  }
  // Most of the gated sites have a design: the assertions above were asked.
  EXPECT_GT(designs, property_cases(1500) / 10);
  std::printf("%d designs\n", designs);
}

TEST(GatedSite, DesignPatternsKeepTheirTailwater) {
  for (int i = 0; i < property_cases(600); ++i) {
    const auto seed = static_cast<std::uint64_t>(930000 + i);
    Random random(seed);
    const auto site = gated_site(random, seed);
    if (!site.gates.given() || site.gates.rules.empty()) continue;
    const auto result = design::run_design(site, {.types = dissipators::catalogue().first(1)});
    if (!result || !result->options[0].sized) continue;
    const auto& option = result->options[0];
    bool short_anyway = false;
    for (const auto& finding : option.findings)
      short_anyway = short_anyway || (finding.id == "apron.limits" && finding.status == Status::fails);
    if (short_anyway) continue;
    for (std::size_t k = 0; k < option.pattern_cases.size(); k += 3) {
      if (result->pattern_cases[k / 3].is_check) continue;
      EXPECT_GE(option.pattern_cases[k].margin, -1e-4) << "seed " << seed;
    }
  }
}

}  // namespace
}  // namespace quell::test
