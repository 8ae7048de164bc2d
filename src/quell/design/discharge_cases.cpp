#include "quell/design/discharge_cases.h"

#include <algorithm>
#include <cmath>

#include "quell/site/crest_foot.h"
#include "quell/site/gates.h"
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

/// The river with the spillway's discharge and that of the outlets: only those sure to run in the low case.
Outcome<void> find_tailwater(const site::Site& site, DischargeCase& data) {
  for (const auto tailwater_case : site::tailwater_cases) {
    const bool guaranteed_only = tailwater_case == site::TailwaterCase::low;
    const auto index = site::index_of(tailwater_case);
    data.river_discharge[index] = data.discharge + site::outlets_discharge(site, data.reservoir_level, guaranteed_only);
    const auto level = site::tailwater_level(site.river, data.river_discharge[index], tailwater_case);
    if (!level && site.river.has_rating())
      return no_answer(
          "the discharge of spillway and outlets, or of a gate pattern, lies outside the tailwater rating: give it more rows");
    if (!level) return tl::unexpected(level.error());
    data.tailwater_level[index] = *level;
  }
  return {};
}

/// One pattern at one level; no chute where it passes no water.
Outcome<PreparedCase> prepare_pattern(const site::Site& site, const site::GatePattern& pattern, double level,
                                      const site::ChuteGeometry& geometry, const site::ChuteGeometry& bay) {
  const auto loaded = site::loaded_bay(site, pattern, level);
  DischargeCase data{.discharge = site::pattern_discharge(site, pattern, level),
                     .reservoir_level = level,
                     .crest_head = level - site.crest.crest_level,
                     .width = loaded.open_bays * site.gates.bay_width,
                     .origin = pattern.is_standard ? "gates, added" : "gates",
                     .gate_pattern = pattern.name,
                     .gate_opening = loaded.opening,
                     .bay_discharge = loaded.all_alike ? 0.0 : loaded.discharge,
                     .is_check = pattern.is_check};
  if (auto found = find_tailwater(site, data); !found) return tl::unexpected(found.error());
  const double followed = loaded.all_alike ? data.discharge : loaded.discharge;
  auto chute =
      site::ChuteFlow::compute(loaded.all_alike ? geometry : bay, followed, site::start_energy_level(site, followed, level));
  if (!chute) return tl::unexpected(chute.error());
  return PreparedCase{std::move(data), std::move(*chute), true, loaded.all_alike ? 0.0 : site.gates.bay_width};
}

}  // namespace

Outcome<site::ToeFlow> toe_at(const PreparedCase& prepared, double width, double apron_level, Working* working) {
  const bool one_bay = prepared.bay_width > 0.0;
  const double discharge = one_bay ? prepared.data.bay_discharge : prepared.data.discharge;
  return site::toe_flow(discharge, one_bay ? prepared.bay_width : width, prepared.chute.energy_level_at(apron_level),
                        prepared.data.reservoir_level, apron_level, working);
}

dissipators::Setting setting_of(const site::Site& site, double width) {
  return {.choices = site.basin.choices,
          .width = width,
          .length = site.basin.length,
          .chute_slope = site.chute.reaches.back().slope,
          .is_stepped = site.chute.is_stepped,
          .crest_level = site.crest.crest_level,
          .bed_level = site.river.bed_level,
          .lowest_bed_level = site.river.bed_level - site.river.bed_degradation};
}

namespace {

/// Discharge, width and levels alone.
site::ToeFlow bare_flow(const PreparedCase& prepared, double width, double apron_level) {
  const bool one_bay = prepared.bay_width > 0.0;
  site::ToeFlow flow{.discharge = one_bay ? prepared.data.bay_discharge : prepared.data.discharge,
                     .width = one_bay ? prepared.bay_width : width,
                     .apron_level = apron_level,
                     .reservoir_level = prepared.data.reservoir_level};
  flow.unit_discharge = flow.discharge / flow.width;
  return flow;
}

/// The level at which the flow enters: apron + front_rise(flow at that level). The rise falls with the level, since the flow is
/// slower higher up, so that each pass lands on the other side of the answer: a bracket, halved where there is no flow. Where
/// the answer would lie above the chute's flow, the highest level that has any.
double entering_level(const dissipators::Dissipator& type, const dissipators::Setting& setting, const PreparedCase& prepared,
                      double apron_level) {
  const auto raised_from = [&](double level) {
    const auto flow = toe_at(prepared, setting.width, level);
    return flow ? apron_level + type.front_rise(*flow, setting) : -no_limit;
  };
  double low = apron_level;
  double high = raised_from(low);
  if (!(high > low)) return low;
  constexpr int passes = 80;
  for (int pass = 0; pass < passes && high - low > 1e-12 * (1.0 + std::abs(high)); ++pass) {
    const double back = raised_from(high);
    if (back > low && back < high) {
      // `back` lies below the answer and gives the next bound above it.
      low = back;
      high = std::min(high, raised_from(low));
      continue;
    }
    const double middle = 0.5 * (low + high);
    const double raised = raised_from(middle);
    (raised > middle ? low : high) = middle;
  }
  return low;
}

}  // namespace

Outcome<site::ToeFlow> entering_flow(const dissipators::Dissipator& type, const dissipators::Setting& setting,
                                     const PreparedCase& prepared, double apron_level, Working* working) {
  if (dissipators::replaces_chute(type.record().action))
    return type.from_crest(bare_flow(prepared, setting.width, apron_level), setting);
  const double level = entering_level(type, setting, prepared, apron_level);
  return toe_at(prepared, setting.width, level, working);
}

Outcome<site::ChuteGeometry> bay_geometry(const site::Site& site, double lowest_level) {
  site::Site narrow = site;
  narrow.chute.width = narrow.chute.end_width = narrow.crest.net_width = site.gates.bay_width;
  return site::chute_geometry(narrow, lowest_level);
}

Outcome<std::vector<PreparedCase>> prepare_patterns(const site::Site& site, const site::ChuteGeometry& geometry,
                                                    const site::ChuteGeometry& bay) {
  std::vector<PreparedCase> cases;
  const auto patterns = site::all_patterns(site);
  for (std::size_t i = 0; i < patterns.size(); ++i)
    for (const double level : site::pattern_levels(site, i)) {
      if (!(site::pattern_discharge(site, patterns[i], level) > 0.0)) continue;
      auto prepared = prepare_pattern(site, patterns[i], level, geometry, bay);
      // A pattern that nobody asked for must not stop the design: a finding tells that it could not be judged.
      if (!prepared && patterns[i].is_standard) continue;
      if (!prepared) return tl::unexpected(prepared.error());
      cases.push_back(std::move(*prepared));
    }
  std::sort(cases.begin(), cases.end(), [](const PreparedCase& a, const PreparedCase& b) {
    return a.data.discharge != b.data.discharge ? a.data.discharge < b.data.discharge
                                                : a.data.gate_pattern < b.data.gate_pattern;
  });
  return cases;
}

Outcome<PreparedCase> prepare_case(const site::Site& site, const site::ChuteGeometry& geometry, double discharge) {
  DischargeCase data{.discharge = discharge, .width = site.crest.net_width};
  const auto level = site::spillway_level(site, discharge);
  if (!level) return tl::unexpected(level.error());
  data.reservoir_level = *level;
  data.crest_head = *level - site.crest.crest_level;
  data.gate_opening = site::equal_opening(site, discharge, *level);
  if (auto found = find_tailwater(site, data); !found) return tl::unexpected(found.error());
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
