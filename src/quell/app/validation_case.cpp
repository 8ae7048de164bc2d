#include "quell/app/validation_case.h"

#include <fmt/format.h>

#include <algorithm>
#include <limits>

#include "quell/app/method_index.h"
#include "quell/app/validation_entry.h"
#include "quell/base/expression.h"

namespace quell::app {
namespace {

/// A name of the case and its value. `method` is what gave it, or the last method called before it; empty for what is given.
struct Known {
  std::string name;
  double value = 0.0;  ///< SI
  std::string method;
  const Symbol* output = nullptr;  ///< the symbol of the method; null for given and let
};

class Case : Entry {
 public:
  using Entry::Entry;

  void run() {
    if (const auto done = worked(); !done) fault("case", done.error());
  }

 private:
  std::vector<Known> known_;
  std::string last_method_;
  bool unanswered_ = false;

  Done worked() {
    if (auto good = check_head({"place", "given", "steps", "expect", "tolerance", "why", "provenance"}); !good) return good;
    if (auto good = read_given(); !good) return good;
    const toml::array* steps = table_["steps"].as_array();
    if (steps == nullptr || steps->empty()) return Complaint("steps must hold at least one step");
    for (std::size_t i = 0; i < steps->size() && !unanswered_; ++i) {
      const toml::table* step = steps->get(i)->as_table();
      const auto done = step != nullptr ? run_step(*step) : Done(Complaint("is no table"));
      if (!done) return Complaint(fmt::format("step {}: {}", i + 1, done.error()));
    }
    return unanswered_ ? Done() : compare_all();
  }

  Done read_given() {
    const toml::table* given = table_["given"].as_table();
    if (given == nullptr) return Complaint("given must be a table");
    for (const auto& [key, node] : *given) {
      const auto quantity = parse_quantity(text_of(&node));
      if (!quantity) return Complaint(fmt::format("given {}: {}", key.str(), quantity.error().message));
      known_.push_back({std::string(key.str()), quantity->value, {}, nullptr});
    }
    return {};
  }

  Done run_step(const toml::table& step) {
    const bool is_let = step.contains("let");
    const auto key = is_let ? stranger(step, {"let"}) : stranger(step, {"method", "inputs", "as", "expect_valid"});
    if (key) return Complaint(fmt::format("key '{}' is not known", *key));
    return is_let ? let(text_in(step, "let")) : call(step);
  }

  std::vector<NamedValue> values() const {
    std::vector<NamedValue> list;
    for (const Known& known : known_) list.push_back({known.name, known.value});
    return list;
  }

  /// Each name means one thing in a case.
  Done add(Known fresh) {
    if (find(fresh.name) != nullptr) return Complaint(fmt::format("'{}' has a value already", fresh.name));
    known_.push_back(std::move(fresh));
    return {};
  }

  const Known* find(std::string_view name) const {
    const auto found = std::find_if(known_.begin(), known_.end(), [&](const Known& known) { return known.name == name; });
    return found == known_.end() ? nullptr : &*found;
  }

  /// The names that the statements give, with their values.
  tl::expected<std::vector<std::pair<std::string, double>>, std::string> evaluated(const std::string& text) const {
    const auto expression = Expression::parse(text);
    if (!expression) return Complaint(fmt::format("'{}': {}", text, expression.error().message));
    auto named = expression->evaluate(values());
    if (!named) return Complaint(fmt::format("'{}': {}", text, named.error().message));
    return std::move(*named);
  }

  Done let(const std::string& text) {
    const auto named = evaluated(text);
    if (!named) return Complaint(named.error());
    for (const auto& [name, value] : *named)
      if (auto added = add({name, value, last_method_, nullptr}); !added) return added;
    return {};
  }

  Done call(const toml::table& step) {
    const std::string id = text_in(step, "method");
    const Method* method = find_method(id);
    if (method == nullptr) return Complaint(fmt::format("there is no method '{}'", id));
    if (const auto done = call(*method, step); !done) return Complaint(fmt::format("{}: {}", id, done.error()));
    return {};
  }

  Done call(const Method& method, const toml::table& step) {
    const toml::table* given = step["inputs"].as_table();
    if (given == nullptr) return Complaint("inputs must be a table");
    const auto inputs = inputs_of(method, *given);
    if (!inputs) return Complaint(inputs.error());
    last_method_ = method.id.view();
    row_.method = last_method_;
    std::vector<double> outputs(method.outputs.size(), std::numeric_limits<double>::quiet_NaN());
    if (const auto answered = method.answer(*inputs, outputs); !answered) {
      unanswered_ = true;
      state("answer", false, fmt::format("no answer: {}", answered.error().reason));
      return {};
    }
    const bool valid = method.covers(*inputs);
    if (valid != step["expect_valid"].value_or(true))
      state("valid", false,
            valid ? "inside the method's range, expected outside" : "outside the method's range, expected inside");
    return keep(method, outputs, step["as"]);
  }

  tl::expected<std::vector<double>, std::string> inputs_of(const Method& method, const toml::table& given) const {
    std::vector<double> list;
    for (const Symbol& symbol : method.inputs) {
      const toml::node* node = given.get(symbol.name.view());
      if (node == nullptr && symbol.required()) return Complaint(fmt::format("input '{}' is missing", symbol.name.view()));
      if (node == nullptr) {
        list.push_back(symbol.optional_value);
        continue;
      }
      const auto value = evaluated(fmt::format("{} = {}", symbol.name.view(), text_of(node)));
      if (!value) return Complaint(value.error());
      list.push_back(value->front().second);
    }
    for (const auto& [key, node] : given)
      if (find_symbol(method.inputs, key.str()) == nullptr) return Complaint(fmt::format("'{}' is no input", key.str()));
    return list;
  }

  /// All outputs under their own names, or those that `as` lists under the names it gives.
  Done keep(const Method& method, std::span<const double> outputs, toml::node_view<const toml::node> as) {
    const toml::table* names = as.as_table();
    if (as && names == nullptr) return Complaint("as must be a table");
    for (std::size_t i = 0; i < outputs.size(); ++i) {
      const Symbol& symbol = method.outputs[i];
      const std::string name = names == nullptr ? std::string(symbol.name.view()) : text_in(*names, symbol.name.view());
      if (name.empty()) continue;
      if (auto added = add({name, outputs[i], last_method_, &symbol}); !added) return added;
    }
    if (names == nullptr) return {};
    for (const auto& [key, node] : *names)
      if (find_symbol(method.outputs, key.str()) == nullptr) return Complaint(fmt::format("'{}' is no output", key.str()));
    return {};
  }

  Done compare_all() {
    const toml::table* expect = table_["expect"].as_table();
    if (expect == nullptr || expect->empty()) return Complaint("expect must hold at least one value");
    for (const auto& [key, node] : *expect) {
      const Known* found = find(key.str());
      if (found == nullptr) return Complaint(fmt::format("no step gives '{}'", key.str()));
      if (found->method.empty()) return Complaint(fmt::format("'{}' depends on no method", key.str()));
      const std::string text = text_of(&node);
      // A let has no dimension of its own: the number of the book says what it is.
      const auto quantity = parse_quantity(text);
      const Dimension stated = quantity ? quantity->dimension : dimension::none;
      row_.method = found->method;
      const Dimension own = found->output != nullptr ? found->output->dimension : stated;
      if (auto done = compare({found->name, own, found->value}, text, {}); !done) return done;
    }
    return {};
  }
};

}  // namespace

void run_case(const toml::table& table, CheckedFile& file) {
  Case(table, file).run();
}

}  // namespace quell::app
