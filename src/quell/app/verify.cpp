// quell verify [PATTERN]: the validation book run in the installed program, and measured data against it.
#include <fmt/format.h>

#include <filesystem>
#include <nlohmann/json.hpp>

#include "quell/app/book_text.h"
#include "quell/app/check_texts.h"
#include "quell/app/commands.h"
#include "quell/app/measured.h"
#include "quell/app/validation.h"
#include "quell/io/files.h"

namespace quell::app {
namespace {

using Json = nlohmann::ordered_json;

/// The files with the rows that match; a pattern in the file's name or source keeps the whole file.
std::vector<CheckedFile> run_book(const std::string& pattern) {
  std::vector<CheckedFile> book;
  for (const CheckText& text : check_texts()) {
    CheckedFile file = run_checks(text.name, text.text);
    const bool whole = file.name.find(pattern) != std::string::npos || source_label(file).find(pattern) != std::string::npos;
    if (!whole) {
      std::erase_if(file.rows, [&](const CheckRow& row) { return row.method.find(pattern) == std::string::npos; });
      std::erase_if(file.faults, [&](const std::string& fault) { return fault.find(pattern) == std::string::npos; });
    }
    if (!file.rows.empty() || !file.faults.empty()) book.push_back(std::move(file));
  }
  return book;
}

Json row_json(const CheckedFile& file, const CheckRow& row) {
  const bool has_number = !row.expected_text.empty();
  return Json{{"method", row.method},
              {"place", row.place},
              {"source", source_label(file)},
              {"provenance", row.provenance},
              {"symbol", row.symbol},
              {"expected", has_number ? Json(row.expected) : Json(nullptr)},
              {"got", has_number ? Json(row.got) : Json(nullptr)},
              {"difference", has_number ? Json(row.got - row.expected) : Json(nullptr)},
              {"tolerance", has_number ? Json(row.tolerance) : Json(nullptr)},
              {"unit", coherent_symbol(row.dimension)},
              {"expected_text", row.expected_text},
              {"passed", row.passed},
              {"why", row.why},
              {"note", row.note}};
}

Json measured_json(const std::vector<MeasuredSet>& sets) {
  Json list = Json::array();
  for (const MeasuredSet& set : sets) {
    Json points = Json::array();
    for (const MeasuredPoint& point : set.points)
      points.push_back(Json{{"ours", point.ours},
                            {"measured", point.measured},
                            {"ratio", point.ratio()},
                            {"provenance", point.seen ? "seen" : "memory"}});
    list.push_back(Json{{"set", set.name},
                        {"source", set.source},
                        {"title", set.title},
                        {"place", set.place},
                        {"method", set.method},
                        {"symbol", set.symbol},
                        {"number", set.points.size()},
                        {"bias", set.bias()},
                        {"spread", set.points.size() < 2 ? Json(nullptr) : Json(set.spread())},
                        {"remarks", set.remarks},
                        {"points", points},
                        {"faults", set.faults}});
  }
  return list;
}

Json book_json(const std::vector<CheckedFile>& book, const std::vector<MeasuredSet>& sets, std::size_t passed,
               std::size_t failed) {
  Json sources = Json::array();
  for (const CheckedFile& file : book) {
    Json rows = Json::array();
    for (const CheckRow& row : file.rows) rows.push_back(row_json(file, row));
    sources.push_back(Json{{"file", file.name},
                           {"source", source_label(file)},
                           {"title", file.title},
                           {"known", file.known},
                           {"checks", rows},
                           {"faults", file.faults}});
  }
  return Json{{"program", {{"version", QUELL_VERSION}}},
              {"passed", passed},
              {"failed", failed},
              {"sources", sources},
              {"measured", measured_json(sets)}};
}

/// At most `width` columns; a longer text ends in "...".
std::string cut(const std::string& text, std::size_t width) {
  std::size_t columns = 0;
  std::size_t keep = 0;
  for (std::size_t i = 0; i < text.size(); ++i) {
    if ((static_cast<unsigned char>(text[i]) & 0xC0U) == 0x80U) continue;
    if (++columns == width - 2) keep = i;
    if (columns > width) return text.substr(0, keep) + "...";
  }
  return text;
}

std::string shown(double value, const CheckRow& row, const std::string& book_text, const std::optional<UnitSystem>& units) {
  return units ? format_quantity(value, row.dimension, *units, 6) : book_text;
}

void print_row(const CheckRow& row, const std::optional<UnitSystem>& units) {
  if (row.expected_text.empty()) {
    fmt::print("  {:5} {:36} {:5} {}\n", row.passed ? "ok" : "FAILS", row.method, row.symbol, cut(row.note, 48));
  } else {
    const std::string tolerance = row.tolerance_text.find('%') == std::string::npos
                                      ? shown(row.tolerance, row, row.tolerance_text, units)
                                      : row.tolerance_text;
    fmt::print("  {:5} {:36} {:5} {:>16} {:>16} {:>13} {:>13}\n", row.passed ? "ok" : "FAILS", row.method, row.symbol,
               shown(row.expected, row, row.expected_text, units), shown(row.got, row, row.got_text, units),
               units ? format_quantity(row.got - row.expected, row.dimension, *units, 2) : difference_text(row), tolerance);
    if (row.passed && is_wider_than_print(row)) fmt::print("        within: {}\n", cut(row.why, 98));
  }
  if (row.passed) return;
  fmt::print("        at: {}\n", cut(row.place, 88));
  if (!row.note.empty()) fmt::print("        note: {}\n", cut(row.note, 86));
  fmt::print("        tolerance: {}\n", cut(row.why, 81));
}

void print_file(const CheckedFile& file, const std::optional<UnitSystem>& units) {
  fmt::print("{}\n", cut(fmt::format("{} ({})", source_label(file), file.name), 100));
  fmt::print("{}\n", cut("  " + file.title, 100));
  fmt::print("  {:5} {:36} {:5} {:>16} {:>16} {:>13} {:>13}\n", "", "method", "", "book", "quell", "difference", "within");
  for (const CheckRow& row : file.rows) print_row(row, units);
  for (const std::string& fault : file.faults) fmt::print("{}\n", cut("  FAULT " + fault, 100));
  const std::size_t total = file.rows.size() + file.faults.size();
  fmt::print("  {} of {} agree\n\n", total - file.failures(), total);
}

void print_measured(const std::vector<MeasuredSet>& sets) {
  if (sets.empty()) return;
  fmt::print("Measured over computed: these show the scatter of jumps and of laboratories, and pass or fail nothing\n");
  fmt::print("  {:30} {:32} {:6} {:>6} {:>6} {:>6} {:>6} {:>6}\n", "", "method", "", "number", "mean", "st.dev", "least",
             "most");
  for (const MeasuredSet& set : sets) {
    fmt::print("  {:30} {:32} {:6} {:>6} {:>6.3f} {:>6} {:>6.3f} {:>6.3f}\n", cut(set.source, 30), cut(set.method, 32),
               set.symbol, set.points.size(), set.bias(), set.points.size() < 2 ? "-" : fmt::format("{:.3f}", set.spread()),
               set.lowest(), set.highest());
    for (const std::string& fault : set.faults) fmt::print("{}\n", cut("  FAULT " + set.name + ": " + fault, 100));
  }
  fmt::print("\n");
}

/// The figure, whole or not at all. The error is a sentence.
tl::expected<void, std::string> write_scatter(const std::string& file, const std::vector<MeasuredSet>& sets) {
  const std::filesystem::path path(file);
  if (path.filename().empty()) return tl::unexpected(fmt::format("'{}' is no file name", file));
  const auto folder = path.has_parent_path() ? path.parent_path() : std::filesystem::path(".");
  return io::write_files(folder, {{path.filename().string(), output::scatter_svg(scatter_panels(sets))}});
}

}  // namespace

int verify(const VerifyArguments& arguments) {
  const std::vector<CheckedFile> book = run_book(arguments.pattern);
  const std::vector<MeasuredSet> sets = measured_sets(arguments.pattern);
  if (book.empty() && sets.empty()) {
    fmt::print(stderr, "quell verify: no file, source or method of the validation book holds '{}'\n", arguments.pattern);
    return exit_bad_input;
  }
  if (!arguments.scatter.empty() && sets.empty()) {
    fmt::print(stderr, "quell verify: no measured data hold '{}': there is nothing to draw\n", arguments.pattern);
    return exit_bad_input;
  }
  std::size_t failed = 0;
  std::size_t total = 0;
  for (const CheckedFile& file : book) {
    failed += file.failures();
    total += file.rows.size() + file.faults.size();
  }
  for (const MeasuredSet& set : sets) {
    failed += set.faults.size();
    total += set.faults.size();
  }
  if (arguments.common.json) {
    fmt::print("{}\n", book_json(book, sets, total - failed, failed).dump(2));
  } else if (arguments.markdown) {
    fmt::print("{}", book_markdown(book, sets));
  } else {
    for (const CheckedFile& file : book) print_file(file, arguments.common.units);
    print_measured(sets);
    fmt::print("{} of {} numbers from {} sources agree{}\n", total - failed, total, book.size(),
               failed == 0 ? "" : fmt::format("; {} do not", failed));
  }
  if (!arguments.scatter.empty()) {
    if (const auto written = write_scatter(arguments.scatter, sets); !written) {
      fmt::print(stderr, "quell verify: {}\n", written.error());
      return exit_no_result;
    }
    fmt::print(stderr, "wrote {}\n", arguments.scatter);
  }
  return failed == 0 ? exit_done : exit_requirement_fails;
}

}  // namespace quell::app
