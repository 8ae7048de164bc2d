#include "quell/hydraulics/outlets.h"

#include <cmath>
#include <limits>
#include <numbers>

#include "quell/base/roots.h"

namespace quell::hydraulics {
namespace {

/// Half the angle of the wetted arc at which a circular conduit carries most, 0.938 D deep: where (t - sin t cos t)^5/t^2 is
/// greatest, that is 3 t - 5 t cos 2t + sin 2t = 0.
constexpr double fullest_half_angle = 2.639053569;

/// Depth of uniform flow below that of the greatest conveyance; no answer where the conduit cannot carry the discharge so.
Outcome<double> uniform_depth(const CircularOutletInput& input) {
  const double needed = input.discharge * input.manning_n / std::sqrt(input.bed_slope);
  const auto excess = [&](double half) {
    const double area = input.D * input.D * (2.0 * half - std::sin(2.0 * half)) / 8.0;
    return area * std::pow(area / (input.D * half), 2.0 / 3.0) - needed;
  };
  if (excess(fullest_half_angle) < 0.0) return no_answer("the conduit flows full");
  const auto half = find_root(excess, 1e-4, fullest_half_angle, 1e-15);
  if (!half) return half;
  return input.D * (1.0 - std::cos(*half)) / 2.0;
}

}  // namespace

Outcome<OutletFlow> circular_outlet(const CircularOutletInput& input) {
  const auto uniform = uniform_depth(input);
  const Circle conduit{input.D};
  if (!uniform) return OutletFlow{input.D, 4.0 * input.discharge / (std::numbers::pi * input.D * input.D)};
  const auto critical = critical_depth(conduit, input.discharge);
  if (!critical) return tl::unexpected(critical.error());
  const double y = std::min(*uniform, *critical);
  return OutletFlow{y, input.discharge / conduit.area(y)};
}

Outcome<OutletFlow> box_outlet(const BoxOutletInput& input) {
  const auto uniform = normal_depth(
      {.section = {input.b, 0.0}, .bed_slope = input.bed_slope, .manning_n = input.manning_n, .discharge = input.discharge});
  if (!uniform) return tl::unexpected(uniform.error());
  const double y = *uniform < input.h ? std::min(*uniform, critical_depth(input.discharge / input.b)) : input.h;
  return OutletFlow{y, input.discharge / (input.b * y)};
}

double orifice_discharge(const OrificeInput& input) noexcept {
  return input.C * input.A * std::sqrt(2.0 * gravity * input.H);
}

Outcome<BasinInflow> outlet_transition(const TransitionInput& input) noexcept {
  const double energy = input.y + input.V * input.V / (2.0 * gravity) + input.fall;
  const auto excess = [&](double y1) {
    const double V1 = input.q / y1;
    return y1 + (V1 * V1 + input.K * std::abs(V1 * V1 - input.V * input.V)) / (2.0 * gravity) - energy;
  };
  // The balance falls with y1 up to F1 = 1/sqrt(1 - K), and where the flow speeds up as far as critical depth.
  const double critical = critical_depth(input.q);
  const double certain = critical * std::cbrt(1.0 - input.K);
  const double upper = excess(certain) <= 0.0 ? certain : critical;
  if (excess(upper) > 0.0) return no_answer("the energy is too little for supercritical flow on the apron");
  const double lower = input.q / std::sqrt(2.0 * gravity * energy + input.V * input.V) * 0.5;
  const auto y1 = find_root(excess, std::min(lower, 0.5 * upper), upper, 1e-14 * upper);
  if (!y1) return tl::unexpected(y1.error());
  return BasinInflow{*y1, input.q / *y1};
}

double jet_fall(const JetInput& input) noexcept {
  const double level_velocity = input.V * std::cos(input.theta);
  return input.distance * std::tan(input.theta) +
         gravity * input.distance * input.distance / (2.0 * level_velocity * level_velocity);
}

double jet_reach(const JetInput& input) noexcept {
  const double falling = input.V * std::sin(input.theta);
  return input.V * std::cos(input.theta) / gravity * (std::sqrt(falling * falling + 2.0 * gravity * input.distance) - falling);
}

namespace record {
namespace {
constexpr Symbol circular_in[] = {{"D", "diameter", dimension::length, above_zero},
                                  {"S", "bed slope", dimension::none, {1e-4, 0.1}},
                                  {"n", "Manning's n", dimension::manning, {0.008, 0.03}},
                                  {"Q", "discharge", dimension::discharge, above_zero}};
constexpr Symbol box_in[] = {{"b", "width of the conduit", dimension::length, above_zero},
                             {"h", "height of the conduit", dimension::length, above_zero},
                             {"S", "bed slope", dimension::none, {1e-4, 0.1}},
                             {"n", "Manning's n", dimension::manning, {0.008, 0.03}},
                             {"Q", "discharge", dimension::discharge, above_zero}};
constexpr Symbol outlet_out[] = {{"y", "depth at the outlet", dimension::length, above_zero},
                                 {"V", "velocity at the outlet", dimension::velocity, above_zero}};
constexpr Symbol orifice_in[] = {
    {"C", "discharge coefficient", dimension::none, {0.3, 1.0}},
    {"A", "area of the controlling section", dimension::area, above_zero},
    {"H", "reservoir level above the centre of the section or the water outside", dimension::length, {0.0, no_limit}}};
constexpr Symbol orifice_out[] = {{"Q", "discharge", dimension::discharge, {0.0, no_limit}}};
constexpr Symbol transition_in[] = {
    {"y", "depth at the outlet", dimension::length, above_zero},
    {"V", "velocity at the outlet", dimension::velocity, above_zero},
    {"z", "fall from the invert of the outlet to the apron", dimension::length, {0.0, no_limit}},
    {"q", "discharge per width of the basin", dimension::unit_discharge, above_zero},
    {"K", "loss over the change of velocity head", dimension::none, {0.0, 0.3}, 0.1, {0.0, 0.9}}};
constexpr Symbol transition_out[] = {{"y1", "depth on the apron", dimension::length, above_zero},
                                     {"V1", "velocity on the apron", dimension::velocity, above_zero}};
constexpr Range slopes{-1.2, 1.2};
constexpr Range possible_slopes{-1.57, 1.57};
constexpr double must_be_given = std::numeric_limits<double>::quiet_NaN();
constexpr Symbol fall_in[] = {
    {"x", "horizontal distance from the outlet", dimension::length, {0.0, no_limit}},
    {"V", "velocity at the outlet", dimension::velocity, above_zero},
    {"theta", "slope of the jet at the outlet, downward positive", dimension::none, slopes, must_be_given, possible_slopes}};
constexpr Symbol fall_out[] = {{"y", "fall of the jet below the outlet", dimension::length, any_value}};
constexpr Symbol reach_in[] = {
    {"y", "fall of the jet below the outlet", dimension::length, {0.0, no_limit}},
    {"V", "velocity at the outlet", dimension::velocity, above_zero},
    {"theta", "slope of the jet at the outlet, downward positive", dimension::none, slopes, must_be_given, possible_slopes}};
constexpr Symbol reach_out[] = {{"x", "horizontal distance from the outlet", dimension::length, {0.0, no_limit}}};

Outcome<void> store_flow(const Outcome<OutletFlow>& flow, std::span<double> out) {
  if (!flow) return tl::unexpected(flow.error());
  out[0] = flow->y;
  out[1] = flow->V;
  return {};
}
constexpr const char* no_tailwater =
    "No tailwater above this depth. Just where a conduit fills, the flow changes between both.";
}  // namespace

const Method outlet_depth_circular{
    .id = "outlet.depth.circular",
    .title = "Depth and velocity at the outlet of a circular conduit",
    .kind = EquationKind::procedure,
    .equation = "The smaller of normal depth (Manning) and critical depth; the full section where no normal depth carries Q.",
    .inputs = circular_in,
    .outputs = outlet_out,
    .source = "momentum",
    .place = "uniform and critical flow",
    .provenance = Provenance::derived,
    .accuracy = "solved to 1e-12; the roughness brings its own error",
    .remarks = no_tailwater,
    .evaluate = [](std::span<const double> in, std::span<double> out) {
      return store_flow(circular_outlet({.D = in[0], .bed_slope = in[1], .manning_n = in[2], .discharge = in[3]}), out);
    }};

const Method outlet_depth_box{
    .id = "outlet.depth.box",
    .title = "Depth and velocity at the outlet of a rectangular conduit",
    .kind = EquationKind::procedure,
    .equation =
        "The smaller of normal depth (Manning) and critical depth; the full section where normal depth reaches the roof.",
    .inputs = box_in,
    .outputs = outlet_out,
    .source = "momentum",
    .place = "uniform and critical flow",
    .provenance = Provenance::derived,
    .accuracy = "solved to 1e-12; the roughness brings its own error",
    .remarks = no_tailwater,
    .evaluate = [](std::span<const double> in, std::span<double> out) {
      return store_flow(box_outlet({.b = in[0], .h = in[1], .bed_slope = in[2], .manning_n = in[3], .discharge = in[4]}), out);
    }};

const Method outlet_discharge_orifice{
    .id = "outlet.discharge.orifice",
    .title = "Discharge of an outlet that runs full",
    .equation = "Q = C*A*sqrt(2*g*H)",
    .inputs = orifice_in,
    .outputs = orifice_out,
    .source = "momentum",
    .place = "energy from the reservoir to the controlling section",
    .provenance = Provenance::derived,
    .accuracy = "as the coefficient: some per cent where it was measured, 10 % where it was chosen",
    .remarks = "The head is several times the height of the section; with less, the outlet does not run full.",
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      out[0] = orifice_discharge({.C = in[0], .A = in[1], .H = in[2]});
      return {};
    }};

const Method outlet_inflow_transition{
    .id = "outlet.inflow.transition",
    .title = "Flow on the apron after the transition from a conduit to the width of the basin",
    .kind = EquationKind::residual,
    .equation = "y + V^2/(2*g) + z = y1 + (q/y1)^2/(2*g) + K*abs((q/y1)^2 - V^2)/(2*g)",
    .inputs = transition_in,
    .outputs = transition_out,
    .source = "practice",
    .place = "energy with a loss of 0.1 to 0.2 of the change of velocity head",
    .provenance = Provenance::common_practice,
    .accuracy = "the loss is an estimate: 0.1 more in K is at most 5 % of the velocity where it doubles",
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      const auto flow = outlet_transition({.y = in[0], .V = in[1], .fall = in[2], .q = in[3], .K = in[4]});
      if (!flow) return tl::unexpected(flow.error());
      out[0] = flow->y1;
      out[1] = flow->V1;
      return {};
    }};

const Method outlet_jet_fall{.id = "outlet.jet_fall.free",
                             .title = "Path of a free jet below the invert of an outlet",
                             .equation = "y = x*tan(theta) + g*x^2/(2*V^2*cos(theta)^2)",
                             .inputs = fall_in,
                             .outputs = fall_out,
                             .source = "momentum",
                             .place = "free fall without air resistance",
                             .provenance = Provenance::derived,
                             .accuracy = "exact under its assumptions",
                             .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                               out[0] = jet_fall({.distance = in[0], .V = in[1], .theta = in[2]});
                               return {};
                             }};

const Method outlet_jet_reach{.id = "outlet.jet_reach.free",
                              .title = "Distance at which a free jet has fallen so far",
                              .equation = "x = V*cos(theta)/g*(sqrt((V*sin(theta))^2 + 2*g*y) - V*sin(theta))",
                              .inputs = reach_in,
                              .outputs = reach_out,
                              .source = "momentum",
                              .place = "free fall without air resistance",
                              .provenance = Provenance::derived,
                              .accuracy = "exact under its assumptions",
                              .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                out[0] = jet_reach({.distance = in[0], .V = in[1], .theta = in[2]});
                                return {};
                              }};

}  // namespace record
}  // namespace quell::hydraulics
