// Title block, summary, notice, contents: what is read first.
#include <fmt/format.h>

#include <cmath>

#include "quell/output/drawing/figures.h"
#include "quell/output/report/chapters.h"

namespace quell::output {

namespace {

std::string or_dash(const std::string& text) {
  return text.empty() ? "–" : escape_xml(text);
}

struct Row {
  std::string name, number, unit;
  double value;  ///< for the link to its working
};

void write_rows(Html& html, const StepIndex& steps, std::string_view caption, const std::vector<Row>& rows) {
  html.open_table("", {{std::string(caption), ""}, {"", "n"}, {"", "w unit"}, {"<span class=\"unit\">working</span>", "n"}});
  for (const auto& row : rows) html.row({row.name, row.number, row.unit, steps.link(row.value)});
  html.close_table();
}

std::vector<Row> dimension_rows(const design::Option& option, const Printer& p) {
  const std::string m = p.length_unit();
  std::vector<Row> rows{{"Apron level", p.level(option.apron_level), m, option.apron_level},
                        {"Width", p.level(option.width), m, option.width},
                        {"Length, toe to end of sill", p.level(option.length), m, option.length},
                        {"Wall height above apron", p.level(option.wall_height), m, option.wall_height},
                        {"Wall top level", p.level(option.wall_top_level), m, option.wall_top_level}};
  if (option.structure.end_sill_height > 0.0)
    rows.push_back({"End sill level", p.level(option.end_sill_level), m, option.end_sill_level});
  rows.push_back(
      {"Concrete, first measure", p.volume(option.quantities.concrete), p.volume_unit(), option.quantities.concrete});
  return rows;
}

std::vector<Row> governing_rows(const design::Option& option, const Printer& p) {
  const auto& g = option.governing;
  const std::string m = p.length_unit();
  return {{"Discharge", p.discharge(g.discharge), p.discharge_unit(), g.discharge},
          {"Reservoir level", p.level(g.toe.reservoir_level), m, g.toe.reservoir_level},
          {"Depth at the toe, y<sub>1</sub>", p.depth(g.toe.y1), m, g.toe.y1},
          {"Velocity at the toe, V<sub>1</sub>", p.velocity(g.toe.V1), p.velocity_unit(), g.toe.V1},
          {"Froude number, F<sub>1</sub>", p.ratio(g.toe.F1), "", g.toe.F1},
          {"Sequent depth, y<sub>2</sub>", p.depth(g.toe.y2), m, g.toe.y2},
          {"Tailwater margin", p.depth(g.margin), m, g.margin}};
}

void write_verdict(Html& html, const ReportData& data) {
  const Status worst = data.chosen == nullptr ? Status::fails : worst_status(data.chosen->findings);
  const bool met = data.result.all_requirements_met && data.chosen != nullptr;
  const std::string_view style = !met ? " bad" : worst == Status::caution ? " warn" : "";
  html.open(fmt::format("div class=\"verdict{}\"", style));
  html.element("b", met ? "All requirements met" : data.chosen == nullptr ? "No design" : "Not all requirements met");
  html.open("span");
  html.text(verdict_sentence(data));
  html.raw(" See <a href=\"#findings\">Findings</a>.");
  html.close();
  html.close();
}

void write_figure(Html& html, const std::string& svg, std::string_view number, std::string_view caption) {
  html.open("figure");
  html.raw(svg);
  html.open("figcaption");
  html.element("b", number);
  html.text(" ");
  html.text(caption);
  html.close();
  html.close();
}

void write_not_sized(Html& html, const ReportData& data) {
  html.open("ul");
  for (const auto& option : data.result.options) {
    html.open("li");
    html.element("b", type_name(option) + ": ");
    html.text(data.print.words(option.statement));
    html.close();
  }
  html.close();
}

}  // namespace

void write_title_block(Html& html, const ReportData& data) {
  const auto& project = data.site.project;
  html.element("p class=\"office\"", "Hydraulic design calculation");
  html.element("h1", project.name.empty() ? "Stilling basin" : project.name);
  html.element("p class=\"subtitle\"", data.chosen == nullptr
                                           ? "Energy dissipator below the spillway"
                                           : "Energy dissipator below the spillway: " + type_name(*data.chosen));
  html.open("table class=\"title-block\"");
  html.open("tbody");
  const auto row = [&](std::string_view a, const std::string& x, std::string_view b, const std::string& y) {
    html.raw(fmt::format("<tr><td>{}</td><td>{}</td><td>{}</td><td>{}</td></tr>\n", a, x, b, y));
  };
  row("Author", or_dash(project.author), "Status", or_dash(project.status));
  row("Datum of levels", or_dash(project.datum), "Units printed", data.print.units() == UnitSystem::si ? "SI" : "US customary");
  row("Program", "quell " + escape_xml(data.context.program_version), "Site file", or_dash(data.context.site_path));
  html.raw("<tr><td>Input digest</td><td colspan=\"3\"><code>" + or_dash(data.context.site_digest) + "</code></td></tr>\n");
  html.close();
  html.close();
  if (!project.notes.empty()) html.element("p", project.notes);
}

void write_summary(Html& html, const ReportData& data) {
  html.element("h2 id=\"summary\"", "Summary");
  if (!data.result.choice_reason.empty()) html.element("p class=\"lead\"", data.print.words(data.result.choice_reason));
  write_verdict(html, data);
  if (data.chosen == nullptr) return write_not_sized(html, data);
  const auto& option = *data.chosen;
  html.element("p", margin_sentence(option, data.print));
  const StepIndex steps(&option.working);
  html.open("div class=\"pair\"");
  html.open("div");
  write_rows(html, steps, "Main dimensions", dimension_rows(option, data.print));
  html.close();
  html.open("div");
  write_rows(html, steps, "At the governing discharge", governing_rows(option, data.print));
  html.close();
  html.close();
  write_figure(
      html, tailwater_figure_svg(data.site, data.result, option, data.print.units()), "Figure 1",
      std::string(
          "Required and available tailwater depth above the apron over the whole range of discharges. The governing point is "
          "where the margin is smallest.") +
          std::string(data.result.pattern_cases.empty()
                          ? ""
                          : " Gate patterns with unequal bays: squares are what the most loaded bay requires, filled where the "
                            "apron is "
                            "set for the pattern; rings are the tailwater that the whole discharge gives."));
  write_figure(html, long_section_svg(data.site, data.result, option, data.print.units()), "Figure 2",
               "Long section to scale with water surface, energy line and jump, at low tailwater; below it the basin alone.");
}

void write_notice(Html& html, const ReportData&) {
  html.open("div class=\"notice\"");
  html.element("h3", "Judgement and cautions");
  html.element(
      "p",
      "This report supports and does not replace the judgement of a licensed engineer, nor the codes and regulations that "
      "hold at the site. A failed or under-sized energy dissipator can undermine a dam and endanger life downstream.");
  html.open("ul");
  html.element(
      "li",
      "A hydraulic jump traps people and boats: the surface of the roller runs upstream. Fence the basin, warn in time "
      "before releases, and provide ways out.");
  html.element(
      "li",
      "The result is no better than its tailwater. A river bed that degrades lowers the tailwater and with it every margin "
      "in this report.");
  html.element(
      "li",
      "The flow is taken as uniform across the basin. Unequal gate operation, curved approach and debris are not covered; a "
      "hydraulic model test is the usual answer for large or unusual works.");
  html.element(
      "li",
      "Structure, uplift, drainage, joints, foundation and concrete quality are outside this report; thicknesses and volumes "
      "are first measures for comparing types and are not for construction.");
  html.element(
      "li",
      "Methods are used within the range of their tests where that is possible. Steps outside it are marked in the workings, "
      "and every method says how its formula is known: seen in the source, from memory, common practice, or derived.");
  html.close();
  html.close();
}

void write_contents(Html& html, const ReportData&) {
  html.element("h3", "Contents");
  html.open("ul class=\"contents\"");
  std::size_t number = 0;
  for (const auto& chapter : chapter_list()) {
    html.open("li");
    html.element("span class=\"chapter\"", std::to_string(++number));
    html.element(fmt::format("a href=\"#{}\"", chapter.id), chapter.title);
    html.close();
  }
  html.close();
}

}  // namespace quell::output
