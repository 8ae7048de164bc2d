#include "quell/checks/safety.h"

#include <algorithm>

namespace quell::checks {
namespace {

/// A way to fail with the beginnings of the ids of the findings that look at it.
struct Mode {
  std::string_view name;
  std::string_view mechanism;
  std::span<const std::string_view> findings;
};

constexpr std::string_view sweep_out_ids[] = {"tailwater.margin", "tailwater.sweep_out", "tailwater.sequent_depth", "gates."};
constexpr std::string_view uplift_ids[] = {"slab.uplift", "foundation.uplift", "slab.anchors", "slab.thickness",
                                           "slab.fluctuation"};
constexpr std::string_view stagnation_ids[] = {"slab.stagnation", "slab.joint"};
constexpr std::string_view flotation_ids[] = {"slab.flotation"};
constexpr std::string_view cavitation_ids[] = {"elements.cavitation", "chute.cavitation", "basin.velocity"};
constexpr std::string_view abrasion_ids[] = {"elements.abrasion", "gates.unequal", "tailwater.drowned"};
constexpr std::string_view force_ids[] = {"elements.peak_force", "invert."};
constexpr std::string_view vibration_ids[] = {"slab.vibration", "walls.vibration", "jump.waves"};
constexpr std::string_view undermining_ids[] = {"river.", "foundation.end_cutoff", "tailwater.bed_degradation"};
constexpr std::string_view piping_ids[] = {"foundation.creep", "foundation.exit_gradient", "foundation.rock",
                                           "foundation.drain_filter"};
constexpr std::string_view wall_ids[] = {"walls.overturning", "walls.sliding", "walls.bearing", "walls.fluctuation",
                                         "walls.earthquake"};
constexpr std::string_view people_ids[] = {"safety."};

constexpr Mode modes[] = {
    {"Sweep-out", "too little tailwater: the jump leaves the basin and the river takes the jet", sweep_out_ids},
    {"Uplift of the slab", "head and pulses under the slab exceed its weight and anchors", uplift_ids},
    {"Stagnation pressure at joints", "a lip into the flow turns velocity into pressure below the slab", stagnation_ids},
    {"Flotation when dewatered", "ground water lifts the empty basin", flotation_ids},
    {"Cavitation", "vapour bubbles pit blocks, sills and joints", cavitation_ids},
    {"Abrasion by stones", "stones drawn in by uneven flow grind the floor like a mill", abrasion_ids},
    {"Vibration and waves", "the pulses of the jump shake slender parts; waves run down the river", vibration_ids},
    {"Broken blocks and curve", "peaks of the force tear blocks and sills off, or press the curve of the invert through",
     force_ids},
    {"Undermining", "scour and a sinking bed take the ground from below the sill", undermining_ids},
    {"Piping", "seepage carries soil out from below the floor", piping_ids},
    {"Overtopped or overloaded walls", "water or earth stands higher than the walls can bear", wall_ids},
    {"People in the roller", "the surface of a drowned jump carries swimmers and boats back", people_ids}};

bool looks_at(const Mode& mode, const Finding& finding) {
  return std::any_of(mode.findings.begin(), mode.findings.end(),
                     [&](std::string_view start) { return finding.id.rfind(start, 0) == 0; });
}

}  // namespace

std::vector<FailureMode> failure_modes(const Findings& findings) {
  std::vector<FailureMode> list;
  for (const auto& mode : modes) {
    FailureMode entry{.name = mode.name, .mechanism = mode.mechanism, .findings = {}};
    for (std::size_t i = 0; i < findings.size(); ++i)
      if (looks_at(mode, findings[i])) {
        entry.findings.push_back(i);
        entry.worst = std::max(entry.worst, findings[i].status);
      }
    list.push_back(std::move(entry));
  }
  return list;
}

Safety judge_safety(const BasinView& view) {
  Safety safety;
  safety.judged = true;
  safety.slab_thickness = view.slab_thickness;
  const bool spills = dissipators::makes_jump(view.type.action) || view.type.action == dissipators::Action::fall ||
                      view.type.action == dissipators::Action::roller;
  if (spills) judge_river(view, safety);
  judge_foundation(view, safety);
  judge_forces(view, safety);
  if (dissipators::makes_jump(view.type.action)) {
    judge_elements(view, safety);
    judge_slab(view, safety);
    judge_walls(view, safety);
    judge_vibration(view, safety);
    judge_invert(view, safety);
  }
  judge_model(view, safety);
  judge_operation(view, safety);
  return safety;
}

}  // namespace quell::checks
