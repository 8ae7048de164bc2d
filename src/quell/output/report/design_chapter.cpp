// The chosen design in detail, and the other candidates in brief.
#include <fmt/format.h>

#include <cmath>

#include "quell/output/report/chapters.h"

namespace quell::output {

namespace {

struct DimensionRow {
  std::string name;
  double value;
  std::string number, unit, note;
};

std::string length_note(const dissipators::Structure& structure, const Printer& p) {
  const std::string at = "at " + p.with_unit(p.discharge(structure.governing_length_discharge), p.discharge_unit());
  const bool held = structure.required_length > 0.0 && structure.length != structure.required_length;
  if (!held) return "fixed by the jump " + at;
  return "held by the site file; the type asks for " + p.with_unit(p.level(structure.required_length), p.length_unit()) + " " +
         at;
}

std::vector<DimensionRow> levels_and_lengths(const design::Option& option, const Printer& p) {
  const std::string m = p.length_unit();
  const auto& structure = option.structure;
  const auto row = [&](std::string name, double value, std::string note) {
    return DimensionRow{std::move(name), value, p.level(value), m, std::move(note)};
  };
  std::vector<DimensionRow> rows{row("Apron level", option.apron_level, "rounded down to the step asked for"),
                                 row("Toe of the chute, station from the crest", option.chute_end_station, ""),
                                 row("Clear width", option.width, ""),
                                 row("Length, toe to end of sill", option.length, length_note(structure, p)),
                                 row("Wall height above the apron", option.wall_height, ""),
                                 row("Wall top level", option.wall_top_level, "")};
  if (structure.freeboard > 0.0)
    rows.push_back(row("Freeboard", structure.freeboard,
                       option.type->record().walls_from_tailwater ? "above the highest tailwater"
                                                                  : "above the higher of tailwater and sequent depth"));
  if (structure.end_width > option.width * (1.0 + 1e-9))
    rows.push_back(row("Clear width at the downstream end", structure.end_width, ""));
  if (structure.end_sill_height > 0.0) {
    rows.push_back(row("End sill height", structure.end_sill_height, "above the apron"));
    rows.push_back(row("End sill level", option.end_sill_level, ""));
  }
  if (structure.invert_radius > 0.0)
    rows.push_back(row("Smallest radius between chute and apron", structure.invert_radius, ""));
  return rows;
}

std::vector<DimensionRow> quantity_rows(const design::Option& option, const Printer& p) {
  const auto& q = option.quantities;
  const auto volume = [&](std::string name, double value) {
    return DimensionRow{std::move(name), value, p.volume(value), p.volume_unit(), ""};
  };
  std::vector<DimensionRow> rows{
      {"Slab thickness", q.slab_thickness, p.level(q.slab_thickness), p.length_unit(), "first measure"},
      {"Wall thickness, mean", q.wall_thickness, p.level(q.wall_thickness), p.length_unit(), "first measure"},
      volume("Concrete in the slab", q.slab_concrete),
      volume("Concrete in the walls", q.wall_concrete),
      volume("Concrete in the elements", q.element_concrete),
      volume("Concrete, total", q.concrete)};
  if (q.riprap > 0.0) rows.push_back(volume("Stone", q.riprap));
  return rows;
}

void write_dimension_rows(Html& html, const StepIndex& steps, std::string_view caption, const std::vector<DimensionRow>& rows) {
  html.open_table("", {{"Quantity", ""}, {"Value", "n"}, {"", "w unit"}, {"Note", "q"}, {"Working", "n"}}, caption);
  for (const auto& row : rows)
    html.row({escape_xml(row.name), row.number, row.unit, escape_xml(row.note), steps.link(row.value)});
  html.close_table();
}

/// Centre line of each element from the right wall, as far as a reader wants them: the first, the step, the last.
std::string positions(const dissipators::Element& element, const Printer& p) {
  if (element.count <= 1) return "over the whole width";
  const double first = element.wall_clearance + 0.5 * element.width;
  const double step = element.width + element.spacing;
  const double last = first + step * (element.count - 1);
  return fmt::format("{}, then every {}, last at {} (of {})", p.size(first), p.size(step), p.size(last),
                     p.size(element.across));
}

void write_elements(Html& html, const design::Option& option, const Printer& p) {
  const auto& elements = option.structure.elements;
  if (elements.empty()) return;
  const std::string unit = " <span class=\"unit\">" + p.length_unit() + "</span>";
  html.open_table("",
                  {{"Element", ""},
                   {"Number", "n"},
                   {"Height" + unit, "n"},
                   {"Width" + unit, "n"},
                   {"Clear spacing" + unit, "n"},
                   {"To the wall" + unit, "n"},
                   {"Length" + unit, "n"},
                   {"Station from toe" + unit, "n"},
                   {"Centres across, from a wall" + unit, ""}},
                  "Elements");
  for (const auto& e : elements) {
    const bool row_of_many = e.count > 1;
    const std::string number = e.rows > 1 ? fmt::format("{} in {} rows", e.count * e.rows, e.rows) : std::to_string(e.count);
    html.row({escape_xml(e.name), number, p.size(e.height), p.size(e.width), row_of_many ? p.size(e.spacing) : "–",
              row_of_many ? p.size(e.wall_clearance) : "–", p.size(e.length), p.size(e.station), positions(e, p)});
    if (!e.remark.empty()) html.wide_row(escape_xml(p.words(e.remark)), "q remark-row");
  }
  html.close_table();
}

void write_list(Html& html, std::string_view title, std::span<const std::string_view> entries, const Printer& p) {
  if (entries.empty()) return;
  html.element("h3", title);
  html.open("ul");
  for (const auto entry : entries) html.element("li", capitalised(p.words(entry)));
  html.close();
}

void write_loads(Html& html, const dissipators::Structure& structure, const StepIndex& steps, const Printer& p) {
  if (structure.loads.empty()) return;
  html.open_table("", {{"Load", ""}, {"Value", "n"}, {"Load case", "q"}, {"Working", "n"}},
                  "Loads of the flow on the elements, for their design; mean values, fluctuation not included");
  for (const auto& load : structure.loads)
    html.row(
        {escape_xml(load.name), p.quantity(load.value, load.dimension, 3), escape_xml(load.remark), steps.link(load.value)});
  html.close_table();
}

/// What the type asks for, when a model is needed, and how it is known to fail.
void write_type_notes(Html& html, const dissipators::TypeRecord& record, const Printer& p) {
  write_list(html, "What it asks of the flow that enters", record.approach, p);
  if (!record.model.empty()) html.element("p", "A physical model is needed for: " + p.words(record.model) + ".");
  write_list(html, "Known ways to fail", record.failure_modes, p);
}

}  // namespace

void write_chosen(Html& html, const ReportData& data) {
  start_chapter(html, "chosen");
  if (data.chosen == nullptr) return html.element("p", "No option could be sized; the comparison says why for each type.");
  const auto& option = *data.chosen;
  html.element("h3", type_name(option));
  if (option.type != nullptr) {
    const auto& record = option.type->record();
    html.element("p", record.summary.view());
    html.element_raw("p class=\"small\"",
                     "Source of the type: " + citation_link(record.source, record.place, record.provenance));
  }
  if (!option.statement.empty()) html.element("p", data.print.words(option.statement));
  const StepIndex steps(&option.working);
  write_dimension_rows(html, steps, "Levels and dimensions", levels_and_lengths(option, data.print));
  write_elements(html, option, data.print);
  write_loads(html, option.structure, steps, data.print);
  write_dimension_rows(html, steps, "Quantities, first measure", quantity_rows(option, data.print));
  if (option.type != nullptr) write_type_notes(html, option.type->record(), data.print);
}

void write_other_options(Html& html, const ReportData& data) {
  start_chapter(html, "others");
  bool any = false;
  for (const auto& option : data.result.options) {
    if (&option == data.chosen) continue;
    any = true;
    html.element("h3", type_name(option));
    if (option.type != nullptr) html.element("p class=\"small\"", option.type->record().summary.view());
    if (!option.statement.empty()) html.element("p", data.print.words(option.statement));
    if (option.sized) {
      const auto& p = data.print;
      html.element("p",
                   fmt::format("Apron level {}, length {}, width {}, wall height {} {}; concrete about {}. {}",
                               p.level(option.apron_level), p.level(option.length), p.level(option.width),
                               p.level(option.wall_height), p.length_unit(),
                               p.with_unit(p.volume(option.quantities.concrete), p.volume_unit()), margin_sentence(option, p)));
    }
    write_finding_table(html, data, option.findings, true);
  }
  if (!any) html.element("p", "No other type was asked for.");
}

}  // namespace quell::output
