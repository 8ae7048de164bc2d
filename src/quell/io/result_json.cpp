#include "quell/io/result_json.h"

#include <cmath>

#include "quell/base/quantity_text.h"
#include "quell/io/json_writer.h"
#include "quell/io/safety_json.h"
#include "quell/io/study_json.h"

namespace quell::io {
namespace {

/// Sentences of the engine hold their quantities as tokens; for tools they are SI, as everything in JSON.
std::string sentence(std::string_view text, UnitSystem units) {
  return with_units(text, units);
}

void echo_json(JsonPlace at, const EchoedInput& input) {
  JsonObject json(at);
  json.member("section", input.section);
  json.member("key", input.key);
  json.member("typed", input.typed);
  json.member("is_default", input.is_default);
}

void input_json(JsonPlace at, const SiteFile& file) {
  JsonObject json(at);
  json.member("path", file.path);
  json.member("digest", file.digest);
  json.member("project", file.site.project.name);
  json.member("units", file.site.units == UnitSystem::si ? "SI" : "US customary");
  json.list("keys", file.inputs, echo_json);
}

void by_tailwater_json(JsonPlace at, const std::array<double, 3>& values) {
  JsonObject json(at);
  for (const auto tailwater_case : site::tailwater_cases)
    json.member(site::name_of(tailwater_case), values[site::index_of(tailwater_case)]);
}

void case_json(JsonPlace at, const design::DischargeCase& c) {
  JsonObject json(at);
  json.member("discharge", c.discharge);
  json.member("return_period", above_zero(c.return_period));
  json.member("reservoir_level", c.reservoir_level);
  json.member("crest_head", c.crest_head);
  json.member("width", c.width);
  json.text_or_null("gate_pattern", c.gate_pattern);
  json.member("gate_opening", above_zero(c.gate_opening));
  json.member("bay_discharge", above_zero(c.bay_discharge));
  json.member("origin", c.origin);
  json.member("is_check", c.is_check);
  by_tailwater_json(json.member("river_discharge"), c.river_discharge);
  by_tailwater_json(json.member("tailwater"), c.tailwater_level);
}

void case_result_json(JsonPlace at, const design::CaseResult& c, std::string_view gate_pattern) {
  JsonObject json(at);
  json.member("discharge", c.discharge);
  json.member("tailwater_case", site::name_of(c.tailwater_case));
  json.member("unit_discharge", c.toe.unit_discharge);
  json.member("energy_head", c.toe.energy_head);
  json.member("y1", c.toe.y1);
  json.member("V1", c.toe.V1);
  json.member("F1", c.toe.F1);
  json.member("y2", c.toe.y2);
  json.member("energy_loss", c.energy_loss);
  json.member("jump_length", c.jump_length);
  json.member("shortest_length", above_zero(c.shortest_length));
  json.member("longest_length", above_zero(c.longest_length));
  json.member("roller_length", c.roller_length);
  json.member("sweep_out_depth", c.need.sweep_out);
  json.member("best_highest_depth", number_if(c.need.best_highest < no_limit, c.need.best_highest));
  json.member("largest_depth", number_if(c.need.largest < no_limit, c.need.largest));
  json.member("required_depth", c.required_depth);
  json.member("available_depth", c.available_depth);
  json.member("margin", c.margin);
  json.member("jump", design::name_of(c.jump));
  json.member("front_station", c.position.front);
  json.member("front_height", c.position.z1);
  json.member("front_held", c.position.held);
  json.member("submergence", c.submergence);
  json.member("sweep_out_reserve", c.sweep_out_reserve);
  json.member("sweep_out_discharge", above_zero(c.sweep_out_discharge));
  json.text_or_null("gate_pattern", gate_pattern);
}

/// Discharge by discharge, then gate pattern by gate pattern: three results of each, by tailwater case.
void case_results_json(JsonPlace at, const design::DesignResult& result, const design::Option& option) {
  JsonArray list(at);
  if (!option.sized) return;
  for (const design::CaseResult& c : option.cases) case_result_json(list.item(), c, "");
  for (std::size_t i = 0; i < option.pattern_cases.size(); ++i)
    case_result_json(list.item(), option.pattern_cases[i], result.pattern_cases[i / site::tailwater_cases.size()].gate_pattern);
}

void governing_json(JsonPlace at, const design::Option& option) {
  const design::Governing& g = option.governing;
  const bool known = option.sized;
  JsonObject json(at);
  json.member("discharge", number_if(known, g.discharge));
  json.text_or_null("gate_pattern", g.gate_pattern);
  json.text_or_null("tailwater_case", known ? site::name_of(g.tailwater_case) : "");
  json.member("margin", number_if(known, g.margin));
  json.member("tailwater_level", number_if(known, g.tailwater_level));
  json.member("required_depth", number_if(known, g.required_depth));
  json.member("available_depth", number_if(known, g.available_depth));
  json.member("y1", number_if(known, g.toe.y1));
  json.member("V1", number_if(known, g.toe.V1));
  json.member("F1", number_if(known, g.toe.F1));
  json.member("y2", number_if(known, g.toe.y2));
}

void point_json(JsonPlace at, const dissipators::SectionPoint& point) {
  JsonObject json(at);
  json.member("x", point.x);
  json.member("z", point.z);
}

void element_json(JsonPlace at, const dissipators::Element& e, UnitSystem units) {
  JsonObject json(at);
  json.member("kind", e.kind);
  json.member("name", e.name);
  json.member("count", e.count);
  json.member("height", e.height);
  json.member("width", e.width);
  json.member("spacing", e.spacing);
  json.member("wall_clearance", e.wall_clearance);
  json.member("length", e.length);
  json.member("station", e.station);
  json.list("profile", e.profile, point_json);
  json.member("across", e.across);
  json.member("rows", e.rows);
  json.member("row_step", number_if(e.rows > 1, e.row_step));
  json.member("row_drop", number_if(e.rows > 1, e.row_drop));
  json.member("remark", sentence(e.remark, units));
}

void load_json(JsonPlace at, const dissipators::Load& load, UnitSystem units) {
  JsonObject json(at);
  json.member("kind", load.kind);
  json.member("name", load.name);
  json.member("value", load.value);
  json.member("unit", coherent_symbol(load.dimension));
  json.member("remark", sentence(load.remark, units));
}

std::string_view sense_name(LimitSense sense) {
  switch (sense) {
    case LimitSense::at_least: return "at_least";
    case LimitSense::at_most: return "at_most";
    case LimitSense::note: break;
  }
  return "note";
}

void acceptance_json(JsonPlace at, const Finding& f) {
  if (f.accepted_by.empty()) return at.put(nullptr);
  JsonObject json(at);
  json.member("by", f.accepted_by);
  json.member("reason", f.accepted_because);
}

void finding_json(JsonPlace at, const Finding& f, UnitSystem units) {
  const bool has_limit = f.sense != LimitSense::note;
  JsonObject json(at);
  json.member("id", f.id);
  json.member("status", name_of(f.status));
  json.member("title", sentence(f.title, units));
  json.member("value", number_if(has_limit, f.value));
  json.member("limit", number_if(has_limit, f.limit));
  json.member("sense", sense_name(f.sense));
  json.member("unit", coherent_symbol(f.dimension));
  json.member("is_count", f.is_count);
  json.member("source", f.source);
  json.member("place", f.place);
  json.member("provenance", name_of(f.provenance));
  json.text_or_null("method", f.method.method == nullptr ? std::string_view() : f.method.method->id);
  json.text_or_null("key", f.key);
  json.member("text", sentence(f.text, units));
  json.member("advice", sentence(f.advice, units));
  acceptance_json(json.member("accepted"), f);
}

void quantities_json(JsonPlace at, const design::Option& option) {
  const design::Quantities& q = option.quantities;
  const bool known = option.sized;
  JsonObject json(at);
  json.member("concrete", number_if(known, q.concrete));
  json.member("slab_concrete", number_if(known, q.slab_concrete));
  json.member("wall_concrete", number_if(known, q.wall_concrete));
  json.member("element_concrete", number_if(known, q.element_concrete));
  json.member("slab_thickness", number_if(known, q.slab_thickness));
  json.member("wall_thickness", number_if(known, q.wall_thickness));
  json.member("riprap", number_if(known, q.riprap));
}

/// To the millimetre: it is drawn, not read.
double drawn(double value) {
  return std::round(value * 1000.0) / 1000.0;
}

void chute_row_json(JsonPlace at, const site::ChutePoint& p) {
  at.put({drawn(p.station), drawn(p.bed_level), drawn(p.station + p.depth * std::sin(p.slope_angle)),
          drawn(p.bed_level + p.depth * std::cos(p.slope_angle)), drawn(p.energy_level)});
}

void jump_json(JsonPlace at, const design::MovingWater& water) {
  JsonObject json(at);
  for (const auto tailwater_case : site::tailwater_cases)
    json.list(site::name_of(tailwater_case), water.jump[site::index_of(tailwater_case)],
              [](JsonPlace place, double depth) { place.put(drawn(depth)); });
}

void moving_water_json(JsonPlace at, const design::MovingWater& water) {
  JsonObject json(at);
  json.member("discharge", water.discharge);
  json.list("chute", water.chute, chute_row_json);
  jump_json(json.member("jump"), water);
}

void water_json(JsonPlace at, const design::Option& option) {
  JsonObject json(at);
  json.list("crest", option.crest_outline,
            [](JsonPlace place, const site::OutlinePoint& p) { place.put({drawn(p.station), drawn(p.level)}); });
  json.list("discharges", option.moving_water, moving_water_json);
}

void levels_json(JsonPlace at, const site::Site& site) {
  JsonObject json(at);
  json.member("crest", site.crest.crest_level);
  json.member("approach_floor", site.crest.crest_level - site.crest.approach_depth);
  json.member("river_bed", site.river.bed_level);
  json.member("ground", number_if(site.ground.has_level, site.ground.ground_level));
  json.member("design_flood", site.discharges.design_flood);
  json.member("check_flood", site.discharges.check_flood);
}

/// Where the type could not be sized, its lists are empty and its numbers null; findings always hold.
void option_json(JsonPlace at, const design::DesignResult& result, const design::Option& option, UnitSystem units) {
  const dissipators::TypeRecord& type = option.type->record();
  const dissipators::Structure none{};
  const dissipators::Structure& structure = option.sized ? option.structure : none;
  const auto known = [&](double value) { return number_if(option.sized, value); };
  JsonObject json(at);
  json.member("type", type.id);
  json.member("name", type.name);
  json.member("action", dissipators::name_of(type.action));
  json.member("sized", option.sized);
  json.member("applicable", option.applicable);
  json.member("statement", sentence(option.statement, units));
  json.member("apron_level", known(option.apron_level));
  json.member("width", known(option.width));
  json.member("length", known(option.length));
  json.member("required_length", above_zero(structure.required_length));
  json.member("wall_height", known(option.wall_height));
  json.member("wall_top_level", known(option.wall_top_level));
  json.member("end_sill_level", known(option.end_sill_level));
  json.member("end_sill_height", known(structure.end_sill_height));
  json.member("freeboard", known(structure.freeboard));
  json.member("invert_radius", known(structure.invert_radius));
  json.member("chute_end_station", known(option.chute_end_station));
  json.member("end_width", known(structure.end_width));
  json.list("floor", structure.floor, point_json);
  json.list("loads", structure.loads, load_json, units);
  json.list("approach", type.approach);
  json.list("failure_modes", type.failure_modes);
  json.member("model_required_for", sentence(type.model, units));
  json.text_or_null("withheld", sentence(type.withheld, units));
  governing_json(json.member("governing"), option);
  case_results_json(json.member("cases"), result, option);
  json.list("elements", structure.elements, element_json, units);
  json.list("findings", option.findings, finding_json, units);
  quantities_json(json.member("quantities"), option);
  safety_json(json.member("safety"), option.safety);
  if (!option.moving_water.empty()) water_json(json.member("water"), option);
}

void cases_json(JsonPlace at, const design::DesignResult& result) {
  JsonArray list(at);
  for (const design::DischargeCase& c : result.cases) case_json(list.item(), c);
  for (const design::DischargeCase& c : result.pattern_cases) case_json(list.item(), c);
}

void program_json(JsonPlace at) {
  JsonObject json(at);
  json.member("name", "quell");
  json.member("version", QUELL_VERSION);
}

std::string_view chosen_type(const design::DesignResult& result) {
  if (result.chosen < 0) return {};
  return result.options[static_cast<std::size_t>(result.chosen)].type->record().id;
}

void result_json(JsonPlace at, const SiteFile& file, const design::DesignResult& result, bool is_page) {
  const UnitSystem units = is_page ? file.site.units : UnitSystem::si;
  JsonObject json(at);
  program_json(json.member("program"));
  input_json(json.member("input"), file);
  study_json(json.member("site"), result.resolved);
  cases_json(json.member("cases"), result);
  json.list("options", result.options,
            [&](JsonPlace place, const design::Option& option) { option_json(place, result, option, units); });
  json.text_or_null("chosen", chosen_type(result));
  json.member("choice_reason", sentence(result.choice_reason, units));
  json.member("all_requirements_met", result.all_requirements_met);
  if (is_page) levels_json(json.member("levels"), result.resolved.site);
}

}  // namespace

std::string design_json(const SiteFile& file, const design::DesignResult& result, JsonLayout layout) {
  const bool is_page = layout == JsonLayout::page;
  constexpr std::size_t size_of_option = 300'000;  // about
  const std::size_t size = result.options.size() * size_of_option;
  JsonWriter writer = is_page ? JsonWriter(JsonStyle::compact, JsonNumbers::nine_digits, size)
                              : JsonWriter(JsonStyle::lines, JsonNumbers::exact, size);
  result_json(writer.root(), file, result, is_page);
  return writer.take() + "\n";
}

}  // namespace quell::io
