#include "quell/io/safety_json.h"

#include <span>

#include "quell/base/quantity_text.h"

namespace quell::io {
namespace {

void panel_json(JsonPlace at, const checks::SlabPanel& panel) {
  JsonObject json(at);
  json.member("from", panel.from);
  json.member("to", panel.to);
  json.member("discharge", panel.discharge);
  json.member("depth", panel.depth);
  json.member("pressure_range", panel.pressure_range);
  json.member("uplift_drains_working", panel.uplift_working);
  json.member("uplift_drains_failed", panel.uplift_failed);
  json.member("pulse_sealed", panel.dynamic_sealed);
  json.member("pulse_open", panel.dynamic_open);
  json.member("pulse_one_joint", panel.dynamic_failed);
  json.member("thickness_drains_working", panel.thickness_working);
  json.member("thickness_drains_failed", panel.thickness_failed);
  json.member("thickness_joints_open", panel.thickness_open);
  json.member("thickness_one_joint", panel.thickness_one);
  json.member("thickness_empty", panel.thickness_empty);
  json.member("net_pressure", panel.net_pressure);
  json.member("bars", panel.bars);
  json.member("bar_force", panel.bar_force);
  json.member("bar_use", panel.bar_use);
  json.member("bar_use_joints_sealed", panel.use_sealed);
  json.member("bar_use_joints_open", panel.use_open);
  json.member("bar_use_one_joint", panel.use_failed);
  json.member("bar_length", panel.bar_length);
}

/// A factor is null where nothing drives the wall that way and it is infinite, the bearing where the force leaves the base.
void wall_case_json(JsonPlace at, const checks::WallLoadCase& load) {
  JsonObject json(at);
  json.member("case", load.id);
  json.member("name", load.name);
  json.member("direction", load.is_inward ? "inward" : "outward");
  json.member("discharge", load.discharge);
  json.member("outside", load.outside);
  json.member("inside", load.inside);
  json.member("pulse", load.pulse);
  json.member("force", load.force);
  json.member("moment", load.moment);
  json.member("overturning", load.overturning);
  json.member("overturning_needed", load.overturning_needed);
  json.member("sliding", load.sliding);
  json.member("sliding_needed", load.sliding_needed);
  json.member("largest_bearing", number_if(!load.leaves_base, load.largest_bearing));
}

void wall_json(JsonPlace at, const checks::WallCheck& wall) {
  if (wall.cases.empty()) return at.put(nullptr);
  JsonObject json(at);
  json.member("height", wall.height);
  json.member("thickness", wall.thickness);
  json.member("base", wall.base);
  json.member("fluctuation", wall.fluctuation);
  json.list("cases", wall.cases, wall_case_json);
}

void force_json(JsonPlace at, const checks::ElementForce& force) {
  JsonObject json(at);
  json.member("element", force.kind);
  json.member("name", force.name);
  json.member("mean", force.mean);
  json.member("peak", force.peak);
}

void vibration_json(JsonPlace at, const checks::Vibration& vibration) {
  JsonObject json(at);
  json.member("jump", above_zero(vibration.jump));
  json.member("wall", above_zero(vibration.wall));
  json.member("panel", above_zero(vibration.panel));
}

void invert_json(JsonPlace at, const checks::InvertCurve& curve) {
  if (!(curve.radius > 0.0)) return at.put(nullptr);
  JsonObject json(at);
  json.member("radius", curve.radius);
  json.member("discharge", curve.discharge);
  json.member("pressure", curve.pressure);
  json.member("added", curve.added);
}

void seepage_json(JsonPlace at, const checks::Seepage& seepage, const checks::EndCutoff& cutoff) {
  const auto on_soil = [&](double value) { return number_if(seepage.on_soil, value); };
  JsonObject json(at);
  json.member("head", seepage.head);
  json.member("creep_ratio", on_soil(seepage.creep_ratio));
  json.member("creep_needed", on_soil(seepage.creep_needed));
  json.member("bligh_ratio", on_soil(seepage.bligh_ratio));
  json.member("bligh_needed", above_zero(seepage.bligh_needed));
  json.member("toe_head", on_soil(seepage.toe_head));
  json.member("toe_thickness", on_soil(seepage.toe_thickness));
  json.member("cutoff_depth", cutoff.depth);
}

void uplift_json(JsonPlace at, const checks::UpliftPoint& point) {
  JsonObject json(at);
  json.member("cutoff", point.cutoff);
  json.member("point", std::string_view(&point.point, 1));
  json.member("distance", point.distance);
  json.member("khosla_alone", point.alone);
  json.member("for_thickness", point.thickness);
  json.member("for_interference", point.interference);
  json.member("for_slope", point.slope);
  json.member("khosla", point.khosla);
  json.member("lane", point.lane);
  json.member("bligh", point.bligh);
}

void river_json(JsonPlace at, const checks::RiverProtection& river) {
  if (!(river.stone > 0.0)) return at.put(nullptr);
  JsonObject json(at);
  json.member("discharge", river.discharge);
  json.member("tailwater_case", site::name_of(river.tailwater_case));
  json.member("mean_velocity", river.mean_velocity);
  json.member("bed_velocity", river.bed_velocity);
  json.member("stone_em25", river.stone_em25);
  json.member("stone_isbash_high", river.stone_isbash_high);
  json.member("stone_isbash_low", river.stone_isbash_low);
  json.member("stone_escarameia_may", river.stone_escarameia_may);
  json.member("stone_maynord_30", river.stone_maynord_30);
  json.member("stone", river.stone);
  json.member("thickness", river.thickness);
  json.member("length", river.length);
  json.member("volume", river.volume);
}

void scour_json(JsonPlace at, const checks::BedScour& scour) {
  if (!scour.known) return at.put(nullptr);
  JsonObject json(at);
  json.member("working", scour.working);
  json.member("swept_out_least", scour.swept_out_least);
  json.member("swept_out_most", scour.swept_out);
  json.member("after_a_day", scour.grown);
  json.member("critical_velocity", scour.critical_velocity);
}

void band_json(JsonPlace at, const hydraulics::SizeBand& band) {
  JsonObject json(at);
  json.member("least", band.least);
  json.member("most", band.most);
}

void layer_json(JsonPlace at, const checks::FilterLayer& layer) {
  JsonObject json(at);
  band_json(json.member("D15"), layer.band.D15);
  band_json(json.member("D50"), layer.band.D50);
  band_json(json.member("D85"), layer.band.D85);
  json.member("thickness", layer.thickness);
  json.member("volume", above_zero(layer.volume));
}

void stone_json(JsonPlace at, const checks::StoneLayers& layers) {
  if (!(layers.stone.D50.least > 0.0)) return at.put(nullptr);
  JsonObject json(at);
  band_json(json.member("D15"), layers.stone.D15);
  band_json(json.member("D50"), layers.stone.D50);
  band_json(json.member("D85"), layers.stone.D85);
  band_json(json.member("D100"), layers.largest);
}

void bed_json(JsonPlace at, const checks::StoneLayers& layers) {
  if (!layers.bed_known) return at.put(nullptr);
  JsonObject json(at);
  json.member("d15", layers.bed.d15);
  json.member("d50", layers.bed.d50);
  json.member("d85", layers.bed.d85);
  json.member("is_derived", layers.bed_derived);
  json.member("stone_over_d85", layers.stone_on_bed);
}

void launch_json(JsonPlace at, const checks::StoneLayers& layers) {
  if (!(layers.launch_volume > 0.0)) return at.put(nullptr);
  JsonObject json(at);
  json.member("scour", layers.launch_scour);
  json.member("length", layers.launch_length);
  json.member("thickness", layers.launch_thickness);
  json.member("volume_per_width", layers.launch_volume);
}

void layers_json(JsonPlace at, const checks::StoneLayers& layers) {
  JsonObject json(at);
  stone_json(json.member("stone"), layers);
  bed_json(json.member("bed"), layers);
  if (layers.bed_known) {
    json.member("filter_closes", layers.closes);
  } else {
    json.member("filter_closes", nullptr);
  }
  json.list("filter", layers.filter, layer_json);
  launch_json(json.member("launch"), layers);
  json.list("drain", layers.drain, layer_json);
}

void run_json(JsonPlace at, const checks::ModelRun& run) {
  const auto levels = [&](const std::array<double, 3>& values) { return std::span(values).first(run.one_tailwater ? 1 : 3); };
  JsonObject json(at);
  json.member("name", with_units(run.name, UnitSystem::si));
  json.member("discharge", run.discharge);
  json.list("tailwater_levels", levels(run.tailwater_level));
  json.member("y1", run.y1);
  json.member("V1", run.V1);
  json.member("F1", run.F1);
  json.member("model_discharge", run.model_discharge);
  json.list("model_depths", levels(run.model_depth));
  json.member("model_y1", run.model_y1);
  json.member("model_V1", run.model_V1);
  json.member("model_F1", run.model_F1);
  json.member("reynolds", run.reynolds);
  json.member("weber_root", run.weber_root);
  json.member("measure", run.measure);
  json.member("scale_effects", run.effects);
}

void ranges_json(JsonPlace at, const checks::ModelAdvice& model) {
  if (model.runs.empty()) return at.put(nullptr);
  const auto& ranges = model.ranges;
  const bool shakes = ranges.frequency > 0.0;
  JsonObject json(at);
  json.member("least_pressure", number_if(shakes, ranges.least_pressure));
  json.member("largest_pressure", number_if(shakes, ranges.largest_pressure));
  json.member("frequency", number_if(shakes, ranges.frequency));
  json.member("least_discharge", ranges.least_discharge);
  json.member("largest_discharge", ranges.largest_discharge);
  json.member("deepest", ranges.deepest);
  json.member("fastest", ranges.fastest);
}

void model_json(JsonPlace at, const checks::ModelAdvice& model) {
  JsonObject json(at);
  json.member("required", model.required);
  json.member("rule", with_units(model.rule, UnitSystem::si));
  json.list("runs", model.runs, run_json);
  ranges_json(json.member("ranges"), model);
  json.member("least_scale", model.least_scale);
  json.member("largest_scale", model.largest_scale);
  json.member("scale", above_zero(model.scale));
  json.member("is_section", model.is_section);
  json.member("discharge", model.discharge);
  json.member("depth", model.depth);
  json.member("velocity", model.velocity);
  json.member("reynolds", model.reynolds);
}

void operation_json(JsonPlace at, const checks::OperationRow& row) {
  JsonObject json(at);
  json.member("pattern", row.pattern);
  json.member("reservoir_level", row.reservoir_level);
  json.member("discharge", row.discharge);
  json.member("tailwater_needed", row.tailwater_needed);
  json.member("tailwater_low", row.tailwater_low);
  json.member("allowed", row.allowed);
}

}  // namespace

void safety_json(JsonPlace at, const checks::Safety& safety) {
  if (!safety.judged) return at.put(nullptr);
  JsonObject json(at);
  json.list("panels", safety.panels, panel_json);
  json.member("flotation", above_zero(safety.flotation.factor_anchored));
  wall_json(json.member("wall"), safety.wall);
  json.list("elements", safety.elements, force_json);
  vibration_json(json.member("vibration"), safety.vibration);
  invert_json(json.member("invert"), safety.invert);
  seepage_json(json.member("seepage"), safety.seepage, safety.cutoff);
  json.list("uplift_points", safety.seepage.points, uplift_json);
  river_json(json.member("river"), safety.river);
  layers_json(json.member("stone_layers"), safety.layers);
  scour_json(json.member("scour"), safety.scour);
  model_json(json.member("model"), safety.model);
  json.list("operation", safety.operation, operation_json);
}

}  // namespace quell::io
