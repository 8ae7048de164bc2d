#include "quell/io/safety_json.h"

#include <cmath>
#include <nlohmann/json.hpp>

#include "quell/base/quantity_text.h"

namespace quell::io {
namespace {

using Json = nlohmann::ordered_json;

Json panel_json(const checks::SlabPanel& panel) {
  return Json{{"from", panel.from},
              {"to", panel.to},
              {"discharge", panel.discharge},
              {"depth", panel.depth},
              {"pressure_range", panel.pressure_range},
              {"uplift_drains_working", panel.uplift_working},
              {"uplift_drains_failed", panel.uplift_failed},
              {"pulse_sealed", panel.dynamic_sealed},
              {"pulse_open", panel.dynamic_open},
              {"pulse_one_joint", panel.dynamic_failed},
              {"thickness_drains_working", panel.thickness_working},
              {"thickness_drains_failed", panel.thickness_failed},
              {"thickness_joints_open", panel.thickness_open},
              {"thickness_one_joint", panel.thickness_one},
              {"thickness_empty", panel.thickness_empty},
              {"net_pressure", panel.net_pressure},
              {"bars", panel.bars},
              {"bar_force", panel.bar_force},
              {"bar_use", panel.bar_use},
              {"bar_use_joints_sealed", panel.use_sealed},
              {"bar_use_joints_open", panel.use_open},
              {"bar_use_one_joint", panel.use_failed},
              {"bar_length", panel.bar_length}};
}

/// A factor is null where nothing drives the wall that way, the bearing where the force leaves the base.
Json wall_case_json(const checks::WallLoadCase& load) {
  const auto finite = [](double value) { return std::isfinite(value) ? Json(value) : Json(nullptr); };
  return Json{{"case", load.id},
              {"name", load.name},
              {"direction", load.is_inward ? "inward" : "outward"},
              {"discharge", load.discharge},
              {"outside", load.outside},
              {"inside", load.inside},
              {"pulse", load.pulse},
              {"force", load.force},
              {"moment", load.moment},
              {"overturning", finite(load.overturning)},
              {"overturning_needed", load.overturning_needed},
              {"sliding", finite(load.sliding)},
              {"sliding_needed", load.sliding_needed},
              {"largest_bearing", load.leaves_base ? Json(nullptr) : Json(load.largest_bearing)}};
}

Json wall_json(const checks::WallCheck& wall) {
  Json json{{"height", wall.height},
            {"thickness", wall.thickness},
            {"base", wall.base},
            {"fluctuation", wall.fluctuation},
            {"cases", Json::array()}};
  for (const auto& load : wall.cases) json["cases"].push_back(wall_case_json(load));
  return json;
}

Json vibration_json(const checks::Vibration& vibration) {
  const auto judged = [](double value) { return value > 0.0 ? Json(value) : Json(nullptr); };
  return Json{{"jump", judged(vibration.jump)}, {"wall", judged(vibration.wall)}, {"panel", judged(vibration.panel)}};
}

Json invert_json(const checks::InvertCurve& curve) {
  return Json{{"radius", curve.radius}, {"discharge", curve.discharge}, {"pressure", curve.pressure}, {"added", curve.added}};
}

Json river_json(const checks::RiverProtection& river) {
  if (!(river.stone > 0.0)) return nullptr;
  return Json{{"discharge", river.discharge},
              {"tailwater_case", std::string(site::name_of(river.tailwater_case))},
              {"mean_velocity", river.mean_velocity},
              {"bed_velocity", river.bed_velocity},
              {"stone_em25", river.stone_em25},
              {"stone_isbash_high", river.stone_isbash_high},
              {"stone_isbash_low", river.stone_isbash_low},
              {"stone_escarameia_may", river.stone_escarameia_may},
              {"stone_maynord_30", river.stone_maynord_30},
              {"stone", river.stone},
              {"thickness", river.thickness},
              {"length", river.length},
              {"volume", river.volume}};
}

Json scour_json(const checks::BedScour& scour) {
  if (!scour.known) return nullptr;
  return Json{{"working", scour.working},
              {"swept_out_least", scour.swept_out_least},
              {"swept_out_most", scour.swept_out},
              {"after_a_day", scour.grown},
              {"critical_velocity", scour.critical_velocity}};
}

Json band_json(const hydraulics::SizeBand& band) {
  return Json{{"least", band.least}, {"most", band.most}};
}

Json layer_json(const checks::FilterLayer& layer) {
  return Json{{"D15", band_json(layer.band.D15)},
              {"D50", band_json(layer.band.D50)},
              {"D85", band_json(layer.band.D85)},
              {"thickness", layer.thickness},
              {"volume", layer.volume > 0.0 ? Json(layer.volume) : Json(nullptr)}};
}

Json layers_json(const checks::StoneLayers& layers) {
  Json json{{"stone", nullptr},        {"bed", nullptr},    {"filter_closes", nullptr},
            {"filter", Json::array()}, {"launch", nullptr}, {"drain", Json::array()}};
  if (layers.stone.D50.least > 0.0)
    json["stone"] = Json{{"D15", band_json(layers.stone.D15)},
                         {"D50", band_json(layers.stone.D50)},
                         {"D85", band_json(layers.stone.D85)},
                         {"D100", band_json(layers.largest)}};
  if (layers.bed_known) {
    json["bed"] = Json{{"d15", layers.bed.d15},
                       {"d50", layers.bed.d50},
                       {"d85", layers.bed.d85},
                       {"is_derived", layers.bed_derived},
                       {"stone_over_d85", layers.stone_on_bed}};
    json["filter_closes"] = layers.closes;
  }
  for (const auto& layer : layers.filter) json["filter"].push_back(layer_json(layer));
  for (const auto& layer : layers.drain) json["drain"].push_back(layer_json(layer));
  if (layers.launch_volume > 0.0)
    json["launch"] = Json{{"scour", layers.launch_scour},
                          {"length", layers.launch_length},
                          {"thickness", layers.launch_thickness},
                          {"volume_per_width", layers.launch_volume}};
  return json;
}

Json uplift_json(const checks::UpliftPoint& point) {
  return Json{{"cutoff", std::string(point.cutoff)},
              {"point", std::string(1, point.point)},
              {"distance", point.distance},
              {"khosla_alone", point.alone},
              {"for_thickness", point.thickness},
              {"for_interference", point.interference},
              {"for_slope", point.slope},
              {"khosla", point.khosla},
              {"lane", point.lane},
              {"bligh", point.bligh}};
}

Json run_json(const checks::ModelRun& run) {
  const auto three = [&](const std::array<double, 3>& values) {
    Json list = Json::array();
    for (std::size_t i = 0; i < (run.one_tailwater ? 1U : values.size()); ++i) list.push_back(values[i]);
    return list;
  };
  return Json{{"name", with_units(run.name, UnitSystem::si)},
              {"discharge", run.discharge},
              {"tailwater_levels", three(run.tailwater_level)},
              {"y1", run.y1},
              {"V1", run.V1},
              {"F1", run.F1},
              {"model_discharge", run.model_discharge},
              {"model_depths", three(run.model_depth)},
              {"model_y1", run.model_y1},
              {"model_V1", run.model_V1},
              {"model_F1", run.model_F1},
              {"reynolds", run.reynolds},
              {"weber_root", run.weber_root},
              {"measure", std::string(run.measure)},
              {"scale_effects", run.effects}};
}

Json ranges_json(const checks::ModelAdvice& model) {
  if (model.runs.empty()) return nullptr;
  const auto& ranges = model.ranges;
  const bool shakes = ranges.frequency > 0.0;
  return Json{{"least_pressure", shakes ? Json(ranges.least_pressure) : Json(nullptr)},
              {"largest_pressure", shakes ? Json(ranges.largest_pressure) : Json(nullptr)},
              {"frequency", shakes ? Json(ranges.frequency) : Json(nullptr)},
              {"least_discharge", ranges.least_discharge},
              {"largest_discharge", ranges.largest_discharge},
              {"deepest", ranges.deepest},
              {"fastest", ranges.fastest}};
}

Json model_json(const checks::ModelAdvice& model) {
  Json runs = Json::array();
  for (const auto& run : model.runs) runs.push_back(run_json(run));
  return Json{{"required", model.required},
              {"rule", with_units(model.rule, UnitSystem::si)},
              {"runs", std::move(runs)},
              {"ranges", ranges_json(model)},
              {"least_scale", model.least_scale},
              {"largest_scale", model.largest_scale},
              {"scale", model.scale > 0.0 ? Json(model.scale) : Json(nullptr)},
              {"is_section", model.is_section},
              {"discharge", model.discharge},
              {"depth", model.depth},
              {"velocity", model.velocity},
              {"reynolds", model.reynolds}};
}

Json operation_json(const checks::OperationRow& row) {
  return Json{{"pattern", row.pattern},
              {"reservoir_level", row.reservoir_level},
              {"discharge", row.discharge},
              {"tailwater_needed", row.tailwater_needed},
              {"tailwater_low", row.tailwater_low},
              {"allowed", row.allowed}};
}

}  // namespace

Json safety_json(const checks::Safety& safety) {
  if (!safety.judged) return nullptr;
  Json json{
      {"panels", Json::array()},
      {"flotation", safety.flotation.factor_anchored > 0.0 ? Json(safety.flotation.factor_anchored) : Json(nullptr)},
      {"wall", nullptr},
      {"elements", Json::array()},
      {"vibration", nullptr},
      {"invert", nullptr},
      {"seepage", Json{{"head", safety.seepage.head},
                       {"creep_ratio", safety.seepage.on_soil ? Json(safety.seepage.creep_ratio) : Json(nullptr)},
                       {"creep_needed", safety.seepage.on_soil ? Json(safety.seepage.creep_needed) : Json(nullptr)},
                       {"bligh_ratio", safety.seepage.on_soil ? Json(safety.seepage.bligh_ratio) : Json(nullptr)},
                       {"bligh_needed", safety.seepage.bligh_needed > 0.0 ? Json(safety.seepage.bligh_needed) : Json(nullptr)},
                       {"toe_head", safety.seepage.on_soil ? Json(safety.seepage.toe_head) : Json(nullptr)},
                       {"toe_thickness", safety.seepage.on_soil ? Json(safety.seepage.toe_thickness) : Json(nullptr)},
                       {"cutoff_depth", safety.cutoff.depth}}},
      {"uplift_points", Json::array()},
      {"river", river_json(safety.river)},
      {"stone_layers", layers_json(safety.layers)},
      {"scour", scour_json(safety.scour)},
      {"model", model_json(safety.model)},
      {"operation", Json::array()}};
  for (const auto& panel : safety.panels) json["panels"].push_back(panel_json(panel));
  if (!safety.wall.cases.empty()) json["wall"] = wall_json(safety.wall);
  for (const auto& force : safety.elements)
    json["elements"].push_back({{"element", force.kind}, {"name", force.name}, {"mean", force.mean}, {"peak", force.peak}});
  json["vibration"] = vibration_json(safety.vibration);
  if (safety.invert.radius > 0.0) json["invert"] = invert_json(safety.invert);
  for (const auto& point : safety.seepage.points) json["uplift_points"].push_back(uplift_json(point));
  for (const auto& row : safety.operation) json["operation"].push_back(operation_json(row));
  return json;
}

}  // namespace quell::io
