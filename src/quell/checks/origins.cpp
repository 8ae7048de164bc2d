#include "quell/checks/origins.h"

namespace quell::checks {
namespace {

std::string_view words_of_computed(bool is_surveyed, bool lowered) {
  if (is_surveyed)
    return lowered ? "water surface through the survey, with degradation and lag"
                   : "water surface through the survey at that discharge";
  return lowered ? "law through the gaugings, with degradation and lag" : "law through the gaugings at that discharge";
}

}  // namespace

StepInput tailwater_level(const BasinView& view, double level, site::TailwaterCase tailwater_case) {
  const auto& river = view.site.river;
  const bool lowered = tailwater_case == site::TailwaterCase::low && (river.lag_allowance > 0.0 || river.bed_degradation > 0.0);
  if (!river.has_rating())
    return told(level,
                lowered ? "bed level plus normal depth, less degradation and lag" : "bed level plus normal depth in the river");
  if (river.rating.is_computed) return told(level, words_of_computed(!river.reach.sections.empty(), lowered));
  if (lowered) return told(level, "river.rating at that discharge, less degradation and lag");
  return given(level, "river.rating");
}

StepInput tailwater_level(const BasinView& view, const TailwaterState& state) {
  return tailwater_level(view, state.tailwater_level, state.tailwater_case);
}

StepInput apron_level(const BasinView& view) {
  const auto& wishes = view.site.basin;
  const double level = view.apron_level;
  if (wishes.has_lowest_apron && level == wishes.lowest_apron_level) return given(level, "basin.lowest_apron");
  if (wishes.has_highest_apron && level == wishes.highest_apron_level) return given(level, "basin.highest_apron");
  switch (view.type.level_rule) {
    case dissipators::LevelRule::tailwater: break;
    case dissipators::LevelRule::river_bed: return told(level, "level of the apron, set from the lowest river bed");
    case dissipators::LevelRule::above_tailwater: return told(level, "level of the apron, set above the highest tailwater");
  }
  return told(level, "level of the apron, by trial over all discharges");
}

StepInput leaving_width(const BasinView& view) {
  return view.structure.end_width > view.width ? told(view.structure.end_width, "width of the basin at its end")
         : view.width == view.site.basin.width || view.site.basin.width_is_free ? given(view.width, "basin.width")
                                                                                : told(view.width, "the type's own width");
}

StepInput sunken_bed(const BasinView& view) {
  const auto& river = view.site.river;
  const double level = river.bed_level - river.bed_degradation;
  return river.bed_degradation > 0.0 ? told(level, "river.bed_level less river.bed_degradation")
                                     : given(level, "river.bed_level");
}

StepInput slab_thickness(const BasinView& view) {
  return view.site.slab.thickness > 0.0 ? given(view.slab_thickness, "slab.thickness")
                                        : told(view.slab_thickness, "first measure of the slab's thickness");
}

StepInput wall_thickness(const BasinView& view) {
  return view.site.walls.thickness > 0.0 ? given(view.wall_thickness, "walls.thickness")
                                         : told(view.wall_thickness, "first measure of the walls' thickness");
}

StepInput wall_height(const BasinView& view) {
  return view.structure.least_wall_height > 0.0 ? told(view.wall_height, "height of the walls by the rule of the type")
                                                : told(view.wall_height, "highest water plus freeboard, above the apron");
}

}  // namespace quell::checks
