#include <algorithm>

#include "quell/site/flood_study.h"
#include "quell/site/gates.h"
#include "quell/site/river_study.h"
#include "quell/site/study.h"

namespace quell::site {
namespace {

const RoutedInflow* find_inflow(const Study& study, const std::string& name) {
  const auto found =
      std::find_if(study.inflows.begin(), study.inflows.end(), [&](const RoutedInflow& one) { return one.name == name; });
  return found == study.inflows.end() ? nullptr : &*found;
}

/// Design and check flood from the inflows that are named for them, and every routed flood as one of the site's.
Outcome<void> take_floods(ResolvedSite& resolved) {
  auto& discharges = resolved.site.discharges;
  if (const auto* inflow = find_inflow(resolved.study, discharges.design_inflow))
    discharges.design_flood = inflow->peak_spillway;
  if (const auto* inflow = find_inflow(resolved.study, discharges.check_inflow)) discharges.check_flood = inflow->peak_spillway;
  if (!(discharges.design_flood > 0.0))
    return no_answer("the reservoir holds the design flood back: nothing flows over the spillway");
  if (!(discharges.check_flood > 0.0)) discharges.check_flood = discharges.design_flood;
  if (discharges.check_flood < discharges.design_flood)
    return no_answer("the routed check flood is smaller than the design flood: exchange them, or name a larger one");
  if (!(discharges.smallest > 0.0)) discharges.smallest = 0.05 * discharges.design_flood;
  if (!(discharges.smallest < discharges.design_flood))
    return no_answer("the smallest discharge is not below the design flood that the reservoir lets through");
  for (const auto& inflow : resolved.study.inflows) {
    if (inflow.peak_spillway > discharges.check_flood * (1.0 + 1e-9))
      return no_answer(
          "an inflow leaves the reservoir larger than the check flood: name it in check_inflow, or raise check_flood");
    if (inflow.peak_spillway < discharges.smallest) continue;
    discharges.floods.push_back({inflow.name, inflow.peak_spillway, inflow.return_period, true});
  }
  return {};
}

/// Patterns with those that the program adds; the one with a gate shut stands at the level to which the floods then rise.
void take_patterns(ResolvedSite& resolved) {
  auto& gates = resolved.site.gates;
  if (!gates.given()) return;
  gates.patterns = all_patterns(resolved.site);
  gates.standard_patterns = false;
  double risen = 0.0;
  for (const auto& inflow : resolved.study.inflows) risen = std::max(risen, inflow.one_shut_peak_level);
  for (auto& pattern : gates.patterns)
    if (pattern.is_standard && pattern.name == one_gate_shut && risen > gates.held_level) pattern.level = {risen};
}

/// Discharges in the river for which the tailwater may be asked: the range and the patterns, with and without the outlets.
Outcome<RiverRange> river_range(const Site& site) {
  RiverRange range{site.discharges.smallest, site.discharges.check_flood};
  const auto add = [&](double spillway, double level) {
    range.smallest = std::min(range.smallest, spillway);
    range.largest = std::max(range.largest, spillway + outlets_discharge(site, level, false));
  };
  for (const double discharge : {site.discharges.smallest, site.discharges.check_flood}) {
    const auto level = spillway_level(site, discharge);
    if (!level) return tl::unexpected(level.error());
    add(discharge, *level);
  }
  for (std::size_t i = 0; i < site.gates.patterns.size(); ++i)
    for (const double level : pattern_levels(site, i))
      if (const double discharge = pattern_discharge(site, site.gates.patterns[i], level); discharge > 0.0)
        add(discharge, level);
  range.largest *= 1.0 + 1e-9;
  return range;
}

Outcome<void> take_river(ResolvedSite& resolved) {
  auto& river = resolved.site.river;
  if (!river.degradation_given && river.bed.given) river.bed_degradation = estimate_degradation(river.bed).depth;
  const auto range = river_range(resolved.site);
  if (!range) return tl::unexpected(range.error());
  auto study = study_river(
      river, {{"design flood", resolved.site.discharges.design_flood}, {"check flood", resolved.site.discharges.check_flood}});
  if (!study) return tl::unexpected(study.error());
  resolved.study.river = std::move(*study);
  if (river.source != TailwaterSource::gauging && river.source != TailwaterSource::survey) return {};
  auto table = tabulate_tailwater(river, *range);
  if (!table) return tl::unexpected(table.error());
  if (table->level[index_of(TailwaterCase::high)].back() >= resolved.site.crest.crest_level)
    return no_answer("the river rises to the crest at the check flood: a crest drowned from below is outside this program");
  river.rating = std::move(*table);
  river.source = TailwaterSource::rating;
  river.has_spread = true;
  return {};
}

}  // namespace

Outcome<ResolvedSite> resolve(const Site& site) {
  ResolvedSite resolved{site, {}};
  if (site.floods.record.given()) {
    auto frequency = study_record(site.floods.record);
    if (!frequency) return tl::unexpected(frequency.error());
    resolved.study.frequency = std::move(*frequency);
    resolved.study.has_frequency = true;
  }
  auto inflows = route_inflows(site);
  if (!inflows) return tl::unexpected(inflows.error());
  resolved.study.inflows = std::move(*inflows);
  if (auto taken = take_floods(resolved); !taken) return tl::unexpected(taken.error());
  take_patterns(resolved);
  if (auto taken = take_river(resolved); !taken) return tl::unexpected(taken.error());
  return resolved;
}

}  // namespace quell::site
