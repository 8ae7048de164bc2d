#include "quell/io/study_json.h"

namespace quell::io {
namespace {

void record_json(JsonPlace at, const site::Study& study) {
  if (!study.has_frequency) return at.put(nullptr);
  const auto& fit = study.frequency;
  JsonObject json(at);
  json.member("law", fit.law == site::FrequencyLaw::gumbel ? "gumbel" : "log_pearson_3");
  json.member("years", fit.years);
  json.member("mean", fit.mean);
  json.member("deviation", fit.deviation);
  json.member("skew", fit.skew);
  json.member("skew_used", fit.skew_used);
  json.member("confidence", fit.confidence);
  json.list("return_period", fit.period);
  json.list("flood", fit.quantile);
  json.list("lower", fit.lower);
  json.list("upper", fit.upper);
  json.list("outliers", fit.outliers);
}

void inflow_json(JsonPlace at, const site::RoutedInflow& one) {
  JsonObject json(at);
  json.member("name", one.name);
  json.member("return_period", above_zero(one.return_period));
  json.member("peak_from_record", one.peak_from_record);
  json.member("peak_inflow", one.peak_inflow);
  json.member("peak_outflow", one.peak_outflow);
  json.member("peak_spillway", one.peak_spillway);
  json.member("peak_level", one.peak_level);
  json.member("peak_level_time", one.peak_level_time);
  json.member("one_gate_shut_peak_level", above_zero(one.one_shut_peak_level));
  json.member("volume_in", one.volume_in);
  json.member("volume_out", one.volume_out);
  json.member("storage_change", one.storage_change);
  json.member("balance_error", one.balance_error);
  json.member("table_peak_outflow", above_zero(one.table_peak_outflow));
  json.member("gate_moves", one.gate_moves);
  json.list("time", one.time);
  json.list("inflow", one.inflow);
  json.list("outflow", one.outflow);
  json.list("level", one.level);
}

void point_json(JsonPlace at, const site::RiverProfilePoint& point) {
  JsonObject json(at);
  json.member("distance", point.distance);
  json.member("bed_level", point.bed_level);
  json.member("level", point.level);
  json.member("critical_level", point.critical_level);
  json.member("energy_level", point.energy_level);
  json.member("froude_number", point.froude_number);
  json.member("held_at_critical", point.held_at_critical);
}

void water_json(JsonPlace at, const site::RiverWater& water) {
  JsonObject json(at);
  json.member("label", water.label);
  json.member("discharge", water.discharge);
  json.member("tailwater_case", site::name_of(water.tailwater_case));
  json.list("points", water.points, point_json);
}

void fit_json(JsonPlace at, const site::GaugingFit& fit) {
  if (!(fit.highest_gauged > 0.0)) return at.put(nullptr);
  JsonObject json(at);
  json.member("zero_level", fit.zero_level);
  json.member("factor", fit.factor);
  json.member("power", fit.power);
  json.member("scatter", fit.scatter);
  json.member("highest_gauged", fit.highest_gauged);
}

void rating_json(JsonPlace at, const site::River& river) {
  if (!river.has_rating()) return at.put(nullptr);
  JsonObject json(at);
  json.member("computed", river.rating.is_computed);
  json.list("discharge", river.rating.discharge);
  json.list("low", river.rating.level[0]);
  json.list("expected", river.rating.level[1]);
  json.list("high", river.rating.level[2]);
}

void river_json(JsonPlace at, const site::ResolvedSite& resolved) {
  const auto& study = resolved.study.river;
  const auto& river = resolved.site.river;
  JsonObject json(at);
  json.member("statement", study.statement);
  json.member("bed_degradation", river.bed_degradation);
  json.member("degradation_estimate", number_if(study.degradation.known(), study.degradation.depth));
  json.member("lag_allowance", river.lag_allowance);
  fit_json(json.member("fit"), study.fit);
  rating_json(json.member("rating"), river);
  json.list("profiles", study.water, water_json);
}

void uncertainty_json(JsonPlace at, const site::UncertainInput& input) {
  JsonObject json(at);
  json.member("key", input.key);
  json.member("distribution", site::name_of(input.of.distribution));
  json.member("mean", input.of.mean);
  json.member("deviation", input.of.deviation);
  json.member("lowest", number_if(input.of.has_limits, input.of.lowest));
  json.member("highest", number_if(input.of.has_limits, input.of.highest));
  json.text_or_null("recommendation", input.name);
}

}  // namespace

void study_json(JsonPlace at, const site::ResolvedSite& resolved) {
  JsonObject json(at);
  record_json(json.member("record"), resolved.study);
  json.list("inflows", resolved.study.inflows, inflow_json);
  river_json(json.member("river"), resolved);
  json.list("uncertainties", resolved.site.uncertain, uncertainty_json);
}

}  // namespace quell::io
