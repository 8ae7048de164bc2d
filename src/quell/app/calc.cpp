// quell calc METHOD name=value …: one method, from its record.
#include <fmt/format.h>

#include <algorithm>
#include <nlohmann/json.hpp>

#include "quell/app/commands.h"
#include "quell/app/method_index.h"
#include "quell/app/method_values.h"
#include "quell/app/validation_text.h"
#include "quell/base/expression.h"
#include "quell/base/source.h"

namespace quell::app {
namespace {

int refuse(const std::string& message) {
  fmt::print(stderr, "quell calc: {}\n", message);
  return exit_bad_input;
}

std::string symbols_of(std::span<const Symbol> symbols) {
  std::string text;
  for (const auto& symbol : symbols) text += (text.empty() ? "" : ", ") + std::string(symbol.name.view());
  return text;
}

using Refusal = tl::unexpected<std::string>;

/// One number in the unit of the symbol; the error is what is wrong with it.
tl::expected<Quantity, std::string> read_number(const Symbol& symbol, std::string_view text) {
  const auto name = symbol.name.view();
  const auto quantity = parse_quantity(text);
  if (!quantity) return Refusal(fmt::format("{}: {}", name, quantity.error().message));
  if (quantity->has_unit && quantity->dimension != symbol.dimension) {
    if (symbol.dimension == dimension::none)
      return Refusal(fmt::format("{} ({}) is a plain number without a unit", name, symbol.meaning.view()));
    return Refusal(fmt::format("{} ({}) is a {}: give it in {}, not as a {}", name, symbol.meaning.view(),
                               name_of(symbol.dimension), example_units(symbol.dimension), name_of(quantity->dimension)));
  }
  return *quantity;
}

/// "0,2,6", "0,2,6 ft" (one unit for all) or "0 ft,2 ft,6 ft".
tl::expected<std::vector<double>, std::string> read_list(const Symbol& symbol, std::string_view text) {
  std::vector<std::string> items(1);
  for (const char c : text)
    if (c == ',')
      items.emplace_back();
    else
      items.back() += c;
  const auto last = read_book_number(items.back(), symbol.dimension);
  const std::string unit = last ? last->unit : std::string();
  std::vector<double> values;
  std::size_t with_unit = 0;
  for (const auto& item : items) {
    auto quantity = read_number(symbol, item);
    if (quantity && quantity->has_unit) ++with_unit;
    if (quantity && !quantity->has_unit && !unit.empty()) quantity = read_number(symbol, fmt::format("{} {}", item, unit));
    if (!quantity) return Refusal(quantity.error());
    values.emplace_back(quantity->value);
  }
  if (with_unit > 1 && with_unit < items.size())
    return Refusal(fmt::format("{}: give the unit behind the last number only, or behind every one", symbol.name.view()));
  return values;
}

/// Reads one "name=value" into its place; the message of what is wrong otherwise.
std::string read_value(const Method& method, const std::string& text, std::vector<std::vector<double>>& inputs) {
  const auto equals = text.find('=');
  if (equals == std::string::npos || equals == 0) return fmt::format("'{}' is not name=value, such as y1=0.6m", text);
  const std::string name = text.substr(0, equals);
  std::size_t index = 0;
  while (index < method.inputs.size() && method.inputs[index].name.view() != name) ++index;
  if (index == method.inputs.size())
    return fmt::format("{} has no input '{}'; its inputs are {}", method.id.view(), name, symbols_of(method.inputs));
  const auto& symbol = method.inputs[index];
  if (!inputs[index].empty()) return fmt::format("'{}' is given twice", name);
  const std::string_view value = std::string_view(text).substr(equals + 1);
  if (symbol.list) {
    auto list = read_list(symbol, value);
    if (!list) return list.error();
    inputs[index] = std::move(*list);
    return {};
  }
  const auto number = read_number(symbol, value);
  if (!number) return number.error();
  inputs[index] = {number->value};
  return {};
}

/// "from 0.1 m to 2 m", "above zero".
std::string range_text(const Range& range, Dimension d) {
  const auto bound = [d](double value) { return format_quantity(value, d, UnitSystem::si, 6); };
  const bool above = range.lowest == above_zero.lowest;
  if (above && !range.bounded_above()) return "above zero";
  std::string text = above ? "above zero" : range.bounded_below() ? "from " + bound(range.lowest) : "";
  if (range.bounded_above()) text += (text.empty() ? "up to " : above ? " and up to " : " to ") + bound(range.highest);
  return text;
}

/// "y1 = -0.5 m is not possible: it must be above zero (depth before the jump)".
std::string refusal(const Method& method, const NoAnswer& fault) {
  const auto* symbol = std::find_if(method.inputs.data(), method.inputs.data() + method.inputs.size(),
                                    [&](const Symbol& s) { return s.name.view() == fault.symbol; });
  const bool is_input = symbol != method.inputs.data() + method.inputs.size();
  const Dimension d = is_input ? symbol->dimension : dimension::none;
  return fmt::format("{} = {} is not possible: it must be {} ({})", fault.symbol,
                     format_quantity(fault.value, d, UnitSystem::si, 6), range_text({fault.lowest, fault.highest}, d),
                     fault.reason);
}

std::vector<std::string> notes_on(const Method& method, std::span<const double> inputs) {
  std::vector<std::string> notes;
  for (std::size_t i = 0; i < method.inputs.size(); ++i) {
    const auto& symbol = method.inputs[i];
    const auto values = method.values_of(i, inputs);
    if (std::all_of(values.begin(), values.end(), [&](double value) { return symbol.range.contains(value); })) continue;
    notes.push_back(
        fmt::format("{} is outside the valid range, {}", symbol.name.view(), range_text(symbol.range, symbol.dimension)));
  }
  if (method.condition != nullptr)
    if (const auto objection = method.condition(inputs); !objection.empty()) notes.emplace_back(objection);
  return notes;
}

void print_json(const Method& method, std::span<const double> inputs, std::span<const double> outputs, bool valid,
                const std::vector<std::string>& notes) {
  nlohmann::ordered_json json;
  json["method"] = method.id.view();
  json["inputs"] = nlohmann::ordered_json::object();
  for (std::size_t i = 0; i < method.inputs.size(); ++i) {
    const auto values = method.values_of(i, inputs);
    auto& entry = json["inputs"][std::string(method.inputs[i].name.view())];
    if (method.inputs[i].list)
      entry = std::vector<double>(values.begin(), values.end());
    else
      entry = values.front();
  }
  json["outputs"] = nlohmann::ordered_json::object();
  for (std::size_t i = 0; i < outputs.size(); ++i)
    json["outputs"][std::string(method.outputs[i].name.view())] = {{"value", outputs[i]},
                                                                   {"unit", coherent_symbol(method.outputs[i].dimension)}};
  json["valid"] = valid;
  json["notes"] = notes;
  fmt::print("{}\n", json.dump(2));
}

/// "0.6 m"; "0, 2, 6 m".
std::string values_text(std::span<const double> values, Dimension d, UnitSystem units) {
  std::string text;
  for (const double value : values.first(values.size() - 1)) text += format_number(value, d, units, 6) + ", ";
  return text + format_quantity(values.back(), d, units, 6);
}

void print_text(const Method& method, std::span<const double> inputs, std::span<const double> outputs,
                const std::vector<std::string>& notes, UnitSystem units) {
  fmt::print("{}\n{}\n\n", method.title.view(), method.equation.view());
  for (std::size_t i = 0; i < method.inputs.size(); ++i)
    fmt::print("  {:<6} = {:<18} {}\n", method.inputs[i].name.view(),
               values_text(method.values_of(i, inputs), method.inputs[i].dimension, units), method.inputs[i].meaning.view());
  fmt::print("\n");
  for (std::size_t i = 0; i < outputs.size(); ++i)
    fmt::print("  {:<6} = {:<18} {}\n", method.outputs[i].name.view(),
               format_quantity(outputs[i], method.outputs[i].dimension, units, 6), method.outputs[i].meaning.view());
  fmt::print("\nSource: {}, {} ({})\nAccuracy: {}\n", short_citation(method.source.view()), method.place.view(),
             name_of(method.provenance), method.accuracy.view());
  if (!method.remarks.empty()) fmt::print("Remark: {}\n", method.remarks);
  for (const auto& note : notes) fmt::print("OUTSIDE RANGE: {}\n", note);
}

}  // namespace

int calc(const CalcArguments& arguments) {
  const Method* method = find_method(arguments.method);
  if (method == nullptr) {
    const auto nearest = nearest_method(arguments.method);
    return refuse(fmt::format("no method '{}'{}; 'quell methods' lists them", arguments.method,
                              nearest.empty() ? "" : fmt::format(" (did you mean '{}'?)", nearest)));
  }
  std::vector<std::vector<double>> given(method->inputs.size());
  for (const auto& text : arguments.values)
    if (const auto problem = read_value(*method, text, given); !problem.empty()) return refuse(problem);
  for (std::size_t i = 0; i < given.size(); ++i) {
    if (!given[i].empty()) continue;
    const auto& symbol = method->inputs[i];
    if (symbol.required())
      return refuse(
          fmt::format("{} needs {} ({}, {})", method->id.view(), symbol.name.view(), symbol.meaning.view(),
                      symbol.dimension == dimension::none ? "a number" : "such as " + example_units(symbol.dimension)));
    given[i] = {symbol.optional_value};
  }
  const auto row = written_out(*method, given);
  if (!row) return refuse(row.error());
  const std::vector<double>& inputs = *row;
  std::vector<double> outputs(method->outputs.size());
  if (const auto done = method->answer(inputs, outputs); !done) {
    if (done.error().is_bad_input()) return refuse(refusal(*method, done.error()));
    fmt::print(stderr, "quell calc: no physical answer: {}\n", done.error().reason);
    return exit_no_result;
  }
  const bool valid = method->covers(inputs);
  const auto notes = notes_on(*method, inputs);
  if (arguments.common.json)
    print_json(*method, inputs, outputs, valid, notes);
  else
    print_text(*method, inputs, outputs, notes, arguments.common.units.value_or(UnitSystem::si));
  return exit_done;
}

}  // namespace quell::app
