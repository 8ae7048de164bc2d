#include "quell/design/apron.h"

#include <algorithm>
#include <array>
#include <boost/math/tools/minima.hpp>
#include <cmath>
#include <vector>

#include "quell/base/roots.h"

namespace quell::design {
namespace {

constexpr double level_tolerance = 1e-7;  ///< m
constexpr double no_flow = -1e6;          ///< margin where there is no supercritical toe flow, less what is missing

struct Worst {
  double discharge;
  double margin;
};

/// Highest level in the search at which this discharge has its tailwater; the lowest level searched where none has.
double level_for(const ApronSearch& search, const PreparedCase& prepared, double upper) {
  const auto margin = [&](double level) { return tailwater_margin(search, prepared, level); };
  if (margin(upper) >= 0.0) return upper;
  if (margin(search.lowest_level) < 0.0) return search.lowest_level;
  const auto level = find_root(margin, search.lowest_level, upper, level_tolerance);
  return level ? *level : search.lowest_level;
}

double margin_at(const ApronSearch& search, double discharge, double level) {
  const auto prepared = prepare_case(search.site, search.geometry, discharge);
  return prepared ? tailwater_margin(search, *prepared, level) : -no_flow;
}

/// The least margin between two neighbouring discharges: the least of the quarter points, since a requirement with a kink may
/// have two minima there, then refined beside it. At an end where the margin rises at once there is nothing to refine.
Worst least_between(const ApronSearch& search, double level, const Worst& lower, const Worst& upper) {
  const auto margin = [&](double discharge) { return margin_at(search, discharge, level); };
  const double quarter = (upper.discharge - lower.discharge) / 4.0;
  std::array<Worst, 5> points{lower, lower, lower, lower, upper};
  for (std::size_t k = 1; k < 4; ++k) {
    points[k].discharge = lower.discharge + quarter * static_cast<double>(k);
    points[k].margin = margin(points[k].discharge);
  }
  const auto least =
      std::min_element(points.begin(), points.end(), [](const Worst& a, const Worst& b) { return a.margin < b.margin; });
  const auto& before = least == points.begin() ? *least : *(least - 1);
  const auto& after = least + 1 == points.end() ? *least : *(least + 1);
  if (&before == &*least && margin(least->discharge + 1e-3 * quarter) >= least->margin) return *least;
  if (&after == &*least && margin(least->discharge - 1e-3 * quarter) >= least->margin) return *least;
  const auto [discharge, value] = boost::math::tools::brent_find_minima(margin, before.discharge, after.discharge, 16);
  return value < least->margin ? Worst{discharge, value} : *least;
}

/// The smallest margin over all discharges at one level: the least of the cases, refined inside the two intervals beside each
/// local minimum that could undercut it.
Worst worst_discharge(const ApronSearch& search, std::span<const PreparedCase> cases, double level) {
  std::vector<double> margins;
  margins.reserve(cases.size());
  for (const auto& prepared : cases) margins.push_back(tailwater_margin(search, prepared, level));
  const auto least = static_cast<std::size_t>(std::min_element(margins.begin(), margins.end()) - margins.begin());
  Worst worst{cases[least].data.discharge, margins[least]};
  for (std::size_t i = 0; i < cases.size(); ++i) {
    const double left = i > 0 ? margins[i - 1] : margins[i];
    const double right = i + 1 < cases.size() ? margins[i + 1] : margins[i];
    const bool local = margins[i] <= left && margins[i] <= right;
    // A parabola through three points dips below the middle one by at most an eighth of the larger rise beside it; four times
    // that is kept.
    const double dip = 0.5 * std::max(left - margins[i], right - margins[i]);
    if (!local || margins[i] - dip > worst.margin) continue;
    for (std::size_t from = i > 0 ? i - 1 : 0; from < std::min(i + 1, cases.size() - 1); ++from) {
      const auto between = least_between(search, level, {cases[from].data.discharge, margins[from]},
                                         {cases[from + 1].data.discharge, margins[from + 1]});
      if (between.margin < worst.margin) worst = between;
    }
  }
  return worst;
}

/// The pattern that the apron is set for with the least margin; no limit where there is none.
struct TightestPattern {
  int index = -1;
  double margin = no_limit;
};
TightestPattern tightest_pattern(const ApronSearch& search, std::span<const PreparedCase> patterns, double level) {
  TightestPattern tightest;
  for (std::size_t i = 0; i < patterns.size(); ++i) {
    if (patterns[i].data.is_check) continue;
    const double margin = tailwater_margin(search, patterns[i], level);
    if (margin < tightest.margin) tightest = {static_cast<int>(i), margin};
  }
  return tightest;
}

double rounded_down(double level, double step) {
  return std::floor(level / step + 1e-6) * step;
}

}  // namespace

double tailwater_margin(const ApronSearch& search, const PreparedCase& prepared, double apron_level) noexcept {
  const auto flow = entering_flow(search.type, search.setting, prepared, apron_level);
  if (!flow) {
    const double energy_level = prepared.chute.energy_level_at(apron_level);
    return no_flow - site::least_energy_head(prepared.data.discharge, search.setting.width) + (energy_level - apron_level);
  }
  const double low = prepared.data.tailwater_level[site::index_of(site::TailwaterCase::low)];
  return low - apron_level - search.type.tailwater_need(*flow, search.setting).required - search.site.basin.tailwater_margin;
}

Outcome<ApronLevel> set_apron(const ApronSearch& search, std::span<const PreparedCase> cases,
                              std::span<const PreparedCase> patterns) {
  for (const auto& list : {cases, patterns})
    for (const auto& prepared : list)
      if (tailwater_margin(search, prepared, search.lowest_level) < 0.5 * no_flow)
        return no_answer("the drop to the lowest apron searched is too small for supercritical flow at some discharge");
  // The case with the least margin at the level that the largest discharge asks for is nearly always the lowest of all: solved
  // first, it leaves one look at each of the others.
  double level = level_for(search, cases.back(), search.highest_level);
  const PreparedCase* tightest = &cases.back();
  double least = 0.0;
  for (const auto& prepared : cases)
    if (const double margin = tailwater_margin(search, prepared, level); margin < least) {
      least = margin;
      tightest = &prepared;
    }
  level = level_for(search, *tightest, level);
  for (const auto& prepared : cases) level = level_for(search, prepared, level);
  for (const auto& pattern : patterns)
    if (!pattern.data.is_check) level = level_for(search, pattern, level);
  // Between the discharges of the range the margin may dip below zero: follow it down. The margin's slope in the level is near
  // -1, so that each pass leaves about a tenth of the shortfall.
  Worst worst = worst_discharge(search, cases, level);
  for (int pass = 0; pass < 8 && worst.margin < -level_tolerance && level > search.lowest_level; ++pass) {
    const auto prepared = prepare_case(search.site, search.geometry, worst.discharge);
    if (!prepared) return tl::unexpected(prepared.error());
    level = level_for(search, *prepared, level);
    worst = worst_discharge(search, cases, level);
  }
  const auto worst_of_patterns = tightest_pattern(search, patterns, level);
  ApronLevel result{.wanted = level, .found = std::min(worst.margin, worst_of_patterns.margin) >= -1e-4};
  const auto& wishes = search.site.basin;
  result.level = std::max(search.lowest_level, rounded_down(level, wishes.apron_step));
  if (wishes.has_lowest_apron && result.level < wishes.lowest_apron_level) {
    result.level = wishes.lowest_apron_level;
    result.within_limits = result.level <= level;  // the limit may stand between the level wanted and its rounding
  }
  result.within_limits = result.within_limits && result.found;
  // Rounding down mostly leaves the worst discharge where it was: it is sought anew only where another now undercuts it.
  const double margin = margin_at(search, worst.discharge, result.level);
  const bool undercut = std::any_of(cases.begin(), cases.end(), [&](const PreparedCase& prepared) {
    return tailwater_margin(search, prepared, result.level) < margin;
  });
  const Worst governing = undercut ? worst_discharge(search, cases, result.level) : Worst{worst.discharge, margin};
  result.governing_discharge = governing.discharge;
  if (const auto pattern = tightest_pattern(search, patterns, result.level); pattern.margin < governing.margin)
    result.governing_pattern = pattern.index;
  return result;
}

}  // namespace quell::design
