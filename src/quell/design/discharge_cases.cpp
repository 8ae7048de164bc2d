#include "quell/design/discharge_cases.h"

#include <algorithm>
#include <cmath>

#include "quell/site/crest_foot.h"
#include "quell/site/reservoir.h"
#include "quell/site/river.h"

namespace quell::design {
namespace {

struct Wanted {
  double discharge;
  double return_period;
  std::string origin;
  bool reported;
};

constexpr int fewest_searched = 24;  ///< intervals between the discharges that the apron is searched over

bool same(double a, double b) {
  return std::abs(a - b) <= 1e-6 * std::max(a, b);
}

/// One entry a discharge: named floods first, so that they keep their names where the range meets them.
std::vector<Wanted> wanted_discharges(const site::Site& site) {
  const auto& range = site.discharges;
  std::vector<Wanted> all;
  const auto add = [&](Wanted wanted) {
    for (auto& known : all)
      if (same(known.discharge, wanted.discharge)) {
        if (known.origin != wanted.origin && wanted.reported && wanted.origin != "range") known.origin += ", " + wanted.origin;
        return;
      }
    all.push_back(std::move(wanted));
  };
  for (const auto& flood : range.floods) add({flood.discharge, flood.return_period, flood.name, true});
  add({range.design_flood, 0.0, "design flood", true});
  add({range.check_flood, 0.0, "check flood", true});
  for (int i = 0; i < range.steps; ++i)
    add({range.smallest + (range.check_flood - range.smallest) * i / (range.steps - 1), 0.0, "range", true});
  // A range of few steps is searched at more discharges than it reports: the worst one must not depend on the steps asked for.
  const int parts = (fewest_searched + range.steps - 2) / (range.steps - 1);
  const int searched = (range.steps - 1) * parts;
  for (int i = 1; i < searched; ++i)
    if (i % parts != 0) add({range.smallest + (range.check_flood - range.smallest) * i / searched, 0.0, "searched", false});
  if (site.river.has_rating() && !site.river.rating.is_computed)
    for (const double knot : site.river.rating.discharge)
      if (knot > range.smallest && knot < range.check_flood) add({knot, 0.0, "rating", false});
  std::sort(all.begin(), all.end(), [](const Wanted& a, const Wanted& b) { return a.discharge < b.discharge; });
  return all;
}

}  // namespace

Outcome<PreparedCase> prepare_case(const site::Site& site, const site::ChuteGeometry& geometry, double discharge) {
  DischargeCase data{.discharge = discharge, .width = site.crest.net_width};
  const auto head = site::crest_head(site.crest, discharge);
  if (!head) return tl::unexpected(head.error());
  data.crest_head = *head;
  data.reservoir_level = site.crest.crest_level + *head;
  for (const auto tailwater_case : site::tailwater_cases) {
    const auto level = site::tailwater_level(site.river, discharge, tailwater_case);
    if (!level) return tl::unexpected(level.error());
    data.tailwater_level[site::index_of(tailwater_case)] = *level;
  }
  const double start_level = site::start_energy_level(site, discharge, data.reservoir_level);
  auto chute = site::ChuteFlow::compute(geometry, discharge, start_level);
  if (!chute) return tl::unexpected(chute.error());
  return PreparedCase{std::move(data), std::move(*chute), true};
}

Outcome<std::vector<PreparedCase>> prepare_cases(const site::Site& site, const site::ChuteGeometry& geometry) {
  std::vector<PreparedCase> cases;
  const auto wanted = wanted_discharges(site);
  cases.reserve(wanted.size());
  for (const auto& entry : wanted) {
    auto prepared = prepare_case(site, geometry, entry.discharge);
    if (!prepared) return tl::unexpected(prepared.error());
    prepared->data.return_period = entry.return_period;
    prepared->data.origin = entry.origin;
    prepared->reported = entry.reported;
    cases.push_back(std::move(*prepared));
  }
  return cases;
}

}  // namespace quell::design
