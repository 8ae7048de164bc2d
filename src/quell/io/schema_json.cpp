#include "quell/io/schema_json.h"

#include <cctype>
#include <nlohmann/json.hpp>

#include "quell/io/schema.h"
#include "quell/io/uncertainty_reader.h"

namespace quell::io {
namespace {

using Json = nlohmann::ordered_json;

Json text_or_null(std::string_view text) {
  return text.empty() ? Json(nullptr) : Json(std::string(text));
}

Json list_of(const std::vector<std::string_view>& words) {
  Json list = Json::array();
  for (const std::string_view word : words) list.push_back(std::string(word));
  return list;
}

std::string_view word_of(Kind kind) {
  switch (kind) {
    case Kind::text: return "text";
    case Kind::choice: return "choice";
    case Kind::quantity: return "quantity";
    case Kind::number: return "number";
    case Kind::angle: return "angle";
    case Kind::whole_number: return "whole_number";
    case Kind::slope: return "slope";
    case Kind::side_slope: return "side_slope";
    case Kind::width: return "width";
    case Kind::texts: return "texts";
    case Kind::quantities: return "quantities";
    case Kind::spread: return "spread";
    case Kind::file: return "file";
    case Kind::uncertainty: return "uncertainty";
    case Kind::table: return "table";
    case Kind::tables: return "tables";
  }
  return "";
}

/// "design_head" as "Design head".
std::string title_of(std::string_view name) {
  std::string title(name);
  for (char& c : title)
    if (c == '_') c = ' ';
  if (!title.empty()) title.front() = static_cast<char>(std::toupper(static_cast<unsigned char>(title.front())));
  if (title.rfind("Saf ", 0) == 0) title.replace(0, 3, "SAF");  // initials of a name
  return title;
}

/// Whether values of the kind are numbers, which have a range.
bool is_numeric(Kind kind) {
  switch (kind) {
    case Kind::quantity:
    case Kind::number:
    case Kind::angle:
    case Kind::whole_number:
    case Kind::slope:
    case Kind::side_slope:
    case Kind::width:
    case Kind::quantities:
    case Kind::spread: return true;
    default: return false;
  }
}

/// The numbers in an uncertainty table have the dimension of what is uncertain.
bool has_units(Kind kind) {
  return is_numeric(kind) || kind == Kind::uncertainty;
}

Json units_json(const Key& key, UnitSystem system) {
  if (key.kind == Kind::angle) return Json{"deg", "rad"};
  if (key.kind == Kind::slope) return Json{"H:1V", "%", "deg"};
  if (key.kind == Kind::side_slope) return Json{"H:1V", "deg"};
  return Json(offered_units(key.dimension, system));
}

Json limits_json(const Key& key, UnitSystem system) {
  const Range& range = key.range;
  const auto limit = [&](bool exists, double value) {
    return exists ? Json(to_unit(value, key.dimension, system)) : Json(nullptr);
  };
  const bool above_nothing = range.lowest == above_zero.lowest;
  const std::string unit = key.kind == Kind::angle ? "deg" : unit_symbol(key.dimension, system);
  return Json{{"lowest", above_nothing ? Json(0.0) : limit(range.bounded_below(), range.lowest)},
              {"highest", limit(range.bounded_above(), range.highest)},
              {"unit", text_or_null(unit)}};
}

Json range_json(const Key& key) {
  if (!is_numeric(key.kind) || (!key.range.bounded_below() && !key.range.bounded_above())) return nullptr;
  return Json{{"si", limits_json(key, UnitSystem::si)},
              {"us", limits_json(key, UnitSystem::us)},
              {"excludes_lowest", key.range.lowest == above_zero.lowest}};
}

Json condition_json(const Key& key) {
  if (key.only_for.chooser.empty()) return nullptr;
  return Json{{"key", std::string(key.only_for.chooser)},
              {"words", list_of(words_of(key.only_for.words))},
              {"reason", std::string(key.only_for.reason)}};
}

Json key_json(const Key& key) {
  const bool has_dimension = has_units(key.kind) && key.dimension != dimension::none;
  return Json{
      {"section", std::string(key.section)},
      {"name", std::string(key.name)},
      {"title", title_of(key.name)},
      {"help", std::string(key.help)},
      {"kind", std::string(word_of(key.kind))},
      {"dimension", has_dimension ? Json(name_of(key.dimension)) : Json(nullptr)},
      {"units", has_units(key.kind) ? Json{{"si", units_json(key, UnitSystem::si)}, {"us", units_json(key, UnitSystem::us)}}
                                    : Json(nullptr)},
      {"range", range_json(key)},
      {"choices", list_of(choices_of(key))},
      {"preset", text_or_null(key.preset)},
      {"preset_words", text_or_null(key.preset_words)},
      {"required", key.required},
      {"group", text_or_null(key.group)},
      {"only_for", condition_json(key)},
      {"example_si", text_or_null(key.example_si)},
      {"example_us", text_or_null(key.example_us)},
      {"may_be_uncertain", may_be_uncertain(key)},
      {"words", list_of(words_of_value(key))},
      {"is_file", key.kind == Kind::file}};
}

Json keys_json(std::string_view section) {
  Json keys = Json::array();
  for (const Key* key : keys_of(section))
    if (key->kind != Kind::table && key->kind != Kind::tables) keys.push_back(key_json(*key));
  return keys;
}

Json section_json(const Key& key) {
  const std::string name = full_name(key.section, key.name);
  return Json{{"name", name},
              {"parent", std::string(key.section)},
              {"title", title_of(key.name)},
              {"help", std::string(key.help)},
              {"is_list", key.kind == Kind::tables},
              {"required", key.required},
              {"all_or_nothing", key.all_or_nothing},
              {"group", text_or_null(key.group)},
              {"only_for", condition_json(key)},
              {"keys", keys_json(name)}};
}

/// The head of the file, as a section that is always there.
Json head_json() {
  return Json{
      {"name", ""},          {"parent", nullptr},    {"title", std::string(head_title)}, {"help", std::string(head_help)},
      {"is_list", false},    {"required", true},     {"all_or_nothing", false},          {"group", nullptr},
      {"only_for", nullptr}, {"keys", keys_json("")}};
}

Json uncertainty_json() {
  Json recommended = Json::array();
  for (const site::RecommendedUncertainty& one : site::recommended_uncertainties()) {
    const bool is_share = one.variation > 0.0;
    recommended.push_back(Json{{"name", std::string(one.name)},
                               {"distribution", std::string(site::name_of(one.distribution))},
                               {"cov", is_share ? Json(one.variation) : Json(nullptr)},
                               {"deviation", is_share ? Json(nullptr) : Json(one.deviation)},
                               {"dimension", is_share ? Json(nullptr) : Json(name_of(one.dimension))},
                               {"remarks", std::string(one.range)}});
  }
  Json words = Json::array();
  for (const std::string_view word : uncertainty_words()) words.push_back(std::string(word));
  return Json{
      {"words", words}, {"distributions", list_of(choices_of(key_of_word({}, "distribution")))}, {"recommended", recommended}};
}

}  // namespace

std::string schema_json() {
  Json sections = Json::array();
  sections.push_back(head_json());
  for (const Key* key : section_rows()) sections.push_back(section_json(*key));
  return Json{{"sections", sections}, {"uncertainty", uncertainty_json()}}.dump();
}

}  // namespace quell::io
