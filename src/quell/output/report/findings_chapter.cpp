// Findings: every rule that was checked.
#include <fmt/format.h>

#include <algorithm>

#include "quell/output/report/chapters.h"

namespace quell::output {

namespace {

std::string limit_markup(const Finding& finding, const Printer& p) {
  const std::string limit = p.limit_of(finding);
  switch (finding.sense) {
    case LimitSense::at_least: return "≥ " + limit;
    case LimitSense::at_most: return "≤ " + limit;
    case LimitSense::note: return "–";
  }
  return "–";
}

/// A link to the step behind the value, for the option whose workings are printed.
std::string step_link(const Finding& finding, const Working* working) {
  if (working == nullptr) return {};
  const auto step = step_behind(finding, *working);
  return step.found() ? fmt::format(" <a class=\"small\" href=\"#step-{0}.{1}\">step {0}.{1}</a>", step.section, step.step)
                      : std::string();
}

std::string rule_markup(const Finding& finding, const Printer& p, const Working* working, bool brief) {
  std::string text = "<b>" + escape_xml(p.words(finding.title)) + "</b> <code class=\"q\">" + escape_xml(finding.id) +
                     "</code>" + step_link(finding, working);
  if (brief) return text;
  if (!finding.text.empty()) text += "<span class=\"said\">" + escape_xml(p.words(finding.text)) + "</span>";
  if (!finding.advice.empty())
    text += "<span class=\"advice\"><b>Advice:</b> " + escape_xml(p.words(finding.advice)) + "</span>";
  if (!finding.accepted_by.empty())
    text += "<span class=\"advice\"><b>Accepted by " + escape_xml(finding.accepted_by) + ":</b> " +
            escape_xml(finding.accepted_because) + "</span>";
  return text;
}

}  // namespace

void write_finding_table(Html& html, const ReportData& data, const Findings& findings, bool brief) {
  if (findings.empty()) return html.element("p", "No rule was checked.");
  const bool printed = data.chosen != nullptr && &findings == &data.chosen->findings;
  const Working* working = printed ? &data.chosen->working : nullptr;
  std::vector<const Finding*> sorted;
  for (const auto& finding : findings) sorted.push_back(&finding);
  std::sort(sorted.begin(), sorted.end(), [](const Finding* a, const Finding* b) {
    return a->status != b->status ? a->status > b->status : a < b;  // one array: its order is kept
  });
  html.open_table("findings",
                  {{"Status", "w"}, {"Rule and what was found", ""}, {"Measured", "n"}, {"Limit", "n"}, {"Source", ""}});
  for (const auto* finding : sorted) {
    const bool nothing_measured = finding->sense == LimitSense::note && finding->value == 0.0;
    html.row({status_mark(finding->status), rule_markup(*finding, data.print, working, brief && finding->status == Status::ok),
              nothing_measured ? "–" : data.print.value_of(*finding), limit_markup(*finding, data.print),
              citation_link(finding->source, finding->place, finding->provenance)});
  }
  html.close_table();
}

void write_findings(Html& html, const ReportData& data) {
  start_chapter(html, "findings");
  if (data.chosen == nullptr)
    return html.element("p", "No option could be sized; the findings of each type are under Other candidates.");
  html.element(
      "p", verdict_sentence(data) +
               " What fails stands first, then what needs care, then what is in order. A finding judges the design; whether a "
               "formula may be trusted is marked in the workings.");
  write_finding_table(html, data, data.chosen->findings, false);
}

}  // namespace quell::output
