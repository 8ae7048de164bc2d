// The summary for the terminal: at most 100 columns, nothing that needs colour.
#include <fmt/format.h>

#include <algorithm>

#include "quell/output/report/chapters.h"

namespace quell::output {

namespace {

constexpr std::size_t columns = 100;

std::string padded(std::string text, std::size_t width, bool right = false) {
  const std::size_t have = display_width(text);
  if (have >= width) return text;
  const std::string gap(width - have, ' ');
  return right ? gap + text : text + gap;
}

/// The first `width` code points, with an ellipsis where something was cut.
std::string cut(const std::string& text, std::size_t width) {
  if (display_width(text) <= width) return text;
  std::size_t seen = 0, end = 0;
  while (end < text.size()) {
    if ((static_cast<unsigned char>(text[end]) & 0xC0) != 0x80 && seen++ == width - 1) break;
    ++end;
  }
  return text.substr(0, end) + "…";
}

std::string one_line(std::string text) {
  for (char& c : text)
    if (static_cast<unsigned char>(c) < 0x20) c = ' ';
  return text;
}

/// Words in lines of at most 100 columns; later lines start with `indent`. A word longer than a line is cut.
std::string wrapped(const std::string& first, const std::string& words, const std::string& indent) {
  std::string out, line = first;
  bool empty = true;
  std::size_t start = 0;
  const std::string text = one_line(words);
  while (start < text.size()) {
    const std::size_t space = std::min(text.find(' ', start), text.size());
    const std::string word = cut(text.substr(start, space - start), columns - display_width(indent));
    start = space + 1;
    if (word.empty()) continue;
    if (!empty && display_width(line) + 1 + display_width(word) > columns) {
      out += line + "\n";
      line = indent;
      empty = true;
    }
    line += (empty ? "" : " ") + word;
    empty = false;
  }
  return out + line + "\n";
}

std::string fact(std::string_view name, const std::string& number, const std::string& unit) {
  return padded(std::string(name), 24) + padded(number, 10, true) + " " + unit;
}

std::string two_facts(const std::string& left, const std::string& right) {
  std::string line = "  " + padded(left, 48) + right;
  while (line.back() == ' ') line.pop_back();
  return line + "\n";
}

std::string comparison_table(const ReportData& data) {
  const auto& p = data.print;
  std::string text = fmt::format("Candidates ({}, {})\n", p.length_unit(), p.volume_unit());
  text += "  " + padded("type", 30) + padded("fits", 10) + padded("apron", 9, true) + padded("length", 8, true) +
          padded("wall", 7, true) + padded("concrete", 10, true) + padded("margin", 8, true) + "  findings\n";
  for (const auto& option : data.result.options) {
    const auto cell = [&](const std::string& number, std::size_t width) {
      return padded(option.sized ? number : "-", width, true);
    };
    const bool chosen = &option == data.chosen;
    const auto fails = count_of(option.findings, Status::fails), cautions = count_of(option.findings, Status::caution);
    std::string findings = fails > 0 ? fmt::format("{} fail", fails) : "";
    if (cautions > 0) findings += (findings.empty() ? "" : ", ") + fmt::format("{} ▲", cautions);
    text += cut(std::string(chosen ? "> " : "  ") + padded(cut(one_line(type_name(option)), 29), 30) +
                    padded(!option.sized       ? "not sized"
                           : option.applicable ? "yes"
                                               : "no",
                           10) +
                    cell(p.level(option.apron_level), 9) + cell(p.level(option.length), 8) +
                    cell(p.level(option.wall_height), 7) + cell(p.volume(option.quantities.built_volume()), 10) +
                    cell(p.level(option.governing.margin), 8) + "  " + (findings.empty() ? "ok" : findings),
                columns) +
            "\n";
  }
  const bool stone = std::any_of(data.result.options.begin(), data.result.options.end(),
                                 [](const design::Option& option) { return option.quantities.riprap > 0.0; });
  return text + "  > chosen   ▲ caution" + (stone ? "   a riprap-lined pool counts its stone instead of concrete\n" : "\n");
}

std::string dimensions(const design::Option& option, const Printer& p) {
  const std::string m = p.length_unit();
  const auto& g = option.governing;
  std::string text = two_facts(fact("Apron level", p.level(option.apron_level), m),
                               fact("Governing discharge", p.discharge(g.discharge), p.discharge_unit()));
  text += two_facts(fact("Width", p.level(option.width), m), fact("Depth at the toe, y1", p.depth(g.toe.y1), m));
  text += two_facts(fact("Length", p.level(option.length), m), fact("Velocity, V1", p.velocity(g.toe.V1), p.velocity_unit()));
  text += two_facts(fact("Wall height", p.level(option.wall_height), m), fact("Froude number, F1", p.ratio(g.toe.F1), ""));
  text += two_facts(fact("Wall top level", p.level(option.wall_top_level), m), fact("Sequent depth, y2", p.depth(g.toe.y2), m));
  text += two_facts(fact("Concrete, first measure", p.volume(option.quantities.concrete), p.volume_unit()),
                    fact("Tailwater margin", p.depth(g.margin), m));
  for (const auto& e : option.structure.elements)
    text += wrapped(
        "  ",
        fmt::format("{}: {}{} high, {} long at station {} from the toe ({})", e.name,
                    e.count > 1 ? fmt::format("{} of width {}, spacing {}, ", e.count, p.size(e.width), p.size(e.spacing)) : "",
                    p.size(e.height), p.size(e.length), p.size(e.station), m),
        "    ");
  return text;
}

/// One line for each routed inflow.
std::string inflow_lines(const ReportData& data) {
  const auto& p = data.print;
  std::string text;
  for (const auto& one : data.result.resolved.study.inflows)
    text += cut("  " + padded(cut(one_line(one.name), 30), 31) +
                    fmt::format("inflow {}, outflow {} {}, highest level {} {}", p.discharge(one.peak_inflow),
                                p.discharge(one.peak_outflow), p.discharge_unit(), p.level(one.peak_level), p.length_unit()),
                columns) +
            "\n";
  return text.empty() ? text : "Through the reservoir\n" + text + "\n";
}

std::string findings_text(const design::Option& option, const Printer& p) {
  std::string text;
  for (const Status status : {Status::fails, Status::caution})
    for (const auto& finding : option.findings) {
      if (finding.status != status) continue;
      std::string words = p.words(finding.title) + ".";
      if (finding.sense != LimitSense::note)
        words += fmt::format(" {} (limit {} {}).", p.value_of(finding), finding.sense == LimitSense::at_least ? "≥" : "≤",
                             p.limit_of(finding));
      if (finding.sense == LimitSense::note && !finding.text.empty()) words += " " + p.words(finding.text);
      if (!finding.advice.empty()) words += " " + p.words(finding.advice);
      if (!finding.accepted_by.empty())
        words += " Accepted by " + one_line(finding.accepted_by) + ": " + one_line(finding.accepted_because);
      text += wrapped(status == Status::fails ? "  FAILS    " : "  caution  ", words, "           ");
    }
  const auto ok = count_of(option.findings, Status::ok);
  return text + fmt::format("  {} {} ok.\n", ok, ok == 1 ? "rule is" : "rules are");
}

}  // namespace

std::string terminal_summary(const site::Site& site, const design::DesignResult& result, UnitSystem units) {
  const ReportContext none;
  const auto index = static_cast<std::size_t>(result.chosen);
  const bool any = result.chosen >= 0 && index < result.options.size();
  const ReportData data{site, result, none, Printer(units), any ? &result.options[index] : nullptr};
  std::string text = wrapped("", site.project.name.empty() ? "Stilling basin" : site.project.name, "");
  if (!site.project.status.empty()) text += wrapped("", "Status: " + site.project.status, "");
  text += "\n";
  if (data.chosen != nullptr) {
    text += wrapped("Chosen: ", type_name(*data.chosen) + ". " + data.print.words(result.choice_reason), "        ");
    text += wrapped("        ", margin_sentence(*data.chosen, data.print), "        ");
    text += "\n" + dimensions(*data.chosen, data.print) + "\n";
  } else {
    text += wrapped("", "No basin could be sized. " + data.print.words(result.choice_reason), "  ");
    for (const auto& option : result.options)
      text += wrapped("  ", type_name(option) + ": " + data.print.words(option.statement), "    ");
    text += "\n";
  }
  text += inflow_lines(data);
  if (!result.options.empty()) text += comparison_table(data) + "\n";
  if (data.chosen != nullptr) text += "Findings\n" + findings_text(*data.chosen, data.print) + "\n";
  text += wrapped("", result.all_requirements_met ? "All requirements met." : "Not all requirements are met.", "");
  text += wrapped("", "Supports and does not replace the judgement of a licensed engineer and the codes that hold at the site.",
                  "");
  return text;
}

}  // namespace quell::output
