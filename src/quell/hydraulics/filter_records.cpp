// Records of filters.h.
#include <algorithm>

#include "quell/hydraulics/filters.h"

namespace quell::hydraulics::record {
namespace {
constexpr Symbol gradation_in[] = {{"De", "size that three fifths of the mix must have", dimension::length, above_zero},
                                   {"Di", "size that the lighter half must end at", dimension::length, above_zero},
                                   {.name = "k",
                                    .meaning = "largest over median size",
                                    .dimension = dimension::none,
                                    .range = {1.26, 1.70},
                                    .possible = {1.0, no_limit}}};
constexpr Symbol gradation_out[] = {{"D15", "lower limit: 15 per cent finer", dimension::length, above_zero},
                                    {"D50", "half finer", dimension::length, above_zero},
                                    {"D85", "85 per cent finer", dimension::length, above_zero},
                                    {"D100", "largest", dimension::length, above_zero},
                                    {"u", "upper limit over lower, all sizes", dimension::none, above_zero}};
constexpr Symbol base_in[] = {{"d15", "finer layer: 15 per cent finer", dimension::length, above_zero},
                              {"d50", "finer layer: half finer", dimension::length, above_zero},
                              {"d85", "finer layer: 85 per cent finer", dimension::length, above_zero}};
constexpr Symbol on_base_out[] = {{"D15a", "least D15 of the filter", dimension::length, above_zero},
                                  {"D15b", "largest D15", dimension::length, above_zero},
                                  {"D50b", "largest D50", dimension::length, above_zero}};
constexpr Symbol cover_in[] = {{"D15", "coarser layer: 15 per cent finer", dimension::length, above_zero},
                               {"D50", "coarser layer: half finer", dimension::length, above_zero}};
constexpr Symbol under_cover_out[] = {{"d15a", "least D15 of the filter", dimension::length, above_zero},
                                      {"d15b", "largest D15", dimension::length, above_zero},
                                      {"d50a", "least D50", dimension::length, above_zero},
                                      {"d85a", "least D85", dimension::length, above_zero}};
constexpr Symbol chain_in[] = {{"d15", "bed: 15 per cent finer", dimension::length, above_zero},
                               {"d50", "bed: half finer", dimension::length, above_zero},
                               {"d85", "bed: 85 per cent finer", dimension::length, above_zero},
                               {"D15", "stone: 15 per cent finer", dimension::length, above_zero},
                               {"D50", "stone: half finer", dimension::length, above_zero},
                               {"D85", "stone: 85 per cent finer", dimension::length, above_zero}};
constexpr Symbol chain_out[] = {
    {"n", "layers", dimension::none, {0.0, 5.0}},
    {"D15F", "middle D15 of the lowest layer; 0 without one", dimension::length, {0.0, no_limit}},
    {"s", "D85 over D15 of the layers", dimension::none, above_zero},
    {"w", "half-width of the bands: limits over and under the middle", dimension::none, above_zero}};
constexpr Symbol launch_in[] = {{"T", "thickness of the stone on the settled slope", dimension::length, above_zero},
                                {"D", "scour below the stone", dimension::length, above_zero},
                                {"f", "factor for what is lost", dimension::none, {1.25, 1.75}, 1.5}};
constexpr Symbol launch_out[] = {{"V", "volume per width", dimension::area, above_zero}};

Outcome<void> sizes_rise(std::span<const double> in, const char* middle, const char* upper) {
  if (in[1] < in[0]) return bad_input(middle, in[1], in[0], no_limit, "sizes rise with the share that is finer");
  if (in[2] < in[1]) return bad_input(upper, in[2], in[1], no_limit, "sizes rise with the share that is finer");
  return {};
}
}  // namespace

const Method riprap_gradation{
    .id = "protection.gradation.straight_line",
    .title = "Gradation of riprap from the sizes that two rules ask for",
    .equation = "gr = k^1.4; D50 = max(Di, De*gr^(1/7)); D15 = D50/sqrt(gr); D85 = D50*sqrt(gr); D100 = k*D50; u = 5^(1/3)/k",
    .inputs = gradation_in,
    .outputs = gradation_out,
    .source = "em1601_1991",
    .place = "heaviest stone of the upper limit at most five times the lower median's; De as the size that 60 per cent exceed",
    .provenance = Provenance::memory,
    .accuracy = "exact for a straight line over the logarithm of the size",
    .remarks =
        "k from 1.26 to 1.70 gives D85/D15 from 1.38 to 2.10, where 1.4 to 2.2 is usual and below 1.4 counts as uniform.",
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      const auto gradation = hydraulics::riprap_gradation({.De = in[0], .Di = in[1], .k = in[2]});
      out[0] = gradation.D15;
      out[1] = gradation.D50;
      out[2] = gradation.D85;
      out[3] = gradation.D100;
      out[4] = gradation.band;
      return {};
    }};

const Method filter_on_base{.id = "filter.limits.on_base",
                            .title = "Filter on a finer layer: what it must hold and drain",
                            .equation = "D15a = 5*d15; D15b = min(40*d15, 5*d85); D50b = 40*d50",
                            .inputs = base_in,
                            .outputs = on_base_out,
                            .source = "hds_6_2001",
                            .place = "problem 6.11.2: D15 ratio from 5 to 40, D50 ratio below 40, D15F/d85 below 5",
                            .provenance = Provenance::seen,
                            .accuracy = "rule of design; no more than 5 per cent of fines in the filter",
                            .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                              if (auto fine = sizes_rise(in, "d50", "d85"); !fine) return fine;
                              const auto limits = hydraulics::filter_on_base({.d15 = in[0], .d50 = in[1], .d85 = in[2]});
                              out[0] = limits.D15_least;
                              out[1] = limits.D15_most;
                              out[2] = limits.D50_most;
                              return {};
                            }};

const Method filter_under_cover{.id = "filter.limits.under_cover",
                                .title = "Filter under a coarser layer: what must not fall into it",
                                .equation = "d15a = D15/40; d15b = D15/5; d50a = D50/40; d85a = D15/5",
                                .inputs = cover_in,
                                .outputs = under_cover_out,
                                .source = "hds_6_2001",
                                .place = "problem 6.11.2, the same ratios read from above",
                                .provenance = Provenance::seen,
                                .accuracy = "rule of design",
                                .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                  const auto limits = hydraulics::filter_under_cover({.D15 = in[0], .D50 = in[1]});
                                  out[0] = limits.D15_least;
                                  out[1] = limits.D15_most;
                                  out[2] = limits.D50_least;
                                  out[3] = limits.D85_least;
                                  return {};
                                }};

const Method filter_chain{
    .id = "filter.layers.fewest",
    .title = "Layers of a filter between bed and stone",
    .kind = EquationKind::procedure,
    .equation =
        "The fewest layers for which the limits on a finer and under a coarser layer hold between all neighbours. All have one "
        "shape s = D85/D15, the least of 3, 4, 5, 6, 8 that does, with D50 = sqrt(s) D15; they stand at equal shares, on a "
        "logarithmic scale, of the steps allowed; each size may lie by the factor w above or below its middle, the largest up "
        "to "
        "1.5 for which the worst edges of neighbours still agree, wanted at least 1.25.",
    .inputs = chain_in,
    .outputs = chain_out,
    .source = "hds_6_2001",
    .place = "ratios of problem 6.11.2, applied to one layer after the other",
    .provenance = Provenance::derived,
    .accuracy = "exact for the ratios and the shape assumed",
    .remarks = "The shapes and the width of the bands are a choice, not a published rule.",
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      if (auto fine = sizes_rise(in, "d50", "d85"); !fine) return fine;
      if (auto fine = sizes_rise(in.subspan(3), "D50", "D85"); !fine) return fine;
      const auto chain = hydraulics::filter_chain(
          {.base = {.d15 = in[0], .d50 = in[1], .d85 = in[2]}, .cover = {{in[3], in[3]}, {in[4], in[4]}, {in[5], in[5]}}});
      if (!chain.closes)
        return no_answer("no layer that drains the bed can hold it: the bed is too even, or hardly finer than the stone");
      out[0] = static_cast<double>(chain.layers.size());
      out[1] = chain.layers.empty() ? 0.0 : chain.layers.front().D15.most / chain.band;
      out[2] = chain.shape;
      out[3] = chain.band;
      return {};
    }};

const Method launch_volume{.id = "protection.launching_volume.slope_1_to_2",
                           .title = "Stone that must lie ready to settle into the scour",
                           .equation = "V = f*sqrt(5)*T*D",
                           .inputs = launch_in,
                           .outputs = launch_out,
                           .source = "em1601_1991",
                           .place = "launchable stone on 1V:2H; 1.25 in the dry to 4.6 m, 1.5 deeper or under water, 1.75 both",
                           .provenance = Provenance::memory,
                           .accuracy = "rule of design",
                           .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                             out[0] = hydraulics::launch_volume({.T = in[0], .D = in[1], .f = in[2]});
                             return {};
                           }};

}  // namespace quell::hydraulics::record
