#include "quell/hydraulics/jump_lengths.h"

#include <algorithm>
#include <cmath>

#include "quell/base/curve.h"
#include "quell/hydraulics/jump_length_fits.h"

namespace quell::hydraulics {

double froude_number_of(const SequentDepths& depths) {
  const double Y = depths.y2 / depths.y1;
  return std::sqrt(0.5 * Y * (Y + 1.0));
}

std::span<const LengthFit> jump_length_fits() {
  static constexpr LengthFit fits[] = {
      {"Peterka 1984", fit::em25_range, fit::em25},
      {"Hager 1992", fit::hager_range, fit::hager},
      {"Elevatorski 1959", fit::unpublished, fit::elevatorski},
      {"Smetana 1934", fit::unpublished, fit::smetana},
      {"Bakhmeteff and Matzke 1936", fit::bakhmeteff_range, fit::bakhmeteff},
      {"Kinney 1935", fit::unpublished, fit::kinney},
      {"Aravin 1935", fit::unpublished, fit::aravin},
      {"Pavlovski 1940", fit::unpublished, fit::pavlovski},
      {"Chertousov 1935", fit::unpublished, fit::chertousov},
      {"Silvester 1964", fit::unpublished, fit::silvester},
      {"Ivanchenko 1936", fit::unpublished, fit::ivanchenko},
      {"Woycicki 1931", fit::unpublished, fit::woycicki},
      {"Marques et al. 1997", fit::marques_range, fit::marques},
  };
  return fits;
}

Outcome<LengthBand> jump_length_band(const JumpShape& jump) {
  if (!fit::unpublished.contains(jump.F1))
    return bad_input("F1", jump.F1, fit::unpublished.lowest, fit::unpublished.highest,
                     "no length is published for a jump without a roller, or for one so strong");
  LengthBand band;
  for (const LengthFit& one : jump_length_fits()) {
    if (!one.F1.contains(jump.F1)) continue;
    const double length = one.length(jump);
    band.lowest = band.count == 0 ? length : std::min(band.lowest, length);
    band.highest = std::max(band.highest, length);
    ++band.count;
  }
  return band;
}

double roller_length_narrow(const RollerInput& input) {
  return std::max(0.0, input.y1 * (100.0 * std::tanh(input.F1 / 12.5) - 12.0));
}

double jump_length_trapezoidal(const TrapezoidLengthInput& input) {
  static const Curve& factor = curve("sienchin_length");
  return factor.at(input.m) * (input.y2 - input.y1);
}

namespace record {
namespace {
constexpr Symbol band_in[] = {{"F1", "Froude number before the jump", dimension::none, fit::unpublished},
                              {"y1", "depth before the jump", dimension::length, above_zero},
                              {"y2", "sequent depth", dimension::length, above_zero}};
constexpr Symbol band_out[] = {{"L_low", "shortest published length", dimension::length, above_zero},
                               {"L_high", "longest published length", dimension::length, above_zero},
                               {"N", "number of formulas meant for this Froude number", dimension::none, {1.0, no_limit}}};
constexpr Symbol trapezoid_in[] = {{"m", "side slope, horizontal to 1 vertical", dimension::none, {0.0, 1.5}},
                                   {"y1", "depth before the jump", dimension::length, above_zero},
                                   {"y2", "sequent depth", dimension::length, above_zero}};
constexpr Symbol triangle_in[] = {{"F1", "Froude number with the hydraulic depth", dimension::none, fit::unpublished},
                                  {"y1", "depth before the jump", dimension::length, above_zero}};
constexpr Symbol circle_in[] = {{"y2", "sequent depth", dimension::length, above_zero}};
constexpr Symbol length_out[] = {{"Lj", "length of the jump", dimension::length, {0.0, no_limit}}};
constexpr Symbol roller_out[] = {{"Lr", "length of the roller", dimension::length, {0.0, no_limit}}};
}  // namespace

const Method jump_length_band{
    .id = "jump.length.band",
    .title = "Spread of the published lengths of the jump",
    .kind = EquationKind::procedure,
    .equation =
        "Lowest and highest of the lengths by Aravin, Bakhmeteff and Matzke, Chertousov, Elevatorski, Hager, Ivanchenko, "
        "Kinney, Marques, Pavlovski, Peterka, Silvester, Smetana and Woycicki, each inside its range of Froude numbers.",
    .inputs = band_in,
    .outputs = band_out,
    .source = "momentum",
    .place = "a count over the methods jump.length.*; nothing is weighed",
    .provenance = Provenance::derived,
    .accuracy = "the band is the uncertainty itself; its edges move where a formula enters or leaves its range",
    .remarks =
        "The authors end the jump at different sections, so that the band is wider than the scatter of one experiment. "
        "Lengths of the roller are left out.",
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      if (in[2] < in[1]) return bad_input("y2", in[2], in[1], no_limit, "the depth after a jump is above that before it");
      const auto band = hydraulics::jump_length_band({.F1 = in[0], .y1 = in[1], .y2 = in[2]});
      if (!band) return tl::unexpected(band.error());
      out[0] = band->lowest;
      out[1] = band->highest;
      out[2] = band->count;
      return {};
    }};

const Method jump_length_triangular{.id = "jump.length.triangular",
                                    .title = "Length of the jump in a triangular section",
                                    .equation = "Lj = 4.26*y1*(F1 - 1)^0.695",
                                    .inputs = triangle_in,
                                    .outputs = length_out,
                                    .source = "silvester_1964",
                                    .place = "triangle with side slopes of 0.473 horizontal to 1 vertical",
                                    .provenance = Provenance::memory,
                                    .accuracy = "about 20 %; one side slope was tested",
                                    .remarks = "No range of Froude numbers is known; flatter sides have not been tested.",
                                    .evaluate = fit::from_froude<fit::silvester_triangle>};

const Method jump_length_trapezoidal{
    .id = "jump.length.trapezoidal",
    .title = "Length of the jump in a trapezoidal section",
    .equation = "Lj = sienchin_length(m)*(y2 - y1)",
    .inputs = trapezoid_in,
    .outputs = length_out,
    .source = "sienchin",
    .place = "table of the factor over the side slope, as attributed in teaching texts",
    .provenance = Provenance::memory,
    .accuracy = "about 20 %; the original tests were not seen",
    .remarks = "Jumps in flat-sided sections have wings and return flow along the banks: a model is advisable.",
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      if (in[2] < in[1]) return bad_input("y2", in[2], in[1], no_limit, "the depth after a jump is above that before it");
      out[0] = hydraulics::jump_length_trapezoidal({.m = in[0], .y1 = in[1], .y2 = in[2]});
      return {};
    }};

const Method jump_length_circular{.id = "jump.length.circular",
                                  .title = "Length of the jump in a circular conduit with a free surface",
                                  .equation = "Lj = 6*y2",
                                  .inputs = circle_in,
                                  .outputs = length_out,
                                  .source = "stahl_hager_1999",
                                  .place = "length of the jump",
                                  .provenance = Provenance::memory,
                                  .accuracy = "about 15 %",
                                  .remarks = "Not where the conduit fills after the jump.",
                                  .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                    out[0] = 6.0 * in[0];
                                    return {};
                                  }};

const Method roller_length_circular{.id = "jump.roller_length.circular",
                                    .title = "Length of the roller in a circular conduit with a free surface",
                                    .equation = "Lr = 4*y2",
                                    .inputs = circle_in,
                                    .outputs = roller_out,
                                    .source = "stahl_hager_1999",
                                    .place = "length of the roller",
                                    .provenance = Provenance::memory,
                                    .accuracy = "about 15 %",
                                    .remarks = "Not where the conduit fills after the jump.",
                                    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                      out[0] = 4.0 * in[0];
                                      return {};
                                    }};

}  // namespace record
}  // namespace quell::hydraulics
