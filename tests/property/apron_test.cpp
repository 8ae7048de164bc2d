// The apron level: the governing discharge is the worst, the level is the highest, limits and order do what they say. A few
// hundred sites, on grids of discharges far finer than the design's own.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <vector>

#include "property/invariants.h"
#include "property/random_site.h"
#include "quell/design/apron.h"
#include "quell/design/design.h"

namespace quell::test {
namespace {

using design::ApronSearch;
using design::Option;

/// The search as run_design sets it up, at the width of the option.
struct Searched {
  site::Site site;
  site::ChuteGeometry geometry;
  double lowest = 0.0, highest = 0.0;
  ApronSearch search(const dissipators::Dissipator& type, double width) const {
    return {site, geometry, type, design::setting_of(site, width), lowest, highest};
  }
};

Outcome<Searched> searched(const site::Site& site) {
  Searched result{.site = site, .geometry = {}};
  result.lowest = 2.0 * site.river.bed_level - site.crest.crest_level;
  if (site.basin.has_lowest_apron) result.lowest = std::min(result.lowest, site.basin.lowest_apron_level);
  auto geometry = site::chute_geometry(site, result.lowest - 1.0);
  if (!geometry) return tl::unexpected(geometry.error());
  result.geometry = std::move(*geometry);
  result.highest = result.geometry.last_reach_level - 1e-6;
  if (site.basin.has_highest_apron) result.highest = std::min(result.highest, site.basin.highest_apron_level);
  return result;
}

/// Even steps, and the kinks of the rating, where the margin has corners.
std::vector<design::PreparedCase> fine_grid(const Searched& at, int points) {
  const auto& range = at.site.discharges;
  std::vector<double> discharges;
  for (int i = 0; i <= points; ++i) discharges.push_back(range.smallest + (range.check_flood - range.smallest) * i / points);
  for (const double knot : at.site.river.rating.discharge)
    if (knot > range.smallest && knot < range.check_flood) discharges.push_back(knot);
  std::vector<design::PreparedCase> grid;
  for (const double discharge : discharges)
    if (auto prepared = design::prepare_case(at.site, at.geometry, discharge)) grid.push_back(std::move(*prepared));
  return grid;
}

double least_margin(const ApronSearch& search, const std::vector<design::PreparedCase>& grid, double level) {
  double least = 1e300;
  for (const auto& prepared : grid) least = std::min(least, design::tailwater_margin(search, prepared, level));
  return least;
}

const Finding* find(const Option& option, std::string_view id) {
  for (const auto& finding : option.findings)
    if (finding.id == id) return &finding;
  return nullptr;
}

/// The worst of a fine grid may not undercut the governing margin, and one step higher breaks the requirement there.
struct LevelTally {
  int options = 0, one_step_higher = 0, ceiling = 0, missed = 0, not_highest = 0;
};

void judge_level(const Searched& at, const Option& option, const std::vector<design::PreparedCase>& grid, LevelTally& tally) {
  ++tally.options;
  const auto search = at.search(*option.type, option.width);
  const double worst = least_margin(search, grid, option.apron_level);
  const double allowed = std::max(0.01, 0.005 * option.governing.required_depth);
  if (worst < option.governing.margin - allowed && ++tally.missed <= 5)
    ADD_FAILURE() << option.type->record().id.view() << ": governing margin " << option.governing.margin << " at "
                  << option.governing.discharge << ", the fine grid has " << worst << "\n"
                  << describe(at.site);
  const auto* limits = find(option, "apron.limits");
  if (limits == nullptr || limits->status != Status::ok) return;
  const double higher = option.apron_level + at.site.basin.apron_step;
  if (higher > at.highest) {
    ++tally.ceiling;
    return;
  }
  ++tally.one_step_higher;
  // The grid has gaps, and the governing discharge may lie in one: it is asked too.
  double left = least_margin(search, grid, higher);
  if (const auto governing = design::prepare_case(at.site, at.geometry, option.governing.discharge))
    left = std::min(left, design::tailwater_margin(search, *governing, higher));
  if (left > 0.005 && ++tally.not_highest <= 5)
    ADD_FAILURE() << option.type->record().id.view() << ": level " << option.apron_level << ", but " << higher << " leaves "
                  << left << "\n"
                  << describe(at.site);
}

TEST(ApronLevel, GoverningDischargeIsTheWorstAndTheLevelTheHighest) {
  LevelTally tally;
  const int cases = property_cases(300);
  for (int seed = 1; seed <= cases; ++seed) {
    const auto site =
        random_site(static_cast<std::uint64_t>(seed) + 700000, {.fewest_steps = 2, .most_steps = 40, .width_is_free = false});
    const auto at = searched(site);
    if (!at) continue;
    const auto result = design::run_design(site, {.types = dissipators::catalogue()});
    if (!result) continue;
    const auto grid = fine_grid(*at, std::max(300, 10 * site.discharges.steps));
    for (const auto& option : result->options)
      if (option.sized && option.type->record().level_rule == dissipators::LevelRule::tailwater)
        judge_level(*at, option, grid, tally);
  }
  std::printf("%d options; %d checked one step higher, %d stand at the ceiling; %d governing discharges missed\n",
              tally.options, tally.one_step_higher, tally.ceiling, tally.missed);
  EXPECT_GT(tally.options, 2 * cases);
  EXPECT_GT(tally.one_step_higher, cases / 2);
  EXPECT_EQ(tally.missed, 0);
  EXPECT_EQ(tally.not_highest, 0);
}

TEST(ApronLevel, LoweringTheApronNeverReducesTheMargin) {
  int compared = 0;
  int broken = 0;
  for (int seed = 1; seed <= property_cases(1000); ++seed) {
    const auto site = random_site(static_cast<std::uint64_t>(seed) + 800000, {.width_is_free = false});
    const auto at = searched(site);
    if (!at || !(at->highest > at->lowest)) continue;
    const auto& type = *dissipators::catalogue()[static_cast<std::size_t>(seed) % dissipators::catalogue().size()];
    const auto search = at->search(type, site.basin.width);
    for (const auto& prepared : fine_grid(*at, 3)) {
      double above = design::tailwater_margin(search, prepared, at->highest);
      for (int i = 1; i <= 30; ++i) {
        const double level = at->highest + (at->lowest - at->highest) * i / 30;
        const double margin = design::tailwater_margin(search, prepared, level);
        ++compared;
        if (margin < above - 1e-9 && ++broken <= 5)
          ADD_FAILURE() << type.record().id.view() << " at " << prepared.data.discharge << " m3/s: margin falls from " << above
                        << " to " << margin << " at level " << level << "\n"
                        << describe(site);
        above = margin;
      }
    }
  }
  EXPECT_GT(compared, 10 * property_cases(1000));
  EXPECT_EQ(broken, 0);
}

TEST(ApronLevel, ALimitAboveTheWantedLevelIsSaidToFail) {
  int limited = 0;
  for (int seed = 1; seed <= property_cases(200); ++seed) {
    auto site = random_site(static_cast<std::uint64_t>(seed) + 900000, {.limits = false, .width_is_free = false});
    const auto free = design::run_design(site, {.types = dissipators::catalogue()});
    if (!free) continue;
    for (const auto& option : free->options) {
      const auto* limits = option.sized ? find(option, "apron.limits") : nullptr;
      if (limits == nullptr || limits->status != Status::ok) continue;
      site.basin.has_lowest_apron = true;
      site.basin.lowest_apron_level = option.apron_level + 1.01 * site.basin.apron_step + option.governing.margin * 2.0;
      const dissipators::Dissipator* const type[] = {option.type};
      const auto result = design::run_design(site, {.types = type});
      if (!result || !result->options.front().sized) continue;
      ++limited;
      const auto& held = result->options.front();
      EXPECT_DOUBLE_EQ(held.apron_level, site.basin.lowest_apron_level);
      EXPECT_EQ(find(held, "apron.limits")->status, Status::fails) << describe(site);
      EXPECT_EQ(find(held, "tailwater.margin")->status, Status::fails) << describe(site);
      EXPECT_LT(held.governing.margin, 0.0);
      EXPECT_FALSE(result->all_requirements_met);
    }
  }
  EXPECT_GT(limited, property_cases(200));
}

TEST(ApronLevel, TypesDoNotInfluenceEachOther) {
  std::vector<const dissipators::Dissipator*> backward(dissipators::catalogue().begin(), dissipators::catalogue().end());
  std::reverse(backward.begin(), backward.end());
  int compared = 0;
  for (int seed = 1; seed <= property_cases(200); ++seed) {
    const auto site = random_site(static_cast<std::uint64_t>(seed) + 950000);
    const auto one = design::run_design(site, {.types = dissipators::catalogue()});
    const auto two = design::run_design(site, {.types = backward});
    ASSERT_EQ(one.has_value(), two.has_value()) << describe(site);
    if (!one) continue;
    for (std::size_t i = 0; i < one->options.size(); ++i) {
      const auto& a = one->options[i];
      const auto& b = two->options[one->options.size() - 1 - i];
      ASSERT_EQ(a.type, b.type);
      EXPECT_EQ(a.sized, b.sized);
      EXPECT_EQ(a.apron_level, b.apron_level) << describe(site);
      EXPECT_EQ(a.length, b.length);
      EXPECT_EQ(a.quantities.concrete, b.quantities.concrete);
      EXPECT_EQ(a.governing.discharge, b.governing.discharge);
      EXPECT_EQ(a.findings.size(), b.findings.size());
      ++compared;
    }
    if (one->chosen >= 0 && two->chosen >= 0) {
      const auto& a = one->options[static_cast<std::size_t>(one->chosen)];
      const auto& b = two->options[static_cast<std::size_t>(two->chosen)];
      EXPECT_TRUE(a.type == b.type || a.quantities.concrete == b.quantities.concrete) << describe(site);
    }
  }
  EXPECT_GT(compared, 2 * property_cases(200));
}

}  // namespace
}  // namespace quell::test
