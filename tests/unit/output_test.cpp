// The output floor: report, figures and terminal summary of a hand-made design.
#include <gtest/gtest.h>

#include <cctype>
#include <cmath>

#include "quell/base/quantity_text.h"
#include "quell/output/drawing/canvas.h"
#include "quell/output/drawing/figures.h"
#include "quell/output/drawing/section_model.h"
#include "quell/output/format.h"
#include "unit/output_sample.h"

namespace {

using namespace quell;
using quell::test::output_sample;
using quell::test::Sample;

std::string report_of(const Sample& sample) {
  return output::report_html(sample.site, sample.result, sample.context);
}

std::string section_of(const Sample& sample) {
  return output::long_section_svg(sample.site, sample.result, sample.result.options[0], sample.context.units);
}

std::string tailwater_of(const Sample& sample) {
  return output::tailwater_figure_svg(sample.site, sample.result, sample.result.options[0], sample.context.units);
}

std::string terminal_of(const Sample& sample) {
  return output::terminal_summary(sample.site, sample.result, sample.context.units);
}

/// Why `text` is not well-formed: tags that do not match, raw '<' or '&' in text, attributes without quotes. Empty when it is.
/// A plain reader of tags; comments and processing instructions are not expected.
std::string fault_in(std::string_view text) {
  std::vector<std::string> open;
  std::size_t at = 0;
  while (at < text.size()) {
    if (text[at] == '&') {
      const auto end = text.find(';', at);
      const std::string_view entity = end == std::string_view::npos ? "" : text.substr(at + 1, end - at - 1);
      static constexpr std::string_view known[] = {"amp", "lt", "gt", "quot", "#39"};
      if (std::find(std::begin(known), std::end(known), entity) == std::end(known) && entity.rfind("#x", 0) != 0)
        return "unknown entity near: " + std::string(text.substr(at, 40));
    }
    if (text[at] != '<') {
      ++at;
      continue;
    }
    const auto end = text.find('>', at);
    if (end == std::string_view::npos) return "a tag that does not end";
    const std::string_view tag = text.substr(at + 1, end - at - 1);
    at = end + 1;
    if (tag.empty() || tag.find('<') != std::string_view::npos) return "a raw '<' near: " + std::string(tag.substr(0, 40));
    if (tag.front() == '!') continue;
    if (std::count(tag.begin(), tag.end(), '"') % 2 != 0) return "an open quote in: " + std::string(tag);
    const std::string name(tag.substr(tag.front() == '/' ? 1 : 0, tag.find_first_of(" \n/", 1) - (tag.front() == '/' ? 1 : 0)));
    if (tag.back() == '/') continue;
    if (tag.front() != '/') {
      open.push_back(name);
    } else {
      const std::string closing(tag.substr(1));
      if (open.empty() || open.back() != closing)
        return "</" + closing + "> closes " + (open.empty() ? "nothing" : open.back());
      open.pop_back();
    }
  }
  return open.empty() ? "" : "never closed: " + open.back();
}

/// True where `word` stands alone, not inside a longer word.
bool has_word(const std::string& text, std::string_view word) {
  const auto letter = [&](std::size_t i) { return i < text.size() && std::isalpha(static_cast<unsigned char>(text[i])) != 0; };
  for (auto at = text.find(word); at != std::string::npos; at = text.find(word, at + 1))
    if ((at == 0 || !letter(at - 1)) && !letter(at + word.size())) return true;
  return false;
}

std::vector<std::string> all_texts(const Sample& sample) {
  return {report_of(sample), section_of(sample), tailwater_of(sample), terminal_of(sample)};
}

TEST(FaultFinder, seesTheFaultsItIsFor) {
  EXPECT_EQ(fault_in("<a><b x=\"1\">t &amp; u</b><br/></a>"), "");
  EXPECT_NE(fault_in("<a><b></a></b>"), "");
  EXPECT_NE(fault_in("<a>x & y</a>"), "");
  EXPECT_NE(fault_in("<a>x < y</a>"), "");
  EXPECT_NE(fault_in("<a>"), "");
  EXPECT_TRUE(has_word("is nan here", "nan"));
  EXPECT_FALSE(has_word("finance", "nan"));
}

TEST(Output, isWellFormed) {
  const auto sample = output_sample();
  EXPECT_EQ(fault_in(report_of(sample)), "");
  EXPECT_EQ(fault_in(section_of(sample)), "");
  EXPECT_EQ(fault_in(tailwater_of(sample)), "");
}

TEST(Output, isSelfContained) {
  std::string text = report_of(output_sample());
  for (const std::string_view name_space : {"http://www.w3.org/2000/svg", "http://www.w3.org/1998/Math/MathML"})
    for (auto at = text.find(name_space); at != std::string::npos; at = text.find(name_space))
      text.erase(at, name_space.size());
  for (const std::string_view outside : {"http:", "https:", "src=", "@import", "url(", "<script", "<link"})
    EXPECT_EQ(text.find(outside), std::string::npos) << outside;
}

TEST(Output, escapesWhatPeopleType) {
  auto sample = output_sample();
  sample.site.project.name = "</style><script>alert('x')</script>\"&";
  sample.site.project.notes = "<img src=x onerror=y>";
  sample.site.discharges.floods[0].name = "<b>flood</b>";
  sample.result.options[0].profiles[0].label = "governing <i>";
  const auto report = report_of(sample);
  EXPECT_EQ(fault_in(report), "");
  EXPECT_EQ(report.find("<script"), std::string::npos);
  EXPECT_EQ(report.find("<img"), std::string::npos);
  EXPECT_EQ(report.find("<b>flood"), std::string::npos);
  EXPECT_NE(report.find("&lt;script&gt;"), std::string::npos);
}

TEST(Output, theHeaderOfAPrintedPageCannotEndItsString) {
  auto sample = output_sample();
  sample.site.project.name = "a\"};body{display:none} \\";
  const auto report = report_of(sample);
  EXPECT_NE(report.find("content:\"a\\22 };body{display:none} \\5c "), std::string::npos);
}

TEST(Output, namesEveryFindingWithItsParts) {
  const auto sample = output_sample();
  const auto report = report_of(sample);
  for (const auto& finding : sample.result.options[0].findings)
    for (const auto& part : {finding.id, finding.title, finding.text, finding.advice})
      EXPECT_NE(report.find(output::escape_xml(part)), std::string::npos) << finding.id << ": " << part;
  const auto others = report.find("id=\"others\"");
  for (const auto& finding : sample.result.options[1].findings)
    EXPECT_NE(report.find(output::escape_xml(finding.title), others), std::string::npos) << finding.id;
}

TEST(Output, putsQuantitiesOfSentencesInTheUnitsAskedFor) {
  auto sample = output_sample();
  sample.result.choice_reason = "It needs " + quantity_token(30.48, dimension::length) + " of something.";
  for (const auto& text : {report_of(sample), terminal_of(sample)}) EXPECT_NE(text.find("30.48"), std::string::npos);
  sample.context.units = UnitSystem::us;
  for (const auto& text : {report_of(sample), terminal_of(sample)}) {
    EXPECT_NE(text.find("100.00"), std::string::npos);
    EXPECT_EQ(text.find("{{"), std::string::npos);
  }
}

TEST(Output, failsComeBeforeCautionsBeforeOk) {
  const auto report = report_of(output_sample());
  const auto from = report.find("id=\"findings\"");
  const auto fails = report.find("sample.velocity", from), caution = report.find("sample.access", from);
  const auto ok = report.find("sample.froude", from);
  ASSERT_NE(ok, std::string::npos);
  EXPECT_LT(fails, caution);
  EXPECT_LT(caution, ok);
}

TEST(Output, showsEveryStepOfTheWorking) {
  const auto sample = output_sample();
  const auto report = report_of(sample);
  const auto& sections = sample.result.options[0].working.sections();
  for (std::size_t s = 0; s < sections.size(); ++s) {
    EXPECT_NE(report.find(output::escape_xml(sections[s].title)), std::string::npos);
    for (std::size_t i = 0; i < sections[s].steps.size(); ++i) {
      const auto& step = sections[s].steps[i];
      const auto anchor = "id=\"step-" + std::to_string(s + 1) + "." + std::to_string(i + 1) + "\"";
      const auto at = report.find(anchor);
      ASSERT_NE(at, std::string::npos) << anchor;
      EXPECT_NE(report.find(output::escape_xml(step.purpose.substr(1)), at), std::string::npos);
      EXPECT_NE(report.find("id=\"method-" + std::string(step.method->id.view()) + "\""), std::string::npos);
    }
  }
}

TEST(Output, marksAStepOutsideItsRange) {
  const auto report = report_of(output_sample());
  const auto step = report.find("id=\"step-2.1\"");
  ASSERT_NE(step, std::string::npos);
  EXPECT_NE(report.find("OUTSIDE the valid range", step), std::string::npos);
  const auto inside = report.find("id=\"step-1.3\"");
  EXPECT_LT(report.find("inside the valid range", inside), report.find("OUTSIDE the valid range", inside));
}

TEST(Output, everyLinkInsideTheReportHasATarget) {
  const auto report = report_of(output_sample());
  std::size_t links = 0;
  for (auto at = report.find("href=\"#"); at != std::string::npos; at = report.find("href=\"#", at + 1), ++links) {
    const auto start = at + 7;
    const auto target = report.substr(start, report.find('"', start) - start);
    EXPECT_NE(report.find("id=\"" + target + "\""), std::string::npos) << target;
  }
  EXPECT_GT(links, 20u);
}

TEST(Output, echoesInputsAndMarksDefaults) {
  const auto sample = output_sample();
  const auto report = report_of(sample);
  for (const auto& input : sample.context.inputs) {
    EXPECT_NE(report.find(output::escape_xml(input.typed)), std::string::npos) << input.key;
    EXPECT_NE(report.find(output::escape_xml(input.meaning)), std::string::npos) << input.key;
  }
  EXPECT_NE(report.find("<td class=\"w\">default</td>"), std::string::npos);
  for (const auto& part : {sample.context.program_version, sample.context.site_digest})
    EXPECT_NE(report.find(part), std::string::npos);
}

TEST(Output, saysWhatItDoesNotReplace) {
  const auto sample = output_sample();
  for (const auto& text : {report_of(sample), terminal_of(sample)})
    EXPECT_NE(text.find("does not replace the judgement of a licensed engineer"), std::string::npos);
}

TEST(Output, holdsNoNanOrInfinity) {
  auto sample = output_sample();
  for (const auto& text : all_texts(sample))
    for (const auto* word : {"nan", "-nan", "inf", "-inf"}) EXPECT_FALSE(has_word(text, word)) << word;
  // Should the engine ever let one out, a dash is printed and no coordinate is written.
  sample.result.options[0].quantities.concrete = std::nan("");
  sample.result.options[0].profiles[0].chute[3].depth = std::numeric_limits<double>::infinity();
  for (const auto& text : all_texts(sample))
    for (const auto* word : {"nan", "inf"}) EXPECT_FALSE(has_word(text, word)) << word;
}

TEST(Output, sameInputGivesSameBytes) {
  const auto first = all_texts(output_sample());
  EXPECT_EQ(first, all_texts(output_sample()));
}

TEST(Output, printsInTheUnitsAskedFor) {
  auto sample = output_sample();
  sample.context.units = UnitSystem::us;
  const auto terminal = terminal_of(sample);
  EXPECT_NE(terminal.find("131.23 ft"), std::string::npos);  // 40 m
  EXPECT_NE(terminal.find("ft³/s"), std::string::npos);
  EXPECT_EQ(terminal.find("m³/s"), std::string::npos);
  EXPECT_EQ(fault_in(report_of(sample)), "");
}

TEST(Output, standsADesignThatCouldNotBeMade) {
  auto sample = output_sample();
  sample.result.chosen = -1;
  sample.result.options.erase(sample.result.options.begin(), sample.result.options.begin() + 2);
  EXPECT_EQ(fault_in(report_of(sample)), "");
  EXPECT_NE(terminal_of(sample).find("No basin could be sized"), std::string::npos);
  EXPECT_NE(report_of(sample).find("No apron level was found"), std::string::npos);
  sample.result.options.clear();
  EXPECT_EQ(fault_in(report_of(sample)), "");
}

TEST(Terminal, fitsAHundredColumns) {
  auto sample = output_sample();
  sample.site.project.name = std::string(250, 'x');
  sample.result.choice_reason +=
      " A long word: " + std::string(150, 'y') + " and after it many more words that have to be broken.";
  sample.result.options[0].findings[0].title = "A title that goes on and on " + std::string(120, 'z');
  for (const auto units : {UnitSystem::si, UnitSystem::us}) {
    sample.context.units = units;
    const auto text = terminal_of(sample);
    std::size_t start = 0;
    while (start < text.size()) {
      const auto end = text.find('\n', start);
      EXPECT_LE(output::display_width(text.substr(start, end - start)), 100u) << text.substr(start, end - start);
      start = end + 1;
    }
    EXPECT_EQ(text.find('\x1b'), std::string::npos);
  }
}

TEST(Terminal, listsFailsAndCautionsWithAdvice) {
  const auto sample = output_sample();
  const auto text = terminal_of(sample);
  EXPECT_LT(text.find("FAILS    Entering velocity"), text.find("caution  Unit discharge"));
  EXPECT_NE(text.find("Fence the basin."), std::string::npos);
}

TEST(LongSection, hasTheLevelsOfTheDesign) {
  const auto sample = output_sample();
  const auto& option = sample.result.options[0];
  const auto section = output::long_section(sample.site, option);
  EXPECT_DOUBLE_EQ(section.basin_end - section.toe_station, option.length);
  EXPECT_DOUBLE_EQ(section.face.back().x, option.chute_end_station);
  EXPECT_DOUBLE_EQ(section.face.back().y, option.apron_level);
  for (std::size_t i = 1; i < section.face.size(); ++i) EXPECT_GE(section.face[i].x, section.face[i - 1].x);
  ASSERT_EQ(section.waters.size(), 2u);
  EXPECT_EQ(section.waters[0].label, "governing discharge");
  for (const auto& water : section.waters) {
    EXPECT_NEAR(water.surface.front().y, water.profile->reservoir_level, 1e-9);
    EXPECT_NEAR(water.surface.back().y, water.profile->tailwater_level, 1e-9);
    for (std::size_t i = 1; i < water.surface.size(); ++i)
      EXPECT_GE(water.surface[i].x, water.surface[i - 1].x) << water.label << i;
    for (std::size_t i = 1; i < water.energy.size(); ++i) EXPECT_LE(water.energy[i].y, water.energy[i - 1].y + 1e-9) << i;
  }
}

TEST(LongSection, theRiverBedRisesNoSteeperThanOneInFour) {
  auto sample = output_sample();
  for (const double bed : {360.0, 368.3, 377.0}) {
    sample.site.river.bed_level = bed;
    const auto line = output::long_section(sample.site, sample.result.options[0]).river_bed;
    EXPECT_LE(std::abs(line[1].y - line[0].y), 0.25 * (line[1].x - line[0].x) + 1e-9);
    EXPECT_DOUBLE_EQ(line.back().y, bed);
  }
}

TEST(Canvas, spreadKeepsOrderGapAndBounds) {
  const double wanted[] = {10.0, 11.0, 10.5, 90.0, 99.0};
  const auto placed = output::spread(wanted, 12.0, 0.0, 100.0);
  EXPECT_LT(placed[0], placed[2]);
  EXPECT_LT(placed[2], placed[1]);
  EXPECT_GE(placed[2] - placed[0], 12.0 - 1e-3);
  EXPECT_GE(placed[4] - placed[3], 12.0 - 1e-3);
  EXPECT_GE(placed[0], 0.0);
  EXPECT_LE(placed[4], 100.0);
}

TEST(Canvas, ticksAreRoundAndInside) {
  const auto ticks = output::round_ticks(368.2, 421.7, 6);
  EXPECT_EQ(ticks.values, (std::vector<double>{370, 380, 390, 400, 410, 420}));
  EXPECT_EQ(ticks.decimals, 0);
  EXPECT_EQ(output::round_ticks(0.0, 0.9, 5).decimals, 1);
  EXPECT_TRUE(output::round_ticks(1.0, 1.0, 5).values.empty());
}

TEST(Printer, digitsFollowTheQuantity) {
  const output::Printer p(UnitSystem::si);
  EXPECT_EQ(p.level(-0.001), "0.00");
  EXPECT_EQ(p.level(-1.5), "−1.50");
  EXPECT_EQ(p.depth(0.9138), "0.914");
  EXPECT_EQ(p.depth(9.138), "9.14");
  EXPECT_EQ(p.discharge(1234.4), "1234");
  EXPECT_EQ(p.discharge(12.34), "12.3");
  EXPECT_EQ(p.worked(40.0, dimension::none, 5), "40");
  EXPECT_EQ(p.worked(1.30487654, dimension::none, 5), "1.3049");
  EXPECT_EQ(p.level(std::nan("")), "–");
}

}  // namespace
