#include "quell/hydraulics/stage_discharge.h"

#include <algorithm>
#include <boost/math/tools/minima.hpp>
#include <cmath>
#include <limits>

namespace quell::hydraulics {
namespace {

constexpr double steepest_exponent = 3.5;
constexpr double farthest_extrapolation = 1.5;  // of the highest discharge gauged

struct Line {
  double slope = 0.0;
  double constant = 0.0;
  double residual = std::numeric_limits<double>::infinity();  // sum of squares
  double mean_x = 0.0;
  double spread_x = 0.0;
};

/// Regression of ln Q on ln(h - h0).
Line regression(std::span<const GaugedPoint> points, double h0) {
  const auto count = static_cast<double>(points.size());
  Line line;
  double mean_y = 0.0;
  for (const GaugedPoint& point : points) {
    line.mean_x += std::log(point.level - h0) / count;
    mean_y += std::log(point.discharge) / count;
  }
  double product = 0.0;
  double spread_y = 0.0;
  for (const GaugedPoint& point : points) {
    const double dx = std::log(point.level - h0) - line.mean_x;
    const double dy = std::log(point.discharge) - mean_y;
    line.spread_x += dx * dx;
    product += dx * dy;
    spread_y += dy * dy;
  }
  line.slope = product / line.spread_x;
  line.constant = mean_y - line.slope * line.mean_x;
  line.residual = std::max(0.0, spread_y - line.slope * product);
  return line;
}

Outcome<void> check(std::span<const GaugedPoint> points) {
  if (points.size() < 4) return no_answer("a rating needs four gaugings or more");
  for (const GaugedPoint& point : points) {
    if (!std::isfinite(point.level)) return no_answer("every level gauged must be finite");
    if (!(point.discharge > 0.0 && std::isfinite(point.discharge)))
      return bad_input("Q", point.discharge, 0.0, no_limit, "every discharge gauged must be above zero");
  }
  return {};
}

}  // namespace

double StageRating::discharge(double level) const noexcept {
  return level > h0 ? a * std::pow(level - h0, b) : 0.0;
}

double StageRating::level(double discharge) const noexcept {
  return h0 + std::pow(discharge / a, 1.0 / b);
}

double RatingFit::level_spread(double discharge) const noexcept {
  const double depth = rating.level(discharge) - rating.h0;
  const double away = std::log(depth) - mean_log_depth;
  return depth / rating.b * standard_error * std::sqrt(1.0 + 1.0 / points + away * away / spread_log_depth);
}

std::string_view RatingFit::doubt(double discharge) const noexcept {
  if (rating.b > steepest_exponent) return "the exponent is above 3.5: the level of no flow is wrong, or the control changes";
  if (discharge > farthest_extrapolation * highest.discharge) return "the discharge is above 1.5 times the highest gauged";
  if (discharge < lowest.discharge / farthest_extrapolation)
    return "the discharge is below the lowest gauged by more than a third";
  return {};
}

Outcome<RatingFit> fit_rating(std::span<const GaugedPoint> points) {
  if (const auto sound = check(points); !sound) return tl::unexpected(sound.error());
  const auto [low, high] = std::ranges::minmax_element(points, {}, &GaugedPoint::level);
  const double range = high->level - low->level;
  if (!(range > 1e-9 * std::max(1.0, std::abs(high->level)))) return no_answer("all gaugings lie at one level");
  // In the logarithm of the depth of the lowest gauging, from a ten-thousandth to a hundred times the range.
  constexpr int searches = 120;
  const double first = std::log(1e-4 * range);
  const double last = std::log(1e2 * range);
  const auto residual = [&](double log_depth) { return regression(points, low->level - std::exp(log_depth)).residual; };
  int best = 0;
  double least = std::numeric_limits<double>::infinity();
  const auto at = [&](int i) { return first + (last - first) * i / searches; };
  for (int i = 0; i <= searches; ++i) {
    const double here = residual(at(i));
    if (here < least) best = i;
    least = std::min(least, here);
  }
  if (best == 0 || best == searches) return no_answer("no level of no flow is best: the gaugings follow no power law");
  const auto found =
      boost::math::tools::brent_find_minima(residual, at(best - 1), at(best + 1), std::numeric_limits<double>::digits / 2);
  const double h0 = low->level - std::exp(found.first);
  const Line line = regression(points, h0);
  if (!(line.slope > 0.0)) return no_answer("the discharges do not grow with the level");
  const auto count = static_cast<int>(points.size());
  return RatingFit{.rating = {.a = std::exp(line.constant), .h0 = h0, .b = line.slope},
                   .standard_error = std::sqrt(line.residual / (count - 3)),
                   .points = count,
                   .lowest = *std::ranges::min_element(points, {}, &GaugedPoint::discharge),
                   .highest = *std::ranges::max_element(points, {}, &GaugedPoint::discharge),
                   .mean_log_depth = line.mean_x,
                   .spread_log_depth = line.spread_x};
}

Outcome<double> rating_zero(const ThreeLevels& levels) {
  const auto& [h1, h2, h3] = levels;
  if (!(h2 > h1)) return bad_input("h2", h2, h1, h3, "the level must rise with the discharge");
  if (!(h3 - h2 > h2 - h1)) return bad_input("h2", h2, h1, (h1 + h3) / 2.0, "a power law curves the other way");
  return (h1 * h3 - h2 * h2) / (h1 + h3 - 2.0 * h2);
}

double fall_discharge(const BackwaterFall& input) noexcept {
  return input.Qr * std::sqrt(input.F / input.Fr);
}

Outcome<double> loop_factor(const RatingLoop& input) {
  const double term = input.rise / (input.c * input.slope);
  if (!(term > -1.0)) return bad_input("r", input.rise, -input.c * input.slope, no_limit, "the surface would fall upstream");
  return std::sqrt(1.0 + term);
}

}  // namespace quell::hydraulics
