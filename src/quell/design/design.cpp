#include "quell/design/design.h"

#include <algorithm>
#include <numeric>

#include "quell/base/quantity_text.h"
#include "quell/design/option.h"

namespace quell::design {
namespace {

/// How deep an apron is looked for: as far below the river bed as the crest stands above it, or the user's limit where that is
/// lower.
double search_floor(const site::Site& site) {
  const double depth = site.river.bed_level - (site.crest.crest_level - site.river.bed_level);
  return site.basin.has_lowest_apron ? std::min(site.basin.lowest_apron_level, depth) : depth;
}

/// How high: on the last reach of the chute, below the crest, and below the user's limit.
double search_ceiling(const site::Site& site, const site::ChuteGeometry& geometry) {
  double level = geometry.last_reach_level - 1e-6;
  if (site.basin.has_highest_apron) level = std::min(level, site.basin.highest_apron_level);
  return level;
}

int failures(const Option& option) {
  return static_cast<int>(std::count_if(option.findings.begin(), option.findings.end(),
                                        [](const Finding& finding) { return finding.status == Status::fails; }));
}

/// A type within its limits of use goes before one outside them; then the fewest failed findings, then the least concrete
/// and stone.
bool preferred(const Option& option, const Option& best) {
  if (option.applicable != best.applicable) return option.applicable;
  const int difference = failures(option) - failures(best);
  return difference < 0 || (difference == 0 && option.quantities.built_volume() < best.quantities.built_volume());
}

/// The site file's candidates; everything listed where none of it is a candidate.
std::vector<std::size_t> candidates_of(const DesignResult& result) {
  const auto& wished = result.resolved.site.basin.types;
  std::vector<std::size_t> candidates, all;
  for (std::size_t i = 0; i < result.options.size(); ++i) {
    all.push_back(i);
    const auto id = result.options[i].type->record().id.view();
    if (std::find(wished.begin(), wished.end(), id) != wished.end()) candidates.push_back(i);
  }
  return candidates.empty() ? all : candidates;
}

/// A type that is listed beside the candidates and would do better than the chosen one.
std::string better_beside(const DesignResult& result, const Option& chosen, std::span<const std::size_t> candidates) {
  const Option* best = &chosen;
  for (std::size_t i = 0; i < result.options.size(); ++i) {
    const auto& option = result.options[i];
    const bool listed_only = std::find(candidates.begin(), candidates.end(), i) == candidates.end();
    if (listed_only && option.sized && option.applicable && preferred(option, *best)) best = &option;
  }
  if (best == &chosen) return {};
  return " Beside the candidates, " + std::string(best->type->record().name.view()) + " would " +
         (failures(*best) == 0 ? "meet every requirement with " : "come nearer, with ") +
         quantity_token(best->quantities.built_volume(), dimension::volume) + ".";
}

void choose(DesignResult& result) {
  auto candidates = candidates_of(result);
  std::string none_sized;
  if (std::none_of(candidates.begin(), candidates.end(), [&](std::size_t i) { return result.options[i].sized; })) {
    // Better one that is only listed than none.
    none_sized = candidates.size() < result.options.size() ? "No candidate of the site file could be sized here. " : "";
    candidates.resize(result.options.size());
    std::iota(candidates.begin(), candidates.end(), std::size_t{0});
  }
  for (const std::size_t i : candidates) {
    const auto& option = result.options[i];
    if (!option.sized) continue;
    if (result.chosen < 0 || preferred(option, result.options[static_cast<std::size_t>(result.chosen)]))
      result.chosen = static_cast<int>(i);
  }
  if (result.chosen < 0) {
    result.choice_reason = "No candidate could be sized on this site.";
    return;
  }
  const auto& chosen = result.options[static_cast<std::size_t>(result.chosen)];
  const int failed = failures(chosen);
  result.all_requirements_met = failed == 0;
  const std::string name(chosen.type->record().name.view());
  if (failed == 0) {
    const auto fitting = std::count_if(candidates.begin(), candidates.end(), [&](std::size_t i) {
      return result.options[i].sized && failures(result.options[i]) == 0;
    });
    result.choice_reason = fitting == 1 ? name + " is the only candidate that meets every requirement."
                                        : name + " meets every requirement with the least concrete" +
                                              (chosen.quantities.riprap > 0.0 ? " and stone, " : ", ") +
                                              quantity_token(chosen.quantities.built_volume(), dimension::volume) + ".";
  } else {
    result.choice_reason = "No candidate meets every requirement; " + name + " comes nearest, with " + std::to_string(failed) +
                           (failed == 1 ? " that fails." : " that fail.");
  }
  result.choice_reason = none_sized + result.choice_reason + better_beside(result, chosen, candidates);
}

}  // namespace

Outcome<DesignResult> run_design(const site::Site& given, const DesignOptions& options) {
  auto resolved = site::resolve(given);
  if (!resolved) return tl::unexpected(resolved.error());
  return run_design(std::move(*resolved), options);
}

Outcome<DesignResult> run_design(site::ResolvedSite resolved, const DesignOptions& options) {
  DesignResult result;
  result.resolved = std::move(resolved);
  const auto& site = result.resolved.site;
  const double lowest = search_floor(site);
  const auto geometry = site::chute_geometry(site, lowest - 1.0);
  if (!geometry) return tl::unexpected(geometry.error());
  const auto cases = prepare_cases(site, *geometry);
  if (!cases) return tl::unexpected(cases.error());
  const auto bay = site.gates.given() ? bay_geometry(site, lowest - 1.0) : geometry;
  if (!bay) return tl::unexpected(bay.error());
  const auto patterns = prepare_patterns(site, *geometry, *bay);
  if (!patterns) return tl::unexpected(patterns.error());
  const PreparedSite prepared{
      site, *geometry, *cases, *patterns, result.resolved.study, lowest, search_ceiling(site, *geometry)};
  const bool lowest_too_high = site.basin.has_lowest_apron && site.basin.lowest_apron_level > prepared.highest_level;
  if (lowest_too_high || !(prepared.highest_level > prepared.lowest_level))
    return no_answer("the limits leave no level for an apron");
  for (const auto& entry : *cases)
    if (entry.reported) result.cases.push_back(entry.data);
  for (const auto& entry : *patterns) result.pattern_cases.push_back(entry.data);
  for (const auto* type : options.types) result.options.push_back(best_option(prepared, *type, options));
  choose(result);
  return result;
}

}  // namespace quell::design
