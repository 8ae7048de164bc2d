#include "quell/hydraulics/labyrinth.h"

#include <cmath>
#include <iterator>
#include <numbers>

#include "quell/base/constants.h"

namespace quell::hydraulics {
namespace {

constexpr double degree = std::numbers::pi / 180.0;
// An angle typed in degrees and turned into radians may miss the end of the table by its last digit.
constexpr double rounding = 1e-9;

/// Cd = a r^(b r^c) + e, r = HT/P.
struct HalfRound {
  double angle;  ///< degrees
  double a, b, c, e;
  double Cd(double r) const noexcept { return a * std::pow(r, b * std::pow(r, c)) + e; }
};
constexpr HalfRound half_round[] = {{6, 0.009447, -4.039, 0.3955, 0.1870},  {8, 0.017090, -3.497, 0.4048, 0.2286},
                                    {10, 0.029900, -2.978, 0.4107, 0.2520}, {12, 0.030390, -3.102, 0.4393, 0.2912},
                                    {15, 0.031600, -3.270, 0.4849, 0.3349}, {20, 0.033610, -3.500, 0.5536, 0.3923},
                                    {35, 0.018550, -4.904, 0.6697, 0.5062}};

/// Cd as a polynomial in r.
struct QuarterRound {
  double angle;  ///< degrees
  double A0, A1, A2, A3, A4;
  double Cd(double r) const noexcept { return A0 + r * (A1 + r * (A2 + r * (A3 + r * A4))); }
};
constexpr QuarterRound quarter_round[] = {{6, 0.49, -0.24, -1.20, 2.17, -1.03}, {8, 0.49, 1.08, -5.27, 6.79, -2.83},
                                          {12, 0.49, 1.06, -4.43, 5.18, -1.97}, {15, 0.49, 1.00, -3.57, 3.82, -1.38},
                                          {18, 0.49, 1.32, -4.13, 4.24, -1.50}, {25, 0.49, 1.51, -3.83, 3.40, -1.05},
                                          {35, 0.49, 1.69, -4.05, 3.62, -1.10}, {90, 0.49, 1.46, -2.56, 1.44, 0.0}};

/// Straight line in the angle between the two rows beside it.
template <class Row, std::size_t N>
Outcome<LabyrinthFlow> discharge(const Row (&rows)[N], const LabyrinthInput& input) noexcept {
  const double angle = input.alpha / degree;
  const double least = rows[0].angle;
  const double greatest = rows[N - 1].angle;
  if (!(angle >= least * (1.0 - rounding) && angle <= greatest * (1.0 + rounding)))
    return bad_input("alpha", input.alpha, least * degree, greatest * degree, "no coefficient was measured at this angle");
  std::size_t upper = 1;
  while (upper + 1 < N && rows[upper].angle < angle) ++upper;
  const Row& below = rows[upper - 1];
  const Row& above = rows[upper];
  const double share = (angle - below.angle) / (above.angle - below.angle);
  const double r = input.HT / input.P;
  const double Cd = below.Cd(r) + share * (above.Cd(r) - below.Cd(r));
  if (!(Cd > 0.0)) return no_answer("HT/P is so large that the fitted coefficient falls below zero");
  return LabyrinthFlow{Cd, 2.0 / 3.0 * Cd * input.L * std::sqrt(2.0 * gravity) * std::pow(input.HT, 1.5)};
}

}  // namespace

Outcome<LabyrinthFlow> labyrinth_half_round(const LabyrinthInput& input) noexcept {
  return discharge(half_round, input);
}

Outcome<LabyrinthFlow> labyrinth_quarter_round(const LabyrinthInput& input) noexcept {
  return discharge(quarter_round, input);
}

namespace record {
namespace {
constexpr Range measured_angles{6.0 * degree * (1.0 - rounding), 35.0 * degree * (1.0 + rounding)};
constexpr Symbol half_in[] = {{"HT", "total head above the crest", dimension::length, above_zero},
                              {"P", "height of the weir", dimension::length, above_zero},
                              {"alpha", "angle of the side walls to the flow", dimension::none, measured_angles},
                              {"Lc", "crest length along its centre line", dimension::length, above_zero}};
constexpr Symbol quarter_in[] = {{"HT", "total head above the crest", dimension::length, above_zero},
                                 {"P", "height of the weir", dimension::length, above_zero},
                                 {"alpha",
                                  "angle of the side walls to the flow",
                                  dimension::none,
                                  {measured_angles.lowest, 90.0 * degree * (1.0 + rounding)}},
                                 {"L", "effective crest length", dimension::length, above_zero}};
constexpr Symbol flow_out[] = {{"Cd", "discharge coefficient", dimension::none, {0.0, 1.2}},
                               {"Q", "discharge", dimension::discharge, above_zero}};

std::string_view half_condition(std::span<const double> in) {
  const double r = in[0] / in[1];
  return r >= 0.05 && r <= 0.9 ? std::string_view{} : "HT/P lies outside 0.05 to 0.9, where it was measured";
}
std::string_view quarter_condition(std::span<const double> in) {
  if (in[0] > 0.9 * in[1]) return "HT/P is above 0.9, where it was measured";
  const bool measured = in[2] <= measured_angles.highest || in[2] >= 90.0 * degree * (1.0 - rounding);
  return measured ? std::string_view{} : "no angle between 35 and 90 degrees was measured";
}

template <auto function>
Outcome<void> evaluate(std::span<const double> in, std::span<double> out) {
  const auto flow = function({.HT = in[0], .P = in[1], .alpha = in[2], .L = in[3]});
  if (!flow) return tl::unexpected(flow.error());
  out[0] = flow->Cd;
  out[1] = flow->Q;
  return {};
}
}  // namespace

const Method labyrinth_discharge_half_round{
    .id = "labyrinth.discharge.half_round",
    .title = "Free discharge of a labyrinth weir with half-round crest",
    .kind = EquationKind::procedure,
    .equation =
        "Cd = a r^(b r^c) + e with r = HT/P and a, b, c, e of the table for 6, 8, 10, 12, 15, 20 and 35 degrees; Cd is "
        "interpolated in the angle; Q = (2/3) Cd Lc sqrt(2 g) HT^1.5.",
    .inputs = half_in,
    .outputs = flow_out,
    .source = "crookston_tullis_2013",
    .place = "table of coefficients for half-round crests; its range seen in the abstract",
    .provenance = Provenance::memory,
    .accuracy = "not stated; the coefficients were checked for plausibility only",
    .remarks = "Verify the coefficients in the source before use. A model study is normally made.",
    .condition = half_condition,
    .evaluate = evaluate<labyrinth_half_round>};

const Method labyrinth_discharge_quarter_round{
    .id = "labyrinth.discharge.quarter_round",
    .title = "Free discharge of a labyrinth weir with quarter-round crest, by its effective length",
    .kind = EquationKind::procedure,
    .equation =
        "Cd = A0 + A1 r + A2 r^2 + A3 r^3 + A4 r^4 with r = HT/P and the table for 6, 8, 12, 15, 18, 25, 35 and 90 degrees; Cd "
        "is interpolated in the angle; Q = (2/3) Cd L sqrt(2 g) HT^1.5.",
    .inputs = quarter_in,
    .outputs = flow_out,
    .source = "tullis_1995",
    .place = "table of coefficients",
    .provenance = Provenance::memory,
    .accuracy = "not stated; the curve for 8 degrees was later questioned",
    .remarks = "Verify the coefficients in the source before use. A model study is normally made.",
    .condition = quarter_condition,
    .evaluate = evaluate<labyrinth_quarter_round>};

}  // namespace record
}  // namespace quell::hydraulics
