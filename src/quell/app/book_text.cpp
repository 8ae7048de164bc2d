#include "quell/app/book_text.h"

#include <fmt/format.h>

#include <algorithm>
#include <cctype>
#include <cmath>
#include <cstdlib>

namespace quell::app {
namespace {

/// The number at the head of a text of the book, and the unit behind it.
struct Printed {
  double number = 0.0;
  int decimals = 0;  ///< places behind the point; below zero with a positive exponent
  std::string unit;
};

Printed read_printed(const std::string& text) {
  Printed printed;
  char* end = nullptr;
  printed.number = std::strtod(text.c_str(), &end);
  const std::string digits(text.c_str(), static_cast<std::size_t>(end - text.c_str()));
  const auto exponent = digits.find_first_of("eE");
  const std::string mantissa = digits.substr(0, exponent);
  if (const auto point = mantissa.find('.'); point != std::string::npos)
    printed.decimals = static_cast<int>(mantissa.size() - point - 1);
  if (exponent != std::string::npos) printed.decimals -= std::atoi(digits.c_str() + exponent + 1);
  printed.unit = end;
  while (!printed.unit.empty() && std::isspace(static_cast<unsigned char>(printed.unit.front())) != 0) printed.unit.erase(0, 1);
  return printed;
}

/// SI of one unit of the source.
double factor_of(const CheckRow& row, const Printed& printed) {
  return printed.number != 0.0 ? row.expected / printed.number : 1.0;
}

std::string cell(std::string text) {
  for (std::size_t at = 0; (at = text.find('|', at)) != std::string::npos; at += 2) text.replace(at, 1, "\\|");
  return text;
}

void append_row(std::string& out, const CheckRow& row) {
  const bool has_number = !row.expected_text.empty();
  const std::string reason = !has_number || is_wider_than_print(row) ? row.why : "";
  out += fmt::format("| `{}` | {} | {} | {} | {} | {} | {} | {}{} |\n", row.method, cell(row.place), row.symbol,
                     has_number ? cell(row.expected_text) : "", has_number ? cell(row.got_text) : cell(row.note),
                     has_number ? difference_text(row) : "", cell(row.tolerance_text), row.passed ? "" : "**fails** ",
                     cell(reason));
}

std::string measured_markdown(const std::vector<MeasuredSet>& sets) {
  if (sets.empty()) return {};
  std::string out =
      "## Measured against computed\n\nThe scatter of jumps and of laboratories: measured over computed, with its mean (bias) "
      "and standard "
      "deviation (spread). These pass or fail nothing.\n\n![Measured against computed](images/measured_jumps.svg)\n\n"
      "| data | known | method | symbol | number | mean | st. dev. | least | most | remarks "
      "|\n|---|---|---|---|---|---|---|---|---|---|\n";
  for (const MeasuredSet& set : sets) {
    const bool seen = std::all_of(set.points.begin(), set.points.end(), [](const MeasuredPoint& point) { return point.seen; });
    out += fmt::format("| {}: {}, {} | {} | `{}` | {} | {} | {:.3f} | {} | {:.3f} | {:.3f} | {} |\n", cell(set.source),
                       cell(set.title), cell(set.place), seen ? "seen" : "from memory, in part or all", set.method, set.symbol,
                       set.points.size(), set.bias(), set.points.size() < 2 ? "–" : fmt::format("{:.3f}", set.spread()),
                       set.lowest(), set.highest(), cell(set.remarks));
  }
  return out;
}

}  // namespace

std::string difference_text(const CheckRow& row) {
  const Printed printed = read_printed(row.expected_text);
  const double difference = (row.got - row.expected) / factor_of(row, printed);
  // Below a billionth it is the rounding of the conversion.
  const bool none = std::abs(difference) <= 1e-9 * std::max(1.0, std::abs(printed.number));
  return (none ? std::string("0") : fmt::format("{:+.2g}", difference)) + (printed.unit.empty() ? "" : " " + printed.unit);
}

bool is_wider_than_print(const CheckRow& row) {
  const Printed printed = read_printed(row.expected_text);
  const double half_digit = 0.5 * std::pow(10.0, -printed.decimals) * std::abs(factor_of(row, printed));
  return row.tolerance > 1.21 * half_digit;  // 0.6 of the last digit still is its rounding
}

std::string book_markdown(const std::vector<CheckedFile>& book, const std::vector<MeasuredSet>& sets) {
  std::size_t rows = 0;
  std::size_t failed = 0;
  for (const CheckedFile& file : book) {
    rows += file.rows.size();
    failed += file.failures();
  }
  std::string out = fmt::format(
      "# The validation book\n\nWritten by `quell verify --markdown` (`./dev docs`): {} published or independently computed "
      "numbers from {} "
      "sources, run through the methods of this program; {} differ by more than their tolerance. `quell verify` prints the "
      "same in "
      "the terminal. How a row is written and added: [data/checks/README.md](../data/checks/README.md).\n\nThe book is "
      "evidence for "
      "the formulas, not for a design: it does not replace the judgement of a licensed engineer or the local code. The last "
      "column "
      "gives the reason wherever a tolerance is wider than half a unit of the last digit that the source prints.\n\n",
      rows, book.size(), failed);
  for (const CheckedFile& file : book) {
    out += fmt::format("## {}\n\n{}. `data/checks/{}`, {}, {} numbers.\n\n", source_label(file), file.title, file.name,
                       file.known == "computed" ? "computed outside the program"
                       : file.known == "seen"   ? "seen in the source"
                                                : "from memory",
                       file.rows.size());
    out += "| method | place | symbol | theirs | ours | difference | tolerance | reason |\n|---|---|---|---|---|---|---|---|\n";
    for (const CheckRow& row : file.rows) append_row(out, row);
    for (const std::string& fault : file.faults) out += "\nFault: " + fault + "\n";
    out += "\n";
  }
  return out + measured_markdown(sets);
}

}  // namespace quell::app
