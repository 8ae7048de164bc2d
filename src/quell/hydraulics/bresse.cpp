#include "quell/hydraulics/bresse.h"

#include <cmath>
#include <limits>
#include <numbers>

namespace quell::hydraulics {

double bresse_function(double u) noexcept {
  const double root = std::numbers::sqrt3;
  return std::log((u * u + u + 1.0) / ((u - 1.0) * (u - 1.0))) / 6.0 - std::atan(root / (2.0 * u + 1.0)) / root;
}

Outcome<double> bresse_distance(const BresseInput& input) {
  const double u1 = input.y1 / input.yn;
  const double u2 = input.y2 / input.yn;
  if (!((u1 - 1.0) * (u2 - 1.0) > 0.0)) {
    const bool above = u1 > 1.0;
    return bad_input("y2", input.y2, above ? input.yn : 0.0, above ? no_limit : input.yn,
                     "a profile approaches normal depth and never passes it");
  }
  const double ratio = input.yc / input.yn;
  return input.yn / input.bed_slope * (u2 - u1 - (1.0 - ratio * ratio * ratio) * (bresse_function(u2) - bresse_function(u1)));
}

namespace record {
namespace {
constexpr double must_be_given = std::numeric_limits<double>::quiet_NaN();
constexpr Symbol bresse_in[] = {{"S0", "slope of the bed", dimension::none, {1e-5, 0.1}, must_be_given, above_zero},
                                {"yn", "normal depth", dimension::length, above_zero},
                                {"yc", "critical depth", dimension::length, above_zero},
                                {"y1", "depth at the start", dimension::length, above_zero},
                                {"y2", "depth at the end", dimension::length, above_zero}};
constexpr Symbol x_out[] = {{"x", "distance from start to end, downstream positive", dimension::length, any_value}};
}  // namespace

const Method channel_profile_bresse{
    .id = "channel.profile.bresse",
    .title = "Distance between two depths in a wide channel by Bresse's function",
    .equation =
        "u1 = y1/yn; u2 = y2/yn; p1 = ln((u1^2 + u1 + 1)/(u1 - 1)^2)/6 - atan(sqrt(3)/(2*u1 + 1))/sqrt(3); "
        "p2 = ln((u2^2 + u2 + 1)/(u2 - 1)^2)/6 - atan(sqrt(3)/(2*u2 + 1))/sqrt(3); "
        "x = yn/S0*(u2 - u1 - (1 - (yc/yn)^3)*(p2 - p1))",
    .inputs = bresse_in,
    .outputs = x_out,
    .source = "chow_1959",
    .place = "ch. 10, direct integration, wide channel",
    .provenance = Provenance::memory,
    .accuracy = "exact for a constant Chezy coefficient; with Manning's formula some 5 % differ",
    .condition = [](std::span<const double> in) -> std::string_view {
      const double yn = in[1];
      const double yc = in[2];
      if (!((in[3] - yn) * (in[4] - yn) > 0.0)) return "normal depth lies between the two depths";
      return (in[3] - yc) * (in[4] - yc) >= 0.0 ? std::string_view{} : "critical depth lies between the two depths";
    },
    .evaluate = [](std::span<const double> in, std::span<double> out) -> Outcome<void> {
      return store(bresse_distance({.bed_slope = in[0], .yn = in[1], .yc = in[2], .y1 = in[3], .y2 = in[4]}), out);
    }};

}  // namespace record
}  // namespace quell::hydraulics
