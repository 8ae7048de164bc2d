#include "quell/hydraulics/jump_undular.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "quell/base/roots.h"

namespace quell::hydraulics {

double undular_crest_rise(const RollerInput& input) noexcept {
  const double rise = sequent_depth({.y1 = input.y1, .V1 = input.F1 * std::sqrt(gravity * input.y1)}) - input.y1;
  return std::max(rise, std::min(2.0 * rise, 0.73 * input.y1));
}

Outcome<double> undular_wave_length(const WaveLengthInput& input) {
  const double froude_squared = input.F2 * input.F2;
  if (!(input.F2 > 0.0) || !(froude_squared < 1.0))
    return bad_input("F2", input.F2, 0.0, 1.0, "only behind a jump, in subcritical flow, do waves stand");
  // 1 - x^2/3 < tanh(x)/x < 1/x encloses the root x = k y2; a little more where tanh is 1 in double precision.
  const auto excess = [&](double x) { return std::tanh(x) / x - froude_squared; };
  const auto x = find_root(excess, std::sqrt(3.0 * (1.0 - froude_squared)), (1.0 + 1e-12) / froude_squared, 0.0);
  if (!x) return x;
  return 2.0 * std::numbers::pi * input.y2 / *x;
}

namespace record {
namespace {
constexpr Symbol crest_in[] = {{"F1", "Froude number before the jump", dimension::none, {1.0, 1.7}},
                               {"y1", "depth before the jump", dimension::length, above_zero}};
constexpr Symbol crest_out[] = {{"a", "rise of the first crest above y1", dimension::length, {0.0, no_limit}},
                                {"y_crest", "depth at the first crest", dimension::length, above_zero}};
constexpr Symbol wave_in[] = {{"F2",
                               "Froude number behind the front",
                               dimension::none,
                               {0.3, 0.999},
                               std::numeric_limits<double>::quiet_NaN(),
                               {0.0, 1.0}},
                              {"y2", "mean depth behind the front", dimension::length, above_zero}};
constexpr Symbol wave_out[] = {{"lambda", "wave length", dimension::length, above_zero}};
}  // namespace

const Method undular_first_crest{
    .id = "jump.undular.first_crest",
    .title = "First crest of the undular jump",
    .equation = "y2 = y1/2*(sqrt(1 + 8*F1^2) - 1); a = max(y2 - y1, min(2*(y2 - y1), 0.73*y1)); y_crest = y1 + a",
    .inputs = crest_in,
    .outputs = crest_out,
    .source = "treske_1994",
    .place = "rule of quell, fitted to the measured first crests of this source and of Favre 1935",
    .provenance = Provenance::derived,
    .accuracy =
        "measured crests lie 6 % below to 11 % above it up to F1 = 1.26, but one 23 % below at 1.06; above, 18 % below to even",
    .remarks =
        "Fitted to surges over still or slowly moving water; a standing jump with developed inflow and shocks from the walls "
        "may "
        "lie lower. Set walls and bank protection by y_crest. Not above F1 = 1.7, where it would ask for far too much.",
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      if (!(in[0] >= 1.0)) return bad_input("F1", in[0], 1.0, no_limit, "flow that is not supercritical makes no jump");
      out[0] = undular_crest_rise({.F1 = in[0], .y1 = in[1]});
      out[1] = in[1] + out[0];
      return {};
    }};

const Method undular_wave_length{
    .id = "jump.undular.wave_length",
    .title = "Length of the standing waves behind the front of an undular jump",
    .kind = EquationKind::residual,
    .equation = "F2^2 = tanh(2*pi*y2/lambda)/(2*pi*y2/lambda)",
    .inputs = wave_in,
    .outputs = wave_out,
    .source = "momentum",
    .place = "linear theory of waves whose speed is that of the flow, uniform velocity, constant depth",
    .provenance = Provenance::derived,
    .accuracy = "exact for small waves; those near the front are longer",
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      return store(hydraulics::undular_wave_length({.F2 = in[0], .y2 = in[1]}), out);
    }};

}  // namespace record
}  // namespace quell::hydraulics
