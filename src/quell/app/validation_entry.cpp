#include "quell/app/validation_entry.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "quell/app/validation_text.h"

namespace quell::app {

bool known_mark(std::string_view mark) {
  return mark == "seen" || mark == "memory" || mark == "computed";
}

std::string text_of(const toml::node* node) {
  if (node == nullptr) return {};
  if (const auto text = node->value_exact<std::string>()) return *text;
  if (const auto whole = node->value_exact<std::int64_t>()) return fmt::format("{}", *whole);
  if (const auto number = node->value_exact<double>()) return fmt::format("{}", *number);
  return {};
}

std::string text_in(const toml::table& table, std::string_view key) {
  return text_of(table.get(key));
}

std::optional<std::string> stranger(const toml::table& table, std::initializer_list<std::string_view> keys) {
  for (const auto& [key, node] : table)
    if (std::find(keys.begin(), keys.end(), key.str()) == keys.end()) return std::string(key.str());
  return std::nullopt;
}

const Symbol* find_symbol(std::span<const Symbol> symbols, std::string_view name) {
  const auto found = std::find_if(symbols.begin(), symbols.end(), [&](const Symbol& s) { return s.name.view() == name; });
  return found == symbols.end() ? nullptr : &*found;
}

Entry::Entry(const toml::table& table, CheckedFile& file) : table_(table), file_(file) {
  row_.place = text_in(table, "place");
  row_.why = text_in(table, "why");
  row_.provenance = text_in(table, "provenance");
  if (row_.provenance.empty()) row_.provenance = file.known;
}

Done Entry::check_head(std::initializer_list<std::string_view> keys) const {
  if (const auto key = stranger(table_, keys)) return Complaint(fmt::format("key '{}' is not known", *key));
  if (row_.place.empty() || row_.why.empty()) return Complaint("place and why must be given");
  if (!known_mark(row_.provenance)) return Complaint("provenance is none of seen, memory, computed");
  return {};
}

void Entry::fault(std::string_view what, std::string_view text) {
  file_.faults.push_back(fmt::format("{} ({}): {}", what, row_.place, text));
}

void Entry::state(std::string symbol, bool passed, std::string note) {
  CheckRow row = row_;
  row.symbol = std::move(symbol);
  row.passed = passed;
  row.note = std::move(note);
  file_.rows.push_back(std::move(row));
}

Done Entry::compare(const Found& found, const std::string& expected_text, std::string note) {
  const auto expected = read_book_number(expected_text, found.dimension);
  if (!expected) return Complaint(fmt::format("{}: {}", found.name, expected.error()));
  const toml::table* each = table_["tolerance"].as_table();
  const std::string allowed = each != nullptr ? text_in(*each, found.name) : text_in(table_, "tolerance");
  const auto tolerance = read_tolerance(allowed, found.dimension, expected->value);
  if (!tolerance) return Complaint(fmt::format("{}: {}", found.name, tolerance.error()));
  CheckRow row = row_;
  row.symbol = found.name;
  row.dimension = found.dimension;
  row.expected = expected->value;
  row.got = found.value;
  row.tolerance = *tolerance;
  row.expected_text = expected_text;
  row.got_text = text_like(row.got, *expected);
  row.tolerance_text = allowed;
  // A NaN fails this comparison, as it must. The last addend is the rounding of the unit conversion alone.
  row.passed = std::abs(row.got - row.expected) <= row.tolerance + 1e-14 * std::abs(row.expected);
  row.note = std::move(note);
  file_.rows.push_back(std::move(row));
  return {};
}

}  // namespace quell::app
