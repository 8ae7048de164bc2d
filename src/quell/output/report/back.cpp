// Sources and symbols: only those that this report uses.
#include <fmt/format.h>

#include <algorithm>
#include <set>

#include "quell/base/expression.h"
#include "quell/base/source.h"
#include "quell/output/report/chapters.h"

namespace quell::output {

namespace {

std::set<std::string> sources_used(const ReportData& data) {
  std::set<std::string> keys;
  const auto add = [&](std::string_view key) {
    if (!key.empty()) keys.emplace(key);
  };
  for (const auto* method : methods_used(data)) add(method->source);
  for (const auto& option : data.result.options) {
    for (const auto& finding : option.findings) add(finding.source);
    if (option.type != nullptr && &option == data.chosen) add(option.type->record().source);
  }
  return keys;
}

}  // namespace

void write_sources(Html& html, const ReportData& data) {
  start_chapter(html, "sources");
  html.open("ul class=\"sources\"");
  for (const auto& key : sources_used(data))
    html.element(fmt::format("li id=\"source-{}\"", escape_xml(key)), full_citation(key));
  html.close();
}

void write_symbols(Html& html, const ReportData& data) {
  start_chapter(html, "symbols");
  html.open_table("", {{"Symbol", "w"}, {"Typed as", "w"}, {"Meaning", ""}, {"Unit", "w"}});
  std::set<std::pair<std::string, std::string>> listed;
  std::vector<std::pair<std::string, const Symbol*>> symbols;
  for (const auto* method : methods_used(data))
    for (const auto& list : {method->inputs, method->outputs})
      for (const auto& symbol : list)
        if (listed.emplace(symbol.name.view(), symbol.meaning.view()).second) symbols.emplace_back(symbol.name.view(), &symbol);
  std::sort(symbols.begin(), symbols.end(), [](const auto& a, const auto& b) {
    return a.first != b.first ? a.first < b.first : a.second->meaning.view() < b.second->meaning.view();
  });
  for (const auto& [name, symbol] : symbols) {
    const std::string unit = unit_label(symbol->dimension, UnitSystem::si);
    html.row({"<math>" + symbol_mathml(name) + "</math>", "<code>" + escape_xml(name) + "</code>",
              escape_xml(symbol->meaning.view()), unit.empty() ? "–" : unit});
  }
  html.close_table();
}

}  // namespace quell::output
