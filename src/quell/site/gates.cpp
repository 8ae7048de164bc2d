#include "quell/site/gates.h"

#include <algorithm>
#include <cmath>

#include "quell/base/roots.h"
#include "quell/hydraulics/crest_gates.h"
#include "quell/hydraulics/outlets.h"
#include "quell/site/reservoir.h"

namespace quell::site {
namespace {

/// What the formulas of one bay start from.
struct BayFlow {
  double free;     ///< share of the free crest, m3/s
  double orifice;  ///< under the gate, m3/s
  double H;        ///< head on the seat, m
  double H1;       ///< head on the lip, m
};

BayFlow bay_flow(const Site& site, double opening, double level) {
  const auto& gates = site.gates;
  BayFlow flow{.free = crest_discharge(site.crest, level - site.crest.crest_level) / gates.count,
               .orifice = 0.0,
               .H = std::max(0.0, level - gates.seat_level),
               .H1 = 0.0};
  flow.H1 = std::max(0.0, flow.H - opening);
  flow.orifice =
      gates.radial_coefficient > 0.0
          ? hydraulics::radial_gate_discharge({.C = gates.radial_coefficient,
                                               .G0 = opening,
                                               .b = gates.bay_width,
                                               .H = std::max(0.0, flow.H - 0.5 * opening)})
          : hydraulics::gate_discharge_by_heads({.b = gates.bay_width, .H = flow.H, .H1 = flow.H1, .Cd = gates.coefficient});
  return flow;
}

GatePattern standard(std::string name, std::vector<double> opening) {
  return {.name = std::move(name), .opening = std::move(opening), .level = {}, .is_check = true, .is_standard = true};
}

}  // namespace

double bay_discharge(const Site& site, double opening, double reservoir_level) {
  if (!(opening > 0.0) || !(reservoir_level > std::max(site.crest.crest_level, site.gates.seat_level))) return 0.0;
  const auto flow = bay_flow(site, opening, reservoir_level);
  return hydraulics::gate_or_free_discharge({.orifice = flow.orifice, .free = flow.free, .G0 = opening, .He = flow.H});
}

double pattern_discharge(const Site& site, const GatePattern& pattern, double reservoir_level) {
  double sum = 0.0;
  for (const double opening : pattern.opening) sum += bay_discharge(site, opening, reservoir_level);
  return sum;
}

LoadedBay loaded_bay(const Site& site, const GatePattern& pattern, double reservoir_level) {
  LoadedBay most;
  for (const double opening : pattern.opening) {
    const double discharge = bay_discharge(site, opening, reservoir_level);
    if (discharge > 0.0) ++most.open_bays;
    if (discharge > most.discharge) {
      most.discharge = discharge;
      most.opening = opening;
    }
    most.all_alike = most.all_alike && opening == pattern.opening.front();
  }
  return most;
}

double largest_step(const GatePattern& pattern) {
  double largest = 0.0;
  for (std::size_t i = 1; i < pattern.opening.size(); ++i)
    largest = std::max(largest, std::abs(pattern.opening[i] - pattern.opening[i - 1]));
  return largest;
}

Outcome<double> spillway_level(const Site& site, double discharge) {
  const auto head = crest_head(site.crest, discharge);
  if (!head) return head;
  const double free_level = site.crest.crest_level + *head;
  return site.gates.given() ? std::max(free_level, site.gates.held_level) : free_level;
}

double equal_opening(const Site& site, double discharge, double reservoir_level) {
  const auto& gates = site.gates;
  if (!gates.given()) return 0.0;
  if (reservoir_level > gates.held_level) return gates.full_opening;  // the free crest rules
  const auto spare = [&](double opening) { return gates.count * bay_discharge(site, opening, reservoir_level) - discharge; };
  if (spare(gates.full_opening) <= 0.0) return gates.full_opening;
  const auto opening = find_root(spare, 0.0, gates.full_opening, 1e-9);
  return opening ? *opening : gates.full_opening;
}

std::vector<GatePattern> all_patterns(const Site& site) {
  const auto& gates = site.gates;
  auto patterns = gates.patterns;
  if (gates.count < 2 || !gates.standard_patterns) return patterns;
  const auto count = static_cast<std::size_t>(gates.count);
  std::vector<double> one(count, 0.0);
  one.front() = gates.full_opening;
  patterns.push_back(standard("one gate open", one));
  one.front() = 0.5 * gates.full_opening;
  patterns.push_back(standard("one gate half open", one));
  std::vector<double> rest(count, gates.full_opening);
  rest.front() = 0.0;
  patterns.push_back(standard(std::string(one_gate_shut), rest));
  return patterns;
}

std::vector<double> pattern_levels(const Site& site, std::size_t pattern) {
  const auto& gates = site.gates;
  if (pattern < gates.patterns.size() && !gates.patterns[pattern].level.empty()) return gates.patterns[pattern].level;
  std::vector<double> levels;
  for (std::size_t i = 0; i < gates.rules.size(); ++i)
    if (gates.rules[i].pattern == pattern)
      levels.push_back(i + 1 < gates.rules.size() ? gates.rules[i + 1].open_level
                                                  : std::max(gates.rules[i].open_level, gates.held_level));
  if (levels.empty()) levels.push_back(gates.held_level);
  return levels;
}

double outlet_discharge(const Outlet& outlet, double reservoir_level) {
  const double tail = outlet.has_tail_level ? std::max(outlet.tail_level, outlet.centre_level) : outlet.centre_level;
  const double head = reservoir_level - tail;
  return head > 0.0 ? hydraulics::orifice_discharge({.C = outlet.coefficient, .A = outlet.area, .H = head}) : 0.0;
}

double outlets_discharge(const Site& site, double reservoir_level, bool guaranteed_only) {
  double sum = 0.0;
  for (const auto& outlet : site.outlets)
    if (outlet.is_guaranteed || !guaranteed_only) sum += outlet_discharge(outlet, reservoir_level);
  return sum;
}

void trace_bay(const Site& site, double opening, double reservoir_level, Working& working) {
  const auto& gates = site.gates;
  const auto flow = bay_flow(site, opening, reservoir_level);
  constexpr std::string_view opened = "of the gate, found by trial or as the pattern says";
  constexpr std::string_view under = "discharge under the gate of the most loaded bay";
  if (gates.radial_coefficient > 0.0)
    working.add(hydraulics::record::gate_radial,
                {given(gates.radial_coefficient, "gates.radial_coefficient"), told(opening, opened),
                 given(gates.bay_width, "gates.bay_width"),
                 told(std::max(0.0, flow.H - 0.5 * opening), "reservoir above the middle of the opening")},
                {flow.orifice}, under);
  else
    working.add(hydraulics::record::gate_by_heads,
                {given(gates.bay_width, "gates.bay_width"), told(flow.H, "reservoir above the crest"),
                 told(flow.H1, "reservoir above the gate's lip"), given(gates.coefficient, "gates.coefficient")},
                {flow.orifice}, under);
  working.add(hydraulics::record::gate_blend,
              {flow.orifice, told(flow.free, "the bay's share of the free crest"), told(opening, opened),
               told(flow.H, "reservoir above the crest")},
              {bay_discharge(site, opening, reservoir_level)}, "discharge of that bay, at most its share of the free crest");
}

}  // namespace quell::site
