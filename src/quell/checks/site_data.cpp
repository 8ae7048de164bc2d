// Checks of what the site's own data gave: floods, reservoir, river.
#include <algorithm>

#include "quell/base/quantity_text.h"
#include "quell/checks/checks.h"
#include "quell/dissipators/parts.h"
#include "quell/hydraulics/definitions.h"

namespace quell::checks {

using dissipators::common_practice;
using dissipators::limit_finding;

Findings flood_record_length(const BasinView& view) {
  if (!view.study.has_frequency) return {};
  double longest = 0.0;
  for (const auto& inflow : view.study.inflows)
    if (inflow.peak_from_record) longest = std::max(longest, inflow.return_period);
  if (longest == 0.0) return {};
  return {keyed("floods.record.file",
                limit_finding("flood.record_length", "Return period of the floods taken from the record, over its length",
                              longest / view.study.frequency.years, LimitSense::at_most, 2.0, dimension::none, Status::caution,
                              "Longest return period taken from the law that was fitted to the yearly floods.",
                              "Beyond twice the length of the record the law is a guess: take a regional study or a flood from "
                              "rainfall, and design for the upper confidence limit in the meantime.",
                              common_practice))};
}

Findings flood_freeboard(const BasinView& view) {
  const auto& reservoir = view.site.reservoir;
  if (!reservoir.has_dam_crest || view.study.inflows.empty()) return {};
  const auto highest = [](const site::RoutedInflow& a, const site::RoutedInflow& b) { return a.peak_level < b.peak_level; };
  const auto& worst = *std::max_element(view.study.inflows.begin(), view.study.inflows.end(), highest);
  const StepInput crest = given(reservoir.dam_crest_level, "reservoir.dam_crest_level");
  Findings findings{
      worked(hydraulics::record::level_difference, {crest, told(worst.peak_level, "highest level of the routed floods")},
             limit_finding(
                 "reservoir.freeboard", "Freeboard of the dam above the highest routed level",
                 reservoir.dam_crest_level - worst.peak_level, LimitSense::at_least, reservoir.freeboard, dimension::length,
                 Status::fails,
                 "'" + worst.name + "' raises the reservoir to " + quantity_token(worst.peak_level, dimension::length) +
                     ". Wind set-up and waves are not in it.",
                 "Widen the spillway, lower the level before the flood, or raise the dam; the local code sets the freeboard.",
                 common_practice))};
  double one_shut = 0.0;
  for (const auto& inflow : view.study.inflows) one_shut = std::max(one_shut, inflow.one_shut_peak_level);
  if (one_shut > 0.0)
    findings.push_back(worked(
        hydraulics::record::level_difference, {crest, told(one_shut, "highest level of the routed floods, one gate shut")},
        limit_finding(
            "reservoir.freeboard_one_gate_shut", "Dam not overtopped where one gate stays shut",
            reservoir.dam_crest_level - one_shut, LimitSense::at_least, 0.0, dimension::length, Status::caution,
            "With one gate shut the floods raise the reservoir to at most " + quantity_token(one_shut, dimension::length) + ".",
            "Give the gates a second drive, add a bay, or let an emergency spillway take what one gate cannot.",
            common_practice)));
  return findings;
}

Findings flood_storage_range(const BasinView& view) {
  const auto beyond = [](const site::RoutedInflow& inflow) { return inflow.storage_extrapolated; };
  if (std::none_of(view.study.inflows.begin(), view.study.inflows.end(), beyond)) return {};
  double highest = 0.0;
  for (const auto& inflow : view.study.inflows)
    highest = highest == 0.0 ? inflow.peak_level : std::max(highest, inflow.peak_level);
  return {keyed("reservoir.file",
                limit_finding("reservoir.storage_range", "Routed levels within the storage table", highest, LimitSense::at_most,
                              view.site.reservoir.level.back(), dimension::length, Status::caution,
                              "Above its last row the table is continued by the slope of the last two.",
                              "Extend the storage table to above the highest level.", common_practice))};
}

Findings river_rating_range(const BasinView& view) {
  const auto& fit = view.study.river.fit;
  if (view.site.river.gauging.discharge.empty() || !(fit.highest_gauged > 0.0)) return {};
  return {keyed(
      "river.gauging.file",
      limit_finding("river.rating_range", "Check flood within reach of the gaugings",
                    view.site.discharges.check_flood / fit.highest_gauged, LimitSense::at_most, 1.5, dimension::none,
                    Status::caution,
                    "Check flood over the highest gauged discharge, " +
                        quantity_token(fit.highest_gauged, dimension::discharge) + "; beyond it the power law is extended.",
                    "Survey the river and compute the water surface above the gauged range: the law holds only while the "
                    "same control acts.",
                    common_practice))};
}

Findings river_profile_control(const BasinView& view) {
  if (view.site.river.reach.sections.size() < 2) return {};
  const int held = view.study.river.held_at_critical;
  return {keyed("river.survey.sections",
                counted(limit_finding(
                    "river.critical_sections", "Subcritical flow through every surveyed section", held, LimitSense::at_most,
                    0.0, dimension::none, Status::caution,
                    held > 0 ? "Sections at which the check flood, in the expected case, found no subcritical level: they are "
                               "held at critical depth."
                             : "The check flood, in the expected case, stays subcritical everywhere.",
                    "Survey more sections there. Where the control is real, check that it stays, and compute the mixed "
                    "regime.",
                    common_practice)))};
}

Findings river_profile_start(const BasinView& view) {
  if (view.site.river.reach.sections.size() < 2) return {};
  return {keyed(
      "river.survey.control",
      limit_finding("river.profile_start", "Tailwater independent of the level at which the profile starts",
                    view.study.river.start_spread, LimitSense::at_most, 0.01, dimension::length, Status::caution,
                    "Difference at the basin between starts {{0.5|6,0,0|3}} apart at the last section, at the check flood.",
                    "Survey the river further downstream, or make sure of the level at the last section: the tailwater "
                    "carries its error.",
                    common_practice))};
}

Findings river_profile_spacing(const BasinView& view) {
  if (view.site.river.reach.sections.size() < 2) return {};
  const bool wide = view.study.river.spacing_wide;
  return {keyed("river.survey.longest_spacing",
                counted(limit_finding(
                    "river.section_spacing", "Conveyance of neighbouring sections within 0.7 to 1.4 of each other",
                    wide ? 1.0 : 0.0, LimitSense::at_most, 0.0, dimension::none, Status::caution,
                    wide ? "It changes more between some neighbours, and the friction slope is a mean over the step."
                         : "It changes slowly enough for the mean friction slope.",
                    "Survey sections between them, or let quell interpolate some with longest_spacing.", common_practice)))};
}

Findings river_degradation_estimate(const BasinView& view) {
  const auto& estimate = view.study.river.degradation;
  if (!estimate.known()) return {};
  return {keyed("river.bed_degradation",
                limit_finding("river.degradation_estimate", "Allowance for degradation not below the estimate",
                              view.site.river.bed_degradation, LimitSense::at_least, estimate.depth - 1e-9, dimension::length,
                              Status::caution,
                              "Depth to an armoured bed " + quantity_token(estimate.to_armour, dimension::length) +
                                  ", to the stable slope " + quantity_token(estimate.to_slope, dimension::length) +
                                  "; zero where it could not be estimated. The smaller one that could counts.",
                              "Raise the allowance, or show why the bed will not sink so far.",
                              {"pemberton_lara_1984", "armouring and stable slope", Provenance::memory}))};
}

}  // namespace quell::checks
