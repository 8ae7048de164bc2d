// The river below the sill: velocity, stone by the published rules side by side, scour of a bed left bare, the cutoff.
#include <algorithm>
#include <cmath>

#include "quell/base/constants.h"
#include "quell/base/quantity_text.h"
#include "quell/checks/origins.h"
#include "quell/checks/safety.h"
#include "quell/dissipators/parts.h"
#include "quell/hydraulics/definitions.h"
#include "quell/hydraulics/jet.h"
#include "quell/hydraulics/protection.h"
#include "quell/hydraulics/river_protection.h"
#include "quell/hydraulics/section.h"

namespace quell::checks {

using dissipators::at_discharge;
using dissipators::choice_note;
using dissipators::common_practice;
using dissipators::limit_finding;
using hydraulics::stone_gravity;

namespace {

constexpr double bed_factor = 1.3;         ///< velocity near the bed over the mean, well-formed even jump
constexpr double uneven_bed_factor = 1.5;  ///< low Froude numbers and unequal gates
constexpr double exit_turbulence = 0.30;   ///< shortly below a basin; recalled as 0.25 to 0.35
constexpr double protected_turbulence = 0.25;
constexpr double day = 86400.0;

constexpr StepInput gravity_of_stone() {
  return told(stone_gravity, "usual specific gravity of stone and sand, fixed here");
}

double flow_width(const BasinView& view) {
  return leaving_width(view).value;
}

StepInput depth_over_sill(const RiverProtection& river) {
  return told(river.depth, "tailwater over the end sill, critical depth at least");
}
StepInput velocity_over_sill(const RiverProtection& river) {
  return told(river.mean_velocity, "unit discharge over the depth above the end sill");
}
/// By the factors above.
StepInput velocity_near_bed(const RiverProtection& river) {
  return told(river.bed_velocity, "mean velocity over the sill times 1.3, or 1.5 below F1 4.5");
}

/// The largest velocity over the sill, of all discharges and tailwater cases.
void find_velocity(const BasinView& view, RiverProtection& river) {
  for (const auto& state : view.states) {
    const double depth = state.available_depth - view.structure.end_sill_height;
    const double q = state.toe->discharge / flow_width(view);
    // Where the sill controls the flow it passes at critical depth, however low the river.
    const double critical = hydraulics::critical_depth(q);
    const double water = std::max(depth, critical);
    const double factor = state.toe->F1 < 4.5 ? uneven_bed_factor : bed_factor;
    const double bed = factor * q / water;
    if (bed <= river.bed_velocity) continue;
    river.discharge = state.toe->discharge;
    river.tailwater_case = state.tailwater_case;
    river.depth = water;
    river.mean_velocity = q / water;
    river.bed_velocity = bed;
    river.residual_head = river.mean_velocity * river.mean_velocity / (2.0 * gravity);
  }
  river.unit_discharge_by = {&hydraulics::record::unit_discharge,
                             {told(river.discharge, "discharge with the fastest flow near the bed"), leaving_width(view)}};
  river.velocity_by = {
      &hydraulics::record::mean_velocity,
      {told(river.discharge / flow_width(view), "that discharge over the width at the basin's end"), depth_over_sill(river)}};
}

void size_stone(const BasinView& view, RiverProtection& river) {
  river.stone_em25 = hydraulics::riprap_em25(river.bed_velocity);
  river.stone_isbash_high = hydraulics::riprap_isbash({.V = river.bed_velocity, .s = stone_gravity, .C = 0.86});
  river.em25_by = {&hydraulics::record::riprap_em25, {velocity_near_bed(river)}};
  river.isbash_by = {
      &hydraulics::record::riprap_isbash,
      {velocity_near_bed(river), gravity_of_stone(), told(0.86, "stone in very turbulent water, by the source")}};
  river.stone_isbash_low = hydraulics::riprap_isbash({.V = river.bed_velocity, .s = stone_gravity, .C = 1.20});
  river.stone_escarameia_may =
      hydraulics::riprap_escarameia_may({.ub = river.mean_velocity, .r = exit_turbulence, .s = stone_gravity});
  river.stone_maynord_30 = hydraulics::riprap_maynord(
      {.V = river.mean_velocity, .d = river.depth, .s = stone_gravity, .Cv = 1.25, .K1 = 1.0, .Sf = 1.1});
  const auto gradation = graded_stone(river);
  river.stone = gradation.D50;
  river.stone_mass = hydraulics::stone_mass(river.stone, stone_gravity);
  river.largest_stone = gradation.band * gradation.D100;
  // The larger of the largest stone and 1.5 medians, and half more because it is placed under water.
  river.thickness = 1.5 * std::max(river.largest_stone, 1.5 * gradation.band * river.stone);
  for (const auto& state : view.states) {
    const double depths = state.toe->F1 < 4.5 ? 10.0 : 5.0;
    river.length = std::max({river.length, 10.0, depths * state.toe->y2});
  }
  river.volume = river.length * river.thickness * flow_width(view);
}

/// What leads to the depth behind the working basin.
void name_scour(const BasinView& view, const TailwaterState& state, const hydraulics::BedScourInput& input, BedScour& scour) {
  const auto tailwater = tailwater_level(view, state);
  scour.unit_discharge_by = {&hydraulics::record::unit_discharge,
                             {told(state.toe->discharge, "discharge with the deepest scour"), leaving_width(view)}};
  scour.head_by = {&hydraulics::record::level_difference, {reservoir_level(state), tailwater}};
  scour.depth_by = {&hydraulics::record::level_difference, {tailwater, given(view.site.river.bed_level, "river.bed_level")}};
  scour.working_by = {&hydraulics::record::scour_novak,
                      {told(input.q, "discharge with the deepest scour, over the width"),
                       told(input.H, "reservoir less tailwater, 0.1 m at least"), told(input.h, "tailwater above the bed"),
                       given(input.d90, "river.bed.coarse_size")}};
}

/// Over all discharges: behind the working basin, and with the jump swept out.
void find_scour(const BasinView& view, const RiverProtection& river, BedScour& scour) {
  if (!view.site.river.bed.given) return;
  const auto& bed = view.site.river.bed;
  scour.known = true;
  scour.swept_out_least = no_limit;
  for (const auto& state : view.states) {
    const double depth = state.tailwater_level - view.site.river.bed_level;
    if (!(depth > 0.05)) continue;
    const double q = state.toe->discharge / flow_width(view);
    const double head = std::max(0.1, state.toe->reservoir_level - state.tailwater_level);
    const hydraulics::BedScourInput input{.q = q, .H = head, .h = depth, .d90 = bed.coarse_size};
    if (const double depth_here = hydraulics::scour_novak(input); depth_here > scour.working) {
      scour.working = depth_here;
      name_scour(view, state, input, scour);
    }
    if (state.toe->discharge < view.states.back().toe->discharge) continue;
    const double jets[] = {hydraulics::scour_schoklitsch(input) - depth, hydraulics::scour_jaeger(input) - depth,
                           hydraulics::scour_veronese({.q = q, .H = head, .h = depth, .d_m = bed.mean_size}) - depth};
    scour.swept_out = std::max(scour.swept_out, *std::max_element(std::begin(jets), std::end(jets)));
    scour.swept_out_least = std::min(scour.swept_out_least, std::max(0.0, *std::min_element(std::begin(jets), std::end(jets))));
  }
  if (scour.swept_out_least >= no_limit) scour.swept_out_least = 0.0;
  const auto growth = hydraulics::scour_growth({.h0 = river.depth,
                                                .U = river.mean_velocity,
                                                .d50 = bed.mean_size,
                                                .r0 = protected_turbulence,
                                                .s = stone_gravity,
                                                .t = scour.grown_days * day});
  scour.critical_velocity = growth.critical_velocity;
  scour.grown_by = {&hydraulics::record::scour_growth,
                    {depth_over_sill(river), velocity_over_sill(river), given(bed.mean_size, "river.bed.mean_size"),
                     told(protected_turbulence, "turbulence behind a protected bed, fixed here"), gravity_of_stone(),
                     told(scour.grown_days * day, "one day of the flow")}};
  // The law of growth holds up to about the depth of the flow.
  scour.grown = std::min(growth.depth, river.depth);
}

void add_findings(const RiverProtection& river, const BedScour& scour, Findings& findings) {
  const std::string where =
      at_discharge(river.discharge) + " in the " + std::string(site::name_of(river.tailwater_case)) + " tailwater case";
  const FindingMethod stone = graded_by(river);
  findings.push_back(choice_note("river.stone", "Median stone below the sill, by two rules", river.stone, dimension::length,
                                 "For " + quantity_token(river.bed_velocity, dimension::velocity) + " near the bed " + where +
                                     ": " + quantity_token(river.stone_em25, dimension::length) +
                                     " by Engineering Monograph 25, which three fifths of the mix must reach, and " +
                                     quantity_token(river.stone_isbash_high, dimension::length) +
                                     " by Isbash with 0.86, which half of it must. Layer " +
                                     quantity_token(river.thickness, dimension::length) + " thick over " +
                                     quantity_token(river.length, dimension::length) + ".",
                                 {"peterka_1984", "sec. 10, beside Isbash", Provenance::memory}));
  findings.back().method = stone;
  findings.push_back(limit_finding(
      "river.stone_place", "Median stone that can be placed and found", river.stone, LimitSense::at_most, 1.5,
      dimension::length, Status::caution, "The larger of what the two rules ask for.",
      "Lower the velocity over the sill by a wider or deeper basin, or line the bed in concrete.", common_practice));
  findings.back().method = stone;
  if (!scour.known) {
    findings.push_back(
        limit_finding("river.scour", "Scour below the basin, not judged", 0.0, LimitSense::note, 0.0, dimension::none,
                      Status::caution, "The site file has no [river.bed]: the grain of the bed is not known.",
                      "Give mean_size and coarse_size in [river.bed]: the depth of the cutoff at the sill follows from them.",
                      common_practice));
    findings.back().key = "river.bed.mean_size";
    return;
  }
  findings.push_back(choice_note("river.scour", "Scour behind a working basin where the bed is bare, below the bed",
                                 scour.working, dimension::length,
                                 "An upper end of the published depths; swept out it would be " +
                                     quantity_token(scour.swept_out_least, dimension::length) + " to " +
                                     quantity_token(scour.swept_out, dimension::length) + " at the check flood.",
                                 {"novak_2007", "about half of Jaeger's depth below the bed", Provenance::memory}));
  findings.back().method = scour.working_by;
  findings.push_back(limit_finding("river.bed_stays", "Critical velocity of the bed over the mean velocity leaving the sill",
                                   scour.critical_velocity / river.mean_velocity, LimitSense::at_least, 1.0, dimension::none,
                                   Status::caution,
                                   "Behind the stone the bare bed would sink by " +
                                       quantity_token(scour.grown, dimension::length) + " in a day of this flow.",
                                   "Let the cutoff at the sill or a launching apron reach below the scour.",
                                   {"hoffmans_verheij_1997", "growth of scour behind a protected bed", Provenance::memory}));
  findings.back().method = scour.grown_by;
}

}  // namespace

void judge_river(const BasinView& view, Safety& safety) {
  find_velocity(view, safety.river);
  if (!(safety.river.bed_velocity > 0.0)) return;
  size_stone(view, safety.river);
  find_scour(view, safety.river, safety.scour);
  add_findings(safety.river, safety.scour, safety.findings);
  judge_stone_layers(view, safety);
}

}  // namespace quell::checks
