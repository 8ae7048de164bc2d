// Shapes of floods and laws fitted to a record: volumes, inverses, scaling, limits; and two published records.
#include "quell/hydraulics/flood_record.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <cmath>
#include <vector>

#include "draws.h"
#include "quell/base/curve.h"
#include "quell/hydraulics/flood_shapes.h"

namespace quell::hydraulics {
namespace {

using draws::close;
using draws::drawn;

double volume_above(const FloodSeries& series, double base) {
  double volume = 0.0;
  for (std::size_t i = 1; i < series.time.size(); ++i)
    volume += (series.time[i] - series.time[i - 1]) * (0.5 * (series.flow[i] + series.flow[i - 1]) - base);
  return volume;
}

RC_GTEST_PROP(GammaFlood, HasItsPeakItsTimeAndItsVolume, ()) {
  const double m = drawn(0.8, 12.0);
  const double rise = drawn(600.0, 1e5);
  const double peak = drawn(10.0, 1e4);
  const double base = peak * drawn(0.001, 0.5);
  const auto series = gamma_flood(
      {.peak = peak, .time_to_peak = rise, .base_flow = base, .exponent = m, .duration = 40.0 * rise, .step = rise / 32.0});
  const auto top = std::max_element(series.flow.begin(), series.flow.end());
  close(*top, peak, 1e-12);
  close(series.time[static_cast<std::size_t>(top - series.flow.begin())], rise, 1e-12);
  RC_ASSERT(series.flow.front() == base && series.time.back() == 40.0 * rise);
  const double volume = volume_above(series, base);
  close(volume, (peak - base) * rise / gamma_peak_share(m), 2e-3);
  const auto exponent = gamma_exponent_of_volume(
      {.peak = peak, .time_to_peak = rise, .base_flow = base, .volume = (peak - base) * rise / gamma_peak_share(m)});
  RC_ASSERT(exponent.has_value());
  close(*exponent, m, 1e-9);
}

RC_GTEST_PROP(GammaFlood, HasALargerShareAboutThePeakTheLargerItsExponent, ()) {
  const double m = drawn(1e-3, 1e3);
  RC_ASSERT(gamma_peak_share(1.01 * m) > gamma_peak_share(m));
  const auto back = gamma_exponent(gamma_peak_share(m));
  RC_ASSERT(back.has_value());
  close(*back, m, 1e-9);
  // Stirling: sqrt(m/(2 pi)) for a large exponent.
  const double large = 1e4 * drawn(1.0, 50.0);
  close(gamma_peak_share(large), std::sqrt(large / (2.0 * 3.14159265358979)), 1e-4);
}

RC_GTEST_PROP(DimensionlessFlood, HasTheAreaOfItsTableAndIsLikeTheGammaShape, ()) {
  const double rise = drawn(600.0, 1e5);
  const auto series = dimensionless_flood({.peak = 1.0, .time_to_peak = rise, .duration = 6.0 * rise, .step = rise / 10.0});
  close(volume_above(series, 0.0) / rise, 1.33595, 1e-9);
  close(peak_rate_unit / 1.33595, 483.05, 1e-5);
  const double x = drawn(0.05, 4.0);
  RC_ASSERT(std::abs(dimensionless_shape(x) - gamma_shape(x, 3.7)) < 0.08);
  const auto triangle = triangular_flood({.peak = 1.0, .time_to_peak = rise, .duration = 4.0 * rise, .step = rise / 100.0});
  close(volume_above(triangle, 0.0), 0.5 * triangle_base * rise, 1e-4);
}

std::vector<double> drawn_record(std::size_t years) {
  std::vector<double> record;
  for (std::size_t i = 0; i < years; ++i) record.push_back(drawn(10.0, 2000.0));
  record.push_back(record[0] * 1.5);
  return record;
}

RC_GTEST_PROP(RecordFit, ScalesWithTheFloods, ()) {
  const auto record = drawn_record(20);
  const double factor = drawn(0.01, 100.0);
  auto scaled = record;
  for (double& flow : scaled) flow *= factor;
  for (const auto law : {FloodLaw::gumbel, FloodLaw::log_pearson_3}) {
    const auto fit = fit_record(record, {.law = law});
    const auto other = fit_record(scaled, {.law = law});
    RC_ASSERT(fit.has_value() && other.has_value());
    const double T = drawn(2.0, 1000.0);
    close(other->quantile(T), factor * fit->quantile(T), 1e-7);
    close(other->high_outlier, factor * fit->high_outlier, 1e-9);
    RC_ASSERT(fit->quantile(1.1 * T) > fit->quantile(T));
    const auto limits = fit->confidence_limits(T, 1.645);
    const auto wider = fit->confidence_limits(T, 2.3);
    RC_ASSERT(limits.has_value() && wider.has_value());
    RC_ASSERT(limits->lower < fit->quantile(T) && fit->quantile(T) < limits->upper);
    RC_ASSERT(wider->lower < limits->lower && limits->upper < wider->upper);
  }
}

RC_GTEST_PROP(RecordFit, TakesTheSkewBetweenRecordAndRegion, ()) {
  const auto record = drawn_record(15);
  const double regional = drawn(0.01, 1.0);
  const auto alone = fit_record(record);
  const auto weighted = fit_record(record, {.regional_skew = regional, .regional_error = drawn(0.01, 10.0)});
  RC_ASSERT(alone.has_value() && weighted.has_value());
  RC_ASSERT(alone->weighted_skew == alone->station_skew);
  const auto [low, high] = std::minmax(alone->station_skew, regional);
  RC_ASSERT(weighted->weighted_skew >= low && weighted->weighted_skew <= high);
  const auto certain = fit_record(record, {.regional_skew = regional, .regional_error = 1e-9});
  RC_ASSERT(std::abs(certain->weighted_skew - regional) < 1e-6);
}

RC_GTEST_PROP(PlottingPosition, IsEvenAboutTheMiddle, ()) {
  const double a = drawn(1e-6, 0.5);
  const double N = 25.0;
  const double rank = *rc::gen::inRange(1, 26);
  close(plotting_position(rank, N, a) + plotting_position(N + 1.0 - rank, N, a), 1.0, 1e-12);
}

/// Bulletin 17B 1982, app. 12, example 1 (memory): Fishkill Creek at Beacon, 1945 to 1968, ft3/s.
const std::vector<double> fishkill{2290, 1470, 2220, 2970, 3020, 1210, 2490, 3170, 3220, 1760, 8800, 8280,
                                   1310, 2500, 1960, 2140, 4340, 3060, 1780, 1380, 980,  1040, 1580, 3630};
/// Chow, Maidment and Mays 1988, ch. 12 (memory): Walnut Creek at Austin, 1967 to 1982, ft3/s.
const std::vector<double> walnut{303,   5640, 1050, 6020, 3740,  4580, 5140,  10560,
                                 12840, 5140, 2520, 1730, 12400, 3400, 14300, 9540};

TEST(RecordFit, IsThatOfThePublishedRecords) {
  const auto creek = fit_record(fishkill, {.regional_skew = 0.6});
  ASSERT_TRUE(creek.has_value());
  EXPECT_EQ(creek->N, 24U);
  EXPECT_NEAR(creek->mean, 3.3684, 6e-5);
  EXPECT_NEAR(creek->deviation, 0.2456, 6e-5);
  EXPECT_NEAR(creek->station_skew, 0.7300, 6e-5);
  EXPECT_NEAR(creek->weighted_skew, 0.668, 6e-4);
  // The print rounds the skew to 0.7, which raises the flood by 1 %: 11 531 and its limits 20 095 and 8078.
  EXPECT_NEAR(creek->quantile(100.0), 11531.0, 0.013 * 11531.0);
  const auto limits = creek->confidence_limits(100.0, 1.645);
  ASSERT_TRUE(limits.has_value());
  EXPECT_NEAR(limits->upper, 20095.0, 0.02 * 20095.0);
  EXPECT_NEAR(limits->lower, 8078.0, 0.012 * 8078.0);

  const auto austin = fit_record(walnut, {.regional_skew = -0.3});
  ASSERT_TRUE(austin.has_value());
  EXPECT_NEAR(austin->weighted_skew, -0.64, 0.005);
  EXPECT_NEAR(std::log10(austin->quantile(100.0)), 3.639 + 1.850 * 0.4439, 0.001);
}

/// Computed with numpy and scipy.stats (pearson3.ppf, skew without bias), SciPy 1.10: the record's own skew, 100 years, z
/// = 1.645.
TEST(RecordFit, IsThatOfSciPy) {
  const auto pearson = fit_record(fishkill);
  ASSERT_TRUE(pearson.has_value());
  EXPECT_NEAR(pearson->quantile(100.0), 11664.21721396, 1e-5);
  EXPECT_NEAR(pearson->confidence_limits(100.0, 1.645)->lower, 8155.375063823, 1e-5);
  EXPECT_NEAR(pearson->confidence_limits(100.0, 1.645)->upper, 20397.89259117, 1e-5);
  const auto gumbel = fit_record(fishkill, {.law = FloodLaw::gumbel});
  ASSERT_TRUE(gumbel.has_value());
  EXPECT_NEAR(gumbel->quantile(100.0), 8980.180486379, 1e-6);
  EXPECT_NEAR(gumbel->confidence_limits(100.0, 1.645)->lower, 6373.633108263, 1e-6);
  EXPECT_NEAR(gumbel->confidence_limits(100.0, 1.645)->upper, 11586.72786450, 1e-6);
  EXPECT_NEAR(std::log10(gumbel->high_outlier), 3.3683503847 + 2.4670525422 * 0.2456137733, 1e-9);
}

TEST(RecordFit, RefusesWhatSupportsNoLaw) {
  const std::vector<double> nine(fishkill.begin(), fishkill.begin() + 9);
  ASSERT_FALSE(fit_record(nine).has_value());
  EXPECT_NE(fit_record(nine).error().reason.find("fewer than ten"), std::string_view::npos);
  auto dry = fishkill;
  dry[3] = 0.0;
  ASSERT_FALSE(fit_record(dry).has_value());
  EXPECT_EQ(fit_record(dry).error().symbol, "Q");
  EXPECT_NE(fit_record(dry).error().reason.find("without flow"), std::string_view::npos);
  const auto gumbel = fit_record(dry, {.law = FloodLaw::gumbel});
  ASSERT_TRUE(gumbel.has_value());
  EXPECT_EQ(gumbel->low_outlier, 0.0);
  dry[3] = -1.0;
  EXPECT_EQ(fit_record(dry, {.law = FloodLaw::gumbel}).error().symbol, "Q");
  EXPECT_FALSE(fit_record(std::vector<double>(12, 100.0)).has_value());
  EXPECT_EQ(fit_record(fishkill, {.regional_skew = 0.1, .regional_error = 0.0}).error().symbol, "regional_error");
  EXPECT_FALSE(fit_record(fishkill)->confidence_limits(100.0, 8.0).has_value());
}

}  // namespace
}  // namespace quell::hydraulics
