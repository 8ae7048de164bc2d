#include "quell/app/validation.h"

#include <fmt/format.h>
#include <toml++/toml.h>

#include <algorithm>
#include <limits>

#include "quell/app/method_index.h"
#include "quell/app/method_values.h"
#include "quell/app/validation_case.h"
#include "quell/app/validation_entry.h"
#include "quell/app/validation_text.h"
#include "quell/base/source.h"

namespace quell::app {
namespace {

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

/// One method, called once.
class Check : Entry {
 public:
  Check(const toml::table& table, CheckedFile& file) : Entry(table, file) { row_.method = text_in(table, "method"); }

  void run() {
    if (const auto done = called(); !done)
      fault(fmt::format("check {}", row_.method.empty() ? "without method" : row_.method), done.error());
  }

 private:
  Done called() {
    if (auto good = check_head(
            {"method", "place", "inputs", "expect", "tolerance", "why", "provenance", "expect_valid", "expect_no_answer"});
        !good)
      return good;
    const Method* method = find_method(row_.method);
    if (method == nullptr) return Complaint("there is no such method");
    const toml::table* given = table_["inputs"].as_table();
    if (given == nullptr) return Complaint("inputs must be a table");
    const auto inputs = read_inputs(*method, *given);
    if (!inputs) return Complaint(inputs.error());
    std::vector<double> outputs(method->outputs.size(), std::numeric_limits<double>::quiet_NaN());
    const auto answered = method->answer(*inputs, outputs);
    if (table_["expect_no_answer"].value_or(false)) {
      state(
          "answer", !answered,
          answered ? "the method gives an answer where there is none" : fmt::format("no answer: {}", answered.error().reason));
      return {};
    }
    const toml::table* expect = table_["expect"].as_table();
    if (expect == nullptr || expect->empty()) return Complaint("expect must hold at least one output");
    if (!answered) {
      state("answer", false, fmt::format("no answer: {}", answered.error().reason));
      return {};
    }
    const bool valid = method->covers(*inputs);
    if (valid != table_["expect_valid"].value_or(true))
      state("valid", false,
            valid ? "inside the method's range, expected outside" : "outside the method's range, expected inside");
    return compare_all(*method, *expect, outputs, valid ? "" : "outside the method's range, as expected");
  }

  Done compare_all(const Method& method, const toml::table& expect, std::span<const double> outputs, const std::string& note) {
    for (const auto& [key, node] : expect) {
      const Symbol* symbol = find_symbol(method.outputs, key.str());
      if (symbol == nullptr) return Complaint(fmt::format("'{}' is no output", key.str()));
      const double value = outputs[static_cast<std::size_t>(symbol - method.outputs.data())];
      if (auto done = compare({symbol->name.view(), symbol->dimension, value}, text_of(&node), note); !done) return done;
    }
    return {};
  }
};

void read_head(const toml::table& root, CheckedFile& file) {
  if (const auto key = stranger(root, {"source", "title", "known", "check", "case"}))
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
    const auto each = [&](std::string_view key, const auto& run) {
      const toml::array* entries = root[key].as_array();
      if (entries == nullptr) return;
      for (const toml::node& node : *entries)
        if (const toml::table* table = node.as_table()) run(*table);
    };
    each("check", [&](const toml::table& table) { Check(table, file).run(); });
    each("case", [&](const toml::table& table) { run_case(table, file); });
    if (file.rows.empty() && file.faults.empty()) file.faults.emplace_back("no [[check]] and no [[case]] in the file");
  } catch (const toml::parse_error& error) {
    file.faults.push_back(fmt::format("line {}: {}", error.source().begin.line, error.description()));
  }
  return file;
}

std::string source_label(const CheckedFile& file) {
  return short_citation(file.source);
}

}  // namespace quell::app
