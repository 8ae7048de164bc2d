#include "quell/hydraulics/surge.h"

#include <cmath>

#include "quell/base/roots.h"

namespace quell::hydraulics {
namespace {

/// Speed of the front relative to the water before it.
double relative_speed(double y1, double y2) {
  return std::sqrt(gravity * y2 * (y1 + y2) / (2.0 * y1));
}

/// The front that stores `change` (m2/s, > 0) and runs with `own` (m/s) more than it would in water at rest.
Outcome<Surge> surge(double y1, double own, double change) {
  const auto excess = [&](double y2) { return (relative_speed(y1, y2) + own) * (y2 - y1) - change; };
  double upper = 2.0 * y1;
  while (excess(upper) < 0.0) upper *= 2.0;
  const auto y2 = find_root(excess, y1, upper, upper * 1e-16);
  if (!y2) return tl::unexpected(y2.error());
  return Surge{.y2 = *y2, .c = relative_speed(y1, *y2) + own};
}
}  // namespace

Outcome<Surge> surge_from_closure(const SurgeInput& input) {
  const double q1 = input.V1 * input.y1;
  if (!(input.q2 < q1)) return bad_input("q2", input.q2, 0.0, q1, "closing a gate makes the discharge less");
  return surge(input.y1, -input.V1, q1 - input.q2);
}

Outcome<Surge> surge_from_opening(const SurgeInput& input) {
  const double q1 = input.V1 * input.y1;
  if (!(input.q2 > q1)) return bad_input("q2", input.q2, q1, no_limit, "opening a gate makes the discharge more");
  return surge(input.y1, input.V1, input.q2 - q1);
}

namespace record {
namespace {
constexpr Symbol surge_in[] = {{"y1", "depth before the change", dimension::length, above_zero},
                               {"V1", "mean velocity before the change", dimension::velocity, {0.0, no_limit}},
                               {"q2", "discharge per unit width after the change", dimension::unit_discharge, {0.0, no_limit}}};
constexpr Symbol surge_out[] = {{"y2", "depth behind the front", dimension::length, above_zero},
                                {"c", "speed of the front over the bed", dimension::velocity, any_value}};

Outcome<void> fill(const Outcome<Surge>& surge, std::span<double> out) {
  if (!surge) return tl::unexpected(surge.error());
  out[0] = surge->y2;
  out[1] = surge->c;
  return {};
}
constexpr auto front_place = "mass and momentum over the moving front, hydrostatic pressure, no bed friction";
}  // namespace

const Method surge_closure{
    .id = "surge.closure.upstream",
    .title = "Surge that runs upstream from a gate as it closes, rectangular section",
    .kind = EquationKind::residual,
    .equation = "(y2 - y1)*(sqrt(g*y2*(y1 + y2)/(2*y1)) - V1) = V1*y1 - q2; c = sqrt(g*y2*(y1 + y2)/(2*y1)) - V1",
    .inputs = surge_in,
    .outputs = surge_out,
    .source = "momentum",
    .place = front_place,
    .provenance = Provenance::derived,
    .accuracy = "exact under its assumptions",
    .condition = [](std::span<const double> in) -> std::string_view {
      return in[1] * in[1] < gravity * in[0] ? std::string_view{}
                                             : "the flow is supercritical: a small surge cannot run upstream";
    },
    .evaluate = [](std::span<const double> in,
                   std::span<double> out) { return fill(surge_from_closure({.y1 = in[0], .V1 = in[1], .q2 = in[2]}), out); }};

const Method surge_opening{
    .id = "surge.opening.downstream",
    .title = "Surge that runs downstream from a gate as it opens, rectangular section",
    .kind = EquationKind::residual,
    .equation = "(y2 - y1)*(V1 + sqrt(g*y2*(y1 + y2)/(2*y1))) = q2 - V1*y1; c = V1 + sqrt(g*y2*(y1 + y2)/(2*y1))",
    .inputs = surge_in,
    .outputs = surge_out,
    .source = "momentum",
    .place = front_place,
    .provenance = Provenance::derived,
    .accuracy = "exact under its assumptions",
    .remarks = "y2 is the tailwater that is there at once after the opening, long before the steady depth is reached.",
    .evaluate = [](std::span<const double> in, std::span<double> out) {
      return fill(surge_from_opening({.y1 = in[0], .V1 = in[1], .q2 = in[2]}), out);
    }};

}  // namespace record
}  // namespace quell::hydraulics
