#include "quell/io/problem_list.h"

#include <fmt/format.h>

#include <algorithm>
#include <iterator>
#include <tuple>

namespace quell::io {
namespace {

constexpr std::size_t widest_excerpt = 160;  ///< bytes of a line that are still shown

/// Byte at which the character of that column (from 1) starts.
std::size_t byte_of_column(std::string_view text, int column) {
  std::size_t i = 0;
  for (int at = 0; i < text.size(); ++i)
    if ((static_cast<unsigned char>(text[i]) & 0xC0u) != 0x80u && ++at >= column) break;
  return i;
}

void append_in_order(std::vector<Problem>& from, std::vector<Problem>& to) {
  std::sort(from.begin(), from.end(), [](const Problem& a, const Problem& b) {
    return std::tie(a.line, a.column, a.message) < std::tie(b.line, b.column, b.message);
  });
  to.insert(to.end(), std::make_move_iterator(from.begin()), std::make_move_iterator(from.end()));
  from.clear();
}

}  // namespace

std::string_view ProblemList::line(int number) const {
  const auto index = static_cast<std::size_t>(number - 1);
  return number > 0 && index < lines_.size() ? lines_[index] : std::string_view{};
}

Problem ProblemList::make(Place place, std::string message) const {
  const std::string_view text = line(place.line);
  // The parser places lists at the space before their bracket.
  const std::size_t byte = byte_of_column(text, place.column);
  for (std::size_t i = byte; place.column > 0 && i < text.size() && text[i] == ' '; ++i) ++place.column;
  return {file_, place.line, place.column, std::move(message),
          text.size() <= widest_excerpt ? std::string(text) : std::string()};
}

void ProblemList::hand_over(SiteFile& result) {
  append_in_order(problems_, result.problems);
  append_in_order(remarks_, result.remarks);
}

std::string to_text(const Problem& problem, std::string_view label) {
  std::string text = problem.file;
  if (problem.line > 0) text += fmt::format(":{}", problem.line);
  if (problem.line > 0 && problem.column > 0) text += fmt::format(":{}", problem.column);
  text += fmt::format(": {}: {}", label, problem.message);
  if (problem.excerpt.empty()) return text;
  text += fmt::format("\n    {}", problem.excerpt);
  if (problem.column < 1) return text;
  // Tabs are repeated, so that the caret stands under its character on every terminal.
  std::string indent;
  int column = 1;
  for (std::size_t i = 0; i < problem.excerpt.size() && column < problem.column; ++i) {
    if ((static_cast<unsigned char>(problem.excerpt[i]) & 0xC0u) == 0x80u) continue;
    indent += problem.excerpt[i] == '\t' ? '\t' : ' ';
    ++column;
  }
  return text + "\n    " + indent + "^";
}

}  // namespace quell::io
