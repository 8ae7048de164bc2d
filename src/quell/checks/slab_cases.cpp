#include "quell/checks/slab_cases.h"

namespace quell::checks {
namespace {

constexpr double dynamic_factor = 2.0;  ///< bound of an undamped anchor under a pulse

}  // namespace

AnchorLoad anchor_load(const BasinView& view, const PanelLoad& load, double empty_head, site::JointState joints) {
  const auto& slab = view.site.slab;
  const auto under = [&](const CaseWords& words, double hu, double y, double hd, double DAF) {
    return AnchorCase{{.hu = hu, .y = y, .hd = hd, .DAF = DAF, .gamma_c = slab.concrete_unit_weight, .s = view.slab_thickness},
                      &words};
  };
  AnchorLoad result;
  result.raise_design(under(case_words::drained, load.working, load.depth, load.sealed, dynamic_factor));
  result.raise_design(under(case_words::empty_drained, (1.0 - slab.drain_efficiency) * empty_head, 0.0, 0.0, 1.0));
  result.raise_unusual(under(case_words::undrained, load.failed, load.depth, load.sealed, 1.0));
  result.raise_unusual(under(case_words::empty_undrained, empty_head, 0.0, 0.0, 1.0));
  if (joints >= site::JointState::open)
    result.raise_design(under(case_words::open_joints, load.depth, load.depth, load.open, dynamic_factor));
  if (joints >= site::JointState::one_failed)
    result.raise_unusual(under(case_words::failed_joint, load.working, load.depth, load.one, 1.0));
  return result;
}

}  // namespace quell::checks
