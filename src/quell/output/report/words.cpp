// Words and small pieces of markup that several chapters share.
#include <fmt/format.h>

#include <algorithm>
#include <cassert>
#include <cmath>

#include "quell/base/source.h"
#include "quell/output/report/chapters.h"

namespace quell::output {

namespace {

constexpr Chapter chapters[] = {{"inputs", "Inputs as given", true},
                                {"site", "The site: floods, reservoir, river", true},
                                {"discharges", "Discharges and tailwater", true},
                                {"comparison", "Comparison of the types", true},
                                {"chosen", "The chosen design", true},
                                {"cases", "Results by discharge", true},
                                {"findings", "Findings", true},
                                {"safety", "Safety of structure and river", true},
                                {"workings", "Workings", true},
                                {"methods", "Methods", true},
                                {"others", "Other candidates", true},
                                {"sources", "Sources", true},
                                {"symbols", "Symbols", false}};

}  // namespace

std::span<const Chapter> chapter_list() {
  return chapters;
}

void start_chapter(Html& html, std::string_view id) {
  std::size_t number = 0;
  while (number < std::size(chapters) && chapters[number].id != id) ++number;
  assert(number < std::size(chapters));
  html.open(fmt::format("h2 id=\"{}\"{}", id, chapters[number].on_new_page ? " class=\"new-page\"" : ""));
  html.element("span class=\"chapter\"", std::to_string(number + 1));
  html.text(chapters[number].title);
  html.close();
}

StepIndex::StepIndex(const Working* working) {
  if (working == nullptr) return;
  const auto& sections = working->sections();
  for (std::size_t s = 0; s < sections.size(); ++s)
    for (std::size_t i = 0; i < sections[s].steps.size(); ++i)
      for (const double output : sections[s].steps[i].outputs)
        if (output != 0.0 && std::isfinite(output)) steps_.emplace(output, fmt::format("{}.{}", s + 1, i + 1));
}

std::string StepIndex::step_of(double value) const {
  const auto found = steps_.find(value);
  return found == steps_.end() ? std::string() : found->second;
}

std::string StepIndex::link(double value) const {
  const std::string step = step_of(value);
  return step.empty() ? step : fmt::format("<a href=\"#step-{0}\">{0}</a>", step);
}

std::string jump_words(design::JumpPlace place) {
  switch (place) {
    case design::JumpPlace::on_apron: return "on apron";
    case design::JumpPlace::on_chute: return "on chute";
    case design::JumpPlace::past_sill: return "swept out";
    case design::JumpPlace::drowned: return "drowned";
  }
  return "unknown";
}

std::string with_head(std::string_view words, const std::string& unit) {
  std::string text(words);
  if (!unit.empty()) text += "<br/><span class=\"unit\">" + unit + "</span>";
  return text;
}

std::string capitalised(std::string text) {
  const auto lower = [&](std::size_t i) { return i < text.size() && text[i] >= 'a' && text[i] <= 'z'; };
  if (lower(0) && lower(1)) text[0] = static_cast<char>(text[0] - 'a' + 'A');
  return text;
}

std::string status_mark(Status status) {
  const std::string_view shape = status == Status::fails ? "■" : status == Status::caution ? "▲" : "○";
  return fmt::format("<span class=\"status {0}\"><span>{1}</span>{0}</span>", name_of(status), shape);
}

std::string type_name(const design::Option& option) {
  return option.type == nullptr ? std::string("unnamed type") : std::string(option.type->record().name.view());
}

std::string margin_sentence(const design::Option& option, const Printer& print) {
  const auto& g = option.governing;
  const auto m = [&](double depth) { return print.with_unit(print.depth(depth), print.length_unit()); };
  if (option.type->record().level_rule != dissipators::LevelRule::tailwater)
    return fmt::format("The type asks for no depth of tailwater; at {} the highest stands {} above its level.",
                       print.with_unit(print.discharge(g.discharge), print.discharge_unit()), m(g.available_depth));
  return fmt::format(
      "The tailwater is tightest at {} with {} tailwater: {} of depth is available above the apron and {} is required, a "
      "margin "
      "of {}.",
      print.with_unit(print.discharge(g.discharge), print.discharge_unit()), site::name_of(g.tailwater_case),
      m(g.available_depth), m(g.required_depth), m(g.margin));
}

std::size_t count_of(const Findings& findings, Status status) {
  return static_cast<std::size_t>(
      std::count_if(findings.begin(), findings.end(), [status](const Finding& f) { return f.status == status; }));
}

std::string verdict_sentence(const ReportData& data) {
  if (data.chosen == nullptr) return "No basin could be sized for this site.";
  const auto& findings = data.chosen->findings;
  const std::size_t fails = count_of(findings, Status::fails), cautions = count_of(findings, Status::caution);
  const auto counted = [](std::size_t n, const char* one, const char* many) {
    return fmt::format("{} {}", n, n == 1 ? one : many);
  };
  return fmt::format("{} checked: {}, {}, {} ok.", counted(findings.size(), "rule", "rules"), counted(fails, "fails", "fail"),
                     counted(cautions, "caution", "cautions"), count_of(findings, Status::ok));
}

constexpr std::string_view no_source = " <span class=\"badge\">no published source</span>";

std::string citation_link(std::string_view source, std::string_view place, Provenance provenance) {
  std::string text;
  if (!source.empty())
    text = fmt::format("<a href=\"#source-{}\">{}</a>", escape_xml(source), escape_xml(short_citation(source)));
  if (!place.empty()) text += (text.empty() ? "" : ", ") + escape_xml(place);
  if (provenance == Provenance::common_practice)
    return text.empty() ? "common practice, no published source" : text + std::string(no_source);
  return text + " <span class=\"badge\">" + escape_xml(name_of(provenance)) + "</span>";
}

}  // namespace quell::output
