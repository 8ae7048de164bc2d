#include "quell/io/nearest.h"

#include <algorithm>
#include <string>
#include <vector>

namespace quell::io {
namespace {

std::string folded(std::string_view word) {
  std::string result;
  for (const char c : word) {
    if (c >= 'A' && c <= 'Z') {
      result += static_cast<char>(c - 'A' + 'a');
    } else {
      result += c == '-' || c == ' ' ? '_' : c;
    }
  }
  return result;
}

std::size_t edits(const std::string& a, const std::string& b) {
  std::vector<std::vector<std::size_t>> d(a.size() + 1, std::vector<std::size_t>(b.size() + 1));
  for (std::size_t i = 0; i <= a.size(); ++i) d[i][0] = i;
  for (std::size_t j = 0; j <= b.size(); ++j) d[0][j] = j;
  for (std::size_t i = 1; i <= a.size(); ++i)
    for (std::size_t j = 1; j <= b.size(); ++j) {
      d[i][j] = std::min({d[i - 1][j] + 1, d[i][j - 1] + 1, d[i - 1][j - 1] + (a[i - 1] == b[j - 1] ? 0u : 1u)});
      if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1]) d[i][j] = std::min(d[i][j], d[i - 2][j - 2] + 1);
    }
  return d[a.size()][b.size()];
}

/// True where one word, cut at underscores, ends or starts with the other.
bool shares_words(const std::string& a, const std::string& b) {
  const std::string& longer = a.size() > b.size() ? a : b;
  const std::string& shorter = a.size() > b.size() ? b : a;
  if (shorter.size() < 4 || longer.size() == shorter.size()) return false;
  const std::size_t rest = longer.size() - shorter.size();
  return (longer.compare(0, shorter.size(), shorter) == 0 && longer[shorter.size()] == '_') ||
         (longer.compare(rest, shorter.size(), shorter) == 0 && longer[rest - 1] == '_');
}

}  // namespace

std::string_view nearest(std::string_view word, std::span<const std::string_view> valid) {
  if (word.size() > 60) return {};
  const std::string meant = folded(word);
  std::string_view best;
  std::size_t best_edits = std::max<std::size_t>(1, std::min<std::size_t>(4, word.size() / 3)) + 1;
  for (const std::string_view candidate : valid) {
    const std::size_t distance = edits(meant, folded(candidate));
    if (distance < best_edits) {
      best = candidate;
      best_edits = distance;
    }
  }
  if (!best.empty()) return best;
  for (const std::string_view candidate : valid)
    if (shares_words(meant, folded(candidate))) return candidate;
  return {};
}

}  // namespace quell::io
