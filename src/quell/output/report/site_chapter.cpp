// What the site's data gave before a basin was thought of: yearly floods, routed inflows, reservoir, gates and outlets.
#include <fmt/format.h>

#include <cmath>

#include "quell/output/drawing/site_figures.h"
#include "quell/output/report/chapters.h"

namespace quell::output {
namespace {

std::string with_head(std::string_view words, const std::string& unit) {
  return std::string(words) + (unit.empty() ? "" : "<br/><span class=\"unit\">" + unit + "</span>");
}

/// Volumes and areas of reservoirs, in millions of the printed unit.
std::string in_millions(double si, Dimension dimension, const Printer& p) {
  return fmt::format("{:.2f}", to_unit(si, dimension, p.units()) / 1e6);
}

std::string years(double period) {
  return period > 0.0 ? fmt::format("{:g}", period) : "";
}

/// Straight between the drawn points, in the logarithm of the period.
double at_period(const site::FrequencyStudy& study, const std::vector<double>& flow, double period) {
  std::size_t i = 1;
  while (i + 1 < study.period.size() && study.period[i] < period) ++i;
  const double share = std::log(period / study.period[i - 1]) / std::log(study.period[i] / study.period[i - 1]);
  return flow[i - 1] + share * (flow[i] - flow[i - 1]);
}

void write_frequency(Html& html, const ReportData& data, Figures& figures) {
  if (!data.result.resolved.study.has_frequency) return;
  const auto& study = data.result.resolved.study.frequency;
  const auto& p = data.print;
  const bool logarithmic = study.law == site::FrequencyLaw::log_pearson_3;
  html.element("h3", "Yearly floods");
  html.element(
      "p", logarithmic
               ? fmt::format("Log-Pearson III through {} yearly floods by moments: mean of the logarithms to base 10 of the "
                             "flows in m³/s {:.4f}, standard deviation {:.4f}, skew {:.3f}, skew used {:.3f}{}.",
                             study.years, study.mean, study.deviation, study.skew, study.skew_used,
                             study.skew == study.skew_used ? "" : " after weighting with the regional one")
               : fmt::format("Gumbel's law through {} yearly floods by moments: mean {}, standard deviation {}.", study.years,
                             p.quantity(study.mean, dimension::discharge), p.quantity(study.deviation, dimension::discharge)));
  html.open_table("dense",
                  {{with_head("Return period", "years"), "n"},
                   {with_head("Flood", p.discharge_unit()), "n"},
                   {with_head(fmt::format("Lower limit, {:.0f} %", 100.0 * study.confidence), p.discharge_unit()), "n"},
                   {with_head("Upper limit", p.discharge_unit()), "n"},
                   {"", "q"}});
  for (const double period : {2.0, 5.0, 10.0, 25.0, 50.0, 100.0, 200.0, 500.0, 1000.0, 10000.0})
    html.row({years(period), p.discharge(at_period(study, study.quantile, period)),
              p.discharge(at_period(study, study.lower, period)), p.discharge(at_period(study, study.upper, period)),
              period > 2.0 * study.years ? "extrapolated" : ""});
  html.close_table();
  if (!study.outliers.empty()) {
    std::string list;
    for (const double flood : study.outliers) list += (list.empty() ? "" : ", ") + p.discharge(flood);
    html.element("p", "Beyond the usual test for outliers, and kept: " + list + " " + p.discharge_unit() + ".");
  }
  figures.add(html, frequency_figure_svg(data.result.resolved, p.units()),
              "Yearly floods at their plotting positions, the law fitted to them and its confidence limits.");
}

void write_inflow_table(Html& html, const ReportData& data) {
  const auto& p = data.print;
  const auto& inflows = data.result.resolved.study.inflows;
  const std::string q = p.discharge_unit();
  html.open_table("dense", {{"Inflow", ""},
                            {with_head("Return period", "years"), "n"},
                            {with_head("Peak inflow", q), "n"},
                            {with_head("Volume in", "million " + p.volume_unit()), "n"},
                            {with_head("Peak outflow", q), "n"},
                            {with_head("of it spillway", q), "n"},
                            {"Peak lowered", "n"},
                            {with_head("Highest level", p.length_unit()), "n"},
                            {with_head("Freeboard", p.length_unit()), "n"},
                            {"Gate moves", "n"}});
  const auto& reservoir = data.site.reservoir;
  for (const auto& one : inflows)
    html.row({escape_xml(one.name) + (one.peak_from_record ? " <i>r</i>" : ""), years(one.return_period),
              p.discharge(one.peak_inflow), in_millions(one.volume_in, dimension::volume, p), p.discharge(one.peak_outflow),
              p.discharge(one.peak_spillway), fmt::format("{:.1f} %", 100.0 * (1.0 - one.peak_outflow / one.peak_inflow)),
              p.level(one.peak_level), reservoir.has_dam_crest ? p.level(reservoir.dam_crest_level - one.peak_level) : "–",
              std::to_string(one.gate_moves)});
  html.close_table();
}

void write_routing_checks(Html& html, const ReportData& data) {
  const auto& p = data.print;
  std::string table;
  double worst = 0.0;
  for (const auto& one : data.result.resolved.study.inflows) {
    worst = std::max(worst, std::abs(one.balance_error));
    if (one.table_peak_outflow > 0.0)
      table += fmt::format("{}{}: {} at {}", table.empty() ? "" : "; ", one.name,
                           p.with_unit(p.discharge(one.table_peak_outflow), p.discharge_unit()),
                           p.with_unit(p.level(one.table_peak_level), p.length_unit()));
  }
  html.element("p", fmt::format("Volume in, less out, less stored closes to {:.1e} of the volume in.", worst) +
                        (table.empty() ? "" : " The storage-indication method with a table gives, as a check, " + table + "."));
}

void write_inflows(Html& html, const ReportData& data, Figures& figures) {
  const auto& inflows = data.result.resolved.study.inflows;
  if (inflows.empty()) return;
  html.element("h3", "Inflows through the reservoir");
  html.element(
      "p",
      fmt::format("Level-pool routing, integrated with error control. The factor for climate on every ordinate is {:g}. An "
                  "r marks a peak taken from the law of the yearly floods. Wind and waves are not in the freeboard.",
                  data.site.floods.climate_factor));
  write_inflow_table(html, data);
  write_routing_checks(html, data);
  int number = 0;
  for (const auto& one : inflows)
    figures.add(html, routing_figure_svg(data.result.resolved, one, ++number, data.print.units()),
                one.name + " through the reservoir: flows above, level below.");
}

void write_reservoir(Html& html, const ReportData& data) {
  const auto& reservoir = data.site.reservoir;
  if (!reservoir.given()) return;
  const auto& p = data.print;
  html.element("h3", "Storage");
  const bool by_area = !reservoir.area.empty();
  const Dimension kind = by_area ? dimension::area : dimension::volume;
  html.open_table("dense", {{with_head("Level", p.length_unit()), "n"},
                            {with_head(by_area ? "Area" : "Storage", "million " + unit_label(kind, p.units())), "n"}});
  for (std::size_t i = 0; i < reservoir.level.size(); ++i)
    html.row({p.level(reservoir.level[i]), in_millions(by_area ? reservoir.area[i] : reservoir.storage[i], kind, p)});
  html.close_table();
}

std::string openings(const site::GatePattern& pattern, const Printer& p) {
  std::string text;
  for (const double opening : pattern.opening) text += (text.empty() ? "" : " · ") + p.level(opening);
  return text;
}

void write_rules(Html& html, const ReportData& data) {
  const auto& gates = data.site.gates;
  const auto& p = data.print;
  if (gates.rules.empty()) {
    html.element("p",
                 "No rule is given: the gates hold the level until they are fully open, and the free crest rules above it.");
    return;
  }
  html.open_table("dense",
                  {{"Pattern", ""},
                   {with_head("Openings, from the left", p.length_unit()), ""},
                   {with_head("takes over above", p.length_unit()), "n"},
                   {with_head("ends below", p.length_unit()), "n"}},
                  "Operation by reservoir level");
  for (const auto& rule : gates.rules)
    html.row({escape_xml(gates.patterns[rule.pattern].name), openings(gates.patterns[rule.pattern], p),
              p.level(rule.open_level), p.level(rule.close_level)});
  html.close_table();
}

void write_patterns(Html& html, const ReportData& data) {
  const auto& p = data.print;
  const auto& cases = data.result.pattern_cases;
  if (cases.empty()) return;
  const std::string m = p.length_unit();
  html.open_table("dense",
                  {{"Pattern", ""},
                   {"Use", ""},
                   {with_head("Reservoir", m), "n"},
                   {with_head("Discharge", p.discharge_unit()), "n"},
                   {with_head("Width in use", m), "n"},
                   {with_head("q of the bay that counts", unit_label(dimension::unit_discharge, p.units())), "n"},
                   {with_head("Tailwater, low", m), "n"},
                   {with_head("V<sub>1</sub>", p.velocity_unit()), "n"},
                   {"F<sub>1</sub>", "n"},
                   {with_head("Required", m), "n"},
                   {with_head("Available", m), "n"},
                   {with_head("Margin, low", m), "n"},
                   {"Jump", "w"}},
                  "Gate patterns with the chosen design");
  for (std::size_t i = 0; i < cases.size(); ++i) {
    const auto& one = cases[i];
    std::vector<std::string> cells{escape_xml(one.gate_pattern), one.is_check ? "check" : "design",
                                   p.level(one.reservoir_level), p.discharge(one.discharge), p.level(one.width)};
    const std::size_t at = i * site::tailwater_cases.size();
    if (data.chosen != nullptr && at < data.chosen->pattern_cases.size()) {
      const auto& low = data.chosen->pattern_cases[at];
      cells.insert(cells.end(), {p.number(low.toe.unit_discharge, dimension::unit_discharge), p.level(one.tailwater_level[0]),
                                 p.velocity(low.toe.V1), p.ratio(low.toe.F1), p.level(low.required_depth),
                                 p.level(low.available_depth), p.level(low.margin), jump_words(low.jump)});
    } else {
      cells.insert(cells.end(), {"–", p.level(one.tailwater_level[0]), "–", "–", "–", "–", "–", "–"});
    }
    html.row(cells, one.is_check ? "q" : "");
  }
  html.close_table();
  html.element(
      "p class=\"small\"",
      "Where bays are open unequally, the most loaded one is followed down without spreading, against the tailwater of the "
      "whole "
      "discharge. The apron is set for the patterns of use design; those of use check are judged only. Eddies beside open bays "
      "carry bed material into the basin: neighbouring gates should differ by one step at most, and unequal patterns belong in "
      "a physical model.");
}

void write_gates(Html& html, const ReportData& data) {
  const auto& gates = data.site.gates;
  if (!gates.given()) return;
  const auto& p = data.print;
  html.element("h3", "Gates");
  html.element(
      "p",
      fmt::format("{} bays of {}, openings up to {}; the gates hold {}. Under the gate: {}. Between it and the free crest a "
                  "straight passage from 0.6 to 0.75 of opening over head (common practice, no published source). Ratings of "
                  "gates are good to about 10 %.",
                  gates.count, p.with_unit(p.level(gates.bay_width), p.length_unit()),
                  p.with_unit(p.level(gates.full_opening), p.length_unit()),
                  p.with_unit(p.level(gates.held_level), p.length_unit()),
                  gates.radial_coefficient > 0.0
                      ? fmt::format("the formula with the least opening, coefficient {:g}", gates.radial_coefficient)
                      : fmt::format("the formula with two heads, coefficient {:g}", gates.coefficient)));
  write_rules(html, data);
  write_patterns(html, data);
}

void write_outlets(Html& html, const ReportData& data) {
  if (data.site.outlets.empty()) return;
  const auto& p = data.print;
  html.element("h3", "Outlets");
  html.open_table("dense", {{"Outlet", ""},
                            {with_head("Centre", p.length_unit()), "n"},
                            {with_head("Area", unit_label(dimension::area, p.units())), "n"},
                            {"Coefficient", "n"},
                            {"In the low tailwater", ""}});
  for (const auto& outlet : data.site.outlets)
    html.row({escape_xml(outlet.name), p.level(outlet.centre_level), p.number(outlet.area, dimension::area, 3),
              fmt::format("{:g}", outlet.coefficient), outlet.is_guaranteed ? "yes" : "no: not sure to run"});
  html.close_table();
}

}  // namespace

void Figures::add(Html& html, const std::string& svg, std::string_view caption) {
  if (svg.empty()) return;
  html.open("figure");
  html.raw(svg);
  html.open("figcaption");
  html.element("b", fmt::format("Figure {}", ++number));
  html.text(" ");
  html.text(caption);
  html.close();
  html.close();
}

void write_site(Html& html, const ReportData& data, Figures& figures) {
  start_chapter(html, "site");
  const auto& study = data.result.resolved.study;
  if (study.inflows.empty() && !study.has_frequency)
    html.element("p", "The site file gives its floods as discharges over the spillway; nothing was routed.");
  write_frequency(html, data, figures);
  write_inflows(html, data, figures);
  write_reservoir(html, data);
  write_gates(html, data);
  write_outlets(html, data);
  write_river(html, data, figures);
}

}  // namespace quell::output
