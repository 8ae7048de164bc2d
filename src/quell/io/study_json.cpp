#include "quell/io/study_json.h"

namespace quell::io {
namespace {

using Json = nlohmann::ordered_json;

Json or_null(bool known, double value) {
  return known ? Json(value) : Json(nullptr);
}

Json record_json(const site::Study& study) {
  if (!study.has_frequency) return nullptr;
  const auto& fit = study.frequency;
  return Json{{"law", fit.law == site::FrequencyLaw::gumbel ? "gumbel" : "log_pearson_3"},
              {"years", fit.years},
              {"mean", fit.mean},
              {"deviation", fit.deviation},
              {"skew", fit.skew},
              {"skew_used", fit.skew_used},
              {"confidence", fit.confidence},
              {"return_period", fit.period},
              {"flood", fit.quantile},
              {"lower", fit.lower},
              {"upper", fit.upper},
              {"outliers", fit.outliers}};
}

Json inflow_json(const site::RoutedInflow& one) {
  return Json{{"name", one.name},
              {"return_period", or_null(one.return_period > 0.0, one.return_period)},
              {"peak_from_record", one.peak_from_record},
              {"peak_inflow", one.peak_inflow},
              {"peak_outflow", one.peak_outflow},
              {"peak_spillway", one.peak_spillway},
              {"peak_level", one.peak_level},
              {"peak_level_time", one.peak_level_time},
              {"one_gate_shut_peak_level", or_null(one.one_shut_peak_level > 0.0, one.one_shut_peak_level)},
              {"volume_in", one.volume_in},
              {"volume_out", one.volume_out},
              {"storage_change", one.storage_change},
              {"balance_error", one.balance_error},
              {"table_peak_outflow", or_null(one.table_peak_outflow > 0.0, one.table_peak_outflow)},
              {"gate_moves", one.gate_moves},
              {"time", one.time},
              {"inflow", one.inflow},
              {"outflow", one.outflow},
              {"level", one.level}};
}

Json water_json(const site::RiverWater& water) {
  Json points = Json::array();
  for (const auto& p : water.points)
    points.push_back(Json{{"distance", p.distance},
                          {"bed_level", p.bed_level},
                          {"level", p.level},
                          {"critical_level", p.critical_level},
                          {"energy_level", p.energy_level},
                          {"froude_number", p.froude_number},
                          {"held_at_critical", p.held_at_critical}});
  return Json{{"label", water.label},
              {"discharge", water.discharge},
              {"tailwater_case", std::string(site::name_of(water.tailwater_case))},
              {"points", points}};
}

Json river_json(const site::ResolvedSite& resolved) {
  const auto& study = resolved.study.river;
  const auto& river = resolved.site.river;
  const bool fitted = study.fit.highest_gauged > 0.0;
  Json json{{"statement", study.statement},
            {"bed_degradation", river.bed_degradation},
            {"degradation_estimate", or_null(study.degradation.known(), study.degradation.depth)},
            {"lag_allowance", river.lag_allowance},
            {"fit", nullptr},
            {"rating", nullptr},
            {"profiles", Json::array()}};
  if (fitted)
    json["fit"] = Json{{"zero_level", study.fit.zero_level},
                       {"factor", study.fit.factor},
                       {"power", study.fit.power},
                       {"scatter", study.fit.scatter},
                       {"highest_gauged", study.fit.highest_gauged}};
  if (river.has_rating())
    json["rating"] = Json{{"computed", river.rating.is_computed},
                          {"discharge", river.rating.discharge},
                          {"low", river.rating.level[0]},
                          {"expected", river.rating.level[1]},
                          {"high", river.rating.level[2]}};
  for (const auto& water : study.water) json["profiles"].push_back(water_json(water));
  return json;
}

Json uncertainty_json(const site::UncertainInput& input) {
  return Json{{"key", input.key},
              {"distribution", std::string(site::name_of(input.of.distribution))},
              {"mean", input.of.mean},
              {"deviation", input.of.deviation},
              {"lowest", or_null(input.of.has_limits, input.of.lowest)},
              {"highest", or_null(input.of.has_limits, input.of.highest)},
              {"recommendation", input.name.empty() ? Json(nullptr) : Json(input.name)}};
}

}  // namespace

Json study_json(const site::ResolvedSite& resolved) {
  Json json{{"record", record_json(resolved.study)},
            {"inflows", Json::array()},
            {"river", river_json(resolved)},
            {"uncertainties", Json::array()}};
  for (const auto& one : resolved.study.inflows) json["inflows"].push_back(inflow_json(one));
  for (const auto& input : resolved.site.uncertain) json["uncertainties"].push_back(uncertainty_json(input));
  return json;
}

}  // namespace quell::io
