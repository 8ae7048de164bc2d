// A hundred thousand random sites through the whole design, each asked for everything that is cheap to ask.
#include <gtest/gtest.h>

#include <cstdio>
#include <map>
#include <string>
#include <vector>

#include "property/invariants.h"
#include "property/random_site.h"
#include "quell/design/design.h"
#include "quell/site/crest_foot.h"

namespace quell::test {
namespace {

/// Energy down the chute for the case of the middle of the range.
std::string energy_of_middle_case(const site::Site& site, const design::DesignResult& result) {
  const auto& middle = result.cases[result.cases.size() / 2];
  if (!result.options.front().sized) return {};
  const double level = result.options.front().apron_level;
  const auto geometry = site::chute_geometry(site, level - 1.0);
  if (!geometry) return {};
  const auto flow = site::ChuteFlow::compute(*geometry, middle.discharge,
                                             site::start_energy_level(site, middle.discharge, middle.reservoir_level));
  if (!flow) return "chute: no answer where the design had one";
  return rising_energy(*flow, level, 40);
}

struct Tally {
  std::map<std::string, int> outcomes, not_sized;
  int sites = 0, designs = 0, options = 0, sized = 0, short_of_tailwater = 0, free_of_failures = 0, broken = 0;

  void count(const design::DesignResult& result) {
    ++designs;
    for (const auto& option : result.options) {
      ++options;
      if (!option.sized) {
        ++not_sized[option.statement.substr(0, option.statement.find("{{"))];  // without its numbers
        continue;
      }
      ++sized;
      for (const auto& finding : option.findings)
        if (finding.id == "tailwater.margin" && finding.status == Status::fails) ++short_of_tailwater;
      if (worst_status(option.findings) != Status::fails) ++free_of_failures;
    }
  }

  void print() const {
    std::printf("%d sites: %d designs; %d options, %d sized, %d of them short of tailwater, %d without a failing finding\n",
                sites, designs, options, sized, short_of_tailwater, free_of_failures);
    for (const auto& [reason, number] : outcomes) std::printf("  %6d no design: %s\n", number, reason.c_str());
    for (const auto& [reason, number] : not_sized) std::printf("  %6d not sized: %s\n", number, reason.c_str());
  }
};

/// So that the run stays below two minutes: one site in 80 takes all types and up to eight discharges, the others one type
/// in turn and five; nineteen sites in twenty have deep flow on a smooth chute, whose water profiles are cheap.
void run_site(int seed, Tally& tally) {
  const auto types = dissipators::catalogue();
  const bool all = seed % 80 == 0;
  SiteWishes wishes;
  wishes.most_steps = all ? 8 : 5;
  wishes.width_is_free = all;
  wishes.deep_flow = seed % 20 != 0;
  wishes.held_lengths = true;
  const auto site = random_site(static_cast<std::uint64_t>(seed), wishes);
  const auto result =
      design::run_design(site, {.types = all ? types : types.subspan(static_cast<std::size_t>(seed / 20) % types.size(), 1)});
  ++tally.sites;
  if (!result) {
    ++tally.outcomes[std::string(result.error().reason)];
    return;
  }
  tally.count(*result);
  std::string broken = broken_invariant(site, *result);
  if (broken.empty()) broken = energy_of_middle_case(site, *result);
  if (broken.empty()) return;
  if (++tally.broken <= 10) ADD_FAILURE() << broken << "\n" << describe(site);
}

TEST(SiteSweep, EveryDesignKeepsItsInvariants) {
  Tally tally;
  const int cases = property_cases(100000);
  for (int seed = 1; seed <= cases; ++seed) run_site(seed, tally);
  tally.print();
  EXPECT_EQ(tally.broken, 0);
  EXPECT_EQ(tally.sites, cases);
  // The sites must exercise the engine: most give a design, and all kinds of end occur where the run is long enough.
  EXPECT_GT(tally.designs, 0.85 * tally.sites);
  EXPECT_GT(tally.sized, 0.85 * tally.options);
  // Many types serve small structures or special tailwater only, and two are screened: most options have a rule that excludes
  // them.
  EXPECT_GT(tally.free_of_failures, 0.15 * tally.options);
  if (cases >= 5000) {
    EXPECT_GT(tally.short_of_tailwater, 0);
    EXPECT_FALSE(tally.outcomes.empty());
  }
}

}  // namespace
}  // namespace quell::test
