// Seepage below crest and basin for the worst head difference, and the cutoff at the end of the basin.
#include <algorithm>
#include <array>
#include <cmath>

#include "quell/base/quantity_text.h"
#include "quell/checks/origins.h"
#include "quell/checks/safety.h"
#include "quell/dissipators/parts.h"
#include "quell/hydraulics/definitions.h"
#include "quell/hydraulics/protection.h"
#include "quell/hydraulics/river_protection.h"
#include "quell/hydraulics/seepage.h"

namespace quell::checks {

using dissipators::choice_note;
using dissipators::common_practice;
using dissipators::limit_finding;

namespace {

/// Lane's least weighted creep ratio, the exit gradient that is safe, and Bligh's least creep ratio (the larger where he gives
/// two); 0 where no source gives one.
struct SoilLimits {
  double lane;
  double gradient;
  double bligh;
};
constexpr std::array<SoilLimits, 13> limits_of_soil{{{0.0, 0.0, 0.0},
                                                     {8.5, 1.0 / 7.0, 18.0},
                                                     {7.0, 1.0 / 7.0, 15.0},
                                                     {6.0, 1.0 / 6.0, 0.0},
                                                     {5.0, 1.0 / 6.0, 12.0},
                                                     {4.0, 1.0 / 5.0, 0.0},
                                                     {3.5, 1.0 / 5.0, 0.0},
                                                     {3.0, 1.0 / 5.0, 0.0},
                                                     {2.5, 1.0 / 5.0, 6.0},
                                                     {3.0, 0.0, 0.0},
                                                     {2.0, 0.0, 0.0},
                                                     {1.8, 0.0, 0.0},
                                                     {1.6, 0.0, 0.0}}};

/// The reservoir as high as it is held, the river without flow; and every discharge.
void worst_head(const BasinView& view, Seepage& seepage) {
  const auto& site = view.site;
  const double held = site.gates.given() ? site.gates.held_level : site.crest.crest_level;
  seepage.head = held - (site.river.bed_level - site.river.bed_degradation);
  seepage.no_flow_head = seepage.head;
  seepage.head_case = "reservoir full, no flow in the river";
  seepage.head_by = {&hydraulics::record::level_difference,
                     {given(held, site.gates.given() ? "gates.held_level" : "crest.level"), sunken_bed(view)}};
  for (const auto& state : view.states)
    if (const double head = state.toe->reservoir_level - state.tailwater_level; head > seepage.head) {
      seepage.head = head;
      seepage.head_case = dissipators::at_discharge(state.toe->discharge);
      seepage.head_by = {&hydraulics::record::level_difference, {reservoir_level(state), tailwater_level(view, state)}};
    }
}

StepInput floor_length(const Seepage& seepage) {
  return told(seepage.horizontal, "from the upstream face to the end of the basin");
}
StepInput head_between_pools(const Seepage& seepage) {
  return told(seepage.head, "worst difference between both pools");
}

void creep_path(const BasinView& view, Seepage& seepage) {
  const auto& foundation = view.site.foundation;
  const double upstream = view.geometry.crest_outline.empty() ? 0.0 : view.geometry.crest_outline.front().station;
  const double end = view.geometry.station_at_level(view.apron_level) + view.structure.length;
  seepage.horizontal = end - upstream;
  seepage.vertical =
      2.0 * (foundation.upstream_cutoff + foundation.middle_cutoff + foundation.downstream_cutoff) + view.slab_thickness;
}

std::string bligh_words(const Seepage& seepage) {
  std::string text = " All creep counted alike, by Bligh: " + quantity_token(seepage.bligh_ratio, dimension::none);
  if (seepage.bligh_needed > 0.0) text += ", where his table asks for " + quantity_token(seepage.bligh_needed, dimension::none);
  return text + ".";
}

void judge_soil(const BasinView& view, Seepage& seepage, Findings& findings) {
  const auto limits = limits_of_soil[static_cast<std::size_t>(view.site.foundation.soil)];
  seepage.creep_needed = limits.lane;
  seepage.gradient_allowed = limits.gradient;
  seepage.creep_ratio = hydraulics::creep_ratio_lane({.Lv = seepage.vertical, .Lh = seepage.horizontal, .dH = seepage.head});
  seepage.bligh_needed = limits.bligh;
  seepage.bligh_ratio = hydraulics::creep_ratio_bligh({.Lv = seepage.vertical, .Lh = seepage.horizontal, .dH = seepage.head});
  findings.push_back(limit_finding("foundation.creep", "Weighted creep ratio below crest and basin", seepage.creep_ratio,
                                   LimitSense::at_least, limits.lane, dimension::none, Status::fails,
                                   "For a head of " + quantity_token(seepage.head, dimension::length) + ": " +
                                       seepage.head_case + "." + bligh_words(seepage),
                                   "Deepen the cutoffs or lengthen the floor; a seepage analysis governs the final design.",
                                   {"lane_1935", "weighted creep, recalled table of soils", Provenance::memory}));
  findings.back().method = {&hydraulics::record::creep_ratio_lane,
                            {told(seepage.vertical, "both faces of every cutoff, and the end of the slab"),
                             floor_length(seepage), head_between_pools(seepage)}};
  findings.back().key = "foundation.downstream_cutoff";
  if (!(limits.gradient > 0.0)) return;
  const double cutoff = view.site.foundation.downstream_cutoff;
  seepage.cutoff_for_gradient = hydraulics::cutoff_depth({.b = seepage.horizontal, .H = seepage.head, .GE = limits.gradient});
  if (cutoff > 0.0)
    seepage.exit_gradient = hydraulics::cutoff_seepage({.b = seepage.horizontal, .d = cutoff, .H = seepage.head}).exit_gradient;
  findings.push_back(limit_finding("foundation.exit_gradient", "Cutoff at the end of the basin for a safe exit gradient",
                                   cutoff, LimitSense::at_least, seepage.cutoff_for_gradient, dimension::length, Status::fails,
                                   cutoff > 0.0 ? "The cutoff given leaves an exit gradient of " +
                                                      quantity_token(seepage.exit_gradient, dimension::none) + "."
                                                : "Without a cutoff the exit gradient has no limit: on soil one is needed.",
                                   "Set downstream_cutoff in [foundation] to the depth asked for.",
                                   {"khosla_1936", "safe exit gradients, recalled", Provenance::memory}));
  findings.back().method = {&hydraulics::record::cutoff_depth,
                            {floor_length(seepage), head_between_pools(seepage), given(limits.gradient, "foundation.soil")}};
  findings.back().key = "foundation.downstream_cutoff";
}

void choose_cutoff(const BasinView& view, Safety& safety) {
  auto& cutoff = safety.cutoff;
  cutoff.for_gradient = safety.seepage.on_soil ? safety.seepage.cutoff_for_gradient : 0.0;
  cutoff.degradation = view.site.river.bed_degradation;
  cutoff.for_scour = safety.scour.known ? safety.scour.grown + 1.0 : 0.0;
  cutoff.depth = std::max({cutoff.for_gradient, cutoff.for_scour + cutoff.degradation, cutoff.practical});
  const double depth = view.site.foundation.downstream_cutoff;
  safety.findings.push_back(limit_finding(
      "foundation.end_cutoff", "Cutoff at the end sill against scour, degradation and seepage", depth, LimitSense::at_least,
      cutoff.depth, dimension::length, Status::caution,
      "Deepest of " + quantity_token(cutoff.for_gradient, dimension::length) + " for the exit gradient, " +
          quantity_token(cutoff.for_scour + cutoff.degradation, dimension::length) + " for scour and degradation, and " +
          quantity_token(cutoff.practical, dimension::length) + " as a least depth.",
      "Set downstream_cutoff in [foundation], or let the stone launch into the scour.", common_practice));
  safety.findings.back().key = "foundation.downstream_cutoff";
  if (cutoff.depth == cutoff.for_gradient)
    safety.findings.back().method = {&hydraulics::record::cutoff_depth,
                                     {floor_length(safety.seepage), head_between_pools(safety.seepage),
                                      given(safety.seepage.gradient_allowed, "foundation.soil")}};
  else if (cutoff.depth > cutoff.practical)
    safety.findings.back().method = safety.scour.grown_by;
}

}  // namespace

void judge_foundation(const BasinView& view, Safety& safety) {
  auto& seepage = safety.seepage;
  worst_head(view, seepage);
  creep_path(view, seepage);
  seepage.on_soil = view.site.foundation.soil != site::Soil::rock;
  if (seepage.on_soil) {
    judge_soil(view, seepage, safety.findings);
    judge_uplift(view, safety);
    judge_drain_filter(view, safety);
  } else {
    safety.findings.push_back(
        choice_note("foundation.rock", "Head difference over the foundation", seepage.head, dimension::length,
                    "On rock creep is not judged: grouting, drains and joints of the rock govern.", common_practice));
    safety.findings.back().method = seepage.head_by;
  }
  choose_cutoff(view, safety);
}

}  // namespace quell::checks
