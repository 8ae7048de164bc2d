#include "quell/output/report/report.h"

#include "quell/output/report/chapters.h"
#include "quell/output/report/style.h"

namespace quell::output {

namespace {

const design::Option* chosen_option(const design::DesignResult& result) {
  const auto index = static_cast<std::size_t>(result.chosen);
  return result.chosen >= 0 && index < result.options.size() ? &result.options[index] : nullptr;
}

}  // namespace

std::string report_html(const site::Site& site, const design::DesignResult& result, const ReportContext& context) {
  const ReportData data{site, result, context, Printer(context.units), chosen_option(result)};
  const std::string name = site.project.name.empty() ? "Stilling basin" : site.project.name;
  Html html;
  html.raw("<!DOCTYPE html>\n");
  html.open("html lang=\"en\"");
  html.open("head");
  html.raw("<meta charset=\"utf-8\"/>\n<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\"/>\n");
  html.element("title", name + ": stilling basin design");
  html.element_raw("style", report_style(name + " · stilling basin design"));
  html.close();
  html.open("body");
  write_title_block(html, data);
  write_summary(html, data);
  write_notice(html, data);
  write_contents(html, data);
  write_inputs(html, data);
  Figures figures{2};  // two stand in the summary
  write_site(html, data, figures);
  write_discharges(html, data);
  write_comparison(html, data, figures);
  write_chosen(html, data);
  write_case_results(html, data);
  write_findings(html, data);
  write_safety(html, data, figures);
  write_workings(html, data);
  write_methods(html, data);
  write_other_options(html, data);
  write_sources(html, data);
  write_symbols(html, data);
  html.close();
  html.close();
  return html.finished();
}

}  // namespace quell::output
