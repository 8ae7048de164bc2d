#include "quell/io/result_json.h"

#include <cmath>
#include <nlohmann/json.hpp>

#include "quell/base/quantity_text.h"
#include "quell/io/safety_json.h"
#include "quell/io/study_json.h"

namespace quell::io {
namespace {

using Json = nlohmann::ordered_json;

/// JSON has no infinity: a limit that does not exist is null.
Json number(double value) {
  return std::isfinite(value) ? Json(value) : Json(nullptr);
}
Json number_if(bool known, double value) {
  return known ? number(value) : Json(nullptr);
}
/// Sentences of the engine hold their quantities as tokens; for tools they are SI, as everything in JSON.
Json sentence(std::string_view text, UnitSystem units) {
  return Json(with_units(text, units));
}
Json years(double return_period) {
  return number_if(return_period > 0.0, return_period);
}
Json word(std::string_view text) {
  return Json(std::string(text));
}

/// Puts an object together straight away. The library's own lists in braces make a small array of each pair first, which costs
/// most of the writing where there are thousands of them.
Json object(std::initializer_list<std::pair<std::string_view, Json>> members) {
  Json::object_t map;
  map.reserve(members.size() + 1);  // one more may be added
  for (const auto& [key, value] : members) map.emplace_back(std::string(key), value);
  return Json(std::move(map));
}

Json input_json(const SiteFile& file) {
  Json keys = Json::array();
  for (const EchoedInput& input : file.inputs)
    keys.push_back(
        Json{{"section", input.section}, {"key", input.key}, {"typed", input.typed}, {"is_default", input.is_default}});
  return Json{{"path", file.path},
              {"digest", file.digest},
              {"project", file.site.project.name},
              {"units", file.site.units == UnitSystem::si ? "SI" : "US customary"},
              {"keys", keys}};
}

Json case_json(const design::DischargeCase& c) {
  return Json{{"discharge", number(c.discharge)},
              {"return_period", years(c.return_period)},
              {"reservoir_level", number(c.reservoir_level)},
              {"crest_head", number(c.crest_head)},
              {"width", number(c.width)},
              {"gate_pattern", c.gate_pattern.empty() ? Json(nullptr) : Json(c.gate_pattern)},
              {"gate_opening", number_if(c.gate_opening > 0.0, c.gate_opening)},
              {"bay_discharge", number_if(c.bay_discharge > 0.0, c.bay_discharge)},
              {"origin", c.origin},
              {"is_check", c.is_check},
              {"river_discharge", Json{{"low", number(c.river_discharge[0])},
                                       {"expected", number(c.river_discharge[1])},
                                       {"high", number(c.river_discharge[2])}}},
              {"tailwater", Json{{"low", number(c.tailwater_level[0])},
                                 {"expected", number(c.tailwater_level[1])},
                                 {"high", number(c.tailwater_level[2])}}}};
}

Json case_result_json(const design::CaseResult& c) {
  return object({{"discharge", number(c.discharge)},
                 {"tailwater_case", word(site::name_of(c.tailwater_case))},
                 {"unit_discharge", number(c.toe.unit_discharge)},
                 {"energy_head", number(c.toe.energy_head)},
                 {"y1", number(c.toe.y1)},
                 {"V1", number(c.toe.V1)},
                 {"F1", number(c.toe.F1)},
                 {"y2", number(c.toe.y2)},
                 {"energy_loss", number(c.energy_loss)},
                 {"jump_length", number(c.jump_length)},
                 {"shortest_length", number_if(c.shortest_length > 0.0, c.shortest_length)},
                 {"longest_length", number_if(c.longest_length > 0.0, c.longest_length)},
                 {"roller_length", number(c.roller_length)},
                 {"sweep_out_depth", number(c.need.sweep_out)},
                 {"best_highest_depth", number_if(c.need.best_highest < no_limit, c.need.best_highest)},
                 {"largest_depth", number_if(c.need.largest < no_limit, c.need.largest)},
                 {"required_depth", number(c.required_depth)},
                 {"available_depth", number(c.available_depth)},
                 {"margin", number(c.margin)},
                 {"jump", word(design::name_of(c.jump))},
                 {"front_station", number(c.position.front)},
                 {"front_height", number(c.position.z1)},
                 {"front_held", c.position.held},
                 {"submergence", number(c.submergence)},
                 {"sweep_out_reserve", number(c.sweep_out_reserve)},
                 {"sweep_out_discharge", number_if(c.sweep_out_discharge > 0.0, c.sweep_out_discharge)}});
}

Json governing_json(const design::Option& option) {
  const design::Governing& g = option.governing;
  const bool known = option.sized;
  return Json{{"discharge", number_if(known, g.discharge)},
              {"gate_pattern", g.gate_pattern.empty() ? Json(nullptr) : Json(g.gate_pattern)},
              {"tailwater_case", known ? word(site::name_of(g.tailwater_case)) : Json(nullptr)},
              {"margin", number_if(known, g.margin)},
              {"tailwater_level", number_if(known, g.tailwater_level)},
              {"required_depth", number_if(known, g.required_depth)},
              {"available_depth", number_if(known, g.available_depth)},
              {"y1", number_if(known, g.toe.y1)},
              {"V1", number_if(known, g.toe.V1)},
              {"F1", number_if(known, g.toe.F1)},
              {"y2", number_if(known, g.toe.y2)}};
}

Json element_json(const dissipators::Element& e, UnitSystem units) {
  Json profile = Json::array();
  for (const dissipators::SectionPoint& point : e.profile)
    profile.push_back(Json{{"x", number(point.x)}, {"z", number(point.z)}});
  return Json{{"kind", word(e.kind)},
              {"name", word(e.name)},
              {"count", e.count},
              {"height", number(e.height)},
              {"width", number(e.width)},
              {"spacing", number(e.spacing)},
              {"wall_clearance", number(e.wall_clearance)},
              {"length", number(e.length)},
              {"station", number(e.station)},
              {"profile", profile},
              {"across", number(e.across)},
              {"rows", e.rows},
              {"row_step", number_if(e.rows > 1, e.row_step)},
              {"row_drop", number_if(e.rows > 1, e.row_drop)},
              {"remark", sentence(e.remark, units)}};
}

Json load_json(const dissipators::Load& load, UnitSystem units) {
  return Json{{"kind", word(load.kind)},
              {"name", word(load.name)},
              {"value", number(load.value)},
              {"unit", coherent_symbol(load.dimension)},
              {"remark", sentence(load.remark, units)}};
}

Json words_json(std::span<const std::string_view> list) {
  Json json = Json::array();
  for (const std::string_view words : list) json.push_back(word(words));
  return json;
}

Json finding_json(const Finding& f, UnitSystem units) {
  const bool has_limit = f.sense != LimitSense::note;
  const std::string_view sense = f.sense == LimitSense::at_least  ? "at_least"
                                 : f.sense == LimitSense::at_most ? "at_most"
                                                                  : "note";
  return Json{
      {"id", f.id},
      {"status", word(name_of(f.status))},
      {"title", sentence(f.title, units)},
      {"value", number_if(has_limit, f.value)},
      {"limit", number_if(has_limit, f.limit)},
      {"sense", word(sense)},
      {"unit", coherent_symbol(f.dimension)},
      {"is_count", f.is_count},
      {"source", f.source},
      {"place", f.place},
      {"provenance", word(name_of(f.provenance))},
      {"method", f.method.method == nullptr ? Json(nullptr) : word(f.method.method->id)},
      {"key", f.key.empty() ? Json(nullptr) : word(f.key)},
      {"text", sentence(f.text, units)},
      {"advice", sentence(f.advice, units)},
      {"accepted", f.accepted_by.empty() ? Json(nullptr) : Json{{"by", f.accepted_by}, {"reason", f.accepted_because}}}};
}

Json quantities_json(const design::Option& option) {
  const design::Quantities& q = option.quantities;
  const bool known = option.sized;
  return Json{{"concrete", number_if(known, q.concrete)},
              {"slab_concrete", number_if(known, q.slab_concrete)},
              {"wall_concrete", number_if(known, q.wall_concrete)},
              {"element_concrete", number_if(known, q.element_concrete)},
              {"slab_thickness", number_if(known, q.slab_thickness)},
              {"wall_thickness", number_if(known, q.wall_thickness)},
              {"riprap", number_if(known, q.riprap)}};
}

/// One discharge or gate pattern of an option: three results, by tailwater case.
Json case_results_json(const design::CaseResult& c, const std::string& gate_pattern) {
  Json json = case_result_json(c);
  json["gate_pattern"] = gate_pattern.empty() ? Json(nullptr) : Json(gate_pattern);
  return json;
}

/// To the millimetre: it is drawn, not read.
Json drawn(double value) {
  return number(std::round(value * 1000.0) / 1000.0);
}

Json chute_json(const std::vector<site::ChutePoint>& chute) {
  Json rows = Json::array();
  for (const site::ChutePoint& p : chute)
    rows.push_back(Json::array({drawn(p.station), drawn(p.bed_level), drawn(p.station + p.depth * std::sin(p.slope_angle)),
                                drawn(p.bed_level + p.depth * std::cos(p.slope_angle)), drawn(p.energy_level)}));
  return rows;
}

Json moving_water_json(const design::Option& option) {
  Json crest = Json::array(), discharges = Json::array();
  for (const site::OutlinePoint& p : option.crest_outline) crest.push_back(Json::array({drawn(p.station), drawn(p.level)}));
  for (const design::MovingWater& water : option.moving_water) {
    Json jump = Json::object();
    for (const auto tailwater_case : site::tailwater_cases) {
      Json& depths = jump[std::string(site::name_of(tailwater_case))] = Json::array();
      for (const double depth : water.jump[site::index_of(tailwater_case)]) depths.push_back(drawn(depth));
    }
    discharges.push_back(
        object({{"discharge", number(water.discharge)}, {"chute", chute_json(water.chute)}, {"jump", std::move(jump)}}));
  }
  return object({{"crest", std::move(crest)}, {"discharges", std::move(discharges)}});
}

Json levels_json(const site::Site& site) {
  return object({{"crest", number(site.crest.crest_level)},
                 {"approach_floor", number(site.crest.crest_level - site.crest.approach_depth)},
                 {"river_bed", number(site.river.bed_level)},
                 {"ground", number_if(site.ground.has_level, site.ground.ground_level)},
                 {"design_flood", number(site.discharges.design_flood)},
                 {"check_flood", number(site.discharges.check_flood)}});
}

Json option_json(const design::DesignResult& result, const design::Option& option, UnitSystem units) {
  const bool known = option.sized;
  const dissipators::TypeRecord& type = option.type->record();
  Json json{{"type", word(type.id)},
            {"name", word(type.name)},
            {"action", word(dissipators::name_of(type.action))},
            {"sized", known},
            {"applicable", option.applicable},
            {"statement", sentence(option.statement, units)},
            {"apron_level", number_if(known, option.apron_level)},
            {"width", number_if(known, option.width)},
            {"length", number_if(known, option.length)},
            {"required_length", number_if(known && option.structure.required_length > 0.0, option.structure.required_length)},
            {"wall_height", number_if(known, option.wall_height)},
            {"wall_top_level", number_if(known, option.wall_top_level)},
            {"end_sill_level", number_if(known, option.end_sill_level)},
            {"end_sill_height", number_if(known, option.structure.end_sill_height)},
            {"freeboard", number_if(known, option.structure.freeboard)},
            {"invert_radius", number_if(known, option.structure.invert_radius)},
            {"chute_end_station", number_if(known, option.chute_end_station)},
            {"end_width", number_if(known, option.structure.end_width)},
            {"floor", Json::array()},
            {"loads", Json::array()},
            {"approach", words_json(type.approach)},
            {"failure_modes", words_json(type.failure_modes)},
            {"model_required_for", sentence(type.model, units)},
            {"withheld", type.withheld.empty() ? Json(nullptr) : sentence(type.withheld, units)},
            {"governing", governing_json(option)},
            {"cases", Json::array()},
            {"elements", Json::array()},
            {"findings", Json::array()},
            {"quantities", quantities_json(option)},
            {"safety", safety_json(option.safety)}};
  if (known) {
    for (const design::CaseResult& c : option.cases) json["cases"].push_back(case_results_json(c, ""));
    for (std::size_t i = 0; i < option.pattern_cases.size(); ++i)
      json["cases"].push_back(
          case_results_json(option.pattern_cases[i], result.pattern_cases[i / site::tailwater_cases.size()].gate_pattern));
    for (const dissipators::SectionPoint& point : option.structure.floor)
      json["floor"].push_back(Json{{"x", number(point.x)}, {"z", number(point.z)}});
    for (const dissipators::Load& load : option.structure.loads) json["loads"].push_back(load_json(load, units));
    for (const dissipators::Element& e : option.structure.elements) json["elements"].push_back(element_json(e, units));
  }
  if (!option.moving_water.empty()) json["water"] = moving_water_json(option);
  for (const Finding& f : option.findings) json["findings"].push_back(finding_json(f, units));
  return json;
}

}  // namespace

std::string design_json(const SiteFile& file, const design::DesignResult& result, JsonLayout layout) {
  const bool is_page = layout == JsonLayout::page;
  const UnitSystem units = is_page ? file.site.units : UnitSystem::si;
  Json json{{"program", Json{{"name", "quell"}, {"version", QUELL_VERSION}}},
            {"input", input_json(file)},
            {"site", study_json(result.resolved)},
            {"cases", Json::array()},
            {"options", Json::array()},
            {"chosen", nullptr},
            {"choice_reason", sentence(result.choice_reason, units)},
            {"all_requirements_met", result.all_requirements_met}};
  for (const design::DischargeCase& c : result.cases) json["cases"].push_back(case_json(c));
  for (const design::DischargeCase& c : result.pattern_cases) json["cases"].push_back(case_json(c));
  for (const design::Option& option : result.options) json["options"].push_back(option_json(result, option, units));
  if (result.chosen >= 0) json["chosen"] = word(result.options[static_cast<std::size_t>(result.chosen)].type->record().id);
  if (is_page) json["levels"] = levels_json(result.resolved.site);
  return json.dump(is_page ? -1 : 1, ' ', false, Json::error_handler_t::replace) + "\n";
}

}  // namespace quell::io
