// The chapters of the report, in the order in which they are printed. Each writes itself; report.cpp only calls them in turn.
#pragma once

#include <map>
#include <span>
#include <string>
#include <vector>

#include "quell/output/format.h"
#include "quell/output/report/html.h"
#include "quell/output/report/report.h"

namespace quell::output {

/// What every chapter reads. `chosen` is null where nothing could be sized.
struct ReportData {
  const site::Site& site;
  const design::DesignResult& result;
  const ReportContext& context;
  Printer print;
  const design::Option* chosen = nullptr;
};

/// Where a number comes from: the step of the chosen option's workings whose output is exactly this number.
class StepIndex {
 public:
  explicit StepIndex(const Working* working);
  /// "7.3": section and step within the workings, empty where no step gave that number.
  std::string step_of(double value) const;
  /// A link to that step as markup, or an empty text.
  std::string link(double value) const;

 private:
  std::map<double, std::string> steps_;
};

/// A numbered chapter. The list in words.cpp gives order, number and title once, for the contents and for the headings.
struct Chapter {
  std::string_view id;
  std::string_view title;
  bool on_new_page;
};
std::span<const Chapter> chapter_list();
void start_chapter(Html& html, std::string_view id);

void write_title_block(Html& html, const ReportData& data);
void write_summary(Html& html, const ReportData& data);
void write_notice(Html& html, const ReportData& data);
void write_contents(Html& html, const ReportData& data);
void write_inputs(Html& html, const ReportData& data);
void write_discharges(Html& html, const ReportData& data);
void write_chosen(Html& html, const ReportData& data);
void write_case_results(Html& html, const ReportData& data);
void write_findings(Html& html, const ReportData& data);
void write_workings(Html& html, const ReportData& data);
void write_methods(Html& html, const ReportData& data);
void write_other_options(Html& html, const ReportData& data);
void write_sources(Html& html, const ReportData& data);
void write_symbols(Html& html, const ReportData& data);

/// Numbers the figures of a chapter, going on from those before.
struct Figures {
  int number = 0;
  /// Adds a figure with its caption; nothing for an empty one.
  void add(Html& html, const std::string& svg, std::string_view caption);
};

/// The part of the site's chapter on river, allowances and uncertainty.
void write_site(Html& html, const ReportData& data, Figures& figures);
void write_comparison(Html& html, const ReportData& data, Figures& figures);
void write_safety(Html& html, const ReportData& data, Figures& figures);
void write_river(Html& html, const ReportData& data, Figures& figures);

/// The findings of one option as a table, the worst first. `brief`: rules that are in order get one line.
void write_finding_table(Html& html, const ReportData& data, const Findings& findings, bool brief);

/// Methods used in the chosen option's workings, in order of first use.
std::vector<const Method*> methods_used(const ReportData& data);

/// Full path of an input, "crest.level": its anchor in the chapter of inputs is "input-" and this.
std::string input_path(const ReportInput& input);

// Words used by several chapters.
/// Head of a column with its unit below, markup; without the unit where that is empty.
std::string with_head(std::string_view words, const std::string& unit);
std::string jump_words(design::JumpPlace place);  ///< "on the apron"
std::string capitalised(std::string text);        ///< "depth at the toe" to "Depth at the toe"; a symbol in front is left alone
std::string status_mark(Status status);           ///< markup: shape and word
std::string type_name(const design::Option& option);
std::string margin_sentence(const design::Option& option, const Printer& print);                    ///< plain text
std::string verdict_sentence(const ReportData& data);                                               ///< plain text
std::string citation_link(std::string_view source, std::string_view place, Provenance provenance);  ///< markup
std::size_t count_of(const Findings& findings, Status status);

}  // namespace quell::output
