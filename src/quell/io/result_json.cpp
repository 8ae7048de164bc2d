#include "quell/io/result_json.h"

#include <cmath>

#include "quell/base/quantity_text.h"
#include "quell/io/json_writer.h"
#include "quell/io/safety_json.h"
#include "quell/io/study_json.h"

namespace quell::io {
namespace {

/// For whom it is written.
struct Reader {
  const Sentences& say;
  bool is_page = false;
};

void echo_json(JsonPlace at, const EchoedInput& input) {
  JsonObject json(at);
  json.member("section", input.section);
  json.member("key", input.key);
  json.member("typed", input.typed);
  json.member("is_default", input.is_default);
}

void input_json(JsonPlace at, const SiteFile& file, const Reader& reader) {
  JsonObject json(at);
  json.member("path", file.path);
  json.member("digest", file.digest);
  json.member("project", file.site.project.name);
  json.member("units", file.site.units == UnitSystem::si ? "SI" : "US customary");
  if (!reader.is_page) json.list("keys", file.inputs, echo_json);
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

/// `put(name, value)` for everything that is said of one discharge or gate pattern in one tailwater case.
template <typename Put>
void each_of_case(const design::CaseResult& c, std::string_view gate_pattern, const Put& put) {
  put("discharge", c.discharge);
  put("tailwater_case", site::name_of(c.tailwater_case));
  put("unit_discharge", c.toe.unit_discharge);
  put("energy_head", c.toe.energy_head);
  put("y1", c.toe.y1);
  put("V1", c.toe.V1);
  put("F1", c.toe.F1);
  put("y2", c.toe.y2);
  put("energy_loss", c.energy_loss);
  put("jump_length", c.jump_length);
  put("shortest_length", above_zero(c.shortest_length));
  put("longest_length", above_zero(c.longest_length));
  put("roller_length", c.roller_length);
  put("sweep_out_depth", c.need.sweep_out);
  put("best_highest_depth", number_if(c.need.best_highest < no_limit, c.need.best_highest));
  put("largest_depth", number_if(c.need.largest < no_limit, c.need.largest));
  put("required_depth", c.required_depth);
  put("available_depth", c.available_depth);
  put("margin", c.margin);
  put("jump", design::name_of(c.jump));
  put("front_station", c.position.front);
  put("front_height", c.position.z1);
  put("front_held", c.position.held);
  put("submergence", c.submergence);
  put("sweep_out_reserve", c.sweep_out_reserve);
  put("sweep_out_discharge", above_zero(c.sweep_out_discharge));
  if (gate_pattern.empty()) return put("gate_pattern", nullptr);
  put("gate_pattern", gate_pattern);
}

/// Discharge by discharge, then gate pattern by gate pattern: three results of each, by tailwater case.
template <typename See>
void each_case(const design::DesignResult& result, const design::Option& option, const See& see) {
  if (!option.sized) return;
  for (const design::CaseResult& c : option.cases) see(c, std::string_view{});
  for (std::size_t i = 0; i < option.pattern_cases.size(); ++i)
    see(option.pattern_cases[i], std::string_view(result.pattern_cases[i / site::tailwater_cases.size()].gate_pattern));
}

void case_results_json(JsonPlace at, const design::DesignResult& result, const design::Option& option) {
  JsonArray list(at);
  each_case(result, option, [&](const design::CaseResult& c, std::string_view gate_pattern) {
    JsonObject json(list.item());
    each_of_case(c, gate_pattern, [&](std::string_view name, const auto& value) { json.member(name, value); });
  });
}

/// The names once, and a row of values for each case.
void case_table_json(JsonPlace at, const design::DesignResult& result, const design::Option& option) {
  JsonObject json(at);
  {
    JsonArray names(json.member("names"));
    each_of_case({}, {}, [&](std::string_view name, const auto&) { names.item().put(name); });
  }
  JsonArray rows(json.member("rows"));
  each_case(result, option, [&](const design::CaseResult& c, std::string_view gate_pattern) {
    JsonArray row(rows.item());
    each_of_case(c, gate_pattern, [&](std::string_view, const auto& value) { row.item().put(value); });
  });
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

void words_json(JsonPlace at, std::string_view words, const Sentences& say) {
  at.put(say(words));
}

void point_json(JsonPlace at, const dissipators::SectionPoint& point) {
  JsonObject json(at);
  json.member("x", point.x);
  json.member("z", point.z);
}

void element_json(JsonPlace at, const dissipators::Element& e, const Sentences& say) {
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
  json.member("remark", say(e.remark));
}

void load_json(JsonPlace at, const dissipators::Load& load, const Sentences& say) {
  JsonObject json(at);
  json.member("kind", load.kind);
  json.member("name", load.name);
  json.member("value", load.value);
  json.member("unit", coherent_symbol(load.dimension));
  json.member("remark", say(load.remark));
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

void finding_json(JsonPlace at, const Finding& f, const Sentences& say) {
  const bool has_limit = f.sense != LimitSense::note;
  JsonObject json(at);
  json.member("id", f.id);
  json.member("status", name_of(f.status));
  json.member("title", say(f.title));
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
  json.member("text", say(f.text));
  json.member("advice", say(f.advice));
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
void option_json(JsonPlace at, const design::DesignResult& result, const design::Option& option, const Reader& reader) {
  const Sentences& say = reader.say;
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
  json.member("statement", say(option.statement));
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
  json.list("loads", structure.loads, load_json, say);
  json.list("approach", type.approach, words_json, say);
  json.list("failure_modes", type.failure_modes, words_json, say);
  json.member("model_required_for", say(type.model));
  json.text_or_null("withheld", say(type.withheld));
  governing_json(json.member("governing"), option);
  (reader.is_page ? case_table_json : case_results_json)(json.member("cases"), result, option);
  json.list("elements", structure.elements, element_json, say);
  json.list("findings", option.findings, finding_json, say);
  quantities_json(json.member("quantities"), option);
  if (!reader.is_page) safety_json(json.member("safety"), option.safety);
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

void result_json(JsonPlace at, const SiteFile& file, const design::DesignResult& result, const Reader& reader) {
  JsonObject json(at);
  program_json(json.member("program"));
  input_json(json.member("input"), file, reader);
  study_json(json.member("site"), result.resolved);
  cases_json(json.member("cases"), result);
  json.list("options", result.options,
            [&](JsonPlace place, const design::Option& option) { option_json(place, result, option, reader); });
  json.text_or_null("chosen", chosen_type(result));
  json.member("choice_reason", reader.say(result.choice_reason));
  json.member("all_requirements_met", result.all_requirements_met);
  if (reader.is_page) levels_json(json.member("levels"), result.resolved.site);
}

struct Form {
  JsonStyle style;
  JsonNumbers numbers;
};

std::string written(const Form& form, const SiteFile& file, const design::DesignResult& result, const Reader& reader) {
  constexpr std::size_t size_of_option = 300'000;  // about
  JsonWriter writer(form.style, form.numbers, result.options.size() * size_of_option);
  result_json(writer.root(), file, result, reader);
  return writer.take() + "\n";
}

}  // namespace

std::string design_json(const SiteFile& file, const design::DesignResult& result) {
  // Sentences of the engine hold their quantities as tokens; for tools they are SI, as everything in JSON.
  const Sentences in_si = [](std::string_view text) { return with_units(text, UnitSystem::si); };
  return written({JsonStyle::lines, JsonNumbers::exact}, file, result, {in_si, false});
}

std::string page_json(const SiteFile& file, const design::DesignResult& result, const Sentences& sentences) {
  return written({JsonStyle::compact, JsonNumbers::nine_digits}, file, result, {sentences, true});
}

}  // namespace quell::io
