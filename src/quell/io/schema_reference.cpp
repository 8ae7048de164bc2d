// docs/site-file.md, generated from the schema, the recommended uncertainties and the kinds of CSV files.
#include <fmt/format.h>

#include "quell/base/source.h"
#include "quell/io/csv_files.h"
#include "quell/io/schema.h"

namespace quell::io {
namespace {

std::string range_text(const Key& key) {
  const Range& range = key.range;
  if (!range.bounded_below() || key.kind == Kind::choice) return "";
  const std::string unit = key.kind == Kind::angle ? "deg" : unit_symbol(key.dimension, UnitSystem::si);
  const std::string highest = fmt::format("{:g}{}{}", range.highest, unit.empty() ? "" : " ", unit);
  if (range.lowest == above_zero.lowest) return fmt::format("above 0, to {}", highest);
  return fmt::format("{:g} to {}", range.lowest, highest);
}

std::string kind_text(const Key& key) {
  switch (key.kind) {
    case Kind::text: return "text";
    case Kind::choice: return how_to_write(key).substr(std::string_view("write ").size());
    case Kind::quantity: return name_of(key.dimension);
    case Kind::number: return "number";
    case Kind::angle: return "angle";
    case Kind::whole_number: return "whole number";
    case Kind::slope:
    case Kind::side_slope: return "slope";
    case Kind::width: return "`\"free\"` or a length";
    case Kind::texts: return "list of words";
    case Kind::quantities: return "list, each a " + name_of(key.dimension);
    case Kind::spread:
      return fmt::format("{}, or low, expected and high", key.dimension == dimension::none ? "number" : name_of(key.dimension));
    case Kind::file: return "path, relative to the site file";
    case Kind::uncertainty: return "uncertainty of a level";
    case Kind::table: return "section";
    case Kind::tables: return "list of sections";
  }
  return "";
}

std::string presence_without_condition(const Key& key) {
  if (!key.group.empty()) {
    std::string others;
    for (const Key* other : keys_of(key.section))
      if (other->group == key.group && other->name != key.name)
        others += fmt::format("{}`{}`", others.empty() ? "" : ", ", other->name);
    const std::string preset = !key.preset.empty()         ? fmt::format("; default `{}`", key.preset)
                               : !key.preset_words.empty() ? fmt::format("; default: {}", key.preset_words)
                                                           : std::string();
    return fmt::format("{} {}{}", key.required ? "this or" : "not with", others, preset);
  }
  if (key.required) return "required";
  if (!key.preset.empty()) return fmt::format("default `{}`", key.preset);
  if (!key.preset_words.empty()) return fmt::format("default: {}", key.preset_words);
  return "may be left out";
}

std::string presence_text(const Key& key) {
  const std::string text = presence_without_condition(key);
  return key.only_for.chooser.empty() ? text : fmt::format("{}; only with `{}`", text, condition_text(key));
}

std::string section_text(const std::string& heading, std::string_view section, std::string_view help) {
  std::string text = fmt::format(
      "## {}\n\n{}\n\n| key | meaning | value | range (SI) | needed | example |\n|---|---|---|---|---|---|\n", heading, help);
  for (const Key* key : keys_of(section)) {
    std::string example = key->example_si.empty() ? std::string() : fmt::format("`{}`", key->example_si);
    if (!key->example_us.empty()) example += fmt::format(" or `{}`", key->example_us);
    text += fmt::format("| `{}` | {} | {} | {} | {} | {} |\n", key->name, key->help, kind_text(*key), range_text(*key),
                        presence_text(*key), example);
  }
  return text + "\n";
}

/// "lognormal, cov 0.2" or "normal, deviation 0.21 m".
std::string spread_text(const site::RecommendedUncertainty& one) {
  if (one.variation > 0.0) return fmt::format("cov {:g}", one.variation);
  return fmt::format("deviation {:.2g} {}", one.deviation, unit_symbol(one.dimension, UnitSystem::si));
}

std::string uncertainty_text() {
  std::string text =
      "## Uncertainty of a value\n\n"
      "Every quantity, number, angle and slope may be a table that holds the value and its uncertainty. Nothing is sampled "
      "yet: the "
      "declaration is checked, kept and printed.\n\n"
      "```toml\n"
      "design_head = { value = \"6.5 m\", distribution = \"normal\", cov = 0.05 }\n"
      "net_width = { value = \"45 m\", distribution = \"triangular\", lowest = \"44.5 m\", highest = \"45.2 m\" }\n"
      "roughness_height = { value = \"0.6 mm\", uncertainty = \"concrete roughness\" }\n"
      "```\n\n"
      "| key | meaning |\n|---|---|\n"
      "| `value` | the value, written as without uncertainty; the mean of a normal or lognormal distribution, the mode of a "
      "triangular "
      "one |\n"
      "| `distribution` | `normal`, `lognormal`, `triangular` or `uniform` |\n"
      "| `cov` | coefficient of variation: standard deviation as a share of the value; not for levels, whose zero is a matter "
      "of "
      "choice |\n"
      "| `deviation` | standard deviation, instead of `cov` |\n"
      "| `lowest`, `highest` | limits: needed for a triangular and a uniform distribution, a cut of the others |\n"
      "| `uncertainty` | name of a recommended uncertainty, instead of all of these but `value` |\n\n"
      "`[river.rating]`, `[river.gauging]` and `[river.survey]` take a key `uncertainty` for the error of the level at a given "
      "discharge: such a table without `value`, or a name.\n\n"
      "Recommended are:\n\n| name | distribution | spread | remarks | source |\n|---|---|---|---|---|\n";
  for (const site::RecommendedUncertainty& one : site::recommended_uncertainties())
    text += fmt::format("| `{}` | {} | {} | {} | {}{} |\n", one.name, site::name_of(one.distribution), spread_text(one),
                        one.range, short_citation(one.source), one.provenance == Provenance::memory ? ", from memory" : "");
  return text + "\n";
}

std::string column_range_text(const CsvColumn& column) {
  const std::string unit = unit_symbol(column.dimension, UnitSystem::si);
  const std::string highest = fmt::format("{:g}{}{}", column.range.highest, unit.empty() ? "" : " ", unit);
  if (column.range.lowest == above_zero.lowest) return fmt::format("above 0, to {}", highest);
  return fmt::format("{:g} to {}", column.range.lowest, highest);
}

std::string csv_text() {
  std::string text =
      "## CSV files\n\n"
      "The first row heads the columns, each with its unit in round or square brackets: `discharge (m3/s)`. The columns may "
      "stand in "
      "any order. A heading without unit stands in the system that `units` declares, but for columns whose unit must be given. "
      "Cells are "
      "parted by commas or semicolons; in a file with semicolons a decimal comma is tolerated and remarked. Grouped thousands "
      "are "
      "refused. Empty lines and lines that start with `#` are skipped, and so is a column headed `remark`, `note` or "
      "`date`.\n\n";
  for (const CsvFormat& format : csv_formats()) {
    text += fmt::format("### `{}`: {}\n\n{}\n\n| column | meaning | range (SI) | needed |\n|---|---|---|---|\n", format.key,
                        format.name, format.help);
    for (const CsvColumn& column : format.columns) {
      const std::string others =
          column.synonyms.empty() ? std::string() : fmt::format(" (or `{}`)", fmt::join(words_of(column.synonyms), "`, `"));
      text += fmt::format("| `{}`{} | {} | {} | {} |\n", column.name, others, column.help, column_range_text(column),
                          column.required ? "required" : "may be left out");
    }
    text += fmt::format("\nSuch as `{}`.\n\n", format.example);
  }
  return text;
}

}  // namespace

std::string site_file_reference() {
  std::string text =
      "# The site file, key by key\n\n"
      "Generated from the schema in `src/quell/io/schema_rows_*.cpp` by `site_file_reference()`; a test compares the two.\n\n"
      "A site file is TOML 1.0, UTF-8, written by hand. A value with a unit stands in quotes: `\"412.5 m\"`, `\"18 500 "
      "ft3/s\"`. A bare\n"
      "number stands in the system that `units` declares. Slopes are `\"0.7H:1V\"` (horizontal to vertical), `\"35 deg\"`, "
      "`\"25 %\"`, or a bare\n"
      "number: fall per horizontal length. Angles are `\"15 deg\"` or a bare number of degrees. Paths are relative to the site "
      "file. Examples show SI, then US customary units.\n\n";
  text += section_text(std::string(head_title), "", head_help);
  for (const Key& key : schema())
    if (key.kind == Kind::table || key.kind == Kind::tables) {
      const std::string name = full_name(key.section, key.name);
      text +=
          section_text(key.kind == Kind::table ? fmt::format("`[{}]`", name) : fmt::format("`[[{}]]`", name), name, key.help);
    }
  return text + uncertainty_text() + csv_text();
}

}  // namespace quell::io
