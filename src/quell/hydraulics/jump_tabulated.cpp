#include "quell/hydraulics/jump_tabulated.h"

#include <array>
#include <cmath>
#include <limits>

#include "quell/base/roots.h"
#include "quell/hydraulics/specific_energy.h"

namespace quell::hydraulics {

Outcome<TabulatedSequentDepth> sequent_depth(const TabulatedSection& section, const SectionJumpInput& input) {
  const auto& [y1, discharge] = input;
  if (!(y1 > 0.0) || !(discharge > 0.0)) return no_answer("the jump needs a depth and a discharge above zero");
  const double F1 = froude_number(section, discharge, y1);
  if (!(F1 > 1.0)) return bad_input("F1", F1, 1.0, no_limit, "flow that is not supercritical makes no jump");
  const double target = momentum_function(section, discharge, y1);
  const auto excess = [&](double y) { return momentum_function(section, discharge, y) - target; };
  TabulatedSequentDepth found{.y2 = 0.0, .count = 0};
  // The momentum function turns only at critical depths and, where a level berm makes the width leap, between two layers: from
  // one such depth to the next it is monotonic.
  double from = y1;
  while (std::isfinite(from)) {
    const Layer layer = section.layer_at(from);
    const auto critical = layer.critical_depths(discharge);
    double highest = layer.top;
    if (!std::isfinite(highest)) {
      highest = 2.0 * std::max(from, critical.to_subcritical.value_or(from));
      while (excess(highest) < 0.0) highest *= 2.0;
    }
    for (const auto& to : {critical.to_supercritical, critical.to_subcritical, std::optional(highest)}) {
      if (!to || !(*to > from)) continue;
      if (from > y1 && excess(from) < 0.0 && excess(*to) >= 0.0) {
        const auto depth = find_root(excess, from, *to, 1e-15 * *to);
        if (!depth) return tl::unexpected(depth.error());
        if (++found.count == 1) found.y2 = *depth;
      }
      from = *to;
    }
    if (!std::isfinite(layer.top)) break;
  }
  if (found.count == 0) return no_answer("no sequent depth was found");
  return found;
}

namespace record {
namespace {
constexpr double must_be_given = std::numeric_limits<double>::quiet_NaN();
constexpr Symbol jump_in[] = {
    {"y1", "depth before the jump above the lowest point", dimension::length, above_zero},
    {"Q", "discharge", dimension::discharge, above_zero},
    {"x", "stations of the points, from bank to bank", dimension::length, any_value, must_be_given, {}, true},
    {"z", "levels of the points", dimension::length, any_value, must_be_given, {}, true}};
constexpr Symbol y2_out[] = {{"y2", "sequent depth above the lowest point", dimension::length, above_zero}};

std::string_view tabulated_condition(std::span<const double> in) {
  const auto section = TabulatedSection::after(in, 2);
  if (!section) return section.error().reason;
  const auto found = sequent_depth(*section, {.y1 = in[0], .discharge = in[1]});
  if (!found) return found.error().reason;
  if (found->count > 1) return "the section has several depths with that momentum: the lowest is given";
  if (found->y2 > section->bank_depth()) return water_above_the_bank;
  return {};
}
}  // namespace

const Method sequent_depth_tabulated{
    .id = "jump.sequent_depth.tabulated",
    .title = "Sequent depth in a surveyed section",
    .kind = EquationKind::procedure,
    .equation =
        "Momentum function Q^2/(g A) + A ybar equal before and after, with A and A ybar summed over the panels; the lowest "
        "such depth above critical depth.",
    .inputs = jump_in,
    .outputs = y2_out,
    .source = "momentum",
    .place = "momentum function equal before and after, horizontal frictionless bed",
    .provenance = Provenance::derived,
    .accuracy = "solved to 1e-12; jumps over uneven beds are less steady than rectangular ones",
    .condition = tabulated_condition,
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      const auto section = TabulatedSection::after(in, 2);
      if (!section) return tl::unexpected(section.error());
      const auto found = sequent_depth(*section, {.y1 = in[0], .discharge = in[1]});
      if (!found) return tl::unexpected(found.error());
      out[0] = found->y2;
      return {};
    }};

}  // namespace record
}  // namespace quell::hydraulics
