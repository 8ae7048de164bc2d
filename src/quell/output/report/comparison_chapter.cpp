// The comparison of the types: figures side by side, fields of application, and why each fits or does not.
#include <fmt/format.h>

#include "quell/output/drawing/figures.h"
#include "quell/output/report/chapters.h"

namespace quell::output {

namespace {

std::string head(std::string_view words, const std::string& unit) {
  std::string text(words);
  if (!unit.empty()) text += "<br/><span class=\"unit\">" + unit + "</span>";
  return text;
}

std::string counts_markup(const Findings& findings) {
  std::string text;
  for (const Status status : {Status::fails, Status::caution, Status::ok})
    if (const auto n = count_of(findings, status); n > 0)
      text += fmt::format("{}{} {}", text.empty() ? "" : ", ", n, name_of(status));
  return text.empty() ? "none" : text;
}

std::string applicability(const design::Option& option) {
  return !option.sized ? "not sized" : option.applicable ? "yes" : "no";
}

/// What fails, in a few words: the titles of the failed rules.
std::string failed_titles(const design::Option& option, const Printer& p) {
  std::string text;
  for (const auto& finding : option.findings)
    if (finding.status == Status::fails) text += (text.empty() ? "" : "; ") + escape_xml(p.words(finding.title));
  return text;
}

/// Concrete, or stone where there is none.
std::string built(const design::Option& option, const Printer& p) {
  const auto& q = option.quantities;
  return q.concrete > 0.0 ? p.volume(q.concrete) : p.volume(q.riprap) + " stone";
}

}  // namespace

void write_comparison(Html& html, const ReportData& data, Figures& figures) {
  const auto& p = data.print;
  const std::string m = p.length_unit();
  start_chapter(html, "comparison");
  html.element("p", data.print.words(data.result.choice_reason));
  html.open_table("", {{"Type", ""},
                       {"Applicable", ""},
                       {head("Apron level", m), "n"},
                       {head("Length", m), "n"},
                       {head("Width", m), "n"},
                       {head("Wall height", m), "n"},
                       {head("Concrete, first measure", p.volume_unit()), "n"},
                       {head("Tightest margin", m), "n"},
                       {"Findings", ""}});
  for (const auto& option : data.result.options) {
    const bool chosen = &option == data.chosen;
    const auto cell = [&](const std::string& text) { return option.sized ? text : std::string("–"); };
    std::string name = escape_xml(type_name(option));
    if (chosen) name += " <span class=\"badge\">chosen</span>";
    html.row({name, applicability(option), cell(p.level(option.apron_level)), cell(p.level(option.length)),
              cell(p.level(option.width)), cell(p.level(option.wall_height)), cell(built(option, p)),
              cell(p.depth(option.governing.margin)), counts_markup(option.findings)},
             chosen ? "strong" : "");
  }
  html.close_table();
  figures.add(
      html, fields_figure_svg(data.site, data.result, p.units()),
      "Fields of application: in each cell the discharges of the site run from the smallest at the bottom to the largest "
      "at the top, through the field in which the type may be used. Tailwater in the low case.");
  html.element("h3", "Why each type fits or does not");
  html.open_table("", {{"Type", "w"}, {"", ""}});
  for (const auto& option : data.result.options) {
    const std::string failed = failed_titles(option, p);
    std::string words = escape_xml(p.words(option.statement));
    if (!failed.empty())
      words += (words.empty() ? "" : "<br/>") + std::string("<span class=\"q\">Fails: ") + failed + ".</span>";
    html.row({escape_xml(type_name(option)), words});
  }
  html.close_table();
}

}  // namespace quell::output
