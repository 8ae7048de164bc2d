#include "quell/hydraulics/crest_approach.h"

#include <cmath>

#include "quell/base/roots.h"

namespace quell::hydraulics {
namespace {

/// He = h + (Q(He)/area)^2/2g. A subcritical approach has He below 1.5 h whatever the height of the crest, and the balance
/// changes its sign once between h and there.
template <class Discharge>
Outcome<ApproachFlow> balance_approach(double h, double area, const Discharge& discharge_at) noexcept {
  const auto missing = [&](double He) {
    const double velocity = discharge_at(He) / area;
    return He - h - velocity * velocity / (2.0 * gravity);
  };
  if (missing(1.5 * h) < 0.0)
    return no_answer("the crest could pass more than a subcritical approach brings: it does not control the flow");
  const auto He = find_root(missing, h, 1.5 * h, h * 1e-14);
  if (!He) return tl::unexpected(He.error());
  const double discharge = discharge_at(*He);
  return ApproachFlow{*He, discharge, discharge / area};
}

Outcome<void> store_flow(const Outcome<ApproachFlow>& flow, std::span<double> out) {
  if (!flow) return tl::unexpected(flow.error());
  out[0] = flow->He;
  out[1] = flow->discharge;
  out[2] = flow->velocity;
  return {};
}

}  // namespace

Outcome<ApproachFlow> discharge_with_approach(const WeirApproachInput& input) noexcept {
  return balance_approach(input.h, input.B * (input.h + input.P),
                          [&](double He) { return input.C * input.L * He * std::sqrt(He); });
}

Outcome<ApproachFlow> crest_discharge_with_approach(const CrestApproachInput& input) noexcept {
  const auto length = [&](double He) { return input.net_length - 2.0 * input.contraction * He; };
  if (!(length(1.5 * input.h) > 0.0)) return no_answer("the contractions use up the whole crest");
  return balance_approach(input.h, input.B * (input.h + input.P), [&](double He) {
    return crest_discharge({.He = He, .Hd = input.Hd, .P = input.P, .L = length(He), .face = input.face});
  });
}

namespace record {
namespace {
constexpr Symbol weir_in[] = {{"h", "water level above the crest", dimension::length, above_zero},
                              {"C", "discharge coefficient", dimension::weir_coefficient, {1.4, 2.5}},
                              {"L", "effective crest length", dimension::length, above_zero},
                              {"P", "crest above the approach floor", dimension::length, {0.0, no_limit}},
                              {"B", "width of the approach channel", dimension::length, above_zero}};
constexpr Symbol crest_in[] = {{"h", "water level above the crest", dimension::length, {0.05, no_limit}},
                               {"Hd", "design head", dimension::length, above_zero},
                               {"P", "crest above the approach floor", dimension::length, {0.0, no_limit}},
                               {"Ln", "net crest length, clear of piers", dimension::length, above_zero},
                               {"B", "width of the approach channel", dimension::length, above_zero},
                               {"K", "contraction of piers and abutments, N Kp + Ka", dimension::none, {0.0, 2.0}, 0.0}};
constexpr Symbol flow_out[] = {{"He", "total head above the crest", dimension::length, above_zero},
                               {"Q", "discharge", dimension::discharge, above_zero},
                               {"V0", "velocity in the approach channel", dimension::velocity, above_zero}};

std::string_view width_condition(double length, double width) {
  return length <= width ? std::string_view{} : "the crest is longer than the approach channel is wide";
}
}  // namespace

const Method discharge_approach{
    .id = "weir.discharge.with_approach",
    .title = "Discharge over a crest from the level in the approach channel, constant coefficient",
    .kind = EquationKind::residual,
    .equation = "He = h + (C*L*He^1.5/(B*(h + P)))^2/(2*g)",
    .inputs = weir_in,
    .outputs = flow_out,
    .source = "momentum",
    .place = "energy of the approach section equal to that above the crest, Q = C L He^1.5",
    .provenance = Provenance::derived,
    .accuracy = "exact under its assumptions; the coefficient brings its own error",
    .condition = [](std::span<const double> in) { return width_condition(in[2], in[4]); },
    .evaluate =
        [](std::span<const double> in, std::span<double> out) {
          return store_flow(discharge_with_approach({.h = in[0], .C = in[1], .L = in[2], .P = in[3], .B = in[4]}), out);
        }};

const Method crest_discharge_approach{
    .id = "crest.discharge.with_approach",
    .title = "Free discharge over the ogee crest from the level in the approach channel, vertical upstream face",
    .kind = EquationKind::residual,
    .equation = "He = h + (7/9*crest_coefficient(P/Hd)*(1 + 4*He/(9*Hd + 5*He))*(Ln - 2*K*He)*He^1.5/(B*(h + P)))^2/(2*g)",
    .inputs = crest_in,
    .outputs = flow_out,
    .source = "momentum",
    .place = "energy of the approach section equal to that above the crest, coefficient of crest.discharge.ogee",
    .provenance = Provenance::derived,
    .accuracy = "as the coefficient: 1 % for P/Hd above 0.2, else 2.5 %; head factor 1.2 %",
    .condition =
        [](std::span<const double> in) {
          if (in[0] > 1.5 * in[1]) return std::string_view("h is above 1.5 Hd: higher than the coefficient was tested for");
          return width_condition(in[3], in[4]);
        },
    .evaluate =
        [](std::span<const double> in, std::span<double> out) {
          return store_flow(crest_discharge_with_approach(
                                {.h = in[0], .Hd = in[1], .P = in[2], .net_length = in[3], .contraction = in[5], .B = in[4]}),
                            out);
        }};

}  // namespace record
}  // namespace quell::hydraulics
