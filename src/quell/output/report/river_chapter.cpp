// The river as the design saw it: how the tailwater was found, with what allowances, and what is uncertain about the inputs.
#include <fmt/format.h>

#include <cmath>

#include "quell/base/source.h"
#include "quell/output/drawing/site_figures.h"
#include "quell/output/report/chapters.h"

namespace quell::output {
namespace {

std::string source_sentence(const ReportData& data) {
  const auto& river = data.result.resolved.study.river;
  if (!river.statement.empty()) return river.statement;
  return data.site.river.has_rating() ? "Tailwater is read from the rating given, by straight lines between its rows."
                                      : "Tailwater is normal depth in a trapezoidal reach.";
}

void write_fit(Html& html, const ReportData& data) {
  const auto& fit = data.result.resolved.study.river.fit;
  if (!(fit.highest_gauged > 0.0)) return;
  const auto& p = data.print;
  html.element(
      "p",
      fmt::format("Q = {:.4g} (h − {:.3f} m)^{:.3f} in SI; standard error of ln Q {:.3f}; gauged from {} to {}. Beyond the "
                  "highest gauging the law is extended, which holds only while the same control acts.",
                  fit.factor, fit.zero_level, fit.power, fit.scatter,
                  p.with_unit(p.discharge(fit.lowest_gauged), p.discharge_unit()),
                  p.with_unit(p.discharge(fit.highest_gauged), p.discharge_unit())));
}

void write_profile(Html& html, const ReportData& data, const site::RiverWater& water) {
  const auto& p = data.print;
  const std::string m = p.length_unit();
  html.open_table(
      "dense",
      {{with_head("Below the basin", m), "n"},
       {with_head("Bed", m), "n"},
       {with_head("Water", m), "n"},
       {with_head("Critical", m), "n"},
       {with_head("Energy", m), "n"},
       {"Froude number", "n"},
       {"", "q"}},
      fmt::format("Water surface at the {}, {}, {} case", water.label,
                  p.with_unit(p.discharge(water.discharge), p.discharge_unit()), site::name_of(water.tailwater_case)));
  for (const auto& point : water.points)
    html.row({p.level(point.distance), p.level(point.bed_level), p.level(point.level), p.level(point.critical_level),
              p.level(point.energy_level), p.ratio(point.froude_number),
              point.held_at_critical ? "held at critical depth" : ""});
  html.close_table();
}

void write_sections(Html& html, const ReportData& data) {
  const auto& reach = data.site.river.reach;
  if (reach.sections.empty()) return;
  const auto& p = data.print;
  html.open_table("dense",
                  {{"Section", ""},
                   {with_head("Below the basin", p.length_unit()), "n"},
                   {with_head("Left bank at", p.length_unit()), "n"},
                   {with_head("Right bank at", p.length_unit()), "n"},
                   {"n left", "n"},
                   {"n channel", "n"},
                   {"n right", "n"},
                   {"Points", "n"}},
                  "Surveyed sections, looking downstream");
  for (const auto& one : reach.sections) {
    const auto n = [&](std::size_t part) {
      return one.point_n.empty() ? fmt::format("{:g}", one.manning_n[part]) : "by point";
    };
    html.row({escape_xml(one.file), p.level(one.distance), p.level(one.left_bank), p.level(one.right_bank), n(0), n(1), n(2),
              std::to_string(one.station.size())});
  }
  html.close_table();
  html.element(
      "p class=\"small\"",
      fmt::format("Manning's n is multiplied by {:g} in the low case and by {:g} in the high case. Losses: {:g} of the change "
                  "of velocity head where the flow speeds up, {:g} where it slows.",
                  reach.low_n_factor, reach.high_n_factor, reach.contraction, reach.expansion));
}

void write_degradation(Html& html, const ReportData& data) {
  const auto& estimate = data.result.resolved.study.river.degradation;
  if (estimate.sizes.empty()) return;
  const auto& p = data.print;
  html.open_table("dense",
                  {{"Method", ""}, {with_head("Smallest grain that stays", p.length_unit()), "n"}, {"Stable slope", "n"}},
                  "Degradation of the bed, by published methods (recalled)");
  for (const auto& [method, size] : estimate.sizes) {
    std::string slope;
    for (const auto& [other, value] : estimate.slopes)
      if (other == method) slope = fmt::format("{:.5f}", value);
    html.row({escape_xml(method), p.number(size, dimension::length, 2), slope});
  }
  html.close_table();
  const auto depth = [&](double value) {
    return value > 0.0 ? p.with_unit(p.depth(value), p.length_unit()) : std::string("not estimated");
  };
  html.element(
      "p", fmt::format("Down to an armoured bed: {}. Down to the stable slope: {}. The methods differ by a factor of two or "
                       "three; the smaller depth that could be estimated counts.",
                       depth(estimate.to_armour), depth(estimate.to_slope)));
}

void write_allowances(Html& html, const ReportData& data) {
  const auto& river = data.site.river;
  const auto& p = data.print;
  html.element(
      "p",
      fmt::format("Allowances in the low tailwater case: degradation of the bed {}, lag of the tailwater after the gates open "
                  "{}. The lag is a number given, not the river's response computed over time.",
                  p.with_unit(p.depth(river.bed_degradation), p.length_unit()),
                  p.with_unit(p.depth(river.lag_allowance), p.length_unit())));
}

std::string spread_text(const site::UncertainInput& input) {
  const auto& of = input.of;
  if (of.distribution == site::Distribution::triangular)
    return fmt::format("{:.4g} to {:.4g}, most likely {:.4g}", of.lowest, of.highest, of.mode);
  if (of.distribution == site::Distribution::uniform) return fmt::format("{:.4g} to {:.4g}", of.lowest, of.highest);
  std::string text = fmt::format("standard deviation {:.3g}", of.deviation);
  if (of.mean != 0.0) text += fmt::format(" ({:.0f} %)", 100.0 * of.deviation / std::abs(of.mean));
  if (of.has_limits) text += fmt::format(", cut at {:.4g} and {:.4g}", of.lowest, of.highest);
  return text;
}

void write_uncertain(Html& html, const ReportData& data) {
  if (data.site.uncertain.empty()) return;
  html.element("h3", "Uncertainty of the inputs, as declared");
  html.open_table("dense",
                  {{"Input", ""}, {"Distribution", ""}, {"Spread, SI", ""}, {"Recommendation taken", ""}, {"Source", "q"}});
  for (const auto& input : data.site.uncertain) {
    std::string source;
    for (const auto& one : site::recommended_uncertainties())
      if (one.name == input.name) source = citation_link(one.source, "", one.provenance);
    html.row({"<code>" + escape_xml(input.key) + "</code>", std::string(site::name_of(input.of.distribution)),
              spread_text(input), escape_xml(input.name), source});
  }
  html.close_table();
  html.element("p class=\"small\"",
               "Declared and checked; the design itself uses the values and the low, expected and high tailwater.");
}

}  // namespace

void write_river(Html& html, const ReportData& data, Figures& figures) {
  const auto& study = data.result.resolved.study.river;
  html.element("h3", "River and tailwater");
  html.element("p", source_sentence(data));
  write_fit(html, data);
  write_sections(html, data);
  figures.add(html, rating_figure_svg(data.result.resolved, data.print.units()),
              "Tailwater level over the discharge in the river; degradation is in the low curve, the lag allowance is not.");
  figures.add(html, river_figure_svg(data.result.resolved, data.print.units()),
              "Water surface along the river; the basin is at the left. The largest discharge is drawn in all three cases.");
  for (const auto& water : study.water)
    if (water.tailwater_case == site::TailwaterCase::expected) write_profile(html, data, water);
  write_degradation(html, data);
  write_allowances(html, data);
  write_uncertain(html, data);
}

}  // namespace quell::output
