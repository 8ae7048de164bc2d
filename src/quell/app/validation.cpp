#include "quell/app/validation.h"

#include <fmt/format.h>
#include <toml++/toml.h>

#include <algorithm>
#include <cmath>
#include <initializer_list>
#include <limits>
#include <optional>

#include "quell/app/method_index.h"
#include "quell/app/method_values.h"
#include "quell/app/validation_text.h"
#include "quell/base/source.h"

namespace quell::app {
namespace {

using Complaint = tl::unexpected<std::string>;

bool known_mark(std::string_view mark) {
  return mark == "seen" || mark == "memory" || mark == "computed";
}

/// A text, a number or nothing, as text: a number of the book may stand without quotes.
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

/// The numbers of one input: a TOML array for a list.
tl::expected<std::vector<double>, std::string> read_input(const Symbol& symbol, const toml::node& node) {
  const toml::array* array = node.as_array();
  if ((array != nullptr) != symbol.list)
    return Complaint(fmt::format("input {} is {}", symbol.name.view(), symbol.list ? "a list: [1, 2]" : "one number, no list"));
  std::vector<double> values;
  const auto add = [&](const toml::node& one) -> std::string {
    const auto number = read_book_number(text_of(&one), symbol.dimension);
    if (!number) return fmt::format("input {}: {}", symbol.name.view(), number.error());
    values.emplace_back(number->value);
    return {};
  };
  if (array == nullptr) {
    if (auto problem = add(node); !problem.empty()) return Complaint(std::move(problem));
    return values;
  }
  for (const toml::node& one : *array)
    if (auto problem = add(one); !problem.empty()) return Complaint(std::move(problem));
  return values;
}

/// The inputs in the order of the method's symbols.
tl::expected<std::vector<double>, std::string> read_inputs(const Method& method, const toml::table& given) {
  std::vector<std::vector<double>> values;
  for (const Symbol& symbol : method.inputs) {
    const toml::node* node = given.get(symbol.name.view());
    if (node == nullptr) {
      if (symbol.required()) return Complaint(fmt::format("input '{}' is missing", symbol.name.view()));
      values.push_back({symbol.optional_value});
      continue;
    }
    auto numbers = read_input(symbol, *node);
    if (!numbers) return Complaint(numbers.error());
    values.emplace_back(std::move(*numbers));
  }
  for (const auto& [key, node] : given)
    if (find_symbol(method.inputs, key.str()) == nullptr) return Complaint(fmt::format("'{}' is no input", key.str()));
  return written_out(method, values);
}

/// One check of a file: reads it, runs the method, and hands its rows to the file.
class Check {
 public:
  Check(const toml::table& table, CheckedFile& file) : table_(table), file_(file) {
    row_.method = text_in(table, "method");
    row_.place = text_in(table, "place");
    row_.why = text_in(table, "why");
    row_.provenance = text_in(table, "provenance");
    if (row_.provenance.empty()) row_.provenance = file.known;
  }

  void run() {
    if (const auto key = stranger(table_, {"method", "place", "inputs", "expect", "tolerance", "why", "provenance",
                                           "expect_valid", "expect_no_answer"}))
      return fault(fmt::format("key '{}' is not known", *key));
    if (row_.place.empty() || row_.why.empty()) return fault("place and why must be given");
    if (!known_mark(row_.provenance)) return fault("provenance is none of seen, memory, computed");
    method_ = find_method(row_.method);
    if (method_ == nullptr) return fault("there is no such method");
    const toml::table* inputs = table_["inputs"].as_table();
    if (inputs == nullptr) return fault("inputs must be a table");
    const auto values = read_inputs(*method_, *inputs);
    if (!values) return fault(values.error());
    evaluate(*values);
  }

 private:
  const toml::table& table_;
  CheckedFile& file_;
  CheckRow row_;  ///< what all rows of the check share
  const Method* method_ = nullptr;

  void fault(const std::string& text) {
    file_.faults.push_back(
        fmt::format("check {} ({}): {}", row_.method.empty() ? "without method" : row_.method, row_.place, text));
  }

  void state(std::string symbol, bool passed, std::string note) {
    CheckRow row = row_;
    row.symbol = std::move(symbol);
    row.passed = passed;
    row.note = std::move(note);
    file_.rows.push_back(std::move(row));
  }

  void evaluate(const std::vector<double>& inputs) {
    std::vector<double> outputs(method_->outputs.size(), std::numeric_limits<double>::quiet_NaN());
    const auto done = method_->answer(inputs, outputs);
    if (table_["expect_no_answer"].value_or(false))
      return done ? state("answer", false, "the method gives an answer where there is none")
                  : state("answer", true, fmt::format("no answer: {}", done.error().reason));
    const toml::table* expect = table_["expect"].as_table();
    if (expect == nullptr || expect->empty()) return fault("expect must hold at least one output");
    if (!done) return state("answer", false, fmt::format("no answer: {}", done.error().reason));
    const bool valid = method_->covers(inputs);
    if (valid != table_["expect_valid"].value_or(true))
      state("valid", false,
            valid ? "inside the method's range, expected outside" : "outside the method's range, expected inside");
    for (const auto& [key, node] : *expect) compare(key.str(), text_of(&node), outputs, !valid);
  }

  void compare(std::string_view name, const std::string& expected_text, std::span<const double> outputs, bool outside) {
    const Symbol* symbol = find_symbol(method_->outputs, name);
    if (symbol == nullptr) return fault(fmt::format("'{}' is no output", name));
    const auto expected = read_book_number(expected_text, symbol->dimension);
    if (!expected) return fault(fmt::format("{}: {}", name, expected.error()));
    const toml::table* each = table_["tolerance"].as_table();
    const std::string allowed = each != nullptr ? text_in(*each, name) : text_in(table_, "tolerance");
    const auto tolerance = read_tolerance(allowed, symbol->dimension, expected->value);
    if (!tolerance) return fault(fmt::format("{}: {}", name, tolerance.error()));
    CheckRow row = row_;
    row.symbol = name;
    row.dimension = symbol->dimension;
    row.expected = expected->value;
    row.got = outputs[static_cast<std::size_t>(symbol - method_->outputs.data())];
    row.tolerance = *tolerance;
    row.expected_text = expected_text;
    row.got_text = text_like(row.got, *expected);
    row.tolerance_text = allowed;
    // A NaN fails this comparison, as it must. The last addend is the rounding of the unit conversion alone.
    row.passed = std::abs(row.got - row.expected) <= row.tolerance + 1e-14 * std::abs(row.expected);
    if (outside) row.note = "outside the method's range, as expected";
    file_.rows.push_back(std::move(row));
  }
};

void read_head(const toml::table& root, CheckedFile& file) {
  if (const auto key = stranger(root, {"source", "title", "known", "check"}))
    file.faults.push_back(fmt::format("key '{}' is not known", *key));
  file.source = text_in(root, "source");
  file.title = text_in(root, "title");
  file.known = text_in(root, "known");
  if (file.source.empty() || file.title.empty()) file.faults.emplace_back("source and title must be given");
  if (!known_mark(file.known)) file.faults.emplace_back("known is none of seen, memory, computed");
  const bool is_key = file.source.find(' ') == std::string::npos;
  if (is_key && find_source(file.source) == nullptr)
    file.faults.push_back(fmt::format("source '{}' is neither a key of sources.bib nor a citation", file.source));
}

}  // namespace

std::size_t CheckedFile::failures() const {
  const auto failing = std::count_if(rows.begin(), rows.end(), [](const CheckRow& row) { return !row.passed; });
  return static_cast<std::size_t>(failing) + faults.size();
}

CheckedFile run_checks(std::string_view name, std::string_view text) {
  CheckedFile file;
  file.name = name;
  try {
    const toml::table root = toml::parse(text, name);
    read_head(root, file);
    const toml::array* checks = root["check"].as_array();
    if (checks == nullptr || checks->empty()) file.faults.emplace_back("no [[check]] in the file");
    if (checks != nullptr)
      for (const toml::node& node : *checks)
        if (const toml::table* table = node.as_table()) Check(*table, file).run();
  } catch (const toml::parse_error& error) {
    file.faults.push_back(fmt::format("line {}: {}", error.source().begin.line, error.description()));
  }
  return file;
}

std::string source_label(const CheckedFile& file) {
  return short_citation(file.source);
}

}  // namespace quell::app
