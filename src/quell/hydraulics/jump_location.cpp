#include "quell/hydraulics/jump_location.h"

#include <algorithm>
#include <cmath>

#include "quell/base/roots.h"
#include "quell/hydraulics/jump_sections.h"

namespace quell::hydraulics {
namespace {

constexpr int intervals = 96;  ///< in which G is looked over for its sign

/// Everything known before the tailwater is.
struct Upstream {
  const JumpReach& reach;
  FlowProfile flow;
  double critical;
};

Outcome<Upstream> upstream_of(const JumpReach& reach) {
  if (!(reach.drag.force >= 0.0)) return no_answer("the drag of blocks must not be below zero");
  auto flow = supercritical_profile(reach.channel, reach.upstream_depth);
  if (!flow) return tl::unexpected(flow.error());
  const auto critical = critical_depth(reach.channel.section, reach.channel.discharge);
  if (!critical) return tl::unexpected(critical.error());
  return Upstream{reach, std::move(*flow), *critical};
}

struct Jump {
  double y1, F1, length;
};

/// The free jump with its toe at x.
Jump jump_at(const Upstream& upstream, double x) {
  const ChannelReach& channel = upstream.reach.channel;
  Jump jump{.y1 = upstream.flow.depth_at(x), .F1 = 0.0, .length = 0.0};
  jump.F1 = std::sqrt(froude_squared(channel, jump.y1));
  const JumpLength& length = upstream.reach.length;
  if (!length.law || jump.y1 >= upstream.critical) return jump;
  const auto y2 = sequent_depth(channel.section, {.y1 = jump.y1, .discharge = channel.discharge});
  if (y2) jump.length = std::max(0.0, length.factor * length.law(jump.F1, jump.y1, *y2));
  return jump;
}

/// G without and with the blocks.
class Excess {
 public:
  Excess(const Upstream& upstream, const FlowProfile& tailwater) : upstream_(upstream), tailwater_(tailwater) {}

  double at(double x, bool blocks) const {
    const auto jump = jump_at(upstream_, x);
    return balance(jump, tailwater_.depth_at(x + jump.length), blocks);
  }
  double balance(const Jump& jump, double y2, bool blocks) const {
    const ChannelReach& channel = upstream_.reach.channel;
    const double weight = 0.5 * channel.bed_slope * jump.length * (channel.section.area(jump.y1) + channel.section.area(y2));
    const double drag = blocks ? upstream_.reach.drag.force / water_unit_weight : 0.0;
    return momentum_function(channel.section, channel.discharge, jump.y1) + weight - drag -
           momentum_function(channel.section, channel.discharge, y2);
  }

 private:
  const Upstream& upstream_;
  const FlowProfile& tailwater_;
};

struct Piece {
  double start, end;
  bool blocks;
};

/// The reach in one piece, or in two at the blocks: there G leaps.
struct Pieces {
  std::array<Piece, 2> list;
  std::size_t count;
};
Pieces pieces_of(const JumpReach& reach) {
  const double L = reach.channel.length;
  const double row = reach.drag.position;
  if (reach.drag.force == 0.0 || row < 0.0) return {{{{0.0, L, false}, {}}}, 1};
  if (row >= L) return {{{{0.0, L, true}, {}}}, 1};
  return {{{{0.0, row, true}, {row, L, false}}}, 2};
}

/// Calls `visit(left, right, G left, G right, blocks)` downstream until it answers true.
template <class Visit>
void look_over(const Upstream& upstream, const Excess& excess, const Visit& visit) {
  const auto pieces = pieces_of(upstream.reach);
  for (std::size_t i = 0; i < pieces.count; ++i) {
    const Piece& piece = pieces.list[i];
    double left = piece.start;
    double at_left = excess.at(left, piece.blocks);
    for (int k = 1; k <= intervals; ++k) {
      const double right = k == intervals ? piece.end : piece.start + (piece.end - piece.start) * k / intervals;
      const double at_right = excess.at(right, piece.blocks);
      if (visit(left, right, at_left, at_right, piece.blocks)) return;
      left = right;
      at_left = at_right;
    }
  }
}

/// Depth that balances y1; critical depth where no depth does, because the drag takes more than there is.
double balancing_depth(const Upstream& upstream, const Excess& excess, const Jump& jump, bool blocks) {
  const auto surplus = [&](double y) { return excess.balance(jump, y, blocks); };
  if (surplus(upstream.critical) <= 0.0) return upstream.critical;
  double upper = 2.0 * upstream.critical;
  while (surplus(upper) > 0.0) upper *= 2.0;
  return find_root(surplus, upstream.critical, upper, upper * 1e-15).value_or(upstream.critical);
}

JumpToe toe_of(const Upstream& upstream, const Excess& excess, ToeState state, double x, bool blocks) {
  const auto jump = jump_at(upstream, x);
  const double y2 = balancing_depth(upstream, excess, jump, blocks);
  return {.state = state, .x = x, .y1 = jump.y1, .F1 = jump.F1, .y2 = y2, .length = jump.length};
}

/// The tailwater depth at which `measure(excess)`, which falls as the tailwater rises, vanishes.
template <class Measure>
Outcome<double> tailwater_where(const JumpReach& reach, std::string_view at_any_tailwater, const Measure& measure) {
  const auto upstream = upstream_of(reach);
  if (!upstream) return tl::unexpected(upstream.error());
  NoAnswer trouble{};
  const auto measured = [&](double tailwater) {
    const auto profile = subcritical_profile(reach.channel, tailwater);
    if (profile) return measure(*upstream, Excess(*upstream, *profile));
    trouble = profile.error();
    return std::nan("");
  };
  const double lowest = upstream->critical;
  const double at_lowest = measured(lowest);
  if (at_lowest <= 0.0) return no_answer(at_any_tailwater);
  double highest = 2.0 * lowest;
  while (measured(highest) > 0.0) highest *= 2.0;
  const auto depth = find_root(measured, lowest, highest, 1e-11 * lowest);
  if (!depth && !trouble.reason.empty()) return tl::unexpected(trouble);
  return depth;
}

}  // namespace

Outcome<JumpToe> locate_toe(const JumpReach& reach, double tailwater_depth) {
  const auto upstream = upstream_of(reach);
  if (!upstream) return tl::unexpected(upstream.error());
  const auto tailwater = subcritical_profile(reach.channel, tailwater_depth);
  if (!tailwater) return tl::unexpected(tailwater.error());
  const Excess excess(*upstream, *tailwater);
  const auto first = pieces_of(reach).list[0];
  if (excess.at(0.0, first.blocks) < 0.0)
    return toe_of(*upstream, excess, ToeState::drowned_at_upstream_control, 0.0, first.blocks);
  const double L = reach.channel.length;
  const bool blocks_at_end = reach.drag.force > 0.0 && reach.drag.position >= L;
  Outcome<JumpToe> toe = toe_of(*upstream, excess, ToeState::swept_out, L, blocks_at_end);
  look_over(*upstream, excess, [&](double left, double right, double at_left, double at_right, bool blocks) {
    if (!(at_left >= 0.0 && at_right <= 0.0)) return false;
    const auto x = find_root([&](double at) { return excess.at(at, blocks); }, left, right, 1e-12);
    if (x)
      toe = toe_of(*upstream, excess, ToeState::on_reach, *x, blocks);
    else
      toe = tl::unexpected(x.error());
    return true;
  });
  return toe;
}

Outcome<double> sweep_out_tailwater(const JumpReach& reach) {
  return tailwater_where(reach, "the jump stays on the reach at any tailwater",
                         [](const Upstream& upstream, const Excess& excess) {
                           double least = excess.at(0.0, pieces_of(upstream.reach).list[0].blocks);
                           look_over(upstream, excess, [&](double, double, double, double at_right, bool) {
                             least = std::min(least, at_right);
                             return false;
                           });
                           return least;
                         });
}

Outcome<double> drowning_tailwater(const JumpReach& reach) {
  return tailwater_where(
      reach, "the jump drowns the upstream control at any tailwater",
      [](const Upstream& upstream, const Excess& excess) { return excess.at(0.0, pieces_of(upstream.reach).list[0].blocks); });
}

double horizontal_profile_distance(const WideApron& apron, const DepthPair& depths) {
  const auto& [q, n] = apron;
  return (0.75 * q * q / gravity * (std::pow(depths.end, 4.0 / 3.0) - std::pow(depths.start, 4.0 / 3.0)) -
          3.0 / 13.0 * (std::pow(depths.end, 13.0 / 3.0) - std::pow(depths.start, 13.0 / 3.0))) /
         (n * n * q * q);
}

}  // namespace quell::hydraulics
