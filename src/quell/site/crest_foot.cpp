#include "quell/site/crest_foot.h"

#include <algorithm>
#include <array>

#include "quell/base/roots.h"
#include "quell/hydraulics/crest_effects.h"
#include "quell/hydraulics/section.h"
#include "quell/hydraulics/weirs.h"
#include "quell/hydraulics/weirs_broad.h"
#include "quell/site/reservoir.h"
#include "quell/site/toe.h"

namespace quell::site {
namespace {

/// Energy level (m) of critical flow on the floor below the crest.
double critical_energy_level(const Site& site, double discharge) {
  return site.crest.floor_level + 1.5 * hydraulics::critical_depth(discharge / site.chute.width);
}

double broad_factor(double head, double tailwater_head) {
  const std::array inputs{head, std::max(tailwater_head, 0.0)};
  std::array factor{0.0};
  return hydraulics::record::weir_submergence_broad.evaluate(inputs, factor) ? factor[0] : 0.0;
}

/// Factor on the free discharge by the water below the crest.
double submergence_at(const Crest& crest, double head, double level_below, bool jump_drowned) {
  const double tailwater_head = level_below - crest.crest_level;
  switch (crest.shape) {
    case CrestShape::ogee:
      if (!jump_drowned && tailwater_head <= 0.0) return 1.0;
      return tailwater_head < head ? hydraulics::submergence_factor({.He = head, .fall_to_tailwater = head - tailwater_head})
                                   : 0.0;
    case CrestShape::broad: return broad_factor(head, tailwater_head);
    case CrestShape::sharp:
    case CrestShape::labyrinth: return hydraulics::villemonte_factor({.h1 = head, .h2 = tailwater_head});
  }
  return 1.0;
}

double apron_at(const Crest& crest, double head, double apron_level) {
  if (crest.shape != CrestShape::ogee) return 1.0;
  return hydraulics::apron_factor({.He = head, .crest_above_apron = std::max(crest.crest_level - apron_level, 0.0)});
}

/// A factor that prints as 1 is 1: the curves are not known closer than 2 %.
double rounded(double factor) {
  return factor > 0.9995 ? 1.0 : factor;
}

}  // namespace

double start_energy_level(const Site& site, double discharge, double reservoir_level) {
  return site.crest.has_fall() ? std::min(reservoir_level, critical_energy_level(site, discharge)) : reservoir_level;
}

std::string_view trace_start_energy(const Site& site, double discharge, double reservoir_level, Working& working) {
  if (!site.crest.has_fall() || !(critical_energy_level(site, discharge) < reservoir_level)) return "level of the reservoir";
  const double q = discharge / site.chute.width;
  trace_unit_discharge(told(discharge, "the discharge that this section follows"), given(site.chute.width, "chute.width"),
                       "on the floor below the crest", working);
  working.add(hydraulics::record::critical_depth_rectangular, {q}, {hydraulics::critical_depth(q)},
              "critical depth on the floor below the crest: the flow starts there with an energy head of 1.5 times it");
  return "1.5 critical depths above the floor below the crest";
}

double level_below_crest(const Site& site, const BackwaterInput& input) {
  return site.crest.has_fall() ? std::max(input.tailwater_level, critical_energy_level(site, input.discharge))
                               : input.tailwater_level;
}

double submergence_share(const Site& site, const BackwaterInput& input) {
  const double head = input.reservoir_level - site.crest.crest_level;
  return rounded(submergence_at(site.crest, head, level_below_crest(site, input), input.jump_drowned));
}

double apron_share(const Site& site, const BackwaterInput& input) {
  return rounded(apron_at(site.crest, input.reservoir_level - site.crest.crest_level, input.apron_level));
}

Outcome<double> reservoir_rise(const Site& site, const BackwaterInput& input) {
  const auto& crest = site.crest;
  const double head = input.reservoir_level - crest.crest_level;
  const double below = level_below_crest(site, input);
  const auto excess = [&](double he) {
    const double share = submergence_at(crest, he, below, input.jump_drowned) * apron_at(crest, he, input.apron_level);
    return crest_discharge(crest, he) * share - input.discharge;
  };
  if (!(excess(head) < 0.0)) return 0.0;
  double upper = head;
  for (int i = 0; i < 60 && excess(upper) < 0.0; ++i) upper *= 1.1;
  const auto higher = find_root(excess, head, upper, 1e-6 * head);
  if (!higher) return tl::unexpected(higher.error());
  return *higher - head;
}

}  // namespace quell::site
