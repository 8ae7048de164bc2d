#include "quell/hydraulics/shock_waves.h"

#include <boost/math/tools/minima.hpp>
#include <cmath>
#include <numbers>

#include "quell/base/roots.h"
#include "quell/hydraulics/chute_symbols.h"

namespace quell::hydraulics {
namespace {

double depth_ratio(double F1, double beta) noexcept {
  const double normal = F1 * std::sin(beta);
  return 0.5 * (std::sqrt(1.0 + 8.0 * normal * normal) - 1.0);
}

/// Turn behind a front at beta: none at asin(1/F1) and at a right angle, greatest between.
double turn_of(double F1, double beta) noexcept {
  const double r = depth_ratio(F1, beta);
  const double sine = std::sin(beta);
  const double cosine = std::cos(beta);
  return std::atan2((r - 1.0) * sine * cosine, r * cosine * cosine + sine * sine);
}

/// beta of the greatest turn, and that turn.
std::pair<double, double> greatest(double F1) noexcept {
  const double lower = std::asin(1.0 / F1);
  const auto [beta, minus_turn] =
      boost::math::tools::brent_find_minima([F1](double at) { return -turn_of(F1, at); }, lower, std::numbers::pi / 2.0, 40);
  return {beta, -minus_turn};
}

double froude_after(double r, double angle) noexcept {
  return std::sqrt(0.5 / r * (1.0 / r + 1.0)) / std::sin(angle);
}

constexpr std::string_view no_front = "flow that is not supercritical has no shock front";
}  // namespace

double largest_turn(double F1) noexcept {
  return greatest(F1).second;
}

Outcome<ObliqueShock> oblique_shock(const ShockInput& input) noexcept {
  if (!(input.F1 > 1.0)) return bad_input("F1", input.F1, 1.0, no_limit, no_front);
  const auto [beta_greatest, turn_greatest] = greatest(input.F1);
  if (!(input.theta > 0.0) || input.theta > turn_greatest)
    return bad_input("theta", input.theta, above_zero.lowest, turn_greatest,
                     "no attached front turns the flow so far: the wave stands ahead of the corner");
  const auto beta = find_root([&](double at) { return turn_of(input.F1, at) - input.theta; }, std::asin(1.0 / input.F1),
                              beta_greatest, 1e-16);
  if (!beta) return tl::unexpected(beta.error());
  const double r = depth_ratio(input.F1, *beta);
  return ObliqueShock{*beta, r, froude_after(r, *beta - input.theta)};
}

ApproximateShock approximate_shock(const ShockInput& input) noexcept {
  const double beta = input.theta + 3.0 / (2.0 * std::numbers::sqrt2 * input.F1);
  return {beta, std::numbers::sqrt2 * input.F1 * std::sin(beta) - 0.5};
}

double shock_ratio_small_turn(const ShockInput& input) noexcept {
  return 1.0 + std::numbers::sqrt2 * input.F1 * input.theta;
}

double contraction_length(const ContractionInput& input) noexcept {
  return (input.b1 - input.b3) / (2.0 * std::tan(input.theta));
}

double pier_line_distance(const PierLineInput& input) noexcept {
  return 0.5 * input.b * std::sqrt(input.F * input.F - 1.0);
}

namespace record {
namespace {
constexpr Symbol froude{"F1", "Froude number before the front", dimension::none, {1.5, 20.0}};
constexpr Symbol turn{"theta",         "turn of the wall into the flow",
                      dimension::none, {0.5 * degree, 40 * degree},
                      must_be_given,   {0.0, steepest_angle}};
constexpr Symbol turn_in[] = {froude, turn};
constexpr Symbol angle_out[] = {{"beta", "angle of the front to the flow before it", dimension::none, above_zero}};
constexpr Symbol ratio_in[] = {
    froude, {"beta", "angle of the front to the flow before it", dimension::none, {0.02, 1.4}}, turn};
constexpr Symbol ratio_out[] = {{"r", "depth after over depth before", dimension::none, above_zero},
                                {"F2", "Froude number after the front", dimension::none, above_zero}};
constexpr Symbol approximate_out[] = {{"beta", "angle of the front to the flow before it", dimension::none, above_zero},
                                      {"r", "depth after over depth before", dimension::none, above_zero}};
constexpr Symbol small_out[] = {{"r", "depth after over depth before", dimension::none, above_zero}};
constexpr Symbol contraction_in[] = {{"b1", "width before", dimension::length, above_zero},
                                     {"b3", "width after", dimension::length, above_zero},
                                     {"theta", "turn of each wall", dimension::none, {0.001, 0.35}, must_be_given, {0.0, 1.5}}};
constexpr Symbol contraction_out[] = {{"L", "length of the contraction", dimension::length, above_zero}};
constexpr Symbol pier_in[] = {{"b", "clear width of the bay", dimension::length, above_zero},
                              {"F", "Froude number at the pier ends", dimension::none, {1.05, 20.0}}};
constexpr Symbol pier_out[] = {
    {"xm", "distance below the pier ends to the crossing at the middle of the bay", dimension::length, above_zero},
    {"L", "distance over which the lines cross the whole bay", dimension::length, above_zero}};

ShockInput shock_of(std::span<const double> in) {
  return {.F1 = in[0], .theta = in[1]};
}
std::string_view detached(std::span<const double> in) {
  return in[1] < largest_turn(in[0]) ? std::string_view{} : "no attached front turns the flow so far";
}
}  // namespace

const Method shock_angle{.id = "shock.angle.ippen",
                         .title = "Angle of the shock front at an abrupt turn of the wall",
                         .kind = EquationKind::residual,
                         .equation = "tan(beta)/tan(beta - theta) = (sqrt(1 + 8*F1^2*sin(beta)^2) - 1)/2",
                         .inputs = turn_in,
                         .outputs = angle_out,
                         .source = "ippen_1951",
                         .place = "momentum across the front, the weak solution; Novak et al. (2007), eq. 4.31 to 4.35",
                         .provenance = Provenance::seen,
                         .accuracy = "solved to 1e-14; front and depth within 5 to 10 % of experiments",
                         .condition = detached,
                         .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                           const auto shock = oblique_shock(shock_of(in));
                           if (!shock) return tl::unexpected(shock.error());
                           out[0] = shock->beta;
                           return {};
                         }};

const Method shock_depth_ratio{
    .id = "shock.depth_ratio.ippen",
    .title = "Depth and Froude number behind a shock front",
    .equation = "r = (sqrt(1 + 8*F1^2*sin(beta)^2) - 1)/2; F2 = sqrt(0.5/r*(1/r + 1))/sin(beta - theta)",
    .inputs = ratio_in,
    .outputs = ratio_out,
    .source = "ippen_1951",
    .place = "momentum across the front; Novak et al. (2007), eq. 4.31 to 4.35",
    .provenance = Provenance::seen,
    .accuracy = "within 5 to 10 % of experiments",
    .condition = [](std::span<const double> in) -> std::string_view {
      if (!(in[0] * std::sin(in[1]) > 1.0)) return "the front lies flatter than a wave: it is none";
      return in[1] > in[2] ? std::string_view{} : "the wall turns beyond the front";
    },
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      if (!(in[1] > in[2])) return bad_input("beta", in[1], in[2], std::numbers::pi / 2.0, "the front stands off the wall");
      out[0] = depth_ratio(in[0], in[1]);
      out[1] = froude_after(out[0], in[1] - in[2]);
      return {};
    }};

const Method shock_approximate{.id = "shock.angle.approximate",
                               .title = "Angle of the shock front and depth behind it, approximately",
                               .equation = "beta = theta + 3/(2*sqrt(2)*F1); r = sqrt(2)*F1*sin(beta) - 0.5",
                               .inputs = turn_in,
                               .outputs = approximate_out,
                               .source = "novak_2007",
                               .place = "eq. 4.31 to 4.35, after Ippen",
                               .provenance = Provenance::seen,
                               .accuracy = "5 to 10 % above the exact angle and ratio for small turns at F1 of 4 and more",
                               .condition = detached,
                               .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                 const auto shock = hydraulics::approximate_shock(shock_of(in));
                                 out[0] = shock.beta;
                                 out[1] = shock.r;
                                 return {};
                               }};

const Method shock_small_turn{.id = "shock.depth_ratio.small_turn",
                              .title = "Depth behind a shock front at a small turn",
                              .equation = "r = 1 + sqrt(2)*F1*theta",
                              .inputs = turn_in,
                              .outputs = small_out,
                              .source = "novak_2007",
                              .place = "eq. 4.31 to 4.35, after Ippen",
                              .provenance = Provenance::seen,
                              .accuracy = "7 to 10 % above the exact ratio",
                              .condition = detached,
                              .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                out[0] = shock_ratio_small_turn(shock_of(in));
                                return {};
                              }};

const Method contraction_length{.id = "shock.contraction.length",
                                .title = "Length of a straight contraction",
                                .equation = "L = (b1 - b3)/(2*tan(theta))",
                                .inputs = contraction_in,
                                .outputs = contraction_out,
                                .source = "momentum",
                                .place = "geometry of two straight walls",
                                .provenance = Provenance::derived,
                                .accuracy = "exact",
                                .condition = [](std::span<const double> in) -> std::string_view {
                                  return in[0] > in[1] ? std::string_view{} : "the channel does not narrow";
                                },
                                .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                  if (!(in[0] > in[1]))
                                    return bad_input("b3", in[1], above_zero.lowest, in[0], "a contraction narrows");
                                  if (!(in[2] > 0.0))
                                    return bad_input("theta", in[2], above_zero.lowest, 1.5, "the walls must turn");
                                  out[0] = hydraulics::contraction_length({.b1 = in[0], .b3 = in[1], .theta = in[2]});
                                  return {};
                                }};

const Method pier_line_distance{.id = "shock.pier_line.distance",
                                .title = "Where the waves from pier ends cross",
                                .equation = "beta = asin(1/F); xm = b/2/tan(beta); L = b*sqrt(F^2 - 1)",
                                .inputs = pier_in,
                                .outputs = pier_out,
                                .source = "momentum",
                                .place = "small waves at the angle asin(1/F) to the flow",
                                .provenance = Provenance::derived,
                                .accuracy = "the lines of high waves run steeper",
                                .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
                                  if (!(in[1] > 1.0)) return bad_input("F", in[1], 1.0, no_limit, no_front);
                                  out[0] = hydraulics::pier_line_distance({.b = in[0], .F = in[1]});
                                  out[1] = 2.0 * out[0];
                                  return {};
                                }};

}  // namespace record
}  // namespace quell::hydraulics
