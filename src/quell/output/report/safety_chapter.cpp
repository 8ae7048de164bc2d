// The structure that survives: ways to fail, slab and anchors, walls, foundation, protection of the river, operation, model.
#include <fmt/format.h>
#include <cmath>

#include "quell/base/quantity_text.h"
#include "quell/output/drawing/figures.h"
#include "quell/output/report/chapters.h"
#include "quell/output/report/safety_tables.h"

namespace quell::output {

namespace {

using checks::Safety;

std::string status_word(Status status) {
  return std::string(name_of(status));
}

/// Every way to fail that the trade knows, with the worst of the findings that look at it.
void write_modes(Html& html, const design::Option& option, const Printer& p) {
  html.element("h3", "Ways to fail, and what looks at each");
  html.open_table("", {{"Way to fail", ""}, {"Worst", ""}, {"What was found", ""}});
  for (const auto& mode : checks::failure_modes(option.findings)) {
    const Finding* worst = nullptr;
    for (const std::size_t i : mode.findings)
      if (worst == nullptr || option.findings[i].status > worst->status) worst = &option.findings[i];
    const std::string name =
        "<b>" + escape_xml(mode.name) + "</b><br/><span class=\"q\">" + escape_xml(mode.mechanism) + "</span>";
    if (worst == nullptr) {
      html.row({name, "not looked at", "No check of this type of dissipator looks at it."});
      continue;
    }
    const std::string found = escape_xml(p.words(worst->title)) + ": " + escape_xml(p.words(worst->text)) +
                              fmt::format(" <span class=\"q\">({} {} look at it)</span>", mode.findings.size(),
                                          mode.findings.size() == 1 ? "rule" : "rules");
    html.row({name, status_word(mode.worst), found}, mode.worst == Status::fails ? "strong" : "");
  }
  html.close_table();
}

void write_slab(Html& html, const Safety& safety, const Printer& p) {
  if (safety.panels.empty()) return;
  const std::string m = p.length_unit();
  html.element("h3", "Slab and anchors");
  html.element(
      "p", fmt::format("Slab {} thick. Heads are above the top of the floor; thicknesses would hold without anchors. Joints "
                       "sealed, open on four sides, and one failed are states that exclude each other.",
                       p.with_unit(p.level(safety.slab_thickness), m)));
  html.open_table("dense", {{with_head("Panel from toe", m), "n"},
                            {with_head("Depth over it", m), "n"},
                            {"Range of pulses, V1²/2g", "n"},
                            {with_head("Head, drains working", m), "n"},
                            {with_head("Head, drains failed", m), "n"},
                            {with_head("Pulse, sealed", m), "n"},
                            {with_head("Pulse, open", m), "n"},
                            {with_head("Thick, working", m), "n"},
                            {with_head("Thick, failed", m), "n"},
                            {with_head("Thick, joints open", m), "n"},
                            {with_head("Thick, one joint", m), "n"},
                            {with_head("Thick, empty", m), "n"}});
  for (const auto& panel : safety.panels)
    html.row({p.level(panel.from) + " – " + p.level(panel.to), p.level(panel.depth), p.ratio(panel.pressure_range),
              p.level(panel.uplift_working), p.level(panel.uplift_failed), p.level(panel.dynamic_sealed),
              p.level(panel.dynamic_open), p.level(panel.thickness_working), p.level(panel.thickness_failed),
              p.level(panel.thickness_open), p.level(panel.thickness_one), p.level(panel.thickness_empty)});
  html.close_table();
  if (!(safety.panels.front().bars > 0)) return;
  html.open_table("",
                  {{with_head("Panel from toe", m), "n"},
                   {"Net pressure", "n"},
                   {"Bars in the panel", "n"},
                   {"Force on a bar", "n"},
                   {"Stress over allowed", "n"},
                   {"With joints sealed", "n"},
                   {"All open", "n"},
                   {"One failed", "n"},
                   {with_head("Grid that would do", m), "n"},
                   {with_head("Length in rock", m), "n"}},
                  "Anchors as a first measure");
  for (const auto& panel : safety.panels)
    html.row({p.level(panel.from) + " – " + p.level(panel.to), p.quantity(panel.net_pressure, dimension::pressure, 3),
              std::to_string(panel.bars), p.quantity(panel.bar_force, dimension::force, 3), p.ratio(panel.bar_use),
              p.ratio(panel.use_sealed), p.ratio(panel.use_open), p.ratio(panel.use_failed), p.level(panel.grid_needed),
              p.level(panel.bar_length)});
  html.close_table();
}

/// Factor over what it needs; a dash where nothing drives the wall that way.
std::string factor_text(const Printer& p, double factor, double needed) {
  if (!std::isfinite(factor)) return "–";
  return (factor >= 1000.0 ? "&gt; 999" : p.ratio(factor)) + " / " + p.ratio(needed);
}

void write_walls(Html& html, const Safety& safety, const Printer& p) {
  const auto& wall = safety.wall;
  if (wall.cases.empty()) return;
  const std::string m = p.length_unit();
  html.element("h3", "Walls");
  html.element(
      "p",
      fmt::format(
          "A first L-shaped section, {} high, {} thick, base {} wide, each load case in its worst state, per length of "
          "wall. Water stands above the apron; force and moment act on the stem at the floor, the moment in force times "
          "length over length. The pulse is the local peak, taken over the whole wetted height.",
          p.with_unit(p.level(wall.height), m), p.with_unit(p.level(wall.thickness), m), p.with_unit(p.level(wall.base), m)));
  html.open_table("dense cases", {{"Load case", ""},
                                  {with_head("Discharge", p.discharge_unit()), "n"},
                                  {with_head("Water behind", m), "n"},
                                  {with_head("Water inside", m), "n"},
                                  {"Pulse", "n"},
                                  {"Drives", ""},
                                  {"Force", "n"},
                                  {"Moment", "n"},
                                  {"Overturning / needed", "n"},
                                  {"Sliding / needed", "n"},
                                  {"Bearing", "n"}});
  for (const auto& load : wall.cases) {
    const bool drives = load.force > 0.0;
    html.row(
        {escape_xml(load.name), load.discharge > 0.0 ? p.discharge(load.discharge) : "–", p.level(load.outside),
         p.level(load.inside), load.pulse > 0.0 ? p.quantity(load.pulse, dimension::pressure, 3) : "–",
         !drives          ? "nothing"
         : load.is_inward ? "inward"
                          : "outward",
         drives ? p.quantity(load.force, {0, 6, -12}, 3) : "–", drives ? p.quantity(load.moment, dimension::force, 3) : "–",
         factor_text(p, load.overturning, load.overturning_needed), factor_text(p, load.sliding, load.sliding_needed),
         load.leaves_base ? "leaves the base"
         : drives         ? p.quantity(load.largest_bearing, dimension::pressure, 3)
                          : "–"},
        load.overturning < load.overturning_needed || load.sliding < load.sliding_needed ? "strong" : "");
  }
  html.close_table();
}

void write_forces(Html& html, const Safety& safety, const Printer& p) {
  const auto& vibration = safety.vibration;
  if (safety.elements.empty() && !(safety.invert.radius > 0.0) && !(vibration.jump > 0.0)) return;
  html.element("h3", "Forces on parts, and their frequencies");
  html.open_table("", {{"Part", ""}, {"Mean", "n"}, {"Peak", "n"}, {"Note", "q"}});
  for (const auto& force : safety.elements)
    html.row({escape_xml(force.name), p.quantity(force.mean, dimension::force, 3), p.quantity(force.peak, dimension::force, 3),
              "peak by [elements] peak_factor, an envelope"});
  if (safety.invert.radius > 0.0)
    html.row({"Pressure on the curve of the invert", p.quantity(safety.invert.pressure, dimension::pressure, 3), "–",
              "of which the curve adds " + p.quantity(safety.invert.added, dimension::pressure, 3)});
  const auto rate = [&](std::string_view name, double value, std::string_view note) {
    if (value > 0.0) html.row({escape_xml(name), p.quantity(value, {0, 0, -6}, 3), "–", escape_xml(note)});
  };
  rate("Pulses of the jump", vibration.jump, "largest over the discharges; order of size");
  rate("First frequency of the wall", vibration.wall, "cantilever, dry");
  rate("Lowest frequency of the anchored panels", vibration.panel, "on the bars alone, dry");
  html.close_table();
}

void write_river_protection(Html& html, const Safety& safety, const Printer& p) {
  const auto& river = safety.river;
  if (!(river.stone > 0.0)) return;
  const std::string m = p.length_unit();
  html.element("h3", "Protection of the river");
  html.element("p",
               fmt::format("Governed by {} in the {} tailwater case: {} over the sill, {} near the bed.",
                           p.with_unit(p.discharge(river.discharge), p.discharge_unit()), site::name_of(river.tailwater_case),
                           p.with_unit(p.velocity(river.mean_velocity), p.velocity_unit()),
                           p.with_unit(p.velocity(river.bed_velocity), p.velocity_unit())));
  html.open_table("", {{"Rule for the stone", ""}, {with_head("Median size", m), "n"}, {"Use", ""}});
  const auto row = [&](std::string_view rule, double size, std::string_view use) {
    html.row({escape_xml(rule), p.size(size), escape_xml(use)});
  };
  row("Engineering Monograph 25", river.stone_em25, "below basins; three fifths of the mix must be as large");
  row("Isbash, 0.86", river.stone_isbash_high, "high turbulence, below basins; half of the mix must be as large");
  row("Escarameia and May, turbulence 0.30", river.stone_escarameia_may, "from the turbulence, which is known poorly");
  row("Isbash, 1.20", river.stone_isbash_low, "from ten depths downstream, or a proven quiet exit");
  row("Maynord, D30", river.stone_maynord_30, "channels; barred just below a basin, for comparison");
  html.close_table();
  html.element("p", fmt::format("Median {} ({}), largest about {}, layer {} thick over {} beyond the sill, about {} in all.",
                                p.with_unit(p.size(river.stone), m), p.quantity(river.stone_mass, dimension::mass, 3),
                                p.with_unit(p.size(river.largest_stone), m), p.with_unit(p.size(river.thickness), m),
                                p.with_unit(p.level(river.length), m), p.with_unit(p.volume(river.volume), p.volume_unit())));
  write_stone_layers(html, safety.layers, p);
}

void write_foundation(Html& html, const Safety& safety, const Printer& p) {
  const std::string m = p.length_unit();
  const auto& seepage = safety.seepage;
  html.element("h3", "Foundation and end cutoff");
  html.open_table("", {{"Quantity", ""}, {"Value", "n"}, {"Note", "q"}});
  const auto row = [&](std::string_view name, const std::string& value, std::string_view note) {
    html.row({escape_xml(name), value, escape_xml(note)});
  };
  row("Worst head difference", p.with_unit(p.level(seepage.head), m), p.words(seepage.head_case));
  if (seepage.on_soil) {
    row("Weighted creep ratio (Lane)", p.ratio(seepage.creep_ratio), "at least " + p.ratio(seepage.creep_needed));
    row("Creep ratio, all contact alike (Bligh)", p.ratio(seepage.bligh_ratio),
        seepage.bligh_needed > 0.0 ? "at least " + p.ratio(seepage.bligh_needed) : "no value for this soil");
    if (seepage.exit_gradient > 0.0)
      row("Exit gradient", p.ratio(seepage.exit_gradient), "at most " + p.ratio(seepage.gradient_allowed));
  }
  const auto& cutoff = safety.cutoff;
  row("Cutoff for the exit gradient", p.with_unit(p.level(cutoff.for_gradient), m), seepage.on_soil ? "" : "rock");
  row("Cutoff for scour after a day, and " + p.words(round_token(1.0, dimension::length)),
      p.with_unit(p.level(cutoff.for_scour), m), safety.scour.known ? "behind the stone" : "bed material not given");
  row("Degradation of the bed", p.with_unit(p.level(cutoff.degradation), m), "added to the scour");
  row("Cutoff at the end sill", p.with_unit(p.level(cutoff.depth), m),
      "deepest of these, at least " + p.words(round_token(2.0, dimension::length)));
  if (safety.scour.known)
    row("Scour if the jump is swept out, below the bed",
        p.level(safety.scour.swept_out_least) + " to " + p.with_unit(p.level(safety.scour.swept_out), m),
        "three formulas at the check flood");
  html.close_table();
  write_uplift_points(html, safety, p);
}

void write_operation(Html& html, const Safety& safety, const Printer& p) {
  html.element("h3", "Operation and inspection");
  if (!safety.operation.empty()) {
    const std::string m = p.length_unit();
    html.open_table("",
                    {{"Opening", ""},
                     {with_head("Reservoir", m), "n"},
                     {with_head("Discharge", p.discharge_unit()), "n"},
                     {with_head("Tailwater needed", m), "n"},
                     {with_head("Tailwater, low", m), "n"},
                     {"For the operator", ""}},
                    "Which openings are allowed");
    for (const auto& row : safety.operation)
      html.row(
          {escape_xml(row.pattern), p.level(row.reservoir_level), p.discharge(row.discharge), p.level(row.tailwater_needed),
           p.level(row.tailwater_low), row.allowed ? "allowed" : "only when the tailwater stands at the level needed"},
          row.allowed ? "" : "strong");
    html.close_table();
  }
  html.open("ul");
  html.element("li", "Open and close the gates evenly, from the middle outward, in small equal steps.");
  html.element("li",
               "Inspect after the first operation, after every flood above about a quarter of the design flood, after any long "
               "run, and dry or by divers every five to six years.");
  html.element(
      "li", p.words("Look for offsets above {{0.003|6,0,0|3}} to {{0.005|6,0,0|3}} into the flow, open joints, hollow sound, "
                    "changed flow of drains, stones in the basin, worn concrete and bare steel, pits at blocks, scour at the "
                    "sill, moved walls, lost stone."));
  html.element("li",
               "Compute flotation before the basin is pumped out; lower slowly with the relief drains open and the piezometers "
               "watched.");
  html.element("li", "Keep people out by booms, fences, signs and sirens; give the walls ways out and rescue rings.");
  html.close();
}

void write_model(Html& html, const Safety& safety, const Printer& p) {
  const auto& model = safety.model;
  html.element("h3", "Physical model");
  html.element("p", escape_xml(p.words(model.rule)));
  if (!(model.scale > 0.0)) return html.element("p", "No scale serves the laboratory given: see the finding model.scale.");
  html.open_table("", {{"Model", ""}, {"Value", "n"}});
  const auto row = [&](std::string_view name, const std::string& value) { html.row({escape_xml(name), value}); };
  row("Scale", fmt::format("1 : {:.0f}{}", model.scale, model.is_section ? ", section in a flume" : ""));
  row("Length of the reach in the model", p.with_unit(p.level(model.length / model.scale), p.length_unit()));
  row("Discharge at the check flood", p.quantity(model.discharge, dimension::discharge, 3));
  row("Depth at the toe", p.with_unit(p.size(model.depth), p.length_unit()));
  row("Velocity at the toe", p.with_unit(p.velocity(model.velocity), p.velocity_unit()));
  row("Reynolds number", round_number(model.reynolds));
  row("Root of the Weber number", fmt::format("{:.0f}; above 140 for air", model.weber_root));
  row("Time in the model for an hour in the river", fmt::format("{:.0f} min", 60.0 / model.time_scale));
  html.close_table();
  html.element(
      "p",
      "Mean pressures and levels scale; air, spray, cavitation and the strength of rock do not, and air is seen too small. A "
      "movable bed compares variants; its depths are not those of the river.");
  write_model_runs(html, model, p);
}

}  // namespace

void write_safety(Html& html, const ReportData& data, Figures& figures) {
  start_chapter(html, "safety");
  if (data.chosen == nullptr || !data.chosen->safety.judged) return html.element("p", "Nothing was sized to be judged.");
  const auto& safety = data.chosen->safety;
  const auto& p = data.print;
  html.element(
      "p",
      "First checks of what makes the basin stand and the river hold, over all discharges and the empty basin. Structural "
      "numbers are preliminary: a structural engineer must design them. Coefficients of the pressure fluctuation have no "
      "published table here; they are inputs with an envelope for default.");
  write_modes(html, *data.chosen, p);
  write_slab(html, safety, p);
  write_walls(html, safety, p);
  write_forces(html, safety, p);
  write_foundation(html, safety, p);
  write_river_protection(html, safety, p);
  write_operation(html, safety, p);
  figures.add(html, operation_figure_svg(*data.chosen, p.units()),
              "Openings of the gates: squares are the tailwater that each needs, rings what the river gives in the low case.");
  write_model(html, safety, p);
}

}  // namespace quell::output
