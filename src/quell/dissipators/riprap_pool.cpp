// Riprap-lined pool at an outlet: the jet digs into a pool whose lining of stone is made for it. The level of the option is
// that of the outlet's invert, on the river bed.
//
// Source: Hydraulic Engineering Circular 14, chapter 10, recalled.
#include <algorithm>
#include <cmath>

#include "quell/base/constants.h"
#include "quell/base/quantity_text.h"
#include "quell/base/roots.h"
#include "quell/dissipators/parts.h"

namespace quell::dissipators {

const Dissipator& riprap_pool();

namespace {

constexpr double smallest_stone = 0.1;  ///< D50 over the depth at the brink, range of the tests
constexpr double usual_stone = 0.45;    ///< upper end of the best range
constexpr Rule published{"hec14_2006", "sec. 10.1", Provenance::memory};

constexpr Symbol scour_in[] = {{"ye", "depth at the brink", dimension::length, above_zero},
                               {"Vo", "velocity at the brink", dimension::velocity, above_zero},
                               {"D50", "median stone size", dimension::length, above_zero},
                               {"TW", "tailwater above the outlet's invert", dimension::length, {0.0, no_limit}}};
constexpr Symbol scour_out[] = {{"Fo", "Froude number at the brink", dimension::none, above_zero},
                                {"Co", "tailwater term", dimension::none, above_zero},
                                {"hs", "depth of the pool", dimension::length, any_value}};
constexpr Symbol pool_in[] = {{"hs", "depth of the pool", dimension::length, above_zero},
                              {"Wo", "width of the outlet", dimension::length, above_zero}};
constexpr Symbol pool_out[] = {{"Ls", "length of the pool", dimension::length, above_zero},
                               {"LB", "length of pool and apron", dimension::length, above_zero},
                               {"WB", "width at the downstream end", dimension::length, above_zero}};

double tailwater_term(double ratio) noexcept {
  return std::clamp(4.0 * ratio - 1.6, 1.4, 2.4);
}

/// Depth of the pool over the depth at the brink.
double pool_ratio(double stone_ratio, double froude, double tailwater_ratio) noexcept {
  return 0.86 * std::pow(stone_ratio, -0.55) * froude - tailwater_term(tailwater_ratio);
}

const Method scour_method{
    .id = "basin.pool_depth.riprap_pool",
    .title = "Depth of the riprap-lined pool",
    .equation = "Fo = Vo/sqrt(g*ye); Co = min(2.4, max(1.4, 4*TW/ye - 1.6)); hs = ye*(0.86*(D50/ye)^(-0.55)*Fo - Co)",
    .inputs = scour_in,
    .outputs = scour_out,
    .source = "hec14_2006",
    .place = "sec. 10.1; at TW/ye of 0.75 the published term steps from 1.4 to the line, which meets it there",
    .provenance = Provenance::memory,
    .accuracy = "a fit to tests with D50 of 0.1 to 0.7 brink depths",
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      out[0] = in[1] / std::sqrt(gravity * in[0]);
      out[1] = tailwater_term(in[3] / in[0]);
      out[2] = in[0] * pool_ratio(in[2] / in[0], out[0], in[3] / in[0]);
      return {};
    }};

const Method pool_method{.id = "basin.dimensions.riprap_pool",
                         .title = "Length and width of the riprap-lined pool",
                         .equation = "Ls = max(10*hs, 3*Wo); LB = max(15*hs, 4*Wo); WB = Wo + 2*LB/3",
                         .inputs = pool_in,
                         .outputs = pool_out,
                         .source = "hec14_2006",
                         .place = "sec. 10.1",
                         .provenance = Provenance::memory,
                         .accuracy = "rule of practice",
                         .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                           out[0] = std::max(10.0 * in[0], 3.0 * in[1]);
                           out[1] = std::max(15.0 * in[0], 4.0 * in[1]);
                           out[2] = in[1] + 2.0 * out[1] / 3.0;
                           return {};
                         }};

constexpr Limit limits[] = {
    {.id = "riprap_pool.froude_largest_discharge",
     .title = "Froude number of the outlet at the largest discharge",
     .measure = Measure::froude_number,
     .sense = LimitSense::at_most,
     .limit = 3.0,
     .otherwise = Status::fails,
     .advice = "Above 3 use a concrete basin.",
     .source = "hec14_2006",
     .place = "screening table of 1975, as reproduced",
     .provenance = Provenance::seen,
     .largest_only = true},
    {.id = "riprap_pool.froude_highest",
     .title = "Highest Froude number of the outlet",
     .measure = Measure::froude_number,
     .sense = LimitSense::at_most,
     .limit = 3.0,
     .otherwise = Status::caution,
     .advice = "Small discharges run above the tested range: check that the stone bears them.",
     .source = "hec14_2006",
     .place = "screening table of 1975, as reproduced",
     .provenance = Provenance::seen},
};

/// Stone that serves one discharge: as asked for, or the largest up to 0.45 of the brink depth whose pool is two stones deep.
double stone_of(const site::ToeFlow& flow, double tailwater, const Setting& setting) {
  if (setting.choices.pool_stone_size > 0.0) return setting.choices.pool_stone_size;
  const auto spare = [&](double ratio) { return pool_ratio(ratio, flow.F1, tailwater / flow.y1) - 2.0 * ratio; };
  if (spare(usual_stone) >= 0.0) return usual_stone * flow.y1;
  if (spare(smallest_stone) <= 0.0) return smallest_stone * flow.y1;
  const auto ratio = find_root(spare, smallest_stone, usual_stone, 1e-12);
  return (ratio ? *ratio : smallest_stone) * flow.y1;
}

class RiprapPool final : public Dissipator {
 public:
  const TypeRecord& record() const override {
    static constexpr std::string_view approach[] = {"outlet level with the river bed", "stone at hand, sound and angular"};
    static constexpr std::string_view failures[] = {"stone too small, carried out of the pool",
                                                    "a filter left out, and the bed drawn through the stone",
                                                    "undermined at its downstream end"};
    static const Method* const methods[] = {&scour_method, &pool_method};
    static const TypeRecord record{.id = "riprap_pool",
                                   .name = "Riprap-lined pool",
                                   .summary =
                                       "Pool lined with stone at an outlet, shaped as the jet would dig it; for low Froude "
                                       "numbers and much debris.",
                                   .source = "hec14_2006",
                                   .place = "sec. 10.1",
                                   .provenance = Provenance::memory,
                                   .action = Action::pool,
                                   .level_rule = LevelRule::river_bed,
                                   .limits = limits,
                                   .approach = approach,
                                   .failure_modes = failures,
                                   .model = "stone beyond 0.1 to 0.7 of the brink depth, or an outlet above the bed",
                                   .walls_from_tailwater = true,
                                   .methods = methods};
    return record;
  }

  TailwaterNeed tailwater_need(const site::ToeFlow&, const Setting&) const noexcept override { return {}; }

  /// With the stone of the type's own choice and no tailwater, the longest case.
  double length(const site::ToeFlow& flow, const Setting& setting) const noexcept override {
    const double stone = setting.choices.pool_stone_size > 0.0 ? setting.choices.pool_stone_size : usual_stone * flow.y1;
    const double depth = flow.y1 * pool_ratio(stone / flow.y1, flow.F1, 0.0);
    return std::max(15.0 * depth, 4.0 * setting.width);
  }

  Structure size(const SizingInput& input, Working* working) const override {
    const Pool pool = pool_of(input);
    const double width = input.setting.width;
    Structure structure;
    structure.is_paved = false;
    structure.governing_length_discharge = pool.discharge;
    const double depth = std::max(pool.depth, 0.0);
    const double pool_length = std::max(10.0 * depth, 3.0 * width);
    structure.length = std::max(longest(input), std::max(15.0 * depth, 4.0 * width));
    structure.end_width = width + 2.0 * structure.length / 3.0;
    structure.floor = {
        {0.0, 0.0}, {2.0 * depth, -depth}, {pool_length - 2.0 * depth, -depth}, {pool_length, 0.0}, {structure.length, 0.0}};
    const auto mean_width = [&](double from, double to) {
      return width + (structure.end_width - width) * (from + to) / (2.0 * structure.length);
    };
    structure.riprap_volume = 3.0 * pool.stone * pool_length * mean_width(0.0, pool_length) +
                              2.0 * pool.stone * (structure.length - pool_length) * mean_width(pool_length, structure.length);
    constexpr std::string_view deciding = "of the discharge that digs deepest";
    trace(working, scour_method,
          {told(pool.brink_depth, deciding), told(pool.velocity, deciding),
           told(pool.stone, "as given, or the largest that the rule takes"),
           told(pool.tailwater, "low, above the outlet, at that discharge")},
          {pool.froude, tailwater_term(pool.tailwater / pool.brink_depth), pool.depth}, "depth of the pool");
    trace(working, pool_method, {told(depth, "the pool's, never below 0"), given(width, "basin.width")},
          {pool_length, std::max(15.0 * depth, 4.0 * width), width + 2.0 * std::max(15.0 * depth, 4.0 * width) / 3.0},
          "length and width of the pool");
    return structure;
  }

  Findings findings(const SizingInput& input, const Structure& structure) const override {
    const Pool pool = pool_of(input);
    return {
        worked(scour_method, limit_finding("riprap_pool.stone_least", "Median stone over the depth at the brink",
                                           pool.stone / pool.brink_depth, LimitSense::at_least, smallest_stone * (1.0 - 1e-9),
                                           dimension::none, Status::fails,
                                           "At the discharge that governs the pool, " + at_discharge(pool.discharge) + ".",
                                           "Use larger stone, or a concrete basin.", published)),
        worked(scour_method,
               limit_finding("riprap_pool.stone_largest", "Median stone over the depth at the brink, upper end",
                             pool.stone / pool.brink_depth, LimitSense::at_most, 0.7, dimension::none, Status::caution,
                             "Larger stone was not tested.", "Use smaller stone and a deeper pool.", published)),
        worked(scour_method,
               limit_finding("riprap_pool.depth", "Depth of the pool over the median stone", pool.depth / pool.stone,
                             LimitSense::at_least, 2.0 * (1.0 - 1e-9), dimension::none, Status::fails,
                             "A shallower pool has no roller above the stone.", "Use smaller stone.", published)),
        keyed("basin.choices.pool_stone_size",
              worked(scour_method, choice_note("riprap_pool.stone", "Median size of the stone", pool.stone, dimension::length,
                                               "Three stones thick in the pool, " +
                                                   quantity_token(structure.riprap_volume, dimension::volume) +
                                                   " in all, on a filter; a cutoff at the downstream end.",
                                               published)))};
  }

  void trace_tailwater_need(const site::ToeFlow&, const Setting&, Working&) const override {}

 private:
  struct Pool {
    double depth = -no_limit, stone = 0.0, brink_depth = 1.0, velocity = 0.0, froude = 0.0, tailwater = 0.0, discharge = 0.0;
  };

  double longest(const SizingInput& input) const {
    double longest = 0.0;
    for (const auto& flow : input.flows) longest = std::max(longest, length(flow, input.setting));
    return longest;
  }

  /// The stone is that of the largest discharge; the deepest pool over all discharges in the low tailwater case.
  static Pool pool_of(const SizingInput& input) {
    const auto depth_at = [&](std::size_t i) { return std::max(0.0, input.tailwater_levels[i][0] - input.apron_level); };
    const double stone = stone_of(sizing_flow(input), depth_at(input.flows.size() - 1), input.setting);
    Pool pool;
    for (std::size_t i = 0; i < input.flows.size(); ++i) {
      const auto& flow = input.flows[i];
      const double depth = flow.y1 * pool_ratio(stone / flow.y1, flow.F1, depth_at(i) / flow.y1);
      if (depth > pool.depth) pool = {depth, stone, flow.y1, flow.V1, flow.F1, depth_at(i), flow.discharge};
    }
    return pool;
  }
};

}  // namespace

const Dissipator& riprap_pool() {
  static const RiprapPool type;
  return type;
}

}  // namespace quell::dissipators
