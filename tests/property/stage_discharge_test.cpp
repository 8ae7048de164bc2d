// Properties of ratings: the power law both ways, the fit of exact and of scattered gaugings, the loop of a flood.
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cmath>
#include <vector>

#include "draws.h"
#include "quell/hydraulics/stage_discharge.h"

namespace quell::hydraulics {
namespace {
using draws::close;
using draws::drawn;

StageRating law() {
  return {.a = drawn(1.0, 200.0), .h0 = 100.0 + drawn(0.01, 10.0), .b = drawn(1.4, 3.0)};
}

RC_GTEST_PROP(StageRating, LeadsBackAndGrows, ()) {
  const StageRating rating = law();
  const double Q = drawn(0.1, 5000.0);
  close(rating.discharge(rating.level(Q)), Q, 1e-9);
  RC_ASSERT(rating.level(1.1 * Q) > rating.level(Q));
  RC_ASSERT(rating.discharge(rating.h0) == 0.0 && rating.discharge(rating.h0 - 1.0) == 0.0);
}

RC_GTEST_PROP(RatingFit, FindsThePowerLawOfExactGaugings, ()) {
  const StageRating truth = law();
  std::vector<GaugedPoint> points;
  const double shallow = drawn(0.1, 1.0);
  for (int i = 0; i < 8; ++i) {
    const double level = truth.h0 + shallow * std::pow(1.5, i);
    points.emplace_back(GaugedPoint{.level = level, .discharge = truth.discharge(level)});
  }
  const auto fit = fit_rating(points);
  RC_ASSERT(fit.has_value());
  RC_ASSERT(std::abs(fit->rating.h0 - truth.h0) < 1e-5 * shallow);
  close(fit->rating.b, truth.b, 1e-5);
  close(fit->rating.a, truth.a, 1e-4);
  RC_ASSERT(fit->standard_error < 1e-5);
  // Three of the points in geometric progression give the same zero.
  const double Q1 = points.front().discharge;
  const double Q3 = points.back().discharge;
  const auto zero = rating_zero({.h1 = truth.level(Q1), .h2 = truth.level(std::sqrt(Q1 * Q3)), .h3 = truth.level(Q3)});
  RC_ASSERT(zero.has_value());
  RC_ASSERT(std::abs(*zero - truth.h0) < 1e-7);
  RC_ASSERT(!rating_zero({.h1 = truth.level(Q3), .h2 = truth.level(Q1), .h3 = truth.level(Q3)}).has_value());
}

RC_GTEST_PROP(RatingFit, IsTheLeastOfItsNeighboursAndDoubtsWhatLiesBeyond, ()) {
  const StageRating truth = law();
  std::vector<GaugedPoint> points;
  for (int i = 0; i < 15; ++i) {
    const double level = truth.h0 + 0.5 * std::pow(1.3, i);
    points.emplace_back(GaugedPoint{.level = level, .discharge = truth.discharge(level) * drawn(0.95, 1.0 / 0.95)});
  }
  const auto fit = fit_rating(points);
  RC_ASSERT(fit.has_value());
  const auto residual = [&](const StageRating& rating) {
    double sum = 0.0;
    for (const auto& point : points) sum += std::pow(std::log(point.discharge / rating.discharge(point.level)), 2);
    return sum;
  };
  const double least = residual(fit->rating);
  close(std::sqrt(least / 12.0), fit->standard_error, 1e-6);
  for (const double step : {-1e-3, 1e-3}) {
    StageRating other = fit->rating;
    other.a *= 1.0 + step;
    RC_ASSERT(residual(other) >= least);
    other = fit->rating;
    other.b *= 1.0 + step;
    RC_ASSERT(residual(other) >= least);
    other = fit->rating;
    other.h0 += step;
    RC_ASSERT(residual(other) >= least);
  }
  const double highest = fit->highest.discharge;
  RC_PRE(fit->rating.b < 3.5);
  RC_ASSERT(fit->doubt(highest).empty() && fit->doubt(fit->lowest.discharge).empty());
  RC_ASSERT(fit->doubt(1.45 * highest).empty() && !fit->doubt(1.55 * highest).empty());
  // Scatter of one gauging in the middle; more beyond, relative to the depth.
  const auto relative = [&](double Q) { return fit->level_spread(Q) / (fit->rating.level(Q) - fit->rating.h0); };
  const double middle = fit->rating.discharge(fit->rating.h0 + std::exp(fit->mean_log_depth));
  close(relative(middle), fit->standard_error / fit->rating.b * std::sqrt(1.0 + 1.0 / 15.0), 1e-9);
  RC_ASSERT(relative(10.0 * highest) > relative(highest) && relative(highest) > relative(middle));
}

RC_GTEST_PROP(RatingFit, RefusesWhatMakesNoRating, ()) {
  std::vector<GaugedPoint> points{{100.0, 1.0}, {101.0, 3.0}, {102.0, 8.0}};
  RC_ASSERT(!fit_rating(points).has_value());
  points.emplace_back(GaugedPoint{.level = 103.0, .discharge = -drawn(0.1, 10.0)});
  RC_ASSERT(fit_rating(points).error().symbol == "Q");
  const std::vector<GaugedPoint> level(5, {100.0, 2.0});
  RC_ASSERT(!fit_rating(level).has_value());
}

RC_GTEST_PROP(Loop, LowersTheLevelOfTheRise, ()) {
  const double c = drawn(0.5, 5.0);
  const double slope = drawn(1e-4, 0.01);
  const double rise = drawn(1e-3, 0.9) * c * slope;
  const auto rising = loop_factor({.rise = rise, .c = c, .slope = slope});
  const auto falling = loop_factor({.rise = -rise, .c = c, .slope = slope});
  RC_ASSERT(rising.has_value() && falling.has_value());
  RC_ASSERT(*rising > 1.0 && *falling < 1.0);
  close(*rising * *rising + *falling * *falling, 2.0, 1e-12);
  RC_ASSERT(loop_factor({.rise = -1.1 * c * slope, .c = c, .slope = slope}).error().symbol == "r");
}

}  // namespace
}  // namespace quell::hydraulics
