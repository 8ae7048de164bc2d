#include "quell/io/safety_json.h"

#include <cmath>
#include <nlohmann/json.hpp>

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

Json model_json(const checks::ModelAdvice& model) {
  return Json{{"least_scale", model.least_scale},
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
  Json json{{"panels", Json::array()},
            {"flotation", safety.flotation.factor_anchored > 0.0 ? Json(safety.flotation.factor_anchored) : Json(nullptr)},
            {"wall", nullptr},
            {"elements", Json::array()},
            {"vibration", nullptr},
            {"invert", nullptr},
            {"seepage", Json{{"head", safety.seepage.head},
                             {"creep_ratio", safety.seepage.on_soil ? Json(safety.seepage.creep_ratio) : Json(nullptr)},
                             {"creep_needed", safety.seepage.on_soil ? Json(safety.seepage.creep_needed) : Json(nullptr)},
                             {"cutoff_depth", safety.cutoff.depth}}},
            {"river", river_json(safety.river)},
            {"scour", scour_json(safety.scour)},
            {"model", model_json(safety.model)},
            {"operation", Json::array()}};
  for (const auto& panel : safety.panels) json["panels"].push_back(panel_json(panel));
  if (!safety.wall.cases.empty()) json["wall"] = wall_json(safety.wall);
  for (const auto& force : safety.elements)
    json["elements"].push_back({{"element", force.kind}, {"name", force.name}, {"mean", force.mean}, {"peak", force.peak}});
  json["vibration"] = vibration_json(safety.vibration);
  if (safety.invert.radius > 0.0) json["invert"] = invert_json(safety.invert);
  for (const auto& row : safety.operation) json["operation"].push_back(operation_json(row));
  return json;
}

}  // namespace quell::io
