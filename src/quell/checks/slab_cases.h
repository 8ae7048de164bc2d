// The load cases of a panel's anchors, by drains and joints, each with the words that tell where its numbers come from.
#pragma once

#include <algorithm>
#include <string_view>

#include "quell/checks/slab_loads.h"
#include "quell/hydraulics/slab_uplift.h"

namespace quell::checks {

inline constexpr double steel_share = 0.5;          ///< of the yield stress, design cases with the dynamic factor
inline constexpr double steel_share_unusual = 0.8;  ///< one joint failed, or the drains

/// Where the heads of a case come from, in words.
struct CaseWords {
  std::string_view uplift, depth, pulses, factor;
};
namespace case_words {
inline constexpr std::string_view over_panel = "mean depth of the jump over the panel", empty = "the basin is empty",
                                  undamped = "bound of an undamped anchor under a pulse",
                                  rare = "no factor where a joint or the drains failed", at_rest = "no factor: nothing pulses";
inline constexpr CaseWords drained{"uplift head, drains working", over_panel, "panel's share, times the suction of the pulses",
                                   undamped};
inline constexpr CaseWords undrained{"uplift head, drains failed", over_panel, drained.pulses, rare};
inline constexpr CaseWords open_joints{"depth above: it stands below too, joints open", over_panel,
                                       "share with four open joints, times the range", undamped};
inline constexpr CaseWords failed_joint{drained.uplift, over_panel, "share with one failed joint, times the range", rare};
inline constexpr CaseWords empty_drained{"head below the empty basin, drains working", empty, empty, at_rest};
inline constexpr CaseWords empty_undrained{"head below the empty basin, drains failed", empty, empty, at_rest};
}  // namespace case_words

/// A case of the anchors with its words.
struct AnchorCase {
  hydraulics::AnchoredInput input{};
  const CaseWords* words = &case_words::drained;
};

/// Pressures on the anchors (Pa): of the design cases with the dynamic factor, and of the unusual ones without.
struct AnchorLoad {
  double design = 0.0, unusual = 0.0;
  AnchorCase design_case{}, unusual_case{};  ///< the worst of each

  void raise_design(const AnchorCase& one) { raise(one, design, design_case); }
  void raise_unusual(const AnchorCase& one) { raise(one, unusual, unusual_case); }
  void raise(const AnchorLoad& other) {
    raise_design(other.design_case);
    raise_unusual(other.unusual_case);
  }
  double unusual_share() const { return unusual * steel_share / steel_share_unusual; }
  /// The pressure that counts for the steel: unusual cases may stress it more.
  double governing() const { return std::max(design, unusual_share()); }
  const AnchorCase& governing_case() const { return design >= unusual_share() ? design_case : unusual_case; }

 private:
  static void raise(const AnchorCase& one, double& pressure, AnchorCase& worst) {
    const double here = hydraulics::anchored_pressure(one.input);
    if (here < pressure) return;
    pressure = here;
    worst = one;
  }
};

/// All cases of a state that count with these joints. `empty_head`: m above the floor, below the empty basin.
AnchorLoad anchor_load(const BasinView& view, const PanelLoad& load, double empty_head, site::JointState joints);

}  // namespace quell::checks
