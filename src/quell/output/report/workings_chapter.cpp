// Workings step by step, and a card for each method used.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <functional>

#include "quell/base/expression.h"
#include "quell/base/source.h"
#include "quell/output/report/chapters.h"

namespace quell::output {

namespace {

// The printed equations are the executed ones and hold SI numbers, so values put in are SI whatever system the rest prints in.
constexpr Printer si_printer(UnitSystem::si);

std::string symbol_markup(std::string_view name) {
  return "<math>" + symbol_mathml(name) + "</math>";
}

/// Characters in the longest line of an equation: its text without the tags.
std::size_t longest_line(std::string_view mathml) {
  std::size_t longest = 0, line = 0;
  bool in_tag = false;
  for (std::size_t i = 0; i < mathml.size(); ++i) {
    if (mathml.compare(i, 4, "<mtr") == 0) line = 0;
    if (mathml[i] == '<') in_tag = true;
    if (!in_tag && (static_cast<unsigned char>(mathml[i]) & 0xC0) != 0x80) longest = std::max(longest, ++line);
    if (mathml[i] == '>') in_tag = false;
  }
  return longest;
}

constexpr std::size_t line_that_fits = 64;

/// A browser does not break lines inside MathML, so long equations are set smaller.
std::string equation_block(const std::string& mathml) {
  const std::size_t length = longest_line(mathml);
  const std::string_view size = length > 2 * line_that_fits ? " tiny" : length > line_that_fits ? " long" : "";
  return fmt::format("<div class=\"equation{}\">{}</div>", size, mathml);
}

std::string equation_markup(const Method& method) {
  if (method.kind == EquationKind::procedure) return "<p>" + escape_xml(method.equation.view()) + "</p>";
  const auto parsed = Expression::parse(method.equation);
  if (!parsed) return "<p><code>" + escape_xml(method.equation.view()) + "</code></p>";
  return equation_block(parsed->mathml());
}

/// The value of `name` in a step as text; empty where it is to stay a symbol.
std::string value_text(const WorkingStep& step, std::string_view name, bool with_unit) {
  const auto find = [&](std::span<const Symbol> symbols, const std::vector<double>& values) -> std::string {
    for (std::size_t i = 0; i < std::min(symbols.size(), values.size()); ++i)
      if (symbols[i].name.view() == name)
        return with_unit ? si_printer.worked(values[i], symbols[i].dimension, 4)
                         : si_printer.worked(values[i], dimension::none, 4);
    return {};
  };
  std::string text = find(step.method->inputs, step.inputs);
  if (text.empty() && step.method->kind == EquationKind::residual) text = find(step.method->outputs, step.outputs);
  return text;
}

/// What the equation computes on its way: names it assigns that are not results, such as F1 on the way to y2. They have no
/// declared dimension and print as bare SI numbers.
std::vector<std::pair<std::string, double>> intermediate_values(const Expression& equation, const WorkingStep& step) {
  if (step.method->kind != EquationKind::explicit_form) return {};
  std::vector<NamedValue> known;
  known.reserve(step.inputs.size());
  for (std::size_t i = 0; i < step.inputs.size(); ++i) known.push_back({step.method->inputs[i].name.view(), step.inputs[i]});
  const auto assigned = equation.evaluate(known);
  if (!assigned) return {};
  std::vector<std::pair<std::string, double>> values;
  for (const auto& [name, value] : *assigned) {
    const bool is_result =
        std::any_of(step.method->outputs.begin(), step.method->outputs.end(),
                    [&, &assigned_name = name](const Symbol& symbol) { return symbol.name.view() == assigned_name; });
    if (!is_result) values.emplace_back(name, value);
  }
  return values;
}

/// The equation with the numbers of one step put in; results keep their symbol unless the equation is implicit. Units are left
/// to the table below it where the line would grow too long.
std::string substituted_markup(const WorkingStep& step) {
  if (step.method->kind == EquationKind::procedure) return {};
  const auto parsed = Expression::parse(step.method->equation);
  if (!parsed) return {};
  const auto intermediate = intermediate_values(*parsed, step);
  const auto typeset = [&](bool with_unit) {
    return parsed->mathml_with_values([&](std::string_view name) {
      for (const auto& [assigned, value] : intermediate)
        if (assigned == name) return si_printer.worked(value, dimension::none, 4);
      return value_text(step, name, with_unit);
    });
  };
  const std::string full = typeset(true);
  return equation_block(longest_line(full) <= line_that_fits ? full : typeset(false));
}

std::string range_text(const Symbol& symbol) {
  const Range& range = symbol.range;
  const Printer& p = si_printer;
  const auto number = [&](double value) { return p.number(value, symbol.dimension, 3); };
  const bool above_zero_only = range.bounded_below() && std::abs(range.lowest) < 1e-9;
  if (!range.bounded_below() && !range.bounded_above()) return "any";
  if (!range.bounded_above()) return above_zero_only ? "above 0" : "≥ " + number(range.lowest);
  if (!range.bounded_below()) return "≤ " + number(range.highest);
  return (above_zero_only ? std::string("0") : number(range.lowest)) + " to " + number(range.highest);
}

/// What a step needs to know beside itself: its place among the others, and which inputs the report lists.
struct StepPlace {
  const Working& working;
  StepNumber number;
  const std::vector<ReportInput>* inputs = nullptr;  ///< null: any input can be gone to, as on the page
};

/// The input that the report lists for a key, or for the first of a section's keys; empty where it lists none.
std::string listed_path(const std::vector<ReportInput>* inputs, const std::string& key) {
  if (inputs == nullptr) return key;
  for (const ReportInput& input : *inputs) {
    const std::string path = input_path(input);
    if (path == key || path.compare(0, key.size() + 1, key + ".") == 0) return path;
  }
  return {};
}

/// Where a number that was put in comes from: an input of the site file, an earlier step, or what is told of it.
std::string origin_markup(const WorkingStep& step, std::size_t input, const StepPlace& place) {
  const std::string& key = step.keys[input];
  if (!key.empty()) {
    const std::string path = listed_path(place.inputs, key);
    return path.empty() ? " <span class=\"from\">input " + escape_xml(key) + "</span>"
                        : fmt::format(" <a class=\"from\" href=\"#input-{}\">input {}</a>", escape_xml(path), escape_xml(key));
  }
  const auto origin = origin_of_input(place.working, place.number, input);
  return origin.found() ? fmt::format(" <a class=\"from\" href=\"#step-{0}.{1}\">step {0}.{1}</a>", origin.section, origin.step)
         : step.words[input].empty() ? std::string()
                                     : " <span class=\"from\">· " + escape_xml(step.words[input]) + "</span>";
}

void write_step_inputs(Html& html, const WorkingStep& step, const StepPlace& place) {
  html.open_table("", {{"", "w"}, {"Value put in", "n"}, {"Valid range", "w"}, {"Meaning", ""}});
  for (std::size_t i = 0; i < std::min(step.method->inputs.size(), step.inputs.size()); ++i) {
    const auto& symbol = step.method->inputs[i];
    const bool inside = symbol.range.contains(step.inputs[i]);
    html.row({symbol_markup(symbol.name), si_printer.worked(step.inputs[i], symbol.dimension, 5),
              range_text(symbol) + (inside ? "" : " <b class=\"status fails\">outside</b>"),
              escape_xml(symbol.meaning.view()) + origin_markup(step, i, place)});
  }
  html.close_table();
}

void write_step_outputs(Html& html, const WorkingStep& step, UnitSystem units) {
  html.open("div class=\"out\"");
  for (std::size_t i = 0; i < std::min(step.method->outputs.size(), step.outputs.size()); ++i) {
    const auto& symbol = step.method->outputs[i];
    html.element_raw("b", symbol_markup(symbol.name) + " = " + si_printer.worked(step.outputs[i], symbol.dimension, 5));
    if (units == UnitSystem::us && !(symbol.dimension == dimension::none))
      html.element("span class=\"range\"", "= " + Printer(units).quantity(step.outputs[i], symbol.dimension, 5));
  }
  html.element(step.inside_range ? "span class=\"range\"" : "span class=\"range outside\"",
               step.inside_range ? "inside the valid range" : "OUTSIDE the valid range");
  if (!step.inside_range && step.method->condition != nullptr)
    html.element("span class=\"range\"", step.method->condition(step.inputs));
  html.close();
}

void write_step(Html& html, const WorkingStep& step, const StepPlace& place, UnitSystem units) {
  const Method& method = *step.method;
  const std::string number = fmt::format("{}.{}", place.number.section, place.number.step);
  html.open(fmt::format("div class=\"step\" id=\"step-{}\" data-method=\"{}\"", number, escape_xml(method.id.view())));
  html.open("div class=\"ref\"");
  html.element("b", number);
  html.raw(citation_link(method.source, method.place, method.provenance));
  html.close();
  html.open("div");
  html.open("h4");
  html.text(step.purpose.empty() ? std::string(method.title.view()) : capitalised(Printer(units).words(step.purpose)));
  html.raw(fmt::format(" <a class=\"small\" href=\"#method-{0}\">{0}</a>", escape_xml(method.id.view())));
  html.close();
  html.raw(equation_markup(method));
  html.raw(substituted_markup(step));
  write_step_inputs(html, step, place);
  html.close();
  write_step_outputs(html, step, units);
  html.close();
}

void write_section(Html& html, const Working& working, std::size_t number, const std::vector<ReportInput>* inputs,
                   const Printer& print) {
  const auto& section = working.sections()[number - 1];
  html.element("h3", fmt::format("{}  {}", number, print.words(section.title)));
  if (!section.remark.empty()) html.element("p class=\"remark\"", print.words(section.remark));
  html.raw("<div class=\"working-head\"><span>Step, source</span><span>Calculation</span><span>Result</span></div>\n");
  for (std::size_t i = 0; i < section.steps.size(); ++i)
    write_step(html, section.steps[i], {working, {number, i + 1}, inputs}, print.units());
}

void write_symbol_rows(Html& html, std::span<const Symbol> symbols, std::string_view role) {
  for (const auto& symbol : symbols) {
    const std::string unit = unit_label(symbol.dimension, UnitSystem::si);
    html.row({symbol_markup(symbol.name), std::string(role), escape_xml(symbol.meaning.view()), unit.empty() ? "–" : unit,
              range_text(symbol)});
  }
}

void write_card(Html& html, const Method& method, const std::string& used_in) {
  html.open(fmt::format("div class=\"card\" id=\"method-{}\"", escape_xml(method.id.view())));
  html.open("div class=\"head\"");
  html.element("h4", method.title.view());
  html.element("code", method.id.view());
  html.close();
  html.raw(equation_markup(method));
  html.open_table("", {{"", "w"}, {"", "w q"}, {"Meaning", ""}, {"Unit", "w"}, {"Valid range, SI", "w"}});
  write_symbol_rows(html, method.inputs, "in");
  write_symbol_rows(html, method.outputs, "out");
  html.close_table();
  html.element_raw("p", "Source: " + citation_link(method.source, method.place, method.provenance));
  html.element("p", fmt::format("Accuracy: {}", method.accuracy.view()));
  if (!method.remarks.empty()) html.element("p", fmt::format("Remarks: {}", method.remarks));
  html.element_raw("p class=\"q\"", "Used in steps " + used_in);
  html.close();
}

/// Links to the steps that use a method.
std::string steps_using(const Working& working, const Method& method) {
  std::string text;
  for (std::size_t s = 0; s < working.sections().size(); ++s)
    for (std::size_t i = 0; i < working.sections()[s].steps.size(); ++i)
      if (working.sections()[s].steps[i].method == &method)
        text += fmt::format("{}<a href=\"#step-{}.{}\">{}.{}</a>", text.empty() ? "" : ", ", s + 1, i + 1, s + 1, i + 1);
  return text;
}

}  // namespace

std::vector<const Method*> methods_used(const ReportData& data) {
  std::vector<const Method*> methods;
  if (data.chosen == nullptr) return methods;
  for (const auto& section : data.chosen->working.sections())
    for (const auto& step : section.steps)
      if (std::find(methods.begin(), methods.end(), step.method) == methods.end()) methods.push_back(step.method);
  return methods;
}

void write_workings(Html& html, const ReportData& data) {
  start_chapter(html, "workings");
  if (data.chosen == nullptr) return html.element("p", "No option could be sized.");
  html.element(
      "p",
      "The steps behind the chosen design, in the order of the computation, for the cases named in the headings. Each step "
      "shows "
      "the equation with symbols, the same with numbers, what was put in with the range in which the method holds, and the "
      "result. Equations and numbers put in are in SI.");
  const auto& working = data.chosen->working;
  for (std::size_t s = 0; s < working.sections().size(); ++s)
    write_section(html, working, s + 1, &data.context.inputs, data.print);
}

std::string workings_html(const Working& working, std::size_t section, UnitSystem units) {
  Html html;
  for (std::size_t s = 0; s < working.sections().size(); ++s)
    if (section == 0 || section == s + 1) write_section(html, working, s + 1, nullptr, Printer(units));
  return html.finished();
}

void write_methods(Html& html, const ReportData& data) {
  start_chapter(html, "methods");
  html.element(
      "p",
      "Each method used in the workings, once. The mark behind a source says how the formula is known: seen in the source "
      "named; "
      "recalled from memory and not re-read; common practice without a published source; or derived from mass, momentum "
      "and energy with the assumptions stated.");
  for (const auto* method : methods_used(data)) write_card(html, *method, steps_using(data.chosen->working, *method));
}

}  // namespace quell::output
