// Checks of the crest.
#include <algorithm>
#include <string_view>

#include "quell/base/quantity_text.h"
#include "quell/checks/checks.h"
#include "quell/checks/origins.h"
#include "quell/dissipators/parts.h"
#include "quell/hydraulics/crest.h"
#include "quell/hydraulics/crest_effects.h"
#include "quell/hydraulics/definitions.h"
#include "quell/hydraulics/weirs.h"
#include "quell/hydraulics/weirs_broad.h"
#include "quell/site/crest_foot.h"

namespace quell::checks {

using dissipators::at_discharge;
using dissipators::limit_finding;
using dissipators::Rule;
using site::CrestShape;

namespace {

site::BackwaterInput backwater(const BasinView& view, const TailwaterState& state) {
  return {.discharge = state.toe->discharge,
          .reservoir_level = state.toe->reservoir_level,
          .apron_level = view.apron_level,
          .tailwater_level = state.tailwater_level,
          .jump_drowned = state.available_depth > state.need.largest};
}

StepInput largest_head(const BasinView& view) {
  return told(view.largest_crest_head, "reservoir at the largest discharge less crest.level");
}

std::string rise_words(const BasinView& view, const site::BackwaterInput& water) {
  const auto rise = site::reservoir_rise(view.site, water);
  return rise ? " To pass that discharge the reservoir would stand " + quantity_token(*rise, dimension::length) +
                    " higher than computed here."
              : " No reservoir level found passes that discharge.";
}

/// A factor on the discharge: free at 1, wrong by more than the rating's own error below 0.9.
Finding factor_finding(std::string id, std::string title, double factor, std::string text, std::string advice,
                       const Rule& rule) {
  const bool severe = factor < 0.9;
  return limit_finding(std::move(id), std::move(title), factor, LimitSense::at_least, severe ? 0.9 : 1.0, dimension::none,
                       severe ? Status::fails : Status::caution, std::move(text), std::move(advice), rule);
}

Rule submergence_rule(CrestShape shape) {
  switch (shape) {
    case CrestShape::ogee: break;
    case CrestShape::broad: return {"sturm_2001", "drowned broad crest", Provenance::seen};
    case CrestShape::sharp: return {"villemonte_1947", "rectangular weir", Provenance::memory};
    case CrestShape::labyrinth:
      return {"villemonte_1947", "straight weir; taken for the labyrinth, whose own curve differs", Provenance::memory};
  }
  return {"dsd_1987", "fig. 9-28", Provenance::memory};
}

/// The factor's own method at the state that decides.
Finding worked_by_water(const site::Crest& crest, const site::BackwaterInput& water, double level_below, Finding finding) {
  const double head = water.reservoir_level - crest.crest_level;
  const double above = level_below - crest.crest_level;
  constexpr std::string_view reservoir_words = "reservoir level at that discharge less crest.level";
  constexpr std::string_view below_words = "water level below the crest less crest.level";
  switch (crest.shape) {
    case CrestShape::ogee:
      return worked(hydraulics::record::crest_submergence_factor,
                    {told(head, reservoir_words), told(head - above, "reservoir level less the water level below the crest")},
                    std::move(finding));
    case CrestShape::broad:
      return worked(hydraulics::record::weir_submergence_broad,
                    {told(head, reservoir_words), told(std::max(above, 0.0), below_words)}, std::move(finding));
    case CrestShape::sharp:
    case CrestShape::labyrinth: break;
  }
  return worked(hydraulics::record::weir_submergence_villemonte, {told(head, reservoir_words), told(above, below_words)},
                std::move(finding));
}

/// The ratio that the rating of a weir depends on, where it was measured.
struct HeadRange {
  double length;           ///< m, over which the head is taken
  double lowest, highest;  ///< of the ratio
  std::string_view of;     ///< "the height of the weir"
  std::string_view key;    ///< of the length, in the site file
  Rule rule;
};

HeadRange head_range(const site::Crest& crest) {
  switch (crest.shape) {
    case CrestShape::broad:
      if (crest.edge == site::CrestEdge::square)
        return {crest.crest_length,
                0.1,
                1.5,
                "the length of the crest",
                "crest.crest_length",
                {"hager_schwalt_1994", "range of the tests", Provenance::memory}};
      return {crest.crest_length,
              0.1,
              1.0,
              "the length of the crest",
              "crest.crest_length",
              {"bos_1989", "long-throated flumes and broad-crested weirs", Provenance::memory}};
    case CrestShape::labyrinth:
      return {crest.approach_depth,
              0.05,
              0.9,
              "the height of the weir",
              "crest.approach_depth",
              {"crookston_tullis_2013", "range of the tests", Provenance::memory}};
    case CrestShape::ogee:
    case CrestShape::sharp: break;
  }
  return {crest.approach_depth,
          0.03 / crest.approach_depth,
          std::min(1.0, 0.75 / crest.approach_depth),
          "the height of the weir",
          "crest.approach_depth",
          {"iso_1438", "full-width rectangular weir: heads of 0.03 to 0.75 m, none above the height", Provenance::memory}};
}

}  // namespace

Finding crest_overload(const BasinView& view) {
  return worked(
      hydraulics::record::crest_head_ratio, {largest_head(view), given(view.site.crest.design_head, "crest.design_head")},
      limit_finding(
          "crest.overload", "Head on the crest over its design head", view.largest_crest_head / view.site.crest.design_head,
          LimitSense::at_most, 1.33, dimension::none, Status::caution, "At the largest discharge of the range.",
          "Raise the design head of the crest or lengthen the crest; above 1.33 pressures and coefficients are not proven.",
          {"em1603_1990", "overload of standard crests", Provenance::memory}));
}

Finding crest_pressure(const BasinView& view) {
  const double pressure =
      hydraulics::crest_least_pressure_head({.He = view.largest_crest_head, .Hd = view.site.crest.design_head});
  const bool beyond = pressure < -6.1;
  return worked(hydraulics::record::crest_least_pressure,
                {largest_head(view), given(view.site.crest.design_head, "crest.design_head")},
                limit_finding("crest.pressure", "Least pressure head on the crest", pressure, LimitSense::at_least,
                              beyond ? -6.1 : -4.6, dimension::length, beyond ? Status::fails : Status::caution,
                              "Estimated at the largest discharge, without the effect of piers.",
                              "Raise the design head of the crest: lower pressures bring cavitation and vibration.",
                              {"em1603_1990", "15 ft of vacuum for design, 20 ft at most", Provenance::memory}));
}

Finding crest_submergence(const BasinView& view) {
  const TailwaterState* worst = &view.states.front();
  double least = 1.0;
  for (const auto& state : view.states)
    if (const double share = site::submergence_share(view.site, backwater(view, state)); share < least) {
      least = share;
      worst = &state;
    }
  const bool held = least < 1.0;
  const auto water = backwater(view, *worst);
  const bool by_floor = held && site::level_below_crest(view.site, water) > worst->tailwater_level;
  auto finding = factor_finding(
      "crest.submergence", "Crest free of the water below it", least,
      held ? "Share of the free discharge that passes at the same reservoir level, smallest " +
                 at_discharge(worst->toe->discharge) + " in the " + std::string(site::name_of(worst->tailwater_case)) +
                 " tailwater case." + rise_words(view, water)
           : "The water below takes nothing from the crest's discharge at any tailwater.",
      by_floor ? "The flow at the head of the chute drowns the crest: lower the floor below it or widen the chute."
               : "Tailwater drowns the crest: its discharge is overestimated here, and the reservoir stands higher.",
      submergence_rule(view.site.crest.shape));
  return held ? worked_by_water(view.site.crest, water, site::level_below_crest(view.site, water), std::move(finding))
              : finding;
}

Finding crest_proximity(const BasinView& view) {
  const auto water = backwater(view, view.states.back());
  const double share = site::apron_share(view.site, water);
  auto finding =
      factor_finding("crest.apron_proximity", "Apron far enough below the crest not to reduce its discharge", share,
                     share < 1.0 ? "Share of the free discharge that passes at the same reservoir level, at the largest "
                                   "discharge." +
                                       rise_words(view, water)
                                 : "The apron takes nothing from the crest's discharge, at the largest discharge.",
                     "Lower the apron or lengthen the crest, or count on the higher reservoir level.",
                     {"dsd_1987", "fig. 9-27", Provenance::memory});
  return worked(hydraulics::record::crest_apron_factor,
                {largest_head(view), told(std::max(view.site.crest.crest_level - view.apron_level, 0.0),
                                          "crest.level less the level of the apron")},
                std::move(finding));
}

Finding weir_largest_head(const BasinView& view) {
  const auto range = head_range(view.site.crest);
  return worked(
      hydraulics::record::crest_head_ratio, {largest_head(view), given(range.length, range.key)},
      limit_finding("crest.largest_head", "Largest head on the crest over " + std::string(range.of),
                    view.largest_crest_head / range.length, LimitSense::at_most, range.highest, dimension::none,
                    Status::caution, "At the largest discharge of the range, against what the rating was measured for.",
                    "Enlarge the weir: above this ratio its discharge is extrapolated.", range.rule));
}

Finding weir_smallest_head(const BasinView& view) {
  const auto range = head_range(view.site.crest);
  const auto& smallest = *std::min_element(view.states.begin(), view.states.end(),
                                           [](const auto& a, const auto& b) { return a.toe->discharge < b.toe->discharge; });
  const double head = smallest.toe->reservoir_level - view.site.crest.crest_level;
  return worked(hydraulics::record::crest_head_ratio,
                {told(head, "reservoir at the smallest discharge less crest.level"), given(range.length, range.key)},
                limit_finding("crest.smallest_head", "Smallest head on the crest over " + std::string(range.of),
                              head / range.length, LimitSense::at_least, range.lowest, dimension::none, Status::caution,
                              "At the smallest discharge of the range, against what the rating was measured for.",
                              "Below this ratio the rating is extrapolated: the nappe clings and the discharge is uncertain.",
                              range.rule));
}

Finding labyrinth_model(const BasinView& view) {
  const auto& crest = view.site.crest;
  return keyed(
      "crest.developed_length",
      limit_finding("crest.labyrinth_model", "Labyrinth rated by a model study of its own",
                    crest.developed_length / crest.net_width, LimitSense::at_most, 1.0, dimension::none, Status::caution,
                    "Length of the crest over the width that it spans. The rating is that of a half-round crest in a "
                    "straight channel.",
                    "A model study is normally warranted: approach, cycles and the water between the walls change the rating.",
                    {"falvey_2003", "ch. 1", Provenance::seen}));
}

}  // namespace quell::checks
