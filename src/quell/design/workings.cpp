#include "quell/design/workings.h"

#include <algorithm>
#include <cmath>
#include <span>

#include "quell/base/quantity_text.h"
#include "quell/design/quantities.h"
#include "quell/site/crest_foot.h"
#include "quell/site/gates.h"
#include "quell/site/jump.h"
#include "quell/site/reservoir.h"
#include "quell/site/river.h"

namespace quell::design {
namespace {

/// Energy at the start of the chute to the flow that enters the basin; none where there is none.
Outcome<site::ToeFlow> trace_entering(const PreparedSite& prepared, const PreparedCase& entry, const Option& option,
                                      Working& working) {
  const auto& type = *option.type;
  const auto setting = setting_of(prepared.site, option.width);
  auto toe = entering_flow(type, setting, entry, option.apron_level);
  if (!toe || dissipators::replaces_chute(type.record().action)) return toe;
  const auto start = site::trace_start_energy(prepared.site, entry.data.discharge, entry.data.reservoir_level, working);
  const bool one_bay = entry.bay_width > 0.0;
  const StepInput discharge = told(toe->discharge, one_bay ? "of the bay that is loaded most, which this section follows"
                                                           : "the discharge that this section follows");
  entry.chute.trace_energy(toe->apron_level, {start, one_bay ? "gates.bay_width" : "chute.end_width", discharge.words},
                           working);
  const StepInput width = one_bay                               ? given(entry.bay_width, "gates.bay_width")
                          : type.own_width(*toe, setting) > 0.0 ? told(option.width, "the type's own width")
                                                                : given(option.width, "basin.width");
  site::trace_unit_discharge(discharge, width, "at the toe", working);
  return entering_flow(type, setting, entry, option.apron_level, &working);
}

/// Crest to required tailwater at one discharge.
void trace_case(const PreparedSite& prepared, const PreparedCase& entry, const Option& option, Working& working) {
  const auto& site = prepared.site;
  const bool gates_in_water = entry.data.gate_opening > 0.0 && entry.data.reservoir_level <= site.gates.held_level;
  site::trace_crest(
      site.crest,
      told(entry.data.crest_head, entry.data.gate_opening > 0.0 ? "level of the reservoir, above the crest"
                                                                : "found by trial: the crest passes the discharge at it"),
      working);
  if (entry.bay_width > 0.0 || gates_in_water)
    site::trace_bay(site, entry.data.gate_opening, entry.data.reservoir_level, working);
  const auto& type = *option.type;
  const auto setting = setting_of(site, option.width);
  const auto toe = trace_entering(prepared, entry, option, working);
  if (!toe) return;
  if (dissipators::makes_jump(type.record().action)) site::free_jump(*toe, &working);
  type.trace_tailwater_need(*toe, setting, working);
  site::trace_tailwater(site.river, entry.data.river_discharge[0], site::TailwaterCase::low, working);
}

/// The margin itself, where the finding about it judges this discharge.
void trace_margin(const Option& option, Working& working) {
  for (const auto& finding : option.findings)
    if (finding.id == "tailwater.margin" && std::abs(finding.value - option.governing.margin) < 1e-9)
      working.add_behind(finding.method,
                         "margin of tailwater; the depth required holds the margin that the site file asks for");
}

/// Steps behind the findings that no section holds yet, each at the discharge that decides.
void trace_findings(std::span<const Finding> findings, Working& working) {
  for (const auto& finding : findings) working.add_behind(finding.method, finding.title);
}

/// The panel whose bars are pulled hardest: what leads to the pressure on them.
void trace_slab(const checks::Safety& safety, Working& working) {
  const auto pulled =
      std::max_element(safety.panels.begin(), safety.panels.end(),
                       [](const checks::SlabPanel& a, const checks::SlabPanel& b) { return a.bar_use < b.bar_use; });
  if (pulled == safety.panels.end()) return;
  working.add_behind(pulled->depth_by, "mean depth of the jump over the panel of the slab that pulls hardest at its anchors");
  working.add_behind(pulled->uplift_by, "uplift head under it, drains working");
  working.add_behind(pulled->pulses_by, "share of the pressure fluctuation that the panel feels");
}

/// The velocity over the sill, and the rules for the stone that the gradation starts from.
void trace_stone(const checks::RiverProtection& river, Working& working) {
  working.add_behind(river.unit_discharge_by, "unit discharge over the sill, where the flow near the bed is fastest");
  working.add_behind(river.velocity_by, "mean velocity over the sill there");
  working.add_behind(river.em25_by, "stone below the sill, that three fifths of the mix must reach");
  working.add_behind(river.isbash_by, "stone below the sill, that half of the mix must reach");
}

/// What leads to the scour behind the working basin.
void trace_scour(const checks::BedScour& scour, Working& working) {
  working.add_behind(scour.unit_discharge_by, "unit discharge with the deepest scour");
  working.add_behind(scour.head_by, "head between reservoir and tailwater then");
  working.add_behind(scour.depth_by, "tailwater above the bed then");
}

/// The head that seeps below the basin, and the balance of the wall that presses most on the ground.
void trace_ground(const checks::Safety& safety, Working& working) {
  if (safety.seepage.on_soil) working.add_behind(safety.seepage.head_by, "worst difference between both pools");
  working.add_behind(safety.wall.bearing_by, "balance of the wall in the load case that presses most on the ground");
}

bool goes_into(const site::ToeFlow& toe, const FindingMethod& behind) {
  return std::any_of(behind.inputs.begin(), behind.inputs.end(), [&toe](const StepInput& input) {
    return input.value == toe.V1 || input.value == toe.y1 || input.value == toe.y2;
  });
}

/// Whether a finding, or what leads to one, takes its numbers from this flow.
bool decides(const site::ToeFlow& toe, const Option& option) {
  return std::any_of(option.findings.begin(), option.findings.end(),
                     [&toe](const Finding& finding) { return goes_into(toe, finding.method); }) ||
         std::any_of(option.safety.panels.begin(), option.safety.panels.end(),
                     [&toe](const checks::SlabPanel& panel) { return goes_into(toe, panel.depth_by); });
}

/// The flow at the discharges that decide a finding, beside the governing and the largest one. Before the largest: a finding
/// without inputs leads to the last step of its method, and the largest discharge decides it.
void trace_deciding(const PreparedSite& prepared, const Option& option, Working& working) {
  if (dissipators::replaces_chute(option.type->record().action)) return;  // no step leads to its flow
  const auto setting = setting_of(prepared.site, option.width);
  for (const auto& entry : prepared.cases.first(prepared.cases.size() - 1)) {
    if (!entry.reported) continue;
    const auto toe = entering_flow(*option.type, setting, entry, option.apron_level);
    if (!toe || toe->V1 == option.governing.toe.V1 || !decides(*toe, option)) continue;
    working.open_section("Discharge " + quantity_token(entry.data.discharge, dimension::discharge),
                         "Decides findings of the sections below: the flow that enters the basin.");
    (void)trace_entering(prepared, entry, option, working);
  }
}

}  // namespace

void record_workings(const PreparedSite& prepared, const ApronLevel& apron, const dissipators::SizingInput& sizing,
                     Option& option) {
  Working& working = option.working;
  if (const auto entry = governing_case(prepared, apron)) {
    working.open_section("Governing discharge " + quantity_token(option.governing.discharge, dimension::discharge),
                         "Sets the level of the apron, in the low tailwater case.");
    trace_case(prepared, *entry, option, working);
    trace_margin(option, working);
  }
  trace_deciding(prepared, option, working);
  const auto& largest = prepared.cases.back();
  working.open_section("Largest discharge " + quantity_token(largest.data.discharge, dimension::discharge),
                       "Sets the size of the elements.");
  trace_case(prepared, largest, option, working);
  working.open_section("Size of the basin", "From the flow at the toe at the largest discharge, unless a line says otherwise.");
  option.type->size(sizing, &working);
  working.open_section("Concrete", "A first measure, to compare candidates; not a structural design.");
  concrete(quantity_input(option, sizing.flows), option.structure, &working);
  const std::span<const Finding> findings(option.findings);
  const std::size_t of_safety = option.safety.findings.size();
  working.open_section("Limits of use and checks",
                       "Steps behind findings that no section above holds, at the discharge that decides.");
  trace_findings(findings.first(findings.size() - of_safety), working);
  if (!option.safety.judged) return;
  working.open_section("Safety of structure and river",
                       "Preliminary; a structural engineer must design slab, anchors and walls.");
  trace_slab(option.safety, working);
  trace_stone(option.safety.river, working);
  trace_scour(option.safety.scour, working);
  trace_ground(option.safety, working);
  trace_findings(findings.last(of_safety), working);
}

}  // namespace quell::design
