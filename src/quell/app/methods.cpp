// quell methods [PATTERN]: the records.
#include <fmt/format.h>

#include <algorithm>
#include <nlohmann/json.hpp>

#include "quell/app/commands.h"
#include "quell/app/method_index.h"
#include "quell/base/source.h"

namespace quell::app {
namespace {

std::string lower(std::string_view text) {
  std::string result(text);
  std::transform(result.begin(), result.end(), result.begin(),
                 [](char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c + 32) : c; });
  return result;
}

bool matches(const Method& method, std::string_view pattern) {
  if (pattern.empty()) return true;
  const auto wanted = lower(pattern);
  if (lower(method.id.view()).find(wanted) != std::string::npos || lower(method.title.view()).find(wanted) != std::string::npos)
    return true;
  const auto is_symbol = [&](const Symbol& symbol) { return symbol.name.view() == pattern; };
  return std::any_of(method.inputs.begin(), method.inputs.end(), is_symbol) ||
         std::any_of(method.outputs.begin(), method.outputs.end(), is_symbol);
}

std::string range_text(const Symbol& symbol, UnitSystem units) {
  if (symbol.list) {
    Symbol each = symbol;
    each.list = false;
    const auto text = range_text(each, units);
    return text == "any" ? "list" : "list, each " + text;
  }
  const auto bound = [&](double value) { return format_number(value, symbol.dimension, units, 4); };
  if (symbol.range.lowest == above_zero.lowest && !symbol.range.bounded_above()) return "> 0";
  if (symbol.range.bounded_below() && symbol.range.bounded_above())
    return bound(symbol.range.lowest) + " to " + bound(symbol.range.highest);
  if (symbol.range.bounded_below()) return ">= " + bound(symbol.range.lowest);
  if (symbol.range.bounded_above()) return "<= " + bound(symbol.range.highest);
  return "any";
}

nlohmann::ordered_json symbols_json(std::span<const Symbol> symbols) {
  auto list = nlohmann::ordered_json::array();
  for (const auto& symbol : symbols) {
    nlohmann::ordered_json entry{
        {"symbol", symbol.name.view()}, {"meaning", symbol.meaning.view()}, {"unit", coherent_symbol(symbol.dimension)}};
    entry["lowest"] = symbol.range.bounded_below() ? nlohmann::ordered_json(symbol.range.lowest) : nlohmann::ordered_json();
    entry["highest"] = symbol.range.bounded_above() ? nlohmann::ordered_json(symbol.range.highest) : nlohmann::ordered_json();
    if (symbol.list) entry["list"] = true;
    list.push_back(std::move(entry));
  }
  return list;
}

void print_json(const std::vector<const Method*>& list) {
  nlohmann::ordered_json json;
  json["methods"] = nlohmann::ordered_json::array();
  for (const auto* method : list)
    json["methods"].push_back({{"id", method->id.view()},
                               {"title", method->title.view()},
                               {"equation", method->equation.view()},
                               {"inputs", symbols_json(method->inputs)},
                               {"outputs", symbols_json(method->outputs)},
                               {"source", full_citation(method->source.view())},
                               {"place", method->place.view()},
                               {"provenance", name_of(method->provenance)},
                               {"accuracy", method->accuracy.view()}});
  fmt::print("{}\n", json.dump(2));
}

void print_text(const std::vector<const Method*>& list, UnitSystem units) {
  for (const auto* method : list) {
    fmt::print("{}\n  {}\n", method->id.view(), method->title.view());
    const auto print_symbols = [&](std::span<const Symbol> symbols, std::string_view arrow) {
      for (const auto& symbol : symbols) {
        const auto unit = unit_label(symbol.dimension, units);
        fmt::print("  {} {:<6} {:<6} {:<18} {}\n", arrow, symbol.name.view(), unit.empty() ? "-" : unit,
                   range_text(symbol, units), symbol.meaning.view());
      }
    };
    print_symbols(method->inputs, "in ");
    print_symbols(method->outputs, "out");
    fmt::print("  {} ({})\n\n", short_citation(method->source.view()), name_of(method->provenance));
  }
}

void print_markdown(const std::vector<const Method*>& list) {
  fmt::print(
      "# Methods\n\nMade by `./dev docs` from the records beside the functions; do not edit. Ranges in SI. `quell calc ID "
      "name=value …` "
      "computes any of them.\n\n");
  for (const auto* method : list) {
    fmt::print("## {}\n\n{}.\n\n", method->id.view(), method->title.view());
    if (method->kind == EquationKind::procedure)
      fmt::print("{}\n\n", method->equation.view());
    else
      fmt::print("```\n{}\n```\n\n", method->equation.view());
    fmt::print("| symbol | | unit | valid range | meaning |\n|---|---|---|---|---|\n");
    const auto rows = [&](std::span<const Symbol> symbols, std::string_view role) {
      for (const auto& symbol : symbols) {
        const auto unit = unit_label(symbol.dimension, UnitSystem::si);
        fmt::print("| {} | {} | {} | {} | {} |\n", symbol.name.view(), role, unit.empty() ? "–" : unit,
                   role == "in" ? range_text(symbol, UnitSystem::si) : "", symbol.meaning.view());
      }
    };
    rows(method->inputs, "in");
    rows(method->outputs, "out");
    fmt::print("\nSource: {} Place: {}. Known: {}. Accuracy: {}.{}{}\n\n", full_citation(method->source.view()),
               method->place.view(), name_of(method->provenance), method->accuracy.view(), method->remarks.empty() ? "" : " ",
               method->remarks);
  }
}

}  // namespace

int methods(const MethodsArguments& arguments) {
  std::vector<const Method*> list;
  for (const Method* method : all_methods())
    if (matches(*method, arguments.pattern)) list.push_back(method);
  if (list.empty() && !arguments.pattern.empty()) {
    fmt::print(stderr, "quell methods: nothing matches '{}'\n", arguments.pattern);
    return exit_bad_input;
  }
  if (arguments.common.json)
    print_json(list);
  else if (arguments.markdown)
    print_markdown(list);
  else
    print_text(list, arguments.common.units.value_or(UnitSystem::si));
  return exit_done;
}

}  // namespace quell::app
